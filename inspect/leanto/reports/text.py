"""A report as plain text, for the terminal and for tests."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from leanto.money import format_usd, round_to
from leanto.quantities import format_ft_in
from leanto.reports.blocks import (
    Block,
    Bullets,
    Caution,
    Entry,
    Facts,
    Figure,
    FormTable,
    Heading,
    NewPage,
    Paragraph,
    Picture,
    RangeBar,
    Report,
    Table,
)
from leanto.reports.characters import columns, printable
from leanto.reports.chart_blocks import BothSpreads, CourseChart, SpreadChart, SwingChart
from leanto.reports.chart_text import chart_lines
from leanto.reports.put_report import put_report
from leanto.reports.text_form import form_lines
from leanto.reports.text_table import table_lines
from leanto.reports.text_wrap import wrapped

_UNDERLINES = {1: "=", 2: "-", 3: ""}


def write_text(report: Report, path: Path) -> Path:
    """Writes the report to ``path``, over what is there; ReportError when that is refused."""
    put_report(path, to_text(report).encode())
    return path


def to_text(report: Report, width: int = 80) -> str:
    """The report in lines of at most ``width`` columns; pictures and sketches as words.

    Control characters in the text are shown as codes: no note can steer a terminal.
    """
    head = [report.kind.upper(), report.title, report.subtitle]
    lines = [line for text in head if text for line in wrapped(text, width)]
    for block in report.blocks:
        drawn = list(_lines(block, width))
        if drawn:
            lines += ["", *drawn]
    return "\n".join(line.rstrip() for line in lines) + "\n"


def block_lines(block: Block, width: int) -> list[str]:
    """One block in lines of at most ``width`` columns, as ``to_text`` prints it."""
    return [line.rstrip() for line in _lines(block, width)]


def _lines(block: Block, width: int) -> Iterator[str]:
    match block:
        case Heading(level=level, text=text):
            yield from _heading(text, level, width)
        case Paragraph(text=text):
            yield from wrapped(text, width)
        case Bullets(items=items):
            for item in items:
                yield from wrapped(item, width, first="- ", rest="  ")
        case Facts(pairs=pairs):
            yield from _facts(pairs, width)
        case Table():
            yield from table_lines(block, width)
        case FormTable():
            yield from form_lines(block, width)
        case Entry():
            yield from _entry(block, width)
        case Figure():
            yield from _figure(block, width)
        case Picture(caption=caption):
            yield from wrapped(f"[Picture] {caption}", width)
        case RangeBar():
            yield from wrapped(_range(block), width)
        case SwingChart() | SpreadChart() | CourseChart() | BothSpreads():
            yield from chart_lines(block, width)
        case Caution():
            yield from wrapped(f"! {block.title}: {block.text}", width, rest="  ")
            if block.who:
                yield from wrapped(f"Who must act: {block.who}", width, first="  ", rest="  ")
        case NewPage():
            return


def _heading(text: str, level: int, width: int) -> Iterator[str]:
    lines = wrapped(text, width)
    yield from lines
    if mark := _UNDERLINES[level]:
        yield mark * max(columns(line) for line in lines)


def _facts(pairs: tuple[tuple[str, str], ...], width: int) -> Iterator[str]:
    widest = max((columns(printable(label)) for label, _ in pairs), default=0)
    indent = min(widest, width // 3) + 2
    for label, value in pairs:
        named = printable(label)
        if columns(named) + 2 > indent:
            yield from wrapped(named, width)
            named = ""
        first = named + " " * (indent - columns(named))
        yield from wrapped(value, width, first=first, rest=" " * indent)


def _entry(entry: Entry, width: int) -> Iterator[str]:
    margin = "  " * entry.depth
    first = f"{margin}{entry.number:>3}  "
    rest = " " * len(first)
    marks = "".join(f"{mark.upper()}. " for mark in entry.marks)
    yield from wrapped(marks + entry.title, width, first=first, rest=rest)
    for text in (*entry.lines, *entry.body):
        yield from wrapped(text, width, first=rest, rest=rest)
    if entry.pictures:
        count = len(entry.pictures)
        yield f"{rest}[{count} {'picture' if count == 1 else 'pictures'}]"


def _figure(figure: Figure, width: int) -> Iterator[str]:
    sketch = figure.sketch
    size = f"{format_ft_in(sketch.width_ft)} × {format_ft_in(sketch.height_ft)}"
    yield from wrapped(f"[Sketch, {size}]", width)
    for line in figure.caption.split("\n"):
        yield from wrapped(line, width, first="  ", rest="    ")


def _range(bar: RangeBar) -> str:
    low, p50, p80, high = (
        format_usd(round_to(x, 10)) for x in (bar.low, bar.p50, bar.p80, bar.high)
    )
    budget = f"; budget {format_usd(bar.budget)}" if bar.budget is not None else ""
    return f"[Range: {low} to {high}; half under {p50}, four in five under {p80}{budget}]"
