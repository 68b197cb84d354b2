"""Bids on one base: arithmetic, plugs, what stands apart, and what is asked."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from filled_bids import SMALL, fields, form, line

from leanto.bids.figure import How, figure_of
from leanto.bids.hidden_work import HiddenWork
from leanto.bids.in_funds import taken_in_order
from leanto.bids.levelled import Base, Levelled
from leanto.bids.levelling import level
from leanto.bids.model import Amount, Bid, BidEntry, BidForm, State
from leanto.bids.reading.bid import bid_of
from leanto.bids.unbalanced import unbalanced
from leanto.money import Spread
from leanto.scope.work import Phase, Trade

PROTECT, STRIP, SILL, SIDING, CIRCUIT = (one.item_id for one in SMALL.lines)
QUANTITIES = {one.item_id: one.quantity for one in SMALL.lines}


def bid(bidder: str = "Alder", of: BidForm = SMALL, units: object = None, **more: str) -> Bid:
    given = units if isinstance(units, dict) else {}
    return bid_of(fields(of, bidder, given, **more), of)


def levelled(*bids: Bid, ours: dict[str, Spread] | None = None, **more: object) -> Levelled:
    return level(Base(SMALL, ours or {}, **more), bids)  # type: ignore[arg-type]


def three(odd: Bid) -> Levelled:
    """Two plain bids and one to look at, which stands last."""
    return levelled(bid("Birch"), bid("Cedar"), odd)


@pytest.mark.parametrize(
    ("entry", "how", "written", "counted"),
    [
        (BidEntry(SILL, Amount.of(140)), How.PRICED, 140, 140),
        (BidEntry(SILL, unit_price=Amount.of(10)), How.FROM_UNIT, 140, 140),
        (BidEntry(SILL, Amount.of(140), Amount.of(10)), How.PRICED, 140, 140),
        (BidEntry(SILL, Amount.of(150), Amount.of(10)), How.CORRECTED, 150, 140),
        # rounded to dollars, and a unit price that was rounded to cents: no fault
        (BidEntry(SILL, Amount.of("117"), Amount.of("8.33")), How.PRICED, 117, 117),
        (BidEntry(SILL, Amount.of("116.69"), Amount.of("8.33")), How.PRICED, "116.69", "116.69"),
        (BidEntry(SILL, Amount.of("118"), Amount.of("8.33")), How.CORRECTED, 118, "116.62"),
        (BidEntry(SILL, Amount.of(0)), How.PRICED, 0, 0),
        (BidEntry(SILL, Amount.of(70), quantity=7), How.RESCALED, 70, 140),
        (BidEntry(SILL, unit_price=Amount.of(10), quantity=7), How.RESCALED, 70, 140),
    ],
)
def test_a_unit_price_goes_before_its_extension(
    entry: BidEntry, how: How, written: object, counted: object
) -> None:
    figure = figure_of(SMALL.lines[2], [entry])

    assert figure.how is how
    assert figure.written == Decimal(str(written))
    assert figure.counted == Decimal(str(counted))
    assert bool(figure.faults) == (how is How.CORRECTED)


def test_the_parts_of_a_split_line_add_up() -> None:
    parts = [
        BidEntry(SILL, unit_price=Amount.of(10), quantity=8),
        BidEntry(SILL, Amount.of(72), Amount.of(12), quantity=6),
    ]

    figure = figure_of(SMALL.lines[2], parts)

    assert (figure.how, figure.written, figure.counted) == (How.SPLIT, 152, 152)


def test_a_line_on_an_earlier_form_is_carried_to_the_new_quantity() -> None:
    earlier = replace(SMALL.lines[2], quantity=7.0)

    figure = figure_of(SMALL.lines[2], [BidEntry(SILL, Amount.of(70))], earlier)

    assert (figure.how, figure.own, figure.counted) == (How.RESCALED, 70, 140)


def test_an_arithmetic_error_is_shown_with_both_figures() -> None:
    made = levelled(bid(**{f"amount|{SILL}": "410", "total": "2,000"}))

    one = made.bids[0]
    assert [(f.where, f.stated, f.computed) for f in one.faults] == [
        ("Line 3", 410, 140),
        ("Total", 2000, 10 + 1200 + 410 + 400 + 20),
    ]
    assert one.summed == 10 + 1200 + 140 + 400 + 20
    assert "Line 3: you state $410.00, and $140.00 comes out (10 times 14). Which holds?" in (
        one.questions
    )


@pytest.mark.parametrize(
    ("total", "said"),
    [("1770", None), ("1770.80", None), ("1700", "its amounts added up")],
)
def test_a_total_may_be_rounded_and_no_more(total: str, said: str | None) -> None:
    made = levelled(bid(total=total))

    assert [fault.text for fault in made.bids[0].faults] == ([said] if said else [])


def test_a_total_without_the_added_lines_is_told_as_that() -> None:
    added = {"added1|text": "Blocking", "added1|amount": "300"}

    one = levelled(bid(total="1770", **added)).bids[0]

    assert one.summed == one.base == 2070
    assert one.faults[0].text.endswith("the stated total leaves out the added lines")


@pytest.mark.parametrize("text", ["", "by others", "1.200"])
def test_a_line_without_a_price_is_plugged_by_the_median_of_the_others(text: str) -> None:
    odd = bid("Alder", units={CIRCUIT: text})
    others = [bid("Birch", units={CIRCUIT: "100"}), bid("Cedar", units={CIRCUIT: "150"})]

    cell = levelled(odd, *others).lines[4].cells[0]

    assert (cell.usd, cell.how) == (250, How.PLUGGED)
    assert cell.why.endswith("; median of 2 other bids")


def test_without_others_our_likely_figure_stands_in_and_else_nothing_does() -> None:
    odd = bid(units={CIRCUIT: "none"})

    with_ours = levelled(odd, ours={CIRCUIT: Spread.of(200, 300, 500)})
    without = levelled(odd)

    assert with_ours.lines[4].cells[0].usd == 300
    assert with_ours.lines[4].cells[0].why == "left out by the bidder; our likely figure"
    assert without.lines[4].cells[0].how is How.OPEN
    assert without.bids[0].base == 1750


def test_a_line_in_another_line_costs_nothing_and_is_not_plugged() -> None:
    made = levelled(bid("Alder", units={SILL: "incl. in line 4"}), bid("Birch"))

    assert (made.lines[2].cells[0].usd, made.lines[2].cells[0].how) == (0, How.INCLUDED)
    assert made.bids[0].plugged == 0
    assert not any("Line 3" in question for question in made.bids[0].questions)


@pytest.mark.parametrize(
    ("units", "asked"),
    [
        ({SILL: "included"}, "in which line is its price?"),
        ({SILL: "in line 4", SIDING: ""}, "you say it is in 4, which has no price."),
    ],
)
def test_where_the_price_went_is_asked(units: dict[str, str], asked: str) -> None:
    questions = levelled(bid(units=units)).bids[0].questions

    assert any(question.startswith("Line 3") and asked in question for question in questions)


def test_a_trade_without_any_price_is_named_once() -> None:
    made = three(bid("Alder", units={CIRCUIT: ""}))

    assert made.bids[2].missing_trades == (Trade.ELECTRICIAN,)
    about = [one for one in made.bids[2].questions if "electrician" in one or "Line 5" in one]
    assert len(about) == 1


def test_a_bid_on_an_earlier_form_is_read_with_a_warning() -> None:
    earlier = form(*SMALL.lines[:4], line(9, "old-work@main"))
    old = bid_of(fields(earlier, "Alder", total="1,630.00"), earlier)

    made = levelled(old, bid("Birch"), earlier={earlier.form_id: earlier})

    assert made.bids[0].notices == (
        "It was priced on the first form, not on the latest form. Lines that are new since: 1; "
        "that are gone: 1.",
    )
    assert made.lines[4].cells[0].why.startswith("not on the form that was priced")
    assert made.bids[0].summed == 10 + 1200 + 140 + 400 + 10
    assert made.bids[0].base == 10 + 1200 + 140 + 400 + 20


def test_an_unknown_form_is_read_line_by_line_with_a_warning() -> None:
    made = levelled(replace(bid(), form_id="ffff00001111"), replace(bid("Birch"), form_id=""))

    assert "does not know" in made.bids[0].notices[0]
    assert "does not say which form" in made.bids[1].notices[0]


def test_alternates_are_kept_apart_and_signed() -> None:
    keep, door = (one.id for one in SMALL.alternates)
    full = bid("Alder", **{f"alt|{keep}": "500", f"alt|{door}": "1200"})

    made = levelled(full, bid("Birch", **{f"alt|{keep}": "300"}))

    assert [cell.usd for cell in made.alternates[0].cells] == [-500, -300]
    assert [cell.usd for cell in made.alternates[1].cells] == [1200, 1200]
    assert made.alternates[1].cells[1].how is How.PLUGGED
    assert [(one.base, one.with_alternates) for one in made.bids] == [(1770, 2470), (1770, 2670)]


HIDDEN = HiddenWork("sister-stud", "Sister a stud", "each", 12.0, Spread.of(60, 90, 150))


def test_hidden_work_is_priced_at_each_bidders_own_unit_price() -> None:
    """X 20,000 and 95 each, Y 19,000 and 180 each, made by hand: at 12 Y is dearer."""
    x = bid("X", units={PROTECT: "18240"}, **{"askunit|sister-stud": "95"})
    y = bid("Y", units={PROTECT: "17240"}, **{"askunit|sister-stud": "180"})
    z = bid("Z", units={PROTECT: "17240"})

    made = levelled(x, y, z, hidden=(HIDDEN,))

    assert [one.base for one in made.bids] == [20_000, 19_000, 19_000]
    assert [one.with_hidden for one in made.bids[:2]] == [21_140, 21_160]
    stands_in = made.bids[2].hidden_cells[0]
    assert (stands_in.unit_usd, stands_in.is_own) == (Decimal("137.5"), False)
    turns = "Y is cheaper than X up to 0.98 times the hidden work that is expected"
    assert any(notice.startswith(turns) for notice in made.notices)
    assert any(
        "on one base: Y" in notice and "with the expected hidden work: X" in notice
        for notice in levelled(x, y, hidden=(HIDDEN,)).notices
    )


def test_what_stands_apart_is_marked_and_asked_about() -> None:
    made = three(bid("Alder", units={SIDING: "25", STRIP: "4"}))

    assert [line.cells[2].apart for line in made.lines] == ["", "-60%", "", "+150%", ""]
    assert made.lines[3].cells[0].apart == ""
    said = " ".join(made.bids[2].unbalanced)
    assert "Far over the median of the bids: line 4" in said
    assert "$1,000 against $400 ($25.00 against $10.00 per sq ft)" in said
    assert "Far under the median of the bids: line 2" in said
    assert "If line 4 grows or line 2 is struck" in said
    questions = made.bids[2].questions
    assert any("line 4 ($1,000): is more than the form asks" in one for one in questions)
    assert any("line 2 ($480): is all that it asks for" in one for one in questions)
    assert not any("$400" in one or "$1,200" in one for one in questions)
    assert made.bids[0].unbalanced == ()


@pytest.mark.parametrize(("usd", "is_far"), [("5.10", True), ("5.00", False), ("1.28", False)])
def test_with_fewer_than_three_bids_our_likely_figure_is_the_middle(usd: str, is_far: bool) -> None:
    """Twice our likely 102 is 204, half of it 51; the line has 40 sq ft."""
    made = levelled(bid(units={SIDING: usd}), ours={SIDING: Spread.of(100, 102, 240)})

    assert any("our likely figures: line 4" in one for one in made.bids[0].unbalanced) == is_far


@pytest.mark.parametrize(
    ("usd", "apart"),
    [("2.49", "under our range"), ("2.50", ""), ("6", ""), ("6.01", "over our range")],
)
def test_with_fewer_than_three_bids_our_range_marks_a_line(usd: str, apart: str) -> None:
    made = levelled(bid(units={SIDING: usd}), ours={SIDING: Spread.of(100, 102, 240)})

    assert made.lines[3].cells[0].apart == apart


PHASES = {
    PROTECT: Phase.PROTECT,
    STRIP: Phase.STRIP,
    SILL: Phase.STRUCTURE,
    SIDING: Phase.WEATHER_SHELL,
    CIRCUIT: Phase.ROUGH_IN,
}


@pytest.mark.parametrize(
    ("strip", "sill", "is_loaded"),
    # The others: 94 of 654 early, 14.4 %. The limits: half as much again, and ten points more.
    [("0.75", "10", False), ("1.25", "10", False), ("1.45", "10", True)],
)
def test_a_front_loaded_bid_is_explained(strip: str, sill: str, is_loaded: bool) -> None:
    plain = {PROTECT: "10", STRIP: "0.70"}
    odd = bid("Alder", units={PROTECT: "10", STRIP: strip, SILL: sill})

    made = levelled(bid("Birch", units=plain), bid("Cedar", units=plain), odd, phases=PHASES)

    told = [one for one in made.bids[2].unbalanced if one.startswith("Front-loaded")]
    assert bool(told) == is_loaded
    assert not any("Front-loaded" in one for one in made.bids[0].unbalanced)


def test_unit_prices_for_hidden_work_far_from_the_others_are_told() -> None:
    def asking(bidder: str, usd: str) -> Bid:
        return bid(bidder, **{"askunit|sister-stud": usd, "askunit|repair-behind-lining": "20"})

    made = levelled(asking("Alder", "90"), asking("Birch", "100"), asking("Cedar", "150"))

    assert unbalanced(made, 2) == (
        "Unit prices for what may be found far over the median of the bids: Sister a stud, "
        "$150.00 each against $100.00.",
    )
    assert unbalanced(made, 0) == ()


@pytest.mark.parametrize(("last", "apart"), [("1100", ""), ("700", "+39%, median $1,770")])
def test_a_total_that_stands_apart_is_marked(last: str, apart: str) -> None:
    made = levelled(
        bid("Alder"), bid("Birch"), bid("Cedar", units={PROTECT: last if apart else "500"})
    )

    assert made.bids[2].apart == apart


def test_the_gap_below_the_second_is_told_and_no_bid_is_called_the_best() -> None:
    made = three(bid("Alder", units={STRIP: "6"}))

    assert any("Alder is 37% under the next" in notice for notice in made.notices)
    words = " ".join(
        (*made.notices, *(text for one in made.bids for text in (*one.unbalanced, *one.questions)))
    )
    for word in ("best", "winner", "score", "recommend", "choose "):
        assert word not in words


def test_open_terms_are_asked_for() -> None:
    questions = levelled(bid(validity="14 days", exclusions="Paint")).bids[0].questions

    assert "Your bid holds 14 days. Can you hold it for 30?" in questions
    assert "You leave out: Paint. Who is to do it, and at what price would you?" in questions
    assert "When can you start?" in questions
    assert any(question.startswith("You give no total. Is $1,770.00") for question in questions)
    assert any("Sister a stud" in question for question in questions)


def test_no_base_bid_within_the_funds_takes_no_alternate() -> None:
    assert taken_in_order({"A": Decimal(5)}, {"A": [Decimal(1)]}, Decimal(4)) is None
    made = levelled(bid(), funds=Decimal(100))
    assert made.within_funds is None


def test_an_unread_amount_counts_as_no_price_and_is_asked_about() -> None:
    made = levelled(bid(units={SILL: "1.200"}), bid("Birch"))

    cell = made.lines[2].cells[0]
    assert (cell.figure.state, cell.usd) == (State.UNREAD, 140)
    assert any(
        question.startswith("Line 3") and "It may be 1,200 or 1.2" in question
        for question in made.bids[0].questions
    )
