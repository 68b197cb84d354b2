"""Text made fit for a cell of a spreadsheet: never a formula, never a hidden character."""

from __future__ import annotations

from leanto.reports.characters import printable

_STARTS_FORMULA = frozenset("=+-@\uff1d\uff0b\uff0d\uff20")
"""The wide forms too: some programs take them for the narrow ones."""
LONGEST = 32_000
"""A cell of a workbook holds little more."""


def cell_text(text: str) -> str:
    """The text with control characters as codes, behind an apostrophe where a spreadsheet program
    could take it for a formula; it stays harmless when the sheet is saved as CSV."""
    plain = printable(text)
    if plain.lstrip()[:1] in _STARTS_FORMULA and plain.strip():
        plain = f"'{plain.lstrip()}"
    return plain[:LONGEST]
