"""Blocks turned into HTML: real headings, tables with head cells, pictures with words."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from xml.etree.ElementTree import Element, SubElement

from leanto.money import format_usd, round_to
from leanto.record.observation import Photo
from leanto.reports.blocks import (
    Band,
    Block,
    Bullets,
    Caution,
    Column,
    Entry,
    Facts,
    Field,
    Figure,
    FormTable,
    Heading,
    NewPage,
    Paragraph,
    Picture,
    RangeBar,
    Table,
)
from leanto.reports.chart_blocks import BothSpreads, Chart, CourseChart, SpreadChart, SwingChart
from leanto.reports.html_element import add, text_in
from leanto.reports.html_photo import picture_source
from leanto.reports.html_sketch import sketch_svg

_TO_FILL_IN = "(to be filled in)"


class HtmlBlocks:
    """Writes blocks below an element."""

    def __init__(self, photo_path: Callable[[Photo], Path]) -> None:
        self._photo_path = photo_path
        self._headings = 0
        self._level = 1
        """Of the last heading; an entry's title stands one below it."""

    def write(self, parent: Element, blocks: Sequence[Block]) -> None:
        for block in blocks:
            self._block(parent, block)

    def _block(self, parent: Element, block: Block) -> None:
        match block:
            case Heading(level=level, text=text):
                # A page that skips a level cannot be walked by its headings.
                self._level = min(level, self._level) + 1
                made = add(parent, f"h{self._level}", text)
                made.set("id", f"part-{self._headings}")
                self._headings += 1
            case Paragraph(text=text, style=style):
                add(parent, "p", text, "" if style == "body" else style)
            case Bullets(items=items):
                listed = SubElement(parent, "ul")
                for item in items:
                    add(listed, "li", item)
            case Facts(pairs=pairs):
                listed = SubElement(parent, "dl")
                for label, value in pairs:
                    add(listed, "dt", label)
                    add(listed, "dd", value)
            case Table():
                _table(parent, block.columns, block.rows, block.foot)
            case FormTable():
                rows = [r if isinstance(r, Band) else tuple(map(_cell, r)) for r in block.rows]
                _table(parent, block.columns, rows, ())
            case Entry():
                self._entry(parent, block)
            case Picture():
                self._picture(parent, block)
            case Figure():
                figure = SubElement(parent, "figure")
                figure.append(sketch_svg(block.sketch))
                _caption(figure, block.caption)
            case RangeBar():
                _range(parent, block)
            case SwingChart() | SpreadChart() | CourseChart() | BothSpreads():
                _chart(parent, block)
            case Caution(title=title, text=text, who=who):
                box = SubElement(parent, "div", {"class": "caution", "role": "note"})
                add(SubElement(box, "p"), "strong", f"Caution: {title}")
                add(box, "p", text)
                if who:
                    add(box, "p", f"Who must act: {who}")
            case NewPage():
                return

    def _entry(self, parent: Element, entry: Entry) -> None:
        box = SubElement(parent, "div", {"class": "entry", "style": f"--depth:{entry.depth}"})
        title = SubElement(box, f"h{self._level + 1}")
        title.text = f"{entry.number} "
        for mark in entry.marks:
            add(title, "span", mark, "mark").tail = " "
        text_in(SubElement(title, "span"), entry.title)
        for text in entry.lines:
            add(box, "p", text, "note")
        for text in entry.body:
            add(box, "p", text)
        for picture in entry.pictures:
            self._picture(box, picture)

    def _picture(self, parent: Element, picture: Picture) -> None:
        figure = SubElement(parent, "figure")
        source = picture_source(self._photo_path(picture.photo))
        if source:
            # The caption below says what it shows; read twice it would only tire.
            SubElement(figure, "img", src=source, alt="Photo")
        else:
            add(figure, "p", "(picture not found)", "note")
        add(figure, "figcaption", picture.caption)


def _cell(cell: str | Field) -> str:
    return cell if isinstance(cell, str) else cell.value or _TO_FILL_IN


def _table(
    parent: Element,
    columns: tuple[Column, ...],
    rows: Iterable[tuple[str, ...] | Band],
    foot: tuple[tuple[str, ...], ...],
) -> None:
    """A table; a band heads the group of rows below it."""
    table = SubElement(parent, "table")
    if any(column.title for column in columns):
        head = SubElement(SubElement(table, "thead"), "tr")
        for column in columns:
            add(head, "th", column.title, _align(column)).set("scope", "col")
    group: Element | None = None
    for row in rows:
        if isinstance(row, Band):
            group = SubElement(table, "tbody")
            band = SubElement(group, "tr", {"class": "band"})
            said = f"{row.text}  {row.amount}" if row.amount else row.text
            cell = add(band, "th", said)
            cell.set("colspan", str(len(columns)))
            cell.set("scope", "rowgroup")
            continue
        if group is None:
            group = SubElement(table, "tbody")
        _row(group, columns, row)
    if foot:
        group = SubElement(table, "tfoot")
        for row in foot:
            _row(group, columns, row)


def _row(group: Element, columns: tuple[Column, ...], cells: tuple[str, ...]) -> None:
    row = SubElement(group, "tr")
    for column, cell in zip(columns, cells, strict=True):
        add(row, "td", cell, _align(column))


def _align(column: Column) -> str:
    return "" if column.align == "left" else column.align


def _caption(figure: Element, text: str) -> None:
    """The title of a sketch and the list of what its numbers stand for."""
    title, *lines = text.split("\n")
    caption = SubElement(figure, "figcaption")
    add(caption, "strong", title)
    if lines:
        listed = SubElement(caption, "ul")
        for line in lines:
            add(listed, "li", line)


def _range(parent: Element, bar: RangeBar) -> None:
    pairs = [
        ("Low", bar.low),
        ("Half of the draws are under", bar.p50),
        ("Four in five are under", bar.p80),
        ("High", bar.high),
    ]
    if bar.budget is not None:
        pairs.append(("Budget", bar.budget))
    _amounts(parent, ("", "Total"), [(label, (usd,)) for label, usd in pairs])


def _chart(parent: Element, chart: Chart) -> None:
    """The figures that the chart is drawn from."""
    match chart:
        case SwingChart():
            rows = [(bar.label, (bar.low_usd, bar.high_usd)) for bar in chart.bars]
            _amounts(parent, ("What moves the total", "Low", "High"), rows)
        case SpreadChart():
            _amounts(parent, ("", "Total"), [(mark.label, (mark.usd,)) for mark in chart.marks])
        case BothSpreads():
            spreads = [(one.label, (one.p50, one.p80)) for one in (chart.keep, chart.gut)]
            _amounts(parent, ("Course", "Half under", "4 in 5 under"), spreads)
        case CourseChart():
            bars = [
                (f"{name}: {bar.label}", (bar.p10, bar.p50, bar.p80, bar.p90))
                for name, keep, gut in chart.surfaces
                for bar in (keep, gut)
            ]
            titles = ("Course", "1 in 10 under", "Half under", "4 in 5 under", "9 in 10 under")
            _amounts(parent, titles, bars)


def _amounts(
    parent: Element, titles: tuple[str, ...], rows: Sequence[tuple[str, tuple[float, ...]]]
) -> None:
    first, *others = titles
    columns = (Column(first, 1), *(Column(title, 1, "right") for title in others))
    cells = [
        (label, *(format_usd(round_to(usd, 10)) for usd in figures)) for label, figures in rows
    ]
    _table(parent, columns, cells, ())
