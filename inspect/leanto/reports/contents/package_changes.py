"""What an addendum changes, line by line."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from leanto.bids.in_feet import form_in_feet, quantity_in_words, system_of
from leanto.bids.model import Alternate, BidForm, BidLine, UnitPriceAsk
from leanto.money import format_usd


def changes_between(before: BidForm, after: BidForm) -> tuple[str, ...]:
    """A sentence for everything that is priced otherwise than before; empty when nothing is.

    Lines are told apart by their ids: a line that only got another number has not changed.
    """
    return (
        *_lines(before, after),
        *_others("unit price", _by_id(before.unit_prices), _by_id(after.unit_prices)),
        *_others("alternate", _by_id(before.alternates), _by_id(after.alternates)),
        *_allowances(before, after),
    )


def _lines(before: BidForm, after: BidForm) -> Iterator[str]:
    old = {line.item_id: line for line in before.lines}
    new = {line.item_id: line for line in after.lines}
    is_translated = system_of(before) is not system_of(after)
    if is_translated:
        yield f"Quantities and unit prices are given in {system_of(after)} now."
    for item_id, line in new.items():
        was = old.get(item_id)
        if was is None:
            yield f"New: line {line.line}, {_named(line)}, {_quantity(line)}."
        elif is_translated and _is_alike(was, line):
            continue
        elif (was.quantity, was.unit) != (line.quantity, line.unit):
            yield f"Line {line.line}, {_named(line)}: {_quantity(line)}, was {_quantity(was)}."
        elif _told(was) != _told(line):
            yield f"Line {line.line}: now {_named(line)}, was {_named(was)}."
    for item_id, line in old.items():
        if item_id not in new:
            yield f"Left out: {_named(line)}, {_quantity(line)}. It was line {line.line}."


def _is_alike(was: BidLine, line: BidLine) -> bool:
    """Whether the quantity is the same in other units, but for how both are rounded up."""
    old, new = (form_in_feet(BidForm("", "", 0, (one,))).lines[0].quantity for one in (was, line))
    steps = (0.1 if one.quantity <= 10 else 1.0 for one in (was, line))
    return abs(old - new) <= max(
        form_in_feet(BidForm("", "", 0, (replace(one, quantity=step),))).lines[0].quantity
        for one, step in zip((was, line), steps, strict=True)
    )


def _others(
    noun: str, old: Mapping[str, tuple[str, object]], new: Mapping[str, tuple[str, object]]
) -> Iterator[str]:
    for id_, (title, told) in new.items():
        if id_ not in old:
            yield f"New {noun}: {title}."
        elif old[id_][1] != told:
            yield f"Changed {noun}: {title}."
    yield from (f"Left out, {noun}: {title}." for id_, (title, _) in old.items() if id_ not in new)


def _allowances(before: BidForm, after: BidForm) -> Iterator[str]:
    old = {one.id: one for one in before.allowances}
    new = {one.id: one for one in after.allowances}
    for id_, one in new.items():
        amount = format_usd(one.amount, cents=True)
        if id_ not in old:
            yield f"New allowance: {one.title}, {amount}."
        elif old[id_].amount != one.amount:
            was = format_usd(old[id_].amount, cents=True)
            yield f"Allowance, {one.title}: {amount}, was {was}."
    for id_, one in old.items():
        if id_ not in new:
            yield f"Left out, allowance: {one.title}."


def _by_id(entries: Iterable[UnitPriceAsk | Alternate]) -> dict[str, tuple[str, object]]:
    return {one.id: (one.title, one) for one in entries}


def _told(line: BidLine) -> tuple[str, ...]:
    return line.title, line.place, line.trade, line.element


def _named(line: BidLine) -> str:
    return f"{line.title}, {line.place}"


def _quantity(line: BidLine) -> str:
    return quantity_in_words(line.quantity, line.unit)
