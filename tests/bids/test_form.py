"""The bid form, and how one form is told from another."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from filled_bids import SMALL, form, line

from leanto.bids.form import form_id
from leanto.bids.layout import from_pdf_name, pdf_name
from leanto.bids.model import Allowance, Amount, State


def test_the_form_id_holds_through_new_numbers_and_changes_with_what_is_priced() -> None:
    same = [replace(one, line=one.line + 3) for one in SMALL.lines]
    other = [replace(one, quantity=one.quantity + 1) for one in SMALL.lines]
    rest = (SMALL.unit_prices, SMALL.alternates, SMALL.allowances)

    assert form_id(same, *rest) == SMALL.form_id
    assert form_id(other, *rest) != SMALL.form_id
    assert form_id(SMALL.lines[1:], *rest) != SMALL.form_id
    stated = (Allowance("window", "Window", Decimal(900)),)
    assert form_id(SMALL.lines, *rest[:2], stated) != SMALL.form_id


def test_a_pdf_name_holds_no_full_stop_and_leads_back() -> None:
    name = "unit|strip-board@main.north.inside+2"

    assert "." not in pdf_name(name)
    assert from_pdf_name(pdf_name(name)) == name


def test_stated_allowances_add_up() -> None:
    both = (Allowance("a", "A", Decimal(900)), Allowance("b", "B", Decimal("99.50")))

    assert form(line(1, "roof@main"), allowances=both).allowed == Decimal("999.50")


@pytest.mark.parametrize(("state", "usd"), [(State.PRICED, None), (State.MISSING, Decimal(0))])
def test_only_a_price_has_a_figure(state: State, usd: Decimal | None) -> None:
    with pytest.raises(ValueError, match="figure"):
        Amount(state, usd)
