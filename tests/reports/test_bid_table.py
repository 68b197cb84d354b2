"""The bids side by side, in words and on paper."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from filled_bids import SMALL, fields

from leanto.bids.levelled import Base, Levelled
from leanto.bids.levelling import level
from leanto.bids.model import Allowance, Bid
from leanto.bids.reading.bid import bid_of
from leanto.building.model import Building
from leanto.money import Spread
from leanto.reports.blocks import Band, Bullets, Report, Table
from leanto.reports.contents.bids import MOST_BESIDE, bids_report, found_in
from leanto.reports.text import to_text

PROTECT, STRIP, SILL, SIDING, CIRCUIT = (one.item_id for one in SMALL.lines)


def bid(bidder: str, units: dict[str, str] | None = None, **more: str) -> Bid:
    return bid_of(fields(SMALL, bidder, units, **more), SMALL)


@pytest.fixture
def made() -> Levelled:
    base = Base(
        replace(SMALL, allowances=(Allowance("window", "Window", Decimal(900)),)),
        {one.item_id: Spread.of(100, 200, 300) for one in SMALL.lines},
        funds=Decimal(4_000),
    )
    return level(
        base,
        [
            bid("Alder", total="2,670", **{f"alt|{x.id}": "300" for x in SMALL.alternates}),
            bid("Birch", {CIRCUIT: "by others"}, total="2,600"),
            bid("Cedar", {SIDING: "30", SILL: "incl. in line 4"}, exclusions="Permits"),
        ],
    )


@pytest.fixture
def report(made: Levelled, shed: Building) -> Report:
    from datetime import date

    return bids_report(made, shed, date(2026, 6, 1))


def test_every_way_to_look_at_a_total_stands_on_top(report: Report) -> None:
    totals = next(block for block in report.blocks if isinstance(block, Table))
    rows = {row[0]: row[1:] for row in totals.rows if not isinstance(row, Band)}

    assert rows["As read"] == ("", "$2,670", "$2,600", "not stated")
    assert rows["Added up again"] == ("", "$2,670", "$2,650", "$3,330")
    assert rows["On one base"][1:3] == ("$2,670", "$2,670")
    assert rows["of that plugged"] == ("", "$0", "$20", "$0")
    assert rows["Base and all alternates"][1] == "$2,670"


def test_lines_stand_by_trade_with_marks_and_our_allowance(report: Report) -> None:
    lines = [block for block in report.blocks if isinstance(block, Table)][1]
    rows = {row[0]: row for row in lines.rows if not isinstance(row, Band) and row[0]}

    assert [row.text for row in lines.rows if isinstance(row, Band)] == [
        "Laborer",
        "Carpenter",
        "Electrician",
    ]
    assert rows["3"][2] == "$200\n$100 to $300"
    assert rows["3"][5] == "$0 i\nin another line"
    assert rows["4"][3:] == ("$400", "$400", "$1,200 !\n+200%")
    assert rows["5"][4] == "$20 p\nleft out by the bidder; median of 2 other bids"
    assert lines.foot[0][-3:] == ("$2,670", "$2,670", "$3,330")


def test_the_parts_of_a_column_add_up_to_its_total(made: Levelled) -> None:
    for at, one in enumerate(made.bids):
        lines = sum((line.cells[at].usd for line in made.lines), Decimal(0))
        added = sum((x.amount.usd or Decimal(0) for x in one.added), Decimal(0))
        assert lines + added + made.base.form.allowed == one.base


def test_what_a_bid_was_caught_at_is_said(made: Levelled) -> None:
    assert list(found_in(made.bids[1]))[:2] == [
        "Missing trade: no price for any line of the electrician.",
        "Arithmetic, total: stated $2,600.00, computed $2,650.00 (its amounts added up).",
    ]
    assert "Left out: Permits." in list(found_in(made.bids[2]))


def test_it_is_for_the_owner_and_chooses_nothing(report: Report) -> None:
    text = to_text(report, 110)

    assert report.footer == "For the owner. Not to be passed on to a bidder."
    assert "The table does not choose, and it gives no score." in text
    assert "To ask Birch" in text
    assert "Within the budget of $4,000, taken in order" in text


def test_many_bids_make_several_tables(shed: Building) -> None:
    from datetime import date

    bids = [bid(name) for name in ("A", "B", "C", "D", "E", "F")]

    report = bids_report(level(Base(SMALL), bids), shed, date(2026, 6, 1))

    tables = [block for block in report.blocks if isinstance(block, Table)]
    assert max(len(table.columns) for table in tables) == MOST_BESIDE + 3
    named = {column.title for table in tables for column in table.columns}
    assert {"A", "B", "C", "D", "E", "F"} <= named
    assert Bullets(()) not in report.blocks
