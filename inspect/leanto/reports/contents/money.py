"""The money page: range, contingency, what moves the total, and whether the budget holds."""

from __future__ import annotations

from leanto.assessment import Assessment, with_money
from leanto.cost.simulation import Distribution
from leanto.decision.budget import Money
from leanto.decision.replacement import HALF_VALUE_CODE_SOURCE, HALF_VALUE_SOURCE, Replacement
from leanto.money import format_usd
from leanto.quantities import Unit, shown
from leanto.reports.blocks import Block, Column, Heading, Paragraph, Row, Table
from leanto.reports.chart_blocks import (
    Mark,
    SpreadChart,
    SwingBar,
    SwingChart,
)
from leanto.reports.contents.allowances import NOT_QUOTES, budget_in_words
from leanto.reports.contents.drivers import driver_in_words
from leanto.reports.contents.edits import edit_blocks
from leanto.reports.contents.fit import fit_blocks
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.words import about

MOST_DRIVERS = 12
_MOST_PLACES = 8
_RANGE = (
    Column("", 0.32),
    Column("One in ten under", 0.17, "right"),
    Column("Half under", 0.17, "right"),
    Column("Four in five under", 0.17, "right"),
    Column("Nine in ten under", 0.17, "right"),
)
_PLACES = (
    Column("Where it comes from", 0.6),
    Column("Share", 0.15, "right"),
    Column("Contingency", 0.25, "right"),
)


def money_blocks(
    assessment: Assessment, numbers: Numbering, *, on_screen: bool = False
) -> tuple[Block, ...]:
    """The range first, then where it comes from and what to do about it.

    On a screen the answer and the chart of the total stand above the page already.
    """
    assessment = with_money(assessment)
    money = assessment.money
    if money is None or not assessment.estimate.lines:
        return (Paragraph(_nothing(assessment)),)
    answer: tuple[Block, ...] = (
        Paragraph(range_in_words(money), "lead"),
        Paragraph(f"{budget_in_words(assessment)}{_chance(money)}", "lead"),
        spread_chart(money),
    )
    return (
        *(() if on_screen else answer),
        range_table(money),
        Paragraph(
            f"Drawn {money.draws:,} times with a fixed seed: wages, crew and prices move all lines "
            "together, each line has its own range, and damage that nobody has seen comes up or "
            "not. Labor holds that damage. Lows and highs do not add up, and should not. "
            f"{_smooth_in_words(money)}",
            "note",
        ),
        Paragraph(NOT_QUOTES, "note"),
        Heading(2, "Contingency"),
        *contingency_blocks(money),
        Heading(2, "What moves the total most"),
        Paragraph(
            "Each bar runs from the total with this one thing at its good end (one in ten) to the "
            "total at its bad end (nine in ten), everything else as expected. A firm price, or a "
            "test hole, is worth most where the bar is longest. The wage of one trade is part of "
            "the wages of all; hidden is damage that nobody has seen."
        ),
        driver_chart(assessment, money, numbers),
        Heading(2, "Does it fit"),
        *fit_blocks(money.fit, numbers),
        *edit_blocks(assessment, numbers),
        *_replacement(money.replacement),
    )


def _smooth_in_words(money: Money) -> str:
    half, most = (
        f"{about(abs(usd))} {'higher' if usd > 0 else 'lower'}" for usd in money.smooth_usd
    )
    return (
        "Each range is a triangle; with the smooth three-point shape (PERT) instead, the half "
        f"figure would be about {half} and the four-in-five figure {most}."
    )


def _nothing(assessment: Assessment) -> str:
    if any(seen.condition is not None for seen in assessment.walk.observations.values()):
        return "Nothing was found that costs money."
    return "Nothing was walked yet: what the building needs is unknown, and nothing is priced."


def range_in_words(money: Money) -> str:
    total = money.total
    return (
        f"Half of such jobs stay under {about(total.at(0.5))}, four in five under "
        f"{about(total.at(0.8))}. The contingency is the step between them, "
        f"{about(money.contingency_usd)}."
    )


def spread_chart(money: Money) -> SpreadChart:
    """How often the total falls where, with the budget."""
    total, budget = money.total, money.fit.budget_usd
    marks = [Mark("half under", total.at(0.5)), Mark("four in five under", total.at(0.8))]
    if budget is not None:
        marks.append(Mark("budget", budget))
    return SpreadChart.of(total, tuple(marks))


