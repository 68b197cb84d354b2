"""What the tape measures: the facts of one building, as typed."""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import Field, model_validator

from leanto.building.kinds import (
    Cladding,
    Covering,
    Deck,
    FloorKind,
    Foundation,
    Insulation,
    Lining,
    OpeningKind,
    RoofForm,
    Side,
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
    budget_usd: Annotated[float, Field(ge=0)] | None = None
    invented: bool = False
    """True for a made-up building; every report then says so."""
    blocks: Annotated[tuple[Block, ...], Field(min_length=1, max_length=8)]
    openings: Annotated[tuple[Opening, ...], Field(max_length=80)] = ()
