"""Amounts as people write them: what is clear is read, the rest is asked about."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal

from leanto.bids.model import MISSING, Amount, State

MOST_USD = Decimal(10_000_000)
MAX_CHARS = 200

_ALIKE = str.maketrans(
    dict.fromkeys("\u2018\u2019\u02bc\u00b4`", "'") | dict.fromkeys("\u2010\u2011\u2012\u2212", "-")
)
_LINES = r"[0-9]{1,3}(?:(?:, | ?& ?| and )[0-9]{1,3})*"
_WHERE = rf"(?:(?:lines?|items?|no\.?|#) ?)*(?:{_LINES}|[a-z][a-z &/-]*)"
_INCLUDED = re.compile(
    rf"(?:included?|incl?\.?)(?: ?(?:(?:in|with|under) )?{_WHERE})?"
    rf"|(?:in|with|w/|part of) ?{_WHERE}"
    rf"|see (?:(?:lines?|items?|no\.?|#) ?)*{_LINES}"
)
_EXCLUDED = re.compile(
    r"(?:n\.? ?i\.? ?c\.?|not in (?:the )?contract|not incl?(?:\.|uded)?|excl?(?:\.|uded|udes?)?"
    r"|by (?:the )?(?:others?|owner)|none|no bid|not offered|not bid|not priced)(?: ?[;,:-].*)?"
)
_FREE = re.compile(r"(?:no charge|free(?: of charge)?|nil|zero)")
_MONEY = re.compile(r"(?:us ?\$|usd|\$|dollars?)")
_PER = re.compile(
    r" ?(?:/|per|a|each|ea\.?) ?(?:sf|sq\.? ?ft\.?|square foot|lf|lin\.? ?ft\.?|linear foot|ft|foot"
    r"|m2|m²|sqm|sq\.? ?m\.?|m3|m³|m|met(?:er|re)"
    r"|each|ea\.?|hour|hr\.?|h|stud|sheet|piece|pc\.?|square|day)?$"
)
_LUMP = re.compile(r" ?(?:lump sum|l\.?s\.?|total|net)$")
_NUMBER = re.compile(r"[0-9](?:[0-9.,' ]*[0-9])?|[.,][0-9]+")
_RANGE = re.compile(r"[0-9][0-9.,' k]* ?(?:-|to) ?[0-9][0-9.,' ]*k?")


@dataclass(frozen=True, slots=True)
class Reading:
    """What an amount says; ``why`` it is not understood, where it is not."""

    amount: Amount
    why: str = ""


@dataclass(frozen=True, slots=True)
class NumberFault:
    why: str


def read_amount(text: str, *, comma_decimals: bool = False, below_zero: bool = False) -> Reading:
    """The amount in text such as ``1,200.50``, ``$1 200``, ``incl.`` or ``by others``.

    Blank is missing, and zero is a price of zero. ``comma_decimals`` says that other figures of
    the same file have a decimal comma, which makes ``1,200`` doubtful; ``below_zero`` lets a
    deduction be written with a minus.
    """
    shown = " ".join(text.split())
    plain = _plain(text)
    if not plain:
        return Reading(MISSING)
    if len(plain) > MAX_CHARS:
        return _unread(shown, "It is too long for an amount.")
    if _EXCLUDED.fullmatch(plain):
        return Reading(Amount(State.EXCLUDED, text=shown))
    if _FREE.fullmatch(plain):
        return Reading(Amount.of(0, shown))
    if _INCLUDED.fullmatch(plain) and not _MONEY.search(plain):
        return Reading(Amount(State.INCLUDED, text=shown))
    number = _number_in(plain, comma_decimals)
    if isinstance(number, NumberFault):
        return _unread(shown, number.why)
    if number < 0 and not below_zero:
        return _unread(shown, "It is below zero. What is deducted, and from what?")
    if abs(number) > MOST_USD:
        return _unread(shown, f"It is over ${MOST_USD:,}. Is it meant?")
    return Reading(Amount.of(number, shown))


def has_decimal_comma(texts: Iterable[str]) -> bool:
    """Whether one of the texts can only be read with a decimal comma, such as ``1.200,50``."""
    return any(_decimal_comma(_plain(text)) for text in texts)


def read_number(text: str, comma_decimals: bool = False) -> Decimal | NumberFault:
    """A plain number, such as a quantity."""
    return _number_in(_plain(text), comma_decimals)


def _number_in(plain: str, comma_decimals: bool) -> Decimal | NumberFault:
    bare = _MONEY.sub(" ", plain).strip()
    if _RANGE.fullmatch(bare):
        return NumberFault("It is a range. Which figure holds?")
    bare = _LUMP.sub("", _PER.sub("", bare)).strip()
    bare = re.sub(r"[.,]-{1,2}$", "", bare)
    negative = bare.startswith("-") or (bare.startswith("(") and bare.endswith(")"))
    if bare.startswith("(") and bare.endswith(")"):
        bare = bare[1:-1]
    bare = bare.lstrip("+-").strip()
    thousands = bare.endswith("k")
    bare = bare.removesuffix("k").strip()
    if not _NUMBER.fullmatch(bare):
        return NumberFault(_no_number(plain))
    number = _separated(bare, comma_decimals and not thousands)
    if isinstance(number, NumberFault):
        return number
    number = number * 1000 if thousands else number
    return -number if negative else number


def _no_number(plain: str) -> str:
    if not any(char.isalnum() for char in plain):
        return "It is a mark only. Is it nothing, zero, or in another line?"
    if any(char.isdigit() for char in plain):
        return "There are words beside the figure. Which amount holds for the line?"
    return "There are letters where a price belongs."


def _separated(text: str, comma_decimals: bool) -> Decimal | NumberFault:
    """The number in digits, points, commas, apostrophes and spaces."""
    for spacer in ("'", " "):
        if spacer in text:
            whole = re.fullmatch(rf"([0-9]{{1,3}}(?:{spacer}[0-9]{{3}})+)([.,][0-9]+)?", text)
            if whole is None:
                return NumberFault("Its digits are grouped in a way that may mean two things.")
            return Decimal(whole[1].replace(spacer, "") + (whole[2] or "").replace(",", "."))
    if "." in text and "," in text:
        return _with_both(text)
    if "," in text:
        return _with_commas(text, comma_decimals)
    if "." in text:
        return _with_points(text)
    return Decimal(text)


def _with_both(text: str) -> Decimal | NumberFault:
    decimal = "." if text.rfind(".") > text.rfind(",") else ","
    group = "," if decimal == "." else "."
    if not re.fullmatch(rf"[0-9]{{1,3}}(?:\{group}[0-9]{{3}})+\{decimal}[0-9]+", text):
        return NumberFault("Its points and commas may mean two things.")
    return Decimal(text.replace(group, "").replace(decimal, "."))


def _with_commas(text: str, comma_decimals: bool) -> Decimal | NumberFault:
    if re.fullmatch(r"[1-9][0-9]{0,2}(?:,[0-9]{3})+", text):
        if comma_decimals and text.count(",") == 1:
            return _either(text, ",")
        return Decimal(text.replace(",", ""))
    if text.count(",") == 1 and re.fullmatch(r"[0-9]*,[0-9]{1,2}", text):
        return Decimal(text.replace(",", "."))
    return NumberFault("Its commas may mean two things.")


def _with_points(text: str) -> Decimal | NumberFault:
    if re.fullmatch(r"[1-9][0-9]{0,2}\.[0-9]{3}", text):
        return _either(text, ".")
    if re.fullmatch(r"[1-9][0-9]{0,2}(?:\.[0-9]{3}){2,}", text):
        return Decimal(text.replace(".", ""))
    if text.count(".") == 1:
        return Decimal(text)
    return NumberFault("Its points may mean two things.")


def _either(text: str, mark: str) -> NumberFault:
    large, small = text.replace(mark, ""), text.replace(mark, ".")
    return NumberFault(f"It may be {int(large):,} or {Decimal(small).normalize():f}. Which?")


def _decimal_comma(plain: str) -> bool:
    bare = _PER.sub("", _MONEY.sub(" ", plain).strip())
    return re.fullmatch(r"(?:[0-9]{1,3}(?:[. '][0-9]{3})+|[0-9]+),[0-9]{1,2}", bare) is not None


def _plain(text: str) -> str:
    """Lower case, with one kind of space, dash and apostrophe."""
    return " ".join(unicodedata.normalize("NFKC", text).translate(_ALIKE).split()).lower()


def _unread(shown: str, why: str) -> Reading:
    return Reading(Amount(State.UNREAD, text=shown), why)
