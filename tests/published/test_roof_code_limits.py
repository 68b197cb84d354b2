"""Least slopes, layers, flashing and curbs against the model codes and public manuals."""

from __future__ import annotations

import pytest

from leanto.trade.outcome import Outcome
from leanto.trade.roof_rules import RoofAction, check_recover, check_slope, patch_or_replace
from leanto.trade.roofing import underlayment_layers
from leanto.trade.step_flashing import check_cricket, check_curb_height

PASSES, FAILS, UNDECIDED = Outcome.PASSES, Outcome.FAILS, Outcome.UNDECIDED


@pytest.mark.published("IRC, IBC and state roof slopes", "seen")
@pytest.mark.parametrize(
    ("covering", "rise", "outcome"),
    [
        # International Residential Code R905.2: asphalt shingles 2 in 12. Seen.
        ("asphalt-strip", 2, PASSES),
        ("asphalt-strip", 1.9, FAILS),
        # International Building Code 1507.4: lapped metal 3, sealed laps 1/2. Seen.
        ("metal-lapped", 3, PASSES),
        ("metal-lapped", 2.9, FAILS),
        ("metal-lapped-sealed", 0.5, PASSES),
        ("metal-lapped-sealed", 0.4, FAILS),
        # International Building Code chapter 15, list of least slopes. Seen.
        ("metal-standing-seam", 0.25, PASSES),
        ("metal-standing-seam", 0.2, FAILS),
        ("mineral-roll", 1, PASSES),
        ("mineral-roll", 0.9, FAILS),
        ("slate", 4, PASSES),
        ("slate", 3.9, FAILS),
        ("wood-shingle", 3, PASSES),
        ("wood-shingle", 2.9, FAILS),
        # Shakes: IBC 1507.9 4 in 12, seen; IRC R905.8.2 3 in 12, from memory. Between, they differ.
        ("wood-shake", 4, PASSES),
        pytest.param("wood-shake", 3.5, UNDECIDED, marks=pytest.mark.row("from memory")),
        pytest.param("wood-shake", 2.9, FAILS, marks=pytest.mark.row("from memory")),
        # International Residential Code R905.3.2: tile 2 1/2. From memory.
        pytest.param("tile", 2.5, PASSES, marks=pytest.mark.row("from memory")),
        pytest.param("tile", 2.4, FAILS, marks=pytest.mark.row("from memory")),
        # Minnesota Rules 1305.1507: built-up, modified bitumen, single ply 1/4. Seen.
        ("built-up", 0.25, PASSES),
        ("modified-bitumen", 0.2, FAILS),
        ("single-ply", 0.25, PASSES),
        # No rule was found.
        pytest.param("fiber-cement", 6, UNDECIDED, marks=pytest.mark.row("own")),
    ],
)
def test_least_slope(covering: str, rise: float, outcome: Outcome) -> None:
    assert check_slope(covering, rise).outcome is outcome


# International Residential Code R905.2 and NAVEDTRA 14045, roofing specification 3.2: two layers
# from 2 to below 4 in 12, one from 4. Seen.
@pytest.mark.published("International Residential Code, roofs", "seen")
@pytest.mark.parametrize(("rise", "layers"), [(2, 2), (3.9, 2), (4, 1), (12, 1)])
def test_layers_of_underlayment(rise: float, layers: int) -> None:
    assert underlayment_layers(rise) == layers


@pytest.mark.published("International Residential Code, roofs", "seen")
@pytest.mark.parametrize(
    ("existing", "layers", "soaked", "decayed", "outcome"),
    [
        # International Residential Code R907.3, 2006: no new roof over two or more, over a soaked
        # or decayed base, over shakes, slate, tile or asbestos cement. Seen.
        ("asphalt-strip", 1, False, False, PASSES),
        ("asphalt-strip", 2, False, False, FAILS),
        ("asphalt-strip", 1, True, False, FAILS),
        ("asphalt-strip", 1, False, True, FAILS),
        ("wood-shake", 1, False, False, FAILS),
        ("slate", 1, False, False, FAILS),
        ("tile", 1, False, False, FAILS),
        ("fiber-cement", 1, False, False, FAILS),
        ("wood-shingle", 1, False, False, PASSES),
    ],
)
def test_what_a_new_roof_may_go_over(
    existing: str, layers: int, soaked: bool, decayed: bool, outcome: Outcome
) -> None:
    assert check_recover(existing, layers, soaked, decayed).outcome is outcome


@pytest.mark.published("NAVFAC MO-322", "seen")
def test_slate_is_replaced_at_a_quarter_missing() -> None:
    # NAVFAC MO-322, volume 2, 8.3: slate is replaced at 25 percent or more missing. Seen.
    at_limit = patch_or_replace("slate", 25, is_past_repair=False, life_used=0.5)
    assert at_limit.action is RoofAction.REPLACE
    assert "MO-322" in at_limit.sources[0].title
    below = patch_or_replace("slate", 24.9, is_past_repair=False, life_used=0.5)
    assert below.action is RoofAction.PATCH


# International Residential Code, 2003: cricket behind chimneys wider than 30 in. Seen.
@pytest.mark.published("International Residential Code, roofs", "seen")
@pytest.mark.parametrize(("across_in", "needed"), [(30, False), (30.1, True), (16, False)])
def test_cricket(across_in: float, needed: bool) -> None:
    assert check_cricket(across_in).is_required is needed


# Ontario Building Code 9.26.4.8: up the chimney 1/6 of its width, at least 6 in. Seen.
@pytest.mark.published("Ontario Building Code 9.26", "seen")
@pytest.mark.parametrize(("across_in", "high_in"), [(30, 6), (36, 6), (48, 8)])
def test_high_back_in_place_of_a_cricket(across_in: float, high_in: float) -> None:
    assert check_cricket(across_in).high_back_in == pytest.approx(high_in)


# Examination notes on IBC (below 45 degrees) and IRC (3 in 12 and less): curb of 4 in. Seen.
@pytest.mark.published("International Residential Code, roofs", "seen")
@pytest.mark.parametrize(
    ("curb_in", "rise", "outcome"),
    [
        (4, 3, PASSES),
        (3.9, 3, FAILS),
        (3.9, 3.1, UNDECIDED),
        (3.9, 11.9, UNDECIDED),
        (0, 12, PASSES),
    ],
)
def test_skylight_curb(curb_in: float, rise: float, outcome: Outcome) -> None:
    assert check_curb_height(curb_in, rise).outcome is outcome
