from __future__ import annotations

from decimal import Decimal
from enum import StrEnum
from typing import Any

import pytest
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st
from pydantic import RootModel

from leanto.yaml_input import document as document_module
from leanto.yaml_input import parse_model
from leanto.yaml_output import dump_yaml


class Anything(RootModel[Any]):
    """Takes whatever the reader lets through."""


def read_back(text: str) -> Any:
    return parse_model(text, Anything, "out.yaml").root


def typed(value: Any) -> Any:
    """The value with the type of each part, so that 1, 1.0 and True are told apart."""
    if isinstance(value, dict):
        return {key: typed(below) for key, below in value.items()}
    if isinstance(value, list):
        return [typed(below) for below in value]
    return type(value).__name__, repr(value)


def test_keys_keep_their_order_and_lists_are_indented_blocks() -> None:
    data = {"title": "Roof", "items": [{"id": "a", "tags": ["x", "y"]}, {"id": "b", "tags": []}]}
    assert dump_yaml(data) == (
        "title: Roof\nitems:\n  - id: a\n    tags:\n      - x\n      - y\n  - id: b\n    tags: []\n"
    )


def test_long_text_stays_on_one_line_and_unicode_as_it_is() -> None:
    words = "caf\u00e9 \u00bd " * 60 + "end"
    assert dump_yaml({"a": words}) == f"a: {words}\n"


def test_text_of_several_lines_is_written_as_a_block() -> None:
    assert dump_yaml({"a": "one\ntwo: 2\n"}) == "a: |\n  one\n  two: 2\n"
    assert dump_yaml({"a": "one\ntwo"}) == "a: |-\n  one\n  two\n"


@pytest.mark.parametrize(
    "text",
    ["1e9", "12", "-0.5", ".5", "5.", "true", "null", "~", "", "on", "no", "012", "12:30",
     "2026-01-01", "<<", "=", " ", "a: b", "# x", "- x", "*x", "&x", "!x", "@x", "%x", "x "],
)  # fmt: skip
def test_text_that_could_be_misread_is_quoted(text: str) -> None:
    written = dump_yaml({"a": text})
    assert written in (f"a: '{text}'\n", f'a: "{text}"\n')
    assert read_back(written) == {"a": text}


def test_control_characters_are_escaped_in_double_quotes() -> None:
    assert dump_yaml({"a": "x\x00\x1b\x85\u2028\ufeffy"}) == 'a: "x\\0\\e\\N\\L\\uFEFFy"\n'


def test_a_list_that_is_there_twice_is_written_twice() -> None:
    same = ["x"]
    assert dump_yaml({"a": same, "b": same}) == "a:\n  - x\nb:\n  - x\n"


def test_enums_and_tuples_are_written_as_what_they_hold() -> None:
    class Color(StrEnum):
        RED = "red"

    assert dump_yaml({Color.RED: (Color.RED, 1)}) == "red:\n  - red\n  - 1\n"


@pytest.mark.parametrize(
    "data",
    [
        {"a": float("nan")},
        {"a": float("inf")},
        {"a": 10**18},
        {1: "a"},
        {"a": Decimal(1)},
        {"a": {1, 2}},
        {"a": object()},
        {"a": "\ud800"},
        {"\ud800": "a"},
    ],
)
def test_what_the_reader_would_not_give_back_is_a_mistake(data: Any) -> None:
    with pytest.raises(ValueError, match=r"\w"):
        dump_yaml(data)


def test_data_that_holds_itself_is_a_mistake() -> None:
    endless: list[Any] = []
    endless.append(endless)
    with pytest.raises(ValueError, match="levels of nesting"):
        dump_yaml(endless)


ODD = ["on", "2026-01-01", "012", " ", "a: b", "\n", " \n", "a\n b\n\n", "\ta\n", "a\r\nb", "\x85",
       "\u2028", "\ufeff", "'", '"', "\\", "---", "...", "a\n---\nb", "? ", "|", ">", "[", "{}",
       "1e5", "1_0", "0x1", "<<", "=", "\x00", "\x7f", "\U0001f600", "a #b", "#", "\xa0a\nb\xa0",
       "x" * 200, "\n\n\na", "a\n\n\n", "%a\nb"]  # fmt: skip
TEXT = (
    st.sampled_from(ODD)
    | st.text(st.characters(exclude_categories=["Cs"]), max_size=20)
    | st.lists(st.sampled_from([*" ab:-#'\"\n\t\r", ": ", " #"]), max_size=8).map("".join)
)
LEAF = (
    st.none()
    | st.booleans()
    | st.integers(-(10**18) + 1, 10**18 - 1)
    | st.floats(allow_nan=False, allow_infinity=False)
    | TEXT
)
TREE = st.recursive(
    LEAF,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(TEXT, inner, max_size=4),
    max_leaves=15,
)


@settings(max_examples=500, deadline=None)
@given(st.lists(TREE, max_size=3) | st.dictionaries(TEXT, TREE, max_size=3))
@example({"a": "\n"})
@example([[], {}, [[]], [{}], {"": None}])
@example({"k" * 200: "v", "two\nlines": {"x\n": 1}})
@example([1e17, -0.0, 5e-324, 1.7976931348623157e308])
def test_what_is_written_is_read_back_unchanged(data: Any) -> None:
    written = dump_yaml(data)
    for loader in ("CSafeLoader", "SafeLoader"):
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr(document_module, "_PARSER", getattr(yaml, loader, yaml.SafeLoader))
            assert typed(read_back(written)) == typed(data)
