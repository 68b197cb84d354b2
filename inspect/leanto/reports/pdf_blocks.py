"""Blocks turned into the pieces that the page maker sets one below the other."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from reportlab.platypus import CondPageBreak, Flowable, KeepTogether, PageBreak, Spacer

from leanto.reports.blocks import (
    Band,
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
    Row,
    Table,
)
from leanto.reports.chart_blocks import BothSpreads, CourseChart, SpreadChart, SwingChart
from leanto.reports.fonts import Typesetter
from leanto.reports.pdf_caution import caution_box
from leanto.reports.pdf_chart import ChartDrawing
from leanto.reports.pdf_entry import entry_pieces, picture_rows
from leanto.reports.pdf_form import form_table
from leanto.reports.pdf_heading import PdfHeading
from leanto.reports.pdf_pairs import column_width_pt, two_beside
from leanto.reports.pdf_photo import PhotoPath
from leanto.reports.pdf_range import RangeDrawing
from leanto.reports.pdf_sketch import Legend, SketchDrawing
from leanto.reports.pdf_style import TEXT_WIDTH_PT, style
from leanto.reports.pdf_table import facts_table, pdf_table
from leanto.reports.pdf_text import paragraph, paragraphs

Progress = Callable[[int, int], None]
_SKETCH_HIGH_PT, _SKETCH_SCALE = 170.0, 9.0
_WIDE_SKETCH_PT, _WIDE_SKETCH_HIGH_PT, _WIDE_SKETCH_SCALE = 400.0, 260.0, 15.0
"""Points, and points to the foot."""
_BESIDE_LINES, _BESIDE_ZONES, _BESIDE_FT = 9, 9, 45
"""Sketches with longer lists, more zones or longer sides stand alone."""
_OUTLINED = 2
"""Headings of deeper levels are not in the outline."""
_PARAGRAPH_PT, _HEADING_PT = 40.0, 30.0
_LINE_PT, _LINE_CHARACTERS, _WHOLE_LINES = 13.0, 95, 4
_SMALL_ROWS = 9
"""A table of so many rows is kept on one page."""
_ROW_PT, _MORE_PT = 24.0, 9.0
"""A row of a table, and each further line in it."""
_ROOM_PT: dict[type[Block], float] = {
    Figure: 200,
    Picture: 190,
    Entry: 120,
    Table: 90,
    SwingChart: 190,
    SpreadChart: 145,
    CourseChart: 90,
    BothSpreads: 130,
}
"""What must still fit on the page below a heading, by what comes next."""


@dataclass(slots=True)
class Layout:
    """Makes the pieces of one document."""

    setter: Typesetter
    photo_path: PhotoPath
    width_pt: float = TEXT_WIDTH_PT
    _headings: int = 0
    _outline_level: int = -1
    """Of the last heading in the outline."""
    _has_legend: bool = False

    def pieces(self, blocks: Sequence[Block], progress: Progress | None) -> list[Flowable]:
        """Every block in order; ``progress`` is told how many of how many blocks are done."""
        made: list[Flowable] = []
        marks = {
            zone.mark: None for b in blocks if isinstance(b, Figure) for zone in b.sketch.zones
        }
        done = 0
        for kind, group in groupby(blocks, key=type):
            run = list(group)
            if kind is Figure:
                made += self._figures([b for b in run if isinstance(b, Figure)], list(marks))
            elif kind is Caution:
                made += self._cautions([b for b in run if isinstance(b, Caution)])
            elif kind is Picture:
                pictures = tuple(b for b in run if isinstance(b, Picture))
                made += map(_kept, picture_rows(pictures, self.width_pt, *self._tools))
            else:
                for at, block in enumerate(run):
                    made += self._pieces(block, blocks[done + at + 1 :])
                    if progress:
                        progress(done + at + 1, len(blocks))
            done += len(run)
            if progress:
                progress(done, len(blocks))
        return made

    @property
    def _tools(self) -> tuple[Typesetter, PhotoPath]:
        return self.setter, self.photo_path

    def _pieces(self, block: Block, following: Sequence[Block]) -> Iterator[Flowable]:
        match block:
            case Heading():
                self._headings += 1
                yield CondPageBreak(24 + _room_below_pt(following))
                yield PdfHeading(block, self._headings, self._level(block), self.setter)
            case Paragraph(text=text, style=name):
                yield from paragraphs(text, style(name), self.setter)
            case Bullets(items=items):
                for item in items:
                    yield paragraph(item, style("bullet"), self.setter, bullet="•")
                yield Spacer(0, 3)
            case Facts():
                if block.pairs:
                    yield facts_table(block, self.width_pt, self.setter)
            case Table():
                table = pdf_table(block, self.width_pt, self.setter)
                yield _kept(table) if len(block.rows) <= _SMALL_ROWS else table
            case FormTable():
                yield form_table(block, self.width_pt, self.setter)
            case Entry():
                yield from entry_pieces(block, self.width_pt, *self._tools)
            case RangeBar():
                yield RangeDrawing(block, self.width_pt, self.setter)
                yield Spacer(0, 6)
            case SwingChart() | SpreadChart() | CourseChart() | BothSpreads():
                yield ChartDrawing(block, self.width_pt, self.setter)
                yield Spacer(0, 6)
            case NewPage():
                yield PageBreak()
            case Caution() | Figure() | Picture():
                raise ValueError("cautions, figures and pictures are set in rows")

    def _level(self, heading: Heading) -> int | None:
        """Its level in the outline, at most one below the heading before: a jump is refused."""
        if heading.level > _OUTLINED:
            return None
        self._outline_level = min(heading.level - 1, self._outline_level + 1)
        return self._outline_level

    def _cautions(self, cautions: list[Caution]) -> Iterator[Flowable]:
        width = column_width_pt(self.width_pt)
        boxes: list[list[Flowable]] = [
            [caution_box(caution, width, self.setter)] for caution in cautions
        ]
        for at in range(0, len(boxes), 2):
            right = boxes[at + 1] if at + 1 < len(boxes) else []
            yield _kept(two_beside(boxes[at], right, self.width_pt))

    def _figures(self, figures: list[Figure], marks: list[str]) -> Iterator[Flowable]:
        if not self._has_legend:
            self._has_legend = True
            yield Legend(marks, self.width_pt, self.setter)
        waiting: Figure | None = None
        for figure in figures:
            if _stands_alone(figure):
                if waiting:
                    yield self._row(waiting, None)
                    waiting = None
                yield from self._wide(figure)
            elif waiting:
                yield self._row(waiting, figure)
                waiting = None
            else:
                waiting = figure
        if waiting:
            yield self._row(waiting, None)

    def _row(self, left: Figure, right: Figure | None) -> Flowable:
        cells = [self._cell(figure) if figure else [] for figure in (left, right)]
        return _kept(two_beside(cells[0], cells[1], self.width_pt))

    def _cell(self, figure: Figure) -> list[Flowable]:
        width = column_width_pt(self.width_pt)
        drawing = SketchDrawing(figure.sketch, width, _SKETCH_HIGH_PT, _SKETCH_SCALE, self.setter)
        return [drawing, Spacer(0, 2), *self._caption(figure)]

    def _wide(self, figure: Figure) -> Iterator[Flowable]:
        """A sketch over the whole width; its list may run on to the next page."""
        yield CondPageBreak(_WIDE_SKETCH_HIGH_PT + 40)
        yield SketchDrawing(
            figure.sketch,
            _WIDE_SKETCH_PT,
            _WIDE_SKETCH_HIGH_PT,
            _WIDE_SKETCH_SCALE,
            self.setter,
        )
        yield Spacer(0, 2)
        yield from self._caption(figure)
        yield Spacer(0, 10)

    def _caption(self, figure: Figure) -> list[Flowable]:
        title, *lines = figure.caption.split("\n")
        return [
            paragraph(title, style("cell bold"), self.setter),
            *(paragraph(line, style("caption"), self.setter) for line in lines),
        ]


def _room_below_pt(following: Sequence[Block]) -> float:
    """What must fit below a heading for what comes next to begin on the same page."""
    if not following:
        return 0.0
    first, *rest = following[:4]
    if isinstance(first, Paragraph):
        leads_on = bool(rest) and isinstance(rest[0], Heading | Entry)
        return _paragraph_pt(first.text) + (_room_below_pt(rest) if leads_on else 0.0)
    if isinstance(first, Heading):
        return _HEADING_PT + _room_below_pt(rest)
    if isinstance(first, Table) and len(first.rows) <= _SMALL_ROWS:
        return _ROW_PT + sum(_row_pt(row) for row in (*first.rows, *first.foot))
    return _ROOM_PT.get(type(first), 60)


def _paragraph_pt(text: str) -> float:
    """A short paragraph whole, a long one as far as it may be cut."""
    lines = min(_WHOLE_LINES, -(-len(text) // _LINE_CHARACTERS))
    return max(_PARAGRAPH_PT, _LINE_PT * lines + 10.0)


def _row_pt(row: Row | Band) -> float:
    more = 0 if isinstance(row, Band) else max(cell.count("\n") for cell in row)
    return _ROW_PT + _MORE_PT * more


def _stands_alone(figure: Figure) -> bool:
    crowded = len(figure.sketch.zones) > _BESIDE_ZONES
    lines = figure.caption.count("\n")
    return crowded or lines > _BESIDE_LINES or figure.sketch.width_ft > _BESIDE_FT


def _kept(piece: Flowable) -> Flowable:
    return KeepTogether([piece])
