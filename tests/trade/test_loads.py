"""Dead loads added up, and the words the building is described with."""

from __future__ import annotations

import pytest

from leanto.building.kinds import Covering, Deck, Insulation, Lining, Use
from leanto.trade.loads import dead_load, floor_use, framing_psf, load_table


def test_two_layers_on_boards_and_rafters() -> None:
    load = dead_load(
        [("covering", "asphalt shingle", 2), ("deck", "boards", 1)], framing_psf(1.5, 5.5, 24)
    )
    assert load.psf == pytest.approx(2 * 2.0 + 2.3 + 0.917, abs=0.001)
    assert any("2 x 2 = 4.0 psf" in reason for reason in load.reasons)
    assert any("from memory" in reason for reason in load.reasons)


def test_framing_weighs_by_its_volume() -> None:
    """A 2x6 of 8.25 sq in. at 16 in.: 8.25/144 x 32 x 12/16."""
    assert framing_psf(1.5, 5.5, 16) == pytest.approx(1.375)
    with pytest.raises(ValueError, match="more than zero"):
        framing_psf(1.5, 0, 16)


def test_every_covering_deck_lining_and_insulation_has_a_weight() -> None:
    for covering in Covering:
        assert dead_load([("covering", covering, 1)]).psf > 0
    for deck in Deck:
        assert dead_load([("deck", deck, 1)]).psf > 0
    for lining in Lining:
        assert (dead_load([("lining", lining, 1)]).psf > 0) == (lining is not Lining.NONE)
    for fill in Insulation:
        assert (dead_load([("insulation", fill, 1)]).psf > 0) == (fill is not Insulation.NONE)


def test_every_use_has_a_floor_load() -> None:
    for use in Use:
        assert floor_use(use).live_psf >= 30


def test_what_the_table_lacks_is_refused() -> None:
    with pytest.raises(ValueError, match="no weight"):
        dead_load([("covering", "thatch", 1)])
    with pytest.raises(ValueError, match="layers"):
        dead_load([("covering", "slate", -1)])
    with pytest.raises(ValueError, match="no floor load"):
        floor_use("ballroom")


def test_uses_outside_the_joist_tables_say_why() -> None:
    for row in load_table().floor_uses:
        assert row.by_table or row.note
