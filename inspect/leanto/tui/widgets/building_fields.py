"""Every field of a building as it is asked: what it is called, how it is typed, when it matters."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto

from leanto.building.kinds import (
    Cladding,
    Container,
    Covering,
    Deck,
    FloorKind,
    Foundation,
    Grade,
    Insulation,
    Lining,
    OpeningKind,
    RoofForm,
    Side,
    Species,
    Use,
)

YES, NO = "yes", "no"
YES_NO = (YES, NO)
AS_BLOCK = ""
"""On one wall: no change from the block's walls."""


class Kind(Enum):
    TEXT = auto()
    LENGTH = auto()
    """A bare number means feet."""
    SIZE = auto()
    """A length of more than zero."""
    SPACING = auto()
    """A bare number means inches."""
    SHORT_LENGTH = auto()
    """Feet or inches are both likely, so a bare number is refused."""
    MEMBER = auto()
    """A nominal lumber size."""
    PITCH = auto()
    COUNT = auto()
    NUMBER = auto()
    TEMPERATURE = auto()
    """A bare number is in degrees Fahrenheit."""
    MONEY = auto()
    CHOICE = auto()


@dataclass(frozen=True, slots=True)
class Field:
    path: str
    """Within the building, the block or the opening, as in the model: ``walls.spacing``."""
    label: str
    kind: Kind
    help: str
    """One line: what is meant, with an example."""
    choices: tuple[str, ...] = ()
    """Empty for a choice whose words hang on the rest of the building."""
    start: str = ""
    """What stands there in a new building, block or opening."""
    may_be_empty: bool = False
    nothing: str = "nothing"
    """What an empty choice is called."""
    only_if: tuple[str, tuple[str, ...]] | None = None
    """(path, values): asked only while that field of the same part holds one of the values, or
    anything at all when there are none."""
    counts_hidden: bool = False
    """True when it counts even while it is not asked."""
    heading: str = ""
    """Stands above the field."""


NOT_KNOWN = "not known"
_MEMBER = "Nominal size of one member, like 2x4 or 2x6"
_SPACING = "Center to center, like 16 in. or 2 ft"
_FULL_SIZE = "Yes when rough-sawn to the full size: a 2x4 that measures 2 by 4"
_LINED = "What hides the framing inside; none when it is open to view"

BUILDING_FIELDS = (
    Field("name", "Name", Kind.TEXT, "What people call it, like Smith barn"),
    Field("place", "Place", Kind.TEXT, "Address or farm; may be empty", may_be_empty=True),
    Field("owner", "Owner", Kind.TEXT, "For the report's first page", may_be_empty=True),
    Field("year_built", "Built in", Kind.COUNT, "The year, like 1938; an estimate will do"),
    Field(
        "foundation",
        "Foundation",
        Kind.CHOICE,
        "What it stands on",
        tuple(Foundation),
        Foundation.STONE_AND_SKIDS,
    ),
    Field("intended_use", "To become", Kind.CHOICE, "The use it gets", tuple(Use), Use.WORKSHOP),
    Field("to_be_heated", "To be heated", Kind.CHOICE, "Yes calls for insulation", YES_NO, YES),
    Field(
        "distance_to_panel",
        "To the house panel",
        Kind.LENGTH,
        "Along the run of the cable, like 140 ft; 0 for no feed",
        start="0",
    ),
    Field(
        "budget_usd",
        "Budget",
        Kind.MONEY,
        "Dollars, like 38,000; may be empty",
        may_be_empty=True,
    ),
    Field(
        "replacement_usd_per_sqft",
        "New, $ per sq ft",
        Kind.MONEY,
        "What a new building like it costs here, like 90; may be empty",
        may_be_empty=True,
    ),
    Field("invented", "Made up", Kind.CHOICE, "Yes for a made-up building", YES_NO, NO),
    Field(
        "lumber.species",
        "Species",
        Kind.CHOICE,
        "Of the framing, if somebody knows; else every group is tried",
        ("", *Species),
        may_be_empty=True,
        nothing=NOT_KNOWN,
        heading="Framing lumber",
    ),
    Field(
        "lumber.grade",
        "Grade",
        Kind.CHOICE,
        "As stamped or graded; else the usual ones are tried",
        ("", *Grade),
        may_be_empty=True,
        nothing=NOT_KNOWN,
    ),
    Field(
        "lumber.stamped",
        "Stamp read",
        Kind.CHOICE,
        "Yes when a stamp was read, or a grader graded it in place",
        YES_NO,
        NO,
    ),
    Field(
        "ground_snow_psf",
        "Ground snow, psf",
        Kind.NUMBER,
        "From the building department, like 30; may be empty",
        may_be_empty=True,
        heading="Climate and heat",
    ),
    Field(
        "climate_zone",
        "Energy code zone",
        Kind.COUNT,
        "1 to 8, like 5; may be empty",
        may_be_empty=True,
    ),
    Field(
        "winter_low_f",
        "Winter low",
        Kind.TEMPERATURE,
        "The coldest day that heating is planned for, like 5 F; may be empty",
        may_be_empty=True,
    ),
    Field(
        "indoor_f",
        "Indoors in winter",
        Kind.TEMPERATURE,
        "Wanted, like 65 F; may be empty",
        may_be_empty=True,
    ),
    *(
        Field(
            f"target_r.{part}",
            f"R of the {part}",
            Kind.NUMBER,
            "Insulation wanted, like 21; empty takes the code's table",
            may_be_empty=True,
        )
        for part in ("walls", "ceiling", "floor")
    ),
    Field(
        "haul.container",
        "Container",
        Kind.CHOICE,
        "What hauls the debris; a trailer is always reckoned beside it",
        ("", *Container),
        may_be_empty=True,
        nothing="not chosen",
        heading="Debris",
    ),
)

