"""The findings, grouped by cause; and what the walk left open."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import ClassVar

from textual.binding import Binding, BindingType
from textual.content import Content

from leanto.assessment import Assessment
from leanto.checklist.model import Item
from leanto.job import Job
from leanto.reports.contents.measures import measured_in_words
from leanto.reports.contents.numbering import numbering
from leanto.reports.contents.words import capitalized, zone_in_words
from leanto.rules.finding import Finding, OpenQuestion, Undecided
from leanto.tui.origin import Origin
from leanto.tui.origin_of import of_answer, of_finding
from leanto.tui.screens.details import Details, labeled, listed, said, strong
from leanto.tui.screens.rows_screen import RowsScreen
from leanto.tui.widgets import findings_table as table


class FindingsScreen(RowsScreen):
    """Two views of what the rules had to say: findings, and open questions."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding(
            "tab",
            "other_view",
            "Open questions",
            id="findings.view",
            tooltip="Findings, or what the walk could not settle",
        ),
    ]

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self.shows_open = False

    def answer_of(self, assessment: Assessment) -> str:
        judged = assessment.judged
        if not self.shows_open:
            return table.answer(judged)
        questions, undecided = len(judged.questions), len(judged.undecided)
        if not questions and not undecided:
            return "Nothing is open. Tab goes back to the findings."
        return (
            f"{questions} open questions, and {undecided} rules undecided for want of a measure. "
            "Undecided never means passed. Tab goes back to the findings."
        )

    def fill(self, assessment: Assessment) -> None:
        if self.shows_open:
            rows = table.open_rows(assessment)
            self.table.fill(table.OPEN_COLUMNS, rows, table.OPEN_SORTINGS)
        else:
            rows = table.finding_rows(assessment)
            self.table.fill(table.FINDING_COLUMNS, rows, table.FINDING_SORTINGS)

    def action_other_view(self) -> None:
        self.shows_open = not self.shows_open
        self.close_filter()
        self.reload()
        self.table.focus()

    def preview_of(self, assessment: Assessment, key: str) -> Sequence[Content]:
        if self.shows_open:
            return self._open_details(assessment, key).lines()
        finding = _finding(assessment, key)
        place = f"{table.when(finding)} - {finding.station_name}"
        return strong(finding.text), said(place), said(finding.advice or finding.watch)

    def details_of(self, assessment: Assessment, key: str) -> Details:
        if self.shows_open:
            return self._open_details(assessment, key)
        finding = _finding(assessment, key)
        title = f"{numbering(assessment).findings[key]}. {finding.text}"
        return Details(title, tuple(_about(assessment, finding)))

    def origin_of(self, key: str) -> Callable[[], Origin | None] | None:
        if not self.shows_open:
            return partial(of_finding, self.job, key)
        assert self.assessment is not None
        kind, _, index = key.partition(" ")
        judged = self.assessment.judged
        if kind == "question":
            question = judged.questions[int(index)]
            if question.finding_id:
                return partial(of_finding, self.job, question.finding_id)
            return partial(of_answer, self.job, question.observation, "", question.text)
        undecided = judged.undecided[int(index)]
        title = self._open_details(self.assessment, key).title
        return partial(of_answer, self.job, undecided.observation, undecided.rule_id, title)

    def _open_details(self, assessment: Assessment, key: str) -> Details:
        kind, _, index = key.partition(" ")
        if kind == "question":
            return _question_details(assessment, assessment.judged.questions[int(index)])
        return _undecided_details(assessment, assessment.judged.undecided[int(index)])


def _finding(assessment: Assessment, key: str) -> Finding:
    return next(finding for finding in assessment.judged.findings if finding.id == key)


