"""Fields as they were typed -> a bid, with everything that could not be read."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from decimal import Decimal

from leanto.bids.layout import IDENTITY
from leanto.bids.model import MISSING, AddedLine, Amount, Bid, BidEntry, BidForm, State, Unread
from leanto.bids.reading.numbers import NumberFault, has_decimal_comma, read_amount, read_number
from leanto.bids.short_id import shown_field, with_full_ids

_IDENTITY = {name for name, _ in IDENTITY}
_TEXTS = {"bidder", "start", "duration"}
_LISTS = {"exclusions", "qualifications"}
_LINE_PARTS = {"quantity", "unit", "amount", "note"}
_ADDED = re.compile(r"added([0-9]{1,4})")
_DAYS = re.compile(r"([0-9]{1,4}) ?(days?|weeks?|months?)?")
_DAYS_IN = {"": 1, "d": 1, "w": 7, "m": 30}
_NOTHING = {"none", "no", "n/a", "-", "nothing"}


def bid_of(
    fields: Mapping[str, str],
    form: BidForm,
    *,
    bidder: str = "",
    answers: Mapping[str, str] | None = None,
    dated: date | None = None,
    file_name: str = "",
) -> Bid:
    """The bid in the fields of a returned form.

    ``answers`` are the owner's readings of fields that could not be read; they stand in the
    place of what was typed. ``bidder`` is used where the form does not say who bids. Whatever is
    not understood comes back in ``unread``: nothing is dropped.
    """
    texts = with_full_ids({**fields, **(answers or {})}, form)
    reader = _Reader(form, has_decimal_comma(fields.values()))
    for name, text in texts.items():
        if text.strip() and name not in _IDENTITY:
            reader.take(name, text.strip())
    addendum = texts.get("addendum", "").strip()
    return Bid(
        bidder=reader.texts.get("bidder", "") or bidder,
        form_id=texts.get("form_id", "").strip(),
        addendum=int(addendum) if re.fullmatch("[0-9]{1,4}", addendum) else form.addendum,
        entries=tuple(reader.entries()),
        unit_prices=reader.unit_prices,
        alternates=reader.alternates,
        allowances=reader.allowances,
        added=tuple(reader.added()),
        exclusions=reader.lists.get("exclusions", ()),
        qualifications=reader.lists.get("qualifications", ()),
        stated_total=reader.total,
        validity_days=reader.validity_days,
        start=reader.texts.get("start", ""),
        duration=reader.texts.get("duration", ""),
        dated=dated,
        file_name=file_name,
        unread=tuple(replace(one, shown=shown_field(one.field, form)) for one in reader.unread),
    )


@dataclass(slots=True)
class _Reader:
    form: BidForm
    comma_decimals: bool
    unread: list[Unread] = field(default_factory=list)
    lines: dict[str, dict[str, str]] = field(default_factory=dict)
    """Part and text by ``<item id>`` or ``<item id>#<which part of a split line>``."""
    extra: dict[int, dict[str, str]] = field(default_factory=dict)
    texts: dict[str, str] = field(default_factory=dict)
    lists: dict[str, tuple[str, ...]] = field(default_factory=dict)
    unit_prices: dict[str, Amount] = field(default_factory=dict)
    alternates: dict[str, Amount] = field(default_factory=dict)
    allowances: dict[str, Amount] = field(default_factory=dict)
    total: Amount = MISSING
    validity_days: int | None = None

    def take(self, name: str, text: str) -> None:
        """Put one field where it belongs."""
        part, _, id_ = name.partition("|")
        added = _ADDED.fullmatch(part)
        if part in _LINE_PARTS and id_:
            self.lines.setdefault(id_, {})[part] = text
        elif added and id_ in ("text", "amount"):
            self.extra.setdefault(int(added[1]), {})[id_] = text
        elif part == "askunit" and any(ask.id == id_ for ask in self.form.unit_prices):
            self.unit_prices[id_] = self._amount(name, text)
        elif part == "alt" and any(one.id == id_ for one in self.form.alternates):
            self.alternates[id_] = self._alternate(name, id_, text)
        elif part == "allowance" and any(one.id == id_ for one in self.form.allowances):
            self.allowances[id_] = self._amount(name, text)
        elif name in _TEXTS:
            self.texts[name] = " ".join(text.split())
        elif name in _LISTS:
            self.lists[name] = _listed(text)
        elif name == "total":
            self.total = self._amount(name, text)
        elif name == "validity":
            self.validity_days = self._days(name, text)
        else:
            self.unread.append(Unread(name, text, "This is no field of the form it was sent with."))

    def entries(self) -> list[BidEntry]:
        """The lines of the form; with those that are not on it left to ``added``."""
        known = {line.item_id for line in self.form.lines}
        return [
            self._entry(key, parts)
            for key, parts in self.lines.items()
            if _item_id(key) in known and self._says_something(key, parts)
        ]

    def added(self) -> list[AddedLine]:
        known = {line.item_id for line in self.form.lines}
        found = []
        for number, parts in sorted(self.extra.items()):
            amount = self._amount(f"added{number}|amount", parts.get("amount", ""))
            found.append(AddedLine(parts.get("text", "not named"), amount))
        for key, parts in self.lines.items():
            id_ = _item_id(key)
            if id_ in known or not parts.keys() - {"quantity"}:
                continue
            entry = self._entry(key, parts)
            told = " ".join(part for part in (f"Line {id_}", entry.note) if part)
            found.append(AddedLine(told, entry.amount))
            why = "This line is not on the form it was sent with; it stands as an added line."
            self.unread.append(Unread(f"line|{key}", told, why))
        return found

    def _says_something(self, key: str, parts: Mapping[str, str]) -> bool:
        """False for the untouched copy of a line, of which only the quantity is there."""
        line = self.form.line(_item_id(key))
        quantity = read_number(parts.get("quantity", ""))
        own = isinstance(quantity, Decimal) and line and float(quantity) != line.quantity
        return bool(parts.keys() - {"quantity"}) or bool(own)

    def _entry(self, key: str, parts: Mapping[str, str]) -> BidEntry:
        amount = self._amount(f"amount|{key}", parts.get("amount", ""))
        unit_price = self._amount(f"unit|{key}", parts.get("unit", ""))
        note = " ".join(parts.get("note", "").split())
        if amount.state is State.MISSING and unit_price.state is not State.PRICED:
            amount = unit_price if unit_price.state is not State.MISSING else _said_in_note(note)
        return BidEntry(
            item_id=_item_id(key),
            amount=amount,
            unit_price=unit_price,
            quantity=self._quantity(key, parts.get("quantity", "")),
            note=note,
        )

    def _quantity(self, key: str, text: str) -> float | None:
        """The bidder's own quantity; None where ours was left."""
        if not text:
            return None
        number = read_number(text, self.comma_decimals)
        if isinstance(number, NumberFault) or number < 0:
            why = number.why if isinstance(number, NumberFault) else "It is below zero."
            self._ask(f"quantity|{key}", text, why)
            return None
        line = self.form.line(_item_id(key))
        return None if line is not None and float(number) == line.quantity else float(number)

    def _amount(self, name: str, text: str) -> Amount:
        reading = read_amount(text, comma_decimals=self.comma_decimals)
        if reading.why:
            self._ask(name, reading.amount.text, reading.why)
        return reading.amount

    def _alternate(self, name: str, id_: str, text: str) -> Amount:
        """A positive amount; a minus before what is deducted is only said twice."""
        reading = read_amount(text, comma_decimals=self.comma_decimals, below_zero=True)
        amount, why = reading.amount, reading.why
        if amount.usd is not None and amount.usd < 0:
            kind = next(one.kind for one in self.form.alternates if one.id == id_)
            if kind == "deduct":
                amount = Amount.of(-amount.usd, amount.text)
            else:
                why = "It is below zero, where an amount to add is asked for."
                amount = Amount(State.UNREAD, text=amount.text)
        if why:
            self._ask(name, amount.text, why)
        return amount

    def _days(self, name: str, text: str) -> int | None:
        match = _DAYS.fullmatch(" ".join(text.lower().split()))
        if match is None:
            self._ask(name, text, "It does not say a number of days.")
            return None
        return int(match[1]) * _DAYS_IN[(match[2] or "")[:1]]

    def _ask(self, name: str, text: str, why: str) -> None:
        asked = Unread(name, text, why)
        if asked not in self.unread:
            self.unread.append(asked)


def _item_id(key: str) -> str:
    return key.partition("#")[0]


def _said_in_note(note: str) -> Amount:
    """``by others`` or ``in line 4``, where it stands in the note of a line without a price."""
    said = read_amount(note).amount
    return said if said.state in (State.INCLUDED, State.EXCLUDED) else MISSING


def _listed(text: str) -> tuple[str, ...]:
    """The pieces of a list that was typed one a line or with semicolons."""
    pieces = (" ".join(piece.split()).lstrip("-*• ") for piece in re.split(r"[\r\n;]+", text))
    return tuple(piece for piece in pieces if piece and piece.lower() not in _NOTHING)
