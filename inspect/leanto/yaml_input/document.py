"""YAML text -> plain data and the line of each part; everything outside a strict subset refused.

The subset: one document, text keys, no key twice, no anchors, aliases, merge keys or tags,
at most 40 levels. It is read from the parser's events, so that nothing is built from an alias
and libyaml is used where it is there.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import yaml

from leanto.errors import InputProblems, Problem
from leanto.yaml_input.lines import Lines, Node, Step, dotted
from leanto.yaml_input.scalars import UNWANTED, scalar_value
from leanto.yaml_input.syntax import syntax_problem

MAX_DEPTH = 40
_PARSER: Any = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_HALF = re.compile("[\ud800-\udfff]")
"""Half a character, which only an escape can bring into decoded text."""


@dataclass(frozen=True, slots=True)
class Document:
    """One YAML document: dicts, lists and scalars, with their lines."""

    data: Any
    lines: Lines


def read_document(text: str, file: str) -> Document:
    """The one document of the text; InputProblems with every fault found otherwise."""
    text = text.removeprefix("\ufeff")
    _refuse_unwanted(text, file)
    return _Composer(text, file).document()


def _refuse_unwanted(text: str, file: str) -> None:
    problems = []
    for match in UNWANTED.finditer(text):
        before = text[: match.start()]
        line = before.count("\n") + before.replace("\r\n", "").count("\r") + 1
        message = f"There is an invisible character here (U+{ord(match[0]):04X})."
        problems.append(Problem(file, line, "", message, "Delete it and type the text anew."))
        if len(problems) == 10:
            break
    if problems:
        raise InputProblems(problems)


class _Composer:
    """Builds the data from parser events, collecting the faults on the way."""

    def __init__(self, text: str, file: str) -> None:
        self._text = text
        self._file = file
        self._event: Callable[[], Any] = _PARSER(text).get_event
        self._may_hold_half_characters = "\\" in text
        self._path: list[Step] = []
        self._problems: list[Problem] = []

    def document(self) -> Document:
        root = Node(1)
        data: Any = None
        has_document = False
        while (event := self._next()) is not None:
            if isinstance(event, yaml.DocumentStartEvent):
                if has_document:
                    self._refuse(event, "A second document starts here.", "Use one file for each.")
                    break
                has_document = True
                first = self._next()
                root = Node(_line(first))
                data = self._value(first, root, 1)
        if self._problems:
            raise InputProblems(self._problems)
        return Document(data, Lines(self._file, root))

    def _next(self) -> Any:
        try:
            return self._event()
        except (yaml.YAMLError, ValueError, OverflowError) as error:
            problem = syntax_problem(error, self._text, self._file)
            raise InputProblems([*self._problems, problem]) from error

    def _refuse(self, event: Any, message: str, remedy: str = "") -> None:
        problem = Problem(self._file, _line(event), dotted(self._path), message, remedy)
        self._problems.append(problem)

    def _value(self, event: Any, node: Node, depth: int) -> Any:
        if depth > MAX_DEPTH:
            self._refuse(event, f"There are more than {MAX_DEPTH} levels of nesting.")
            raise InputProblems(self._problems)
        kind = type(event)
        if event.anchor is not None or kind is yaml.AliasEvent:
            remedy = "Write the value out, or put it in quotes if it is text."
            self._refuse(event, "Anchors (&) and aliases (*) are not used here.", remedy)
        elif event.tag is not None:
            remedy = "Leave the tag out, or put the text in quotes."
            self._refuse(event, "Tags (!) are not used here.", remedy)
        if kind is yaml.ScalarEvent:
            return self._scalar(event)
        if kind is yaml.MappingStartEvent:
            return self._mapping(node, depth)
        return self._sequence(node, depth) if kind is yaml.SequenceStartEvent else None

    def _mapping(self, node: Node, depth: int) -> dict[str, Any]:
        mapping: dict[str, Any] = {}
        path, next_event, places = self._path, self._next, node.below
        while type(event := next_event()) is not yaml.MappingEndEvent:
            is_scalar = type(event) is yaml.ScalarEvent
            key = self._value(event, node if is_scalar else Node(0), depth + 1)
            name = key if isinstance(key, str) else "?"
            below = Node(event.start_mark.line + 1)
            path.append(name)
            if not isinstance(key, str):
                self._refuse(event, "A key must be text.", "Put it in quotes.")
            elif key == "<<" and event.style in (None, ""):
                self._refuse(event, "Merge keys (<<) are not used here.", "Write the keys out.")
            elif key in mapping:
                first = places[key].line
                self._refuse(event, f"The key is there twice, first on line {first}.", "Keep one.")
            else:
                places[key] = below
            value = self._value(next_event(), below, depth + 1)
            mapping.setdefault(name, value)
            path.pop()
        return mapping

    def _sequence(self, node: Node, depth: int) -> list[Any]:
        entries: list[Any] = []
        while type(event := self._next()) is not yaml.SequenceEndEvent:
            below = node.below[len(entries)] = Node(event.start_mark.line + 1)
            self._path.append(len(entries))
            entries.append(self._value(event, below, depth + 1))
            self._path.pop()
        return entries

    def _scalar(self, event: Any) -> str | int | float | bool | None:
        word: str = event.value
        if self._may_hold_half_characters and _HALF.search(word):
            self._refuse(event, "There is half a character here.", "Type the text anew.")
        if not event.implicit[0] or event.style not in (None, ""):
            return word
        try:
            return scalar_value(word)
        except ValueError as error:
            self._refuse(event, str(error), "Put it in quotes if it is text.")
            return None


def _line(event: Any) -> int:
    """The 1-based line on which the event starts."""
    return int(event.start_mark.line) + 1
