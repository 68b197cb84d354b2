"""Sketches of the surfaces, with zones numbered like the list that they belong to."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from leanto.assessment import Assessment
from leanto.building.rectangle import Rectangle
from leanto.building.sketch import SketchZone, sketch_of
from leanto.building.surface import Surface
from leanto.checklist.condition import Condition
from leanto.reports.blocks import Figure
from leanto.reports.contents.numbering import Numbering, in_order
from leanto.reports.contents.words import capitalized, seen_from, zone_in_words
from leanto.rules.finding import Finding
from leanto.scope.item import RepairItem

WORK = "work"
"""The mark of a zone that is to be worked on."""


def finding_figures(assessment: Assessment, numbers: Numbering) -> tuple[Figure, ...]:
    """A sketch of every surface with openings or findings, in walking order."""
    return tuple(
        _finding_figure(assessment, surface, here, numbers)
        for surface in in_walking_order(assessment)
        if (here := [f for f in assessment.judged.grounds if f.surface_id == surface.id])
        or surface.openings
    )


def item_figures(assessment: Assessment, numbers: Numbering) -> tuple[Figure, ...]:
    """A sketch of every surface that a repair item is for, in walking order."""
    return tuple(
        _item_figure(surface, here, numbers)
        for surface in in_walking_order(assessment)
        if (here := assessment.scope.for_surface(surface.id))
    )


def in_walking_order(assessment: Assessment) -> Iterator[Surface]:
    """Every surface: first as they come on the walk, then those nobody stands at."""
    stops = dict.fromkeys(s.surface_id for s in assessment.stations if s.surface_id)
    yield from (assessment.surfaces[stop] for stop in stops)
    yield from (s for s in assessment.surfaces.values() if s.id not in stops)


def _finding_figure(
    assessment: Assessment, surface: Surface, findings: Iterable[Finding], numbers: Numbering
) -> Figure:
    """Numbers alone: places and words stand with the first finding of each observation."""
    by_zone: dict[Rectangle | None, list[Finding]] = {}
    for finding in findings:
        by_zone.setdefault(finding.zone, []).append(finding)
    zones: list[SketchZone] = []
    by_word: dict[str, list[int]] = {}
    for zone, here in by_zone.items():
        word, listed = _mark(assessment, here), [numbers.seen_under[f.id] for f in here]
        if zone is not None:
            zones.append(SketchZone(min(listed), in_order(listed), zone, word))
        by_word.setdefault(word if zone else "whole surface", []).extend(listed)
    lines = [f"{capitalized(word)}: {in_order(listed)}" for word, listed in by_word.items()]
    return Figure(sketch_of(surface, zones), "\n".join([_title_line(surface), *lines]))


def _item_figure(surface: Surface, items: Iterable[RepairItem], numbers: Numbering) -> Figure:
    by_zone: dict[Rectangle, list[RepairItem]] = {}
    unplaced: list[RepairItem] = []
    for item in items:
        for zone in item.zones:
            by_zone.setdefault(zone, []).append(item)
        if not item.zones:
            unplaced.append(item)
    zones: list[SketchZone] = []
    lines = [_title_line(surface)]
    for zone, here in by_zone.items():
        listed = [numbers.items[item.id] for item in here]
        zones.append(SketchZone(min(listed), in_order(listed), zone, WORK))
        titles = "; ".join(dict.fromkeys(item.work.title for item in here))
        lines.append(f"{in_order(listed)}  {titles}: {zone_in_words(zone, surface)}.")
    if unplaced:
        word = "line" if len(unplaced) == 1 else "lines"
        lines.append(f"Also on this surface, not drawn: {word} {numbers.of_items(unplaced)}")
    return Figure(sketch_of(surface, zones), "\n".join(lines))


def _title_line(surface: Surface) -> str:
    return f"{surface.name}, {seen_from(surface)}"


def _mark(assessment: Assessment, findings: Iterable[Finding]) -> str:
    """The worst condition of the observations behind the findings, in a word."""
    walk = assessment.walk.observations
    found = {walk[f.observation].condition for f in findings if f.observation in walk}
    worst = (Condition.FAILED, Condition.WORN, Condition.NO_ACCESS)
    return next((str(condition) for condition in worst if condition in found), "seen")
