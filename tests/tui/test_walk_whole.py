"""The whole walk of the demo, every answer of it by keys, ends in the record that the demo has."""

from __future__ import annotations

import asyncio
from collections import Counter
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from textual import events
from textual.pilot import Pilot
from textual.widgets import Footer
from tui_walking import is_asking, screen_text, walking

from leanto.building.load import read_building
from leanto.checklist.condition import Condition
from leanto.demo.make import BUILDING, read_walk
from leanto.demo.pictures import draw_picture
from leanto.demo.walk import Picture, Seen, Stop, steps_of
from leanto.job import Job
from leanto.quantities import format_ft_in
from leanto.record.observation import Observation, ObservationKey
from leanto.tui.assessing import Assessing
from leanto.tui.marks import DIGITS
from leanto.tui.screens.ask_photo import AskPhoto
from leanto.tui.screens.ask_text import AskText
from leanto.tui.screens.jump import Jump
from leanto.tui.screens.walk import WalkScreen
from leanto.tui.standing import Standing
from leanto.tui.steps import OTHER, REASONS

_PATIENCE = 10_000
"""Looks at the screen before a test gives up; machines are slow."""
DIGIT_OF = {condition: digit for digit, condition in DIGITS.items()}


@pytest.fixture(scope="module")
def pictures(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("pictures")
    names = {name for stop in read_walk().stops for seen in stop.seen for name in seen.pictures}
    return {name: draw_picture(name, folder) for name in names}


class Walker:
    """Presses what somebody would press who sees what the demo's walk says."""

    def __init__(self, pilot: Pilot[None], job: Job, pictures: dict[str, Path]) -> None:
        self._pilot = pilot
        self._job = job
        self._pictures = pictures
        self.keys = 0

    async def walk(self, stops: tuple[Stop, ...]) -> None:
        for stop in stops:
            self._press("j")
            await self._until(lambda: isinstance(self._pilot.app.screen, Jump))
            self._paste(self._job.grounds.stations[stop.station].name.replace(",", ""))
            await self._until(lambda at=stop.station: self._standing.station == at)
            if stop.air is not None:
                air = f"{stop.air.temp_f:g}", f"{stop.air.humidity_pct:g}"
                self._press("t", *air[0], "enter", *air[1], "enter")
                await self._until(lambda at=stop.station: at in self._job.walk.air)
            numbers: Counter[str] = Counter()
            for seen in stop.seen:
                numbers[seen.item] += 1
                await self._see(seen, stop.station, numbers[seen.item])

    async def _see(self, seen: Seen, station: str, number: int) -> None:
        key = ObservationKey(station, seen.item, number)
        self._press(
            *self._way_to(seen.item, station),
            *(["a"] if number > 1 else []),
            DIGIT_OF[seen.condition],
            *self._answers(seen, station),
            *(["d"] if seen.danger else []),
        )
        await self._until(
            lambda: (
                self._standing.key == key
                and not is_asking(self._pilot)
                and (one := self._job.walk.observations.get(key)) is not None
                and (one.condition, one.danger) == (seen.condition, seen.danger)
            )
        )
        if seen.note:
            self._press("n")
            await self._until(lambda: isinstance(self._pilot.app.screen, AskText))
            self._paste(seen.note)
            await self._until(lambda: self._job.walk.observations[key].note == seen.note)
        for count, name in enumerate(seen.pictures, start=1):
            self._press("p")
            await self._until(lambda: isinstance(self._pilot.app.screen, AskPhoto))
            self._paste(str(self._pictures[name]))
            await self._until(
                lambda count=count: len(self._job.walk.observations[key].photos) == count
            )
        await self._until(lambda: isinstance(self._pilot.app.screen, WalkScreen))

    def _way_to(self, item: str, station: str) -> list[str]:
        standing = self._standing
        ids = [asked.id for asked in self._job.items_at(station)]
        by = ids.index(item) - ids.index(standing.item)
        if by == 0:
            return ["left"] * (standing.number - 1)
        return ["down"] * by if by > 0 else ["up"] * -by

    def _answers(self, seen: Seen, station: str) -> Iterator[str]:
        """The keys for everything that this answer asks for, and for a place it does not."""
        answer = self._job.grounds.items[seen.item].answer(seen.condition)
        if seen.condition is Condition.NO_ACCESS:
            yield from (str(REASONS.index(OTHER) + 1), *seen.reason, "enter")
        for name in answer.measures if answer else ():
            if name in seen.measures:
                yield from self._keys_of(name, seen.measures[name])
            else:
                yield "escape"
        is_asked = answer is not None and answer.zone
        if self._job.grounds.surface_at(station) is None:
            return
        if seen.zone is not None:
            yield from () if is_asked else ("z",)
            zone = seen.zone
            bottom = as_said(zone.bottom) if zone.bottom else ""  # 0 is offered
            for length in (as_said(zone.left), bottom, as_said(zone.width), as_said(zone.height)):
                yield from (*length, "enter")
        elif is_asked:
            yield "escape"

    def _keys_of(self, name: str, value: bool | float | str) -> Iterator[str]:
        measure = self._job.grounds.measures[name]
        if measure.unit == "yes_no":
            yield "y" if value else "n"
        elif measure.choices and len(measure.choices) < 10:
            yield str(measure.choices.index(str(value)) + 1)
        else:
            yield from value if isinstance(value, str) else f"{value:g}"
            yield "enter"

    def _paste(self, text: str) -> None:
        self._pilot.app.post_message(events.Paste(text))
        self._press("enter")

    def _press(self, *keys: str) -> None:
        """All at once, as from somebody who is faster than the screen."""
        self.keys += len(keys)
        for key in keys:
            character = key if len(key) == 1 else {"enter": "\r"}.get(key)
            self._pilot.app.post_message(events.Key(key, character))

    async def _until(self, is_so: Callable[[], bool]) -> None:
        for _ in range(_PATIENCE):
            await asyncio.sleep(0.002)
            if is_so():
                return
        pytest.fail(f"never came: {self._standing}, {screen_text(self._pilot)}")

    @property
    def _standing(self) -> Standing:
        screen = self._pilot.app.screen
        return screen.standing if isinstance(screen, WalkScreen) else Standing("")


def as_said(length_ft: float) -> str:
    """The length in few keys: ``24``, ``8"``, ``7-6``, or as it is printed."""
    feet, inches = divmod(round(length_ft * 12, 6), 12)
    if not inches.is_integer():
        return format_ft_in(length_ft, 64)
    if inches == 0:
        return f"{feet:g}"
    return f"{feet:g}-{inches:g}" if feet else f'{inches:g}"'


def plain(seen: Observation) -> tuple[object, ...]:
    """What was entered, lengths to a hundredth of an inch."""
    zone = seen.zone
    placed = (zone.left_ft, zone.bottom_ft, zone.width_ft, zone.height_ft) if zone else ()
    return (
        seen.condition,
        seen.reason,
        {
            name: round(value, 4) if isinstance(value, float) else value
            for name, value in seen.measures.items()
        },
        tuple(round(length, 3) for length in placed),
        seen.note,
        seen.danger,
        [photo.digest for photo in seen.photos],
    )


async def test_the_demo_walked_by_keys_is_the_demo(
    tmp_path: Path, pictures: dict[str, Path], monkeypatch: pytest.MonkeyPatch
) -> None:
    building, walk = read_building(BUILDING), read_walk()
    # Hundreds of assessments would only cost time here; what they show is tested elsewhere.
    monkeypatch.setattr(Assessing, "start", lambda self: None)
    # So would the key line, which is made anew for every question.
    monkeypatch.setattr(Footer, "compose", lambda self: iter(()))
    with Job.create(tmp_path / "told", building) as told:
        for step in steps_of(walk):
            if isinstance(step, Picture):
                told.add_photo(step.key, pictures[step.name])
            else:
                told.record(step)
        with Job.create(tmp_path / "walked", building) as walked:
            async with walking(walked) as pilot:
                walker = Walker(pilot, walked, pictures)
                await walker.walk(walk.stops)
            got, expected = walked.walk, told.walk

    assert walker.keys > 1000
    assert got.air == expected.air
    assert got.observations.keys() == expected.observations.keys()
    for key, one in got.observations.items():
        assert plain(one) == plain(expected.observations[key]), key
