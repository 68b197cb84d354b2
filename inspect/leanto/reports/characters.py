"""Text made fit to print: nothing that steers a terminal, hides, or turns the reading around."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator

_INVISIBLE = frozenset("\u00ad\u200b\u200c\u200d\u2060\ufeff")
"""Soft hyphen, joiners and marks without width: they change nothing that is drawn here."""
_LINE_ENDS = str.maketrans({"\u2028": "\n", "\u2029": "\n", "\u0085": "\n", "\t": " "})

_PLAIN = re.compile("[ -~\n]*")
_RTL = "\\u0590-\\u065f\\u066a-\\u06ef\\u06fa-\\u08ff\\ufb1d-\\ufdff\\ufe70-\\ufefc"
"""Hebrew, Arabic and their kin, without the Arabic digits, which run from left to right."""
_RTL_RUN = re.compile(rf"[{_RTL}](?:[^\w]*[{_RTL}])*")


def printable(text: str) -> str:
    """The text in composed form, with line feeds as its only control characters.

    Characters without width are dropped; other control and format characters, among them
    terminal escapes and marks that reverse the direction, become codes such as ``[U+001B]``.
    """
    if _PLAIN.fullmatch(text):
        return text
    plain = text.replace("\r\n", "\n").replace("\r", "\n").translate(_LINE_ENDS)
    return "".join(_shown(character) for character in unicodedata.normalize("NFC", plain))


def code(character: str) -> str:
    """The visible stand-in for a character, such as ``[U+53F0]``."""
    return f"[U+{ord(character):04X}]"


def columns(text: str) -> int:
    """How many columns of a terminal the text takes."""
    if text.isascii():
        return len(text)
    return sum(_columns(character) for character in text)


def in_drawing_order(text: str) -> str:
    """One line of text with its right-to-left words turned, so that drawing from the left reads
    right.

    A simple form of the bidirectional algorithm: the line itself runs from left to right,
    brackets are not mirrored, and a text that wraps has its right-to-left lines in wrong order.
    """
    return _RTL_RUN.sub(lambda run: "".join(reversed(list(_clusters(run[0])))), text)


def _shown(character: str) -> str:
    if character in " \n" or character.isalnum():
        return character
    if character in _INVISIBLE or "\ufe00" <= character <= "\ufe0f":
        return ""
    category = unicodedata.category(character)
    if category == "Zs":
        return " "
    return code(character) if category in ("Cc", "Cf", "Cs", "Co", "Cn") else character


def _columns(character: str) -> int:
    if unicodedata.combining(character):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def _clusters(text: str) -> Iterator[str]:
    """Letters with the marks that stand on them."""
    cluster = ""
    for character in text:
        if cluster and not unicodedata.combining(character):
            yield cluster
            cluster = ""
        cluster += character
    if cluster:
        yield cluster
