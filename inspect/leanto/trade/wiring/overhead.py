"""Wires through the air to a building: least size by span, least height by what is below.

Heights are judged from the ground, from 10 ft away or more. Nobody measures near a wire.
"""

from __future__ import annotations

from enum import StrEnum

from leanto.trade.wiring.confirm import Check, Verdict, code

HEIGHT_SOURCE = code("225.18, clearance above ground")
SIZE_SOURCE = code("225.6(A), individual copper conductors in the open")
ATTACHMENT_SOURCE = code("225.18 and 225.26, point of attachment, no support by vegetation")
LEAST_ATTACHMENT_FT = 10.0
LONG_SPAN_FT = 50.0
KEEP_AWAY_FT = 10.0


class Below(StrEnum):
    """What lies under the span."""

    WALK = "walks only, 150 V to ground or less"
    DRIVEWAY = "house grounds and driveway, 300 V to ground or less"
    TRUCKS = "road, truck way, field or farm yard"


_LEAST_FT = {Below.WALK: 10.0, Below.DRIVEWAY: 12.0, Below.TRUCKS: 18.0}


def least_height_ft(below: Below) -> float:
    """Least feet from the span's lowest point to the ground. Source: 225.18."""
    return _LEAST_FT[below]


def least_open_size(span_ft: float) -> str:
    """Least copper size of single wires in the open, AWG, without a messenger. Source: 225.6."""
    if span_ft <= 0:
        raise ValueError(f"a span has a length: {span_ft}")
    return "10" if span_ft <= LONG_SPAN_FT else "8"


def check_height(seen_ft: float | None, below: Below) -> Check:
    """How the height judged from the ground stands against the table."""
    if seen_ft is None:
        words = f"The height is not known. Stay {KEEP_AWAY_FT:g} ft away."
        return Check(Verdict.ASK, words, HEIGHT_SOURCE)
    least = least_height_ft(below)
    verdict = Verdict.PASSES if seen_ft >= least else Verdict.DOES_NOT_PASS
    return Check(verdict, f"{seen_ft:g} ft; the table asks for {least:g} ft.", HEIGHT_SOURCE)
