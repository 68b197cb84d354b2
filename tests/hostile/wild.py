"""Texts that somebody careless or hostile could bring, and files that were tampered with."""

from __future__ import annotations

import re

from hypothesis import strategies as st

ESCAPES = (
    "\x1b]0;owned\x07",  # sets a window's title
    "\x1b[2J\x1b[H",  # clears the screen
    "\x9b31m",  # the same kind of sequence in one byte
    "\x1bP+q544e\x1b\\",  # asks the terminal, which answers as if typed
    "\r\x1b[1A",  # overwrites the line before
    "\x00",
    "\x08\x08\x08",
    "\x7f",
)
TURNING = ("\u202egnp.exe", "\u2066\u2069", "\u200f", "\u061c")
HIDDEN = ("a\u200bb", "\ufeff", "\u00ad", "e\u0301\u0302\u0303", "\U000e0041", "\u2028", "\u2029")
SCRIPTS = ("Łódź", "Ωμέγα", "сарай", "שלום", "مرحبا", "नमस्ते", "物置小屋", "헛간", "🏚\ufe0f", "ไทย")
MARKUP = (
    "<img src='/etc/hostname'/>",
    "<b>never closed",
    "[bold red]loud[/]",
    "[@click=app.quit]press[/]",
    "<a href='javascript:x'>x</a>",
    "&lt;&amp;&#27;[31m",
    "{{7*7}}${x}%s%n",
    "=1+1",
)
PATHS = ("../../etc/passwd", "/etc/passwd", "C:\\x\\y", "..", ".", "~/x", "a/b", "CON", "-rf")

PIECES = (*ESCAPES, *TURNING, *HIDDEN, *SCRIPTS, *MARKUP, *PATHS, " ", "\n", "x" * 300)
TEXTS = st.lists(st.one_of(st.sampled_from(PIECES), st.text(max_size=20)), max_size=8).map("".join)
EVERYTHING = " ".join(PIECES)
"""All of it at once."""

_STEERING = re.compile(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")


def steering(text: str) -> list[str]:
    """What in the text would steer a terminal; line feeds may."""
    return _STEERING.findall(text)


@st.composite
def tampered(draw: st.DrawFn, texts: tuple[str, ...]) -> str:
    """One of the texts with a few places cut out, doubled or replaced."""
    text = draw(st.sampled_from(texts))
    for _ in range(draw(st.integers(1, 4))):
        start = draw(st.integers(0, len(text)))
        end = min(len(text), start + draw(st.sampled_from([0, 1, 2, 8, 40, 400])))
        new = draw(
            st.one_of(
                st.sampled_from(
                    ["", text[start:end] * 2, "\n", ": ", "- ", "{", "[", "'", '"', "#"]
                ),
                st.sampled_from(
                    ["1e400", "-1", ".nan", "inf", "0x1F", "null", "~", "true", "9" * 30]
                ),
                st.sampled_from(["&a ", "*a", "!!python/object:os.system ", "<<: ", "---\n", "\t"]),
                st.sampled_from(PIECES),
            )
        )
        text = text[:start] + new + text[end:]
    return text
