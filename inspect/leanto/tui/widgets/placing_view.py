"""The surface as large as there is room, with the rectangle that is being placed on it."""

from __future__ import annotations

from textual.content import Content
from textual.widget import Widget

from leanto.building.rectangle import Rectangle
from leanto.building.sketch import Sketch
from leanto.quantities import format_ft_in
from leanto.tui.paragraphs import paragraph
from leanto.tui.shown import on_one_line
from leanto.tui.widgets.sketch_view import sketch_rows


class PlacingView(Widget):
    """Stands in for the item while a place is asked for."""

    def __init__(self) -> None:
        super().__init__()
        self._sketch: Sketch | None = None
        self._placed: Rectangle | None = None

    def show(self, sketch: Sketch | None, placed: Rectangle) -> None:
        if (sketch, placed) != (self._sketch, self._placed):
            self._sketch, self._placed = sketch, placed
            self.refresh()

    def render(self) -> Content:
        sketch, width, height = self._sketch, self.size.width, self.size.height
        if sketch is None:
            return Content("")
        size = f"{format_ft_in(sketch.width_ft)} wide, {format_ft_in(sketch.height_ft)} high"
        title = paragraph(
            f"{on_one_line(sketch.title)}: {size}", width, style="bold $text-primary", at_most=2
        )
        rows = sketch_rows(sketch, width, height - len(title), placed=self._placed)
        return Content("\n").join([*title, *rows])
