"""The rows of the scope, in order of work."""

from __future__ import annotations

from decimal import Decimal
from itertools import groupby

from leanto.assessment import Assessment
from leanto.cost.estimate import CostLine
from leanto.money import format_usd
from leanto.quantities import format_quantity
from leanto.reports.contents.allowances import budget_in_words
from leanto.reports.contents.numbering import numbering
from leanto.reports.contents.words import about
from leanto.tui.short_place import short_place
from leanto.tui.widgets.rows_table import Column, Row

COLUMNS = (
    Column("#", 3, "right"),
    Column("Work", 0),
    Column("Place", 15, shorten=short_place),
    Column("Quantity", 10, "right"),
    Column("Trade", 16, from_width=100),
    Column("Low", 7, "right"),
    Column("Likely", 7, "right"),
    Column("High", 7, "right"),
)
SORTINGS = ("order of work", "cost", "trade", "place")


def answer(assessment: Assessment) -> str:
    """The range of the total, the contingency, and whether the budget holds."""
    if not assessment.estimate.lines:
        return "Nothing is in the scope yet: no finding calls for work."
    total = assessment.estimate.range
    return (
        f"{about(total.p50)} to {about(total.p80)}: half of such jobs stay under the first, four "
        f"of five under the second. Contingency {about(total.contingency)}. "
        f"{budget_in_words(assessment)}"
    )


def rows(assessment: Assessment) -> tuple[Row, ...]:
    """A heading for each phase with its likely sum, below it the repair items."""
    numbers = numbering(assessment).items
    made: list[Row] = []
    for phase, group in groupby(assessment.estimate.lines, key=lambda line: line.item.work.phase):
        lines = tuple(group)
        likely = sum((line.total.likely for line in lines), Decimal(0))
        title = phase.value.upper()
        made.append(
            Row(
                key=f"phase {phase}",
                cells=("", title, "", "", "", "", _usd(likely), ""),
                is_heading=True,
                style="bold",
            )
        )
        made += [_row(line, numbers[line.item.id]) for line in lines]
    return tuple(made)


def _row(line: CostLine, number: int) -> Row:
    item, total = line.item, line.total
    return Row(
        key=item.id,
        cells=(
            str(number),
            item.work.title,
            item.place,
            format_quantity(round(item.bought, 1), item.work.unit),
            item.work.trade.value,
            *(_usd(amount) for amount in (total.low, total.likely, total.high)),
        ),
        orders=(
            (-float(total.likely), number),
            (item.work.trade.value, number),
            (item.place, number),
        ),
        search=f"{item.work.trade}\n{item.work.phase}\n{item.work.description}",
    )


def _usd(amount: Decimal) -> str:
    """The amount in seven cells; from 100,000 dollars on in thousands."""
    return format_usd(amount) if amount < 99_999.5 else f"{format_usd(amount / 1000)}k"
