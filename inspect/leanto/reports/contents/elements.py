"""Titles of the building elements that the scope is grouped by."""

from __future__ import annotations

from functools import cache
from typing import Annotated, Literal

from pydantic import Field

from leanto.places import checklists_dir
from leanto.strict import Strict
from leanto.yaml_input import read_model


class Element(Strict):
    id: Annotated[str, Field(pattern=r"^[A-G][0-9]{2}([0-9]{2})?$")]
    title: Annotated[str, Field(min_length=3, max_length=60)]
    mark: Literal["seen", "from memory"] = "seen"


class ElementTable(Strict):
    """``checklists/tables/uniformat.yaml``."""

    source: str
    elements: tuple[Element, ...]


def element_title(element: str) -> str:
    """The element as ``B2010 Exterior walls``; the code alone when the table lacks it."""
    title = _titles().get(element) or _titles().get(element[:3], "")
    return f"{element} {title}".strip()


@cache
def _titles() -> dict[str, str]:
    table = read_model(checklists_dir() / "tables" / "uniformat.yaml", ElementTable)
    return {element.id: element.title for element in table.elements}
