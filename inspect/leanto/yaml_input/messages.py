"""One pydantic error in plain words: what is wrong, and what to do."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from leanto.errors import LeantoError
from leanto.yaml_input.known_keys import spelling_remedy

_MAX_SHOWN = 40
_BOUNDS = {
    "greater_than": ("gt", "more than"),
    "greater_than_equal": ("ge", "at least"),
    "less_than": ("lt", "less than"),
    "less_than_equal": ("le", "at most"),
    "multiple_of": ("multiple_of", "a multiple of"),
}
_KINDS: tuple[tuple[str, str, str], ...] = (
    (r"int_.*", "A whole number is needed", ""),
    (r"(?:float|decimal)_.*|finite_number", "A number is needed", ""),
    (r"bool_.*", "true or false is needed", ""),
    (r"string_(?:type|unicode|sub_type)", "Text is needed", "Put it in quotes if it is text."),
    (
        r"(?:list|tuple|set|frozen_set|iterable)_type",
        "A list is needed",
        'Start each entry with "- ".',
    ),
    (
        r"(?:dict|model|mapping|model_attributes|dataclass)_type",
        "Keys with values are needed",
        'Write each as "key: value".',
    ),
    (r"(?:date|datetime)_.*", "A date is needed", "Write it like 2026-11-25."),
    (r"none_required", "Nothing may stand here", "Leave the value empty."),
    (r"string_pattern_mismatch", "The text is not written in the form expected here", ""),
)


def plain_words(error: Mapping[str, Any]) -> tuple[str, str]:
    """(message, remedy) of one entry of ``ValidationError.errors()``."""
    kind: str = error["type"]
    context: dict[str, Any] = error.get("ctx") or {}
    given = error.get("input")
    if kind == "missing":
        return _missing(error["loc"])
    if kind in ("value_error", "assertion_error"):
        return _own_words(context.get("error"))
    if kind in ("literal_error", "enum"):
        return _not_one_of(given, context["expected"])
    if kind == "union_tag_invalid":
        return _not_one_of(context["tag"], context["expected_tags"])
    if kind == "union_tag_not_found":
        name = str(context["discriminator"]).strip("'")
        return f'The key "{name}" is missing, which says what kind this is.', "Add it."
    if kind in _BOUNDS:
        name, words = _BOUNDS[kind]
        return f"{found(given)} does not fit: it must be {words} {_plain(context[name])}.", ""
    if kind.startswith(("string_too_", "too_")):
        return _wrong_size(kind, context, given)
    for pattern, needed, remedy in _KINDS:
        if re.fullmatch(pattern, kind):
            return f"{needed}; found {found(given)}.", remedy
    return f"{str(error['msg']).rstrip('.')}; found {found(given)}.", ""


def found(value: object) -> str:
    """A few words for a value that was met."""
    match value:
        case None:
            return "nothing"
        case bool():
            return "true" if value else "false"
        case int() | float():
            return f"the number {value}"
        case str():
            text = value if len(value) <= _MAX_SHOWN else value[: _MAX_SHOWN - 3] + "..."
            return '"' + "".join(char if char.isprintable() else " " for char in text) + '"'
        case list() | tuple():
            return "a list"
        case dict():
            return "keys with values"
        case _:
            return f"a {type(value).__name__}"


def _missing(loc: tuple[str | int, ...]) -> tuple[str, str]:
    step = loc[-1] if loc else ""
    if isinstance(step, int):
        return f"The list is too short: entry {step + 1} is missing.", "Add it."
    return f'The key "{step}" is missing.', "Add it."


def _own_words(error: object) -> tuple[str, str]:
    if isinstance(error, LeantoError):
        return _one_line(error.what), error.remedy
    return _one_line(str(error)) or "This value is not accepted.", ""


def _not_one_of(given: object, expected: str) -> tuple[str, str]:
    choices = re.findall(r"'((?:[^'\\]|\\.)*)'", expected) or [expected]
    remedy = spelling_remedy(given, choices) if isinstance(given, str) else ""
    message = f"{found(given)} is not one of: {', '.join(choices)}."
    return message[0].upper() + message[1:], remedy if remedy.startswith("Did") else ""


def _wrong_size(kind: str, context: dict[str, Any], given: object) -> tuple[str, str]:
    bound = "at least" if kind.endswith("short") else "at most"
    size = context["min_length" if kind.endswith("short") else "max_length"]
    if kind.startswith("string"):
        if size == 1 and bound == "at least":
            return "The text is empty.", "Write something, or leave the key out."
        return f"{found(given)} does not fit: the text must have {bound} {size} characters.", ""
    entries = "entry" if size == 1 else "entries"
    return f"There must be {bound} {size} {entries}; found {context['actual_length']}.", ""


def _plain(bound: object) -> str:
    return f"{bound:g}" if isinstance(bound, float) else str(bound)


def _one_line(text: str) -> str:
    return " ".join(text.split())