def _about(assessment: Assessment, finding: Finding) -> list[Content]:
    """Urgency, place, what was seen, why, what it calls for, cautions, who must act."""
    numbers = numbering(assessment)
    surface = assessment.surfaces.get(finding.surface_id or "")
    parts = [labeled("When", capitalized(table.when(finding)))]
    if finding.besides:
        parts.append(labeled("With it", " ".join(finding.besides)))
    place = finding.station_name
    if finding.zone and surface:
        place += f"; {zone_in_words(finding.zone, surface)}"
    parts.append(labeled("Where", place))
    if finding.advice:
        parts.append(labeled("What to do", finding.advice))
    if finding.watch:
        parts.append(labeled("Keep watching", finding.watch))
    parts += _seen(assessment, finding)
    if finding.cause_id in numbers.findings:
        cause = _finding(assessment, finding.cause_id or "")
        parts.append(labeled("Follows from", f"{numbers.findings[cause.id]}. {cause.text}"))
    effects = [one for one in assessment.judged.findings if one.cause_id == finding.id]
    if effects:
        parts.append(
            listed("Brings about", (f"{numbers.findings[one.id]}. {one.text}" for one in effects))
        )
    items = [item for item in assessment.scope.items if finding.id in item.findings]
    if items:
        lines = (
            f"{numbers.items[item.id]}. {item.work.title}, {item.place} ({item.work.trade})"
            for item in items
        )
        parts.append(listed("Work it calls for", lines))
    if finding.decides:
        decides = f"{finding.decides.course}: {finding.decides.reason}"
        parts.append(labeled("Decides for gut or keep", decides))
    parts += _cautions(assessment, finding)
    licensed = {item.work.trade for item in items if item.work.trade.is_licensed}
    if licensed:
        who = ", ".join(sorted(licensed))
        parts.append(labeled("Who must act", f"licensed in most places: {who}; local rules govern"))
    parts.append(labeled("Rule", f"{finding.rule_id}. Source: {finding.source}"))
    return parts


def _seen(assessment: Assessment, finding: Finding) -> list[Content]:
    """The observation behind the finding, with its measures, note and photos."""
    seen = assessment.walk.observations.get(finding.observation)
    item = _item(assessment, finding.observation.item)
    parts = []
    if seen is not None:
        answered = seen.condition.value if seen.condition else "not answered"
        if seen.reason:
            answered += f" ({seen.reason})"
        asked = item.prompt if item else finding.observation.item
        parts.append(labeled("Seen", f"{asked}: {answered}"))
        measures = {one.id: one for one in assessment.library.checklist.measures}
        if seen.measures:
            parts.append(listed("Measured", measured_in_words(seen.measures, measures)))
    if finding.note:
        parts.append(labeled("Note", finding.note))
    if finding.photos:
        names = (photo.original_name or photo.digest[:8] for photo in finding.photos)
        parts.append(labeled("Photos", ", ".join(names)))
    return parts


def _cautions(assessment: Assessment, finding: Finding) -> list[Content]:
    cautions = [
        caution
        for caution in assessment.library.checklist.cautions
        if caution.id in finding.caution
    ]
    return [
        labeled(
            f"! Caution, {caution.title}",
            caution.text + (f" Who must act: {caution.who}." if caution.who else ""),
        )
        for caution in cautions
    ]


def _question_details(assessment: Assessment, question: OpenQuestion) -> Details:
    parts = [
        labeled("Who can answer", question.ask or "not said"),
        labeled("Where", _place(assessment, question.observation.station)),
    ]
    if question.finding_id:
        finding = _finding(assessment, question.finding_id)
        number = numbering(assessment).findings[finding.id]
        parts.append(labeled("Comes from", f"{number}. {finding.text}"))
    return Details(question.text, tuple(parts))


def _undecided_details(assessment: Assessment, undecided: Undecided) -> Details:
    checklist = assessment.library.checklist
    measure = next((one for one in checklist.measures if one.id == undecided.missing), None)
    rule = next(
        (one.rule for one in assessment.library.rules if one.rule.id == undecided.rule_id), None
    )
    item = _item(assessment, undecided.observation.item)
    missing = measure.label if measure else undecided.missing
    parts = [
        labeled("Missing", f"{missing}. {measure.help}" if measure else missing),
        labeled("Where", _place(assessment, undecided.observation.station)),
    ]
    if item:
        parts.append(labeled("Item", item.prompt))
    if rule:
        parts.append(labeled("It may be", rule.finding))
        parts.append(labeled("Rule", f"{rule.id}. Source: {rule.source}"))
    parts.append(said("Undecided never means passed: measure it, or treat it as open."))
    return Details(f"Undecided for want of: {missing}", tuple(parts))


def _item(assessment: Assessment, item_id: str) -> Item | None:
    return next((i for i in assessment.library.checklist.items() if i.id == item_id), None)


def _place(assessment: Assessment, station_id: str) -> str:
    return next((s.name for s in assessment.stations if s.id == station_id), station_id)
