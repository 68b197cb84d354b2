"""The answers of the walk: one item by one key, and several by one where that is honest."""

from __future__ import annotations

from collections.abc import Sequence

from leanto.errors import LeantoError
from leanto.record.entry import Answered, DangerMarked, ObservationBody
from leanto.tui import standing as places
from leanto.tui.marks import DIGITS
from leanto.tui.same_as_last import same_as_last
from leanto.tui.screens.ask_sound import AskSound
from leanto.tui.screens.holding import HoldingScreen
from leanto.tui.screens.place import about
from leanto.tui.sound_here import sound_here
from leanto.tui.steps import air_steps, steps_for
from leanto.tui.zone_steps import zone_steps


class AnsweringScreen(HoldingScreen):
    """Each key records at once; what the answer calls for is asked after it."""

    def action_answer(self, digit: str) -> None:
        item = self.item()
        if item is None:
            return
        condition = DIGITS[digit]
        seen = places.observation_of(self.job, self.standing)
        if seen is None or seen.condition is not condition:
            if not self.record(Answered(**about(self.standing.key), condition=condition)):
                return
        elif not self.may_write():
            return
        self._ask(steps_for(self.job, self.standing.key, item, condition))

    def action_same(self) -> None:
        """The answer that the item shows as the last one given, and what is left to ask."""
        item, key = self.item(), self.standing.key
        if item is None or not self.may_write():
            return
        same = same_as_last(self.job, key, item)
        if same is None:
            seen = places.observation_of(self.job, self.standing)
            given = seen is not None and seen.condition is not None
            why = "This one has its answer." if given else "There is no answer yet to give again."
            self.say(why)
        elif self._record_together(same.entries(key)):
            self.say(f"Same as last: {same.in_words(self.job)}. u takes it back.")
            taken = frozenset(same.measures)
            steps = steps_for(self.job, key, item, same.condition, taken)
            self._ask([] if same.reason else steps)

    def action_all_sound(self) -> None:
        """Every open item here that may be marked unseen by the others; asks once."""
        station = self.standing.station
        if self.item() is None or not self.may_write():
            return
        offered = sound_here(self.job, station)

        def answered(is_wanted: bool | None) -> None:
            if is_wanted and self._record_together(offered.entries(station)):
                self.say(f"{len(offered.marked)} items marked sound. u takes all of them back.")

        if offered.marked:
            name = self.job.grounds.stations[station].name
            self.app.push_screen(AskSound(name, offered), answered)
        elif offered.left:
            why = dict.fromkeys(why for _, why in offered.left)
            self.say(f"Nothing open here can be marked together: {'; '.join(why)}.")
        else:
            self.say("Nothing is open here.")

    def action_zone(self) -> None:
        if self.item() is None or not self.may_write():
            return
        surface = self.job.grounds.surface_at(self.standing.station)
        if surface is None:
            self.say("This station has no surface to measure on; say where it is in a note (n).")
        else:
            self._ask(zone_steps(self.job, self.standing.key, surface))

    def action_air(self) -> None:
        if self.item() is not None and self.may_write():
            self._ask(air_steps(self.job, self.standing.station))

    def action_danger(self) -> None:
        if self.item() is None:
            return
        seen = places.observation_of(self.job, self.standing)
        on = not (seen and seen.danger)
        if self.record(DangerMarked(**about(self.standing.key), on=on)):
            self.say("Marked: this can hurt someone now." if on else "The danger mark is off.")

    def _record_together(self, bodies: Sequence[ObservationBody]) -> bool:
        """Keep facts that one undo takes back; False when they could not be kept."""
        try:
            self.job.record_together(bodies)
        except LeantoError as error:
            self.refuse(str(error))
            return False
        self.recorded()
        return True
