"""The walk: one item after the other, one key an answer, everything kept at once."""

from __future__ import annotations

import contextlib
from collections.abc import Callable

from textual import events
from textual.timer import Timer

from leanto.errors import LeantoError
from leanto.job import Job
from leanto.record.entry import (
    AboutObservation,
    AirMeasured,
    Entry,
    MovedTo,
)
from leanto.record.history import batch_of
from leanto.tui import standing as places
from leanto.tui.screens.answering import AnsweringScreen
from leanto.tui.screens.jump import Jump
from leanto.tui.standing import Standing
from leanto.tui.walk_keys import WALK_KEYS
from leanto.tui.widgets.field_bar import FieldBar, FieldInput
from leanto.tui.widgets.open_items import OpenItems
from leanto.tui.widgets.station_list import StationList
from leanto.tui.words import entry_in_words

_MOVE_IS_KEPT_AFTER_S = 0.5


class WalkScreen(AnsweringScreen):
    """Shows where the walker stands, and records what is pressed."""

    BINDINGS = [*WALK_KEYS]

    def __init__(self, job: Job) -> None:
        super().__init__(job)
        self._came_from: list[Standing] = []
        self._move_timer: Timer | None = None

    # Coming and going

    def on_screen_resume(self) -> None:
        """The record may have changed on another screen, the building too."""
        self._find_ground()
        self.show()
        self.assess()

    def _find_ground(self) -> None:
        """Stand where the walk was left when there is no standing here, or no longer."""
        if self.job.walk.building is None:
            self.standing = Standing("")
        elif self.standing.station not in self.job.grounds.stations:
            self.standing = places.resumed(self.job)

    def on_unmount(self) -> None:
        self._keep_move()

    # Keys. They are taken here and not by way of the app, so that each one is done before the
    # next is looked at, however fast they come.

    async def on_key(self, event: events.Key) -> None:
        if await self._press(event.key, event.character if event.is_printable else None):
            event.stop()

    async def on_field_input_typed_on(self, message: FieldInput.TypedOn) -> None:
        await self._press(message.key, message.character)

    def on_input_changed(self) -> None:
        self.key_pressed()

    async def _press(self, key: str, character: str | None) -> bool:
        """Act on a key; False when somebody else is to act on it."""
        self.key_pressed()
        if self.app.screen is not self:
            self.app.post_message(events.Key(key, character))
            return True
        bar = self.query_one(FieldBar)
        if bar.is_open:
            message = bar.feed(key, character)
            if message is not None:
                self._on_field(message)
            return message is not None or character is not None
        pressed = key.lower() if len(key) == 1 else key
        for binding in WALK_KEYS:
            if binding.key == pressed:
                self.say("")
                await self.run_action(binding.action)
                return True
        return False

    def check_action(self, action: str, parameters: tuple[object, ...]) -> bool | None:
        """While a field is open its keys come first; the walk's own rest."""
        return not (action in _ACTIONS and self.is_mounted and self.query_one(FieldBar).is_open)

    # Undo and redo

    def action_undo(self) -> None:
        self._turn_back(self.job.undo, "Taken back", "There is nothing to take back.")

    def action_redo(self) -> None:
        self._turn_back(self.job.redo, "Back again", "There is nothing to bring back.")

    def _turn_back(self, turn: Callable[[], Entry | None], done: str, nothing: str) -> None:
        try:
            entry = turn()
        except LeantoError as error:
            self.refuse(str(error))
            return
        if entry is None:
            self.say(nothing)
            return
        self._find_ground()
        self.recorded()
        batch = [
            one for one in self.job.entries if batch_of(one) and batch_of(one) == batch_of(entry)
        ]
        entry, more = (batch[0], len(batch) - 1) if batch else (entry, 0)
        also = f", and {more} more" if more else ""
        self.say(f"{done}: {entry_in_words(entry, self.job)}{also}")
        if isinstance(entry.body, AboutObservation):
            body = entry.body
            self._go(places.at_item(self.job, body.station, body.item, body.number))
        elif isinstance(entry.body, AirMeasured) and entry.body.station != self.standing.station:
            self._go(places.at_station(self.job, entry.body.station))

    # Moving about

    def action_next_open(self) -> None:
        if self.item() is None and not self.standing.station:
            return
        following_item = places.next_open(self.job, self.standing)
        if following_item is None:
            self.say("Everything is answered. F3 shows the findings, F6 makes the reports.")
            return
        if following_item.station != self.standing.station:
            self.say("This station is done.")
        self._go(following_item)

    def action_item(self, by: int) -> None:
        if self.standing.station:
            self._go(places.next_item(self.job, self.standing, by))

    def action_station(self, by: int) -> None:
        if self.standing.station:
            self._go(places.next_station(self.job, self.standing, by))

    def action_number(self, by: int) -> None:
        if self.item() is not None:
            self._go(places.next_number(self.job, self.standing, by))

    def action_another(self) -> None:
        if self.item() is None or not self.may_write():
            return
        if places.observation_of(self.job, self.standing) is None:
            self.say("Answer this one first; then a adds another one.")
            return
        self._go(places.another(self.job, self.standing))
        self.say("Another one of the same item: answer it. Left and right step through them.")

    def action_jump(self) -> None:
        def chosen(station: str | None) -> None:
            if station is not None:
                self._go(places.at_station(self.job, station))

        if self.standing.station:
            self.app.push_screen(Jump(self.job.stations), chosen)

    def action_back(self) -> None:
        if self._came_from:
            self._stand(self._came_from.pop())

    def on_station_list_chosen(self, message: StationList.Chosen) -> None:
        if not self.query_one(FieldBar).is_open:
            self._go(places.at_station(self.job, message.station))

    def on_open_items_chosen(self, message: OpenItems.Chosen) -> None:
        if not self.query_one(FieldBar).is_open:
            self._go(places.at_item(self.job, self.standing.station, message.item))

    def _go(self, where: Standing) -> None:
        if where != self.standing:
            self._came_from = [*self._came_from[-50:], self.standing]
            self._stand(where)

    def _stand(self, where: Standing) -> None:
        self.standing = where
        self.range_before = None
        if self._move_timer is not None:
            self._move_timer.stop()
        # Not at each arrow key: every entry waits for the disk.
        self._move_timer = self.set_timer(_MOVE_IS_KEPT_AFTER_S, self._keep_move)
        self.show()

    def _keep_move(self) -> None:
        """Record where the walker stands, so that the walk goes on here another day."""
        self._move_timer = None
        walk, here = self.job.walk, self.standing
        is_kept = (walk.station, walk.item) == (here.station, here.item)
        if self.job.read_only or self.job.held or not here.station or is_kept:
            return
        with contextlib.suppress(LeantoError):  # it is said when an answer is not kept
            self.job.record(MovedTo(station=here.station, item=here.item))


_ACTIONS = frozenset(binding.action.partition("(")[0] for binding in WALK_KEYS)
