"""Whatever is typed, an expression is refused in words or evaluates to a value or undecided."""

from __future__ import annotations

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.rules.expression import ExpressionError, compile_expression
from leanto.rules.facts import STATIC_FACTS
from leanto.rules.functions import LIMIT, NAMES
from leanto.rules.terms import Value
from leanto.rules.undecidable import Undecidable

FACTS = {spec.name: spec for spec in STATIC_FACTS}

NUMBERS = ["0", "1", "2.5", "1e9", "-3", "0x10", "1_000", "1j", "1e400", "9" * 30]
WORDS = ["'gable'", "'north'", "'none'", "'nothing'", "''", '"roof"', "b'x'", "f'{x}'"]
SIGNS = ["+", "-", "*", "/", "**", "//", "%", "<", "<=", "==", "!=", ">", ">=", "=", ":=", "~"]
MARKS = ["(", ")", "(", ")", ",", ".", "[", "]", "{", "}", ":", "#", "\\", "\n", "\x00", "\ud800"]
KEYWORDS = ["and", "or", "not", "in", "is", "if", "else", "lambda", "for", "await", "True", "None"]
TOKENS = [*FACTS, *NAMES, *NUMBERS, *WORDS, *SIGNS, *MARKS, *KEYWORDS, "__class__", "open"]

numbers = st.floats(allow_nan=False, allow_infinity=False, min_value=-1e13, max_value=1e13)


def well_formed() -> st.SearchStrategy[str]:
    """Expressions that mostly compile, so that evaluation is reached."""
    of_kind = {
        kind: [spec.name for spec in STATIC_FACTS if spec.kind == kind]
        for kind in ("number", "flag")
    }
    number = st.deferred(
        lambda: st.one_of(
            st.sampled_from([*of_kind["number"], "0", "1", "2.5", "1e6"]),
            st.builds("({} {} {})".format, number, st.sampled_from("+-*/"), number),
            st.builds("{}({})".format, st.sampled_from(["ceil", "sqrt", "round", "-"]), number),
            st.builds("max({}, {})".format, number, number),
            st.builds("({} if {} else {})".format, number, flag, number),
        )
    )
    flag = st.deferred(
        lambda: st.one_of(
            st.sampled_from([*of_kind["flag"], "side == 'north'", "known(emc_pct)"]),
            st.builds(
                "({} {} {})".format, number, st.sampled_from(["<", "<=", "==", "!="]), number
            ),
            st.builds("({} {} {})".format, flag, st.sampled_from(["and", "or"]), flag),
            st.builds("(not {})".format, flag),
            st.just("found_here('leak')"),
        )
    )
    return st.one_of(number, flag)


@st.composite
def some_facts(draw: st.DrawFn) -> dict[str, Value]:
    """Any part of the facts, each with a value of its kind."""
    values: dict[str, Value] = {}
    for name in draw(st.sets(st.sampled_from(sorted(FACTS)))):
        spec = FACTS[name]
        match spec.kind:
            case "number":
                values[name] = draw(numbers)
            case "flag":
                values[name] = draw(st.booleans())
            case "text":
                values[name] = draw(st.sampled_from(spec.choices))
    return values


def check(text: str, values: dict[str, Value]) -> None:
    try:
        compiled = compile_expression(text, FACTS)
    except ExpressionError as refused:
        assert str(refused)
        return
    try:
        value = compiled.evaluate(values, {"found_here": lambda rule_id: len(rule_id) % 2 == 0})
    except Undecidable as undecided:
        assert undecided.missing
        return
    expected = {"number": float, "flag": bool, "text": str}[compiled.kind]
    assert type(value) is expected
    if isinstance(value, float):
        assert math.isfinite(value)
        assert abs(value) <= LIMIT


@given(st.text(max_size=60), some_facts())
def test_any_text_is_refused_or_evaluates(text: str, values: dict[str, Value]) -> None:
    check(text, values)


@settings(max_examples=400)
@given(st.lists(st.sampled_from(TOKENS), max_size=14), some_facts())
def test_any_soup_of_tokens_is_refused_or_evaluates(
    tokens: list[str], values: dict[str, Value]
) -> None:
    check(" ".join(tokens), values)


@settings(max_examples=300)
@given(well_formed(), some_facts())
def test_any_well_formed_expression_is_refused_or_evaluates(
    text: str, values: dict[str, Value]
) -> None:
    check(text, values)


@given(st.integers(1, 300), st.sampled_from(["(", "-", "not ", "ceil(", "1 if worn else ", "["]))
def test_any_depth_is_refused_or_evaluates(depth: int, opening: str) -> None:
    closing = ")" if opening.endswith("(") else "]" if opening == "[" else ""
    check(opening * depth + "1" + closing * depth, {"worn": True})
