"""The first page: the answer, the money, what to do first, whom to call."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.decision.words import interior_in_words
from leanto.money import format_usd
from leanto.reports.blocks import Block, Bullets, Column, Heading, Paragraph, Table
from leanto.reports.contents.allowances import budget_in_words, by_trade, range_bar
from leanto.reports.contents.cautions import caution_blocks
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.reckoned import long_feed_in_words
from leanto.reports.contents.words import about, capitalized, counted, joined
from leanto.rules.finding import Finding
from leanto.rules.model import Urgency

MOST_LISTED = 4
_MONEY = (
    Column("Labor", 0.17, "right"),
    Column("Materials", 0.17, "right"),
    Column("Haul and dump", 0.17, "right"),
    Column("All lines, likely", 0.2, "right"),
    Column("Hidden damage, later", 0.22, "right"),
)


def summary_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """The answer first; a page with the title above it."""
    blocks: list[Block] = [
        Paragraph(interior_in_words(assessment.decision), "lead"),
        *_tests(assessment),
        Paragraph(money_in_words(assessment), "lead"),
        range_bar(assessment),
        Paragraph(budget_in_words(assessment)),
        _money_table(assessment),
        *_lean(assessment),
        Heading(2, "What to do first"),
        *first_blocks(assessment, numbers),
        Heading(2, "Licensed trades needed"),
        Paragraph(f"{callers(assessment)} Local codes govern."),
        *_long_feed(assessment),
        Paragraph(counts_in_words(assessment), "note"),
    ]
    return tuple(blocks)


def _long_feed(assessment: Assessment) -> tuple[Paragraph, ...]:
    said = long_feed_in_words(assessment)
    return (Paragraph(said),) if said else ()


def money_in_words(assessment: Assessment) -> str:
    total = assessment.estimate.range
    if not assessment.estimate.lines:
        return "Nothing was found that costs money."
    return (
        f"Plan on {about(total.p50)} to {about(total.p80)}: half of such jobs stay under the "
        f"first figure, four in five under the second. The contingency is the step between "
        f"them, {about(total.contingency)}."
    )


def _lean(assessment: Assessment) -> tuple[Paragraph, ...]:
    """Why the likely figures of the lines add up to less than the middle of the range."""
    if float(assessment.estimate.total.likely) >= assessment.estimate.range.p50:
        return ()
    return (
        Paragraph(
            "The lines add up to less than the range: what goes wrong costs more than what goes "
            "well saves.",
            "note",
        ),
    )


def first_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """The first few places to act on now, dangers before anything else; the rest is counted."""
    pressing = sorted(filter(is_pressing, assessment.judged.findings), key=lambda f: not f.danger)
    if not pressing:
        return (Paragraph("Nothing found is urgent now."),)
    by_place = {numbers.seen_under[finding.id]: finding for finding in reversed(pressing)}
    places = sorted(by_place.values(), key=lambda f: (not f.danger, numbers.findings[f.id]))
    shown = [pressing_in_words(finding, numbers) for finding in places[:MOST_LISTED]]
    if left := places[MOST_LISTED:]:
        dangers = sum(finding.danger for finding in left)
        named = f", {dangers} of them dangerous" if dangers else ""
        shown.append(f"And {counted(len(left), 'more place')} to act on now{named}: see Findings.")
    return (Bullets(tuple(shown)),)


def is_pressing(finding: Finding) -> bool:
    return finding.danger or finding.urgency is Urgency.NOW


def pressing_in_words(finding: Finding, numbers: Numbering) -> str:
    danger = "DANGER. " if finding.danger else ""
    number = numbers.findings[finding.id]
    return f"{danger}{finding.text} {finding.station_name} (finding {number})"


def counts_in_words(assessment: Assessment) -> str:
    judged = assessment.judged
    return (
        f"{counted(len(judged.findings), 'finding')}, "
        f"{counted(len(judged.questions), 'open question')}, "
        f"{counted(len(assessment.scope.items), 'line')} of work; "
        f"{counted(len(assessment.not_reached), 'entry', 'entries')} of what was not seen, "
        f"{counted(len(judged.undecided), 'rule')} left open for want of a measure."
    )


def callers(assessment: Assessment) -> str:
    """The licensed trades that the scope needs, and where else to look for who must act."""
    trades = [
        f"{trade} for {counted(len(items), 'line')}"
        for trade, items in by_trade(assessment.scope.items).items()
        if items[0].work.trade.is_licensed
    ]
    said = f"{capitalized(joined(trades))}." if trades else "None by what was seen."
    others = sum(1 for caution in caution_blocks(assessment) if caution.who)
    if not others:
        return said
    say = "caution says" if others == 1 else "cautions say"
    return f"{said} {others} {say} who else must act: see Cautions."


def _tests(assessment: Assessment) -> tuple[Paragraph, ...]:
    waiting = [one.surface_name for one in assessment.decision.surfaces if one.test_first]
    if not waiting:
        return ()
    if len(waiting) == len(assessment.decision.surfaces):
        where = "on every lined surface"
    elif len(waiting) > 3:
        where = f"on {len(waiting)} lined surfaces"
    else:
        where = f"at {joined(waiting)}"
    return (Paragraph(f"Test before anything is disturbed {where}; see Gut or keep."),)


def _money_table(assessment: Assessment) -> Table:
    """The likely sums in one row."""
    estimate = assessment.estimate
    sums = (estimate.labor, estimate.materials, estimate.haul, estimate.total, estimate.hidden)
    return Table(_MONEY, (tuple(format_usd(spread.likely) for spread in sums),))
