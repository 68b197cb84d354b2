"""What the codes and practice say of a roof covering: slope, deck, layers, patch or replace."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.coverings import cite, find_covering
from leanto.trade.outcome import Check, Outcome
from leanto.trade.roofing import DOUBLE_UNDERLAYMENT_BELOW, UNDERLAYMENT_SOURCE

MOST_LAYERS_UNDER = 1
"""Existing layers a new roof may be laid over; with two or more it may not."""
LAYERS_SOURCE = Source("International Residential Code", "2006", "R907.3, engineer's page")
WET_SHARE_PCT = 25.0
WET_SHARE_SOURCE = Source("City roof rules in a trade article", place="roofs over 25 percent wet")

PATCH_BELOW_PCT = 5.0
REPLACE_FROM_PCT = 25.0
PATCH_LIFE_SHARE = 0.75
PATCH_SOURCE = COMMON_PRACTICE


class RoofAction(StrEnum):
    """What to do about one slope."""

    PATCH = "patch in kind"
    REPLACE = "replace the slope"
    UNDECIDED = "undecided"


@dataclass(frozen=True, slots=True)
class RoofAdvice:
    """What to do about a slope, why, and where the limits come from."""

    action: RoofAction
    reasons: tuple[str, ...]
    sources: tuple[Source, ...]


def check_slope(covering: str, rise_in_12: float) -> Check:
    """How a slope compares with the least slope of its covering.

    Undecided when the sources differ about this slope or none was found.
    """
    kind = find_covering(covering)
    if not kind.least_slopes:
        return Check(
            Outcome.UNDECIDED, (f"No published least slope is on file for {kind.label}.",), ()
        )
    reasons = [
        f"{rise_in_12:g} in 12 against at least {row.rise_in_12:g} in 12 for {kind.label}."
        for row in kind.least_slopes
    ]
    sources = [cite(row) for row in kind.least_slopes]
    met = [rise_in_12 >= row.rise_in_12 for row in kind.least_slopes]
    if all(met):
        if covering.startswith("asphalt") and rise_in_12 < DOUBLE_UNDERLAYMENT_BELOW:
            reasons.append("Below 4 in 12 the underlayment must be doubled.")
            sources.append(UNDERLAYMENT_SOURCE)
        return Check(Outcome.PASSES, tuple(reasons), tuple(sources))
    if any(met):
        reasons.append("The codes differ at this slope; ask which one governs.")
        return Check(Outcome.UNDECIDED, tuple(reasons), tuple(sources))
    return Check(Outcome.FAILS, tuple(reasons), tuple(sources))


def check_deck(covering: str, is_solid: bool | None) -> Check:
    """Whether a deck suits a covering; None for a deck nobody has seen."""
    kind = find_covering(covering)
    if kind.solid_deck is None:
        return Check(Outcome.PASSES, (f"No solid deck is asked for {kind.label}.",), ())
    sources = (cite(kind.solid_deck),)
    if is_solid is None:
        return Check(
            Outcome.UNDECIDED, (f"{kind.label} needs a solid deck; it was not seen.",), sources
        )
    if is_solid:
        return Check(Outcome.PASSES, (f"The deck under {kind.label} is solid.",), sources)
    reason = f"{kind.label} needs a solid deck; gapped boards must be sheathed over first."
    return Check(Outcome.FAILS, (reason,), sources)


def check_recover(
    existing: str,
    layers: int | None,
    is_soaked: bool | None,
    is_decayed: bool | None,
    wet_pct: float | None = None,
    carries_itself: bool = False,
) -> Check:
    """Whether a new covering may be laid over what is there; FAILS means strip first.

    `layers` counts the coverings on the roof now. `carries_itself` is a separate roof, such as
    standing seam on its own framing; layers and kind below it do not count, soaked or decayed
    bases do. None stands for what is not known.
    """
    kind = find_covering(existing)
    against = []
    sources = [LAYERS_SOURCE]
    if is_soaked:
        against.append("The covering or its deck is soaked.")
    if is_decayed:
        against.append("The covering or its deck is too decayed to be a base.")
    if not carries_itself:
        if kind.must_be_stripped is not None:
            against.append(f"Nothing may be laid over {kind.label}.")
            sources.append(cite(kind.must_be_stripped))
        if layers is not None and layers > MOST_LAYERS_UNDER:
            against.append(f"There are {layers} layers already.")
    if against:
        return Check(Outcome.FAILS, tuple(against), tuple(dict.fromkeys(sources)))
    unknown = _unknown(layers, is_soaked, is_decayed, carries_itself)
    if wet_pct is not None and wet_pct > WET_SHARE_PCT:
        unknown.append(
            f"{wet_pct:g} percent of the roof is wet; some cities ask that all be stripped."
        )
        sources.append(WET_SHARE_SOURCE)
    if unknown:
        return Check(Outcome.UNDECIDED, tuple(unknown), tuple(sources))
    reason = "A separate roof carries itself." if carries_itself else "One layer, dry and sound."
    return Check(Outcome.PASSES, (reason,), tuple(sources))


def _unknown(
    layers: int | None, is_soaked: bool | None, is_decayed: bool | None, carries_itself: bool
) -> list[str]:
    missing = []
    if layers is None and not carries_itself:
        missing.append("The layers were not counted.")
    if is_soaked is None:
        missing.append("Nobody has seen whether it is soaked.")
    if is_decayed is None:
        missing.append("Nobody has seen whether it is decayed.")
    return missing


def patch_or_replace(
    covering: str,
    lost_pct: float,
    is_past_repair: bool | None,
    life_used: float | None,
) -> RoofAdvice:
    """What to do about one slope with this share of its pieces missing, torn or broken.

    `is_past_repair` is whether the covering shows the signs listed for it, such as brittle
    shingles; `life_used` is age over service life. None stands for what is not known.
    """
    if not 0 <= lost_pct <= 100:
        raise ValueError(f"lost_pct must lie between 0 and 100: {lost_pct}")
    kind = find_covering(covering)
    if is_past_repair and kind.past_repair is not None:
        reason = f"It shows signs that end patching: {kind.past_repair.signs}."
        return RoofAdvice(RoofAction.REPLACE, (reason,), (cite(kind.past_repair),))
    limit, source = REPLACE_FROM_PCT, PATCH_SOURCE
    if kind.replace_from_pct is not None:
        limit, source = kind.replace_from_pct.lost_pct, cite(kind.replace_from_pct)
    lost = f"{lost_pct:g} percent of the slope is missing or broken"
    if lost_pct >= limit:
        return RoofAdvice(RoofAction.REPLACE, (f"{lost}; the limit is {limit:g}.",), (source,))
    if lost_pct < PATCH_BELOW_PCT:
        return RoofAdvice(
            RoofAction.PATCH, (f"{lost}, less than {PATCH_BELOW_PCT:g}.",), (PATCH_SOURCE,)
        )
    return _middle_share(lost, is_past_repair, life_used)


def _middle_share(lost: str, is_past_repair: bool | None, life_used: float | None) -> RoofAdvice:
    """Advice between the limits, where the age and the feel of the covering decide."""
    if life_used is not None and life_used >= PATCH_LIFE_SHARE:
        reason = f"{lost}, and {life_used:.0%} of its life is used."
        return RoofAdvice(RoofAction.REPLACE, (reason,), (PATCH_SOURCE,))
    if is_past_repair is None or life_used is None:
        reason = f"{lost}; age and feel of the field decide, and are not both known."
        return RoofAdvice(RoofAction.UNDECIDED, (reason,), (PATCH_SOURCE,))
    reason = f"{lost}; the rest holds and {life_used:.0%} of its life is used."
    return RoofAdvice(RoofAction.PATCH, (reason,), (PATCH_SOURCE,))
