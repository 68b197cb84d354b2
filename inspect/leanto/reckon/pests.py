"""Which pest the signs fit, whether it is alive, in what order work goes; wood against soil."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Final

from leanto.building.kinds import FloorKind
from leanto.checklist.condition import Condition
from leanto.reckon import asked
from leanto.reckon.basis import Basis, is_bad, is_yes, number, word
from leanto.reckon.model import CONFIRM_FRAME, CONFIRM_PEST, Fact, Figure, Reckoning, cited
from leanto.record.observation import Observation
from leanto.trade.pest_table import HoleShape, find_pest, pest_table
from leanto.trade.pests import (
    ORDER_SOURCE,
    Activity,
    PestMatch,
    check_clearance,
    identify_pest,
    judge_activity,
    lets_in,
    order_pest_work,
)

NOT_CERTAIN: Final = "not certain"
PEST_KINDS: Final = (
    "subterranean-termite",
    "drywood-termite",
    "carpenter-ant",
    "lyctid-beetle",
    "anobiid-beetle",
    "bostrichid-beetle",
    "wood-weevil",
    "old-house-borer",
    "carpenter-bee",
    "mouse",
    "rat",
    "bat",
)
"""The kinds of the table of pests, known here without reading it."""
DUST_SIGN: Final = {
    "like flour": "flour-dust",
    "gritty": "gritty-dust",
    "packed tight": "packed-dust",
    "coarse shavings": "coarse-shavings",
}
"""Sign of the table of pests by the answer about the dust."""


@dataclass(frozen=True, slots=True)
class _Signs:
    """What an answer says of the pest behind it."""

    signs: frozenset[str]
    hole_in: float | None = None
    hole_shape: HoleShape | None = None
    dropping_in: float | None = None
    named: str = ""
    """The kind that the question itself names."""


def pests(basis: Basis) -> Iterator[Reckoning]:
    """A reckoning for every answer with signs of a pest, and for wood close to the soil."""
    for observation in basis.seen():
        if is_bad(observation):
            signs = _signs(observation)
            if signs is not None:
                yield _pest(basis, observation, signs)
        gap_in = number(observation, "gap_to_soil_in")
        if gap_in is not None:
            yield from _clearance(basis, observation, gap_in)
        hole_in = number(observation, "gap_size_in")
        if hole_in is not None:
            yield _entry(basis, observation, hole_in)


def how_sure(matches: Sequence[PestMatch]) -> str:
    """How many signs speak for the best fit, and whether another kind fits as well."""
    if not matches:
        return "not at all"
    count = len(matches[0].reasons)
    said = f"{count} sign{'s' if count > 1 else ''} for it, none against"
    ties = sum(len(one.reasons) == count for one in matches) - 1
    if ties:
        return f"a tie: {said}, and as much for {ties} other kind{'s' if ties > 1 else ''}"
    return f"{said}; {len(matches) - 1} other kinds fit less" if len(matches) > 1 else said


def _signs(observation: Observation) -> _Signs | None:
    item = observation.key.item
    if item in asked.PESTS:
        return _Signs(frozenset(), named=asked.PESTS[item])
    if item in asked.BEETLES:
        dust = DUST_SIGN.get(word(observation, "dust_kind") or "")
        hole_in = number(observation, "hole_size_in") or None
        if dust is None and hole_in is None:
            return None
        return _Signs(frozenset({dust} if dust else ()), hole_in, "round" if hole_in else None)
    if item in asked.RODENTS:
        length_in = number(observation, "dropping_length_in")
        return _Signs(frozenset(), dropping_in=length_in) if length_in else None
    if item in asked.FILL_NESTS:
        return _Signs(frozenset({"nests-in-fill"}))
    return None


def _pest(basis: Basis, observation: Observation, signs: _Signs) -> Reckoning:
    matches = identify_pest(signs.signs, signs.hole_in, signs.hole_shape, signs.dropping_in)
    best = [m for m in matches if len(m.reasons) == len(matches[0].reasons)]
    place = basis.stations[observation.key.station].name
    kind = signs.named or (best[0].kind if len(best) == 1 else "")
    alive = {"live-insects", "live-animals"} if is_yes(observation, "is_active") else set()
    known = alive & pest_table().signs
    fits = [find_pest(signs.named).label] if signs.named else [m.label for m in best]
    figures = [
        Figure("Fits", ", ".join(fits) or "no kind fits all signs"),
        Figure("How sure", "its own sign was found" if signs.named else how_sure(matches)),
    ]
    reasons = [f"{m.label.capitalize()}: {', '.join(m.reasons)}." for m in best]
    sources = [source for m in best for source in m.sources]
    if signs.named:
        reasons.append(f"The walk asked for the signs of {fits[0]} and found them.")
        sources.append(pest_table().cite(find_pest(signs.named)))
    facts: dict[str, Fact] = {"pest_kind": kind or NOT_CERTAIN}
    if kind:
        activity = judge_activity(kind, signs.signs | known)
        facts["pest_activity"] = activity.activity.value
        figures.append(Figure("Alive", _activity_in_words(activity.activity)))
        reasons += activity.reasons
        damaged = observation.condition is Condition.FAILED and find_pest(kind).eats_wood
        bears_load = bool(is_yes(observation, "carries_load"))
        steps = order_pest_work(kind, activity.activity, damaged, bears_load)
        figures += [Figure(f"Step {step.order}, {step.by}", step.what) for step in steps]
        sources += [*activity.sources, ORDER_SOURCE]
    else:
        reasons.append("A pest firm names the kind before anything is treated.")
        if known:
            facts["pest_activity"] = Activity.ACTIVE.value
            figures.append(Figure("Alive", _activity_in_words(Activity.ACTIVE)))
    return Reckoning(
        id=f"pest@{observation.key}",
        title=f"Pest, {place}",
        station_id=observation.key.station,
        verdict=f"fits {find_pest(kind).label}" if kind else "kind not certain",
        figures=tuple(figures),
        reasons=tuple(reasons),
        sources=cited(sources),
        confirm=CONFIRM_PEST,
        facts=facts,
        observation=observation.key,
    )


def _activity_in_words(activity: Activity) -> str:
    return {
        Activity.ACTIVE: "yes, by the signs",
        Activity.OLD: "nothing new",
        Activity.UNDECIDED: "undecided, look again",
    }[activity]


def _clearance(basis: Basis, observation: Observation, gap_in: float) -> Iterator[Reckoning]:
    """How far the wood is from the soil, against the code."""
    surface = basis.surface_at(observation.key.station)
    if surface is None:
        return
    if observation.key.item in asked.CRAWL_SPACE:
        if basis.block(surface.block).floor.kind is not FloorKind.JOISTS:
            return
        rule = "joist-to-soil"
    elif observation.key.item in asked.SOIL_GAP:
        rule = "siding-to-soil"
    else:
        return
    check = check_clearance(rule, gap_in)
    yield Reckoning(
        id=f"clearance@{observation.key}",
        title=f"Wood above soil, {surface.name}",
        station_id=observation.key.station,
        verdict=check.outcome.value,
        figures=(Figure("Gap", f"{gap_in:g} in."),),
        reasons=check.reasons,
        sources=cited(check.sources),
        confirm=CONFIRM_FRAME,
        facts={"clearance_check": check.outcome.value},
        observation=observation.key,
    )


def _entry(basis: Basis, observation: Observation, gap_in: float) -> Reckoning:
    """Which animals a gap lets in."""
    animals = [find_pest(name).label for name in lets_in(gap_in)]
    gaps = pest_table().gaps
    return Reckoning(
        id=f"gap@{observation.key}",
        title=f"Gap, {basis.stations[observation.key.station].name}",
        station_id=observation.key.station,
        verdict=f"lets in {' and '.join(animals)}" if animals else "too narrow for mice",
        figures=(Figure("Widest gap", f"{gap_in:g} in."),),
        reasons=tuple(f"A {name} passes {gap.least_in:g} in." for name, gap in gaps.items()),
        sources=cited(pest_table().cite(gap) for gap in gaps.values()),
        confirm=CONFIRM_PEST,
        observation=observation.key,
    )
