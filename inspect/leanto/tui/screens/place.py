"""A screen that shows one place of the walk and records about it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from textual import events
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Footer, Static

from leanto.assessment import Assessment
from leanto.checklist.model import Item
from leanto.cost.estimate import Range
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.record.entry import Body
from leanto.record.observation import ObservationKey
from leanto.tui import standing as places
from leanto.tui.assessing import Assessed, Assessing
from leanto.tui.consequences import following
from leanto.tui.item_help import item_help
from leanto.tui.showing import headline, item_rows, shown_item, sketch_here, station_rows
from leanto.tui.shown import visible
from leanto.tui.standing import Standing
from leanto.tui.widgets.field_bar import FieldBar
from leanto.tui.widgets.follows import Following, Follows
from leanto.tui.widgets.item_view import ItemView, ShownItem
from leanto.tui.widgets.open_items import OpenItems
from leanto.tui.widgets.placing_view import PlacingView
from leanto.tui.widgets.plan_view import PlanView
from leanto.tui.widgets.sketch_view import SketchView
from leanto.tui.widgets.station_list import StationList
from leanto.tui.widgets.top_line import TopLine

_NO_BUILDING = "There is no building yet. Press F7 and type its facts; then the walk begins."


class PlaceScreen(Screen[None]):
    """Stations at the left, the item in the middle, what follows below it."""

    AUTO_FOCUS = ""
    HORIZONTAL_BREAKPOINTS = [(0, "-tiny"), (60, "-narrow"), (120, "-wide")]

    def __init__(self, job: Job) -> None:
        super().__init__()
        self.job = job
        self.standing = Standing("")
        """With an empty station while there is no building."""
        self.range_before: Range | None = None
        """The range before the last entry; None after a move."""
        self._assessing = Assessing(self, job)
        self._assessment: Assessment | None = None

    def compose(self) -> ComposeResult:
        yield TopLine()
        with Horizontal(id="body"):
            with Vertical(id="left"):
                yield StationList()
                yield PlanView()
            with Vertical(id="middle"):
                yield ItemView()
                yield PlacingView()
                yield Follows()
            with Vertical(id="aside"):
                yield SketchView()
                yield OpenItems()
        yield Static(id="said", markup=False)
        yield FieldBar()
        yield Footer(compact=True, show_command_palette=False)

    @property
    def help_text(self) -> Content:
        """The whole text of the item and what is amiss in the job, for the help screen."""
        notices = [Content.styled(visible(notice), "$text-warning") for notice in self.job.notices]
        return Content("\n").join([item_help(self._shown()), *notices])

    def on_resize(self, event: events.Resize) -> None:
        self.query_one(Follows).at_most = max(2, event.size.height // 4)

    def record(self, body: Body) -> bool:
        """Keep one fact; False when it could not be kept, which is said."""
        try:
            self.job.record(body)
        except LeantoError as error:
            self.refuse(str(error))
            return False
        self.recorded()
        return True

    def recorded(self) -> None:
        self.range_before = self._assessment.estimate.range if self._assessment else None
        self.show()
        self.assess()

    def assess(self) -> None:
        if self.standing.station:
            self._assessing.start()

    def key_pressed(self) -> None:
        """To be called for every key: assessing waits until they rest."""
        self._assessing.key_pressed()

    def on_assessed(self, message: Assessed) -> None:
        self._assessing.finished()
        if message.error is not None:
            self.refuse(str(message.error))
            return
        self._assessment = message.assessment
        self._show_following()

    def show(self) -> None:
        """Put what the record says on the screen."""
        self.query_one(ItemView).shown = self._shown()
        self._show_following()
        if not self.standing.station:
            return
        rows = station_rows(self.job)
        shown = headline(self.job, self.standing, rows)
        self.query_one(TopLine).headline = replace(shown, watched=self.watched)
        self.query_one(StationList).show(rows, self.standing.station)
        plan = self.query_one(PlanView)
        plan.building = self.job.walk.building
        plan.surface = self.job.grounds.surface_at(self.standing.station)
        self.query_one(SketchView).sketch = sketch_here(self.job, self.standing)
        self.query_one(OpenItems).rows = item_rows(self.job, self.standing)

    @property
    def watched(self) -> str:
        """The folder that is watched for photos; empty for none."""
        return ""

    def _shown(self) -> ShownItem:
        if not self.standing.station:
            return ShownItem(nothing=_NO_BUILDING)
        return shown_item(self.job, self.standing)

    def _show_following(self) -> None:
        self.query_one(Follows).following = (
            following(self._assessment, self.standing.key, self.range_before)
            if self._assessment and self.standing.station
            else Following()
        )

    def item(self) -> Item | None:
        return places.item_of(self.job, self.standing) if self.standing.station else None

    def may_write(self) -> bool:
        if self.job.read_only:
            self.refuse(f"Nothing can be added. {self.job.read_only_reason}")
        return not self.job.read_only

    def say(self, text: str) -> None:
        self.query_one("#said", Static).remove_class("refused").update(Content(text))

    def refuse(self, why: str) -> None:
        self.query_one("#said", Static).add_class("refused").update(Content(f"! {why}"))


def about(key: ObservationKey) -> dict[str, Any]:
    """The fields of an entry that say what it is about."""
    return {"station": key.station, "item": key.item, "number": key.number}
