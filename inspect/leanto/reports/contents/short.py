"""Short reports for the command line, made of the same blocks as the long ones."""

from __future__ import annotations

from leanto.assessment import Assessment, with_money
from leanto.reports.blocks import Block, Bullets, Heading, Paragraph, Report
from leanto.reports.contents.allowances import (
    allowance_blocks,
    budget_in_words,
    licensed_in_words,
    movers,
)
from leanto.reports.contents.basis import NO_ENGINEER
from leanto.reports.contents.condition import INVENTED
from leanto.reports.contents.decision import decision_blocks
from leanto.reports.contents.findings import finding_blocks
from leanto.reports.contents.gaps import coverage_in_words, question_blocks, undecided_blocks
from leanto.reports.contents.money import money_blocks
from leanto.reports.contents.numbering import numbering
from leanto.reports.contents.summary import summary_blocks
from leanto.reports.in_units import in_shown_units, typed_for


def findings_report(assessment: Assessment) -> Report:
    """What was found, with cause and urgency, and what is still open."""
    numbers = numbering(assessment)
    blocks: list[Block] = [
        Paragraph(coverage_in_words(assessment)),
        Heading(1, "Findings"),
        *finding_blocks(assessment, numbers),
        Heading(1, "Open questions"),
        *question_blocks(assessment, numbers),
    ]
    if undecided := undecided_blocks(assessment):
        blocks += [Heading(1, "Left open for want of a measure"), *undecided]
    return _report("Findings", assessment, blocks)


def decision_report(assessment: Assessment) -> Report:
    """Gut or keep for every lined surface, with both courses' costs and the reasons."""
    return _report(
        "Gut or keep", assessment, list(decision_blocks(assessment, numbering(assessment)))
    )


def scope_report(assessment: Assessment) -> Report:
    """The repair items with quantities and allowances, and the range of the total."""
    assessment = with_money(assessment)
    numbers = numbering(assessment)
    blocks: list[Block] = [*allowance_blocks(assessment, numbers, short=True)]
    if assessment.estimate.lines:
        blocks.append(Paragraph(budget_in_words(assessment), "lead"))
    if widest := movers(assessment.estimate, numbers):
        blocks += [Heading(2, "What moves the total most"), Bullets(widest)]
    if licensed := licensed_in_words(assessment, numbers):
        blocks += [Heading(2, "Licensed trades"), Bullets(licensed)]
    return _report("Scope and allowances", assessment, blocks)


def money_report(assessment: Assessment) -> Report:
    """The range, the contingency, what moves the total, and whether the budget holds."""
    assessment = with_money(assessment)
    return _report("Money", assessment, list(money_blocks(assessment, numbering(assessment))))


def summary_report(assessment: Assessment) -> Report:
    """The first page of the condition report."""
    assessment = with_money(assessment)
    blocks = [*summary_blocks(assessment, numbering(assessment)), Paragraph(NO_ENGINEER, "note")]
    return _report("Summary", assessment, blocks)


def _report(kind: str, assessment: Assessment, blocks: list[Block]) -> Report:
    building = assessment.building
    if building.invented:
        blocks = [*blocks, Paragraph(INVENTED, "note")]
    report = Report(
        kind=kind,
        title=building.name,
        subtitle=building.place,
        as_of=assessment.as_of,
        blocks=tuple(blocks),
        invented=building.invented,
    )
    return in_shown_units(report, *typed_for(assessment))
