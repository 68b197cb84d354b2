"""What is left of a member's section where a probe sank in: area, section modulus, inertia."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.source import Source

SOURCE = Source(
    "Mechanics of materials", place="rectangle: A = bd, S = bd^2/6, I = bd^3/12; parallel axes"
)


@dataclass(frozen=True, slots=True)
class Section:
    """A cross-section about its own center; bending is over the depth unless called weak."""

    area_sqin: float
    section_modulus_in3: float
    inertia_in4: float
    weak_inertia_in4: float


@dataclass(frozen=True, slots=True)
class ProbeDepths:
    """How far a probe sank from each face, in inches; soft wood counts as gone."""

    top_in: float = 0.0
    bottom_in: float = 0.0
    left_in: float = 0.0
    right_in: float = 0.0

    def __post_init__(self) -> None:
        if min(self.top_in, self.bottom_in, self.left_in, self.right_in) < 0:
            raise ValueError("probe depths are zero or more")

    @property
    def lopsided(self) -> bool:
        """Whether one side lost more than the other, so that the rest twists under load."""
        return self.left_in != self.right_in


@dataclass(frozen=True, slots=True)
class SectionLoss:
    """A member's section before and after, and the share of each property that is left."""

    original: Section
    remaining: Section
    lopsided: bool = False

    @property
    def area_share(self) -> float:
        """Share of the area left, 0 to 1."""
        return self.remaining.area_sqin / self.original.area_sqin

    @property
    def section_modulus_share(self) -> float:
        """Share of the bending strength left, 0 to 1."""
        return self.remaining.section_modulus_in3 / self.original.section_modulus_in3

    @property
    def inertia_share(self) -> float:
        """Share of the stiffness left, 0 to 1."""
        return self.remaining.inertia_in4 / self.original.inertia_in4

    @property
    def weak_inertia_share(self) -> float:
        """Share of the stiffness the thin way left, 0 to 1; it is what keeps a post straight."""
        return self.remaining.weak_inertia_in4 / self.original.weak_inertia_in4


def rectangle(breadth_in: float, depth_in: float) -> Section:
    """The section of a sound rectangle, inches; zero breadth or depth gives an empty section."""
    if min(breadth_in, depth_in) < 0:
        raise ValueError("breadth and depth are zero or more")
    area = breadth_in * depth_in
    return Section(
        area_sqin=area,
        section_modulus_in3=area * depth_in / 6.0,
        inertia_in4=area * depth_in**2 / 12.0,
        weak_inertia_in4=area * breadth_in**2 / 12.0,
    )


def face_loss(breadth_in: float, depth_in: float, probe: ProbeDepths) -> SectionLoss:
    """The loss where whole faces went soft: a smaller rectangle is left.

    A shell all round is the same depth on four faces. ValueError unless the sound member has a
    breadth and a depth above zero.
    """
    original = _sound(breadth_in, depth_in)
    left_breadth = max(0.0, breadth_in - probe.left_in - probe.right_in)
    left_depth = max(0.0, depth_in - probe.top_in - probe.bottom_in)
    return SectionLoss(original, rectangle(left_breadth, left_depth), probe.lopsided)


def corner_loss(
    breadth_in: float, depth_in: float, pocket_breadth_in: float, pocket_depth_in: float
) -> SectionLoss:
    """The loss where one corner went soft: ``pocket_breadth_in`` wide, ``pocket_depth_in`` deep."""
    original = _sound(breadth_in, depth_in)
    if not (0 <= pocket_breadth_in <= breadth_in and 0 <= pocket_depth_in <= depth_in):
        raise ValueError("the pocket lies inside the section")
    area, modulus, inertia = _less_corner(breadth_in, depth_in, pocket_breadth_in, pocket_depth_in)
    _, _, weak = _less_corner(depth_in, breadth_in, pocket_depth_in, pocket_breadth_in)
    lopsided = 0 < pocket_breadth_in < breadth_in and pocket_depth_in > 0
    return SectionLoss(original, Section(area, modulus, inertia, weak), lopsided)


def cavity_loss(
    breadth_in: float, depth_in: float, cavity_breadth_in: float, cavity_depth_in: float
) -> SectionLoss:
    """The loss where the heart went soft: a cavity in the middle of the section."""
    original = _sound(breadth_in, depth_in)
    if not (0 <= cavity_breadth_in <= breadth_in and 0 <= cavity_depth_in <= depth_in):
        raise ValueError("the cavity lies inside the section")
    hole = rectangle(cavity_breadth_in, cavity_depth_in)
    inertia = original.inertia_in4 - hole.inertia_in4
    remaining = Section(
        area_sqin=original.area_sqin - hole.area_sqin,
        section_modulus_in3=inertia / (depth_in / 2.0),
        inertia_in4=inertia,
        weak_inertia_in4=original.weak_inertia_in4 - hole.weak_inertia_in4,
    )
    return SectionLoss(original, remaining)


def _sound(breadth_in: float, depth_in: float) -> Section:
    if min(breadth_in, depth_in) <= 0:
        raise ValueError("a sound member has a breadth and a depth above zero")
    return rectangle(breadth_in, depth_in)


def _less_corner(
    breadth: float, depth: float, pocket_breadth: float, pocket_depth: float
) -> tuple[float, float, float]:
    """Area, section modulus and inertia of a rectangle less a corner at its measured-from edge."""
    pocket = pocket_breadth * pocket_depth
    area = breadth * depth - pocket
    if area <= 0:
        return 0.0, 0.0, 0.0
    center = (breadth * depth**2 / 2.0 - pocket * pocket_depth / 2.0) / area
    whole = breadth * depth * (depth**2 / 12.0 + (depth / 2.0 - center) ** 2)
    gone = pocket * (pocket_depth**2 / 12.0 + (center - pocket_depth / 2.0) ** 2)
    inertia = whole - gone
    # A pocket the full breadth wide leaves no wood at the near edge.
    near_edge = pocket_depth if pocket_breadth == breadth else 0.0
    return area, inertia / max(center - near_edge, depth - center), inertia
