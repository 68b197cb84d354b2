"""What found work costs: by the unit prices that were agreed first, else by ours."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from leanto.money import dollars, exact
from leanto.record.agreed_entry import AgreedLine, AskedLine, BidAwarded


@dataclass(frozen=True, slots=True)
class OurRate:
    """Our own figure for one unit of a work, at the rate of a change order."""

    work: str
    title: str
    unit: str
    usd: Decimal


def asked_line(
    award: BidAwarded | None, ours: OurRate, quantity: float, opening: int, place: str
) -> AskedLine:
    """One line of a change: at the agreed unit price; else at what the bid asks for the same work
    in its own lines, in this place before others; else at our figure."""
    rate, basis, said = _rate(award, ours, place)
    return AskedLine.model_validate(
        {
            "opening": opening,
            "work": ours.work,
            "title": ours.title,
            "place": place,
            "quantity": quantity,
            "unit": ours.unit,
            "rate_usd": rate,
            "basis": basis,
            "said": said,
        }
    )


def amount_of(line: AskedLine) -> Decimal:
    """Quantity times unit price, to the cent; below zero for less than the scope has."""
    return dollars(line.rate_usd * exact(line.quantity))


def is_agreed(line: AskedLine) -> bool:
    """Whether the price is one that the bidder gave."""
    return line.basis != "ours"


def _rate(award: BidAwarded | None, ours: OurRate, place: str) -> tuple[Decimal, str, str]:
    if award is not None:
        for rate in award.rates:
            if rate.id == ours.work and rate.unit == ours.unit:
                return rate.usd, "agreed unit price", "unit price of the bid"
        same = [line for line in award.lines if _is_same_work(line, ours)]
        same.sort(key=lambda line: line.place != place)
        if same:
            line = same[0]
            usd = dollars(line.usd / exact(line.quantity))
            return usd, "price of the bid", f"as in line {line.number} of the bid"
    return dollars(ours.usd), "ours", "no price was agreed; our figure, as a change costs"


def _is_same_work(line: AgreedLine, ours: OurRate) -> bool:
    is_it = line.kind == "line" and line.id.partition("@")[0] == ours.work
    return is_it and line.unit == ours.unit and line.usd > 0 and line.quantity > 0
