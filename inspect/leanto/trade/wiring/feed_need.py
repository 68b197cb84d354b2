"""What a feed must do, and the ways of running it that are compared."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import StrEnum

from leanto.trade.wiring.burial import Method, Place
from leanto.trade.wiring.conductor import Column, Metal
from leanto.trade.wiring.conduit import Insulation
from leanto.trade.wiring.confirm import code
from leanto.trade.wiring.voltage_drop import RECOMMENDED_PCT

CONTINUOUS_FACTOR = 1.25
CONTINUOUS_SOURCE = code("215.2(A)(1) and 215.3, continuous load")
TERMINAL_LIMIT_A = 100
TERMINAL_SOURCE = code("110.14(C)(1)")
"""Up to this rating the 60 C column holds, unless both ends are marked for 75 C."""


class Supply(StrEnum):
    """Voltage of the feed; a grounding conductor comes on top of the wires named."""

    V120 = "120 V"
    """One hot wire and a neutral."""
    V240 = "240 V"
    """Two hot wires, no neutral."""
    V120_240 = "120/240 V"
    """Two hot wires and a neutral: what a subpanel takes."""
    V480 = "480 V"
    """Two hot wires between a transformer at the house and one at the building."""

    @property
    def volts(self) -> float:
        """Volts between the wires the load is taken across."""
        return {Supply.V120: 120.0, Supply.V480: 480.0}.get(self, 240.0)

    @property
    def wires(self) -> int:
        """Circuit conductors without the grounding conductor."""
        return 3 if self is Supply.V120_240 else 2


@dataclass(frozen=True, slots=True)
class FeedNeed:
    """What the feed must carry, how far, and within which limits."""

    load_a: float
    """Amps that run less than three hours at a time."""
    one_way_ft: float
    """Length of the run from panel to panel, one way."""
    continuous_a: float = 0.0
    """Amps that run three hours or more."""
    supply: Supply = Supply.V120_240
    rating_a: int | None = None
    """Breaker at the supply end, if one is wanted; else the smallest standard one that fits."""
    drop_limit_pct: float = RECOMMENDED_PCT
    terminals_75c: bool = False
    """Both ends are marked for 75 C; an electrician must have read them."""
    power_factor: float = 1.0
    place: Place = Place.YARD
    """The most demanding ground the run crosses."""
    is_branch_circuit: bool = False
    """It feeds receptacles or lights itself, with no panel at the far end."""
    gfci_at_source: bool = False

    def __post_init__(self) -> None:
        amounts = (self.load_a, self.continuous_a, self.one_way_ft, self.drop_limit_pct)
        if any(not math.isfinite(amount) or amount < 0 for amount in amounts):
            raise ValueError(f"load, length and limit are zero or more: {amounts}")
        if self.load_a + self.continuous_a == 0 or self.drop_limit_pct == 0:
            raise ValueError("a feed needs a load and a drop limit above zero")
        if self.rating_a is not None and self.rating_a < self.design_a:
            raise ValueError(f"a {self.rating_a} A breaker is below {self.design_a:g} A of load")

    @property
    def running_a(self) -> float:
        """All amps at once, as they cause the drop."""
        return self.load_a + self.continuous_a

    @property
    def design_a(self) -> float:
        """Amps the conductor and the breaker are sized for: 1.25 x continuous + the rest."""
        return self.load_a + CONTINUOUS_FACTOR * self.continuous_a


@dataclass(frozen=True, slots=True)
class Way:
    """One way of running the feed."""

    name: str
    metal: Metal
    method: Method
    wire: str
    """Cable or conductor type."""
    insulation_column_c: Column
    """Highest ampacity column the type may use."""
    smallest_size: str
    largest_size: str
    note: str
    insulation: Insulation | None = None
    """For conductors in conduit."""
    is_cable: bool = False
    """All conductors in one jacket."""

    @property
    def in_conduit(self) -> bool:
        return self.insulation is not None


WAYS = (
    Way(
        "copper cable, direct burial",
        "copper",
        Method.DIRECT_BURIAL,
        "UF-B cable",
        60,
        "14",
        "4/0",
        note=(
            "A cable's own grounding conductor is fixed by its maker; it must be at least the "
            "size given here. UF-B above 6 AWG is seldom stocked (common practice)."
        ),
        is_cable=True,
    ),
    Way(
        "aluminum conductors, direct burial",
        "aluminum",
        Method.DIRECT_BURIAL,
        "USE-2 conductors, also marked RHW-2 or XHHW-2 where they run indoors",
        75,
        "6",
        "350",
        note="Aluminum needs terminals marked for it. Below 6 AWG it is not used for a feed.",
    ),
    Way(
        "copper in PVC conduit",
        "copper",
        Method.PVC,
        "THWN-2 conductors",
        75,
        "14",
        "350",
        insulation="THWN-2",
        note="The conduit can be drawn again later without digging.",
    ),
    Way(
        "aluminum in PVC conduit",
        "aluminum",
        Method.PVC,
        "XHHW-2 conductors",
        75,
        "6",
        "350",
        insulation="XHHW-2",
        note="Aluminum needs terminals marked for it. Below 6 AWG it is not used for a feed.",
    ),
)
WAYS_SOURCE = code("340.10, 340.80, 338.10, 300.5(B), 310.10", from_memory=True)
"""Types of cable and conductor for wet places, and the column each may use."""
