"""A named size measures what its milling says."""

from __future__ import annotations

import pytest

from leanto.trade.sawn_size import Surfacing, actual_size_in, sawn_sizes


def test_one_name_three_sizes() -> None:
    assert actual_size_in("2x8", Surfacing.FULL) == (2.0, 8.0)
    assert actual_size_in("2x8", Surfacing.OLD_DRESSED) == (1.625, 7.5)
    assert actual_size_in("2x8", Surfacing.DRESSED) == (1.5, 7.25)


def test_a_size_without_an_old_figure_sends_to_the_tape() -> None:
    with pytest.raises(ValueError, match="measure the piece"):
        actual_size_in("6x6", Surfacing.OLD_DRESSED)


def test_an_unknown_size_is_refused() -> None:
    with pytest.raises(ValueError, match="2x7"):
        actual_size_in("2x7")


def test_dressing_only_takes_off_and_took_off_less_before() -> None:
    names = [row.name for row in sawn_sizes().rows]
    assert len(names) == len(set(names))
    for row in sawn_sizes().rows:
        old = row.old_dressed_in or row.dressed_in
        for full, before, now in zip(row.nominal_in, old, row.dressed_in, strict=True):
            assert full > before >= now > 0
