"""The baseline of a chosen bid: its own figures and nothing plugged."""

from __future__ import annotations

from decimal import Decimal

import pytest
from filled_bids import SMALL, fields

from leanto.bids.levelled import Base, Levelled
from leanto.bids.levelling import level
from leanto.bids.model import Bid
from leanto.bids.reading.bid import bid_of
from leanto.contract.baseline import agreed_lines, agreed_rates, open_lines, total_of
from leanto.money import Spread

PROTECT, STRIP, SILL, SIDING, CIRCUIT = (one.item_id for one in SMALL.lines)
KEEP, DOOR = (one.id for one in SMALL.alternates)


def bid(bidder: str, units: dict[str, str] | None = None, **more: str) -> Bid:
    return bid_of(fields(SMALL, bidder, units, **more), SMALL)


def made(*bids: Bid) -> Levelled:
    return level(Base(SMALL, {SILL: Spread.of(100, 150, 200)}), bids)


def test_lines_hold_the_bidders_figures_and_ours_beside_them() -> None:
    lines = agreed_lines(made(bid("Alder")), 0)

    by_id = {line.id: line for line in lines}
    assert {id_: line.usd for id_, line in by_id.items()} == {
        one.item_id: 10 * Decimal(str(one.quantity)) for one in SMALL.lines
    }
    assert (by_id[SILL].ours_usd, by_id[STRIP].ours_usd) == (150, None)
    assert total_of(lines) == 1_770


@pytest.mark.parametrize(
    ("text", "said", "is_open"),
    [
        ("", "left blank", True),
        ("by others", "left out by the bidder", True),
        ("incl. in line 3", "in another line", False),
        ("1.200", "could not be read", True),
    ],
)
def test_a_line_without_a_price_holds_nothing_though_the_table_plugs_it(
    text: str, said: str, is_open: bool
) -> None:
    table = made(bid("Alder", {CIRCUIT: text}), bid("Birch"))

    lines = agreed_lines(table, 0)

    circuit = next(line for line in lines if line.id == CIRCUIT)
    assert (circuit.usd, circuit.said) == (0, said)
    assert [line.id for line in open_lines(lines)] == ([CIRCUIT] if is_open else [])
    assert total_of(lines) == 1_750


def test_an_arithmetic_error_is_agreed_as_unit_price_times_quantity() -> None:
    wrong = bid("Alder", **{f"amount|{SILL}": "150"})

    sill = next(line for line in agreed_lines(made(wrong), 0) if line.id == SILL)

    assert sill.usd == 140


def test_alternates_that_are_taken_add_and_deduct() -> None:
    table = made(bid("Alder", **{f"alt|{KEEP}": "300", f"alt|{DOOR}": "450"}))

    lines = agreed_lines(table, 0, ["A1", "A2"])

    assert [(line.number, line.usd) for line in lines[-2:]] == [("A1", -300), ("A2", 450)]
    assert total_of(lines) == 1_770 - 300 + 450
    with pytest.raises(ValueError, match="not priced"):
        agreed_lines(made(bid("Alder")), 0, ["A1"])


def test_another_sum_leaves_a_line_for_the_step() -> None:
    lines = agreed_lines(made(bid("Alder")), 0, (), Decimal(1_700))

    assert (lines[-1].kind, lines[-1].usd, total_of(lines)) == ("difference", -70, 1_700)
    assert len(agreed_lines(made(bid("Alder")), 0, (), Decimal(1_770))) == len(SMALL.lines)


def test_added_lines_are_in_the_sum_and_unit_prices_beside_it() -> None:
    more = {"added1|text": "Container", "added1|amount": "120", "askunit|sister-stud": "45"}
    table = made(bid("Alder", **more))

    lines = agreed_lines(table, 0)

    assert (lines[-1].number, lines[-1].usd) == ("X1", 120)
    assert [(rate.id, rate.usd) for rate in agreed_rates(table, 0)] == [("sister-stud", 45)]
