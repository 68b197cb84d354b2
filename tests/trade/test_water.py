"""Wet materials where time, dirt or knowledge decide."""

from __future__ import annotations

import pytest

from leanto.trade.water import Fate, cut_height, water_category, wet_material, wetting_class
from leanto.trade.wetting import find_material, water_table


# One step worse after 48 hours: common practice, no source.
@pytest.mark.parametrize(
    ("origin", "hours", "category"),
    [
        ("rain", 48, 1),
        ("rain", 48.1, 2),
        ("rain", None, 1),
        ("rain-through-dirt", 48, 2),
        ("rain-through-dirt", 49, 3),
        ("rain-through-droppings", 1, 3),
        ("manure", None, 3),
    ],
)
def test_water_gets_worse_with_time(origin: str, hours: float | None, category: int) -> None:
    assert water_category(origin, hours).category == category


def test_unknown_hours_are_spoken_of() -> None:
    assert any("may have become worse" in reason for reason in water_category("rain", None).reasons)


@pytest.mark.parametrize(
    ("hours", "swollen", "seams_open"),
    [(None, False, False), (12, None, False), (12, False, None)],
)
def test_board_not_looked_at_is_undecided(
    hours: float | None, swollen: bool | None, seams_open: bool | None
) -> None:
    assert wet_material("gypsum-board", 1, hours, swollen, seams_open).fate is Fate.UNDECIDED


def test_one_reason_to_remove_board_decides_though_others_are_unknown() -> None:
    assert wet_material("gypsum-board", 1, None, None, True).fate is Fate.REMOVE
    assert wet_material("gypsum-board", 2, None, None, None).fate is Fate.REMOVE


@pytest.mark.parametrize(
    ("material", "swollen", "fate"),
    [
        ("wood-boards", True, Fate.DRY),
        ("framing", False, Fate.DRY),
        ("plaster", False, Fate.DRY),
        ("plywood", False, Fate.DRY),
        ("plywood", True, Fate.REMOVE),
        ("plywood", None, Fate.UNDECIDED),
    ],
)
def test_wood_is_dried_unless_its_layers_part(
    material: str, swollen: bool | None, fate: Fate
) -> None:
    assert wet_material(material, 1, 12, swollen).fate is fate


@pytest.mark.parametrize(("hours", "told"), [(47, False), (48, True), (None, True)])
def test_wood_long_wet_is_searched_for_mold(hours: float | None, told: bool) -> None:
    reasons = wet_material("framing", 1, hours, is_swollen=False).reasons
    assert any("mold" in reason for reason in reasons) is told


@pytest.mark.parametrize("material", sorted(water_table().materials))
def test_nothing_soaked_in_foul_water_is_only_dried(material: str) -> None:
    result = wet_material(material, 3, 1, is_swollen=False)
    assert result.fate in (Fate.REMOVE, Fate.DISINFECT)
    assert result.reasons
    assert result.sources


def test_a_cut_above_the_last_line_takes_the_whole_wall() -> None:
    assert cut_height(40, 96).is_full_height
    assert not cut_height(20, 96).is_full_height
    assert cut_height(30, 48).is_full_height


def test_impossible_heights_are_refused() -> None:
    with pytest.raises(ValueError, match="wet height"):
        cut_height(97, 96)
    with pytest.raises(ValueError, match="wicked_in"):
        wetting_class(True, -1)


def test_an_unknown_material_is_refused_with_the_known_ones() -> None:
    with pytest.raises(ValueError, match="gypsum-board"):
        find_material("straw")
