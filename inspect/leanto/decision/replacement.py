"""Repair against a new building of the same floor, and the half-value rule of regulation."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from leanto.building.model import Building
from leanto.cost.price import Factors
from leanto.money import Spread, exact
from leanto.source import Source

HALF: Final = 0.5
HALF_VALUE_SOURCE: Final = Source(
    "44 CFR 59.1 and FEMA 213",
    place="substantial improvement: half of the market value before the work, land left out",
)
HALF_VALUE_CODE_SOURCE: Final = Source(
    "International Existing Building Code", place="substantial improvement", mark="from memory"
)


@dataclass(frozen=True, slots=True)
class Replacement:
    """The repair beside an allowance for a new building."""

    floor_sqft: float
    per_sqft: Spread
    new_usd: Spread
    repair_p50: float
    repair_p80: float
    source: str
    """Of the allowance."""

    @property
    def share(self) -> float:
        """The repair's P50 over the likely cost of a new one."""
        return self.repair_p50 / float(self.new_usd.likely)

    @property
    def reaches_half(self) -> bool:
        """True from half of a new building's cost on: ask which rules then apply.

        The rule itself reads market value, which for an old building is less than a new one
        costs; so a repair that stays under half here may still reach it there.
        """
        return self.share >= HALF


def floor_sqft(building: Building) -> float:
    """The plan of all blocks, outside measure."""
    return sum(block.length * block.width for block in building.blocks)


def replacement(
    building: Building, factors: Factors, repair_p50: float, repair_p80: float
) -> Replacement | None:
    """The comparison; None where nobody gave a price of a new building.

    The building's own figure goes before the planning figure, which comes with a range.
    """
    own, planned = building.replacement_usd_per_sqft, factors.replacement_usd_per_sqft
    if own is not None:
        per_sqft, source = Spread.of(own, own, own), "given for this building"
    elif planned is not None and planned.likely > 0:
        per_sqft = Spread(planned.low, planned.likely, planned.high)
        source = factors.replacement_source
    else:
        return None
    area = floor_sqft(building)
    return Replacement(area, per_sqft, per_sqft.scaled(exact(area)), repair_p50, repair_p80, source)
