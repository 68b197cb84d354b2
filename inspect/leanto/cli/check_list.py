"""The data files as tables: sections, items, rules, works and prices."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from leanto.checklist.model import PointlessAfter
from leanto.cost.price import Three
from leanto.library import Library
from leanto.reports.blocks import Column, Row, Table
from leanto.reports.text_table import table_lines


def list_lines(library: Library, width: int) -> Iterator[str]:
    """Every entry of the data files, a line or more each, in lines of at most ``width``."""
    for title, table in _tables(library):
        yield ""
        yield f"{title.upper()}: {len(table.rows)}"
        yield ""
        yield from table_lines(table, width)


def _tables(library: Library) -> Iterator[tuple[str, Table]]:
    sections = library.checklist.sections
    yield (
        "Sections",
        _table(
            ("section", "title", "items"),
            [(section.id, section.title, str(len(section.items))) for section in sections],
        ),
    )
    yield (
        "Items",
        _table(
            ("item", "section", "asked at", "only if", "pointless after", "prompt"),
            [
                (
                    item.id,
                    section.id,
                    ", ".join(item.at),
                    item.only_if,
                    "; ".join(map(_pointless, item.pointless_after)),
                    item.prompt,
                )
                for section in sections
                for item in section.items
            ],
        ),
    )
    yield (
        "Rules, in the order in which they are judged",
        _table(
            ("rule", "items", "when", "urgency", "work"),
            [
                (
                    compiled.id,
                    ", ".join(compiled.rule.items),
                    compiled.when.text,
                    compiled.rule.urgency,
                    ", ".join(dict.fromkeys(call.work for call in compiled.rule.work)),
                )
                for compiled in library.rules
            ],
        ),
    )
    yield (
        "Works",
        _table(
            ("work", "title", "trade", "phase", "counted in"),
            [
                (work.id, work.title, work.trade, work.phase, work.unit.plural)
                for work in library.works.values()
            ],
        ),
    )
    yield "Prices for one unit", _price_table(library)


def _pointless(after: PointlessAfter) -> str:
    """``feed-kind failed or not there, feed_way overhead, here``."""
    measure = f", {after.measure} {' or '.join(after.choices)}" if after.measure else ""
    return f"{after.item} {' or '.join(after.answers)}{measure}, {after.where}"


def _price_table(library: Library) -> Table:
    rows = [
        (
            work_id,
            library.works[work_id].unit.label,
            _three(price.hours),
            _three(price.materials_usd),
            price.source,
            price.dated.isoformat(),
        )
        for work_id, price in library.prices.items()
    ]
    return _table(("work", "unit", "hours", "materials in $", "source", "dated"), rows)


def _three(three: Three) -> str:
    """Low, likely and high; one number when they are the same."""
    amounts = dict.fromkeys(f"{x.normalize():f}" for x in (three.low, three.likely, three.high))
    return " - ".join(amounts)


def _table(titles: tuple[str, ...], rows: Sequence[Row]) -> Table:
    return Table(tuple(Column(title, 1) for title in titles), tuple(rows))
