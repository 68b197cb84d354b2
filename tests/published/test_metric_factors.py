"""Metric amounts against a reference library and against what a code prints beside feet and inches.

- *pint*: the general-purpose library pint with its own table of units; seen.
- *IRC*: International Residential Code 2018, the metric figure that stands in brackets behind the
  one in feet and inches; from memory.
"""

from __future__ import annotations

import pint
import pytest

from leanto.quantities import Unit
from leanto.quantities.metric import METRIC_UNITS, celsius
from leanto.quantities.prose import _UNITS as PROSE
from leanto.quantities.prose import metric_words

REGISTRY = pint.UnitRegistry()

WORK_UNITS = [
    (Unit.LF, "foot", "meter"),
    (Unit.SQFT, "foot**2", "meter**2"),
    (Unit.SQUARE, "(10 * foot)**2", "meter**2"),
    (Unit.CUBIC_FOOT, "foot**3", "meter**3"),
    (Unit.CY, "yard**3", "meter**3"),
    (Unit.BOARD_FOOT, "foot * foot * inch", "meter**3"),
    (Unit.POUND, "pound", "kilogram"),
    (Unit.TON, "2000 * pound", "metric_ton"),
    (Unit.GALLON, "gallon", "liter"),
]


@pytest.mark.published("pint, units library", "library")
@pytest.mark.parametrize(("unit", "ours", "theirs"), WORK_UNITS)
def test_units_of_work(unit: Unit, ours: str, theirs: str) -> None:
    expected = REGISTRY.Quantity(ours).to(theirs).magnitude
    assert float(METRIC_UNITS[unit].each) == pytest.approx(expected, rel=1e-12)


@pytest.mark.published("the list above", "own")
def test_every_unit_of_work_that_differs_is_checked() -> None:
    assert {unit for unit, _, _ in WORK_UNITS} == set(METRIC_UNITS)


@pytest.mark.published("pint, units library", "library")
@pytest.mark.parametrize(
    ("name", "ours", "theirs"),
    [
        ("sqm", "foot**2", "meter**2"),
        ("sqmm", "inch**2", "millimeter**2"),
        ("cum", "foot**3", "meter**3"),
        ("cuyd", "yard**3", "meter**3"),
        ("cumm", "inch**3", "centimeter**3"),
        ("lin", "foot", "millimeter"),
        ("ft", "foot", "millimeter"),
        ("in", "inch", "millimeter"),
        ("yd", "yard", "millimeter"),
        ("square", "100 * foot**2", "meter**2"),
        ("timber", "foot * foot * inch", "meter**3"),
        ("kg", "pound", "kilogram"),
        ("tonne", "2000 * pound", "metric_ton"),
        ("kpa", "pound_force / foot**2", "kilopascal"),
        ("mpa", "pound_force / inch**2", "megapascal"),
        ("liter", "gallon", "liter"),
        ("watt", "Btu / hour", "watt"),
        ("wk", "Btu / hour / delta_degF", "watt / kelvin"),
        ("ohm", "ohm / (1000 * foot)", "ohm / kilometer"),
        ("micron", "thou", "millimeter"),
        ("kmh", "mile / hour", "kilometer / hour"),
        ("kg_sqm", "pound / foot**2", "kilogram / meter**2"),
        ("kg_cum", "pound / foot**3", "kilogram / meter**3"),
        ("kg_cuyd", "pound / yard**3", "kilogram / meter**3"),
        ("days", "delta_degF", "delta_degC"),
        ("celsius", "delta_degF", "delta_degC"),
    ],
)
def test_units_in_sentences(name: str, ours: str, theirs: str) -> None:
    expected = REGISTRY.Quantity(ours).to(theirs).magnitude
    assert PROSE[name][2] == pytest.approx(expected, rel=1e-6)


@pytest.mark.published("pint, units library", "library")
@pytest.mark.parametrize("degrees_f", [-40.0, 0.0, 32.0, 68.0, 98.6, 212.0])
def test_temperatures(degrees_f: float) -> None:
    expected = REGISTRY.Quantity(degrees_f, "degF").to("degC").magnitude
    assert celsius(degrees_f) == pytest.approx(expected, abs=1e-9)


@pytest.mark.published("pint, units library", "library")
def test_thermal_resistance() -> None:
    expected = REGISTRY.Quantity("hour * foot**2 * delta_degF / Btu").to("meter**2 * kelvin / watt")
    said = metric_words("R 10")
    assert said == f"R 10 (RSI {expected.magnitude * 10:.2f})"


@pytest.mark.published("International Residential Code 2018", "from memory")
@pytest.mark.parametrize(
    ("printed", "beside"),
    [
        ("6 in.", "152 mm"),  # IRC R317.1, from memory
        ("8 in.", "203 mm"),  # IRC R317.1, from memory
        ("18 in.", "457 mm"),  # IRC R317.1, from memory
        ("36 in.", "914 mm"),  # IRC R312.1, from memory
        ("4 in.", "102 mm"),  # IRC R312.1, from memory
        ("24 in.", "610 mm"),  # IRC R317.1, from memory
        ("40 psf", "1.92 kPa"),  # IRC R301.5, from memory
        ("20 psf", "0.958 kPa"),  # IRC R301.6 prints 0.96, from memory
    ],
)
def test_as_a_code_prints_it(printed: str, beside: str) -> None:
    assert metric_words(printed) == beside
