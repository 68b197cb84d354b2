"""NFPA 70 (National Electrical Code) 2020, 240.4(D) and 240.6(A). Seen. 240.4(B) from memory."""

from __future__ import annotations

import pytest

from leanto.trade.wiring.conductor import Column, Metal
from leanto.trade.wiring.confirm import Verdict
from leanto.trade.wiring.overcurrent import (
    check_rating,
    largest_rating_a,
    overcurrent_table,
    rating_at_least_a,
    small_conductor_limit_a,
)

# fmt: off
STANDARD = [
    15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300,
    350, 400, 450, 500, 600,
]
# fmt: on
SMALL: list[tuple[str, Metal, int]] = [
    ("14", "copper", 15),
    ("12", "copper", 20),
    ("10", "copper", 30),
    ("12", "aluminum", 15),
    ("10", "aluminum", 25),
]


@pytest.mark.published("NFPA 70 (National Electrical Code), 240 overcurrent", "seen")
def test_standard_ratings_are_the_printed_list() -> None:
    assert tuple(STANDARD) == overcurrent_table().standard_ratings_a


@pytest.mark.published("NFPA 70 (National Electrical Code), 240 overcurrent", "seen")
@pytest.mark.parametrize(("size", "metal", "limit_a"), SMALL)
def test_small_conductor_limit_has_two_sides(size: str, metal: Metal, limit_a: int) -> None:
    assert limit_a == small_conductor_limit_a(size, metal)
    columns: tuple[Column, Column, Column] = (60, 75, 90)
    for column in columns:  # the limit holds in every column
        assert limit_a == largest_rating_a(size, metal, column, several_receptacles=False)
    above = STANDARD[STANDARD.index(limit_a) + 1]
    assert check_rating(limit_a, size, metal).verdict is Verdict.PASSES
    assert check_rating(above, size, metal).verdict is Verdict.DOES_NOT_PASS


@pytest.mark.published("NFPA 70 (National Electrical Code), 240 overcurrent", "seen")
def test_95_a_continuous_takes_the_125_a_device() -> None:
    # 2012 example of three sizes: 95 x 1.25 = 118.75 A -> 125 A. Seen.
    assert rating_at_least_a(95 * 1.25) == 125


@pytest.mark.published("NFPA 70 (National Electrical Code), 240 overcurrent", "from memory")
@pytest.mark.parametrize(
    ("size", "several_receptacles", "limit_a"),
    [
        ("6", True, 50),  # 55 A at 60 C: standard rating not above it
        ("6", False, 60),  # next standard rating up, 240.4(B)
        ("8", False, 40),  # 40 A is a standard rating: nothing to go up to
    ],
)
def test_next_size_up_is_open_to_a_feeder_only(
    size: str, several_receptacles: bool, limit_a: int
) -> None:
    assert limit_a == largest_rating_a(size, "copper", 60, several_receptacles=several_receptacles)
