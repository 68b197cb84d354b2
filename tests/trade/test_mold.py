"""Mold by total area."""

from __future__ import annotations

import pytest

from leanto.trade.mold import mold_band


def test_patches_count_together() -> None:
    assert mold_band([4, 3]).size == "small"
    assert mold_band([4, 3, 3]).size == "medium"
    assert mold_band([60, 40.5]).size == "large"


def test_mold_in_the_fill_counts_as_large_whatever_its_area() -> None:
    band = mold_band([2], may_spread=True)
    assert band.size == "large"
    assert band.who == "mold professional"


def test_every_band_names_protection_and_sources() -> None:
    for area in (5, 50, 500):
        band = mold_band([area])
        assert "N-95" in band.protection
        assert band.method
        assert band.sources


def test_no_mold_asks_for_nothing() -> None:
    assert mold_band([]).method == ""


def test_a_negative_patch_is_refused() -> None:
    with pytest.raises(ValueError, match="area"):
        mold_band([4, -1])
