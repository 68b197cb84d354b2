"""The plan of the building with the place where the walker stands."""

from __future__ import annotations

from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive
from textual.widget import Widget

from leanto.building.model import Building
from leanto.building.surface import Surface
from leanto.tui.marks import FAINT
from leanto.tui.widgets.building_plan import HERE, plan_lines

_MOST_ROWS = 9


class PlanView(Widget):
    """North at the top; shown on wide screens."""

    building: reactive[Building | None] = reactive(None, layout=True)
    surface: reactive[Surface | None] = reactive(None, layout=True)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(self._lines(width))

    def render(self) -> Content:
        return Content("\n").join(self._lines(self.size.width))

    def _lines(self, width: int) -> list[Content]:
        if self.building is None or width < 8:
            return []
        drawn = plan_lines(self.building, width, _MOST_ROWS, self.surface)
        lines = [_with_mark(line) for line in drawn]
        if self.surface is not None:
            lines.append(Content.styled(f"{HERE} you; north is up", FAINT))
        return lines


def _with_mark(line: str) -> Content:
    before, mark, after = line.partition(HERE)
    if not mark:
        return Content(line)
    return Content.assemble(before, (mark, "bold $text-accent reverse"), after)
