"""Mold bands, water categories and drying limits against public guides."""

from __future__ import annotations

import pytest

from leanto.trade.mold import MoldSize, mold_band
from leanto.trade.water import Fate, cut_height, water_category, wet_material, wetting_class
from leanto.trade.wetting import Category


# EPA 402-K-01-001: small under 10 sq ft, medium to 100, large over 100. Seen, by a quoting page.
@pytest.mark.published("EPA 402-K-01-001, mold", "seen")
@pytest.mark.parametrize(
    ("area_sqft", "size"),
    [(0, "none"), (9.9, "small"), (10, "medium"), (100, "medium"), (100.1, "large")],
)
def test_mold_bands(area_sqft: float, size: MoldSize) -> None:
    assert mold_band([area_sqft]).size == size


# Massachusetts quick reference on water damage: clean, gray, foul with rising water. Seen.
@pytest.mark.published("Flood and water damage guides", "seen")
@pytest.mark.parametrize(
    ("origin", "category"),
    [("supply-pipe", 1), ("rain", 1), ("gray-water", 2), ("sewage", 3), ("stream", 3)],
)
def test_water_categories(origin: str, category: int) -> None:
    assert water_category(origin, hours_wet=12).category == category


# Restoration page after ANSI/IICRC S500: class 2 wicks under 24 in., class 3 over. Seen.
@pytest.mark.published("Flood and water damage guides", "seen")
@pytest.mark.parametrize(
    ("covers_room", "wicked_in", "overhead", "deep", "number"),
    [
        (False, 6, False, False, 1),
        (True, 23.9, False, False, 2),
        (True, 24.1, False, False, 3),
        (False, 0, True, False, 3),
        (True, 6, False, True, 4),
    ],
)
def test_wetting_classes(
    covers_room: bool, wicked_in: float, overhead: bool, deep: bool, number: int
) -> None:
    assert wetting_class(covers_room, wicked_in, overhead, deep) == number


@pytest.mark.published("EPA 402-K-01-001, mold", "seen")
@pytest.mark.parametrize(
    ("material", "fate"),
    [
        # EPA 402-K-01-001, Table 1, by a quoting page: discard these, dry those. Seen.
        ("fiberglass", Fate.REMOVE),
        ("cellulose", Fate.REMOVE),
        ("ceiling-tile", Fate.REMOVE),
        ("concrete", Fate.CLEAN),
        ("hard-surface", Fate.CLEAN),
    ],
)
def test_wet_with_clean_water(material: str, fate: Fate) -> None:
    assert wet_material(material, 1, hours_wet=12, is_swollen=False).fate is fate


@pytest.mark.published("EPA 402-K-01-001, mold", "from memory")
@pytest.mark.parametrize(
    ("category", "hours", "swollen", "seams_open", "fate"),
    [
        # EPA 402-K-01-001, Table 1: gypsum board is dried in place only if the water was clean, it
        # took under 48 hours, nothing is swollen and seams are intact. From memory.
        (1, 47.9, False, False, Fate.DRY),
        (1, 48, False, False, Fate.REMOVE),
        (1, 12, True, False, Fate.REMOVE),
        (1, 12, False, True, Fate.REMOVE),
        (2, 12, False, False, Fate.REMOVE),
        # ANSI/IICRC S500: foul water, porous finish out. From memory.
        (3, 1, False, False, Fate.REMOVE),
    ],
)
def test_gypsum_board(
    category: Category, hours: float, swollen: bool, seams_open: bool, fate: Fate
) -> None:
    assert wet_material("gypsum-board", category, hours, swollen, seams_open).fate is fate


@pytest.mark.published("Flood and water damage guides", "seen")
def test_studs_stay_and_board_goes_after_a_flood() -> None:
    # Repairing Your Flooded Home, FEMA and American Red Cross, page 18. Seen.
    assert wet_material("framing", 3, 72, is_swollen=False).fate is Fate.DISINFECT
    board = wet_material("gypsum-board", 1, 12, is_swollen=False, was_under_water=True)
    assert board.fate is Fate.REMOVE


# FEMA and LSU AgCenter flood guides: 12 in. above the highest wet reading, on the 2 or 4 ft line.
# From memory.
@pytest.mark.published("Flood and water damage guides", "from memory")
@pytest.mark.parametrize(
    ("wet_in", "cut_in"), [(0, 24), (12, 24), (12.1, 48), (36, 48), (36.1, 96), (96, 96)]
)
def test_cut_height(wet_in: float, cut_in: float) -> None:
    assert cut_height(wet_in, wall_in=96).height_in == cut_in
