"""Expressions: what they mean, what is refused at load, what stays undecided."""

from __future__ import annotations

import pytest

from leanto.rules.expression import ExpressionError, compile_expression
from leanto.rules.facts import FactSpec
from leanto.rules.undecidable import MissingFact, NoNumber, Undecidable

FACTS = {
    spec.name: spec
    for spec in (
        FactSpec("moisture_pct", "number", "pct", ""),
        FactSpec("run_ft", "number", "ft", ""),
        FactSpec("worn", "flag", "", ""),
        FactSpec("failed", "flag", "", ""),
        FactSpec("lining", "text", "", "", ("none", "board", "gypsum board")),
    )
}
KNOWN = {"moisture_pct": 20.0, "run_ft": 3.5, "worn": True, "failed": False, "lining": "board"}


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("worn", True),
        ("not worn", False),
        ("worn and failed", False),
        ("worn or failed", True),
        ("not worn or failed", False),
        ("moisture_pct >= 20", True),
        ("moisture_pct > 20", False),
        ("moisture_pct < 20", False),
        ("moisture_pct <= 20", True),
        ("moisture_pct == 20", True),
        ("moisture_pct != 20", False),
        ("16 <= moisture_pct < 28", True),
        ("16 <= moisture_pct < 20", False),
        ("20 < moisture_pct < 28", False),
        ("lining == 'board'", True),
        ("'board' == lining", True),
        ("lining != 'board'", False),
        ("lining in ('board', 'gypsum board')", True),
        ("lining in ('none')", False),
        ("lining not in ['none', 'gypsum board']", True),
        ("run_ft + 1 - 2 * 3 / 4", 3.0),
        ("-run_ft", -3.5),
        ("-(-run_ft)", 3.5),
        ("run_ft if worn else 8", 3.5),
        ("run_ft if failed else 8", 8.0),
        ("failed if worn else worn", False),
        ("worn and (run_ft if failed else 8) == 8", True),
        ("ceil(run_ft)", 4.0),
        ("ceil(4)", 4.0),
        ("ceil(0.1 * 3 / 0.1)", 3.0),
        ("floor(run_ft)", 3.0),
        ("floor(0.29 * 100)", 29.0),
        ("round(2.5)", 3.0),
        ("round(-2.5)", -3.0),
        ("round(2.4)", 2.0),
        ("min(run_ft, 2, 8)", 2.0),
        ("max(run_ft, 2)", 3.5),
        ("abs(2 - run_ft)", 1.5),
        ("sqrt(16)", 4.0),
        ("known(run_ft)", True),
        ("worn\n  and\n  not failed\n", True),
    ],
)
def test_an_expression_has_the_value_it_reads_as(text: str, value: object) -> None:
    assert compile_expression(text, FACTS).evaluate(KNOWN) == value


@pytest.mark.parametrize(
    ("text", "kind", "unit"),
    [
        ("run_ft", "number", "ft"),
        ("run_ft * 12", "number", None),
        ("worn", "flag", None),
        ("lining", "text", None),
    ],
)
def test_an_expression_tells_its_kind_and_the_unit_of_a_bare_fact(
    text: str, kind: str, unit: str | None
) -> None:
    compiled = compile_expression(text, FACTS)
    assert (compiled.kind, compiled.unit) == (kind, unit)


def test_an_expression_lists_the_facts_and_rules_it_asks_for() -> None:
    text = "worn and known(run_ft) and found_here('leak') and not found_above('roof-old')"
    compiled = compile_expression(text, FACTS)
    assert compiled.names == {"worn", "run_ft"}
    assert compiled.calls == {("found_here", "leak"), ("found_above", "roof-old")}


