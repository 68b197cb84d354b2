"""A numbered entry: its number at the left, one picture beside it or several below."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from reportlab.lib.styles import ParagraphStyle
from reportlab.platypus import Flowable, KeepTogether, Spacer

from leanto.reports.blocks import Entry, Picture
from leanto.reports.fonts import Typesetter
from leanto.reports.pdf_pairs import bare_row, column_width_pt, two_beside
from leanto.reports.pdf_photo import PhotoFrame, PhotoPath
from leanto.reports.pdf_style import style
from leanto.reports.pdf_text import paragraph, paragraphs

_NUMBER_PT, _STEP_PT = 24.0, 18.0
_BESIDE_PT, _BESIDE_HIGH_PT = 140.0, 105.0
_GAP_PT = 12.0
_PAIR_HIGH_PT = 140.0
_SHORT = 700
"""So many characters stand well beside a picture."""
_LINE = 80
"""A line feed takes the room of so many."""


def entry_pieces(
    entry: Entry, width_pt: float, setter: Typesetter, photo_path: PhotoPath
) -> Iterator[Flowable]:
    """The pieces of an entry; only the short ones are kept on one page."""
    indent = _STEP_PT * entry.depth
    texts = (entry.title, *entry.lines, *entry.body)
    size = sum(len(text) + _LINE * text.count("\n") for text in texts)
    if len(entry.pictures) == 1 and size <= _SHORT:
        widths = [width_pt - _BESIDE_PT - _GAP_PT, _GAP_PT, _BESIDE_PT]
        picture = picture_pieces(entry.pictures[0], _BESIDE_PT, _BESIDE_HIGH_PT, setter, photo_path)
        yield KeepTogether([bare_row([list(_text(entry, indent, setter)), "", picture], widths)])
        return
    text = list(_text(entry, indent, setter))
    if size <= _SHORT:
        yield KeepTogether(text)
    else:
        yield from text
    yield from _rows_below(entry.pictures, indent + _NUMBER_PT, width_pt, setter, photo_path)
    yield Spacer(0, 5)


def picture_rows(
    pictures: tuple[Picture, ...], width_pt: float, setter: Typesetter, photo_path: PhotoPath
) -> Iterator[Flowable]:
    """The pictures two beside each other, captions below."""
    column = column_width_pt(width_pt)
    cells = [
        picture_pieces(picture, column, _PAIR_HIGH_PT, setter, photo_path) for picture in pictures
    ]
    for at in range(0, len(cells), 2):
        yield two_beside(cells[at], cells[at + 1] if at + 1 < len(cells) else [], width_pt)


def _rows_below(
    pictures: tuple[Picture, ...],
    left_pt: float,
    width_pt: float,
    setter: Typesetter,
    photo_path: PhotoPath,
) -> Iterator[Flowable]:
    """As many small pictures beside each other as fit right of ``left_pt``."""
    step = _BESIDE_PT + _GAP_PT
    in_row = int((width_pt - left_pt + _GAP_PT) // step)
    cells = [
        picture_pieces(picture, _BESIDE_PT, _BESIDE_HIGH_PT, setter, photo_path)
        for picture in pictures
    ]
    for at in range(0, len(cells), in_row):
        row = cells[at : at + in_row]
        yield KeepTogether([bare_row(["", *row], [left_pt, *(step for _ in row)])])


def picture_pieces(
    picture: Picture, wide_pt: float, high_pt: float, setter: Typesetter, photo_path: PhotoPath
) -> list[Flowable]:
    return [
        PhotoFrame(photo_path(picture.photo), wide_pt, high_pt, setter),
        Spacer(0, 2),
        paragraph(picture.caption, style("caption"), setter),
    ]


def _text(entry: Entry, indent_pt: float, setter: Typesetter) -> Iterator[Flowable]:
    title = _indented("entry title", indent_pt)
    yield paragraph(entry.title, title, setter, bullet=entry.number, marks=entry.marks)
    for line in entry.lines:
        yield paragraph(line, _indented("entry line", indent_pt), setter)
    for text in entry.body:
        yield from paragraphs(text, _indented("entry body", indent_pt), setter)


@cache
def _indented(name: str, indent_pt: float) -> ParagraphStyle:
    base = style(name)
    return ParagraphStyle(
        f"{name} {indent_pt}",
        base,
        leftIndent=indent_pt + _NUMBER_PT,
        bulletIndent=indent_pt,
        bulletFontName=style("strong").fontName,
        bulletFontSize=base.fontSize,
    )
