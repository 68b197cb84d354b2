"""Pictures in characters that show how to look at an item."""

from __future__ import annotations

from functools import cache
from typing import Annotated

from pydantic import Field, field_validator

from leanto.checklist.model import Identifier
from leanto.places import checklists_dir
from leanto.strict import Strict
from leanto.yaml_input import read_model

COLUMNS = 66
ROWS = 16


class Drawing(Strict):
    """One picture; plain ASCII, so that every terminal and every font shows the same."""

    items: Annotated[tuple[Identifier, ...], Field(min_length=1)]
    """The items that it helps with."""
    title: Annotated[str, Field(min_length=3, max_length=COLUMNS)]
    picture: Annotated[str, Field(min_length=10)]
    source: Annotated[str, Field(min_length=3, max_length=300)]

    @field_validator("picture")
    @classmethod
    def _fits(cls, picture: str) -> str:
        lines = picture.rstrip("\n").split("\n")
        if not picture.isascii() or len(lines) > ROWS or max(map(len, lines)) > COLUMNS:
            raise ValueError(f"a picture is ASCII, at most {COLUMNS} wide and {ROWS} high")
        return "\n".join(line.rstrip() for line in lines)


class DrawingFile(Strict):
    """``checklists/drawings.yaml``."""

    drawings: tuple[Drawing, ...]


@cache
def drawings() -> dict[str, tuple[Drawing, ...]]:
    """The shipped pictures by item; InputProblems with every fault of the file.

    Read when first asked for: a walk starts without them.
    """
    found: dict[str, tuple[Drawing, ...]] = {}
    for drawing in read_model(checklists_dir() / "drawings.yaml", DrawingFile).drawings:
        for item in drawing.items:
            found[item] = (*found.get(item, ()), drawing)
    return found
