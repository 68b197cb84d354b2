"""The bids in short: the totals on one base, and what each bid was caught at."""

from __future__ import annotations

from datetime import date

from leanto.bids.levelled import Levelled
from leanto.building.model import Building
from leanto.reports.blocks import Block, Bullets, Heading, Paragraph, Report
from leanto.reports.contents.bids import NO_CHOICE, found_in, total_blocks
from leanto.reports.in_units import in_shown_units


def short_bids_report(made: Levelled, building: Building, as_of: date) -> Report:
    """What fits on a screen or two; the whole table has the lines and the questions."""
    blocks: list[Block] = [*total_blocks(made)]
    for one in made.bids:
        found = tuple(found_in(one)) or ("Nothing stands out.",)
        blocks += [Heading(2, one.bid.bidder), Bullets(found)]
    report = Report(
        kind="Bids in short",
        title=building.name,
        subtitle=building.place,
        as_of=as_of,
        blocks=(*blocks, Paragraph(NO_CHOICE, "note")),
        invented=building.invented,
    )
    return in_shown_units(report, building, *(one.bid for one in made.bids))
