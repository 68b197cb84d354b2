"""What the walk left open: questions, places not reached, rules without a measure."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.record.observation import ObservationKey
from leanto.reports.blocks import Block, Column, Paragraph, Table
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.words import capitalized, counted

_QUESTIONS = (
    Column("Finding", 0.09, "right"),
    Column("Question", 0.45),
    Column("Place", 0.23),
    Column("Who can answer", 0.23),
)
_NOT_REACHED = (Column("Place", 0.28), Column("Not seen", 0.47), Column("Why", 0.25))
_UNDECIDED = (
    Column("Place", 0.28),
    Column("Asked there", 0.36),
    Column("Not measured", 0.2),
    Column("Rule left open", 0.22),
)


def question_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """The open questions with who can answer them."""
    rows = tuple(
        (
            str(numbers.findings.get(question.finding_id or "", "")),
            question.text,
            station_name(assessment, question.observation),
            question.ask,
        )
        for question in sorted(
            assessment.judged.questions,
            key=lambda one: numbers.findings.get(one.finding_id or "", len(numbers.findings) + 1),
        )
    )
    if not rows:
        return (Paragraph("No question is left open by what was seen."),)
    return (Table(_QUESTIONS, rows),)


def not_reached_blocks(assessment: Assessment, with_reasons: bool = True) -> tuple[Block, ...]:
    """What nobody saw; the walker's reasons can be left out."""
    said = Paragraph(coverage_in_words(assessment))
    missed = assessment.not_reached
    if not missed:
        return (said, Paragraph("Nothing was left out on the walk."))
    if not with_reasons:
        rows = tuple(dict.fromkeys((one.place, one.what) for one in missed))
        return (said, Table(_NOT_REACHED[:2], rows))
    return (said, Table(_NOT_REACHED, tuple((one.place, one.what, one.why) for one in missed)))


def undecided_blocks(assessment: Assessment) -> tuple[Block, ...]:
    """The rules that could not be judged; nothing when every rule could be."""
    prompts = {item.id: item.prompt for item in assessment.library.checklist.items()}
    labels = {measure.id: measure.label for measure in assessment.library.checklist.measures}
    waiting: dict[tuple[str, str, str], list[str]] = {}
    for one in assessment.judged.undecided:
        place = station_name(assessment, one.observation)
        asked = prompts.get(one.observation.item, one.observation.item)
        measure = capitalized(labels.get(one.missing, one.missing.replace("_", " ")))
        waiting.setdefault((place, asked, measure), []).append(one.rule_id)
    rows = tuple((*where, ", ".join(dict.fromkeys(ids))) for where, ids in waiting.items())
    if not rows:
        return ()
    said = Paragraph("These rules wait for a measure. A rule left open is not the same as passed.")
    return (said, Table(_UNDECIDED, rows))


def coverage_in_words(assessment: Assessment) -> str:
    """How much of the walk was done."""
    asked = sum(len(one.items) for one in assessment.coverage)
    answered = sum(one.answered for one in assessment.coverage)
    refused = sum(one.no_access for one in assessment.coverage)
    walked = sum(one.answered > 0 for one in assessment.coverage)
    return (
        f"{answered} of {counted(asked, 'question')} answered, at {walked} of "
        f"{counted(len(assessment.coverage), 'station')}; {refused} of the answers say no access."
    )


def station_name(assessment: Assessment, key: ObservationKey) -> str:
    """The name of the place where an observation was made."""
    names = {station.id: station.name for station in assessment.stations}
    return names.get(key.station, key.station)
