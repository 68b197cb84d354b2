"""The shipped tables, read once each."""

from __future__ import annotations

from functools import cache
from typing import TypeVar

from pydantic import BaseModel

from leanto.places import checklists_dir
from leanto.yaml_input import read_model

M = TypeVar("M", bound=BaseModel)


@cache
def _read(name: str, model: type[BaseModel]) -> BaseModel:
    return read_model(checklists_dir() / "tables" / name, model)


def read_table(name: str, model: type[M]) -> M:
    """The table ``name`` under checklists/tables/ as ``model``; InputProblems when it is faulty."""
    table = _read(name, model)
    assert isinstance(table, model)
    return table