def test_a_search_is_answered_by_the_function_that_is_handed_in() -> None:
    compiled = compile_expression("found_here('leak') and not found_above('leak')", FACTS)
    here = {"found_here": lambda rule: rule == "leak", "found_above": lambda rule: False}
    assert compiled.evaluate({}, here) is True
    assert compiled.evaluate({}, here | {"found_above": lambda rule: True}) is False
    with pytest.raises(MissingFact, match="found_here"):
        compiled.evaluate({})


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("moistur_pct > 20", "unknown name 'moistur_pct'; did you mean 'moisture_pct'?"),
        ("zzz", "unknown name 'zzz'"),
        ("known(rum_ft)", "unknown name 'rum_ft'; did you mean 'run_ft'?"),
        ("moisture_pct = 20", "'=' does not compare; write '=='"),
        ("worn && failed", "write 'and' and 'or'"),
        ("!worn", "write 'not'"),
        ("moisture_pct > 20%", "leave out %"),
        ("(worn", "a bracket is not closed"),
        ("lining == 'board", "a quote is not closed"),
        ("", "empty"),
        ("   \n", "empty"),
        ("worn failed", "not understood"),
        ("worn # and failed", "'#' would hide the rest"),
        ("lining == 'bord'", "lining is never 'bord'; did you mean 'board'?"),
        ("lining == 'tin'", "lining is never 'tin'; it is one of none, board, gypsum board"),
        ("lining in ('board', 'tin')", "lining is never 'tin'"),
        ("lining > 'board'", "words have no order"),
        ("lining == 20", "cannot compare 'lining' (a word) with '20' (a number)"),
        ("lining > 20", "cannot compare"),
        ("lining == lining", "cannot compare"),
        ("lining + 1", "'lining' is a word, but a number is needed"),
        ("'a' + 'b'", "but a number is needed"),
        ("'board'", "alone means nothing"),
        ("'a' == 'a'", "cannot compare"),
        ("worn == 1", "write a yes-or-no fact alone"),
        ("worn == failed", "write a yes-or-no fact alone"),
        ("worn == True", "leave out True"),
        ("True", "leave out True"),
        ("worn + 1", "'worn' is yes or no, but a number is needed"),
        ("-worn", "but a number is needed"),
        ("moisture_pct and worn", "compare it, as in moisture_pct > 0"),
        ("not run_ft", "but yes or no is needed"),
        ("lining or worn", "'lining' is a word, but yes or no is needed"),
        ("run_ft if run_ft else 1", "but yes or no is needed"),
        ("run_ft if worn else failed", "both sides of 'if ... else'"),
        ("lining if worn else 'board'", "both sides of 'if ... else'"),
        ("run_ft in (1, 2)", "'in' is for words"),
        ("lining in lining", "after 'in' write words in brackets"),
        ("lining in ()", "after 'in' write words in brackets"),
        ("worn is True", "'is' is not allowed"),
        ("run_ft ** 2", "multiply the number with itself"),
        ("run_ft // 2", "use + - * /"),
        ("run_ft % 2", "use + - * /"),
        ("run_ft << 2", "use + - * /"),
        ("~run_ft", "use 'not' or '-'"),
        ("run_ft.real", "a name holds no dot"),
        ("run_ft[0]", "not allowed here"),
        ("(run_ft, 1)", "brackets with words stand after 'in' only"),
        ("[x for x in (1, 2)]", "not allowed here"),
        ("lambda: 1", "not allowed here"),
        ("(x := 1)", None),
        ("f'{run_ft}'", "not allowed here"),
        ("b'board' == lining", "no number and no word"),
        ("1j > 0", "no number and no word"),
        ("... == 1", "no number and no word"),
        ("ceil", "ceil is a function; write ceil(...)"),
        ("ciel(run_ft)", "unknown function 'ciel'; did you mean 'ceil'?"),
        ("open('x')", "unknown function 'open'"),
        ("__import__('os')", "unknown function '__import__'"),
        ("ceil()", "ceil takes one number"),
        ("ceil(1, 2)", "ceil takes one number"),
        ("max(1)", "max takes two numbers or more"),
        ("max(*run_ft)", "not allowed here"),
        ("round(run_ft, ndigits=1)", "takes no '='"),
        ("known('run_ft')", "known takes the name of one fact"),
        ("known(run_ft + 1)", "known takes the name of one fact"),
        ("found_here(leak)", "found_here takes the id of one rule in quotes"),
        ("found_here('a', 'b')", "found_here takes the id of one rule in quotes"),
        ("found_here('leak') > 0", "write a yes-or-no fact alone"),
        ("run_ft > 1e13", "too large a number"),
        ("run_ft > 1e999", "too large a number"),
        ("run_ft > " + "9" * 400, "too large a number"),
        ("worn or " * 70 + "worn", "longer than 500 characters"),
        ("1" + "+1" * 100 + " > 0", "more than 120 parts"),
        ("(" * 31 + "worn" + ")" * 31, "brackets more than 30 deep"),
        ("not " * 30 + "worn", "more than 30 levels deep"),
        ("-" * 400 + "1 > 0", None),
        ("(" * 240 + "1" + ")" * 240, None),
        ("worn\x00", None),
        ("\ud800", None),
    ],
)
def test_what_is_no_good_expression_is_refused_in_plain_words(
    text: str, message: str | None
) -> None:
    with pytest.raises(ExpressionError) as refused:
        compile_expression(text, FACTS)
    assert (message or "") in str(refused.value)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("failed and moisture_pct > 20", False),
        ("moisture_pct > 20 and failed", False),
        ("worn or moisture_pct > 20", True),
        ("moisture_pct > 20 or worn", True),
        ("not (moisture_pct > 20 and failed)", True),
        ("(failed and run_ft > 1) or worn", True),
        ("1 > 2 > run_ft", False),
        ("run_ft > 2 > 3", False),
        ("known(run_ft)", False),
        ("not known(run_ft) and worn", True),
        ("run_ft if failed else 8", 8.0),
        ("known(run_ft) and run_ft > 1", False),
    ],
)
def test_what_is_missing_does_not_matter_when_the_rest_decides(text: str, value: object) -> None:
    assert compile_expression(text, FACTS).evaluate({"worn": True, "failed": False}) == value


