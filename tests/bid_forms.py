"""A small bid form, with text that somebody meant to be a formula."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

from leanto.bids.form import form_id
from leanto.bids.model import Allowance, Alternate, BidForm, BidLine, UnitPriceAsk
from leanto.scope.work import Trade

DAY = date(2026, 6, 2)
LINES = (
    BidLine(
        "strip@main.north.inside",
        1,
        "Strip the lining",
        "Main room, north wall, inside",
        Trade.LABORER,
        "F2010",
        175.0,
        "sq ft",
    ),
    BidLine("sill@main", 2, "=1+1", "@Main room", Trade.CARPENTER, "B2010", 9.3, "lin ft"),
    BidLine("stud@main", 3, "Replace a stud", "Main room", Trade.CARPENTER, "B2010", 5.0, "each"),
    BidLine("sill@main+1", 4, "-sill", "+here", Trade.CARPENTER, "B2010", 1.0, "lump sum"),
)
ASKS = (
    UnitPriceAsk("replace-stud", "Replace a stud", "each"),
    UnitPriceAsk("hour-carpenter", "One hour: carpenter, with tools", "hour"),
)
ALTERNATES = (
    Alternate("gut@main.north.inside", "Strip instead of keeping", "Strip, line, paint."),
    Alternate("leave@main", "Leave the floor", "In place of line 3.", "deduct"),
)
ALLOWANCES = (
    Allowance("lights", "Light fittings, as chosen", Decimal("600")),
    Allowance("door", "=Door", Decimal("1234.50")),
)


def a_form(**changes: object) -> BidForm:
    made = BidForm(
        job_id="0123456789abcdef",
        form_id=form_id(LINES, ASKS, ALTERNATES, ALLOWANCES),
        addendum=0,
        lines=LINES,
        unit_prices=ASKS,
        alternates=ALTERNATES,
        allowances=ALLOWANCES,
        made_on=DAY,
    )
    return replace(made, **changes)  # type: ignore[arg-type]
