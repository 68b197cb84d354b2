from __future__ import annotations

import socket
from decimal import Decimal
from enum import StrEnum
from pathlib import Path
from typing import Annotated, Any, Literal

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import BaseModel, ConfigDict, Field, RootModel, field_validator, model_validator

from leanto.errors import InputProblems, LeantoError, Problem
from leanto.quantities import LengthFt, Pitch
from leanto.yaml_input import document as document_module
from leanto.yaml_input import (
    parse_model,
    parse_model_with_lines,
    read_model,
    read_model_with_lines,
    try_read_model,
)


class Anything(RootModel[Any]):
    """Takes whatever the reader lets through."""


class Model(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid")


class Choice(Model):
    kind: Literal["choice"]
    answers: list[str]


class Measure(Model):
    kind: Literal["measure"]
    low: float
    high: float

    @model_validator(mode="after")
    def _in_order(self) -> Measure:
        if self.low > self.high:
            raise ValueError("low is above high")
        return self


class Place(StrEnum):
    SILL = "sill"
    RAFTER = "rafter"


class Item(Model):
    id: str
    prompt: str = ""
    weight: Annotated[int, Field(ge=0, le=10)] = 1
    place: Place = Place.SILL
    is_open: bool = False
    span: LengthFt | None = None
    pitch: Pitch | None = None
    ask: Annotated[Choice | Measure, Field(discriminator="kind")] | None = None

    @field_validator("id")
    @classmethod
    def _known_form(cls, value: str) -> str:
        if " " in value:
            raise ValueError("an id has no spaces")
        if value == "forbidden":
            raise LeantoError("This id is taken.", "Choose another one.")
        return value


class Section(Model):
    title: str
    items: list[Item] = []
    by_name: dict[str, Item] = {}
    pair: tuple[int, int] = (0, 0)
    factor: Decimal = Decimal(1)
    names: int | list[str] = 0


@pytest.fixture(params=["libyaml", "pure python"])
def parser(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    """Every fault of syntax is tried with both parsers; what they say differs."""
    name: str = request.param
    if name == "libyaml":
        if not hasattr(yaml, "CSafeLoader"):
            pytest.skip("this PyYAML has no libyaml")
        monkeypatch.setattr(document_module, "_PARSER", yaml.CSafeLoader)
    else:
        monkeypatch.setattr(document_module, "_PARSER", yaml.SafeLoader)
    return name


def load(text: str) -> Any:
    return parse_model(text, Anything, "a.yaml").root


def problems_of(text: str, model: type[BaseModel] = Anything) -> list[Problem]:
    with pytest.raises(InputProblems) as refused:
        parse_model(text, model, "a.yaml")
    return list(refused.value.problems)


# ---- what the words mean


@pytest.mark.parametrize(
    ("word", "value"),
    [
        ("true", True),
        ("false", False),
        ("null", None),
        ("~", None),
        ("", None),
        ("0", 0),
        ("-12", -12),
        ("+5", 5),
        ("12.5", 12.5),
        (".5", 0.5),
        ("5.", 5.0),
        ("1e3", 1000.0),
        ("1.0e+17", 1e17),
        ("on", "on"),
        ("yes", "yes"),
        ("No", "No"),
        ("True", "True"),
        ("012", "012"),
        ("0x1F", "0x1F"),
        ("1_000", "1_000"),
        ("12:30", "12:30"),
        ("6:12", "6:12"),
        ("2026-01-01", "2026-01-01"),
        (".inf", ".inf"),
        (".nan", ".nan"),
        ("=", "="),
        ("7' 3 1/2\"", "7' 3 1/2\""),
        ("'12'", "12"),
        ('"true"', "true"),
        ("'null'", "null"),
        ('"\\u00bd"', "\u00bd"),
    ],
)
def test_only_plain_words_numbers_and_truth_are_read(parser: str, word: str, value: Any) -> None:
    read = load(f"key: {word}\n")["key"]
    assert read == value
    assert type(read) is type(value)


def test_block_text_is_text_even_when_it_looks_like_a_number(parser: str) -> None:
    assert load("key: |-\n  12\n") == {"key": "12"}


def test_a_byte_order_mark_and_windows_line_ends_are_fine(parser: str) -> None:
    assert load("\ufeffa: 1\r\nb: 2\r\n") == {"a": 1, "b": 2}


def test_a_quoted_merge_key_is_only_a_key(parser: str) -> None:
    assert load("'<<': 1\n") == {"<<": 1}


# ---- what is refused, and on which line


@pytest.mark.parametrize(
    ("text", "line", "field", "message"),
    [
        ("a: 1\nb: 2\na: 3\n", 3, "a", "twice, first on line 1"),
        ("x:\n  - a: 1\n    a: 2\n", 3, "x.0.a", "twice, first on line 2"),
        ("a: {b: 1, b: 2}\n", 1, "a.b", "twice, first on line 1"),
        ("a: &x 1\nb: 2\n", 1, "a", "Anchors"),
        ("a: 1\nb: *x\n", 2, "b", "aliases"),
        ("a: 1\n<<: {b: 2}\n", 2, "<<", "Merge keys"),
        ("a: 1\nb: !!str 5\n", 2, "b", "Tags"),
        ("a: ! 5\n", 1, "a", "Tags"),
        ("a: !!set {b, c}\n", 1, "a", "Tags"),
        ("a: !!python/object/apply:os.getcwd []\n", 1, "a", "Tags"),
        ("a: !x!y 1\n", 1, "", "Tags"),
        ("a: 1\n2: b\n", 2, "?", "key must be text"),
        ("true: b\n", 1, "?", "key must be text"),
        ("? [a, b]\n: 1\n", 1, "?", "key must be text"),
        ("? {a: b}\n: 1\n", 1, "?", "key must be text"),
        ("a: 1\n---\nb: 2\n", 2, "", "second document"),
        ("a: 1\nb: " + "9" * 19 + "\n", 2, "b", "at most 18 digits"),
        ("a: 1\nb: 1e999\n", 2, "b", "too large"),
        ("a: b: c\n", 1, "", "A colon stands where no key can be"),
        ("a: 1\n  b: 2\n", 2, "", "A colon stands where no key can be"),
        ("a:\n\tb: 1\n", 2, "", "A tab is used to indent"),
        ("a:\n  b: 1\n\tc: 1\n", 3, "", "A tab is used to indent"),
        ("a: @x\n", 1, "", "keeps for itself"),
        ("a: `x`\n", 1, "", "keeps for itself"),
        ("a: %x\n", 1, "", "keeps for itself"),
        ("a: * x\n", 1, "", "keeps for itself"),
        ("a: & x\n", 1, "", "keeps for itself"),
        ("a: ,x\n", 1, "", "keeps for itself"),
        ("a:\n  b: 1\n c: 2\n", 3, "", "does not fit the lines above"),
        ("a: 1\nfoo\nb: 2\n", 2, "", "no colon"),
        ("a: 1\nb: 'x\nc: 1\n", 2, "", "A quote is opened here"),
        ('a: 1\nb: "x\nc: 1\n', 2, "", "A quote is opened here"),
        ("a: [1, 2\nb: 1\n", 2, "", "bracket is opened"),
        ("a: {x: 1\nb: 1\n", 2, "", "bracket is opened"),
        ('a: "\\q"\n', 1, "", "backslash"),
        ("a:\n  - 1\n  b: 2\n", 3, "", ""),
        ("a: - x\n", 1, "", "list entry"),
        ('a: "x" y\n', 1, "", "does not fit the lines above"),
        ("a: >x\n b\n", 1, "", "after | or >"),
        ("a: 1\n... b\n", 2, "", "outside the document"),
        ("%YAML 9.9\n---\na: 1\n", 1, "", "outside the document"),
        ("a: 1\nb: x\x00\n", 2, "", "invisible character here (U+0000)"),
        ("a: 1\nb: x\x1b[0m\n", 2, "", "(U+001B)"),
        ("a: 1\r\nb: \x85\n", 2, "", "(U+0085)"),
        ("a: 1\rb: \u2028\n", 2, "", "(U+2028)"),
        ("a: \ud800\n", 1, "", "(U+D800)"),
        ('a: 1\nb: "\\ud800"\n', 2, None, ""),
    ],
)
def test_what_is_outside_the_strict_subset_is_refused_with_its_line(
    parser: str, text: str, line: int, field: str | None, message: str
) -> None:
    (problem,) = problems_of(text)
    assert problem.file == "a.yaml"
    assert problem.line == line
    assert message in problem.message
    assert problem.remedy
    if field is not None:
        assert problem.field == field


def test_every_fault_of_the_subset_is_named_at_once(parser: str) -> None:
    problems = problems_of("a: &x 1\nb: *x\nc: 1\nc: 2\nd: !t 1\n")
    assert [problem.line for problem in problems] == [1, 2, 4, 5]


def test_forty_levels_are_read_and_forty_one_are_not(parser: str) -> None:
    assert load("[" * 40 + "]" * 40)
    (problem,) = problems_of("[" * 41 + "]" * 41)
    assert "40 levels" in problem.message


def test_very_deep_nesting_is_refused_without_harm(parser: str) -> None:
    assert problems_of("[" * 100_000)
    assert problems_of("- " * 100_000)


def test_an_alias_bomb_is_refused_before_it_is_built(parser: str) -> None:
    levels = "".join(f"l{n}: &l{n} [{', '.join([f'*l{n - 1}'] * 9)}]\n" for n in range(1, 12))
    problems = problems_of("l0: &l0 [x]\n" + levels)
    assert "Anchors" in problems[0].message


@pytest.mark.parametrize("text", ["", "\n\n", "# only a comment\n", "---\n", "null\n"])
def test_an_empty_file_is_refused(parser: str, text: str) -> None:
    (problem,) = problems_of(text)
    assert problem.message == "The file is empty."


# ---- files


def test_a_missing_file_is_one_problem(tmp_path: Path) -> None:
    model, problems = try_read_model(tmp_path / "none.yaml", Anything)
    assert model is None
    assert [problem.message for problem in problems] == ["There is no such file."]
    assert problems[0].file == str(tmp_path / "none.yaml")
    assert problems[0].line == 0


def test_a_folder_is_not_read(tmp_path: Path) -> None:
    (problem,) = try_read_model(tmp_path, Anything)[1]
    assert "folder" in problem.message


def test_a_socket_is_not_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    with socket.socket(socket.AF_UNIX) as listener:
        listener.bind("s")
        (problem,) = try_read_model(Path("s"), Anything)[1]
    assert "not an ordinary file" in problem.message


def test_a_file_one_may_not_read_is_one_problem(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "a.yaml"
    path.write_text("a: 1\n")

    def refuse(*_: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", refuse)
    (problem,) = try_read_model(path, Anything)[1]
    assert "may not read" in problem.message


def test_a_name_with_nul_is_one_problem() -> None:
    (problem,) = try_read_model(Path("a\x00b.yaml"), Anything)[1]
    assert problem.line == 0


def test_bytes_that_are_not_utf8_are_named_with_their_line(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_bytes(b"a: 1\nb: caf\xe9\n")
    (problem,) = try_read_model(path, Anything, name="my.yaml")[1]
    assert (problem.file, problem.line) == ("my.yaml", 2)
    assert "UTF-8" in problem.message


def test_two_megabytes_are_read_and_one_byte_more_is_not(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_text("a: " + "x" * (2_000_000 - 4) + "\n")
    assert try_read_model(path, Anything)[1] == []
    path.write_text("a: " + "x" * (2_000_000 - 3) + "\n")
    (problem,) = try_read_model(path, Anything)[1]
    assert "larger than 2 MB" in problem.message


def test_a_good_file_becomes_the_model(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_text("title: Roof\nitems:\n  - id: a\n    span: 7' 6\"\n    pitch: 6:12\n")
    section = read_model(path, Section)
    assert section.items[0].span == 7.5
    assert section.items[0].pitch == 6
    assert try_read_model(path, Section) == (section, [])


# ---- lines


LINED = """\
# a comment
title: Roof

items:
  - id: a
    prompt: |
      look
      here
  -
    id: b
    ask: {kind: choice, answers: [x,
      y]}
by_name:
  first:
    id: c
"""


def test_the_line_of_every_key_and_entry_is_known(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_text(LINED)
    section, lines = read_model_with_lines(path, Section, name="a.yaml")
    assert section.items[1].id == "b"
    assert lines.at() == 2
    assert lines.at("title") == 2
    assert lines.at("items") == 4
    assert lines.at("items", 0) == 5
    assert lines.at("items", 0, "prompt") == 6
    assert lines.at("items", 1) == 10
    assert lines.at("items", 1, "ask", "answers", 1) == 12
    assert lines.at("by_name", "first", "id") == 15


def test_a_missing_key_has_the_line_of_what_would_hold_it() -> None:
    _, lines = parse_model_with_lines(LINED, Section, "a.yaml")
    assert lines.at("items", 0, "span") == 5
    assert lines.at("items", 9) == 4
    assert lines.at("nothing", "here") == 2


def test_a_later_check_can_name_file_field_and_line() -> None:
    _, lines = parse_model_with_lines(LINED, Section, "a.yaml")
    problem = lines.problem(("items", 0, "prompt"), "No such fact.", "Check the name.")
    assert str(problem) == "a.yaml:6: items.0.prompt: No such fact. Check the name."


# ---- validation


def item(text: str) -> str:
    """A section whose one item starts on line 3 and holds the lines given."""
    return "title: t\nitems:\n  - id: a\n" + "".join(f"    {line}\n" for line in text.splitlines())


@pytest.mark.parametrize(
    ("text", "line", "field", "message", "remedy"),
    [
        ("items: []\n", 1, "title", 'The key "title" is missing.', "Add it."),
        ("title: t\nitems:\n  - prompt: x\n", 3, "items.0.id", "is missing", "Add it."),
        ("title: t\nby_name:\n  n:\n    prompt: x\n", 3, "by_name.n.id", "is missing", "Add it."),
        (item("promt: x"), 4, "items.0.promt", "not known", 'Did you mean "prompt"?'),
        (item("zzzzzz: x"), 4, "items.0.zzzzzz", "not known", "Known here: prompt, weight, "),
        ("title: t\nitem: []\n", 2, "item", "not known", 'Did you mean "items"?'),
        (
            "title: t\nby_name:\n  n:\n    id: a\n    wieght: 3\n",
            5,
            "by_name.n.wieght",
            "not known",
            'Did you mean "weight"?',
        ),
        (item("weight: heavy"), 4, "items.0.weight", 'whole number is needed; found "heavy"', ""),
        (item("weight: 1.5"), 4, "items.0.weight", "whole number", ""),
        (item("weight: 11"), 4, "items.0.weight", "the number 11 does not fit", ""),
        (item("weight: -1"), 4, "items.0.weight", "must be at least 0", ""),
        (item("place: rafer"), 4, "items.0.place", "not one of: sill", 'Did you mean "rafter"?'),
        (item("place: moon"), 4, "items.0.place", '"moon" is not one of: sill, rafter.', ""),
        (item("is_open: maybe"), 4, "items.0.is_open", "true or false is needed", ""),
        (item("prompt: 12"), 4, "items.0.prompt", "found the number 12", "Put it in quotes"),
        (item("prompt:"), 4, "items.0.prompt", "found nothing", ""),
        (item("prompt: [a]"), 4, "items.0.prompt", "found a list", ""),
        (item("span: 7' 13\""), 4, "items.0.span", "inches after feet must be under 12.", "Write"),
        (item("span: inf"), 4, "items.0.span", "not understood as a length", "Write it like"),
        (item("pitch: 24:12"), 4, "items.0.pitch", "steeper than 20:12", "Measure it again."),
        (item("ask:\n  kind: chioce"), 5, "items.0.ask.kind", "not one of", 'mean "choice"'),
        (item("ask:\n  answers: [a]"), 4, "items.0.ask", 'key "kind" is missing', "Add it."),
        (item("ask:\n  kind: choice"), 4, "items.0.ask.answers", "is missing", "Add it."),
        (
            item("ask:\n  kind: choice\n  answers: [a]\n  anwers: [b]"),
            7,
            "items.0.ask.anwers",
            "not known",
            "Remove it, or check its spelling.",
        ),
        (
            item("ask:\n  kind: measure\n  low: x\n  high: 2"),
            6,
            "items.0.ask.low",
            'A number is needed; found "x"',
            "",
        ),
        (
            item("ask:\n  kind: measure\n  low: 3\n  high: 2"),
            4,
            "items.0.ask",
            "low is above high",
            "",
        ),
        (
            item("ask:\n  kind: measure\n  low: nan\n  high: 2"),
            6,
            "items.0.ask.low",
            "has no end",
            "Write",
        ),
        (item("ask: 3"), 4, "items.0.ask", "Keys with values are needed", "key: value"),
        ("title: t\nitems:\n  - id: a b\n", 3, "items.0.id", "an id has no spaces", ""),
        ("title: t\nitems: a\n", 2, "items", 'A list is needed; found "a"', 'with "- "'),
        ("title: t\nitems: {a: 1}\n", 2, "items", "found keys with values", ""),
        ("title: t\nitems:\n  - a\n", 3, "items.0", "Keys with values are needed", ""),
        ("title: t\npair: [1]\n", 2, "pair.1", "entry 2 is missing", "Add it."),
        ("title: t\npair: [1, 2, 3]\n", 2, "pair", "at most 2 entries; found 3", ""),
        ("title: t\nfactor: x\n", 2, "factor", "A number is needed", ""),
        ("title: t\nnames: {}\n", 2, "names", "whole number is needed", ""),
        ("- a\n", 1, "", "Keys with values are needed; found a list.", ""),
    ],
)
def test_a_fault_of_the_data_is_named_in_plain_words_with_its_line(
    text: str, line: int, field: str, message: str, remedy: str
) -> None:
    (problem,) = problems_of(text, Section)
    assert (problem.line, problem.field) == (line, field)
    assert message in problem.message
    assert remedy in problem.remedy
    assert "Value error" not in problem.message
    assert "\n" not in str(problem)


def test_the_nearest_spelling_is_looked_for_in_the_branch_that_was_chosen() -> None:
    text = item("ask:\n  kind: measure\n  low: 1\n  hihg: 2")
    missing, extra = problems_of(text, Section)
    assert (missing.line, missing.field) == (4, "items.0.ask.high")
    assert (extra.line, extra.field) == (7, "items.0.ask.hihg")
    assert extra.remedy == 'Did you mean "high"?'


def test_our_own_error_keeps_its_remedy() -> None:
    text = "title: t\nitems:\n  - id: forbidden\n"
    (problem,) = problems_of(text, Section)
    assert (problem.message, problem.remedy) == ("This id is taken.", "Choose another one.")


def test_all_faults_come_at_once_in_the_order_of_the_file() -> None:
    text = "items:\n  - prompt: 3\n  - id: b\n    weight: x\nextra: 1\n"
    problems = problems_of(text, Section)
    assert [(problem.line, problem.field) for problem in problems] == [
        (1, "title"),
        (2, "items.0.id"),
        (2, "items.0.prompt"),
        (4, "items.1.weight"),
        (5, "extra"),
    ]


class Note(Model):
    kind: Literal["text"]
    body: str


class Mark(Model):
    kind: Literal["mark"]
    text: str
    color: int


class Page(Model):
    part: Annotated[Note | Mark, Field(discriminator="kind")]


def test_a_union_branch_named_like_a_key_beside_it_is_not_taken_for_the_key() -> None:
    class Text(Model):
        kind: Literal["text"]
        text: str
        size: int

    class Holder(Model):
        part: Annotated[Text | Mark, Field(discriminator="kind")]

    text = "part:\n  kind: text\n  text: hello\n  size: big\n"
    (problem,) = problems_of(text, Holder)
    assert (problem.line, problem.field) == (4, "part.size")


def test_a_key_called_like_a_branch_of_another_kind_is_still_found() -> None:
    (problem,) = problems_of("part:\n  kind: mark\n  text: [1]\n  color: 1\n", Page)
    assert (problem.line, problem.field) == (3, "part.text")


class Table(RootModel[dict[str, list[Item]]]):
    pass


def test_the_keys_of_a_model_inside_a_root_model_are_known() -> None:
    (problem,) = problems_of("x:\n  - id: a\n    wieght: 2\n", Table)
    assert (problem.line, problem.field) == (3, "x.0.wieght")
    assert problem.remedy == 'Did you mean "weight"?'


class Either(Model):
    one: Choice | list[Item]


def test_a_value_that_fits_no_branch_of_a_union_is_one_problem_when_it_is_of_no_kind() -> None:
    (problem,) = problems_of("one: 3\n", Either)
    assert problem.field == "one"
    assert "Keys with values are needed" in problem.message
    assert "Or: A list is needed" in problem.message


# ---- whatever is typed


YAML_LIKE = st.text("ab:-?!&*<>{}[]|'\"\\#%@`, \t\n\r019.~\x00\x85\u2028\ufeffeE+x/_", max_size=60)


@settings(max_examples=400, deadline=None)
@given(YAML_LIKE | st.text(max_size=60), st.sampled_from(["CSafeLoader", "SafeLoader"]))
def test_any_text_is_read_or_refused_with_problems(text: str, loader: str) -> None:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(document_module, "_PARSER", getattr(yaml, loader, yaml.SafeLoader))
        try:
            parse_model(text, Anything, "a.yaml")
        except InputProblems as refused:
            assert refused.problems
            for problem in refused.problems:
                assert problem.message
                assert 0 <= problem.line <= len(text.splitlines()) + 1
                assert "\n" not in str(problem)


DATA = st.recursive(
    st.none() | st.booleans() | st.integers(-99, 99) | st.floats() | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(
                ["title", "items", "by_name", "id", "ask", "kind", "low", "span", "names"]
            ),
            inner,
            max_size=4,
        )
    ),
    max_leaves=12,
)


@settings(max_examples=200, deadline=None)
@given(DATA)
def test_any_data_is_a_model_or_refused_with_problems(data: Any) -> None:
    text = yaml.safe_dump(data, allow_unicode=False)
    try:
        parse_model(text, Section, "a.yaml")
    except InputProblems as refused:
        assert refused.problems
        assert all("\n" not in str(problem) for problem in refused.problems)


@settings(deadline=None)
@given(st.binary(max_size=60))
def test_any_bytes_are_read_or_refused_with_problems(
    tmp_path_factory: pytest.TempPathFactory, content: bytes
) -> None:
    path = tmp_path_factory.getbasetemp() / "bytes.yaml"
    path.write_bytes(content)
    model, problems = try_read_model(path, Anything)
    assert (model is None) == bool(problems)


def test_a_list_is_not_called_short_when_its_entries_are_refused() -> None:
    class Entry(BaseModel):
        size: int

    class Shelf(BaseModel):
        entries: Annotated[tuple[Entry, ...], Field(min_length=1)]

    with pytest.raises(InputProblems) as refused:
        parse_model("entries:\n  - {size: big}\n", Shelf, "shelf.yaml")
    assert [problem.field for problem in refused.value.problems] == ["entries.0.size"]
