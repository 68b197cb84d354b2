"""What a number rests on: what was seen, the rule that read it, the price that was put on it."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import datetime

from textual.content import Content

from leanto.assessment import Assessment
from leanto.cost.estimate import CostLine
from leanto.cost.price import Three
from leanto.job import Job
from leanto.job.stands_at import Kind, stands_at
from leanto.money import format_usd
from leanto.quantities import Unit, shown
from leanto.record.observation import ObservationKey, Photo
from leanto.reports.contents.measures import measured_in_words
from leanto.reports.contents.words import capitalized, zone_in_words
from leanto.tui.screens.details import amounts, labeled, listed

GO_THERE = "Enter: go there in the walk"
OPEN_IT = "Enter: where this comes from"


@dataclass(frozen=True, slots=True)
class Step:
    """One thing that a number rests on."""

    text: Content
    leads_to: ObservationKey | Callable[[], Origin | None] | None = None
    """An observation in the walk, or a number with an origin of its own."""


@dataclass(frozen=True, slots=True)
class Origin:
    """Where a number comes from, the nearest thing first."""

    title: str
    steps: tuple[Step, ...]


def seen_step(job: Job, assessment: Assessment, key: ObservationKey) -> Step:
    """What was answered there, when, by whom, with measures, place and photos."""
    seen = assessment.walk.observations.get(key)
    station = next((one for one in assessment.stations if one.id == key.station), None)
    item = next((one for one in assessment.library.checklist.items() if one.id == key.item), None)
    lines = [station.name if station else key.station]
    number = f" (number {key.number})" if key.number > 1 else ""
    prompt = item.prompt if item else key.item
    if seen is None:
        lines.append(f"{prompt}{number}: not answered any more")
        return Step(listed("Seen", lines))
    condition = str(seen.condition) if seen.condition else "not answered"
    reason = f" ({seen.reason})" if seen.reason else ""
    danger = "; ! marked as a danger" if seen.danger else ""
    lines.append(f"{prompt}{number}: {condition}{reason}{danger}")
    measures = {one.id: one for one in assessment.library.checklist.measures}
    if seen.measures:
        lines += measured_in_words(seen.measures, measures)
    surface = assessment.surfaces.get(station.surface_id or "") if station else None
    if seen.zone and surface:
        lines.append(zone_in_words(seen.zone, surface))
    if seen.note:
        lines.append(f"Note: {seen.note}")
    lines += [_photo(photo) for photo in seen.photos]
    lines.append(_entered(job, seen.entries))
    return Step(_and_enter(listed("Seen", lines), GO_THERE), key)


def rule_step(job: Job, assessment: Assessment, rule_id: str) -> Step:
    """The rule's sentence, when it holds, its file and line, and its source."""
    compiled = next((one for one in assessment.library.rules if one.id == rule_id), None)
    if compiled is None:
        return Step(labeled("Rule", rule_id))
    rule = compiled.rule
    lines = (
        *_file(job, "rules", rule_id),
        f"Says: {rule.finding}",
        f"When: {' '.join(rule.when.split())}",
        f"Source: {rule.source}",
    )
    return Step(listed(f"Rule {rule_id}", lines))


def price_step(job: Job, assessment: Assessment, line: CostLine) -> Step:
    """Hours and materials of one unit, the wage, the source of both, and the sum in words."""
    price, work = line.price, line.item.work
    unit = shown().label(work.unit)
    wages = (one for one in assessment.library.factors.wages if one.trade is work.trade)
    lines = [
        *_file(job, "prices", work.id),
        f"Hours per {unit}: {_three(price.hours, '{:.4g}', work.unit)}",
        f"Materials per {unit}: {_three(price.materials_usd, '${:,.2f}', work.unit)}",
        f"Source: {price.source}, {price.dated}",
    ]
    lines += [
        f"{capitalized(wage.trade)}, by the hour: {_three(wage.hourly_usd, '${:,.2f}')}; "
        f"{wage.source}, {wage.dated}"
        for wage in wages
    ]
    if price.minimum_usd:
        lines.append(f"At least {format_usd(price.minimum_usd)} for a visit")
    lines.append(f"Worked out: {shown().words(line.explanation)}")
    return Step(listed(f"Price {work.id}: {amounts(line.total)}", lines))


def leads_on(text: Content, origin: Callable[[], Origin | None]) -> Step:
    """A step with an origin of its own."""
    return Step(_and_enter(text, OPEN_IT), origin)


def _and_enter(text: Content, words: str) -> Content:
    return Content.assemble(text, "\n  ", (words, "bold"))


def _three(three: Three, form: str, per: Unit = Unit.EACH) -> str:
    """Low, likely and high, for one of the unit that is shown instead of ``per``."""
    low, likely, high = (
        form.format(float(shown().rate(x, per))) for x in (three.low, three.likely, three.high)
    )
    return likely if low == high else f"{likely} ({low} to {high})"


def _file(job: Job, kind: Kind, name: str) -> tuple[str, ...]:
    place = stands_at(kind, name, job.places)
    return (f"In {place}",) if place else ()


def _photo(photo: Photo) -> str:
    name = photo.original_name or photo.digest[:8]
    taken = f", taken {photo.taken_at:%Y-%m-%d %H:%M}" if photo.taken_at else ""
    return f"Photo: {name}{taken}"


def _entered(job: Job, numbers: Iterable[int]) -> str:
    """When and by whom it was entered; its last entry counts."""
    made = [job.entries[number - 1] for number in numbers if number <= len(job.entries)]
    if not made:
        return "Entered: not known when"
    ids = ", ".join(str(entry.id) for entry in made)
    noun = "entry" if len(made) == 1 else "entries"
    return f"Entered {_local(made[-1].at)} by {made[-1].who}; {noun} {ids} of the record"


def _local(at: datetime) -> str:
    return f"{at.astimezone():%Y-%m-%d %H:%M}"