_WALLS = (
    Field("walls.member", "Stud", Kind.MEMBER, _MEMBER, start="2x4", heading="Walls"),
    Field("walls.spacing", "Stud spacing", Kind.SPACING, _SPACING, start="16 in"),
    Field("walls.full_size", "Full size", Kind.CHOICE, _FULL_SIZE, YES_NO, NO),
    Field(
        "walls.cladding", "Cladding", Kind.CHOICE, "Outside face", tuple(Cladding), Cladding.BOARD
    ),
    Field("walls.lining", "Lining", Kind.CHOICE, _LINED, tuple(Lining), Lining.NONE),
    Field(
        "walls.insulation",
        "Insulation",
        Kind.CHOICE,
        "Unknown when a lining hides it",
        tuple(Insulation),
        Insulation.NONE,
    ),
)
_ROOF = (
    Field(
        "roof.form",
        "Form",
        Kind.CHOICE,
        "Shed: one slope; gable: two; hip: four",
        tuple(RoofForm),
        RoofForm.GABLE,
        heading="Roof",
    ),
    Field(
        "roof.pitch",
        "Pitch",
        Kind.PITCH,
        "Rise in 12, like 6:12, 6 in 12 or 27 deg",
        only_if=("roof.form", (RoofForm.GABLE, RoofForm.SHED, RoofForm.HIP)),
    ),
    Field(
        "roof.high_side",
        "High side",
        Kind.CHOICE,
        "The side with the high wall, across the length",
        only_if=("roof.form", (RoofForm.SHED,)),
    ),
    Field(
        "roof.overhang",
        "Eave overhang",
        Kind.SHORT_LENGTH,
        "Level from the wall, like 12 in or 1'",
        start="12 in",
    ),
    Field(
        "roof.rake_overhang",
        "Rake overhang",
        Kind.SHORT_LENGTH,
        "Past the end walls, like 6 in; 0 in for none",
        start="0 in",
    ),
    Field("roof.member", "Rafter", Kind.MEMBER, _MEMBER, start="2x4"),
    Field("roof.spacing", "Rafter spacing", Kind.SPACING, _SPACING, start="16 in"),
    Field("roof.full_size", "Full size", Kind.CHOICE, _FULL_SIZE, YES_NO, NO),
    Field(
        "roof.covering",
        "Covering",
        Kind.CHOICE,
        "What sheds the water",
        tuple(Covering),
        Covering.ASPHALT_SHINGLE,
    ),
    Field("roof.layers", "Layers", Kind.COUNT, "Coverings on top of each other, 1 to 6", start="1"),
    Field(
        "roof.covering_age_years",
        "Age of covering",
        Kind.COUNT,
        "Years, like 27; empty when nobody knows",
        may_be_empty=True,
    ),
    Field("roof.deck", "Deck", Kind.CHOICE, "Under the covering", tuple(Deck), Deck.BOARDS),
    Field("roof.gutters", "Gutters", Kind.CHOICE, "Any gutter on this roof", YES_NO, NO),
)
_HAS_CEILING = ("ceiling", (YES,))
_CEILING = (
    Field(
        "ceiling",
        "Ceiling",
        Kind.CHOICE,
        "No when the room is open to the rafters",
        YES_NO,
        NO,
        heading="Ceiling",
    ),
    Field("ceiling.member", "Joist", Kind.MEMBER, _MEMBER, start="2x4", only_if=_HAS_CEILING),
    Field(
        "ceiling.spacing",
        "Joist spacing",
        Kind.SPACING,
        _SPACING,
        start="16 in",
        only_if=_HAS_CEILING,
    ),
    Field(
        "ceiling.full_size",
        "Full size",
        Kind.CHOICE,
        _FULL_SIZE,
        YES_NO,
        NO,
        only_if=_HAS_CEILING,
    ),
    Field(
        "ceiling.lining",
        "Lining",
        Kind.CHOICE,
        _LINED,
        tuple(Lining),
        Lining.NONE,
        only_if=_HAS_CEILING,
    ),
    Field(
        "ceiling.insulation",
        "Insulation",
        Kind.CHOICE,
        "Above the ceiling",
        tuple(Insulation),
        Insulation.NONE,
        only_if=_HAS_CEILING,
    ),
)
_FRAMED_FLOOR = ("floor.kind", (FloorKind.JOISTS, FloorKind.SLEEPERS))
_FLOOR = (
    Field(
        "floor.kind",
        "Floor",
        Kind.CHOICE,
        "What one stands on",
        tuple(FloorKind),
        FloorKind.JOISTS,
        heading="Floor",
    ),
    Field(
        "floor.member",
        "Joist",
        Kind.MEMBER,
        _MEMBER,
        start="2x6",
        only_if=_FRAMED_FLOOR,
        counts_hidden=True,
    ),
    Field(
        "floor.spacing",
        "Joist spacing",
        Kind.SPACING,
        _SPACING,
        start="16 in",
        only_if=_FRAMED_FLOOR,
        counts_hidden=True,
    ),
    Field(
        "floor.full_size",
        "Full size",
        Kind.CHOICE,
        _FULL_SIZE,
        YES_NO,
        NO,
        only_if=_FRAMED_FLOOR,
        counts_hidden=True,
    ),
    Field(
        "floor.clear_span",
        "Clear span",
        Kind.LENGTH,
        "Between supports, like 5' 8\"; empty means the short side",
        may_be_empty=True,
        only_if=_FRAMED_FLOOR,
        counts_hidden=True,
    ),
)
_DIFFERS = ("on_wall", (YES,))


