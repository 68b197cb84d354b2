"""Equilibrium moisture content of wood: where wood settles in air of one warmth and humidity."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from leanto.source import Source

SOURCE = Source(
    "Wood Handbook, Wood as an Engineering Material, FPL-GTR-282",
    "2021",
    "equation 4-5 (deg F); deg C coefficients as in Simpson, FPL-RN-0268, 1998",
)
TABLE_TEMP_F = (30.0, 270.0)
"""Temperatures the Handbook's own table spans; colder or hotter is an extrapolation."""
TABLE_RH_PCT = (5.0, 95.0)
"""Relative humidities the Handbook's own table spans."""
_LOWEST_TEMP_F = -40.0
_HIGHEST_TEMP_F = 300.0

Quadratic = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class _Coefficients:
    """The four quadratics in temperature that the equation asks for."""

    w: Quadratic
    k: Quadratic
    k1: Quadratic
    k2: Quadratic


_FAHRENHEIT = _Coefficients(
    w=(330.0, 0.452, 0.00415),
    k=(0.791, 0.000463, -0.000000844),
    k1=(6.34, 0.000775, -0.0000935),
    k2=(1.09, 0.0284, -0.0000904),
)
_CELSIUS = _Coefficients(
    w=(349.0, 1.29, 0.0135),
    k=(0.805, 0.000736, -0.00000273),
    k1=(6.27, -0.00938, -0.000303),
    k2=(1.91, 0.0407, -0.000293),
)


@lru_cache(maxsize=1024)
def emc_pct(temp_f: float, rh_pct: float) -> float:
    """Moisture content wood settles at, percent of its oven-dry mass.

    ``temp_f`` in deg F, ``rh_pct`` relative humidity from 0 to 100. Midway between drying and
    wetting wood; a tenth of a point has no meaning. ValueError outside 0-100 % or -40 to 300 F.
    Source: Wood Handbook, FPL-GTR-282, 2021, equation 4-5.
    """
    return _emc_pct(temp_f, rh_pct, temp_f, _FAHRENHEIT)


def emc_pct_c(temp_c: float, rh_pct: float) -> float:
    """Moisture content wood settles at, percent of its oven-dry mass, from deg C.

    The deg C coefficients are a fit of their own; the two forms differ by about 0.01 point.
    Source: Simpson, FPL-RN-0268, 1998.
    """
    return _emc_pct(temp_c, rh_pct, temp_c * 9.0 / 5.0 + 32.0, _CELSIUS)


def inside_emc_table(temp_f: float, rh_pct: float) -> bool:
    """Whether the published table covers this air; outside it the equation is stretched."""
    return (
        TABLE_TEMP_F[0] <= temp_f <= TABLE_TEMP_F[1]
        and TABLE_RH_PCT[0] <= rh_pct <= TABLE_RH_PCT[1]
    )


def _emc_pct(temp: float, rh_pct: float, temp_f: float, of: _Coefficients) -> float:
    if not 0.0 <= rh_pct <= 100.0:
        raise ValueError(f"relative humidity must be 0 to 100 percent, not {rh_pct}")
    if not _LOWEST_TEMP_F <= temp_f <= _HIGHEST_TEMP_F:
        raise ValueError(f"air temperature must be -40 to 300 deg F, not {temp_f:.1f}")
    w, k, k1, k2 = (_at(temp, quadratic) for quadratic in (of.w, of.k, of.k1, of.k2))
    kh = k * rh_pct / 100.0
    first = k1 * kh
    second = k1 * k2 * kh * kh
    return 1800.0 / w * (kh / (1.0 - kh) + (first + 2.0 * second) / (1.0 + first + second))


def _at(temp: float, quadratic: Quadratic) -> float:
    constant, linear, square = quadratic
    return constant + linear * temp + square * temp * temp
