"""A returned file of any kind -> its fields."""

from __future__ import annotations

from leanto.bids.reading.csv import read_csv
from leanto.bids.reading.file import ReturnedFile
from leanto.bids.reading.pdf import read_pdf
from leanto.bids.reading.xlsx import read_xlsx

_READERS = {"pdf": read_pdf, "xlsx": read_xlsx, "csv": read_csv}


def read_fields(file: ReturnedFile) -> dict[str, str]:
    """Field and text of everything that stands in the file; BidFileError for one that is broken."""
    return _READERS[file.kind](file.name, file.content)
