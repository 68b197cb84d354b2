"""A report as one HTML file: the same content for screen readers, browsers and large print."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from pathlib import Path
from xml.etree.ElementTree import Element, SubElement, tostring

from leanto import __version__
from leanto.record.observation import Photo
from leanto.reports.blocks import INVENTED, Heading, Report
from leanto.reports.html_blocks import HtmlBlocks
from leanto.reports.html_element import add, text_in
from leanto.reports.html_style import STYLE
from leanto.reports.put_report import put_report


def write_html(report: Report, path: Path, photo_path: Callable[[Photo], Path]) -> Path:
    """Writes the report to ``path``, over what is there; pictures are inside the file.

    Raises ReportError when the file system refuses.
    """
    put_report(path, to_html(report, photo_path).encode())
    return path


def to_html(report: Report, photo_path: Callable[[Photo], Path]) -> str:
    """The whole document: same text for the same report, with no script and nothing to load."""
    html = Element("html", lang="en-US")
    _head(html, report)
    body = SubElement(html, "body")
    skip = SubElement(body, "a", {"class": "skip", "href": "#content"})
    text_in(skip, "Skip to the report")
    header = SubElement(body, "header")
    add(header, "p", report.kind, "kind")
    add(header, "h1", report.title)
    if report.subtitle:
        add(header, "p", report.subtitle)
    if report.invented:
        add(header, "p", f"{INVENTED}.", "invented")
    _contents(body, report)
    main = SubElement(body, "main", id="content")
    HtmlBlocks(photo_path).write(main, report.blocks)
    footer, day = SubElement(body, "footer"), report.as_of
    for line in filter(None, (report.footer, f"As of {day:%B} {day.day}, {day.year}.")):
        add(footer, "p", line)
    return "<!DOCTYPE html>\n" + tostring(html, encoding="unicode", method="html") + "\n"


def _head(html: Element, report: Report) -> None:
    head = SubElement(html, "head")
    SubElement(head, "meta", charset="utf-8")
    for name, content in (
        ("viewport", "width=device-width, initial-scale=1"),
        ("generator", f"leanto {__version__}"),
    ):
        SubElement(head, "meta", name=name, content=content)
    add(head, "title", f"{report.title}: {report.kind.lower()}")
    SubElement(head, "style").text = STYLE


def _contents(body: Element, report: Report) -> None:
    """The parts of the report as links."""
    listed = SubElement(SubElement(body, "nav", {"aria-label": "Contents"}), "ol")
    for number, heading in _parts(report):
        link = SubElement(SubElement(listed, "li"), "a", href=f"#part-{number}")
        text_in(link, heading.text)


def _parts(report: Report) -> Iterator[tuple[int, Heading]]:
    headings = (block for block in report.blocks if isinstance(block, Heading))
    return ((at, heading) for at, heading in enumerate(headings) if heading.level == 1)
