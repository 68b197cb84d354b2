"""The repair scope, for bidders: the same lines for everybody, without a price in it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from leanto.assessment import Assessment
from leanto.bids.quantity import bid_quantity_in_words
from leanto.record.observation import Photo
from leanto.reports.blocks import (
    Band,
    Block,
    Bullets,
    Column,
    Heading,
    NewPage,
    Paragraph,
    Picture,
    Report,
    Row,
    Table,
)
from leanto.reports.contents.allowances import by_trade
from leanto.reports.contents.cautions import caution_blocks
from leanto.reports.contents.elements import element_title
from leanto.reports.contents.facts import block_table, site_facts, title_facts
from leanto.reports.contents.gaps import not_reached_blocks
from leanto.reports.contents.numbering import Numbering, numbering
from leanto.reports.contents.placed import where_in_words
from leanto.reports.contents.set_apart import alternate_blocks, by_owner_blocks
from leanto.reports.contents.sketches import item_figures
from leanto.reports.contents.there import there_in_words
from leanto.reports.contents.words import capitalized
from leanto.reports.in_units import in_shown_units, typed_for
from leanto.rules.finding import Finding
from leanto.scope.item import RepairItem

FOOTER = "Quantities are from a walk-through. Bidders verify them on site."
_LINES = (
    Column("Line", 0.06, "right"),
    Column("Work and place", 0.51),
    Column("Quantity", 0.13, "right"),
    Column("Unit price", 0.14, "right", blank=True),
    Column("Amount", 0.16, "right", blank=True),
)
TERMS = (
    "Quantities are from a walk-through, not from a survey. Verify them on site before you bid.",
    "Quantities are net, as measured in place, rounded up to whole units from ten on. Waste, "
    "fastenings, small parts and cleaning up are part of your price.",
    "Price every line. Write the amount, or write “none” where you do not offer the line, or "
    "“in line” with the number where it is part of another one.",
    "Your unit prices count for more or less of the same work, also for what an opened wall "
    "shows. Nothing beyond the scope is done before it is agreed in writing.",
    "Name what you leave out, your permits, your subcontractors, your start and your duration.",
    "Licensed work is done by licensed trades. Local codes govern. Nothing in this scope is "
    "called safe: look for yourself before you load, open or cut anything.",
)


def repair_scope(assessment: Assessment) -> Report:
    """Every repair item with quantity, place and pictures; blank columns for the bidder.

    Holds no price, no allowance, no budget, no reason that the owner typed, and of the owner's
    notes only those to bidders.
    """
    building, numbers = assessment.building, numbering(assessment)
    blocks: list[Block] = [
        title_facts(assessment),
        Heading(1, "How to price this scope"),
        Bullets(TERMS),
        Heading(1, "The building"),
        block_table(building),
        site_facts(building),
        *_cautions(assessment),
        *_tests(assessment),
        Heading(1, "Lines of work"),
        *_trade_blocks(assessment, numbers),
        *alternate_blocks(
            assessment, numbers, _LINES, lambda items, lines: _rows(items, lines, assessment)
        ),
        Heading(1, "Not included, not seen"),
        Paragraph(
            "Work that is not a line above is not part of this scope. Nobody has seen the places "
            "below; what they hide is not in the quantities."
        ),
        *by_owner_blocks(assessment, numbers),
        *not_reached_blocks(assessment, with_reasons=False),
        *_sketches(assessment, numbers),
        *_pictures(assessment, numbers),
    ]
    report = Report(
        kind="Repair scope for bidders",
        title=building.name,
        subtitle=building.place,
        as_of=assessment.as_of,
        blocks=tuple(blocks),
        invented=building.invented,
        footer=FOOTER,
        keywords=("repair scope", "bid", building.name),
    )
    return in_shown_units(report, *typed_for(assessment))


def _trade_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    blocks: list[Block] = []
    for trade, items in by_trade(assessment.scope.for_bidders).items():
        licensed = " (licensed trade)" if items[0].work.trade.is_licensed else ""
        total = ("", f"All lines: {trade}", "", "", "")
        rows = tuple(_rows(items, numbers, assessment))
        blocks += [Heading(2, capitalized(trade) + licensed), Table(_LINES, rows, (total,))]
    return tuple(blocks) or (Paragraph("Nothing was found that calls for work."),)


def _rows(
    items: Iterable[RepairItem], numbers: Numbering, assessment: Assessment
) -> Iterator[Row | Band]:
    by_element: dict[str, list[RepairItem]] = {}
    for item in items:
        by_element.setdefault(item.work.element, []).append(item)
    for element, group in sorted(by_element.items()):
        yield Band(element_title(element))
        yield from (_row(item, numbers, assessment) for item in group)


def _row(item: RepairItem, numbers: Numbering, assessment: Assessment) -> Row:
    said = where_in_words(item, assessment)
    where = f"\n{said}" if said else ""
    here = there_in_words(item, assessment)
    there = f"\n{here}" if here else ""
    access = "\nThrough an opened patch: the lining stays." if item.poor_access else ""
    note = f"\nNote: {item.note_to_bidders}" if item.note_to_bidders else ""
    return (
        str(numbers.items[item.id]),
        f"{item.work.title}: {item.place}\n{item.work.description}{where}{there}{access}{note}"
        f"\nCounted: {item.reason}",
        bid_quantity_in_words(item),
        "",
        "",
    )


def _cautions(assessment: Assessment) -> tuple[Block, ...]:
    cautions = caution_blocks(assessment)
    return (Heading(1, "Cautions"), *cautions) if cautions else ()


def _tests(assessment: Assessment) -> tuple[Block, ...]:
    """What must be tested before a lining is disturbed."""
    waiting = tuple(
        f"{one.surface_name}: {'; '.join(test.text for test in one.test_first)}"
        for one in assessment.decision.surfaces
        if one.test_first
    )
    if not waiting:
        return ()
    return (Heading(2, "Test before anything is disturbed"), Bullets(waiting))


def _sketches(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    figures = item_figures(assessment, numbers)
    return (NewPage(), Heading(1, "Sketches"), *figures) if figures else ()


def _pictures(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """The photos of the findings behind the lines, each once."""
    found: dict[str, tuple[Photo, Finding, list[RepairItem]]] = {}
    for finding in assessment.judged.grounds:
        items = [item for item in assessment.scope.items if finding.id in item.findings]
        for photo in finding.photos if items else ():
            found.setdefault(photo.digest, (photo, finding, []))[2].extend(items)
    pictures = tuple(
        Picture(photo, f"{finding.station_name}: {_lines(items, numbers)}")
        for photo, finding, items in found.values()
    )
    return (Heading(1, "Pictures"), *pictures) if pictures else ()


def _lines(items: list[RepairItem], numbers: Numbering) -> str:
    word = "line" if len({item.id for item in items}) == 1 else "lines"
    return f"{word} {numbers.of_items(items)}"
