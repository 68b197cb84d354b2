"""The walk at one observation, opened from a number that rests on it; Escape leads back there."""

from __future__ import annotations

from textual.app import App

from leanto.job import Job
from leanto.record.observation import ObservationKey
from leanto.tui.screens.walk import WalkScreen
from leanto.tui.standing import Standing


class VisitScreen(WalkScreen):
    """Everything of the walk works here; what lies below it is shown anew afterwards."""

    def __init__(self, job: Job, key: ObservationKey) -> None:
        super().__init__(job)
        self.standing = Standing(key.station, key.item, key.number)
        self._visited = self.standing

    def on_mount(self) -> None:
        self.say("Esc goes back to where the number comes from.")

    def action_back(self) -> None:
        """Back over the steps that were made from here, then to where the number comes from."""
        if self.standing == self._visited or not self._came_from:
            self.dismiss()
        else:
            super().action_back()


def visit(app: App[None], job: Job, key: ObservationKey) -> None:
    """Show the walk there. Notes that were begun elsewhere stay begun."""
    screen = VisitScreen(job, key)
    for below in app.screen_stack:
        if isinstance(below, WalkScreen):
            screen.drafts = below.drafts
    app.push_screen(screen)
