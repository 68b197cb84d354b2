"""Reports that are the owner's alone: one frame for all of them."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from leanto.building.model import Building
from leanto.reports.blocks import Block, Report
from leanto.reports.in_units import in_shown_units

OWNERS = "For the owner. Not to be passed on to a bidder."


def owners_report(
    kind: str, blocks: Sequence[Block], building: Building, as_of: date, *typed: object
) -> Report:
    """The blocks as a report about the building; ``typed`` is what people typed in it."""
    report = Report(
        kind=kind,
        title=building.name,
        subtitle=building.place,
        as_of=as_of,
        blocks=tuple(blocks),
        invented=building.invented,
        footer=OWNERS,
    )
    return in_shown_units(report, building, *typed)