@pytest.mark.parametrize(
    ("text", "missing"),
    [
        ("moisture_pct > 20", "moisture_pct"),
        ("worn and moisture_pct > 20", "moisture_pct"),
        ("moisture_pct > 20 and worn", "moisture_pct"),
        ("failed or moisture_pct > 20", "moisture_pct"),
        ("not (worn and run_ft > 1)", "run_ft"),
        ("moisture_pct > 20 and run_ft > 1", "moisture_pct"),
        ("lining == 'board'", "lining"),
        ("run_ft if worn else 8", "run_ft"),
        ("8 if run_ft > 1 else 8", "run_ft"),
    ],
)
def test_what_hangs_on_a_missing_fact_is_undecided(text: str, missing: str) -> None:
    with pytest.raises(MissingFact) as undecided:
        compile_expression(text, FACTS).evaluate({"worn": True, "failed": False})
    assert undecided.value.name == missing


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("run_ft / 0", "division by zero"),
        ("1 / (run_ft - 3.5) > 1", "division by zero"),
        ("sqrt(-run_ft)", "square root of a number below zero"),
        ("1e12 * run_ft", "a number beyond all measure"),
        ("1 / 1e-300 * 1e12", "a number beyond all measure"),
        ("ceil(1e12 * 1e12 - 1e12 * 1e12)", "a number beyond all measure"),
    ],
)
def test_arithmetic_without_a_result_is_undecided_with_its_reason(text: str, reason: str) -> None:
    with pytest.raises(NoNumber) as undecided:
        compile_expression(text, FACTS).evaluate(KNOWN)
    assert undecided.value.missing == reason


def test_a_division_by_zero_does_not_matter_when_the_rest_decides() -> None:
    assert compile_expression("failed and 1 / 0 > 1", FACTS).evaluate(KNOWN) is False


@pytest.mark.parametrize("value", [float("nan"), float("inf"), 2e12, "ten", True])
def test_a_fact_that_is_no_decent_number_is_undecided(value: float | str) -> None:
    with pytest.raises(Undecidable):
        compile_expression("run_ft > 1", FACTS).evaluate({"run_ft": value})
