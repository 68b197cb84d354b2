"""Typed text made plain: one kind of quote, dash, fraction and space."""

from __future__ import annotations

import re
import unicodedata

from leanto.quantities.refusal import QuantityError

MAX_CHARS = 40
AMOUNT = r"(?:[0-9]+[ -][0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]+(?:\.[0-9]*)?|\.[0-9]+)"
"""A regular expression for ``7``, ``7.5``, ``.5``, ``1/2``, ``3 1/2`` and ``3-1/2``."""

_ALIKE = str.maketrans(
    dict.fromkeys("\u2018\u2019\u201b\u2032\u02b9\u02bc\u00b4`", "'")
    | dict.fromkeys("\u201c\u201d\u201f\u2033\u02ba", '"')
    | dict.fromkeys("\u2010\u2011\u2012\u2013\u2014\u2212", "-")
    | {"\u2044": "/", "\u00d7": "x", "\u00ba": "\u00b0"}
)


def tidy(text: str, what: str, example: str, error: type[QuantityError]) -> str:
    """The text in lower case with plain quotes, dashes, fractions and single spaces.

    Refuses what is empty or longer than 40 characters; ``what`` names the quantity.
    """
    if len(text) > MAX_CHARS:
        raise error(f"{what} has at most {MAX_CHARS} characters.", example)
    spelled = "".join(_spelled(char) for char in text).translate(_ALIKE)
    plain = re.sub(r" ?/ ?", "/", " ".join(spelled.split())).replace("''", '"').lower()
    if not plain:
        raise error(f"{what} is needed here.", example)
    return plain


def shown(text: str) -> str:
    """The text in quotes for a message of one line."""
    return '"' + "".join(char if char.isprintable() else "?" for char in text.strip()) + '"'


def _spelled(char: str) -> str:
    """A fraction sign such as \u00bd written out, any other character as it is."""
    if unicodedata.decomposition(char).startswith("<fraction>"):
        return " " + unicodedata.normalize("NFKC", char)
    return char
