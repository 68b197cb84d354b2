"""What an unquoted YAML word means: null, true, false, a decimal number, or else text.

Words that YAML 1.1 turns into something else (``on``, ``012``, ``12:30``, ``2026-01-01``)
stay the text that was typed.
"""

from __future__ import annotations

import math
import re

MAX_DIGITS = 18
"""Digits of a whole number; more than any length, price or count needs."""

NULL = re.compile(r"~|null|")
BOOL = re.compile(r"true|false")
INT = re.compile(r"[-+]?(?:0|[1-9][0-9]*)")
FLOAT = re.compile(r"[-+]?(?:(?:0|[1-9][0-9]*)(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?")

_SPECIAL_START = frozenset("~ntf-+.0123456789")
"""What every word but text begins with."""
UNWANTED = re.compile(
    "[^\t\n\r\x20-\x7e\xa0-\u2027\u202a-\ud7ff\ue000-\ufefe\uff00-\ufffd\U00010000-\U0010ffff]"
)
"""A character that no file may hold: control characters, NUL, odd line breaks, half characters."""


def scalar_value(word: str) -> str | int | float | bool | None:
    """The value of an unquoted word; ValueError for a number out of all bounds."""
    if word and word[0] not in _SPECIAL_START:
        return word
    if NULL.fullmatch(word):
        return None
    if BOOL.fullmatch(word):
        return word == "true"
    if INT.fullmatch(word):
        if len(word.lstrip("+-")) > MAX_DIGITS:
            raise ValueError(f"A whole number has at most {MAX_DIGITS} digits.")
        return int(word)
    if FLOAT.fullmatch(word):
        number = float(word)
        if math.isinf(number):
            raise ValueError("This number is too large.")
        return number
    return word
