"""Layers, paths and limits of the heat computations."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.building.kinds import Cladding, Covering, Deck, Insulation, Lining
from leanto.trade.heat_loss import (
    fill_r,
    fitting_batt,
    framed_r,
    joist_framing_share,
    loss_btuh,
    parallel_r,
    series_r,
    wall_framing_share,
)
from leanto.trade.r_values import r_table

R = st.floats(0.01, 100)
SHARE = st.floats(0, 0.9)


@pytest.mark.parametrize("layers", [(), (1.0, -0.1), (float("nan"),)])
def test_no_layers_and_impossible_ones_are_refused(layers: tuple[float, ...]) -> None:
    with pytest.raises(ValueError, match="layers have an R"):
        series_r(layers)


@pytest.mark.parametrize("paths", [((0.5, 10.0),), ((1.1, 10.0), (-0.1, 5.0)), ((1.0, 0.0),)])
def test_paths_that_make_no_whole_are_refused(paths: tuple[tuple[float, float], ...]) -> None:
    with pytest.raises(ValueError, match="share"):
        parallel_r(paths)


@given(one=R, other=R, share=st.floats(0, 1))
def test_side_by_side_lies_between_its_paths(one: float, other: float, share: float) -> None:
    together = parallel_r(((share, one), (1 - share, other)))
    assert min(one, other) * (1 - 1e-9) <= together <= max(one, other) * (1 + 1e-9)


@given(fill=R, more=st.floats(0, 50), wood=R, share=SHARE)
def test_more_fill_never_holds_back_less(
    fill: float, more: float, wood: float, share: float
) -> None:
    faces = (0.68, 0.17)
    assert framed_r(faces, fill + more, wood, share) >= framed_r(faces, fill, wood, share) - 1e-9


@given(area=st.floats(0, 5000), r=R, more=st.floats(0, 50), delta=st.floats(0, 120))
def test_more_resistance_never_loses_more(area: float, r: float, more: float, delta: float) -> None:
    assert loss_btuh(area, r + more, delta) <= loss_btuh(area, r, delta) + 1e-9


@pytest.mark.parametrize(
    ("cavity_in", "r"), [(2.4, None), (2.5, 8), (3.5, 13), (3.99, 13), (5.5, 21), (12, 38)]
)
def test_the_batt_that_a_cavity_takes(cavity_in: float, r: float | None) -> None:
    batt = fitting_batt(cavity_in)
    assert (batt.r if batt else None) == r


@pytest.mark.parametrize(
    ("spacing_in", "share"), [(12, 0.25), (16, 0.25), (23.9, 0.25), (24, 0.22), (48, 0.22)]
)
def test_wider_studs_leave_less_wood(spacing_in: float, share: float) -> None:
    assert wall_framing_share(spacing_in) == share


def test_joists_are_their_own_share() -> None:
    assert joist_framing_share(1.5, 24) == pytest.approx(0.0625)
    with pytest.raises(ValueError, match="thinner"):
        joist_framing_share(24, 24)


def test_fill_counts_by_its_depth() -> None:
    assert fill_r(r_table().fill("batts"), 3.5) == pytest.approx(10.99)
    with pytest.raises(ValueError, match="depth"):
        fill_r(r_table().fill("batts"), -1)


@pytest.mark.parametrize(
    ("part", "names"),
    [
        ("lining", tuple(Lining)),
        ("cladding", tuple(Cladding)),
        ("covering", tuple(Covering)),
        ("deck", tuple(Deck)),
    ],
)
def test_every_face_of_a_building_has_a_value(part: str, names: tuple[str, ...]) -> None:
    for name in names:
        assert r_table().layer(part, str(name)).r >= 0  # type: ignore[arg-type]


def test_every_fill_that_can_be_named_has_a_value() -> None:
    for kind in Insulation:
        if kind not in (Insulation.NONE, Insulation.UNKNOWN):
            assert r_table().fill(kind.value).r_per_in > 0


@pytest.mark.parametrize("zone", [0, 9])
def test_there_are_eight_climate_zones(zone: int) -> None:
    with pytest.raises(ValueError, match="1 to 8"):
        r_table().target(zone)
