"""The money: the range of the total, what moves it, and whether the budget holds."""

from __future__ import annotations

from functools import partial
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import VerticalScroll
from textual.content import Content
from textual.events import Resize
from textual.message import Message
from textual.screen import Screen
from textual.widgets import Footer, Static

from leanto.assessment import Assessment, with_money
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.reports.blocks import Block, Heading
from leanto.reports.chart_blocks import SwingChart
from leanto.reports.contents.allowances import budget_in_words
from leanto.reports.contents.money import (
    marks_in_words,
    money_blocks,
    range_in_words,
    spread_chart,
)
from leanto.reports.contents.numbering import numbering
from leanto.reports.text import block_lines
from leanto.tui.origin_of import of_total
from leanto.tui.screens.origin import OriginScreen
from leanto.tui.screens.rows_screen import in_one_line
from leanto.tui.shown import visible
from leanto.tui.widgets.spread_plot import SpreadPlot
from leanto.tui.widgets.swing_plot import SwingPlot


class MoneyScreen(Screen[None]):
    """One page to scroll; it is drawn in a thread, so that keys are never held up."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape", "back", "Back", id="money.back", tooltip="Back to where you came from"),
        Binding("n", "section(1)", "Next part", id="money.next", tooltip="To the next part"),
        Binding("p", "section(-1)", "Part before", id="money.before", tooltip="To the part before"),
        Binding(
            "w",
            "origin",
            "Where from",
            id="money.origin",
            tooltip="Where the total comes from, line by line",
        ),
    ]
    DEFAULT_CSS = """
    MoneyScreen #answer { padding: 0 1; background: $panel; height: auto; text-style: bold; }
    MoneyScreen #page { height: 1fr; }
    MoneyScreen #text, MoneyScreen #legend, MoneyScreen #rest { padding: 0 1; height: auto; }
    MoneyScreen SpreadPlot, MoneyScreen SwingPlot, MoneyScreen #legend { display: none; }
    MoneyScreen.-drawn SpreadPlot, MoneyScreen.-drawn SwingPlot, MoneyScreen.-drawn #legend {
        display: block;
    }
    """

    class Drawn(Message):
        """The money was drawn; or why it could not be."""

        def __init__(self, assessment: Assessment | None, error: LeantoError | None = None) -> None:
            super().__init__()
            self.assessment, self.error = assessment, error

    def __init__(self, job: Job) -> None:
        super().__init__()
        self.job = job
        self.assessment: Assessment | None = None
        self._entries_shown = -1
        self._parts: dict[str, list[int]] = {}
        """By text the lines on which parts begin."""

    def compose(self) -> ComposeResult:
        yield Static(id="answer", markup=False)
        with VerticalScroll(id="page"):
            yield SpreadPlot()
            yield Static(id="legend", markup=False)
            yield Static(id="text", markup=False)
            yield SwingPlot()
            yield Static(id="rest", markup=False)
        yield Footer(compact=True, show_command_palette=False)

    def on_mount(self) -> None:
        self.query_one("#page").focus()
        self.reload()

    def on_screen_resume(self) -> None:
        if len(self.job.entries) != self._entries_shown:
            self.reload()

    def on_resize(self, event: Resize) -> None:
        self._show()

    def reload(self) -> None:
        """Draw the money anew."""
        self._entries_shown = len(self.job.entries)
        self._say("Drawing the total ten thousand times ...")
        self.run_worker(self._draw, name="money", thread=True, exclusive=True, exit_on_error=False)

    def on_money_screen_drawn(self, event: Drawn) -> None:
        self.assessment = event.assessment
        if event.error is not None:
            self._say(in_one_line(event.error))
        self._show()

    def action_back(self) -> None:
        self.dismiss()

    def action_origin(self) -> None:
        if self.assessment is not None:
            self.app.push_screen(OriginScreen(self.job, partial(of_total, self.job)))

    def action_section(self, by: int) -> None:
        """Scroll to the next part, or to the one before."""
        page = self.query_one("#page", VerticalScroll)
        begins = [0]
        for id_, lines in self._parts.items():
            above = self.query_one(f"#{id_}").virtual_region.y
            begins += [above + line for line in lines]
        at = round(page.scroll_y)
        later = [line for line in begins if line > at]
        before = [line for line in begins if line < at]
        target = (later[0] if later else at) if by > 0 else (before[-1] if before else 0)
        page.scroll_to(y=target, animate=False)

    def _draw(self) -> None:
        try:
            drawn = with_money(self.job.assess())
        except LeantoError as error:
            self.post_message(self.Drawn(None, error))
        else:
            self.post_message(self.Drawn(drawn))

    def _show(self) -> None:
        assessment = self.assessment
        money = assessment.money if assessment else None
        has_lines = assessment is not None and bool(assessment.estimate.lines)
        self.set_class(money is not None and has_lines, "-drawn")
        self._parts = {}
        if assessment is None or money is None:
            for id_ in ("text", "rest"):
                self.query_one(f"#{id_}", Static).update("")
            return
        if has_lines:
            self._say(f"{range_in_words(money)} {budget_in_words(assessment)}")
            chart = spread_chart(money)
            self.query_one(SpreadPlot).show(chart)
            self.query_one("#legend", Static).update(marks_in_words(chart))
        else:
            self._say("Nothing is in the scope yet: no finding calls for work.")
        blocks = money_blocks(assessment, numbering(assessment), on_screen=True)
        at = next((i for i, one in enumerate(blocks) if isinstance(one, SwingChart)), len(blocks))
        for one in blocks[at : at + 1]:
            assert isinstance(one, SwingChart)
            self.query_one(SwingPlot).show(one, self.size.width)
        self.query_one("#text", Static).update(self._page("text", blocks[:at]))
        self.query_one("#rest", Static).update(self._page("rest", blocks[at + 1 :]))

    def _page(self, id_: str, blocks: tuple[Block, ...]) -> Content:
        width = max(self.size.width - 4, 20)
        lines: list[Content] = []
        begins = self._parts[id_] = []
        for block in blocks:
            style = "bold" if isinstance(block, Heading) else ""
            lines.append(Content(""))
            if isinstance(block, Heading) and block.level < 3:
                begins.append(len(lines))
            lines += [Content.styled(line, style) for line in block_lines(block, width)]
        return Content("\n").join(lines)

    def _say(self, text: str) -> None:
        mark = f"READ ONLY. {self.job.read_only_reason} " if self.job.read_only else ""
        self.query_one("#answer", Static).update(visible(mark + text))
