"""Everything about one row of a table, on a screen of its own."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.content import Content
from textual.screen import Screen
from textual.widgets import Footer, Static

from leanto.money import Spread, format_usd
from leanto.tui.shown import visible

Beside = tuple[Content, Content]
"""Two texts that stand beside each other where there is room."""


@dataclass(frozen=True, slots=True)
class Details:
    title: str
    parts: tuple[Content | Beside, ...]

    def as_column(self) -> Content:
        """All of it below each other, for a narrow panel."""
        flat: list[Content] = [strong(self.title)]
        for part in self.parts:
            flat += part if isinstance(part, tuple) else (part,)
        return Content("\n\n").join(flat)

    def lines(self) -> tuple[Content, ...]:
        """The title and what stands alone below it, for a preview."""
        return (strong(self.title), *(part for part in self.parts if isinstance(part, Content)))


def said(text: str) -> Content:
    """A paragraph: user text, never markup."""
    return Content(visible(text))


def strong(text: str) -> Content:
    return Content.styled(visible(text), "bold")


def labeled(label: str, text: str) -> Content:
    """``Label: text``."""
    return Content.assemble((f"{label}: ", "bold"), visible(text))


def listed(title: str, lines: Iterable[str]) -> Content:
    """A title with one line for each entry."""
    entries = "".join(f"\n- {visible(line)}" for line in lines)
    return Content.assemble((title, "bold"), entries)


def amounts(spread: Spread) -> str:
    """The likely amount with its limits, such as ``$420 ($300 to $610)``."""
    low, likely, high = (format_usd(x) for x in (spread.low, spread.likely, spread.high))
    return likely if low == high else f"{likely} ({low} to {high})"


class DetailsScreen(Screen[None]):
    """Shows details; left and right go to the neighbors."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,enter", "back", "Back", id="details.back", tooltip="Back to the table"),
        Binding(
            "left", "step(-1)", "Before", id="details.before", tooltip="The row before this one"
        ),
        Binding("right", "step(1)", "Next", id="details.next", tooltip="The row after this one"),
    ]
    DEFAULT_CSS = """
    DetailsScreen #title { width: 1fr; padding: 0 1; text-style: bold; background: $panel; }
    DetailsScreen #body { padding: 0 1; height: 1fr; scrollbar-size-vertical: 1; }
    DetailsScreen .part { margin-bottom: 1; }
    DetailsScreen Horizontal { height: auto; }
    DetailsScreen Horizontal .part { width: 1fr; margin-right: 2; }
    """

    def __init__(self, details: Details, step: Callable[[int], Details | None]) -> None:
        """``step`` moves to a neighbor and returns its details; None at the end."""
        super().__init__()
        self._details = details
        self._step = step

    def compose(self) -> ComposeResult:
        yield Static(id="title", markup=False)
        yield Body(id="body", can_maximize=False)
        yield Footer(compact=True, show_command_palette=False)

    async def on_mount(self) -> None:
        await self._show()
        self.query_one(Body).focus()

    def action_back(self) -> None:
        self.dismiss()

    async def action_step(self, by: int) -> None:
        details = self._step(by)
        if details is None:
            self.app.bell()
            return
        self._details = details
        await self._show()

    async def _show(self) -> None:
        self.query_one("#title", Static).update(visible(self._details.title))
        body = self.query_one(Body)
        await body.remove_children()
        await body.mount_all(
            Horizontal(*(Static(text, classes="part") for text in part))
            if isinstance(part, tuple)
            else Static(part, classes="part")
            for part in self._details.parts
        )
        body.scroll_home(animate=False)


class Body(VerticalScroll):
    """Scrolls up and down only, so that left and right are free."""

    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("up", "scroll_up", "Up", show=False),
        Binding("down", "scroll_down", "Down", show=False),
        Binding("pageup", "page_up", "Page up", show=False),
        Binding("pagedown,space", "page_down", "Page down", show=False),
        Binding("home", "scroll_home", "Top", show=False),
        Binding("end", "scroll_end", "End", show=False),
    ]
