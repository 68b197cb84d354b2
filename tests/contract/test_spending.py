"""Budget, committed, paid and to go: the sums of one view, made by hand."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from leanto.contract.pricing import OurRate, amount_of, asked_line
from leanto.contract.spending import Spending, spending
from leanto.record.agreed_entry import AgreedLine, AgreedRate, BidAwarded, Paid
from leanto.record.kept_change import KeptChange

DAY = date(2026, 11, 25)


def line(number: str, usd: int, id_: str = "strip@north", **more: object) -> AgreedLine:
    told: dict[str, object] = {"kind": "line", "title": "Strip", "place": "North", "unit": "sq ft"}
    return AgreedLine.model_validate(told | {"number": number, "id": id_, "usd": usd} | more)


AWARD = BidAwarded(
    digest="5" * 64,
    bidder="Alder",
    form_id="abcdef",
    lines=(
        line("1", 1_000, ours_usd=900, quantity=100),
        line("2", 500, "sill@south", unit="lin ft", quantity=10, place="South"),
        line("3", 640, "sill@north", unit="lin ft", quantity=8),
        line("O9", 0, "paint@north", kind="by owner", ours_usd=150),
    ),
    rates=(AgreedRate(id="stud", title="Sister a stud", unit="each", usd=Decimal("45.50")),),
    contingency_usd=Decimal(400),
    budget_usd=Decimal(3_000),
    awarded_on=DAY,
)
STUD = OurRate("stud", "Sister a stud", "each", Decimal(60))
SILL = OurRate("sill", "Replace sill", "lin ft", Decimal(70))
VENT = OurRate("vent", "New vent", "each", Decimal("33.333"))


def paid(number: int, on: str, usd: str) -> Paid:
    return Paid(number=number, line=on, usd=Decimal(usd), paid_on=DAY)


def change(number: int, quantity: float, settled: str | None = None) -> KeptChange:
    asked = asked_line(AWARD, STUD, quantity, 1, "North")
    usd = None if settled is None else Decimal(settled)
    return KeptChange(number, (asked,), DAY, usd, None if usd is None else DAY)


def view(*payments: Paid, changes: tuple[KeptChange, ...] = ()) -> Spending:
    return spending(AWARD, payments, {one.number: one for one in changes})


@pytest.mark.parametrize(
    ("ours", "place", "rate", "basis", "said"),
    [
        (STUD, "North", "45.50", "agreed unit price", "unit price of the bid"),
        # 640 / 8 in this place; 500 / 10, the first one, elsewhere
        (SILL, "North", "80", "price of the bid", "as in line 3 of the bid"),
        (SILL, "West", "50", "price of the bid", "as in line 2 of the bid"),
        (VENT, "North", "33.33", "ours", "no price was agreed; our figure, as a change costs"),
        # the same work in another unit is another price
        (OurRate("sill", "Sill", "each", Decimal(9)), "North", "9", "ours", None),
    ],
)
def test_the_agreed_unit_price_goes_first_then_the_bids_own_lines_then_ours(
    ours: OurRate, place: str, rate: str, basis: str, said: str | None
) -> None:
    asked = asked_line(AWARD, ours, 3, 1, place)

    assert (asked.rate_usd, asked.basis) == (Decimal(rate), basis)
    assert said is None or asked.said == said
    assert amount_of(asked) == 3 * Decimal(rate)


def test_without_a_choice_ours_stands() -> None:
    assert asked_line(None, STUD, 2, 1, "North").basis == "ours"


def test_less_than_the_scope_has_comes_off() -> None:
    assert amount_of(asked_line(AWARD, STUD, -2, 1, "North")) == -91


def test_the_sums_of_a_view() -> None:
    seen = view(
        paid(1, "1", "600"),
        paid(2, "all", "300"),
        paid(3, "O9", "40"),
        paid(4, "C1", "100"),
        changes=(change(1, 4, "180"), change(2, 2)),
    )

    assert (seen.contract, seen.agreed_changes, seen.asked_changes) == (2_140, 180, 91)
    assert (seen.committed, seen.paid) == (2_320, 1_040)
    # 400 of line 1, 1,140 of 2 and 3, 110 of the owner's paint, 80 of the change, less 300
    assert seen.to_go == 400 + 1_140 + 110 + 80 - 300
    assert (seen.contingency, seen.contingency_left, seen.contingency_free) == (400, 220, 129)
    assert seen.budget_left == 3_000 - 1_040 - 1_430


def test_a_change_of_nothing_and_one_taken_back_use_no_contingency() -> None:
    assert view(changes=(change(1, 4, "0"),)).contingency_left == 400
    assert view(changes=(change(1, 4),)).contingency_left == 400
    assert view(changes=(change(1, 4, "-50"),)).contingency_left == 450


def test_what_is_paid_beyond_a_line_shows_below_zero() -> None:
    rows = {row.number: row for row in view(paid(1, "2", "620")).rows}

    assert rows["2"].to_go == -120
    assert rows["O9"].to_go == 150


def test_a_payment_on_a_line_that_is_gone_stands_under_all() -> None:
    seen = view(paid(1, "77", "50"))

    assert (seen.rows[-1].number, seen.rows[-1].paid, seen.paid) == ("all", 50, 50)
