"""What keeping and gutting may cost: both courses drawn, for one surface or the whole interior."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.message import Message
from textual.screen import Screen
from textual.widgets import Footer, Static

from leanto.assessment import Assessment, course_chances
from leanto.decision.chances import AllChances, Chances
from leanto.reports.chart_blocks import BothSpreads
from leanto.reports.chart_text import spread_in_words
from leanto.tui.shown import visible
from leanto.tui.widgets.course_plot import CoursePlot


class CoursesScreen(Screen[None]):
    """One picture at a time; left and right go round the surfaces and the interior."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,enter", "back", "Back", id="courses.back", tooltip="Back to the table"),
        Binding("left", "step(-1)", "Before", id="courses.before", tooltip="The one before"),
        Binding("right", "step(1)", "Next", id="courses.next", tooltip="The next one"),
    ]
    DEFAULT_CSS = """
    CoursesScreen #title { padding: 0 1; text-style: bold; background: $panel; }
    CoursesScreen #said { padding: 0 1; height: 3; }
    CoursesScreen CoursePlot { display: none; }
    CoursesScreen.-drawn CoursePlot { display: block; }
    """

    class Drawn(Message):
        """Both courses were drawn."""

        def __init__(self, chances: AllChances) -> None:
            super().__init__()
            self.chances = chances

    def __init__(self, assessment: Assessment, surface_id: str) -> None:
        super().__init__()
        self._assessment, self._surface_id = assessment, surface_id
        self._drawn: tuple[Chances, ...] = ()

    def compose(self) -> ComposeResult:
        yield Static(id="title", markup=False)
        yield CoursePlot()
        yield Static(id="said", markup=False)
        yield Footer(compact=True, show_command_palette=False)

    def on_mount(self) -> None:
        self.query_one("#title", Static).update("Drawing both courses ten thousand times ...")
        self.run_worker(self._draw, name="courses", thread=True, exclusive=True)

    def on_courses_screen_drawn(self, event: Drawn) -> None:
        whole = event.chances.interior
        self._drawn = (*event.chances.surfaces, *((whole,) if whole else ()))
        self.set_class(bool(self._drawn), "-drawn")
        self._show()

    def action_back(self) -> None:
        self.dismiss()

    def action_step(self, by: int) -> None:
        if self._drawn:
            at = (self._at + by) % len(self._drawn)
            self._surface_id = self._drawn[at].surface_id
            self._show()

    def _draw(self) -> None:
        self.post_message(self.Drawn(course_chances(self._assessment)))

    @property
    def _at(self) -> int:
        ids = [one.surface_id for one in self._drawn]
        return ids.index(self._surface_id) if self._surface_id in ids else 0

    def _show(self) -> None:
        if not self._drawn:
            return
        one = self._drawn[self._at]
        chart = BothSpreads.of(one.keep, one.gut)
        self.query_one(CoursePlot).show(chart)
        self.query_one("#title", Static).update(visible(one.surface_name))
        self.query_one("#said", Static).update(
            f"█ {spread_in_words(chart.keep)}\n* {spread_in_words(chart.gut)}\n"
            f"Keeping is cheaper in {one.keep_is_cheaper:.0%} of the draws."
        )
