"""The tables of the computations: the shipped ones, and an owner's own in their place."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from functools import cache, lru_cache, wraps
from typing import Final, ParamSpec, TypeVar

from pydantic import BaseModel

from leanto.places import checklists_dir
from leanto.yaml_input import read_model

M = TypeVar("M", bound=BaseModel)
P = ParamSpec("P")
R = TypeVar("R")


@dataclass(frozen=True, slots=True)
class OwnTables:
    """Tables that stand in for shipped ones."""

    version: str = ""
    """A hash of their content, by which two sets are told apart."""
    by_name: Mapping[str, BaseModel] = field(default_factory=dict, compare=False)
    """By the name of the file."""


NO_OWN: Final = OwnTables()
"""The shipped tables and no others."""
_IN_USE: ContextVar[OwnTables] = ContextVar("tables in use", default=NO_OWN)


@contextmanager
def using(own: OwnTables) -> Iterator[None]:
    """Every computation within reads these tables before the shipped ones."""
    token = _IN_USE.set(own)
    try:
        yield
    finally:
        _IN_USE.reset(token)


def tables_in_use() -> OwnTables:
    """The tables that computations read here before the shipped ones."""
    return _IN_USE.get()


def per_tables(maxsize: int) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Keeps results as ``lru_cache`` does, those of each set of tables apart."""

    def decorated(compute: Callable[P, R]) -> Callable[P, R]:
        def anew(_: OwnTables, *args: P.args, **kwargs: P.kwargs) -> R:
            return compute(*args, **kwargs)

        kept: Callable[..., R] = lru_cache(maxsize=maxsize)(anew)

        @wraps(compute)
        def by_tables(*args: P.args, **kwargs: P.kwargs) -> R:
            return kept(_IN_USE.get(), *args, **kwargs)

        return by_tables

    return decorated


@cache
def _shipped(name: str, model: type[BaseModel]) -> BaseModel:
    return read_model(checklists_dir() / "tables" / name, model)


def read_table(name: str, model: type[M]) -> M:
    """The owner's table ``name``, else the one under checklists/tables/, as ``model``.

    InputProblems when a shipped table is faulty; an owner's own was checked when it was read.
    """
    own = _IN_USE.get().by_name.get(name)
    table = _shipped(name, model) if own is None else own
    assert isinstance(table, model)
    return table
