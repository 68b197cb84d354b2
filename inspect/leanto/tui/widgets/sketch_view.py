"""The small sketch of the surface that the walker faces, with its zones by number."""

from __future__ import annotations

from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive
from textual.widget import Widget

from leanto.building.rectangle import Rectangle
from leanto.building.sketch import Sketch
from leanto.tui.marks import FAINT
from leanto.tui.paragraphs import paragraph
from leanto.tui.shown import on_one_line
from leanto.tui.widgets.sketch_cells import Cell, Ink, sketch_cells

_STYLES = {
    Ink.BLANK: "",
    Ink.EDGE: "",
    Ink.MEMBER: FAINT,
    Ink.COVERED: FAINT,
    Ink.OPENING: "reverse",
    Ink.ZONE: "bold $text-error reverse",
    Ink.PLACED: "bold $text-accent reverse",
}


_MOST_ROWS = 18


class SketchView(Widget):
    """Draws a sketch as large as its width allows, with its zones listed below."""

    sketch: reactive[Sketch | None] = reactive(None, layout=True)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(sketch_lines(self.sketch, width))

    def render(self) -> Content:
        return Content("\n").join(sketch_lines(self.sketch, self.size.width))


def sketch_lines(sketch: Sketch | None, width: int) -> list[Content]:
    """The sketch and the list of its zones."""
    if sketch is None:
        return [Content.styled("No surface here.", FAINT)]
    return [*sketch_rows(sketch, width, _MOST_ROWS), *_listed(sketch, width)]


def sketch_rows(
    sketch: Sketch, width: int, height: int, *, placed: Rectangle | None = None
) -> list[Content]:
    """The sketch alone; with ``placed`` the rectangle that is being placed lies over it."""
    return [_line(line) for line in sketch_cells(sketch, width, height, placed)]


def _listed(sketch: Sketch, width: int) -> list[Content]:
    return [
        line
        for zone in sketch.zones
        for line in paragraph(
            f"{zone.mark}: {on_one_line(zone.label)}", width, label=f"{zone.number} ", at_most=1
        )
    ]


def _line(cells: list[Cell]) -> Content:
    return Content.assemble(*((cell.char, _STYLES[cell.ink]) for cell in cells))
