"""What the figures stand on: versions, prices, wages, and what is put on top."""

from __future__ import annotations

from collections.abc import Mapping

from leanto.assessment import Assessment
from leanto.cost.price import Factors, Price, Three
from leanto.money import format_usd
from leanto.quantities import Unit, shown
from leanto.reports.blocks import Block, Column, Facts, Heading, Paragraph, Table
from leanto.reports.contents.allowances import NOT_QUOTES
from leanto.reports.contents.editions import edition_blocks
from leanto.reports.contents.numbering import Numbering, in_ranges
from leanto.reports.contents.words import capitalized, date_in_words

NO_ENGINEER = (
    "This report is by no engineer, licensed inspector or code official. It says what was seen, "
    "what follows from it by stated rules, and what a trade must look at. Nothing here is called "
    "safe. Local codes and local officials govern."
)
_WAGES = (
    Column("Trade", 0.2),
    Column("Low", 0.09, "right"),
    Column("Likely", 0.09, "right"),
    Column("High", 0.09, "right"),
    Column("Source and date", 0.53),
)
_PRICES = (
    Column("Source of the price", 0.5),
    Column("Lines", 0.3),
    Column("Dated", 0.2),
)


def basis_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """Everything that an answer could be checked by."""
    library = assessment.library
    prices = {numbers.items[line.item.id]: line.price for line in assessment.estimate.lines}
    return (
        Paragraph(NO_ENGINEER),
        Paragraph(NOT_QUOTES),
        Heading(3, "Versions"),
        Facts(
            (
                ("Day of the walk", date_in_words(assessment.as_of)),
                *((capitalized(kind), version) for kind, version in library.versions.items()),
            )
        ),
        *edition_blocks(assessment),
        Heading(3, "Put on top of wages and materials"),
        factor_facts(library.factors),
        Heading(3, "Wages used, per hour, before burden"),
        wage_table(library.factors, {line.item.work.trade for line in assessment.estimate.lines}),
        Heading(3, "Where the prices come from"),
        price_table(prices),
    )


def factor_facts(factors: Factors) -> Facts:
    return Facts(
        (
            ("Burden", f"{factors.burden} × wage\n{factors.burden_source}"),
            ("Region", f"{factors.region} × labor\n{factors.region_source}"),
            (
                "Markup and tax",
                f"{_percent(factors.overhead_pct)} overhead, then {_percent(factors.profit_pct)} "
                f"profit; {_percent(factors.sales_tax_pct)} tax on materials"
                f"\n{factors.markup_source}",
            ),
            (
                "Poor access",
                f"{_three(factors.poor_access)} × labor through an opened patch"
                f"\n{factors.poor_access_source}",
            ),
            (
                "Change orders",
                f"{_three(factors.change_order_pct)} % dearer\n{factors.change_order_source}",
            ),
            (
                "Haul and dump",
                f"{_haul(factors)}\n{factors.haul_source}",
            ),
            (
                "What moves all lines together",
                f"{_three(factors.crew)} × hours for the crew; {_three(factors.prices)} × "
                "materials for the prices of the day; the range of the wages"
                f"\n{factors.shared_source}",
            ),
        )
    )


def wage_table(factors: Factors, trades: set[str]) -> Table:
    """The wages of the trades that the scope needs."""
    return Table(
        _WAGES,
        tuple(
            (
                capitalized(wage.trade),
                *(
                    format_usd(x, cents=True)
                    for x in (wage.hourly_usd.low, wage.hourly_usd.likely, wage.hourly_usd.high)
                ),
                f"{wage.source}; {date_in_words(wage.dated)}",
            )
            for wage in factors.wages
            if wage.trade in trades
        ),
        small=True,
    )


def price_table(prices: Mapping[int, Price]) -> Table:
    """Each source once, with the numbers of the lines that lean on it and its dates."""
    by_source: dict[str, list[int]] = {}
    for number, price in prices.items():
        by_source.setdefault(price.source, []).append(number)
    return Table(
        _PRICES,
        tuple(
            (source, in_ranges(listed), _dates([prices[number] for number in listed]))
            for source, listed in sorted(by_source.items())
        ),
        small=True,
    )


def _dates(prices: list[Price]) -> str:
    first, last = min(p.dated for p in prices), max(p.dated for p in prices)
    if first == last:
        return date_in_words(first)
    return f"{date_in_words(first)} to {date_in_words(last)}"


def _haul(factors: Factors) -> str:
    haul, display = factors.haul_usd_per_lb, shown()
    if not display.is_metric:
        return f"{_three(haul)} dollars a pound"
    low, likely, high = (
        round(display.rate(one, Unit.POUND), 3) for one in (haul.low, haul.likely, haul.high)
    )
    return f"{low} to {high}, likely {likely} dollars a kilogram"


def _three(three: Three) -> str:
    return f"{three.low} to {three.high}, likely {three.likely}"


def _percent(number: object) -> str:
    return f"{number} %"
