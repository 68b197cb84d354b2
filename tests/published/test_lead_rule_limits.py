"""The limits of the federal renovation rule against its text and its published answers."""

from __future__ import annotations

import pytest

from leanto.trade.lead_paint import disturbed_paint


# 40 CFR 745.83, minor repair and maintenance: 6 sq ft or less a room, 20 sq ft or less outside,
# no window replacement, no demolition. Text seen, quoted on a trade page and by EPA.
@pytest.mark.published("40 CFR 745.83 and EPA answers", "seen")
@pytest.mark.parametrize(
    ("inside", "outside", "windows", "demolishes", "is_over"),
    [
        (6.0, 20.0, False, False, False),
        (6.01, 0.0, False, False, True),
        (0.0, 20.01, False, False, True),
        (0.0, 0.0, True, False, True),
        (0.0, 0.0, False, True, True),
    ],
)
def test_minor_work(
    inside: float, outside: float, windows: bool, demolishes: bool, is_over: bool
) -> None:
    answer = disturbed_paint(
        1938, {"room": inside}, outside, replaces_windows=windows, demolishes=demolishes
    )
    assert answer.is_suspect
    assert answer.is_over is is_over


@pytest.mark.published("40 CFR 745.83 and EPA answers", "seen")
def test_rooms_count_one_by_one() -> None:
    # "Per room": two rooms of 5 sq ft each stay within the limit. 40 CFR 745.83. Seen.
    assert not disturbed_paint(1938, {"one": 5.0, "two": 5.0}, 0.0).is_over


@pytest.mark.published("40 CFR 745.83 and EPA answers", "seen")
def test_the_sides_outside_count_together() -> None:
    # EPA frequent question 23002-18379: 20 sq ft a side on several sides is not minor. Seen.
    assert disturbed_paint(1938, {}, 15.0 + 15.0).is_over


@pytest.mark.published("40 CFR 745.83 and EPA answers", "seen")
@pytest.mark.parametrize(("year", "is_suspect"), [(1977, True), (1978, False)])
def test_the_year(year: int, is_suspect: bool) -> None:
    # The rule covers housing built before 1978. Seen.
    assert disturbed_paint(year, {"room": 500.0}, 500.0).is_suspect is is_suspect
