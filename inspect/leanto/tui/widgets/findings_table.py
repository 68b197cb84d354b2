"""The rows of the findings, and of what the walk left open."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.reports.contents.numbering import chains, numbering
from leanto.rules.finding import Finding, Judged
from leanto.rules.model import Urgency
from leanto.tui.short_place import short_place
from leanto.tui.widgets.rows_table import Column, Row

FINDING_COLUMNS = (
    Column("#", 3, "right"),
    Column("When", 18),
    Column("Finding", 0),
    Column("Place", 20, shorten=short_place),
    Column("Scope lines", 11, from_width=100),
)
FINDING_SORTINGS = ("cause and effect", "urgency", "place")
OPEN_COLUMNS = (
    Column("Open", 9),
    Column("Question, or what is missing", 0),
    Column("Who can answer", 16),
    Column("Place", 16, shorten=short_place),
)
OPEN_SORTINGS = ("kind", "place", "who can answer")


def urgency_of(finding: Finding) -> Urgency:
    """Danger is always for now."""
    return Urgency.NOW if finding.danger else finding.urgency


def when(finding: Finding) -> str:
    """The urgency in words, with the mark of what can hurt."""
    return "! now, DANGER" if finding.danger else finding.urgency.value


def answer(judged: Judged) -> str:
    """How many findings there are and how urgent, in one sentence."""
    count = len(judged.findings)
    if not count:
        return "No findings yet: nothing that was answered calls for work or a question."
    parts = []
    for urgency in Urgency:
        number = sum(urgency_of(finding) is urgency for finding in judged.findings)
        if number:
            parts.append(f"{number} {urgency}")
    dangers = sum(finding.danger for finding in judged.findings)
    hurt = f" {dangers} of them can hurt somebody." if dangers else ""
    noun = "finding" if count == 1 else "findings"
    left = len(judged.questions) + len(judged.undecided)
    more = f" {left} open: press Tab." if left else ""
    return f"{count} {noun}: {', '.join(parts)}.{hurt}{more}"


def finding_rows(assessment: Assessment) -> tuple[Row, ...]:
    """A row for each finding, effects indented below their causes."""
    numbers = numbering(assessment)
    order = {station.name: at for at, station in enumerate(assessment.stations)}
    rows = []
    for chain in chains(assessment.judged.findings):
        for finding, depth in chain:
            number = numbers.findings[finding.id]
            indent = "  " * (depth - 1) + "└ " if depth else ""
            lines = [item for item in assessment.scope.items if finding.id in item.findings]
            rows.append(
                Row(
                    key=finding.id,
                    cells=(
                        str(number),
                        when(finding),
                        indent + finding.text,
                        finding.station_name,
                        numbers.of_items(lines) or "none",
                    ),
                    orders=(
                        (not finding.danger, urgency_of(finding).rank, number),
                        (order.get(finding.station_name, len(order)), number),
                    ),
                    search=f"{finding.note}\n{finding.rule_id}",
                    style="bold" if finding.danger else "",
                )
            )
    return tuple(rows)


def open_rows(assessment: Assessment) -> tuple[Row, ...]:
    """A row for each open question, and for each rule that lacks a measure."""
    measures = {measure.id: measure.label for measure in assessment.library.checklist.measures}
    texts = {rule.rule.id: rule.rule.finding for rule in assessment.library.rules}
    places = {station.id: station.name for station in assessment.stations}
    order = {station.id: at for at, station in enumerate(assessment.stations)}
    rows = []
    for at, question in enumerate(assessment.judged.questions):
        station = question.observation.station
        rows.append(
            Row(
                key=f"question {at}",
                cells=(
                    "question",
                    question.text,
                    question.ask or "not said",
                    places.get(station, station),
                ),
                orders=((order.get(station, 0), 0, at), (question.ask or "~", 0, at)),
            )
        )
    for at, undecided in enumerate(assessment.judged.undecided):
        station = undecided.observation.station
        missing = measures.get(undecided.missing, undecided.missing)
        text = texts.get(undecided.rule_id, undecided.rule_id)
        rows.append(
            Row(
                key=f"undecided {at}",
                cells=(
                    "undecided",
                    f"Not measured: {missing}. May be: {text}",
                    "whoever walks",
                    places.get(station, station),
                ),
                orders=((order.get(station, 0), 1, at), ("whoever walks", 1, at)),
                search=undecided.rule_id,
            )
        )
    return tuple(rows)
