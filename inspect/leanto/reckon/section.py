"""Each soft spot: what is left of the member, what follows, how long the piece beside it is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from leanto.building.block_shape import slope_factor
from leanto.building.kinds import FloorKind, PlaceKind, RoofForm
from leanto.building.model import Block, Building, Framing
from leanto.building.surface import Surface
from leanto.reckon import asked
from leanto.reckon.basis import Basis, is_yes, number, word
from leanto.reckon.citations import without_citations
from leanto.reckon.member import member_size_in
from leanto.reckon.model import CONFIRM_FRAME, Figure, Reckoning, cited
from leanto.record.observation import Observation
from leanto.trade.section_loss import SOURCE, ProbeDepths, SectionLoss, face_loss
from leanto.trade.section_remedy import (
    MemberRole,
    Remedy,
    RemedyKind,
    SisterLength,
    remedy,
    sister_length,
)
from leanto.trade.span import feet_inches

PROBE = "probe_depth_in"
POST_SIZE = "post_size_in"
SILL_SIZE = "sill_size"
_BRASH = ("breaks short", "brown cubes")


@dataclass(frozen=True, slots=True)
class Probed:
    """The member that an awl is pushed into."""

    name: str
    breadth_in: float
    depth_in: float
    role: MemberRole
    span_in: float | None = None
    """Between its bearings, when that is known."""


def section(basis: Basis) -> Iterator[Reckoning]:
    """A reckoning for every answer with a probe depth in a member whose size is known."""
    for observation in basis.seen():
        probe_in = number(observation, PROBE)
        surface = basis.surface_at(observation.key.station)
        if probe_in is None or surface is None:
            continue
        member = probed_member(observation, surface, basis.building)
        if member is not None and probe_in <= member.depth_in:
            place = basis.stations[observation.key.station].name
            yield _reckoned(observation, surface, member, probe_in, place)


def probed_member(observation: Observation, surface: Surface, building: Building) -> Probed | None:
    """The member that the answer is about; None when its size is not known."""
    item = observation.key.item
    if item in asked.POSTS:
        width_in = number(observation, POST_SIZE)
        return Probed("post", width_in, width_in, MemberRole.POST) if width_in else None
    if item in asked.SILL:
        size = _named_size_in(word(observation, SILL_SIZE))
        return Probed("sill", *size, MemberRole.PLATE) if size else None
    block = next(block for block in building.blocks if block.id == surface.block)
    return framing_member(item, surface, block, building)


def framing_member(item: str, surface: Surface, block: Block, building: Building) -> Probed | None:
    """The framing member that an item at a surface is about, by the building's own sizes."""
    floor = block.floor if block.floor.kind in (FloorKind.JOISTS, FloorKind.SLEEPERS) else None
    below = block.floor.clear_span or min(block.length, block.width)
    if item in asked.STUDS:
        return _member("stud", block.walls, building, block.eave_height)
    if item in asked.PLATES:
        size = member_size_in(block.walls, building.year_built)
        return Probed("top plate", size[1], size[0], MemberRole.PLATE) if size else None
    if item in asked.RAFTERS:
        return _member("rafter", block.roof, building, rafter_run_ft(block) * slope_factor(block))
    if item in asked.FLOOR_JOISTS and floor:
        return _member(
            "joist" if floor.kind is FloorKind.JOISTS else "sleeper", floor, building, below
        )
    if item not in asked.FACING:
        return None
    match surface.kind:
        case PlaceKind.WALL_INSIDE:
            return _member("stud", block.walls, building, block.eave_height)
        case PlaceKind.CEILING if block.ceiling is not None:
            return _member("ceiling joist", block.ceiling, building, min(block.length, block.width))
        case PlaceKind.CEILING:
            run = rafter_run_ft(block) * slope_factor(block)
            return _member("rafter", block.roof, building, run)
        case PlaceKind.FLOOR if floor:
            return _member("joist", floor, building, below)
    return None


def rafter_run_ft(block: Block) -> float:
    """Level run of a rafter between its bearings: half the width under a ridge, else all of it."""
    if block.roof.form is RoofForm.HIP:
        return min(block.length, block.width) / 2
    return block.width / 2 if block.roof.form is RoofForm.GABLE else block.width


