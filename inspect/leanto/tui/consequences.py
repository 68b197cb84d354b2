"""What follows from one observation, read off an assessment and put into words."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.assessment import Assessment
from leanto.checklist.model import Measure
from leanto.cost.estimate import Range
from leanto.cost.feed import least
from leanto.decision.words import in_words
from leanto.money import format_usd, round_to
from leanto.quantities import format_quantity, shown
from leanto.reckon.feed import FEED
from leanto.reckon.model import COUNTED
from leanto.record.observation import ObservationKey
from leanto.reports.contents.feed import first_in_words
from leanto.rules.finding import Finding
from leanto.tui.widgets.follows import Following, FollowingFinding

_STEP_USD = 50
"""Planning figures are shown no finer."""


def following(assessment: Assessment, key: ObservationKey, before: Range | None) -> Following:
    """What follows from the observation; ``before`` is the range before the last entry."""
    judged = assessment.judged
    texts = {finding.id: finding.text for finding in judged.findings}
    findings = [
        finding
        for finding in judged.findings
        if any(part.observation == key for part in finding.parts)
    ]
    seen = assessment.walk.observations.get(key)
    measures = {measure.id: measure for measure in assessment.library.checklist.measures}
    return Following(
        findings=tuple(
            FollowingFinding(
                finding.urgency,
                finding.text,
                texts.get(finding.cause_id or "", ""),
                _repairs(assessment, finding),
            )
            for finding in findings
        ),
        questions=tuple(
            f"{question.text} ({question.ask})" if question.ask else question.text
            for question in judged.questions
            if question.observation == key
        ),
        undecided=_undecided(assessment, key, measures),
        checks=tuple(_checks(assessment, key)),
        nothing="Nothing follows from this." if seen and seen.condition else "",
        lining=_lining(assessment, key),
        feed=_feed(assessment, key),
        total=_total(assessment.estimate.range, before),
    )


def _repairs(assessment: Assessment, finding: Finding) -> tuple[str, ...]:
    return tuple(
        f"{item.work.title}: {format_quantity(item.quantity, item.work.unit)}, {item.place}"
        for item in assessment.scope.items
        if finding.id in item.findings
    )


def _undecided(
    assessment: Assessment, key: ObservationKey, measures: dict[str, Measure]
) -> tuple[str, ...]:
    """What is missing, each thing once however many rules wait for it."""
    missing = dict.fromkeys(
        one.missing for one in assessment.judged.undecided if one.observation == key
    )
    names = [measures[name].label if name in measures else name for name in missing]
    return (f"not judged to the end without: {', '.join(names)}",) if names else ()


def _checks(assessment: Assessment, key: ObservationKey) -> Iterator[str]:
    """What was computed about this answer, then about this station, the place left out."""
    for one in assessment.reckonings:
        if one.observation == key:
            yield shown().words(f"{one.title.partition(', ')[0]}: {one.verdict}")
    for one in assessment.reckonings:
        if one.observation is None and one.station_id == key.station and one.verdict != COUNTED:
            yield shown().words(f"{one.title.rpartition(', ')[2]}: {one.verdict}")


def _lining(assessment: Assessment, key: ObservationKey) -> str:
    for one in assessment.decision.surfaces:
        if one.surface_id == key.station:
            return in_words(one)
    return ""


def _feed(assessment: Assessment, key: ObservationKey) -> str:
    """The way of running the feed that costs least, at the station of the feed."""
    first = least(assessment.feed_ways) if key.station == FEED else None
    return f"least: {first_in_words(first)}" if first else ""


def _total(now: Range, before: Range | None) -> str:
    if now.p80 <= 0:
        return "nothing to repair yet"
    said = f"P50 {_usd(now.p50)}, P80 {_usd(now.p80)}"
    moved = round_to(now.p50 - before.p50, _STEP_USD) if before else 0
    if moved:
        said += f"; last entry {'+' if moved > 0 else ''}{format_usd(moved)}"
    return said


def _usd(amount: float) -> str:
    return format_usd(round_to(amount, _STEP_USD))
