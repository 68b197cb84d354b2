"""Short ids of a form's lines: a number for people, and four letters that stay with the line."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Mapping
from typing import Literal

from leanto.bids.layout import field
from leanto.bids.model import BidForm

Kind = Literal["line", "askunit", "alt", "allowance"]
_LETTERS = "bcdfghkmnprstvwxz"
"""No vowels: no word, no month, and no number for a spreadsheet program."""
_PREFIX: dict[Kind, str] = {"line": "", "askunit": "U", "alt": "A", "allowance": "S"}
_KIND = {prefix: kind for kind, prefix in _PREFIX.items()}
_SHORT = re.compile(r"([UAS]?)([0-9]{1,4})(?:-([a-z]{4}))?", re.IGNORECASE)
_LINE_PARTS = ("quantity", "unit", "amount", "note")


def alternate_number(at: int) -> str:
    """``A1`` for the first alternate of a form."""
    return f"{_PREFIX['alt']}{at + 1}"


def short_ids(form: BidForm) -> dict[str, tuple[Kind, str]]:
    """Kind and full id by short id, such as ``12-kvdt``; ``U`` a unit price, ``A`` an alternate,
    ``S`` a stated sum."""
    return {
        f"{_PREFIX[kind]}{number}-{_letters(id_)}": (kind, id_)
        for kind, number, id_ in _numbered(form)
    }


def short_id(form: BidForm, kind: Kind, id_: str) -> str:
    """The short id of a line; KeyError for one that is not on the form."""
    return {full: short for short, full in short_ids(form).items()}[kind, id_]


def with_full_ids(fields: Mapping[str, str], form: BidForm) -> dict[str, str]:
    """The fields with the full ids in place of short ones; others are left as they are.

    The letters decide, so that a line is found when it got another number since; a number without
    letters is that of the form.
    """
    known = {(kind, id_) for kind, _, id_ in _numbered(form)}
    return {_full(name, form, known): text for name, text in fields.items()}


def shown_field(name: str, form: BidForm) -> str:
    """The field with a plain number in the place of the full id, such as ``unit|12``."""
    part, is_there, key = name.partition("|")
    id_, split, which = key.partition("#")
    for kind, number, one in _numbered(form):
        fits = kind == part if part in _PREFIX else kind == "line"
        if is_there and one == id_ and fits:
            return f"{part}|{_PREFIX[kind]}{number}{split}{which}"
    return name


def _full(name: str, form: BidForm, known: set[tuple[Kind, str]]) -> str:
    part, is_there, key = name.partition("|")
    id_, split, which = key.partition("#")
    match = _SHORT.fullmatch(id_) if is_there else None
    if match is None or ("line", id_) in known:
        return name
    kind = _KIND[match[1].upper()]
    if part in ("askunit", "alt"):
        kind = "askunit" if part == "askunit" else "alt"
    found = _found(form, kind, int(match[2]), (match[3] or "").lower())
    if found is None:
        return name
    if kind == "line":
        return f"{part}|{found}{split}{which}" if part in _LINE_PARTS else name
    return field(kind, found)


def _found(form: BidForm, kind: Kind, number: int, letters: str) -> str | None:
    """The id that number and letters stand for; None where they fit none, or more than one."""
    same = [(at, id_) for one, at, id_ in _numbered(form) if one == kind]
    if letters:
        same = [(at, id_) for at, id_ in same if _letters(id_) == letters]
        if len(same) == 1:
            return same[0][1]
    return next((id_ for at, id_ in same if at == number), None)


def _numbered(form: BidForm) -> list[tuple[Kind, int, str]]:
    found: list[tuple[Kind, int, str]] = [("line", one.line, one.item_id) for one in form.lines]
    found += [("askunit", at, one.id) for at, one in enumerate(form.unit_prices, start=1)]
    found += [("alt", at, one.id) for at, one in enumerate(form.alternates, start=1)]
    found += [("allowance", at, one.id) for at, one in enumerate(form.allowances, start=1)]
    return found


def _letters(id_: str) -> str:
    digest = int.from_bytes(hashlib.sha256(id_.encode("utf-8")).digest()[:8], "big")
    letters = []
    for _ in range(4):
        digest, at = divmod(digest, len(_LETTERS))
        letters.append(_LETTERS[at])
    return "".join(letters)
