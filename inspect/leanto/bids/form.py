"""The bid form of a scope: the same lines and quantities for everybody, and no figure of ours."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict
from datetime import date

from leanto.bids.in_feet import printed_unit
from leanto.bids.model import Allowance, Alternate, BidForm, BidLine, UnitPriceAsk
from leanto.bids.quantity import bid_quantity, bid_quantity_in_words
from leanto.quantities import shown
from leanto.scope.item import RepairItem, Scope
from leanto.scope.work import Trade, Work

_ID_CHARS = 12


def bid_form(
    scope: Scope,
    numbers: Mapping[str, int],
    *,
    job_id: str,
    unit_prices: Sequence[UnitPriceAsk] = (),
    alternates: Sequence[Alternate] = (),
    allowances: Sequence[Allowance] = (),
    addendum: int = 0,
    made_on: date | None = None,
) -> BidForm:
    """The form for the lines that bidders price; those by the owner are left out.

    ``numbers`` are the printed ones by repair item id. Lines marked as alternates in the scope
    come first among the alternates.
    """
    lines = tuple(_line(item, numbers[item.id]) for item in scope.for_bidders)
    asked = tuple(unit_prices)
    others = (*(_alternate(item) for item in scope.alternates), *alternates)
    return BidForm(
        job_id=job_id,
        form_id=form_id(lines, asked, others, allowances),
        addendum=addendum,
        lines=lines,
        unit_prices=asked,
        alternates=others,
        allowances=tuple(allowances),
        made_on=made_on,
    )


def form_id(
    lines: Iterable[BidLine],
    unit_prices: Iterable[UnitPriceAsk],
    alternates: Iterable[Alternate],
    allowances: Iterable[Allowance],
) -> str:
    """Short hash of all that is priced, the printed numbers left out: a line keeps its identity
    when another one before it is struck."""
    told = [
        [{**asdict(line), "line": 0} for line in lines],
        [asdict(ask) for ask in unit_prices],
        [asdict(alternate) for alternate in alternates],
        [{**asdict(one), "amount": str(one.amount)} for one in allowances],
    ]
    text = json.dumps(told, sort_keys=True, ensure_ascii=True)
    return hashlib.sha256(text.encode("ascii")).hexdigest()[:_ID_CHARS]


def hidden_asks(works: Sequence[Work], hours_of: Iterable[Trade] = ()) -> tuple[UnitPriceAsk, ...]:
    """A unit price for each work that an opened wall may call for, and an hour of each trade in
    them and in ``hours_of``."""
    asked = {
        work.id: UnitPriceAsk(work.id, work.title, printed_unit(work.unit, shown().system))
        for work in works
    }
    trades = sorted({*(work.trade for work in works), *hours_of})
    hours = (
        UnitPriceAsk(f"hour-{trade.replace(' ', '-')}", f"One hour: {trade}, with tools", "hour")
        for trade in trades
    )
    return (*asked.values(), *hours)


def _line(item: RepairItem, number: int) -> BidLine:
    return BidLine(
        item_id=item.id,
        line=number,
        title=item.work.title,
        place=item.place,
        trade=item.work.trade,
        element=item.work.element,
        quantity=bid_quantity(item, shown()),
        unit=printed_unit(item.work.unit, shown().system),
    )


def _alternate(item: RepairItem) -> Alternate:
    quantity = bid_quantity_in_words(item)
    return Alternate(item.id, f"{item.work.title}: {item.place}", f"{quantity}, added to the base")
