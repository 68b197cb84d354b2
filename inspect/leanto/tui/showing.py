"""What the walk shows of a job, put into words: from the record what was entered here."""

from __future__ import annotations

from leanto.building.kinds import PlaceKind
from leanto.building.sketch import Sketch, SketchZone, sketch_of
from leanto.building.station import Station
from leanto.checklist.condition import Condition
from leanto.checklist.model import Item
from leanto.job import Job
from leanto.record.entry import MovedTo
from leanto.record.observation import Observation
from leanto.tui.same_as_last import same_as_last
from leanto.tui.shown import on_one_line
from leanto.tui.standing import Standing, item_of, numbers_of, observation_of
from leanto.tui.widgets.item_view import ShownItem
from leanto.tui.widgets.open_items import ItemRow
from leanto.tui.widgets.station_list import StationRow
from leanto.tui.widgets.top_line import Headline
from leanto.tui.words import air_in_words, value_in_words, zone_in_words

_WITHOUT_SIDE = {
    PlaceKind.SITE: "Site, drainage",
    PlaceKind.CEILING: "Ceiling",
    PlaceKind.FLOOR: "Floor",
    PlaceKind.WIRING: "Panel, wiring",
    PlaceKind.FEED: "Feed",
}
_OF_A_SIDE = {
    PlaceKind.WALL_OUTSIDE: "wall out",
    PlaceKind.WALL_INSIDE: "wall in",
    PlaceKind.ROOF: "roof",
}


_READINGS = ("moisture_pct", "probe_depth_in", "sag_in", "gap_to_soil_in")


def station_rows(job: Job) -> tuple[StationRow, ...]:
    """The stations with how much of each is answered."""
    given = _given(job)
    dangers = {key.station for key, seen in job.walk.observations.items() if seen.danger}
    names = (
        {block.id: block.name for block in job.walk.building.blocks} if job.walk.building else {}
    )
    rows = []
    for station in job.stations:
        asked = job.items_at(station.id)
        surface = job.grounds.surface_at(station.id)
        rows.append(
            StationRow(
                id=station.id,
                group=names.get(surface.block, "") if surface else "Whole building",
                label=_short_name(job, station),
                answered=sum((station.id, item.id) in given for item in asked),
                asked=len(asked),
                danger=station.id in dangers,
            )
        )
    return tuple(rows)


def headline(job: Job, standing: Standing, rows: tuple[StationRow, ...]) -> Headline:
    given = _given(job)
    asked = {(station.id, item.id) for station in job.stations for item in job.items_at(station.id)}
    skipped = _stood_at(job) & asked - given.keys() - {(standing.station, standing.item)}
    here = next((row for row in rows if row.id == standing.station), None)
    building = job.walk.building
    station = job.grounds.stations.get(standing.station)
    return Headline(
        building=building.name if building else "",
        station=station.name if station else "",
        answered=sum(row.answered for row in rows),
        asked=len(asked),
        skipped=len(skipped),
        here_answered=here.answered if here else 0,
        here_asked=here.asked if here else 0,
        here_skipped=sum(place == standing.station for place, _ in skipped),
        no_access=sum(
            condition is Condition.NO_ACCESS for place, condition in given.items() if place in asked
        ),
        read_only=job.read_only,
        held=len(job.held),
    )


def shown_item(job: Job, standing: Standing) -> ShownItem:
    item = item_of(job, standing)
    if item is None:
        return ShownItem(nothing="Nothing is asked at this station.")
    asked = job.items_at(standing.station)
    seen = observation_of(job, standing)
    numbers = numbers_of(job, standing)
    cautions = {caution.id: caution for caution in job.library.checklist.cautions}
    air = job.walk.air.get(standing.station)
    same = same_as_last(job, standing.key, item)
    return ShownItem(
        section=_section_of(job, item),
        place=f"{asked.index(item) + 1} of {len(asked)}",
        copy=f"#{numbers.index(standing.number) + 1} of {len(numbers)}" if len(numbers) > 1 else "",
        item=item,
        cautions=tuple(cautions[name] for name in item.caution),
        seen=seen,
        same=same.in_words(job) if same else "",
        measures=_entered(job, seen),
        missing=_missing(job, item, seen),
        zone=zone_in_words(seen.zone) if seen and seen.zone else "",
        air=_air(job, asked, air_in_words(air) if air else ""),
    )


