"""Calls merge into repair items and nothing is counted twice."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_shed import SHED, make_work

from leanto.building.load import parse_building
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of
from leanto.rules.model import Take
from leanto.scope.build import build_scope
from leanto.scope.call import Call
from leanto.scope.mark import Mark
from leanto.scope.purchases import apart, together
from leanto.scope.work import Work

NORTH_IN, NORTH_OUT = "main.north.inside", "main.north.outside"


def _scope(calls: list[Call], surfaces: dict[str, Surface], **changes: object):  # type: ignore[no-untyped-def]
    return build_scope(calls, surfaces, {"patch": make_work("patch", **changes)}).items


def test_two_overlapping_stains_are_patched_once(surfaces: dict[str, Surface]) -> None:
    # Studs every 2 ft: 3..5 widens to 2..6, 4..7 to 4..8; together 2..8, 6 ft by 3 ft.
    calls = [
        Call("patch", NORTH_IN, Rectangle(3, 1, 2, 3), Take.AREA, finding_id="a"),
        Call("patch", NORTH_IN, Rectangle(4, 1, 3, 3), Take.AREA, finding_id="b"),
    ]
    (item,) = _scope(calls, surfaces)
    assert item.quantity == pytest.approx(18.0)
    assert item.findings == ("a", "b")
    assert item.surface_id == NORTH_IN


def test_the_same_stud_seen_from_both_faces_is_sistered_once(surfaces: dict[str, Surface]) -> None:
    # A zone 2..4 ft from the left inside is 20..22 ft from the left outside on a 24 ft wall.
    calls = [
        Call("patch", NORTH_IN, Rectangle(2, 0, 2, 4), Take.MEMBERS),
        Call("patch", NORTH_OUT, Rectangle(20, 0, 2, 4), Take.MEMBERS),
    ]
    both = _scope(calls, surfaces, scope="wall", unit="each")
    alone = _scope(calls[:1], surfaces, scope="wall", unit="each")
    assert [item.quantity for item in both] == [item.quantity for item in alone] == [2.0]


def test_work_on_one_face_stays_apart_from_the_other(surfaces: dict[str, Surface]) -> None:
    calls = [
        Call("patch", NORTH_IN, Rectangle(2, 0, 2, 4), Take.AREA),
        Call("patch", NORTH_OUT, Rectangle(20, 0, 2, 4), Take.AREA),
    ]
    assert {item.surface_id for item in _scope(calls, surfaces)} == {NORTH_IN, NORTH_OUT}


def test_a_whole_surface_swallows_its_zones(surfaces: dict[str, Surface]) -> None:
    calls = [
        Call("patch", NORTH_IN, Rectangle(3, 1, 2, 3), Take.AREA),
        Call("patch", NORTH_IN, None, Take.AREA),
    ]
    (item,) = _scope(calls, surfaces)
    assert item.quantity == pytest.approx(surfaces[NORTH_IN].net_area_sqft)
    assert item.zones == ()


def test_openings_are_no_area_to_patch(surfaces: dict[str, Surface]) -> None:
    (item,) = _scope([Call("patch", "main.south.inside", None, Take.SURFACE)], surfaces)
    assert item.quantity == pytest.approx(24 * 8 - 3 * (6 + 8 / 12))


@pytest.mark.parametrize(
    ("quantity", "waste_pct", "expected", "purchases"),
    [
        (32.0, 0, 32.0, 1),
        (32.0000001, 0, 32.0, 1),  # floating noise buys nothing
        (32.1, 0, 64.0, 2),
        (60.0, 10, 96.0, 3),  # 66 sq ft
        (58.18, 10, 64.0, 2),  # 63.998 sq ft
    ],
)
def test_quantities_round_up_to_whole_sheets(
    surfaces: dict[str, Surface],
    quantity: float,
    waste_pct: float,
    expected: float,
    purchases: int,
) -> None:
    sheet = {"size": 32, "name": "4x8 sheet"}
    (item,) = _scope(
        [Call("patch", NORTH_IN, quantity=quantity)], surfaces, purchase=sheet, waste_pct=waste_pct
    )
    assert (item.bought, item.purchases) == (expected, purchases)


def test_a_purchase_serves_all_places_of_a_work(surfaces: dict[str, Surface]) -> None:
    # 88 and 80 sq ft with a tenth of waste: 184.8 sq ft, one roll for both.
    roll = {"size": 200, "name": "200 sq ft roll"}
    calls = [
        Call("patch", "main.roof.north", quantity=80.0),
        Call("patch", "main.roof.south", quantity=88.0),
    ]
    north, south = _scope(calls, surfaces, purchase=roll, waste_pct=10)
    assert (north.quantity, south.quantity) == (80.0, 88.0)
    assert (north.bought, south.bought) == (pytest.approx(88.0), pytest.approx(112.0))
    assert (north.purchases, south.purchases) == (1, 1)
    assert north.is_bought_together
    (alone,) = _scope(calls[:1], surfaces, purchase=roll, waste_pct=10)
    assert (alone.bought, alone.is_bought_together) == (200.0, False)


def test_pieces_at_each_place_stay_whole(surfaces: dict[str, Surface]) -> None:
    calls = [Call("patch", s, quantity=3.0) for s in ("main.roof.north", "main.roof.south")]
    items = _scope(calls, surfaces, unit="each", waste_pct=10)
    assert [item.bought for item in items] == [4.0, 4.0]


def test_the_owner_buys_apart(surfaces: dict[str, Surface]) -> None:
    roll = {"size": 100, "name": "roll"}
    calls = [Call("patch", s, quantity=30.0) for s in ("main.roof.north", "main.roof.south")]
    north, south = _scope(calls, surfaces, purchase=roll)
    apart_from = together([replace(north, mark=Mark.BY_OWNER), south])
    assert [item.bought for item in apart_from] == [100.0, 100.0]
    assert [apart(item).bought for item in (north, south)] == [100.0, 100.0]


@given(
    quantities=st.lists(st.floats(0.1, 500), min_size=1, max_size=8),
    size=st.floats(0.5, 200),
    waste_pct=st.integers(0, 50),
)
def test_what_is_bought_adds_up_to_whole_purchases(
    quantities: list[float], size: float, waste_pct: int
) -> None:
    surfaces = {s.id: s for s in surfaces_of(parse_building(SHED, "shed.yaml"))}
    calls = [
        Call("patch", place, quantity=q) for place, q in zip(surfaces, quantities, strict=False)
    ]
    items = _scope(calls, surfaces, purchase={"size": size, "name": "roll"}, waste_pct=waste_pct)
    needed = sum(quantities) * (1 + waste_pct / 100)
    count = items[0].purchases
    assert {item.purchases for item in items} == {count}
    assert sum(item.bought for item in items) == pytest.approx(count * size)
    assert (count - 1) * size < needed + 1e-3
    assert needed <= count * size + 1e-3
    assert all(i.bought >= i.quantity * (1 + waste_pct / 100) - 1e-3 for i in items)


def test_set_up_is_paid_once_however_many_ask(surfaces: dict[str, Surface]) -> None:
    askers = (NORTH_IN, NORTH_OUT, NORTH_OUT)
    calls = [Call("patch", surface_id, quantity=1.0) for surface_id in askers]
    (item,) = _scope(calls, surfaces, scope="building", once=True)
    assert item.quantity == 1.0


def test_observations_of_one_thing_count_as_the_largest(surfaces: dict[str, Surface]) -> None:
    calls = [Call("patch", NORTH_IN, quantity=q, largest=True) for q in (3.0, 7.0, 5.0)]
    (item,) = _scope(calls, surfaces)
    assert item.quantity == 7.0


def test_items_stand_in_order_of_work(surfaces: dict[str, Surface]) -> None:
    phases = {"paint": "finish", "shore": "protect and make safe", "sister": "structure"}
    works: dict[str, Work] = {name: make_work(name, phase=phase) for name, phase in phases.items()}
    calls = [Call(name, NORTH_IN, quantity=1.0) for name in phases]
    ordered = [item.work.id for item in build_scope(calls, surfaces, works).items]
    assert ordered == ["shore", "sister", "paint"]


@st.composite
def _zones(draw: st.DrawFn) -> list[Rectangle]:
    count = draw(st.integers(1, 6))
    inches = st.integers(0, 22 * 12)
    return [
        Rectangle(
            draw(inches) / 12,
            draw(st.integers(0, 6 * 12)) / 12,
            draw(st.integers(1, 24)) / 12,
            draw(st.integers(1, 24)) / 12,
        )
        for _ in range(count)
    ]


@given(zones=_zones(), repeats=st.integers(1, 3), seed=st.randoms(use_true_random=False))
def test_order_and_repetition_of_zones_change_no_quantity(zones, repeats, seed) -> None:  # type: ignore[no-untyped-def]
    surfaces = {s.id: s for s in surfaces_of(parse_building(SHED, "shed.yaml"))}
    once = [Call("patch", NORTH_IN, zone, Take.AREA) for zone in zones]
    again = once * repeats
    seed.shuffle(again)
    (first,), (second,) = _scope(once, surfaces), _scope(again, surfaces)
    assert second.quantity == pytest.approx(first.quantity)
    assert first.quantity <= surfaces[NORTH_IN].net_area_sqft + 1e-9
    assert first.quantity >= max(zone.area_sqft for zone in zones) - 1e-9
