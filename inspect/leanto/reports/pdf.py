"""A report as a PDF file: the same bytes for the same report, written whole or not at all."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from io import BytesIO
from pathlib import Path
from typing import Any

from reportlab import rl_config
from reportlab.platypus import BaseDocTemplate, Flowable, Frame, NextPageTemplate, PageTemplate

from leanto import __version__
from leanto.reports.blocks import INVENTED, Report
from leanto.reports.characters import printable
from leanto.reports.fonts import Typesetter
from leanto.reports.pdf_blocks import Layout, Progress
from leanto.reports.pdf_page import CountingCanvas, PageFurniture
from leanto.reports.pdf_photo import PhotoPath
from leanto.reports.pdf_style import (
    BOTTOM_PT,
    MARGIN_PT,
    PAGE_HEIGHT_PT,
    PAGE_WIDTH_PT,
    TEXT_WIDTH_PT,
    TOP_PT,
    style,
)
from leanto.reports.pdf_text import paragraph
from leanto.reports.put_report import put_report
from leanto.reports.written import WrittenReport

rl_config.useA85 = 0  # plain binary streams: text encoding makes photos slow and large

__all__ = ["WrittenReport", "write_pdf"]


def write_pdf(
    report: Report, path: Path, photo_path: PhotoPath, progress: Progress | None = None
) -> WrittenReport:
    """Writes the report to ``path``, over what is there.

    ``photo_path`` tells where the file of a photo lies; one that cannot be read is shown as an
    empty frame. ``progress`` is called with the blocks done and the blocks in all; what it raises
    stops the writing, and ``path`` is left as it was. Raises ReportError when the file system
    refuses.
    """
    setter = Typesetter()
    data, pages = _pdf_bytes(report, setter, photo_path, progress)
    put_report(path, data)
    return WrittenReport(path, pages, setter.not_drawn)


def _pdf_bytes(
    report: Report, setter: Typesetter, photo_path: PhotoPath, progress: Progress | None
) -> tuple[bytes, int]:
    pieces: list[Flowable] = [
        NextPageTemplate("later"),
        paragraph(report.kind, style("kind"), setter),
        paragraph(report.title, style("title"), setter),
    ]
    if report.subtitle:
        pieces.append(paragraph(report.subtitle, style("subtitle"), setter))
    pieces += Layout(setter, photo_path).pieces(report.blocks, progress)
    buffer = BytesIO()
    document = _Document(buffer, report, setter)
    document.build(pieces, canvasmaker=CountingCanvas)
    return buffer.getvalue(), document.page


class _Document(BaseDocTemplate):
    """Pages with the report's furniture, and its facts in the file's metadata."""

    def __init__(self, target: BytesIO, report: Report, setter: Typesetter) -> None:
        invented = f" ({INVENTED.lower()})" if report.invented else ""
        super().__init__(
            target,
            pagesize=(PAGE_WIDTH_PT, PAGE_HEIGHT_PT),
            title=printable(f"{report.title}: {report.kind.lower()}"),
            author="leanto",
            subject=printable(f"{report.kind} of {report.title}{invented}"),
            keywords=[printable(word) for word in report.keywords],
            creator=f"leanto {__version__}",
            lang="en-US",
            displayDocTitle=1,
            invariant=1,
        )
        self._day = report.as_of
        furniture = PageFurniture(report, setter)
        self.addPageTemplates(
            [
                PageTemplate("first", [_frame()], onPage=furniture.first),
                PageTemplate("later", [_frame()], onPage=furniture.later),
            ]
        )

    def beforeDocument(self) -> None:
        # Fixed bytes come with a fixed clock; the day of the walk is the better date.
        self.canv.setDateFormatter(_stamp(self._day))


def _stamp(day: date) -> Callable[..., str]:
    """Writes a day as the file format's date, whatever time it is given."""

    def written(*_now: Any) -> str:
        return f"D:{day:%Y%m%d}000000+00'00'"

    return written


def _frame() -> Frame:
    height = PAGE_HEIGHT_PT - TOP_PT - BOTTOM_PT
    return Frame(MARGIN_PT, BOTTOM_PT, TEXT_WIDTH_PT, height, 0, 0, 0, 0)