def item_rows(job: Job, standing: Standing) -> tuple[ItemRow, ...]:
    given = _given(job)
    return tuple(
        ItemRow(
            id=item.id,
            prompt=item.prompt,
            condition=given.get((standing.station, item.id)),
            is_current=item.id == standing.item,
        )
        for item in job.items_at(standing.station)
    )


def sketch_here(job: Job, standing: Standing) -> Sketch | None:
    """The surface that the walker faces, with every zone that was entered on it."""
    surface = job.grounds.surface_at(standing.station)
    if surface is None:
        return None
    zoned = [
        (seen, seen.zone)
        for seen in sorted(
            (
                seen
                for key, seen in job.walk.observations.items()
                if key.station == standing.station
            ),
            key=lambda seen: seen.key,
        )
        if seen.zone is not None
    ]
    return sketch_of(
        surface,
        (
            SketchZone(number, _with_reading(job, seen), zone, str(seen.condition or "open"))
            for number, (seen, zone) in enumerate(zoned, start=1)
        ),
    )


def _with_reading(job: Job, seen: Observation) -> str:
    """The item with what the meter or the awl said, such as ``26 %, Stud feet and plate``."""
    readings = [
        value_in_words(measure, seen.measures[name])
        for name in _READINGS
        if name in seen.measures and (measure := job.grounds.measures.get(name)) is not None
    ]
    return ", ".join([*readings, _prompt(job, seen.key.item)])


def _given(job: Job) -> dict[tuple[str, str], Condition]:
    """The answer to each item at each station; of several the last."""
    return {
        (key.station, key.item): seen.condition
        for key, seen in job.walk.observations.items()
        if seen.condition is not None
    }


def _stood_at(job: Job) -> set[tuple[str, str]]:
    """Station and item of every place where the walker ever stood for a moment."""
    return {
        (entry.body.station, entry.body.item)
        for entry in job.entries
        if isinstance(entry.body, MovedTo)
    }


def _short_name(job: Job, station: Station) -> str:
    if station.kind in _WITHOUT_SIDE:
        return _WITHOUT_SIDE[station.kind]
    surface = job.grounds.surface_at(station.id)
    if surface is None or surface.side is None:
        return station.name
    return f"{surface.side.capitalize()} {_OF_A_SIDE[station.kind]}"


def _section_of(job: Job, item: Item) -> str:
    sections = job.library.checklist.sections
    return next((section.title for section in sections if item in section.items), "")


def _prompt(job: Job, item_id: str) -> str:
    item = job.grounds.items.get(item_id)
    return item.prompt if item else item_id


def _entered(job: Job, seen: Observation | None) -> tuple[str, ...]:
    if seen is None:
        return ()
    said = []
    for measure_id, value in seen.measures.items():
        measure = job.grounds.measures.get(measure_id)
        if measure is not None:
            said.append(on_one_line(f"{measure.label}: {value_in_words(measure, value)}"))
    return tuple(said)


def _missing(job: Job, item: Item, seen: Observation | None) -> tuple[str, ...]:
    answer = item.answer(seen.condition) if seen and seen.condition else None
    if seen is None or answer is None:
        return ()
    missing = [
        job.grounds.measures[name].label for name in answer.measures if name not in seen.measures
    ]
    has_surface = job.grounds.surface_at(seen.key.station) is not None
    if answer.zone and seen.zone is None and has_surface:
        missing.append("place and size (z); the whole surface until then")
    return tuple(missing)


def _air(job: Job, asked: tuple[Item, ...], air: str) -> str:
    """The air at the station, or that it is wanted: readings are judged by it."""
    if air:
        return air
    reads_moisture = any(
        name.endswith("moisture_pct")
        for item in asked
        for answer in (item.answers.worn, item.answers.failed)
        for name in answer.measures
    )
    return "not measured here; press t" if reads_moisture and not job.walk.air else ""
