"""The scope with its allowances, and the range of the total."""

from __future__ import annotations

from collections.abc import Iterable
from decimal import Decimal
from itertools import groupby

from leanto.assessment import Assessment
from leanto.cost.estimate import CostLine, Estimate
from leanto.money import Spread, format_usd
from leanto.quantities import format_quantity, shown
from leanto.reports.blocks import Band, Block, Column, Facts, Paragraph, RangeBar, Row, Table
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.words import about, capitalized, counted
from leanto.scope.item import RepairItem

_COLUMNS = (
    Column("Line", 0.055, "right"),
    Column("Work and place", 0.315),
    Column("Quantity bought", 0.14, "right"),
    Column("Labor", 0.085, "right"),
    Column("Materials", 0.09, "right"),
    Column("Haul", 0.075, "right"),
    Column("Low", 0.08, "right"),
    Column("Likely", 0.08, "right"),
    Column("High", 0.08, "right"),
)
_SHORT_COLUMNS = (
    Column("Line", 0.05, "right"),
    Column("Work and place", 0.45),
    Column("Bought", 0.2, "right"),
    Column("Low", 0.1, "right"),
    Column("Likely", 0.1, "right"),
    Column("High", 0.1, "right"),
)
NOT_QUOTES = (
    "All figures are planning allowances, not quotes: made from hours, wages and prices per unit "
    "before anybody has bid. Edit the price files to your place and date."
)


def allowance_blocks(
    assessment: Assessment, numbers: Numbering, short: bool = False
) -> tuple[Block, ...]:
    """Every line with quantity and allowance, then the sums and the range.

    ``short`` leaves labor, materials and haul of each line out, for a narrow page.
    """
    estimate = assessment.estimate
    if not estimate.lines:
        return (Paragraph("Nothing was found that calls for work."),)
    return (
        Paragraph(NOT_QUOTES, "note"),
        allowance_table(estimate, numbers, short),
        Paragraph(
            "Labor, materials and haul are likely figures with overhead and profit. "
            "Low and high are each line's own limits.",
            "note",
        ),
        total_facts(estimate),
    )


def allowance_table(estimate: Estimate, numbers: Numbering, short: bool = False) -> Table:
    """The lines by phase with their subtotals."""
    amounts = _short_amounts if short else _amounts
    rows: list[Row | Band] = []
    for phase, group in groupby(estimate.lines, key=lambda line: line.item.work.phase):
        lines = tuple(group)
        subtotal = sum((line.total.likely for line in lines), Decimal(0))
        rows.append(Band(capitalized(phase), format_usd(subtotal)))
        rows += [(*_row(line.item, numbers), *amounts(line)) for line in lines]
    total = ("", "Total of the lines", "", *amounts(estimate))
    return Table(_SHORT_COLUMNS if short else _COLUMNS, tuple(rows), (total,))


def total_facts(estimate: Estimate) -> Facts:
    """Totals, what may come up later, and the range of both together."""
    total, spread = estimate.range, estimate.hidden
    return Facts(
        (
            ("Labor", _spread(estimate.labor)),
            ("Materials", _spread(estimate.materials)),
            ("Haul and dump", _spread(estimate.haul)),
            ("All lines", _spread(estimate.total)),
            (
                "Hidden damage, later",
                f"{_spread(spread)}\nWhat kept linings are likely to bring up, at change-order "
                "prices; not in the lines",
            ),
            (
                "Range of it all",
                f"half of such jobs stay under {about(total.p50)}, four in five under "
                f"{about(total.p80)}\nOne in ten stays under {about(total.p10)}, one in ten goes "
                f"over {about(total.p90)}",
            ),
            ("Contingency", f"{about(total.contingency)}, the step from one half to four in five"),
            (
                "Labor hours",
                f"{estimate.labor_hours.likely:,.0f} "
                f"({estimate.labor_hours.low:,.0f} to {estimate.labor_hours.high:,.0f})",
            ),
            ("Debris", shown().weight(estimate.debris_lb)),
        )
    )


def range_bar(assessment: Assessment) -> RangeBar:
    total = assessment.estimate.range
    budget = assessment.building.budget_usd
    return RangeBar(total.low, total.p50, total.p80, total.high, budget)


def budget_in_words(assessment: Assessment) -> str:
    """Whether the range fits the budget, and what is short."""
    budget, total = assessment.building.budget_usd, assessment.estimate.range
    if budget is None:
        return "No budget was given to hold this against."
    given = format_usd(budget)
    if total.p80 <= budget:
        return (
            f"The budget of {given} fits: it covers four of five such jobs with about "
            f"{about(budget - total.p80)} to spare."
        )
    if total.p50 <= budget:
        return (
            f"The budget of {given} fits only if little goes wrong: about "
            f"{about(total.p80 - budget)} is missing of the contingency."
        )
    return (
        f"The budget of {given} does not fit: about {about(total.p50 - budget)} is short for an "
        f"even chance, about {about(total.p80 - budget)} to be covered in four of five such jobs."
    )


def movers(estimate: Estimate, numbers: Numbering, most: int = 5) -> tuple[str, ...]:
    """The lines with the widest range: where a firm price is worth most."""
    lines = [line for line in estimate.lines if line.total.high > line.total.low]
    lines.sort(key=lambda line: (line.total.low - line.total.high, numbers.items[line.item.id]))
    return tuple(
        f"Line {numbers.items[line.item.id]}, {line.item.work.title}, {line.item.place}: "
        f"{format_usd(line.total.low)} to {format_usd(line.total.high)}"
        for line in lines[:most]
    )


def bought_in_words(item: RepairItem) -> str:
    """The quantity as it is bought, with the purchases it makes on the second line.

    Purchases that serve more than one place are named with all of them.
    """
    amount = format_quantity(round(item.bought, 1), item.work.unit)
    if item.purchases is None or item.work.purchase is None:
        return amount
    purchases = f"{item.purchases:,} × {item.work.purchase.name}"
    return f"{amount}\n" + (f"of {purchases} in all" if item.is_bought_together else purchases)


def _row(item: RepairItem, numbers: Numbering) -> Row:
    access = "; through an opened patch" if item.poor_access else ""
    return (
        str(numbers.items[item.id]),
        f"{item.work.title}\n{item.place} · {item.work.trade}{access}",
        bought_in_words(item),
    )


def _amounts(of: CostLine | Estimate) -> tuple[str, ...]:
    parts = (of.labor, of.materials, of.haul)
    return (*(format_usd(spread.likely) for spread in parts), *_short_amounts(of))


def _short_amounts(of: CostLine | Estimate) -> tuple[str, ...]:
    return tuple(format_usd(x) for x in (of.total.low, of.total.likely, of.total.high))


def _spread(spread: Spread) -> str:
    low, likely, high = (format_usd(x) for x in (spread.low, spread.likely, spread.high))
    return f"{likely} ({low} to {high})"


def by_trade(items: Iterable[RepairItem]) -> dict[str, list[RepairItem]]:
    """The items by trade, in the order in which the trades come in."""
    trades: dict[str, list[RepairItem]] = {}
    for item in items:
        trades.setdefault(item.work.trade, []).append(item)
    return trades


def licensed_in_words(assessment: Assessment, numbers: Numbering) -> tuple[str, ...]:
    """The licensed trades that the scope needs, each with its lines."""
    return tuple(
        f"{capitalized(trade)}: {counted(len(items), 'line')} ({numbers.of_items(items)})"
        for trade, items in by_trade(assessment.scope.items).items()
        if items[0].work.trade.is_licensed
    )
