"""Bids on one base, against published and hand-made examples.

Sources: 48 CFR 252.236-7007, Additive or Deductive Items (seen; the sums after each step were
added up by hand). The levelling, break-even and outlier examples were made by hand for this
check: no source. The modified z is Iglewicz and Hoaglin 1993 (from memory), its median absolute
deviation scipy's.
"""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

import numpy as np
import pytest
from filled_bids import form, line
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.stats import median_abs_deviation

from leanto.bids.hidden_work import break_even
from leanto.bids.in_funds import taken_in_order
from leanto.bids.levelled import Base
from leanto.bids.levelling import level
from leanto.bids.model import Allowance, Amount, Bid, BidEntry, State
from leanto.bids.outlier import Z_LIMIT, modified_z
from leanto.money import Spread


@pytest.mark.published("48 CFR 252.236-7007", "seen")
def test_additive_items_within_the_funds_seen() -> None:
    """Funds 100,000: items 1 and 4 are taken, 2 and 3 passed over; A is low though its base is
    not."""
    bases = {"A": Decimal(85_000), "B": Decimal(80_000)}
    items = {
        "A": [Decimal(x) for x in (10_000, 8_000, 6_000, 4_000)],
        "B": [Decimal(x) for x in (16_000, 9_000, 7_000, 4_000)],
    }

    found = taken_in_order(bases, items, Decimal(100_000))

    assert found is not None
    assert found.taken == (0, 3)
    assert found.totals == {"A": 99_000, "B": 100_000}


LINES = tuple(
    line(number, name)
    for number, name in enumerate(
        ("demolition", "sill-and-framing", "roof", "flashing", "electrical", "termite", "permit"), 1
    )
)
WINDOW = Allowance("window", "Window", Decimal(1_500))
FORM = form(*LINES, allowances=(WINDOW,))
OUT, IN_ROOF = Amount(State.EXCLUDED), Amount(State.INCLUDED, text="in roof")
READ: Mapping[str, tuple[object, ...]] = {
    "A": (3_200, 5_400, 7_700, 950, 4_300, 850, 350, 1_500),
    "B": (2_900, OUT, 7_100, IN_ROOF, 3_900, 800, OUT, 1_000),
    "C": (3_600, 6_100, 8_050, 1_100, OUT, 900, 350, 1_500),
}
AS_READ = {"A": 24_250, "B": 15_700, "C": 21_600}
ESTIMATE = {"sill-and-framing": 5_800, "electrical": 4_000, "permit": 350}


def bid(name: str) -> Bid:
    *lines, window = (x if isinstance(x, Amount) else Amount.of(str(x)) for x in READ[name])
    return Bid(
        bidder=name,
        form_id=FORM.form_id,
        addendum=0,
        entries=tuple(
            BidEntry(one.item_id, amount) for one, amount in zip(LINES, lines, strict=True)
        ),
        allowances={"window": window},
        stated_total=Amount.of(AS_READ[name]),
    )


@pytest.mark.published("Bids made by hand", "by hand")
def test_levelled_totals_with_the_median_of_the_others_made_by_hand() -> None:
    """With two others the median is the mean. As read the order is B, C, A; levelled B, A, C."""
    made = level(Base(FORM), [bid(name) for name in "ABC"])

    assert {one.bid.bidder: one.summed for one in made.bids} == AS_READ
    assert {one.bid.bidder: one.base for one in made.bids} == {
        "A": 24_250,
        "B": 22_300,
        "C": 25_700,
    }
    assert not any(one.faults for one in made.bids)


@pytest.mark.published("Bids made by hand", "by hand")
@pytest.mark.parametrize(("name", "levelled"), [("A", 24_250), ("B", 22_350), ("C", 25_600)])
def test_levelled_totals_with_our_likely_figures_made_by_hand(name: str, levelled: int) -> None:
    """Where no other bid gives a figure: sill 5,800, electrical 4,000, permit 350."""
    ours = {id_: Spread.of(usd / 2, usd, usd * 2) for id_, usd in ESTIMATE.items()}

    made = level(Base(FORM, ours), [bid(name)])

    assert made.bids[0].base == levelled


@pytest.mark.published("Bids made by hand", "by hand")
def test_a_unit_price_turns_the_order_at_twelve_sheets_made_by_hand() -> None:
    """X 20,000 and 95 a sheet, Y 19,000 and 180: equal at 11.76 sheets."""
    found = break_even(Decimal(20_000), Decimal(95), Decimal(19_000), Decimal(180))

    assert found is not None
    assert round(found, 2) == Decimal("11.76")
    assert break_even(Decimal(20_000), Decimal(95), Decimal(19_000), Decimal(95)) is None
    assert break_even(Decimal(20_000), Decimal(180), Decimal(19_000), Decimal(95)) is None


@pytest.mark.published("Iglewicz and Hoaglin, 1993", "from memory")
@pytest.mark.parametrize(
    ("totals", "z", "is_apart"),
    [
        ((22_300, 23_500, 24_250, 25_700, 41_900), 8.21, True),
        ((24_250, 22_300, 25_700, 31_900), 2.75, False),
    ],
)
def test_modified_z_of_the_last_total_made_by_hand(
    totals: tuple[float, ...], z: float, is_apart: bool
) -> None:
    found = modified_z(totals)[-1]

    assert found == pytest.approx(z, abs=0.005)
    assert (abs(found) > Z_LIMIT) == is_apart


@pytest.mark.published("scipy", "library")
@given(st.lists(st.integers(100, 100_000).map(float), min_size=5, max_size=12))
def test_modified_z_stands_on_the_deviation_that_scipy_finds(totals: list[float]) -> None:
    mad = float(median_abs_deviation(totals))
    assume(mad > 0)
    middle = float(np.median(totals))

    expected = [0.6745 * (total - middle) / mad for total in totals]

    assert modified_z(totals) == pytest.approx(expected)
