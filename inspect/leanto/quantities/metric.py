"""Amounts kept in feet, square feet, pounds and degrees Fahrenheit, as SI says them. Pure.

Factors are exact. Source: NIST Special Publication 811, 2008, Appendix B.8; from memory.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal

from leanto.quantities.unit import Unit

M_PER_FT = Decimal("0.3048")
SQM_PER_SQFT = M_PER_FT**2
CUM_PER_CUFT = M_PER_FT**3
KG_PER_LB = Decimal("0.45359237")
L_PER_GAL = Decimal("3.785411784")
_BOARD_FOOT = CUM_PER_CUFT / 12


@dataclass(frozen=True, slots=True)
class MetricUnit:
    """What a unit of work or material is counted in instead."""

    symbol: str
    each: Decimal
    """So many of it make one of ours; exact."""
    decimals: int = 2


METRIC_UNITS = {
    Unit.SQFT: MetricUnit("m²", SQM_PER_SQFT),
    Unit.LF: MetricUnit("m", M_PER_FT),
    Unit.SQUARE: MetricUnit("m²", 100 * SQM_PER_SQFT),
    Unit.BOARD_FOOT: MetricUnit("m³", _BOARD_FOOT, 3),
    Unit.CY: MetricUnit("m³", 27 * CUM_PER_CUFT),
    Unit.CUBIC_FOOT: MetricUnit("m³", CUM_PER_CUFT, 3),
    Unit.POUND: MetricUnit("kg", KG_PER_LB, 1),
    Unit.TON: MetricUnit("t", 2 * KG_PER_LB),
    Unit.GALLON: MetricUnit("L", L_PER_GAL, 1),
}
"""Pieces, hours and packages are counted alike everywhere."""


def metric_length(ft: float, finest_mm: float = 1.0) -> str:
    """The length as ``889 mm`` below a meter and as ``2.223 m`` from there on.

    To whole millimeters, or to ``finest_mm`` below a tenth of a meter.
    """
    if not math.isfinite(ft):
        raise ValueError(f"no length to print: {ft!r} ft")
    mm = ft * 304.8
    if abs(mm) < 100 and finest_mm < 1:
        return f"{plain_number(round(mm / finest_mm) * finest_mm, 1)} mm"
    whole = math.floor(abs(mm) + 0.5)
    sign = "-" if mm < 0 and whole else ""
    if whole < 1000:
        return f"{sign}{whole} mm"
    return f"{sign}{plain_number(whole / 1000, 3)} m"


def metric_area(sqft: float) -> str:
    """The area as ``11.15 m²``: two decimals, one from a hundred on."""
    sqm = sqft * float(SQM_PER_SQFT)
    return f"{plain_number(sqm, 1 if abs(sqm) >= 100 else 2)} m²"


def celsius(degrees_f: float) -> float:
    return (degrees_f - 32) * 5 / 9


def plain_number(value: float | Decimal, decimals: int) -> str:
    """The number with thousands set apart and no zeros at its end."""
    text = f"{value:,.{decimals}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text
