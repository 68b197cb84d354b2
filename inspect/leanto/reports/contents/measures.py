"""What was measured, in words."""

from __future__ import annotations

from collections.abc import Mapping

from leanto.checklist.model import Measure
from leanto.quantities import format_ft_in, shown

_SUFFIXES = {
    "pct": " %",
    "sqft": " sq ft",
    "deg_f": " °F",
    "years": " years",
    "amp": " A",
    "awg": " AWG",
    "hours": " h",
    "days": " days",
}


def measured_in_words(
    values: Mapping[str, float | str], measures: Mapping[str, Measure]
) -> tuple[str, ...]:
    """Each value with its label, such as ``Awl sinks in: 1 1/2"``; unknown measures by their id."""
    return tuple(
        f"{measures[name].label if name in measures else name}: "
        f"{_value(value, measures[name].unit if name in measures else '')}"
        for name, value in values.items()
    )


def _value(value: float | str, unit: str) -> str:
    if isinstance(value, str):
        return value
    match unit:
        case "yes_no":
            return "yes" if value else "no"
        case "in":
            return format_ft_in(value / 12, 16)
        case "ft":
            return format_ft_in(value)
        case "sqft" if shown().is_metric:
            return shown().area(value)
        case "deg_f" if shown().is_metric:
            return shown().temperature(value)
        case _:
            return f"{value:,.2f}".rstrip("0").rstrip(".") + _SUFFIXES.get(unit, "")
