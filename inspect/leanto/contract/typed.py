"""What people type about openings and payments; what may mean two things is refused."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date
from decimal import Decimal
from typing import cast, get_args

from pydantic import ValidationError

from leanto.bids.reading.numbers import NumberFault, read_number
from leanto.errors import LeantoError
from leanto.quantities import shown
from leanto.quantities.area import parse_area_sqft
from leanto.quantities.refusal import QuantityError
from leanto.record.agreed_entry import FoundKind, FoundWork

KINDS: tuple[str, ...] = get_args(FoundKind)
"""What can be found behind a lining."""
_BARE = re.compile(r"[0-9][0-9,]*(?:\.[0-9]+)?|\.[0-9]+")


def typed_usd(text: str) -> Decimal:
    """Dollars such as ``1,200.50``; LeantoError for what may mean two things."""
    number = read_number(text)
    if isinstance(number, NumberFault):
        raise LeantoError(f"“{text}” is no clear amount. {number.why}", "Write it like 1200.50.")
    return number


def typed_day(text: str) -> date:
    """A day such as ``2026-11-25``; LeantoError for anything else."""
    try:
        return date.fromisoformat(text.strip())
    except ValueError:
        raise LeantoError(f"“{text}” is no day.", "Write it like 2026-11-25.") from None


def typed_area_sqft(text: str, what: str) -> float:
    """Square feet from ``12``, ``12 sq ft`` or ``3' x 4'``; LeantoError for anything else."""
    bare = text.strip()
    try:
        return parse_area_sqft(f"{bare} {shown().area_unit}" if _BARE.fullmatch(bare) else bare)
    except QuantityError as error:
        raise LeantoError(f"{what}: {error.what}", error.remedy) from None


def typed_kinds(texts: Iterable[str]) -> tuple[FoundKind, ...]:
    """The kinds in texts such as ``rot, pests``; the first letters of one are enough."""
    found: dict[str, None] = {}
    for text in (part.strip().lower() for one in texts for part in one.split(",")):
        near = [kind for kind in KINDS if kind.startswith(text)] if text else []
        if text and len(near) != 1:
            raise LeantoError(f"“{text}” is no kind of damage.", f"One of: {', '.join(KINDS)}.")
        found |= dict.fromkeys(near)
    return tuple(cast("FoundKind", kind) for kind in found)


def typed_works(texts: Iterable[str]) -> tuple[FoundWork, ...]:
    """The works in texts such as ``sister-stud=3 replace-sill=4.5``."""
    parts = [part for text in texts for part in re.split(r"[\s;,]+(?=[a-z])", text.strip()) if part]
    return tuple(map(_work, parts))


def _work(text: str) -> FoundWork:
    work, is_there, typed = text.strip(" ,;").partition("=")
    number = read_number(typed) if is_there else NumberFault("It has no quantity.")
    try:
        if not isinstance(number, NumberFault):
            return FoundWork(work=work.strip(), quantity=float(number))
        why = number.why
    except ValidationError:
        why = "A quantity is needed that is not zero."
    raise LeantoError(f"“{text}”: {why}", "Write it like sister-stud=3.")