def marks_in_words(chart: SpreadChart) -> str:
    """What the lines across the chart stand for, from the left."""
    marks = sorted(chart.marks, key=lambda mark: mark.usd)
    return "Lines from the left: " + "; ".join(f"{one.label} {about(one.usd)}" for one in marks)


def driver_chart(
    assessment: Assessment, money: Money, numbers: Numbering, most: int = MOST_DRIVERS
) -> SwingChart:
    return SwingChart(
        tuple(
            SwingBar(driver_in_words(one, assessment, numbers), one.low_usd, one.high_usd)
            for one in money.drivers[:most]
        ),
        money.expected_usd,
    )


def range_table(money: Money) -> Table:
    drawn = money.drawn
    return Table(
        _RANGE,
        (
            _row("Labor, with hidden damage", drawn.labor),
            _row("Materials and haul", drawn.materials),
        ),
        (_row("Everything", drawn.total),),
    )


def contingency_blocks(money: Money) -> tuple[Block, ...]:
    """The whole, the parts, and what a flat public rule would give."""
    rule, base = money.rule, money.rule_base_usd
    shown = money.places[:_MOST_PLACES]
    rest = money.places[_MOST_PLACES:]
    rows = [(one.place, f"{one.share:.0%}", about(one.usd)) for one in shown]
    if rest:
        share, usd = sum(one.share for one in rest), sum(one.usd for one in rest)
        rows.append((f"{len(rest)} more places", f"{share:.0%}", about(usd)))
    return (
        Table(_PLACES, tuple(rows), (("Contingency", "100%", about(money.contingency_usd)),)),
        Paragraph(
            f"A flat public rule would set aside {rule.low_pct:g} to {rule.high_pct:g} percent for "
            f"{rule.why}: {about(rule.low_usd(base))} to {about(rule.high_usd(base))} on likely "
            f"lines of {about(base)}. {_against_rule(money)} It is a check, not the answer. "
            f"Source: {rule.source}."
        ),
    )


def _against_rule(money: Money) -> str:
    """The rule covers what the likely figures leave out; ours is counted from one half."""
    base, rule = money.rule_base_usd, money.rule
    wanted = money.total.at(0.8) - base
    said = f"From the likely lines to four in five it is {about(wanted)} here, "
    if wanted > rule.high_usd(base):
        return said + "more than that: much is hidden or open."
    if wanted < rule.low_usd(base):
        return said + "less than that."
    return said + "within that."


def _chance(money: Money) -> str:
    chance = money.fit.chance
    return "" if chance is None else f" {chance:.0%} of the draws stay inside it."


def _row(title: str, drawn: Distribution) -> Row:
    return (title, *(about(drawn.at(p)) for p in (0.1, 0.5, 0.8, 0.9)))


def _replacement(new: Replacement | None) -> tuple[Block, ...]:
    if new is None:
        return ()
    low, likely, high = (about(x) for x in (new.new_usd.low, new.new_usd.likely, new.new_usd.high))
    cost = likely if low == high else f"{likely} ({low} to {high})"
    display = shown()
    per_area = display.rate(new.per_sqft.likely, Unit.SQFT)
    return (
        Heading(2, "Repair against a new building"),
        Paragraph(
            f"A new building of {display.area(new.floor_sqft)} at "
            f"{format_usd(per_area)} a {display.area_unit} would be about {cost} ({new.source}), "
            f"without taking this one down. The repair comes to {new.share:.0%} of it at one half "
            f"and {new.repair_p80 / float(new.new_usd.likely):.0%} at four in five."
        ),
        Paragraph(_half(new)),
    )


def _half(new: Replacement) -> str:
    reached = (
        "This repair may reach half: ask before you commit."
        if new.reaches_half
        else "The market value of an old building is less than the price of a new one, so this "
        "repair may reach half of it all the same."
    )
    return (
        "Regulation commonly asks more of a repair that costs half or more of what the building "
        f"was worth before it, the land left out: in mapped flood areas by {HALF_VALUE_SOURCE}; "
        f"also {HALF_VALUE_CODE_SOURCE}. {reached} Whether and how such a rule applies is for the "
        "local building department to say."
    )
