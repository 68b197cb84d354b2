"""The work as bidders read it: by trade and place, then alternates, sums, and what is left out."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from leanto.assessment import Assessment
from leanto.bids.in_feet import read_unit
from leanto.bids.model import Allowance, Alternate, BidForm
from leanto.bids.quantity import bid_quantity_in_words
from leanto.bids.short_id import alternate_number
from leanto.money import format_usd
from leanto.reports.blocks import Band, Block, Bullets, Column, Heading, Paragraph, Row, Table
from leanto.reports.contents.allowances import by_trade
from leanto.reports.contents.elements import element_title
from leanto.reports.contents.gaps import not_reached_blocks
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.placed import where_in_words
from leanto.reports.contents.words import capitalized
from leanto.scope.item import RepairItem

_LINES = (Column("Line", 0.07, "right"), Column("Work", 0.76), Column("Quantity", 0.17, "right"))
_ALTERNATES = (Column("Alternate", 0.36), Column("What it is", 0.5), Column("To the base", 0.14))
_ALLOWANCES = (Column("Allowance", 0.8), Column("Amount", 0.2, "right"))
_BY_OWNER = (
    Column("Line", 0.07, "right"),
    Column("By the owner", 0.76),
    Column("Quantity", 0.17, "right"),
)


def line_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """Every line of the base bid: by trade, within it by place, with what is to be done."""
    blocks: list[Block] = []
    for items in by_trade(assessment.scope.for_bidders).values():
        blocks += [
            Heading(2, trade_title(items[0])),
            Table(_LINES, tuple(_rows(items, numbers, assessment))),
        ]
    return tuple(blocks) or (Paragraph("Nothing was found that calls for work."),)


def trade_title(item: RepairItem) -> str:
    """The trade that does the item."""
    trade = item.work.trade
    return capitalized(trade) + (" (licensed trade)" if trade.is_licensed else "")


def alternate_blocks(alternates: Sequence[Alternate]) -> tuple[Block, ...]:
    if not alternates:
        return ()
    rows = tuple(
        (f"{alternate_number(at)}. {one.title}", one.text, capitalized(one.kind))
        for at, one in enumerate(alternates)
    )
    return (
        Heading(1, "Alternates"),
        Paragraph(
            "Priced apart from the base bid, each on its own and in full. “Add” goes on top of "
            "the base bid, “deduct” comes off it; write the amount without a sign. The owner "
            "takes what suits."
        ),
        Table(_ALTERNATES, rows),
    )


def allowance_blocks(allowances: Sequence[Allowance]) -> tuple[Block, ...]:
    if not allowances:
        return ()
    rows = tuple((one.title, format_usd(one.amount, cents=True)) for one in allowances)
    return (
        Heading(1, "Allowances"),
        Paragraph(
            "Sums that every bid carries alike, for what is not chosen yet. They are part of the "
            "base bid as they stand; what is spent is settled against them."
        ),
        Table(_ALLOWANCES, rows),
    )


def hidden_blocks(form: BidForm) -> tuple[Block, ...]:
    """What unit prices are asked for, and why."""
    if not form.unit_prices:
        return ()
    return (
        Heading(1, "Unit prices for what is hidden"),
        Paragraph(
            "Closed walls and floors may hide more than anybody has seen. The bid form asks what "
            "one unit costs, complete, in the open: these prices count for what is found, once it "
            "is shown, counted together and agreed in writing. They are part of no total."
        ),
        Bullets(tuple(f"{one.title}: per {read_unit(one.unit)}" for one in form.unit_prices)),
    )


def left_out_blocks(
    assessment: Assessment, numbers: Numbering, exclusions: Sequence[str]
) -> tuple[Block, ...]:
    """What is not part of the bid, and what nobody has seen."""
    own = assessment.scope.by_owner
    blocks: list[Block] = [
        Heading(1, "Not included, not seen"),
        Paragraph("Work that is neither a line nor an alternate is not part of this scope."),
    ]
    if exclusions:
        blocks.append(Bullets(tuple(exclusions)))
    if own:
        blocks += [
            Paragraph("The owner does these lines. Do not price them; say what you need of them."),
            Table(_BY_OWNER, tuple(_row(item, numbers, assessment) for item in own)),
        ]
    return (
        *blocks,
        Paragraph("Nobody has seen the places below; what they hide is not in the quantities."),
        *not_reached_blocks(assessment, with_reasons=False),
    )


def _rows(
    items: Iterable[RepairItem], numbers: Numbering, assessment: Assessment
) -> Iterator[Row | Band]:
    by_place: dict[str, list[RepairItem]] = {}
    for item in items:
        by_place.setdefault(item.place, []).append(item)
    for place, group in by_place.items():
        yield Band(capitalized(place))
        yield from (_row(item, numbers, assessment, with_place=False) for item in group)


def _row(
    item: RepairItem, numbers: Numbering, assessment: Assessment, with_place: bool = True
) -> Row:
    said = where_in_words(item, assessment)
    where = f"\n{said}" if said else ""
    access = "\nThrough an opened patch: the lining stays." if item.poor_access else ""
    note = f"\nNote: {item.note_to_bidders}" if item.note_to_bidders else ""
    place = f": {item.place}" if with_place else ""
    return (
        str(numbers.items[item.id]),
        f"{item.work.title}{place}\n{item.work.description}{where}{access}{note}"
        f"\n{element_title(item.work.element)}. Counted: {item.reason}",
        bid_quantity_in_words(item),
    )
