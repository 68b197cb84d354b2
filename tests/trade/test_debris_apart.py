"""What may not go with the debris."""

from __future__ import annotations

import pytest

from leanto.trade.debris_apart import ALWAYS, HEAVY, PAINTED, expected_in, kept_apart
from leanto.trade.debris_table import When, debris_table


def expected_ids(*when: When) -> list[str]:
    return [one.row.id for one in kept_apart(when) if one.is_expected]


def test_nothing_is_left_out_and_the_expected_stands_first() -> None:
    all_rows = {row.id for row in debris_table().apart}
    for when in ((), ("old paint",), ("asbestos suspect", "heavy")):
        found = kept_apart(when)  # type: ignore[arg-type]
        assert {one.row.id for one in found} == all_rows
        flags = [one.is_expected for one in found]
        assert flags == sorted(flags, reverse=True)


def test_each_reason_brings_up_its_own_row() -> None:
    assert expected_ids() == []
    assert expected_ids("old paint") == ["old-paint"]
    assert expected_ids("asbestos suspect", "treated wood") == ["asbestos", "treated-wood"]
    reasons = {row.when for row in debris_table().apart}
    assert reasons == {"asbestos suspect", "old paint", "treated wood", "fouled", "heavy", ALWAYS}


@pytest.mark.parametrize(
    ("materials", "year", "facts", "expected"),
    [
        # Lead: paint from before 1978, 40 CFR 745, seen.
        (("boards",), 1977, {}, ("old paint",)),
        (("boards",), 1978, {}, ()),
        (("boards",), None, {}, ("old paint",)),
        (("boards",), 1938, {"paint_cleared": True}, ()),
        (("insulation",), 1938, {}, ()),
        (("plaster",), 1990, {}, ("heavy",)),
        (("slate",), 1938, {}, ("heavy",)),
        (("asphalt-shingles",), 1938, {"asbestos_suspect": True}, ("asbestos suspect",)),
        ((), 1990, {"treated_wood": True, "fouled": True}, ("treated wood", "fouled")),
    ],
)
def test_what_a_building_makes_one_expect(
    materials: tuple[str, ...], year: int | None, facts: dict[str, bool], expected: tuple[str, ...]
) -> None:
    assert expected_in(materials, year, **facts) == expected


def test_the_named_materials_are_rows_of_the_table() -> None:
    assert set(debris_table().materials) >= PAINTED | HEAVY


def test_every_row_says_where_it_goes_who_acts_and_its_source() -> None:
    for one in kept_apart(()):
        assert one.row.instead.endswith(".") and one.row.who
        assert one.source.title
