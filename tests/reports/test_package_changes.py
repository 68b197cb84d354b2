"""What an addendum says that it changes."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest
from bid_forms import ALLOWANCES, ALTERNATES, ASKS, LINES, a_form

from leanto.bids.model import Allowance, Alternate, BidForm, UnitPriceAsk
from leanto.reports.contents.package_changes import changes_between

STRIP, SILL, STUD, OTHER = LINES


@pytest.mark.parametrize(
    ("after", "said"),
    [
        (a_form(), ()),
        (a_form(addendum=1), ()),
        # another number alone is no change
        (a_form(lines=(replace(STRIP, line=9), SILL, STUD, OTHER)), ()),
        (
            a_form(lines=(SILL, STUD, OTHER)),
            (
                "Left out: Strip the lining, Main room, north wall, inside, 175 sq ft. "
                "It was line 1.",
            ),
        ),
        (
            a_form(lines=(*LINES, replace(STUD, item_id="stud@loft", place="Loft", line=5))),
            ("New: line 5, Replace a stud, Loft, 5 each.",),
        ),
        (
            a_form(lines=(replace(STRIP, quantity=180.0), SILL, STUD, OTHER)),
            ("Line 1, Strip the lining, Main room, north wall, inside: 180 sq ft, was 175 sq ft.",),
        ),
        (
            a_form(lines=(replace(STRIP, title="Strip it"), SILL, STUD, OTHER)),
            (
                "Line 1: now Strip it, Main room, north wall, inside, "
                "was Strip the lining, Main room, north wall, inside.",
            ),
        ),
        (
            a_form(unit_prices=(*ASKS, UnitPriceAsk("sheet", "A sheet", "sheet"))),
            ("New unit price: A sheet.",),
        ),
        (
            a_form(unit_prices=ASKS[1:]),
            ("Left out, unit price: Replace a stud.",),
        ),
        (
            a_form(alternates=(*ALTERNATES, Alternate("x", "A loft", "All of it."))),
            ("New alternate: A loft.",),
        ),
        (
            a_form(alternates=(replace(ALTERNATES[0], kind="deduct"), ALTERNATES[1])),
            ("Changed alternate: Strip instead of keeping.",),
        ),
        (
            a_form(allowances=(replace(ALLOWANCES[0], amount=Decimal(700)), ALLOWANCES[1])),
            ("Allowance, Light fittings, as chosen: $700.00, was $600.00.",),
        ),
        (
            a_form(allowances=(*ALLOWANCES, Allowance("sink", "A sink", Decimal("80.5")))),
            ("New allowance: A sink, $80.50.",),
        ),
        (a_form(allowances=ALLOWANCES[:1]), ("Left out, allowance: =Door.",)),
    ],
)
def test_everything_that_is_priced_otherwise_is_said(after: BidForm, said: tuple[str, ...]) -> None:
    assert changes_between(a_form(), after) == said
