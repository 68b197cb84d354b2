"""Gut or keep for every lined surface, and the owner's own choice."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from functools import partial
from typing import ClassVar, Literal

from textual.binding import Binding, BindingType
from textual.content import Content

from leanto.assessment import Assessment
from leanto.decision.model import CourseCost, Evidence, HoleValue, Part, SurfaceDecision
from leanto.decision.words import headline, in_words, interior_in_words, what_turns
from leanto.errors import LeantoError
from leanto.money import format_usd
from leanto.quantities import shown
from leanto.record.entry import Overruled
from leanto.reports.contents.hidden import chance_pct
from leanto.reports.contents.holes import where_in_words
from leanto.reports.contents.numbering import numbering
from leanto.reports.contents.words import about, capitalized
from leanto.tui.origin import Origin
from leanto.tui.origin_of import of_surface
from leanto.tui.screens.ask_reason import AskReasonScreen
from leanto.tui.screens.courses import CoursesScreen
from leanto.tui.screens.details import Details, labeled, listed, said
from leanto.tui.screens.rows_screen import RowsScreen, in_one_line
from leanto.tui.shown import visible
from leanto.tui.widgets import decide_table as table
from leanto.tui.words import entry_in_words


class DecideScreen(RowsScreen):
    """The answers, what speaks for them, and the keys that overrule them."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("k", "overrule('keep')", "Keep", id="decide.keep", tooltip="Keep it, for a reason"),
        Binding("g", "overrule('gut')", "Gut", id="decide.gut", tooltip="Gut it, for a reason"),
        Binding(
            "c",
            "as_computed",
            "As computed",
            id="decide.computed",
            tooltip="Take your own choice back",
        ),
        Binding("d", "draw", "Chart", id="decide.draw", tooltip="Draw what both courses may cost"),
        Binding("u", "turn('undo')", "Undo", id="decide.undo", tooltip="Take back the last entry"),
        Binding("r", "turn('redo')", "Redo", id="decide.redo", show=False, tooltip="Bring it back"),
    ]

    def answer_of(self, assessment: Assessment) -> str:
        return interior_in_words(assessment.decision)

    def fill(self, assessment: Assessment) -> None:
        self.table.fill(table.COLUMNS, table.rows(assessment), table.SORTINGS)

    def preview_of(self, assessment: Assessment, key: str) -> Sequence[Content]:
        return (said(in_words(_decision(assessment, key))),)

    def details_of(self, assessment: Assessment, key: str) -> Details:
        one = _decision(assessment, key)
        return Details(f"{one.surface_name}: {headline(one)}", tuple(_about(assessment, one)))

    def origin_of(self, key: str) -> Callable[[], Origin | None] | None:
        return partial(of_surface, self.job, key)

    def action_overrule(self, course: Literal["keep", "gut"]) -> None:
        one = self._selected()
        if one is None:
            return
        if self.job.read_only:
            self._refuse(self.job.read_only_reason)
            return
        says = f"The figures say {one.computed}."
        question = f"{capitalized(course)}: {one.surface_name}. {says} Your reason?"

        def take(reason: str) -> None:
            if not reason:
                raise LeantoError("A choice of your own needs a reason.", "Type a few words.")
            self.job.record(Overruled(surface_id=one.surface_id, course=course, reason=reason))

        self.app.push_screen(AskReasonScreen(question, take), self._after)

    def action_as_computed(self) -> None:
        one = self._selected()
        if one is None:
            return
        if not one.overruled:
            self.notify(f"{one.surface_name} is as computed already.", markup=False)
            return
        try:
            self.job.record(Overruled(surface_id=one.surface_id, course="as computed"))
        except LeantoError as error:
            self._refuse(in_one_line(error))
        else:
            self.reload()

    def action_draw(self) -> None:
        one, assessment = self._selected(), self.assessment
        if one is not None and assessment is not None:
            self.app.push_screen(CoursesScreen(assessment, one.surface_id))

    def action_turn(self, way: Literal["undo", "redo"]) -> None:
        try:
            entry = self.job.undo() if way == "undo" else self.job.redo()
        except LeantoError as error:
            self._refuse(in_one_line(error))
            return
        if entry is None:
            self._refuse(f"There is nothing to {way}.")
            return
        done = "Taken back" if way == "undo" else "Back again"
        self.notify(visible(f"{done}: {entry_in_words(entry, self.job)}"), markup=False)
        self.reload()

    def _after(self, recorded: bool | None) -> None:
        if recorded:
            self.reload()

    def _selected(self) -> SurfaceDecision | None:
        row, assessment = self.table.selected, self.assessment
        return _decision(assessment, row.key) if row and assessment else None

    def _refuse(self, why: str) -> None:
        self.notify(visible(why), severity="warning", markup=False)


