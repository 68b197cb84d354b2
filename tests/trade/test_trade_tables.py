"""The shipped tables of roof, water, pests and debris."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from pydantic import ValidationError

from leanto.trade.citation import CitedRow, CitedTable
from leanto.trade.coverings import coverings_table
from leanto.trade.debris_table import debris_table
from leanto.trade.mold import mold_table
from leanto.trade.pest_table import pest_table
from leanto.trade.wetting import water_table

TABLES: list[Callable[[], CitedTable]] = [
    coverings_table,
    debris_table,
    mold_table,
    pest_table,
    water_table,
]


def cited_in(value: object) -> set[str]:
    """Every text under a key that names a source."""
    found: set[str] = set()
    if isinstance(value, dict):
        for key, part in value.items():
            is_citation = key == "source" or str(key).endswith("_source")
            found |= {str(part)} if is_citation else cited_in(part)
    elif isinstance(value, list | tuple):
        for part in value:
            found |= cited_in(part)
    return found


@pytest.mark.parametrize("table", TABLES)
def test_every_source_is_cited_and_every_citation_listed(table: Callable[[], CitedTable]) -> None:
    read = table()
    assert cited_in(read.model_dump(exclude={"sources"})) == set(read.sources)


@pytest.mark.parametrize("table", TABLES)
def test_no_table_calls_anything_safe(table: Callable[[], CitedTable]) -> None:
    assert "safe" not in table().model_dump_json().lower()


class _Row(CitedRow):
    other_source: str


class _Table(CitedTable):
    rows: dict[str, tuple[_Row, ...]]


@pytest.mark.parametrize(("source", "other"), [("missing", "known"), ("known", "missing")])
def test_a_citation_that_is_not_listed_is_refused(source: str, other: str) -> None:
    data = {
        "sources": {"known": {"title": "A handbook"}},
        "rows": {"a": [{"source": source, "other_source": other}]},
    }
    with pytest.raises(ValidationError, match="cites missing"):
        _Table.model_validate(data)
