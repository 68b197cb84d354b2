"""A small lined shed and made-up works, for tests that need some building."""

from __future__ import annotations

from decimal import Decimal

from leanto.scope.work import Work

SHED = """
name: Test shed
year_built: 1938
blocks:
  - id: main
    name: Main room
    length: 24'
    width: 12'
    eave_height: 8'
    walls: {lining: beaded board, spacing: 2'}
    ceiling: {lining: fiberboard, spacing: 2'}
    roof: {pitch: 6:12, spacing: 2'}
openings:
  - {id: D1, kind: door, on: main.south, from_left: 10', width: 3', height: 6' 8"}
"""


def make_work(work_id: str, **changes: object) -> Work:
    """A work counted in sq ft by a carpenter, with what the test changes."""
    facts: dict[str, object] = {
        "id": work_id,
        "title": work_id.replace("-", " "),
        "description": "What a bidder is to do.",
        "trade": "carpenter",
        "phase": "structure",
        "unit": "sf",
        "element": "B2010",
    }
    return Work.model_validate(facts | changes)


def three(low: float, likely: float, high: float) -> dict[str, Decimal]:
    return {"low": Decimal(str(low)), "likely": Decimal(str(likely)), "high": Decimal(str(high))}