def _decision(assessment: Assessment, key: str) -> SurfaceDecision:
    return next(one for one in assessment.decision.surfaces if one.surface_id == key)


def _about(assessment: Assessment, one: SurfaceDecision) -> list[Content | tuple[Content, Content]]:
    """The words, both courses beside each other, and the evidence."""
    parts: list[Content | tuple[Content, Content]] = [said(in_words(one, conditions=False))]
    parts.append((_course(one.keep), _course(one.gut)))
    numbers = numbering(assessment)
    lines = []
    for piece in one.evidence:
        found = numbers.of_findings(piece.findings)
        because = f" (findings {found})" if found else ""
        lines.append(f"{piece.text}{because}: {_ratio(piece)}")
    parts.append(listed("Goes before the cost", _conditions(one)))
    parts.append(
        listed(
            "Chance of damage that cannot be seen",
            [
                f"{chance_pct(one.prior)} before anything was seen, by lining, age and base",
                *lines,
                f"{chance_pct(one.unseen.p)} now; if there is some, {one.unseen.extent:.0%} of the "
                f"unseen part on average: {one.unseen.mean:.0%} in all",
                "planning assumptions: each may be changed in checklists/hidden.yaml",
            ],
        )
    )
    if one.hole is not None:
        parts.append(listed("A test hole", _hole(assessment, one, one.hole)))
    parts.append(
        labeled(
            "Seen",
            f"{shown().area(one.damaged_sqft)} of {shown().area(one.area_sqft)} are bad "
            f"({table.damaged_percent(one):.0f} %)",
        )
    )
    parts.append(said("k keeps, g guts for a reason of your own, c takes that back: in the table."))
    return parts


def _conditions(one: SurfaceDecision) -> list[str]:
    """What decides or must be tested whatever the cost, with the source of each."""
    pairs = [("decides", reason) for reason in one.decisive]
    pairs += [("test first", reason) for reason in one.test_first]
    return [f"{kind}: {reason.text} Source: {reason.source}" for kind, reason in pairs] or [
        "nothing"
    ]


def _hole(assessment: Assessment, one: SurfaceDecision, hole: HoleValue) -> list[str]:
    return [
        f"where: {where_in_words(assessment, one, hole)}",
        f"costs about {about(hole.cost_usd)}, is worth {about(hole.worth_usd)}; knowing all would "
        f"be worth {about(hole.perfect_usd)}",
        f"would change the choice: {what_turns(hole)}",
        f"shows damage with a chance of {hole.chance_bad:.0%}; after sound wood "
        f"{hole.after_clean:.0%} is left",
    ]


def _ratio(piece: Evidence) -> str:
    if math.isinf(piece.ratio):
        return "it was seen"
    if piece.ratio >= 1:
        return f"{piece.ratio:g} times likelier where there is damage"
    return f"{1 / piece.ratio:.2g} times likelier where there is none"


def _course(course: CourseCost) -> Content:
    title = f"To {course.course}: about {about(course.expected)}"
    return listed(
        title,
        (_part(part) for part in course.parts),
    )


def _part(part: Part) -> str:
    low, high = format_usd(part.cost.low), format_usd(part.cost.high)
    spread = "" if low == high else f" ({low} to {high})"
    return f"{capitalized(part.text)}: {format_usd(part.expected)}{spread}"
