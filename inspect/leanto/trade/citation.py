"""Tables that name their sources once and cite them by id in every row."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Self

from pydantic import BaseModel, Field, model_validator

from leanto.source import Source
from leanto.strict import Strict


class CitedRow(Strict):
    """A row that cites a source of its table; fields ending in `_source` cite further ones."""

    source: str
    """An id under the table's `sources`."""


class CitedTable(Strict):
    """A table whose rows cite the sources listed at its top."""

    sources: dict[str, Source] = Field(min_length=1)

    @model_validator(mode="after")
    def _every_citation_is_listed(self) -> Self:
        for name in type(self).model_fields:
            for cited in _citations(getattr(self, name)):
                if cited not in self.sources:
                    raise ValueError(f"{name} cites {cited}, which sources does not list")
        return self

    def cite(self, row: CitedRow) -> Source:
        """The source a row of this table cites."""
        return self.sources[row.source]


def _citations(value: object) -> Iterator[str]:
    """Every source id cited in a value and in what it holds."""
    if isinstance(value, BaseModel):
        for name in type(value).model_fields:
            part = getattr(value, name)
            if isinstance(value, CitedRow) and (name == "source" or name.endswith("_source")):
                yield part
            else:
                yield from _citations(part)
    elif isinstance(value, dict):
        for part in value.values():
            yield from _citations(part)
    elif isinstance(value, list | tuple):
        for part in value:
            yield from _citations(part)
