"""What the tape measures: the facts of one building, as typed."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

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
from leanto.quantities import LengthFt, Pitch
from leanto.strict import Strict

Identifier = Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]{0,30}$")]
OpeningId = Annotated[str, Field(pattern=r"^[A-Za-z][A-Za-z0-9-]{0,15}$")]
Text = Annotated[str, Field(max_length=200)]
MemberSize = Annotated[str, Field(pattern=r"^[1-8]x([2-9]|1[0-4])$")]
"""Nominal lumber size, such as ``2x4``."""


class Framing(Strict):
    """Members of one size at one spacing."""

    member: MemberSize = "2x4"
    spacing: LengthFt = 16 / 12
    """Center to center."""
    full_size: bool = False
    """True when the lumber is rough-sawn to the full nominal size."""


class Walls(Framing):
    """Framing and faces that all four walls of a block share."""

    cladding: Cladding = Cladding.BOARD
    lining: Lining = Lining.NONE
    insulation: Insulation = Insulation.NONE


class Roof(Framing):
    form: RoofForm = RoofForm.GABLE
    pitch: Pitch | None = None
    """Rise in 12; left out for a flat roof."""
    overhang: LengthFt = 1.0
    """At the eaves, measured level."""
    rake_overhang: LengthFt = 0.0
    high_side: Side | None = None
    """The side with the high wall; a shed roof must name it."""
    covering: Covering = Covering.ASPHALT_SHINGLE
    layers: Annotated[int, Field(ge=1, le=6)] = 1
    covering_age_years: Annotated[int, Field(ge=0, le=200)] | None = None
    deck: Deck = Deck.BOARDS
    gutters: bool = False


class Ceiling(Framing):
    lining: Lining = Lining.NONE
    insulation: Insulation = Insulation.NONE


class Floor(Framing):
    kind: FloorKind = FloorKind.JOISTS
    clear_span: LengthFt | None = None
    """Between supports; left out, the block's short side."""


class WallChange(Strict):
    """What differs on one wall from its block's walls."""

    lining: Lining | None = None
    cladding: Cladding | None = None
    insulation: Insulation | None = None


class Attachment(Strict):
    """Where a lean-to meets the block it stands against."""

    to: Identifier
    side: Side
    """The side of the other block that this block stands against."""
    offset: LengthFt = 0.0
    """From the left end of that wall, seen from outside."""


class Block(Strict):
    """A rectangular part of the building with its own height and roof."""

    id: Identifier
    name: Text
    length: LengthFt
    """Along the ridge; for a shed or flat roof, along the low eave."""
    width: LengthFt
    eave_height: LengthFt
    """Floor to the underside of the roof at the (low) eave."""
    ridge_runs: Annotated[str, Field(pattern="^(east-west|north-south)$")] = "east-west"
    """The direction in which ``length`` runs."""
    walls: Walls = Walls()
    roof: Roof = Roof()
    ceiling: Ceiling | None = None
    """Left out when the room is open to the rafters."""
    floor: Floor = Floor()
    on_wall: dict[Side, WallChange] = Field(default_factory=dict)
    attached: Attachment | None = None

    @model_validator(mode="after")
    def _roof_is_whole(self) -> Self:
        roof = self.roof
        if roof.form is RoofForm.FLAT and roof.pitch is not None:
            raise ValueError("a flat roof has no pitch; leave pitch out")
        if roof.form is not RoofForm.FLAT and roof.pitch is None:
            raise ValueError(f"a {roof.form} roof needs a pitch, such as 6:12")
        if roof.form is RoofForm.SHED:
            low_eave_sides = (
                (Side.NORTH, Side.SOUTH)
                if self.ridge_runs == "east-west"
                else (Side.EAST, Side.WEST)
            )
            if roof.high_side not in low_eave_sides:
                raise ValueError(
                    "a shed roof needs high_side, across the length: " + " or ".join(low_eave_sides)
                )
        if self.length <= 0 or self.width <= 0 or self.eave_height <= 0:
            raise ValueError("length, width and eave_height must be more than zero")
        return self


class Opening(Strict):
    """A hole in a wall or roof slope."""

    id: OpeningId
    kind: OpeningKind
    on: str
    """``block.side`` for a wall, ``block.roof.side`` for a roof slope."""
    from_left: LengthFt
    """From the left end, seen from outside."""
    from_bottom: LengthFt = 0.0
    """Above the floor line, or up the slope from the eave."""
    width: LengthFt
    height: LengthFt


class Lumber(Strict):
    """What the framing lumber is, as far as somebody knows; else every group is tried."""

    species: Species | None = None
    grade: Grade | None = None
    stamped: bool = False
    """True when a grade stamp was read, or a lumber grader graded it in place."""


class Appliance(Strict):
    """A tool, heater or machine that the owner means to run."""

    name: Annotated[str, Field(min_length=1, max_length=60)]
    watts: Annotated[float, Field(gt=0, le=50_000)] | None = None
    amps: Annotated[float, Field(gt=0, le=400)] | None = None
    """Instead of watts, from the name plate."""
    volts: Literal[120, 240] = 120
    continuous: bool = False
    """True when it runs three hours or more at a time."""

    @model_validator(mode="after")
    def _one_amount(self) -> Self:
        if (self.watts is None) == (self.amps is None):
            raise ValueError("give either watts or amps, from the name plate")
        return self


class TargetR(Strict):
    """Insulation that is wanted, as R values; left out, the code's table by climate zone."""

    walls: Annotated[float, Field(gt=0, le=100)] | None = None
    ceiling: Annotated[float, Field(gt=0, le=100)] | None = None
    floor: Annotated[float, Field(gt=0, le=100)] | None = None


class Haul(Strict):
    container: Container | None = None
    """What hauls the debris; a trailer is always reckoned beside it."""


class Building(Strict):
    """One outbuilding, as it stands and as it is meant to be used."""

    name: Text
    place: Text = ""
    owner: Text = ""
    year_built: Annotated[int, Field(ge=1600, le=2100)]
    foundation: Foundation = Foundation.STONE_AND_SKIDS
    intended_use: Use = Use.WORKSHOP
    to_be_heated: bool = True
    distance_to_panel: LengthFt = 0.0
    """From the supply panel in the house to this building, along the run."""
    budget_usd: Annotated[float, Field(gt=0)] | None = None
    """Left out when there is none; the figures are then held against nothing."""
    replacement_usd_per_sqft: Annotated[float, Field(gt=0, le=2000)] | None = None
    """What a new outbuilding of the kind would cost here, per sq ft of floor."""
    lumber: Lumber = Lumber()
    ground_snow_psf: Annotated[float, Field(ge=0, le=400)] | None = None
    """Ground snow load of the place, from its building department; left out when not known."""
    climate_zone: Annotated[int, Field(ge=1, le=8)] | None = None
    """Zone of the International Energy Conservation Code."""
    target_r: TargetR = TargetR()
    winter_low_f: Annotated[float, Field(ge=-60, le=70)] | None = None
    """The coldest outdoor temperature that the heating is planned for."""
    indoor_f: Annotated[float, Field(ge=35, le=90)] | None = None
    """Indoor temperature wanted in winter."""
    appliances: Annotated[tuple[Appliance, ...], Field(max_length=40)] = ()
    """The owner's own list; it takes the place of the planning list for the use."""
    haul: Haul = Haul()
    invented: bool = False
    """True for a made-up building; every report then says so."""
    blocks: Annotated[tuple[Block, ...], Field(min_length=1, max_length=8)]
    openings: Annotated[tuple[Opening, ...], Field(max_length=80)] = ()