def deepest_probe_in(
    item: str, measures: Mapping[str, float | str], surface: Surface | None, building: Building
) -> tuple[float, str] | None:
    """(inches, member) that an awl can sink at most; None where the size is not known."""
    if item in asked.POSTS:
        width = measures.get(POST_SIZE)
        return (width, "post") if isinstance(width, float) and width > 0 else None
    if item in asked.SILL:
        size = _named_size_in(measures.get(SILL_SIZE))
        return (max(size), "sill") if size else None
    if surface is None:
        return None
    block = next(block for block in building.blocks if block.id == surface.block)
    member = framing_member(item, surface, block, building)
    return (max(member.breadth_in, member.depth_in), member.name) if member else None


def _named_size_in(name: object) -> tuple[float, float] | None:
    """Width and height of a size such as ``6x8``, taken as full; None for a log or no size."""
    width, by, height = name.partition("x") if isinstance(name, str) else ("", "", "")
    if not by or not (width.isdigit() and height.isdigit()):
        return None
    return float(width), float(height)


def _member(name: str, framing: Framing, building: Building, span_ft: float) -> Probed | None:
    size = member_size_in(framing, building.year_built)
    return Probed(name, *size, MemberRole.REPEATED, span_ft * 12) if size else None


def _reckoned(
    observation: Observation, surface: Surface, member: Probed, probe_in: float, place: str
) -> Reckoning:
    loss = face_loss(member.breadth_in, member.depth_in, ProbeDepths(top_in=probe_in))
    brash = word(observation, "rot_kind") in _BRASH
    answer = remedy(loss, member.role, brash=brash, moved=bool(is_yes(observation, "is_moving")))
    beside = _beside(observation, surface, member, answer)
    reasons, said = without_citations((*answer.reasons, *((beside.reason,) if beside else ())))
    return Reckoning(
        id=f"section@{observation.key}",
        title=f"Soft {member.name}, {place}",
        station_id=observation.key.station,
        verdict=answer.kind.value,
        figures=_figures(member, probe_in, loss, answer, beside),
        reasons=reasons,
        sources=cited((SOURCE,), said),
        confirm=CONFIRM_FRAME,
        facts={
            "section_remedy": answer.kind.value,
            "section_lost_pct": answer.lost_share * 100,
            **({"sister_length_ft": beside.length_in / 12} if beside else {}),
        },
        observation=observation.key,
        cautions=("Shore before a member that carries load is cut.",),
    )


def _figures(
    member: Probed,
    probe_in: float,
    loss: SectionLoss,
    answer: Remedy,
    beside: SisterLength | None,
) -> tuple[Figure, ...]:
    figures = [
        Figure("Member", f"{member.name}, {member.breadth_in:g} x {member.depth_in:g} in."),
        Figure("Awl sinks in", f"{probe_in:g} in."),
        Figure("Bending strength left", f"{loss.section_modulus_share:.0%}"),
        Figure("Stiffness left", f"{loss.inertia_share:.0%}"),
        Figure("Strength lost", f"{answer.lost_share:.0%}"),
    ]
    if beside is not None:
        approve = "; an engineer approves it" if beside.engineer_to_approve else ""
        figures.append(Figure("Piece beside it", feet_inches(beside.length_in) + approve))
    return tuple(figures)


def _beside(
    observation: Observation, surface: Surface, member: Probed, answer: Remedy
) -> SisterLength | None:
    """The length of the piece beside; the soft run is the zone's, along the members."""
    if answer.kind is not RemedyKind.SISTER or member.role is not MemberRole.REPEATED:
        return None
    reach_in = number(observation, "rot_reach_in")
    if reach_in is None and observation.zone is not None and surface.grid is not None:
        zone = observation.zone
        reach_in = 12 * (zone.height_ft if surface.grid.runs == "up" else zone.width_ft)
    span_in = member.span_in
    soft_in = min(reach_in or 0.0, span_in) if span_in else reach_in or 0.0
    return sister_length(soft_in, span_in, lost=answer.lost_share)
