"""What wire, conduit and transformers of a feed cost by size, as written in the prices."""

from __future__ import annotations

from datetime import date
from typing import Annotated

from pydantic import Field

from leanto.cost.price import Amount, Three
from leanto.strict import Strict

Size = Annotated[str, Field(min_length=1, max_length=8)]
Hours = Annotated[float, Field(ge=0, le=10)]


class WireRow(Strict):
    """One conductor of a size, by the foot."""

    size: Size
    copper_usd: Amount | None = None
    """Left out where the size is not sold in this metal."""
    aluminum_usd: Amount | None = None
    pull_hours: Hours
    """To pull one foot of it through conduit, or lay it."""


class ConduitRow(Strict):
    """PVC conduit of a trade size with its fittings, by the foot."""

    size: Size
    usd: Amount
    lay_hours: Hours


class TransformerRow(Strict):
    """One transformer with its protection and grounding."""

    kva: Annotated[float, Field(gt=0, le=1000)]
    usd: Amount
    hours: Annotated[float, Field(ge=0, le=200)]


class FeedMaterials(Strict):
    """``checklists/prices/feed-materials.yaml``: likely figures, and how far they may be off."""

    wires: Annotated[tuple[WireRow, ...], Field(min_length=1)]
    conduits: Annotated[tuple[ConduitRow, ...], Field(min_length=1)]
    transformers: tuple[TransformerRow, ...]
    cable_factor: Annotated[float, Field(ge=1, le=5)]
    """A cable in one jacket against its conductors alone."""
    waste_pct: Amount
    trench_priced_in: Annotated[float, Field(gt=0, le=120)]
    """Depth that the price of the trench is for; another depth goes in proportion."""
    materials_range: Three
    """Low, likely and high against the figures above."""
    hours_range: Three
    source: Annotated[str, Field(min_length=3, max_length=300)]
    dated: date
