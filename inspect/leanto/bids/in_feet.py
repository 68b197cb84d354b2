"""A bid form and the bids on it, put from metric into the units that everything is compared in.

A form is recorded as it was printed, and a bid is read by the form it was filled in on. What is
compared, agreed and paid afterwards is in one set of units, so that bids on a form in square feet
and on one in square meters stand side by side. A price times its quantity is the same in both.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from leanto.bids.model import Amount, Bid, BidEntry, BidForm
from leanto.quantities import System, Unit, format_quantity, shown
from leanto.quantities.metric import METRIC_UNITS, MetricUnit

_UNITS = {unit.label: unit for unit in Unit}
_OTHER = {unit.label: metric for unit, metric in METRIC_UNITS.items()}
_SEPARATOR = " = "
"""Between a metric unit and ours in the unit of a metric form: ``m² = sq ft``; never printed."""


def printed_unit(unit: Unit, system: System) -> str:
    """The unit of a form's line; of a metric one with ours behind it, as m² may stand for two."""
    metric = METRIC_UNITS.get(unit) if system is System.METRIC else None
    return f"{metric.symbol}{_SEPARATOR}{unit.label}" if metric else unit.label


def read_unit(unit: str) -> str:
    """The unit as people read it."""
    return unit.partition(_SEPARATOR)[0]


def system_of(form: BidForm) -> System:
    """What the form was printed in; feet and inches where it is the same in both."""
    units = [*(line.unit for line in form.lines), *(ask.unit for ask in form.unit_prices)]
    return System.METRIC if any(_SEPARATOR in unit for unit in units) else System.FEET


def form_in_feet(form: BidForm) -> BidForm:
    """The form with our quantities and units; itself where it is in them."""
    if system_of(form) is System.FEET:
        return form
    return replace(
        form,
        lines=tuple(
            replace(line, quantity=_ours(line.quantity, line.unit), unit=_our_unit(line.unit))
            for line in form.lines
        ),
        unit_prices=tuple(replace(ask, unit=_our_unit(ask.unit)) for ask in form.unit_prices),
    )


def bid_in_feet(bid: Bid, form: BidForm) -> Bid:
    """The bid on a metric ``form`` with its unit prices and own quantities in our units."""
    if system_of(form) is System.FEET:
        return bid
    units = {line.item_id: line.unit for line in form.lines}
    asked = {ask.id: ask.unit for ask in form.unit_prices}
    return replace(
        bid,
        entries=tuple(_entry(entry, units.get(entry.item_id, "")) for entry in bid.entries),
        unit_prices={
            id_: _price(price, asked.get(id_, "")) for id_, price in bid.unit_prices.items()
        },
    )


def quantity_in_words(quantity: float, unit: str) -> str:
    """A quantity of a form as it is printed: ``120 sq ft``, ``11.2 m²``."""
    label = read_unit(unit)
    number = f"{quantity:,.2f}".rstrip("0").rstrip(".")
    ours = _UNITS.get(label)
    return f"{number} {ours.plural if ours and number != '1' else label}"


def shown_rate(usd: Decimal, unit: str) -> tuple[Decimal, str]:
    """A price for one of our units as a price for the unit that is shown, and that unit."""
    ours, display = _UNITS.get(unit), shown()
    return (usd, unit) if ours is None else (display.rate(usd, ours), display.label(ours))


def shown_quantity(quantity: float, unit: str) -> str:
    """A quantity in one of our units, in the unit that is shown: ``120 sq ft``, ``11.15 m²``."""
    ours = _UNITS.get(unit) if shown().is_metric else None
    return quantity_in_words(quantity, unit) if ours is None else format_quantity(quantity, ours)


def _entry(entry: BidEntry, unit: str) -> BidEntry:
    quantity = None if entry.quantity is None else _ours(entry.quantity, unit)
    return replace(entry, quantity=quantity, unit_price=_price(entry.unit_price, unit))


def _price(amount: Amount, unit: str) -> Amount:
    metric = _metric(unit)
    if metric is None or amount.usd is None:
        return amount
    return replace(amount, usd=amount.usd * metric.each)


def _ours(quantity: float, unit: str) -> float:
    metric = _metric(unit)
    return quantity if metric is None else float(Decimal(str(quantity)) / metric.each)


def _our_unit(unit: str) -> str:
    return unit.partition(_SEPARATOR)[2] or unit


def _metric(unit: str) -> MetricUnit | None:
    symbol, separator, ours = unit.partition(_SEPARATOR)
    found = _OTHER.get(ours) if separator else None
    return found if found is not None and found.symbol == symbol else None
