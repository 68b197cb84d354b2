"""A CSV file -> its fields as they were typed."""

from __future__ import annotations

import csv
import io

from leanto.bids.reading.refusal import BidFileError
from leanto.bids.reading.sheet import MOST_ROWS, read_sheet


def read_csv(name: str, content: bytes) -> dict[str, str]:
    """Field and text of every cell; the columns are those of the form's main sheet.

    Below the lines may stand rows whose ``Id`` is a field, such as ``bidder`` or ``alt|<id>``.
    """
    text = _decoded(content)
    first = next((line for line in text.splitlines() if line.strip()), "")
    mark = max(";\t,", key=first.count)
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=mark))
    except csv.Error:
        raise BidFileError(f"{name} is broken or no CSV file.", "Ask for it again.") from None
    if len(rows) > MOST_ROWS:
        raise BidFileError(f"{name} has over {MOST_ROWS:,} rows.", "Ask for the form as sent.")
    fields = read_sheet(rows)
    if fields is None:
        raise BidFileError(
            f"{name} has no column “Id”.", "Use the columns of the form: Id, Unit price, Amount."
        )
    return fields


def _decoded(content: bytes) -> str:
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        return content.decode("utf-16", "replace")
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        return content.decode("cp1252", "replace")
