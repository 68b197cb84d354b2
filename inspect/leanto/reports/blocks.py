"""A report before it has a format: plain values that the text and PDF writers turn into lines.

Text in blocks is plain text always; no writer reads markup in it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from leanto.building.sketch import Sketch
from leanto.record.observation import Photo
from leanto.reports.chart_blocks import Chart

Align = Literal["left", "center", "right"]
INVENTED = "Invented example"
"""Stands on every page about a made-up building."""


@dataclass(frozen=True, slots=True)
class Heading:
    level: Literal[1, 2, 3]
    text: str


@dataclass(frozen=True, slots=True)
class Paragraph:
    text: str
    style: Literal["body", "lead", "note"] = "body"
    """``lead`` is an answer that stands first; ``note`` is small print."""


@dataclass(frozen=True, slots=True)
class Bullets:
    items: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Facts:
    """Labels with values; lines of a value after the first are printed smaller."""

    pairs: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Column:
    title: str
    share: float
    """Of the table's width; shares need not add up to one."""
    align: Align = "left"
    blank: bool = False
    """True for a column that is filled in by hand."""


@dataclass(frozen=True, slots=True)
class Band:
    """A row that spans the table and heads the rows below it."""

    text: str
    amount: str = ""
    """Stands at the right end."""


Row = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """Rows of cells; lines of a cell after the first are printed smaller."""

    columns: tuple[Column, ...]
    rows: tuple[Row | Band, ...]
    foot: tuple[Row, ...] = ()
    small: bool = False
    """True for tables that are looked up, not read."""

    def __post_init__(self) -> None:
        cells = [row for row in (*self.rows, *self.foot) if not isinstance(row, Band)]
        if any(len(row) != len(self.columns) for row in cells):
            raise ValueError("a row needs a cell for every column")


@dataclass(frozen=True, slots=True)
class Field:
    """A box that is typed into, on the screen or by hand."""

    name: str
    label: str
    """What a reader of the screen says."""
    value: str = ""
    """What stands in it from the start, in plain ASCII."""
    lines: int = 1
    fixed: bool = False
    """True for what must not be changed."""


FormRow = tuple[str | Field, ...]


@dataclass(frozen=True, slots=True)
class FormTable:
    """A table with boxes to type into; without titles when no column has one."""

    columns: tuple[Column, ...]
    rows: tuple[FormRow | Band, ...]

    def __post_init__(self) -> None:
        cells = [row for row in self.rows if not isinstance(row, Band)]
        if any(len(row) != len(self.columns) for row in cells):
            raise ValueError("a row needs a cell for every column")

    @property
    def fields(self) -> tuple[Field, ...]:
        rows = (row for row in self.rows if not isinstance(row, Band))
        return tuple(cell for row in rows for cell in row if isinstance(cell, Field))


@dataclass(frozen=True, slots=True)
class Picture:
    photo: Photo
    caption: str


@dataclass(frozen=True, slots=True)
class Entry:
    """A numbered piece of a list, with its pictures beside or below it."""

    number: str
    title: str
    marks: tuple[str, ...] = ()
    """Words such as ``danger`` that must not be missed."""
    lines: tuple[str, ...] = ()
    """Short facts such as the place and the size."""
    body: tuple[str, ...] = ()
    pictures: tuple[Picture, ...] = ()
    depth: int = 0
    """How many causes stand above it."""


@dataclass(frozen=True, slots=True)
class Figure:
    sketch: Sketch
    caption: str
    """What the numbers on the sketch stand for, one a line."""


@dataclass(frozen=True, slots=True)
class RangeBar:
    """The range of a total, in dollars."""

    low: float
    p50: float
    p80: float
    high: float
    budget: float | None = None


@dataclass(frozen=True, slots=True)
class Caution:
    title: str
    text: str
    who: str = ""
    """Who must act."""


@dataclass(frozen=True, slots=True)
class NewPage:
    pass


Block = (
    Heading
    | Paragraph
    | Bullets
    | Facts
    | Table
    | FormTable
    | Picture
    | Entry
    | Figure
    | RangeBar
    | Chart
    | Caution
    | NewPage
)


@dataclass(frozen=True, slots=True)
class Report:
    kind: str
    """Such as ``Condition report``."""
    title: str
    """The building's name."""
    subtitle: str
    as_of: date
    blocks: Sequence[Block]
    invented: bool = False
    """True for a made-up building; every page then says so."""
    footer: str = ""
    """A few words that stand at the foot of every page."""
    keywords: tuple[str, ...] = ()
