"""Our own price of one unit of found work, as a change costs."""

from __future__ import annotations

from decimal import Decimal
from difflib import get_close_matches

from leanto.assessment import Assessment
from leanto.contract.pricing import OurRate
from leanto.decision.courses import Book
from leanto.errors import LeantoError
from leanto.quantities import Unit
from leanto.scope.call import Call
from leanto.scope.work import Trade, Work

HOUR = "hour-"
"""How the id of an hourly price starts; the trade follows."""


def our_rate(assessment: Assessment, id_: str, surface_id: str, *, poor_access: bool) -> OurRate:
    """The likely price of a work, or of an hour, with the premium of a change order.

    Raises LeantoError for an id that is neither a work with a price nor an hour of a trade.
    """
    library = assessment.library
    premium = 1 + library.factors.change_order_pct.likely / 100
    if id_.startswith(HOUR):
        return _hour(assessment, id_, premium)
    work = library.works.get(id_)
    if work is None or id_ not in library.prices:
        near = get_close_matches(id_, list(library.prices), n=1)
        remedy = f'Did you mean "{near[0]}"?' if near else "leanto check --list prints them all."
        raise LeantoError(f'There is no work "{id_}" with a price.', remedy)
    book = Book(library.works, library.prices, library.factors, library.hidden, assessment.surfaces)
    (line,) = book.lines((Call(id_, surface_id, quantity=1.0, poor_access=poor_access),))
    return OurRate(id_, work.title, work.unit.label, line.total.likely * premium)


def _hour(assessment: Assessment, id_: str, premium: Decimal) -> OurRate:
    factors = assessment.library.factors
    trade = next((one for one in Trade if f"{HOUR}{one.replace(' ', '-')}" == id_), None)
    wage = next((one for one in factors.wages if one.trade is trade), None)
    if trade is None or wage is None:
        raise LeantoError(f'There is no wage for "{id_}".', "Write it like hour-carpenter.")
    markup = (1 + factors.overhead_pct / 100) * (1 + factors.profit_pct / 100)
    usd = wage.hourly_usd.likely * factors.burden * factors.region * markup * premium
    return OurRate(id_, f"One hour: {trade}, with tools", Unit.HOUR.label, usd)


def check_found_quantity(work: Work | None, quantity: float) -> None:
    """Nothing for a quantity that the work is counted in; LeantoError otherwise."""
    if work is not None and work.unit is Unit.EACH and not float(quantity).is_integer():
        raise LeantoError(f"{work.title} is counted in whole pieces, not {quantity:g}.")
