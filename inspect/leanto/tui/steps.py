"""The steps that an answer calls for; each records one fact through the job."""

from __future__ import annotations

from collections.abc import Sequence

from leanto.checklist.condition import Condition
from leanto.checklist.model import Item, Measure
from leanto.job import Job
from leanto.record.entry import AirMeasured, Answered, Measured
from leanto.record.observation import ObservationKey
from leanto.tui.asking import Step
from leanto.tui.fields import (
    Field,
    Value,
    choice_field,
    humidity_field,
    measure_field,
    temperature_field,
    text_field,
)
from leanto.tui.zone_steps import zone_steps

OTHER = "other: type it"
REASONS = (
    "stored goods",
    "finish in the way",
    "too high",
    "unsafe",
    "locked",
    "snow or weather",
    OTHER,
)
_REASON_LIMIT = 500


def steps_for(
    job: Job,
    key: ObservationKey,
    item: Item,
    condition: Condition,
    taken: frozenset[str] = frozenset(),
) -> list[Step]:
    """What this answer calls for: its measures, its zone, or the reason for no access.

    Measures that were ``taken`` already are not asked.
    """
    if condition is Condition.NO_ACCESS:
        return reason_steps(job, key)
    answer = item.answer(condition)
    if answer is None:
        return []
    steps = [
        _measure_step(job, key, job.grounds.measures[name])
        for name in answer.measures
        if name not in taken
    ]
    surface = job.grounds.surface_at(key.station)
    if answer.zone and surface is not None:
        steps += zone_steps(job, key, surface)
    return steps


def reason_steps(job: Job, key: ObservationKey) -> list[Step]:
    def keep(reason: Value) -> Sequence[Step]:
        if reason == OTHER:
            return [Step(lambda: text_field("Why no access", _REASON_LIMIT), keep)]
        answered = Answered(
            station=key.station,
            item=key.item,
            number=key.number,
            condition=Condition.NO_ACCESS,
            reason=str(reason),
        )
        job.record(answered)
        return []

    def field() -> Field:
        seen = job.walk.observations.get(key)
        return choice_field("Why no access?", REASONS, (seen and seen.reason) or _last_reason(job))

    return [Step(field, keep)]


def air_steps(job: Job, station: str) -> list[Step]:
    """Temperature and humidity; recorded together."""
    before = job.walk.air.get(station)
    typed: dict[str, float] = {}

    def keep_temperature(value: Value) -> Sequence[Step]:
        typed["temp_f"] = float(value)
        return []

    def keep_humidity(value: Value) -> Sequence[Step]:
        temp_f = typed["temp_f"]
        job.record(AirMeasured(station=station, temp_f=temp_f, humidity_pct=float(value)))
        return []

    temp_f = before.temp_f if before else None
    humidity_pct = before.humidity_pct if before else None
    return [
        Step(lambda: temperature_field(temp_f), keep_temperature, "air"),
        Step(lambda: humidity_field(humidity_pct), keep_humidity, "air"),
    ]


def _measure_step(job: Job, key: ObservationKey, measure: Measure) -> Step:
    def field() -> Field:
        seen = job.walk.observations.get(key)
        if seen is not None and measure.id in seen.measures:
            return measure_field(measure, seen.measures[measure.id], "entered")
        return measure_field(measure, _last_value(job, measure), "last time")

    def keep(value: Value) -> Sequence[Step]:
        seen = job.walk.observations.get(key)
        if seen is None or seen.measures.get(measure.id) != value:
            job.record(
                Measured(
                    station=key.station,
                    item=key.item,
                    number=key.number,
                    measure=measure.id,
                    value=value,
                )
            )
        return []

    return Step(field, keep)


def _last_reason(job: Job) -> str:
    """Why there was no access the last time, anywhere."""
    for entry in reversed(job.entries):
        if isinstance(entry.body, Answered) and entry.body.reason:
            return entry.body.reason
    return ""


def _last_value(job: Job, measure: Measure) -> Value | None:
    """What was entered last for this measure, anywhere."""
    for entry in reversed(job.entries):
        body = entry.body
        if isinstance(body, Measured) and body.measure == measure.id and body.value is not None:
            return body.value
    return None