def _wall_change(side: Side) -> tuple[Field, ...]:
    """What may differ on one wall; empty is as on the block's walls."""
    words = {"lining": Lining, "cladding": Cladding, "insulation": Insulation}
    return tuple(
        Field(
            f"on_wall.{side}.{name}",
            f"{side.capitalize()} {name}",
            Kind.CHOICE,
            "As the block has it, or this wall's own",
            (AS_BLOCK, *kinds),
            may_be_empty=True,
            nothing="as the block",
            only_if=_DIFFERS,
        )
        for name, kinds in words.items()
    )


_ON_WALL = (
    Field(
        "on_wall",
        "A wall differs",
        Kind.CHOICE,
        "Yes when one wall has another lining, cladding or insulation",
        YES_NO,
        NO,
        heading="Single walls",
    ),
    *(field for side in Side for field in _wall_change(side)),
)
_LEANS: tuple[str, tuple[str, ...]] = ("attached.to", ())
_ATTACHED = (
    Field(
        "attached.to",
        "Stands against",
        Kind.CHOICE,
        "The block it leans on; nothing for the first one",
        may_be_empty=True,
        heading="Place",
    ),
    Field(
        "attached.side",
        "On its side",
        Kind.CHOICE,
        "Which wall of the other block",
        tuple(Side),
        Side.NORTH,
        only_if=_LEANS,
    ),
    Field(
        "attached.offset",
        "From its left end",
        Kind.LENGTH,
        "Seen from outside, like 12 ft or 0",
        start="0",
        only_if=_LEANS,
    ),
)

BLOCK_FIELDS = (
    Field("name", "Name", Kind.TEXT, "What people call it, like Main room"),
    Field("id", "Short name", Kind.TEXT, "For places like main.north: small letters, digits, -"),
    Field("length", "Length", Kind.SIZE, "Along the ridge or the low eave, like 24' 6\" or 7.5 m"),
    Field("width", "Width", Kind.SIZE, "Across the length, like 12' or 3.66 m"),
    Field("eave_height", "Eave height", Kind.SIZE, "Floor to roof at the low eave, like 7' 6\""),
    Field(
        "ridge_runs",
        "Length runs",
        Kind.CHOICE,
        "The compass direction of the length",
        ("east-west", "north-south"),
        "east-west",
    ),
    *_ATTACHED,
    *_WALLS,
    *_ROOF,
    *_CEILING,
    *_FLOOR,
    *_ON_WALL,
)

OPENING_FIELDS = (
    Field("id", "Mark", Kind.TEXT, "A letter and a number, like D1 or W3"),
    Field("kind", "Kind", Kind.CHOICE, "What it is", tuple(OpeningKind), OpeningKind.WINDOW),
    Field("on", "On", Kind.CHOICE, "The wall or the roof slope it is in"),
    Field("from_left", "From left end", Kind.LENGTH, "Seen from outside, like 2' 6\""),
    Field(
        "from_bottom",
        "Above floor or eave",
        Kind.LENGTH,
        "To its lower edge, like 2' 9\"",
        start="0",
    ),
    Field("width", "Width", Kind.SIZE, "Like 3', 36 in or 0.9 m"),
    Field("height", "Height", Kind.SIZE, "Like 6' 8\" or 80 in"),
)

APPLIANCE_FIELDS = (
    Field("name", "Name", Kind.TEXT, "A tool, heater or machine, like Table saw"),
    Field(
        "watts",
        "Watts",
        Kind.NUMBER,
        "From the name plate, like 1,500; or type amps instead",
        may_be_empty=True,
    ),
    Field(
        "amps",
        "Amps",
        Kind.NUMBER,
        "From the name plate, like 12; or type watts instead",
        may_be_empty=True,
    ),
    Field("volts", "Volts", Kind.CHOICE, "As on its plug or plate", ("120", "240"), "120"),
    Field(
        "continuous",
        "Runs for hours",
        Kind.CHOICE,
        "Yes when it runs three hours or more at a time",
        YES_NO,
        NO,
    ),
)
