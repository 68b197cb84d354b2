"""Text from anywhere made fit for the screen: nothing in it can steer the terminal."""

from __future__ import annotations

import unicodedata

_TURNS_TEXT = frozenset("\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Characters that turn the order of the text after them around."""


def visible(text: str) -> str:
    """The text with control characters shown as codes such as ``\\x1b``; line breaks stay."""
    if text.isprintable():  # as nearly all text is; such text holds none of these
        return text
    return "".join(_visible(char) for char in text.replace("\r\n", "\n").expandtabs(4))


def on_one_line(text: str) -> str:
    """The text as one line, control characters shown as codes."""
    return visible(" ".join(text.split()))


def _visible(char: str) -> str:
    if char == "\n":
        return char
    if unicodedata.category(char) in ("Cc", "Cs", "Zl", "Zp") or char in _TURNS_TEXT:
        return f"\\x{ord(char):02x}" if ord(char) < 256 else f"\\u{ord(char):04x}"
    return char
