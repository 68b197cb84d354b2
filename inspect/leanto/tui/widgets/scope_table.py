"""The rows of the scope, in order of work; what the owner changed carries a mark."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from itertools import groupby

from leanto.assessment import Assessment
from leanto.cost.estimate import CostLine
from leanto.money import Spread, format_usd
from leanto.quantities import format_quantity
from leanto.reports.contents.allowances import budget_in_words
from leanto.reports.contents.numbering import numbering
from leanto.reports.contents.words import about
from leanto.scope.item import RepairItem
from leanto.scope.mark import Mark
from leanto.tui.short_place import short_place
from leanto.tui.widgets.rows_table import Column, Row

COLUMNS = (
    Column("#", 3, "right"),
    Column("", 2),
    Column("Work", 0),
    Column("Place", 14, shorten=short_place),
    Column("Quantity", 10, "right"),
    Column("By the walk", 11, "right", from_width=96),
    Column("Trade", 16, from_width=110),
    Column("Low", 7, "right"),
    Column("Likely", 7, "right"),
    Column("High", 7, "right"),
)
SORTINGS = ("order of work", "cost", "trade", "place")
ALTERNATES = "ALTERNATES, APART"
STRUCK = "STRUCK, NOT COUNTED"

_OF_MARKS = {
    Mark.STRUCK: ("x", "struck"),
    Mark.BY_OWNER: ("o", "by owner"),
    Mark.ALTERNATE: ("t", "alternate"),
}


def answer(assessment: Assessment) -> str:
    """The range of the total, the contingency, and whether the budget holds."""
    if not assessment.estimate.lines:
        return "Nothing is in the scope yet: no finding calls for work. a adds a line by hand."
    total = assessment.estimate.range
    return (
        f"{about(total.p50)} to {about(total.p80)}: half of such jobs stay under the first, four "
        f"of five under the second. Contingency {about(total.contingency)}. "
        f"{budget_in_words(assessment)}"
    )


def marks_of(item: RepairItem) -> tuple[tuple[str, str], ...]:
    """Each mark of a line and what it means: what the owner does with it, and changed about it."""
    marks = [_OF_MARKS[item.mark]] if item.mark in _OF_MARKS else []
    if item.added_by_hand:
        marks.append(("+", "added by hand"))
    if item.computed_quantity is not None:
        marks.append(("=", "own quantity"))
    if item.note_to_bidders:
        marks.append(('"', "note to bidders"))
    return tuple(marks)


def legend(items: Iterable[RepairItem]) -> str:
    """What the marks mean that stand in the table; empty when there are none."""
    there = dict.fromkeys(mark for item in items for mark in marks_of(item))
    return ", ".join(f"{sign} {words}" for sign, words in there)


def rows(assessment: Assessment) -> tuple[Row, ...]:
    """A heading for each phase with its likely sum, below it the repair items; then what stands
    apart: alternates and struck lines."""
    numbers = numbering(assessment).items
    made: list[Row] = []
    for phase, group in groupby(assessment.estimate.lines, key=lambda line: line.item.work.phase):
        lines = tuple(group)
        likely = sum((line.total.likely for line in lines), Decimal(0))
        made.append(_heading(f"phase {phase}", phase.value.upper(), _usd(likely)))
        made += [_row(line.item, line.total, numbers[line.item.id]) for line in lines]
    if assessment.estimate.alternates:
        made.append(_heading("alternates", ALTERNATES, ""))
        made += [_alternate(line, numbers) for line in assessment.estimate.alternates]
    if assessment.scope.struck:
        made.append(_heading("struck", STRUCK, ""))
        made += [_row(one.item, None, None) for one in assessment.scope.struck]
    return tuple(made)


def _heading(key: str, title: str, likely: str) -> Row:
    cells = ("", "", title, "", "", "", "", "", likely, "")
    return Row(key=key, cells=cells, is_heading=True, style="bold")


def _alternate(line: CostLine, numbers: dict[str, int]) -> Row:
    return _row(line.item, line.total, numbers[line.item.id])


def _row(item: RepairItem, total: Spread | None, number: int | None) -> Row:
    """A line; a struck one has neither number nor allowance."""
    amounts = ("", "", "") if total is None else (total.low, total.likely, total.high)
    last = 10_000 if number is None else number
    marks = marks_of(item)
    computed = item.computed_quantity
    return Row(
        key=item.id,
        cells=(
            "" if number is None else str(number),
            "".join(sign for sign, _ in marks)[:2],
            item.work.title,
            item.place,
            format_quantity(round(item.bought, 1), item.work.unit),
            "" if computed is None else format_quantity(round(computed, 1), item.work.unit),
            item.work.trade.value,
            *(amount if isinstance(amount, str) else _usd(amount) for amount in amounts),
        ),
        orders=(
            (0.0 if total is None else -float(total.likely), last),
            (item.work.trade.value, last),
            (item.place, last),
        ),
        search="\n".join(
            (
                item.work.trade,
                item.work.phase,
                item.work.description,
                item.note_to_bidders,
                *(words for _, words in marks),
            )
        ),
    )


def _usd(amount: Decimal) -> str:
    """The amount in seven cells; from 100,000 dollars on in thousands."""
    return format_usd(amount) if amount < 99_999.5 else f"{format_usd(amount / 1000)}k"
