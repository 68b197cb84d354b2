"""Gut or keep: the answer for every lined surface, what it rests on, and what would change it."""

from __future__ import annotations

from leanto.assessment import Assessment, with_money
from leanto.decision.chances import AllChances, Chances
from leanto.decision.model import Course, Decision, SurfaceDecision
from leanto.decision.words import differs, headline, in_words, interior_in_words
from leanto.reports.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from leanto.reports.chart_blocks import BothSpreads, CourseBar, CourseChart
from leanto.reports.contents.courses import interior_parts, surface_parts
from leanto.reports.contents.hidden import ASSUMED, evidence_table
from leanto.reports.contents.holes import hole_blocks
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.words import about, joined

_TABLE = (
    Column("Lined surface", 0.31),
    Column("Keep", 0.15, "right"),
    Column("Gut", 0.15, "right"),
    Column("Keeping cheaper", 0.14, "right"),
    Column("Answer", 0.25),
)
_NOT_EXACT = (
    "There are too many lined surfaces to compare every combination of courses; they were "
    "compared part by part of the building."
)


def decision_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """The answer first, then the table and the picture, then the reasons surface by surface."""
    assessment = with_money(assessment)
    decision, money = assessment.decision, assessment.money
    blocks: list[Block] = [Paragraph(interior_in_words(decision), "lead")]
    if not decision.surfaces or money is None:
        return tuple(blocks)
    chances = money.chances
    blocks += [
        decision_table(decision, chances),
        Paragraph(
            "Keep and gut: the expected cost, with the damage that is likely but not seen yet, and "
            "below it what four in five draws stay under. Keeping is cheaper in so many of "
            f"{money.draws:,} draws with the same wages, prices and damage for both. Gut from: "
            "gutting pays once more than that of what cannot be seen is bad. The answer goes by "
            "the expected cost; look at four in five when a bad surprise would hurt more than the "
            "average. A condition that decides goes before both.",
            "note",
        ),
        Paragraph(together_in_words(decision)),
        *_spread(chances),
        Heading(2, "Test holes"),
        *hole_blocks(assessment),
        Heading(2, "Both courses, part by part"),
        interior_parts(decision),
        course_chart(chances),
        Heading(2, "Surface by surface"),
        Paragraph(ASSUMED, "note"),
    ]
    for one in decision.surfaces:
        blocks += surface_blocks(one, chances.of(one.surface_id), numbers)
    return tuple(blocks)


def surface_blocks(one: SurfaceDecision, drawn: Chances, numbers: Numbering) -> tuple[Block, ...]:
    """One surface: the answer, what goes before the cost, the evidence, both courses."""
    reasons = [
        (title, reason)
        for title, found in (("Decides", one.decisive), ("Test first", one.test_first))
        for reason in found
    ]
    listed = Bullets(
        tuple(f"{title}: {reason.text} Source: {reason.source}." for title, reason in reasons)
    )
    return (
        Heading(3, f"{one.surface_name}: {headline(one)}"),
        Paragraph(f"{in_words(one, conditions=False)} {_drawn_in_words(drawn)}"),
        *((listed,) if reasons else ()),
        evidence_table(one, numbers),
        surface_parts(one),
    )


def decision_table(decision: Decision, chances: AllChances) -> Table:
    rows = tuple(
        (
            f"{one.surface_name}\n{one.area_sqft:,.0f} sq ft, {one.damaged_sqft:,.0f} seen bad",
            _cost(one.keep.expected, chances.of(one.surface_id), Course.KEEP),
            _cost(one.gut.expected, chances.of(one.surface_id), Course.GUT),
            f"{chances.of(one.surface_id).keep_is_cheaper:.0%}",
            f"{headline(one)}\n{_for_now(one)}{pays_from(one)}",
        )
        for one in decision.surfaces
    )
    interior, chosen = chances.interior, chances.chosen
    assert interior is not None and chosen is not None
    foot = (
        "All lined surfaces",
        _cost(decision.keep_all, interior, Course.KEEP),
        _cost(decision.gut_all, interior, Course.GUT),
        f"{interior.keep_is_cheaper:.0%}",
        f"As chosen: {about(decision.chosen)}\n80 %: {about(chosen.at(0.8))}",
    )
    return Table(_TABLE, rows, (foot,))


def together_in_words(decision: Decision) -> str:
    """Whether the best combination differs from the answers one by one."""
    turned = differs(decision)
    compared = (
        "Every combination of courses was compared, as surfaces share set-up, hauling and "
        "minimum charges."
        if decision.is_exact
        else _NOT_EXACT
    )
    if not turned:
        return f"{compared} Together each surface gets the same answer as on its own."
    names = joined([one.surface_name for one in turned])
    return f"{compared} Together the answer is another one than alone for {names}."


def pays_from(one: SurfaceDecision) -> str:
    """The damaged share of the unseen part from which gutting pays."""
    if one.break_even_share is not None:
        return f"gut from {100 * one.break_even_share:.0f} % bad"
    return "always gut" if one.gut.expected < one.keep.expected else "never gut"


def _for_now(one: SurfaceDecision) -> str:
    return f"{one.chosen} for now; " if one.unknown and not one.decisive else ""


def course_chart(chances: AllChances) -> CourseChart:
    """Both courses of each surface as bars on one axis."""
    return CourseChart(
        tuple(
            (one.surface_name, CourseBar.of("keep", one.keep), CourseBar.of("gut", one.gut))
            for one in chances.surfaces
        )
    )


def _spread(chances: AllChances) -> tuple[Block, ...]:
    if chances.interior is None:
        return ()
    return (
        Heading(2, "What both courses may cost"),
        Paragraph("All lined surfaces kept and patched, against all of them gutted."),
        BothSpreads.of(chances.interior.keep, chances.interior.gut),
    )


def _drawn_in_words(drawn: Chances) -> str:
    keep, gut = about(drawn.keep.at(0.8)), about(drawn.gut.at(0.8))
    return (
        f"Keeping is cheaper in {drawn.keep_is_cheaper:.0%} of the draws; four in five stay under "
        f"{keep} to keep and {gut} to gut."
    )


def _cost(expected: float, drawn: Chances, course: Course) -> str:
    return f"{about(expected)}\n80 %: {about(drawn.of(course).at(0.8))}"
