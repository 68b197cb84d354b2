"""Rows of text with titled columns -> fields; the same for workbooks and CSV."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from leanto.bids.layout import (
    AMOUNT,
    BID_COLUMNS,
    ID,
    IDENTITY,
    NOTE,
    PLACE,
    QUANTITY,
    TERMS,
    UNIT_PRICE,
    VALUE,
    WORK,
)
from leanto.scope.work import Trade

MOST_ROWS = 5_000
MOST_COLUMNS = 60
HEADINGS = {str(trade) for trade in Trade} | {"work not on the form", "allowances, alike for all"}
"""Words of the form itself that head the rows below them."""
_SUM = re.compile(r"(?:sub-?total|total|sum|all lines)\b")
_TITLES = {title.lower(): title for title in (*BID_COLUMNS, VALUE)}
_LABELS = {label.lower(): name for name, label in (*TERMS, *IDENTITY)} | {"total": "total"}
_ONCE = {name for name, _ in (*TERMS, *IDENTITY)}
_PARTS = (("quantity", QUANTITY), ("unit", UNIT_PRICE), ("amount", AMOUNT), ("note", NOTE))

Rows = Sequence[Sequence[str]]


def read_sheet(rows: Rows, of: str = "", added_from: int = 1) -> dict[str, str] | None:
    """The fields of one sheet; None where no row titles a column ``Id``.

    ``of`` is ``askunit`` or ``alt`` on the sheets where an id stands for that. A line whose id
    comes again was split: its parts are numbered with ``#``. Rows without an id that hold a price
    are lines that the bidder added, from number ``added_from`` on.
    """
    top = next((at for at, row in enumerate(rows) if _titles(row).get(ID) is not None), None)
    if top is None:
        return None
    columns = _titles(rows[top])
    fields: dict[str, str] = {}
    times: dict[str, int] = {}
    added = added_from
    for row in rows[top + 1 :]:
        cells = {title: _cell(row, at) for title, at in columns.items()}
        id_ = cells[ID]
        name = _once(id_, cells)
        if name:
            fields[name] = fields.get(name) or _value(cells)
        elif "|" in id_:
            fields[id_] = _value(cells)
        elif id_ and of:
            price = cells.get(UNIT_PRICE if of == "askunit" else AMOUNT, "")
            fields[f"{of}|{id_}"] = price or cells.get(NOTE, "")
        elif id_:
            times[id_] = times.get(id_, 0) + 1
            key = id_ if times[id_] == 1 else f"{id_}#{times[id_]}"
            fields |= {f"{part}|{key}": cells[title] for part, title in _PARTS if cells.get(title)}
        elif text := _added_text(cells):
            fields[f"added{added}|text"] = text
            amount = cells.get(AMOUNT, "") or cells.get(UNIT_PRICE, "")
            if amount:
                fields[f"added{added}|amount"] = amount
            added += 1
    return fields


def identity_in(rows: Rows) -> Iterator[tuple[str, str]]:
    """Form, job and addendum, where their labels stand with the value to the right."""
    labels = {label.lower(): name for name, label in IDENTITY} | {
        name: name for name, _ in IDENTITY
    }
    for row in rows:
        for at, cell in enumerate(row):
            name = labels.get(cell.strip().lower().rstrip(":"))
            if name and (value := next((x.strip() for x in row[at + 1 :] if x.strip()), "")):
                yield name, value


def _titles(row: Sequence[str]) -> dict[str, int]:
    found = {cell.strip().lower(): at for at, cell in reversed(list(enumerate(row)))}
    return {title: found[low] for low, title in _TITLES.items() if low in found}


def _cell(row: Sequence[str], at: int) -> str:
    return row[at].strip() if at < len(row) else ""


def _once(id_: str, cells: dict[str, str]) -> str:
    """The field that is asked for once, by its id or by its label."""
    if id_ in _ONCE:
        return id_
    if id_:
        return ""
    words = (cells.get(WORK, ""), cells.get(PLACE, ""), cells.get("Line", ""))
    return next(
        (_LABELS[w.lower().rstrip(":")] for w in words if w.lower().rstrip(":") in _LABELS), ""
    )


def _value(cells: dict[str, str]) -> str:
    """What was written for a field, in whichever of the columns that are written in."""
    for title in (VALUE, AMOUNT, UNIT_PRICE, NOTE):
        if cells.get(title):
            return cells[title]
    return ""


def _added_text(cells: dict[str, str]) -> str:
    """What a row without an id says; nothing of an empty row, a heading or a sum."""
    words = " ".join(cells[title] for title in (WORK, PLACE, NOTE) if cells.get(title))
    if words.lower() in HEADINGS or _SUM.match(words.lower()):
        return ""
    priced = cells.get(AMOUNT) or cells.get(UNIT_PRICE)
    return words or ("not named" if priced else "")
