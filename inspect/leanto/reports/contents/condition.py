"""The condition report, for the owner."""

from __future__ import annotations

from leanto.assessment import Assessment, with_money
from leanto.reports.blocks import Block, Bullets, Heading, NewPage, Paragraph, Report
from leanto.reports.contents.allowances import allowance_blocks, licensed_in_words
from leanto.reports.contents.basis import NO_ENGINEER, basis_blocks
from leanto.reports.contents.cautions import caution_blocks
from leanto.reports.contents.decision import decision_blocks
from leanto.reports.contents.facts import block_table, site_facts, title_facts
from leanto.reports.contents.findings import finding_blocks
from leanto.reports.contents.gaps import not_reached_blocks, question_blocks, undecided_blocks
from leanto.reports.contents.money import money_blocks
from leanto.reports.contents.numbering import Numbering, numbering
from leanto.reports.contents.provenance import provenance_blocks
from leanto.reports.contents.reckoned import reckoned_blocks
from leanto.reports.contents.sketches import finding_figures
from leanto.reports.contents.summary import summary_blocks
from leanto.reports.in_units import in_shown_units, typed_for

FOOTER = "Planning allowances, not quotes. Nothing here is called safe. Local codes govern."
INVENTED = "The building, the walk and the pictures in this report are invented."


def condition_report(assessment: Assessment, who: str = "") -> Report:
    """Everything that was found, decided, scoped and priced, the answer first.

    ``who`` walked the building, as it is to be printed.
    """
    assessment = with_money(assessment)
    building, numbers = assessment.building, numbering(assessment)
    blocks: list[Block] = [
        title_facts(assessment, who),
        *((Paragraph(INVENTED, "note"),) if building.invented else ()),
        Heading(1, "Summary"),
        *summary_blocks(assessment, numbers),
        Paragraph(NO_ENGINEER, "note"),
        NewPage(),
        Heading(1, "The building"),
        block_table(building),
        site_facts(building),
        *_cautions(assessment),
        Heading(1, "Findings"),
        Paragraph(
            "Numbered as on the sketches. What follows from another finding stands below it: "
            "put the cause right first.",
            "note",
        ),
        *finding_blocks(assessment, numbers),
        Heading(1, "Open questions"),
        *question_blocks(assessment, numbers),
        Heading(1, "Sketches"),
        *finding_figures(assessment, numbers),
        Heading(1, "Gut or keep"),
        *decision_blocks(assessment, numbers),
        Heading(1, "Scope and allowances"),
        *allowance_blocks(assessment, numbers),
        Heading(1, "Money"),
        *money_blocks(assessment, numbers),
        Heading(1, "Work for licensed trades"),
        *_licensed(assessment, numbers),
        *_checks(assessment),
        Heading(1, "What was not reached"),
        *not_reached_blocks(assessment),
        *undecided_blocks(assessment),
        Heading(1, "Basis of the figures"),
        *basis_blocks(assessment, numbers),
        NewPage(),
        Heading(1, "Appendix: where each figure comes from"),
        *provenance_blocks(assessment, numbers),
    ]
    report = Report(
        kind="Condition report",
        title=building.name,
        subtitle=building.place,
        as_of=assessment.as_of,
        blocks=tuple(blocks),
        invented=building.invented,
        footer=FOOTER,
        keywords=("condition", "outbuilding", building.name),
    )
    return in_shown_units(report, *typed_for(assessment))


def _cautions(assessment: Assessment) -> tuple[Block, ...]:
    cautions = caution_blocks(assessment)
    return (Heading(1, "Cautions"), *cautions) if cautions else ()


def _checks(assessment: Assessment) -> tuple[Block, ...]:
    if not assessment.reckonings:
        return ()
    return (Heading(1, "Checks by the numbers"), *reckoned_blocks(assessment))


def _licensed(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    lines = licensed_in_words(assessment, numbers)
    called = tuple(
        f"{caution.who}: {caution.title.lower()}"
        for caution in caution_blocks(assessment)
        if caution.who
    )
    said = Paragraph(
        "Most places license the trades below; local rules say who may do what, and what needs "
        "a permit. This report is no permit and no design."
    )
    return (said, *((Bullets(lines + called),) if lines or called else ()))
