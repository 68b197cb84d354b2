"""The catalog of repair items: what can be done, by which trade, counted in what."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Literal

from pydantic import Field

from leanto.checklist.model import Identifier
from leanto.quantities import Unit
from leanto.strict import Strict


class Trade(StrEnum):
    LABORER = "laborer"
    CARPENTER = "carpenter"
    ROOFER = "roofer"
    MASON = "mason"
    ELECTRICIAN = "electrician"
    PEST_FIRM = "pest firm"
    HAZARD_FIRM = "hazard firm"
    INSULATOR = "insulator"
    DRYWALL_FINISHER = "drywall finisher"
    PAINTER = "painter"
    GLAZIER = "glazier"
    EXCAVATOR = "excavator"
    ENGINEER = "engineer"

    @property
    def is_licensed(self) -> bool:
        """Trades that most places license; local rules govern."""
        return self in (Trade.ELECTRICIAN, Trade.PEST_FIRM, Trade.HAZARD_FIRM, Trade.ENGINEER)


class Phase(StrEnum):
    """The order of work."""

    PROTECT = "protect and make safe"
    TREAT = "treat"
    STRIP = "strip"
    STRUCTURE = "structure"
    WEATHER_SHELL = "weather shell"
    ROUGH_IN = "rough-in"
    CLOSE_IN = "close in"
    FINISH = "finish"

    @property
    def rank(self) -> int:
        return list(Phase).index(self)


class Purchase(Strict):
    """What the material is bought in."""

    size: Annotated[float, Field(gt=0)]
    """How many units of the work one purchase covers."""
    name: Annotated[str, Field(max_length=60)]
    """Such as ``4x8 sheet`` or ``10 ft stick``."""


class Work(Strict):
    """One kind of repair item."""

    id: Identifier
    title: Annotated[str, Field(min_length=3, max_length=90)]
    description: Annotated[str, Field(min_length=10, max_length=400)]
    """What a bidder is to do, in one or two sentences."""
    trade: Trade
    phase: Phase
    unit: Unit
    waste_pct: Annotated[float, Field(ge=0, le=50)] = 0.0
    purchase: Purchase | None = None
    """When given, the quantity bought is rounded up to whole purchases."""
    scope: Literal["surface", "wall", "block", "building"] = "surface"
    """Whether calls merge per surface, over both faces of a wall (framing, which both faces show),
    or into one line for a block or the building."""
    once: bool = False
    """True for set-up that is paid once however many findings ask for it (a container, a call-out,
    a test): the largest call counts."""
    element: Annotated[str, Field(pattern=r"^[A-G][0-9]{2}([0-9]{2})?$")]
    """UNIFORMAT II group, NISTIR 6389."""
    caution: tuple[Identifier, ...] = ()


class WorkFile(Strict):
    """One file of ``checklists/work``."""

    work: Annotated[tuple[Work, ...], Field(min_length=1)]
