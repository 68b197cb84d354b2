"""Figures that stand apart."""

from __future__ import annotations

import pytest

from leanto.bids.outlier import modified_z, outliers


@pytest.mark.parametrize(
    ("values", "odd"),
    [
        ([100.0, 105.0], []),
        ([100.0, 105.0, 190.0], []),
        ([100.0, 100.0, 201.0], [2]),
        ([100.0, 100.0, 200.0], []),
        ([100.0, 100.0, 49.0], [2]),
        ([100.0, 100.0, 50.0], []),
        # from five figures on by modified z: 0.6745 * 52 / 10 = 3.507, 0.6745 * 51 / 10 = 3.44
        ([90.0, 100.0, 110.0, 100.0, 90.0, 152.0, 110.0], [5]),
        ([90.0, 100.0, 110.0, 100.0, 90.0, 151.0, 110.0], []),
        # more than half alike: mean absolute deviation 20, z = 120 / (1.2533 * 20) = 4.79
        ([100.0, 100.0, 100.0, 100.0, 100.0, 220.0], [5]),
        ([100.0] * 6, []),
        ([0.0, 0.0, 5.0], []),
    ],
)
def test_far_figures_are_found(values: list[float], odd: list[int]) -> None:
    found = outliers(values, far=2.0)

    assert [at for at, one in enumerate(found) if one is not None] == odd


def test_an_outlier_says_on_which_side_it_stands_and_how_far() -> None:
    found = outliers([100.0, 110.0, 40.0], far=2.0)[2]

    assert found is not None
    assert (found.is_over, found.middle, found.measure) == (False, 100.0, "-60%")


def test_nothing_has_no_middle() -> None:
    with pytest.raises(ValueError, match="no values"):
        modified_z([])
