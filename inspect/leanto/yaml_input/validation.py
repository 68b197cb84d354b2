"""Data of a document -> a model, or a Problem with its line for each fault."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from leanto.errors import InputProblems, LeantoError, Problem
from leanto.yaml_input.document import Document
from leanto.yaml_input.known_keys import known_keys, spelling_remedy
from leanto.yaml_input.lines import Lines, Place, Step
from leanto.yaml_input.messages import plain_words

M = TypeVar("M", bound=BaseModel)
_MOST_FAULTS = 200
"""Told of one file: each is looked at beside all others, and nobody reads more."""


def validated(document: Document, model: type[M]) -> M:
    """The model made of the document's data; InputProblems with every fault otherwise."""
    lines = document.lines
    if document.data is None:
        remedy = "Write something into it, or remove it."
        raise InputProblems([Problem(lines.file, 0, "", "The file is empty.", remedy)])
    try:
        made = model.model_validate(document.data)
    except ValidationError as refused:
        raise InputProblems(_problems(refused, lines, model)) from refused
    except InputProblems:
        raise
    except LeantoError as refused:
        raise InputProblems([lines.problem((), refused.what, refused.remedy)]) from refused
    not_finite = (
        []
        if _is_finite(made)
        else [
            lines.problem(path, "A number is needed; this one has no end.", "Write its digits.")
            for path in _not_finite(made)
        ]
    )
    if not_finite:
        raise InputProblems(not_finite)
    return made


def _problems(refused: ValidationError, lines: Lines, model: type[BaseModel]) -> list[Problem]:
    """The faults in the order of the file, each once, those of a union's branches joined."""
    groups: dict[tuple[int, str, str], list[Problem]] = {}
    errors = refused.errors(include_url=False)[:_MOST_FAULTS]
    for error in errors:
        if _only_follows(error, errors):
            continue
        place = lines.locate(error["loc"])
        problem = _problem(error, place, lines, model)
        is_alone = place.is_exact and not place.is_union
        key = (problem.line, problem.field, problem.message if is_alone else "")
        groups.setdefault(key, []).append(problem)
    problems = sorted((_joined(same) for same in groups.values()), key=lambda found: found.line)
    if refused.error_count() > len(errors):
        more = f"There are {refused.error_count() - len(errors)} more faults in this file."
        problems.append(Problem(lines.file, 0, "", more, "Put these right first."))
    return problems


def _only_follows(error: Mapping[str, Any], errors: Sequence[Mapping[str, Any]]) -> bool:
    """True for a list that is too short because its own entries are refused."""
    loc = error["loc"]
    return error["type"] == "too_short" and any(
        len(other["loc"]) > len(loc) and other["loc"][: len(loc)] == loc for other in errors
    )


def _problem(
    error: Mapping[str, Any], place: Place, lines: Lines, model: type[BaseModel]
) -> Problem:
    message, remedy = plain_words(error)
    line, field = place.line, place.field()
    loc = error["loc"]
    if error["type"] == "missing" and loc:
        field = place.field(loc[-1])
    elif error["type"] == "union_tag_invalid":
        discriminator = str(error["ctx"]["discriminator"]).strip("'")
        line, field = lines.at(*place.path, discriminator), place.field(discriminator)
    elif error["type"] == "extra_forbidden" and place.is_exact:
        *above, key = loc
        message = f'The key "{key}" is not known here.'
        remedy = spelling_remedy(str(key), known_keys(model, above), lines.locate(above).node.below)
    return Problem(lines.file, line, field, message, remedy)


def _joined(same: Sequence[Problem]) -> Problem:
    """One Problem for the several ways in which a value could have been written."""
    first = same[0]
    messages = list(dict.fromkeys(problem.message for problem in same))
    remedy = first.remedy if len(messages) == 1 else ""
    text = " Or: ".join(messages)
    return Problem(first.file, first.line, first.field, text, remedy)


def _is_finite(made: BaseModel) -> bool:
    """Whether no number below the model is without end; a quick look, without the place."""
    stack: list[object] = [made]
    while stack:
        value = stack.pop()
        if isinstance(value, float):
            if not math.isfinite(value):
                return False
        elif isinstance(value, BaseModel):
            stack += value.__dict__.values()
        elif isinstance(value, Mapping):
            stack += value.values()
        elif isinstance(value, tuple | list):
            stack += value
    return True


def _not_finite(value: object, path: tuple[Step, ...] = ()) -> Iterator[tuple[Step, ...]]:
    """The paths of infinities and of not-a-number, which pydantic reads from text such as inf."""
    if isinstance(value, float):
        if not math.isfinite(value):
            yield path
    elif isinstance(value, BaseModel):
        for name, below in vars(value).items():
            yield from _not_finite(below, path if name == "root" else (*path, name))
    elif isinstance(value, Mapping):
        for name, below in value.items():
            yield from _not_finite(below, (*path, str(name)))
    elif isinstance(value, list | tuple):
        for index, below in enumerate(value):
            yield from _not_finite(below, (*path, index))
