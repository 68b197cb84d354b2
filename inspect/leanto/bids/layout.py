"""What the fields of a bid form are called, in every format that it is written and read in."""

from __future__ import annotations

from typing import Literal

TERMS = (
    ("bidder", "Bidder"),
    ("total", "Base bid, total"),
    ("exclusions", "Left out of this bid"),
    ("qualifications", "Conditions of this bid"),
    ("validity", "Holds for, days"),
    ("start", "Earliest start"),
    ("duration", "Duration, working days"),
)
"""Field and label of everything that is asked for once."""
IDENTITY = (("form_id", "Form id"), ("job_id", "Job id"), ("addendum", "Addendum"))
"""Field and label of what tells one form from another; not to be changed by a bidder."""
ADDED_LINES = 5
"""Lines for work that is not on the form: ``added1|text``, ``added1|amount`` and so on."""

BID_SHEET, UNIT_PRICE_SHEET, ALTERNATE_SHEET, TERM_SHEET = (
    "Bid",
    "Unit prices",
    "Alternates",
    "Terms",
)
LINE, ID, WORK, PLACE, QUANTITY, UNIT, UNIT_PRICE, AMOUNT, NOTE = BID_COLUMNS = (
    "Line",
    "Id",
    "Work",
    "Place",
    "Quantity",
    "Unit",
    "Unit price",
    "Amount",
    "Note",
)
VALUE = "Value"
"""The column of ``Terms`` that a bidder writes in."""
UNIT_PRICE_COLUMNS = (ID, WORK, UNIT, UNIT_PRICE, NOTE)
ALTERNATE_COLUMNS = (ID, WORK, "Add or deduct", AMOUNT, NOTE)
TERM_COLUMNS = (ID, WORK, VALUE)
"""``Id`` holds the field's name, ``Work`` its label."""

Part = Literal["quantity", "unit", "amount", "note", "askunit", "alt", "allowance"]


def field(part: Part, id_: str) -> str:
    """The field of a line, an asked unit price, an alternate or an allowance: ``unit|<id>``."""
    return f"{part}|{id_}"


def added_field(number: int, part: Literal["text", "amount"]) -> str:
    return f"added{number}|{part}"


def pdf_name(name: str) -> str:
    """The name of a field in a PDF form, where a full stop would part a parent from its child."""
    return name.replace(".", "~")


def from_pdf_name(name: str) -> str:
    return name.replace("~", ".")
