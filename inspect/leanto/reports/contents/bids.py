"""The bids side by side on one base. It is the owner's; nothing of it goes to a bidder."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import date
from decimal import Decimal

from leanto.bids.in_feet import shown_quantity
from leanto.bids.levelled import Cell, Levelled, LevelLine, Standing
from leanto.bids.model import State
from leanto.bids.short_id import alternate_number
from leanto.building.model import Building
from leanto.money import Spread, format_usd
from leanto.reports.blocks import (
    Band,
    Block,
    Bullets,
    Column,
    Facts,
    Heading,
    Paragraph,
    Report,
    Row,
    Table,
)
from leanto.reports.contents.bid_marks import MARKS, amount_in_words, marked, span_in_words
from leanto.reports.contents.condition import INVENTED
from leanto.reports.contents.owners import owners_report
from leanto.reports.contents.words import capitalized, counted

NO_CHOICE = (
    "The table does not choose, and it gives no score. A low price may be a fair one, or one that "
    "forgets something: ask, then decide."
)
MOST_BESIDE = 4
"""Bids side by side in one table; more of them make another table."""


def bids_report(made: Levelled, building: Building, as_of: date) -> Report:
    """Totals on one base first, then the lines, what was found in each bid, and what to ask."""
    blocks: list[Block] = [
        Paragraph(_headline(made), "lead"),
        *total_blocks(made),
        Bullets((*made.notices, *_in_funds(made))),
        Paragraph(NO_CHOICE, "note"),
        Heading(1, "Line by line"),
        *line_blocks(made),
        *_alternate_blocks(made),
        *_hidden_blocks(made),
        Heading(1, "What each bid says, and what to ask"),
        *(block for one in made.bids for block in bid_blocks(one)),
    ]
    if building.invented:
        blocks.append(Paragraph(INVENTED, "note"))
    kept = [block for block in blocks if block != Bullets(())]
    typed = (one.bid for one in made.bids)
    return owners_report("Bids side by side", kept, building, as_of, *typed)


def total_blocks(made: Levelled) -> tuple[Block, ...]:
    """One row for each way to look at a total."""
    rows: list[tuple[str, str, list[str]]] = [
        ("As read", "", [_stated(one) for one in made.bids]),
        ("Added up again", "", [format_usd(one.summed) for one in made.bids]),
        (
            "On one base",
            span_in_words(made.ours),
            [_with_note(one.base, one.apart, "apart") for one in made.bids],
        ),
        ("of that plugged", "", [format_usd(one.plugged) for one in made.bids]),
    ]
    if made.base.hidden:
        ours = [work.ours.scaled(work.quantity) for work in made.base.hidden]
        told = span_in_words(made.ours + Spread.total(ours)) if made.ours else ""
        with_hidden = [format_usd(one.with_hidden) for one in made.bids]
        rows.append(("Base and expected hidden work", told, with_hidden))
    if made.alternates:
        rows.append(
            ("Base and all alternates", "", [format_usd(one.with_alternates) for one in made.bids])
        )
    if made.alternates and made.base.hidden:
        rows.append(
            (
                "Base, alternates and hidden work",
                "",
                [format_usd(one.with_both) for one in made.bids],
            )
        )
    return tuple(
        Table(
            _columns(made.bids[part], ("Total", 0.32)),
            tuple((name, ours, *cells[part]) for name, ours, cells in rows),
        )
        for part in _parts(made)
    )


def line_blocks(made: Levelled) -> tuple[Block, ...]:
    """Every line with our allowance and all bids, by trade with subtotals."""
    tables = []
    for part in _parts(made):
        rows: list[Row | Band] = []
        for trade, lines in _by_trade(made.lines).items():
            subtotals = [_sum(line.cells[at] for line in lines) for at in range(len(made.bids))]
            rows.append(Band(capitalized(trade)))
            rows += [_line_row(line, part) for line in lines]
            rows.append(
                (
                    "",
                    f"All lines: {trade}",
                    _ours_of(lines),
                    *(format_usd(x) for x in subtotals[part]),
                )
            )
        for one in made.base.form.allowances:
            given = format_usd(one.amount)
            rows.append(("", f"Allowance: {one.title}", given, *(given for _ in made.bids[part])))
        if any(one.added for one in made.bids[part]):
            rows.append(("", "Added by the bidder", "", *map(_added, made.bids[part])))
        foot = (
            "",
            "On one base",
            span_in_words(made.ours),
            *(format_usd(one.base) for one in made.bids[part]),
        )
        columns = (Column("Line", 0.06, "right"), *_columns(made.bids[part], ("Work", 0.34)))
        tables.append(Table(columns, tuple(rows), (foot,), small=True))
    return (*tables, Paragraph(f"Marks: {'; '.join(MARKS)}.", "note"))


def bid_blocks(one: Standing) -> Iterator[Block]:
    """What was found in one bid, and the questions to its bidder."""
    bid = one.bid
    yield Heading(2, bid.bidder)
    yield Facts(
        (
            ("File", f"{bid.file_name}{f', added {bid.dated}' if bid.dated else ''}"),
            ("Holds for", "not said" if bid.validity_days is None else f"{bid.validity_days} days"),
            ("Start, duration", f"{bid.start or 'not said'}; {bid.duration or 'not said'}"),
        )
    )
    if found := tuple(found_in(one)):
        yield Bullets(found)
    if one.questions:
        yield Heading(3, f"To ask {bid.bidder}")
        yield Bullets(one.questions)


def found_in(one: Standing) -> Iterator[str]:
    """What the bid was caught at, and what it says beside its prices; a sentence each."""
    yield from one.notices
    for trade in one.missing_trades:
        yield f"Missing trade: no price for any line of the {trade}."
    for fault in one.faults:
        stated, computed = (format_usd(x, cents=True) for x in (fault.stated, fault.computed))
        where = fault.where.lower()
        yield f"Arithmetic, {where}: stated {stated}, computed {computed} ({fault.text})."
    if one.apart:
        yield f"Its total on one base stands apart from the others ({one.apart})."
    yield from one.unbalanced
    for added in one.added:
        said = amount_in_words(added.amount)
        yield f"Added by the bidder: {added.text}, {said}."
    for text in one.bid.exclusions:
        yield f"Left out: {text}."
    for text in one.bid.qualifications:
        yield f"Condition: {text}."
    for unread in one.bid.unread:
        yield f"Not read, {unread.shown or unread.field}: “{unread.text}”. {unread.why}"


def _headline(made: Levelled) -> str:
    plugged = sum(one.plugged > 0 for one in made.bids)
    said = f"{counted(len(made.bids), 'bid')} on {counted(len(made.lines), 'line')}"
    if plugged:
        verb = "holds" if plugged == 1 else "hold"
        said += f"; {plugged} of them {verb} lines without a price, which are plugged and marked"
    return f"{said}."


def _in_funds(made: Levelled) -> tuple[str, ...]:
    if made.base.funds is None or not made.alternates:
        return ()
    budget = format_usd(made.base.funds)
    if made.within_funds is None:
        return (f"No base bid is within the budget of {budget}.",)
    taken = [made.alternates[at].alternate.title for at in made.within_funds.taken]
    if not taken:
        return (f"Within the budget of {budget} there is room for no alternate.",)
    totals = "; ".join(f"{who} {format_usd(x)}" for who, x in made.within_funds.totals.items())
    named = "; ".join(taken)
    return (f"Within the budget of {budget}, taken in order: {named}. Totals then: {totals}.",)


def _alternate_blocks(made: Levelled) -> Iterator[Block]:
    if not made.alternates:
        return
    yield Heading(1, "Alternates")
    for part in _parts(made):
        rows = tuple(
            (
                f"{alternate_number(at)}. {line.alternate.title}\n"
                f"{capitalized(line.alternate.kind)}",
                span_in_words(line.ours),
                *(_cell(cell) for cell in line.cells[part]),
            )
            for at, line in enumerate(made.alternates)
        )
        yield Table(_columns(made.bids[part], ("Alternate", 0.4)), rows, small=True)


def _hidden_blocks(made: Levelled) -> Iterator[Block]:
    if not made.base.hidden:
        return
    yield Heading(1, "Expected hidden work at each bidder's unit prices")
    yield Paragraph(
        "The quantities are what is expected on average of what nobody has seen. They are ours: no "
        "bidder was told.",
        "note",
    )
    for part in _parts(made):
        rows = []
        for at, work in enumerate(made.base.hidden):
            cells = [one.hidden_cells[at] for one in made.bids[part]]
            rows.append(
                (
                    f"{work.title}\n{shown_quantity(work.quantity, work.unit)}",
                    span_in_words(work.ours.scaled(work.quantity)),
                    *(
                        f"{format_usd(cell.usd)}{'' if cell.is_own else ' p'}\n"
                        f"at {format_usd(cell.unit_usd, cents=True)}"
                        for cell in cells
                    ),
                )
            )
        foot = ("All", "", *(format_usd(one.hidden) for one in made.bids[part]))
        columns = _columns(made.bids[part], ("Work", 0.34))
        yield Table(columns, tuple(rows), (foot,), small=True)


def _line_row(line: LevelLine, part: slice) -> Row:
    quantity = shown_quantity(line.line.quantity, line.line.unit)
    return (
        str(line.line.line),
        f"{line.line.title}\n{line.line.place}, {quantity}",
        span_in_words(line.ours),
        *(_cell(cell) for cell in line.cells[part]),
    )


def _cell(cell: Cell) -> str:
    mark, note = marked(cell)
    return f"{format_usd(cell.usd)}{f' {mark}' if mark else ''}{note and chr(10) + note}"


def _added(one: Standing) -> str:
    return format_usd(sum((x.amount.usd or Decimal(0) for x in one.added), Decimal(0)))


def _stated(one: Standing) -> str:
    amount = one.bid.stated_total
    return "not stated" if amount.state is State.MISSING else amount_in_words(amount)


def _with_note(amount: Decimal, note: str, word: str) -> str:
    return f"{format_usd(amount)}\n{word}: {note}" if note else format_usd(amount)


def _columns(bids: Sequence[Standing], first: tuple[str, float]) -> tuple[Column, ...]:
    title, share = first
    each = (0.82 - share) / max(1, len(bids))
    return (
        Column(title, share),
        Column("Our allowance", 0.18, "right"),
        *(Column(one.bid.bidder, each, "right") for one in bids),
    )


def _parts(made: Levelled) -> Iterator[slice]:
    for at in range(0, len(made.bids), MOST_BESIDE):
        yield slice(at, at + MOST_BESIDE)


def _by_trade(lines: Sequence[LevelLine]) -> dict[str, list[LevelLine]]:
    trades: dict[str, list[LevelLine]] = {}
    for line in lines:
        trades.setdefault(line.line.trade, []).append(line)
    return trades


def _ours_of(lines: Sequence[LevelLine]) -> str:
    given = [line.ours for line in lines if line.ours is not None]
    return span_in_words(Spread.total(given)) if len(given) == len(lines) else ""


def _sum(cells: Iterator[Cell]) -> Decimal:
    return sum((cell.usd for cell in cells), Decimal(0))
