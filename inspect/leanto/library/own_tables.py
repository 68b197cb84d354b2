"""Tables of an owner's own: read whole in place of the shipped ones, and checked for gaps."""

from __future__ import annotations

from collections.abc import Hashable, Iterator

from pydantic import BaseModel

from leanto.errors import Problem
from leanto.library.folder import Reader
from leanto.library.placed import Placed
from leanto.trade.tables import NO_OWN, OwnTables, read_table

PATTERN = "tables/*.yaml"
_IDS = ("part", "id")
_NAMES = ("name", "size", "metal", "trade_size", "use", "place", "kind", "species", "grade", "zone")


def own_tables(reader: Reader) -> OwnTables:
    """The tables of every folder laid over the shipped one, the last by each name.

    A table that lacks a row of the shipped one is a Problem: computations look rows up by name.
    """
    if not any(folder.files(PATTERN) for folder in reader.folders[1:]):
        return NO_OWN
    # A start needs few of the models: they are loaded only for tables of one's own.
    from leanto.trade.table_models import TABLE_MODELS

    own: dict[str, BaseModel] = {}
    for name, model in TABLE_MODELS.items():
        for read in reader.laid_over(f"tables/{name}", model):
            own[name] = read.value
            reader.problems += _gaps(read, read_table(name, model))
    return OwnTables(reader.version(PATTERN), own)


def _gaps(own: Placed[BaseModel], shipped: BaseModel) -> Iterator[Problem]:
    for field in type(shipped).model_fields:
        if field == "sources":
            continue
        there = _names(getattr(own.value, field))
        for name in _names(getattr(shipped, field)):
            if name not in there:
                said = " ".join(str(part) for part in name) if isinstance(name, tuple) else name
                yield own.problem(
                    (field,),
                    f"There is no row for {said}, which the computations ask for.",
                    "Take it over from the shipped table.",
                )


def _names(part: object) -> dict[Hashable, None]:
    """What the rows of a part of a table are called, in order; nothing when they have no names."""
    if isinstance(part, dict):
        return dict.fromkeys(part)
    names: dict[Hashable, None] = {}
    if isinstance(part, tuple):
        for row in part:
            if isinstance(row, BaseModel):
                fields = type(row).model_fields
                keys = _IDS if "id" in fields else _NAMES
                name = tuple(str(getattr(row, key)) for key in keys if key in fields)
                if name:
                    names[name] = None
    return names
