"""A span check as a reckoning."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from leanto.reckon.citations import without_citations
from leanto.reckon.model import CONFIRM_FRAME, UNDECIDED, Fact, Figure, Reckoning, cited
from leanto.source import Source
from leanto.trade.framing_check import FramingCheck
from leanto.trade.span import SPAN_SOURCE, feet_inches

TABLE_SOURCE = Source(
    "International Residential Code", "2018", "Tables R301.5, R502.3.1, R802.4.1 and R802.5.1"
)


def checked(
    check: FramingCheck,
    *,
    id_: str,
    title: str,
    station_id: str,
    fact: str,
    figures: Iterable[Figure] = (),
    facts: Mapping[str, Fact] | None = None,
    sources: Iterable[Source] = (TABLE_SOURCE, SPAN_SOURCE),
) -> Reckoning:
    """The check in the words of a reckoning; ``fact`` is the name its verdict goes by."""
    reasons, from_reasons = without_citations(_beyond_figures(check))
    asks, from_asks = without_citations(check.questions)
    return Reckoning(
        id=id_,
        title=title,
        station_id=station_id,
        verdict=check.verdict.value,
        figures=(*figures, *span_figures(check)),
        reasons=reasons,
        sources=cited(sources, from_reasons, from_asks),
        confirm=CONFIRM_FRAME,
        facts={fact: check.verdict.value, **(facts or {})},
        asks=asks,
        cautions=check.cautions,
    )


def _beyond_figures(check: FramingCheck) -> tuple[str, ...]:
    """The reasons that the figures do not give already: spans first, new lumber last."""
    return check.reasons if check.span_in is None else check.reasons[1:-1]


def span_figures(check: FramingCheck) -> tuple[Figure, ...]:
    """Clear and allowed span and what would carry it; nothing where nothing spans."""
    if check.span_in is None or check.allowed_in is None or check.margin_in is None:
        return ()
    margin = feet_inches(abs(check.margin_in))
    return (
        Figure("Clear span", feet_inches(check.span_in)),
        Figure("Allowed span", feet_inches(check.allowed_in)),
        Figure("To spare" if check.margin_in >= 0 else "Too long by", margin),
        Figure("Governed by", check.governs),
        Figure("New lumber here", f"{check.required_size} or deeper")
        if check.required_size
        else Figure("New lumber here", "no size up to 2x12"),
    )


def not_sized(id_: str, title: str, station_id: str, member: str) -> Reckoning:
    """The reckoning of a member that no size table holds."""
    return Reckoning(
        id=id_,
        title=title,
        station_id=station_id,
        verdict=UNDECIDED,
        reasons=(f"No table holds the size {member}: measure the piece, breadth and depth.",),
        confirm=CONFIRM_FRAME,
    )
