"""A YAML file -> a pydantic model, with the line of each key beside it where asked for."""

from __future__ import annotations

from pathlib import Path
from typing import TypeVar

from pydantic import BaseModel

from leanto.errors import InputProblems, Problem
from leanto.yaml_input.document import read_document
from leanto.yaml_input.file_text import read_text
from leanto.yaml_input.lines import Lines
from leanto.yaml_input.validation import validated

M = TypeVar("M", bound=BaseModel)


def read_model(path: Path, model: type[M], *, name: str | None = None) -> M:
    """The file as a model. ``name`` is what messages call the file; else its path.

    Raises InputProblems with every fault of the file.
    """
    return read_model_with_lines(path, model, name=name)[0]


def read_model_with_lines(
    path: Path, model: type[M], *, name: str | None = None
) -> tuple[M, Lines]:
    """The file as a model, and where each of its keys stands, for checks made later."""
    file = name or str(path)
    return parse_model_with_lines(read_text(path, file), model, file)


def parse_model(text: str, model: type[M], file: str) -> M:
    """YAML text as a model; ``file`` is what messages call it."""
    return parse_model_with_lines(text, model, file)[0]


def parse_model_with_lines(text: str, model: type[M], file: str) -> tuple[M, Lines]:
    """YAML text as a model, and where each of its keys stands."""
    document = read_document(text, file)
    return validated(document, model), document.lines


def try_read_model(
    path: Path, model: type[M], *, name: str | None = None
) -> tuple[M | None, list[Problem]]:
    """(the model, no problems), or (None, every fault): for readers that collect."""
    try:
        return read_model(path, model, name=name), []
    except InputProblems as refused:
        return None, list(refused.problems)
