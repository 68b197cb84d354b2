"""Price lines and wages, as written in ``checklists/prices``."""

from __future__ import annotations

from datetime import date
from decimal import Decimal
from typing import Annotated, Self

from pydantic import Field, model_validator

from leanto.checklist.model import Identifier
from leanto.scope.work import Trade
from leanto.strict import Strict

Amount = Annotated[Decimal, Field(ge=0, le=1_000_000)]
Multiplier = Annotated[Decimal, Field(gt=0, le=10)]


class Three(Strict):
    """Low, likely and high."""

    low: Amount
    likely: Amount
    high: Amount

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if not self.low <= self.likely <= self.high:
            raise ValueError("low, likely and high must not fall")
        return self


class Price(Strict):
    """What one unit of a work takes: labor hours and materials, each as three points."""

    work: Identifier
    hours: Three
    """Labor hours per unit of the work."""
    materials_usd: Three
    """Materials per unit, before waste and tax."""
    minimum_usd: Amount = Decimal(0)
    """The least a visit for this work costs."""
    debris_lb: Amount = Decimal(0)
    """Per unit."""
    source: Annotated[str, Field(min_length=3, max_length=300)]
    """A public source, or ``planning figure, no source``."""
    dated: date


class PriceFile(Strict):
    prices: Annotated[tuple[Price, ...], Field(min_length=1)]


class Wage(Strict):
    trade: Trade
    hourly_usd: Three
    """Paid to the worker, before burden."""
    source: Annotated[str, Field(min_length=3, max_length=300)]
    dated: date


class Factors(Strict):
    """``checklists/prices/factors.yaml``: wages and what is put on top."""

    wages: tuple[Wage, ...]
    burden: Multiplier
    """Total labor cost per dollar of wage."""
    burden_source: str
    region: Multiplier = Decimal(1)
    """Local cost against the national average."""
    region_source: str
    overhead_pct: Amount
    profit_pct: Amount
    sales_tax_pct: Amount = Decimal(0)
    """On materials."""
    markup_source: str
    poor_access: Three
    """Labor factor for work done through an opened patch."""
    poor_access_source: str
    change_order_pct: Three
    """Premium on work that is met after the price was agreed."""
    change_order_source: str
    haul_usd_per_lb: Three
    haul_source: str
    crew: Three
    """Hours really needed against the likely ones, the same for every line: how good and how
    busy the crew is."""
    prices: Three
    """Material prices here and then against the likely ones, the same for every line."""
    shared_source: str
    own_hour_usd: Amount = Decimal(15)
    """What an hour of the owner's own is worth to the owner, for weighing what to do alone."""
    own_pace: Multiplier = Decimal("1.5")
    """Hours an owner needs for one hour of a tradesman."""
    own_source: str = "planning figure, no source"
    replacement_usd_per_sqft: Three | None = None
    """A new outbuilding of the kind, finished; per sq ft of floor."""
    replacement_source: str = "planning figure, no source"

    @model_validator(mode="after")
    def _every_trade_has_a_wage(self) -> Self:
        missing = set(Trade) - {wage.trade for wage in self.wages}
        if missing:
            raise ValueError("no wage for " + ", ".join(sorted(missing)))
        return self
