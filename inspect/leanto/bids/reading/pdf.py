"""A filled PDF form -> its fields as they were typed."""

from __future__ import annotations

import io
import logging
import zlib
from collections.abc import Iterator
from contextlib import contextmanager

from leanto.bids.layout import from_pdf_name
from leanto.bids.reading.refusal import BidFileError

_BROKEN = (
    ValueError,
    TypeError,
    LookupError,
    AttributeError,
    AssertionError,
    OSError,
    EOFError,
    RecursionError,
    OverflowError,
    NotImplementedError,
    MemoryError,
    zlib.error,
)
"""What a reader of PDF raises over a file that is broken in one of many ways."""


def read_pdf(name: str, content: bytes) -> dict[str, str]:
    """Field and text of everything that was typed into the form; BidFileError otherwise."""
    # Loaded only now: most commands never see a bid.
    from pypdf import PdfReader
    from pypdf.errors import DependencyError, PyPdfError

    with _quiet():
        try:
            reader = PdfReader(io.BytesIO(content), strict=False)
            if reader.is_encrypted and not reader.decrypt(""):
                raise _protected(name)
            pages = len(reader.pages)
            fields = {
                from_pdf_name(str(field)): _text(held.get("/V"))
                for field, held in (reader.get_fields() or {}).items()
            }
            if not fields:
                raise _without_fields(name, pages, _has_text(reader))
        except DependencyError:
            raise _protected(name) from None
        except (PyPdfError, *_BROKEN):
            raise BidFileError(
                f"{name} is broken or cut short.", "Ask for it again, as the PDF form."
            ) from None
    return fields


def _text(value: object) -> str:
    """A text field's text; a ticked box's name without its slash."""
    if value is None:
        return ""
    text = value.decode("utf-8", "replace") if isinstance(value, bytes) else str(value)
    return text.removeprefix("/").replace("\r\n", "\n").replace("\r", "\n")


def _has_text(reader: object) -> bool:
    pages = list(getattr(reader, "pages", ()))[:3]
    return any(page.extract_text().strip() for page in pages)


def _without_fields(name: str, pages: int, has_text: bool) -> BidFileError:
    remedy = "Ask for the form with its fields, or type the figures into the XLSX form."
    if not pages:
        return BidFileError(f"{name} has no pages.", "Ask for it again.")
    if has_text:
        return BidFileError(f"{name} has no fields: it was printed to a new PDF.", remedy)
    return BidFileError(f"{name} is a scan; no figure can be read from it.", remedy)


def _protected(name: str) -> BidFileError:
    return BidFileError(f"{name} is protected by a password.", "Ask for it without one.")


@contextmanager
def _quiet() -> Iterator[None]:
    """Without the library's own words on files that are slightly wrong."""
    # Each of its modules has a logger of its own; all of them pass their words on to this one.
    logger, nowhere = logging.getLogger("pypdf"), logging.NullHandler()
    before, logger.propagate = logger.propagate, False
    logger.addHandler(nowhere)
    try:
        yield
    finally:
        logger.removeHandler(nowhere)
        logger.propagate = before
