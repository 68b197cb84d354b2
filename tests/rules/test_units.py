"""Units in expressions: what goes together, what does not, and what is said about it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.checklist.model import Checklist, Measure
from leanto.quantities import Unit
from leanto.rules.expression import compile_expression
from leanto.rules.facts import STATIC_FACTS, FactSpec, fact_specs
from leanto.rules.load import compile_rule
from leanto.rules.model import Rule
from leanto.rules.units import OF_FACT, UnitError, check_units, unit_faults

FACTS = {spec.name: spec for spec in STATIC_FACTS} | {
    name: FactSpec(name, "number", unit, name)
    for name, unit in {
        "run_ft": "ft",
        "span_ft": "ft",
        "sag_in": "in",
        "gap_in": "in",
        "share_pct": "pct",
        "soft_count": "count",
        "feed_amp": "amp",
        "wire_awg": "awg",
        "wet_hours": "hours",
        "dry_days": "days",
        "snow_psf": "psf",
        "strange_thing": "furlong",
    }.items()
}


def check(text: str, counted_in: Unit | None = None) -> None:
    check_units(compile_expression(text, FACTS), FACTS, counted_in)


@pytest.mark.parametrize(
    "text",
    [
        # numbers alone take the unit of what they stand beside
        "sag_in > 2",
        "2 < sag_in",
        "0.5 <= sag_in <= 2 and run_ft > 4",
        "run_ft + 4 > span_ft",
        "max(run_ft, 8) > span_ft",
        "(share_pct if known(share_pct) else 20) > 5",
        "1 + 1 > 2",
        "(10 if sound else 12) < span_ft",
        # as a factor they change none
        "sag_in > 0.25 * gap_in",
        "-sag_in < gap_in / 3",
        # units of products and quotients
        "zone_width_ft * zone_height_ft <= zone_area_sqft",
        "zone_area_sqft / zone_width_ft < span_ft",
        "sqrt(floor_area_sqft) < span_ft",
        "sag_in * sag_in / gap_in < gap_in",
        "sag_in / gap_in > 0.5",
        "sag_in / gap_in > soft_count",
        "snow_psf * floor_area_sqft / floor_area_sqft > snow_psf",
        # conversions
        "sag_in > inches(span_ft) / 240",
        "feet(sag_in) > span_ft",
        "run_ft * feet(24) > zone_area_sqft",
        "pitch_in_12 > sag_in",
        "number(run_ft) > soft_count",
        "number(feed_amp) * 240 < 3 * number(floor_area_sqft) + 5235",
        # shares and packs
        "floor_area_sqft * share_pct / 100 > zone_area_sqft",
        "share_pct / 100 > soft_count",
        # words and searches have none
        "place == 'roof' and found_here('x') and side in ('north', 'none')",
        "strange_thing > 2 * strange_thing",
    ],
)
def test_what_goes_together_passes(text: str) -> None:
    check(text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("floor_area_sqft + run_ft > 3", "'floor_area_sqft' is in square feet, but 'run_ft' is"),
        ("sag_in > span_ft", "'span_ft' is in feet; write inches(span_ft)"),
        ("span_ft < sag_in", "'sag_in' is in inches; write inches(span_ft)"),
        ("sag_in > span_ft * 12 / 240", "'span_ft * 12 / 240' is in feet"),
        ("not (sag_in > span_ft)", "is in inches"),
        ("sound and (worn or sag_in > span_ft)", "is in inches"),
        ("max(sag_in, 2, span_ft) > 3", "'sag_in' is in inches, but 'span_ft' is in feet"),
        ("(sag_in if sound else span_ft) > 3", "is in inches, but"),
        ("(2 if sag_in > span_ft else 3) > 3", "is in inches, but"),
        ("1 < sag_in < span_ft", "is in feet"),
        ("share_pct > soft_count", "is in percent, but 'soft_count' is a plain number"),
        ("share_pct / 100 > share_pct", "is a plain number, but 'share_pct' is in percent"),
        ("zone_width_ft * zone_height_ft > zone_width_ft", "is in square feet, but"),
        ("sag_in / gap_in > gap_in", "is a plain number, but 'gap_in' is in inches"),
        ("surface_area_sqft / 100 > surface_area_sqft", "is in squares, but"),
        ("inches(sag_in) > 3", "inches takes what is in feet, but 'sag_in' is in inches"),
        ("feet(span_ft) > 3", "feet takes what is in inches, but 'span_ft' is in feet"),
        ("wet_hours > dry_days", "is in hours, but 'dry_days' is in days"),
        ("year_built > building_age_years", "is a calendar year, but"),
        ("feed_amp > wire_awg", "is in amperes, but 'wire_awg' is in wire gauge"),
        ("strange_thing > run_ft", "is in furlong, but"),
        ("number(run_ft) > run_ft", "is a plain number, but"),
        ("abs(sag_in) + ceil(span_ft) > 1", "'abs(sag_in)' is in inches"),
    ],
)
def test_what_does_not_go_together_is_told_with_both_units(text: str, said: str) -> None:
    with pytest.raises(UnitError) as refused:
        check(text)
    assert said in str(refused.value)
    assert str(refused.value).startswith(text) or text.startswith(("inches(", "feet("))


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("run_ft", Unit.LF),
        ("8", Unit.LF),
        ("feet(42) * soft_count", Unit.LF),
        ("surface_area_sqft * 0.1", Unit.SQFT),
        ("run_ft * feet(12)", Unit.SQFT),
        ("surface_area_sqft / 100 * layers", Unit.SQUARE),
        ("zone_area_sqft * feet(sag_in) / 27", Unit.CY),
        ("floor_area_sqft * eave_height_ft", Unit.CUBIC_FOOT),
        ("zone_area_sqft * sag_in", Unit.BOARD_FOOT),
        ("soft_count", Unit.EACH),
        ("ceil(number(run_ft) / 8)", Unit.EACH),
        ("1", Unit.LUMP),
        ("2", Unit.DAY),
        ("dry_days", Unit.DAY),
        ("soft_count", Unit.HOUR),
        ("wet_hours", Unit.HOUR),
        ("snow_psf * floor_area_sqft", Unit.POUND),
        ("soft_count", Unit.TON),
    ],
)
def test_a_quantity_in_the_unit_of_its_work_passes(text: str, unit: Unit) -> None:
    check(text, unit)


@pytest.mark.parametrize(
    ("text", "unit", "said"),
    [
        ("run_ft", Unit.SQFT, "'run_ft' is in feet; it should be in square feet"),
        ("sag_in", Unit.LF, "'sag_in' is in inches; it should be in feet"),
        ("surface_area_sqft", Unit.SQUARE, "should be in squares"),
        ("surface_area_sqft / 100", Unit.SQFT, "is in squares; it should be in square feet"),
        ("surface_area_sqft * share_pct", Unit.SQFT, "should be in square feet"),
        ("soft_count", Unit.LF, "is a plain number; it should be in feet"),
        ("zone_area_sqft * feet(sag_in)", Unit.CY, "is in cubic feet; it should be in cubic yards"),
        ("ceil(run_ft / 8)", Unit.EACH, "is in feet; it should be a plain number"),
        ("run_ft", Unit.LUMP, "should be a plain number"),
        ("run_ft", Unit.DAY, "should be in days"),
    ],
)
def test_a_quantity_in_another_unit_than_its_work_is_told(text: str, unit: Unit, said: str) -> None:
    with pytest.raises(UnitError) as refused:
        check(text, unit)
    assert said in str(refused.value)


@pytest.mark.parametrize(
    ("text", "value"), [("inches(span_ft)", 96), ("feet(sag_in)", 2), ("number(span_ft)", 8)]
)
def test_conversions_compute(text: str, value: float) -> None:
    made = compile_expression(text, FACTS)
    assert made.evaluate({"span_ft": 8.0, "sag_in": 24.0}) == pytest.approx(value)


def test_every_unit_of_work_has_an_answer() -> None:
    for unit in Unit:
        check("1", unit)


def test_every_unit_of_a_fact_is_in_the_table(checklist: Callable[..., Checklist]) -> None:
    of_measures = Measure.model_fields["unit"].annotation.__args__  # type: ignore[union-attr]
    of_facts = {spec.unit for spec in fact_specs(checklist()).values() if spec.kind == "number"}
    assert of_facts >= {"ft", "in", "sqft", "pct"}
    assert {*of_facts, *of_measures} - {"choice", "yes_no"} <= OF_FACT.keys()


def test_faults_of_a_rule_name_the_place_of_each(rule: Callable[..., Rule]) -> None:
    work: list[dict[str, Any]] = [
        {"work": "sill", "take": "width", "when": "gap_in > run_ft"},
        {"work": "sill", "quantity": "floor_area_sqft"},
        {"work": "post", "quantity": "soft_count"},
    ]
    compiled, faults = compile_rule(rule("stain-x", "sag_in > run_ft", work=work), FACTS)
    assert compiled is not None and not faults
    found = list(unit_faults(compiled, FACTS, {"sill": Unit.LF, "post": Unit.EACH}))
    assert [fault.path for fault in found] == [
        ("when",),
        ("work", 0, "when"),
        ("work", 1, "quantity"),
    ]
    assert "sill is counted in lf." in found[2].remedy
