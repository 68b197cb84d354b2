"""What a building comes to while it is typed: its plan and the areas of its surfaces."""

from __future__ import annotations

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from leanto.building.model import Building
from leanto.tui.widgets.building_plan import area_lines, plan_lines

_PLAN_ROWS = 16


class BuildingSide(Widget):
    """Drawn anew for each building that holds together; the last one stays meanwhile."""

    building: reactive[Building | None] = reactive(None)
    is_old: reactive[bool] = reactive(False)
    """True while the form holds something that is no building."""

    def render(self) -> Content:
        if self.building is None:
            return Content("The plan and the areas stand here\nas soon as the sizes are typed.")
        title = "Plan before the change" if self.is_old else "Plan, north is up"
        plan = plan_lines(self.building, max(self.size.width, 12), _PLAN_ROWS)
        return Content("\n").join(
            [
                Content.styled(title, "bold"),
                Content("\n".join(plan)),
                Content("D door, B big door, W window, V vent\n"),
                Content.styled("Areas, openings taken off", "bold"),
                Content("\n".join(area_lines(self.building))),
            ]
        )
