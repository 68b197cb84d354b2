"""Meter readings, soft spots, mold and wet lining: one reckoning for each answer."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.building.kinds import Lining
from leanto.reckon.model import Reckoning
from leanto.reckon.water import MATERIAL_OF, ORIGIN_OF
from leanto.record.observation import Air
from leanto.trade.wetting import find_material, find_origin

Figures = Callable[[Reckoning], dict[str, str]]


@pytest.mark.parametrize(
    ("reading", "air", "dry_spot", "verdict"),
    [
        # 70 F and 50 %: wood settles at 9.2 % (Wood Handbook, Table 4-2); 4 points over it count.
        (13.0, Air(70, 50), None, "drying out with the room"),
        (14.0, Air(70, 50), None, "wetter than the air explains"),
        (20.0, Air(70, 50), None, "wet enough for decay"),
        (14.0, Air(70, 50), 12.0, "drying out with the room"),
        (14.0, None, None, "cannot be judged"),
        (14.0, None, 9.0, "wetter than the air explains"),
        (28.0, None, None, "wet enough for decay"),
    ],
)
def test_a_reading_against_the_air_and_a_dry_spot(
    case: Any, reading: float, air: Air | None, dry_spot: float | None, verdict: str
) -> None:
    measures = {"moisture_pct": reading}
    if dry_spot is not None:
        measures["dry_spot_moisture_pct"] = dry_spot
    key = case.answer("main.south.inside", "wall-stain", "worn", **measures)
    if air is not None:
        case.air["main.south.inside"] = air
    one = case.one(f"moisture@{key}")
    assert one.verdict == verdict
    assert one.observation == key


def test_a_reading_shows_its_numbers(case: Any, figures: Figures) -> None:
    key = case.answer("main.south.inside", "wall-stain", moisture_pct=24.0)
    case.air["main.floor"] = Air(70, 50)
    shown = figures(case.one(f"moisture@{key}"))
    assert shown["Meter"] == "24 %"
    assert shown["Explained by the air"] == "9.2 % at 70 F and 50 %"
    assert shown["Beyond that"] == "+14.8 points"


def test_what_was_not_there_is_not_reckoned(case: Any) -> None:
    case.answer("main.south.inside", "wall-stain", "not there", moisture_pct=24.0)
    case.answer("main.south.inside", "stud-feet", "no access", probe_depth_in=1.0)
    case.answer("gone.south.inside", "stud-feet", probe_depth_in=1.0)
    assert not [one for one in case.reckoned().values() if one.observation is not None]


@pytest.mark.parametrize(
    ("station", "item", "probe_in", "remedy", "lost_pct"),
    [
        # Studs of 2 x 4 in. full sawn: S goes with the square of the depth that is left.
        ("main.south.inside", "stud-feet", 0.2, "keep", 100 * (1 - (3.8 / 4) ** 2)),
        ("main.south.inside", "stud-feet", 0.3, "repair beside it", 100 * (1 - (3.7 / 4) ** 2)),
        ("main.south.inside", "stud-feet", 1.2, "replace", 100 * (1 - (2.8 / 4) ** 2)),
        ("main.ceiling", "rafters", 1.0, "repair beside it", 100 * (1 - (3 / 4) ** 2)),
        # The floor's 2x8 was dressed before 1964: 1-5/8 by 7-1/2 in.
        ("main.floor", "floor-joists", 1.5, "repair beside it", 100 * (1 - (6 / 7.5) ** 2)),
        # A plate lies flat: the awl goes into the 2 in.
        ("main.south.inside", "top-plate", 0.5, "replace", 100 * (1 - (1.5 / 2) ** 2)),
    ],
)
def test_a_soft_spot(
    case: Any, station: str, item: str, probe_in: float, remedy: str, lost_pct: float
) -> None:
    key = case.answer(station, item, probe_depth_in=probe_in)
    one = case.one(f"section@{key}")
    assert one.facts["section_remedy"] == remedy == one.verdict
    assert one.facts["section_lost_pct"] == pytest.approx(lost_pct)


def test_a_post_loses_by_its_measured_width(case: Any) -> None:
    key = case.answer("main.south.outside", "post-feet", probe_depth_in=1.0, post_size_in=6.0)
    assert case.one(f"section@{key}").verdict == "ask an engineer"
    case.answer("main.south.outside", "post-feet", probe_depth_in=1.0)
    assert not [id_ for id_ in case.reckoned() if id_.startswith("section")]


def test_early_decay_and_movement_weigh_more_than_the_section(case: Any) -> None:
    brash = case.answer(
        "main.south.inside", "pick-test", probe_depth_in=0.1, rot_kind="breaks short"
    )
    assert case.one(f"section@{brash}").verdict == "repair beside it"


def test_the_piece_beside_covers_the_soft_run(case: Any) -> None:
    key = case.answer("main.south.inside", "stud-feet", zone=(0, 0, 4, 1), probe_depth_in=0.3)
    # One soft foot and a third of 8 ft at either end: more than 24 in., so 6 ft 4 in.
    assert case.one(f"section@{key}").facts["sister_length_ft"] == pytest.approx(1 + 2 * 8 / 3)


def test_items_about_other_wood_are_not_taken_for_framing(case: Any) -> None:
    case.answer("main.south.outside", "window-wood", probe_depth_in=1.0)
    case.answer("main.floor", "floor-boards", probe_depth_in=0.5)
    assert not [id_ for id_ in case.reckoned() if id_.startswith("section")]


@pytest.mark.parametrize(
    ("zone_ft", "added", "on", "band", "area"),
    [
        ((0, 0, 3, 3), None, "bare wood", "small", 9.0),
        ((0, 0, 3, 3), 10.0, "bare wood", "medium", 10.0),
        ((0, 0, 3, 3), 101.0, "bare wood", "large", 101.0),
        ((0, 0, 3, 3), None, "fill", "large", 9.0),
        (None, None, "bare wood", None, None),
    ],
)
def test_the_band_of_a_rooms_mold(
    case: Any,
    zone_ft: tuple[float, float, float, float] | None,
    added: float | None,
    on: str,
    band: str | None,
    area: float | None,
) -> None:
    measures: dict[str, float | str] = {"mold_on": on}
    if added is not None:
        measures["mold_total_sqft"] = added
    case.answer("main.south.inside", "mold", zone=zone_ft, **measures)
    one = case.one("mold@main")
    assert one.facts.get("mold_band") == band
    assert one.facts.get("mold_area_sqft") == (area if area is None else pytest.approx(area))
    if band is None:
        assert one.verdict == "undecided"


def test_overlapping_zones_count_once_and_rooms_stay_apart(case: Any) -> None:
    case.lean_to = {}
    case.answer("main.south.inside", "mold", zone=(0, 0, 3, 3))
    case.answer("main.south.inside", "mold", zone=(0, 0, 3, 3), number=2)
    case.answer("main.ceiling", "mold", zone=(0, 0, 1, 1))
    made = case.reckoned()
    assert made["mold@main"].facts["mold_area_sqft"] == pytest.approx(10.0)
    assert "mold@lean-to" not in made


def test_every_lining_and_water_has_its_row() -> None:
    assert set(MATERIAL_OF) == set(Lining) - {Lining.NONE}
    for name in MATERIAL_OF.values():
        assert find_material(name)
    for name in ORIGIN_OF.values():
        assert find_origin(name)


@pytest.mark.parametrize(
    ("lining", "condition", "days", "water", "fate"),
    [
        ("beaded board", "worn", 10.0, "rain from above", "dry in place"),
        ("beaded board", "failed", 10.0, "manure or sewage", "clean, disinfect and dry"),
        ("gypsum board", "worn", 1.0, "rain from above", "dry in place"),
        ("gypsum board", "worn", 2.0, "rain from above", "take out"),
        ("gypsum board", "worn", 1.0, "rain through dirt", "take out"),
        ("plaster on lath", "worn", 1.0, "flood or stream", "take out"),
        ("gypsum board", "worn", 1.0, "ground damp", "undecided"),
        ("gypsum board", "worn", 1.0, None, "undecided"),
    ],
)
def test_what_happens_to_a_wet_lining(
    case: Any, lining: str, condition: str, days: float, water: str | None, fate: str
) -> None:
    case.main = {"walls": {"lining": lining}}
    measures: dict[str, float | str] = {"wet_days": days}
    if water is not None:
        measures["water_kind"] = water
    key = case.answer("main.south.inside", "wet-lining", condition, **measures)
    one = case.one(f"wet-lining@{key}")
    assert one.facts["lining_fate"] == fate == one.verdict


def test_wet_fill_is_named_with_it(case: Any, figures: Figures) -> None:
    case.main = {"walls": {"insulation": "batts"}}
    key = case.answer(
        "main.south.inside", "wet-lining", wet_days=1.0, water_kind="rain from above", fill_wet=1.0
    )
    assert figures(case.one(f"wet-lining@{key}"))["Wet fill behind it"] == "take out"


@pytest.mark.parametrize(
    ("tide_in", "cut_in"), [(0, 24), (12, 24), (13, 48), (36, 48), (37, 96), (120, 96)]
)
def test_the_height_to_cut(case: Any, tide_in: float, cut_in: float) -> None:
    key = case.answer("main.south.inside", "wall-base", "worn", tide_height_in=float(tide_in))
    assert case.one(f"cut@{key}").facts["cut_height_in"] == cut_in


def test_an_unlined_wall_is_not_cut(case: Any) -> None:
    case.main = {"walls": {"lining": "none"}}
    case.answer("main.south.inside", "wall-base", "worn", tide_height_in=8.0)
    assert not [id_ for id_ in case.reckoned() if id_.startswith("cut")]


@pytest.mark.parametrize(
    ("species", "item", "said"),
    [
        ("southern pine", "stud-feet", "No correction figures for southern pine"),
        ("douglas fir", "stud-feet", "Species figures for Douglas-fir: from memory"),
        ("southern pine", "cladding", "No correction figures for wood of unknown kind"),
        (None, "stud-feet", "No correction figures for wood of unknown kind"),
    ],
)
def test_a_reading_of_framing_is_put_right_for_its_wood(
    case: Any, species: str | None, item: str, said: str
) -> None:
    case.facts = {"lumber": {"species": species}} if species else {}
    key = case.answer("main.south.inside", item, "worn", moisture_pct=14.0)
    assert any(reason.startswith(said) for reason in case.one(f"moisture@{key}").reasons)


@pytest.mark.parametrize(
    ("size", "left"), [("6x8", "56%"), ("4x4", "25%"), ("round log", None), (None, None)]
)
def test_a_sill_is_judged_by_the_size_that_was_measured(
    case: Any, size: str | None, left: str | None
) -> None:
    measures: dict[str, float | str] = {"probe_depth_in": 2.0}
    if size is not None:
        measures["sill_size"] = size
    key = case.answer("main.south.outside", "sill", "failed", **measures)
    made = case.reckoned().get(f"section@{key}")
    assert (made is not None) is (left is not None)
    if made is not None:
        # 2 in. off the height: (6/8) squared is 56 %, (2/4) squared is 25 %.
        shown = {figure.label: figure.text for figure in made.figures}
        assert shown["Bending strength left"] == left
