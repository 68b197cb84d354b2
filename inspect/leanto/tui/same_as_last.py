"""The answer that one key gives again: what it would enter here, and where it was given."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from leanto.checklist.condition import Condition
from leanto.checklist.model import Item
from leanto.job import Job
from leanto.record.entry import Answered, Measured, ObservationBody
from leanto.record.observation import Observation, ObservationKey
from leanto.tui.shown import on_one_line
from leanto.tui.words import value_in_words

_RUN = "run_ft"
"""The length affected: it belongs to the surface, as the zone does."""
_SAME_FT = 1e-6
_PLAIN = (Condition.SOUND, Condition.NOT_THERE)


@dataclass(frozen=True, slots=True)
class SameAsLast:
    """An answer to give again; the zone is never part of it, as it lies on another surface."""

    condition: Condition
    reason: str
    measures: Mapping[str, float | str]
    source: ObservationKey

    def entries(self, key: ObservationKey) -> Sequence[ObservationBody]:
        about: dict[str, Any] = {"station": key.station, "item": key.item, "number": key.number}
        return [
            Answered(**about, condition=self.condition, reason=self.reason),
            *(
                Measured(**about, measure=name, value=value)
                for name, value in self.measures.items()
            ),
        ]

    def in_words(self, job: Job) -> str:
        """Such as ``worn, Gap to soil 5 in (Main room, south wall, outside)``."""
        said = [str(self.condition), *([self.reason] if self.reason else [])]
        for name, value in self.measures.items():
            measure = job.grounds.measures[name]
            said.append(f"{measure.label} {value_in_words(measure, value)}")
        station = job.grounds.stations[self.source.station]
        return on_one_line(f"{', '.join(said)} ({station.name})")


def same_as_last(job: Job, key: ObservationKey, item: Item) -> SameAsLast | None:
    """What can be given again to an item that has no answer yet; None when there is nothing.

    First *no access* if that was the last answer at this station: what stands in the way of one
    item stands in the way of the next. Then the last answer to this very item elsewhere. Else the
    last answer of all, if it is one that needs no measures.
    """
    present = job.walk.observations.get(key)
    if present is not None and present.condition is not None:
        return None
    stations = job.grounds.stations
    answered = [
        seen
        for seen in job.walk.observations.values()
        if seen.condition is not None and seen.key.station in stations
    ]
    here = _latest(seen for seen in answered if seen.key.station == key.station)
    if here is not None and here.condition is Condition.NO_ACCESS and here.reason:
        return _again(job, key, item, here)
    same = _latest(seen for seen in answered if seen.key.item == item.id)
    if same is not None:
        return _again(job, key, item, same)
    last = _latest(answered)
    if last is not None and last.condition in _PLAIN and not item.answers.sound.measures:
        return replace(_again(job, key, item, last), measures={})
    return None


def _latest(seen: Iterable[Observation]) -> Observation | None:
    return max(seen, key=lambda one: one.entries[-1], default=None)


def _again(job: Job, key: ObservationKey, item: Item, source: Observation) -> SameAsLast:
    assert source.condition is not None
    answer = item.answer(source.condition)
    wanted = answer.measures if answer else ()
    measures = {name: source.measures[name] for name in wanted if name in source.measures}
    if _RUN in measures:
        run_ft = _run_here(job, float(measures.pop(_RUN)), source.key, key)
        if run_ft is not None:
            measures[_RUN] = run_ft
    return SameAsLast(source.condition, source.reason, measures, source.key)


def _run_here(job: Job, run_ft: float, there: ObservationKey, here: ObservationKey) -> float | None:
    """The length affected on this surface: all of it if it was all there; None if too long."""
    was, now = job.grounds.surface_at(there.station), job.grounds.surface_at(here.station)
    if was is None or now is None:
        return None
    if abs(run_ft - was.width_ft) < _SAME_FT:
        return now.width_ft
    return run_ft if run_ft <= now.width_ft else None
