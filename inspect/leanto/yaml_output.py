"""Plain data -> readable YAML that the reader gives back unchanged."""

from __future__ import annotations

import math
import re
import sys
from collections.abc import Mapping, Sequence
from enum import Enum
from typing import Any

import yaml

from leanto.yaml_input.document import MAX_DEPTH
from leanto.yaml_input.scalars import BOOL, FLOAT, INT, MAX_DIGITS, NULL, UNWANTED


def dump_yaml(data: Mapping[str, Any] | Sequence[Any]) -> str:
    """The data in block style, keys in the order given, text unquoted where that is safe.

    Takes mappings with text keys, lists, text, finite numbers, true, false, None and enums of
    these. Anything else is a mistake of the program and raises ValueError.
    """
    plain = _plain(data, 1)
    return yaml.dump(
        plain,
        Dumper=_Dumper,
        default_flow_style=False,
        allow_unicode=True,
        sort_keys=False,
        width=sys.maxsize,
    )


class _Dumper(yaml.SafeDumper):
    def ignore_aliases(self, data: Any) -> bool:
        return True

    def increase_indent(self, flow: bool = False, indentless: bool = False) -> None:
        super().increase_indent(flow, False)


def _text(dumper: yaml.SafeDumper, text: str) -> yaml.ScalarNode:
    style = "|" if "\n" in text else None
    if UNWANTED.search(text) or "\r" in text:
        style = '"'
    return dumper.represent_scalar("tag:yaml.org,2002:str", text, style)


_Dumper.add_representer(str, _text)
# Text that either our reader or a YAML 1.1 reader would take for something else gets quotes.
for _tag, _pattern, _first in (
    ("null", NULL, ["~", "n", ""]),
    ("bool", BOOL, list("tf")),
    ("int", INT, list("+-0123456789")),
    ("float", FLOAT, list("+-.0123456789")),
):
    _whole = re.compile(f"(?:{_pattern.pattern})\\Z")
    _Dumper.add_implicit_resolver(f"tag:yaml.org,2002:{_tag}", _whole, _first)


def _plain(value: Any, depth: int) -> Any:
    """The value with its mappings as dicts, its sequences as lists, its enums as their values."""
    if depth > MAX_DEPTH:
        raise ValueError(f"more than {MAX_DEPTH} levels of nesting")
    match value:
        case Enum():
            return _plain(value.value, depth)
        case None | bool():
            return value
        case str():
            return _whole_characters(value)
        case int() if len(str(abs(value))) <= MAX_DIGITS:
            return int(value)
        case float() if math.isfinite(value):
            return float(value)
        case Mapping():
            return {_key(key): _plain(below, depth + 1) for key, below in value.items()}
        case list() | tuple():
            return [_plain(below, depth + 1) for below in value]
    raise ValueError(f"this cannot be written as YAML: {value!r}")


def _key(key: object) -> str:
    name = key.value if isinstance(key, Enum) else key
    if not isinstance(name, str):
        raise ValueError(f"a key must be text: {key!r}")
    return _whole_characters(name)


def _whole_characters(text: str) -> str:
    if any("\ud800" <= char <= "\udfff" for char in text):
        raise ValueError(f"text with half a character: {text!r}")
    return str(text)
