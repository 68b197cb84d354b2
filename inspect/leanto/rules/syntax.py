"""From Python's syntax tree to typed terms: what an expression may say, and nothing else."""

from __future__ import annotations

import ast
import operator
from collections.abc import Callable, Iterable, Mapping
from difflib import get_close_matches

from leanto.rules import functions, terms
from leanto.rules.facts import FactSpec
from leanto.rules.terms import Flag, Number, Term, Text, Word

_COMPARE: dict[type[ast.cmpop], Callable[[float, float], bool]] = {
    ast.Eq: operator.eq,
    ast.NotEq: operator.ne,
    ast.Lt: operator.lt,
    ast.LtE: operator.le,
    ast.Gt: operator.gt,
    ast.GtE: operator.ge,
}
_OPERATE: dict[type[ast.operator], Callable[[list[float]], float]] = {
    ast.Add: lambda pair: pair[0] + pair[1],
    ast.Sub: lambda pair: pair[0] - pair[1],
    ast.Mult: lambda pair: pair[0] * pair[1],
    ast.Div: lambda pair: functions.quotient(pair[0], pair[1]),
}


class ExpressionError(ValueError):
    """What is wrong with an expression, in plain words."""

    @property
    def sentence(self) -> str:
        """The message as a sentence for a list of problems."""
        said = f"Expression: {self}"
        return said if said.endswith("?") else f"{said}."


class UnknownName(ExpressionError):
    """A name that is no fact."""


class Compiler:
    """Compiles one syntax tree, gathering the names and searches it meets."""

    def __init__(self, text: str, facts: Mapping[str, FactSpec]) -> None:
        self._text = text
        self._facts = facts
        self.names: set[str] = set()
        self.calls: set[tuple[str, str]] = set()

    def term(self, node: ast.expr) -> Term:
        match node:
            case ast.Constant():
                return self._constant(node)
            case ast.Name():
                return self._fact(node.id)
            case ast.UnaryOp(op=ast.Not()):
                return terms.negated(self._flag(node.operand))
            case ast.UnaryOp(op=ast.USub()):
                return terms.computed(lambda one: -one[0], [self._number(node.operand)])
            case ast.BoolOp():
                flags = [self._flag(value) for value in node.values]
                return terms.all_of(flags) if isinstance(node.op, ast.And) else terms.any_of(flags)
            case ast.BinOp() if type(node.op) in _OPERATE:
                pair = [self._number(node.left), self._number(node.right)]
                return terms.computed(_OPERATE[type(node.op)], pair)
            case ast.Compare():
                return self._comparison(node)
            case ast.IfExp():
                return self._choice(node)
            case ast.Call(func=ast.Name(id=name)):
                return self._call(name, node)
        raise ExpressionError(f"'{self._said(node)}' is not allowed here; {_instead(node)}")

    def _said(self, node: ast.expr) -> str:
        said = ast.get_source_segment(self._text, node) or self._text
        return said if len(said) <= 60 else said[:57] + "..."

    def _constant(self, node: ast.Constant) -> Term:
        value = node.value
        if isinstance(value, bool):
            raise ExpressionError(f"leave out {value}: write the fact alone, or not before it")
        if isinstance(value, str):
            return Word(value)
        if isinstance(value, int | float):
            if not abs(value) <= functions.LIMIT:
                raise ExpressionError(f"{self._said(node)} is too large a number")
            number = float(value)
            return Number(lambda values, searches: number)
        raise ExpressionError(f"'{self._said(node)}' is no number and no word in quotes")

    def _fact(self, name: str) -> Term:
        spec = self._spec(name)
        match spec.kind:
            case "number":
                return terms.number_fact(name, spec.unit)
            case "flag":
                return terms.flag_fact(name)
            case "text":
                return terms.text_fact(name, spec.choices)

    def _spec(self, name: str) -> FactSpec:
        spec = self._facts.get(name)
        if spec is None:
            if name in functions.NAMES:
                raise ExpressionError(f"{name} is a function; write {name}(...)")
            raise UnknownName(f"unknown name '{name}'{_did_you_mean(name, self._facts)}")
        self.names.add(name)
        return spec

    def _number(self, node: ast.expr) -> Number:
        term = self.term(node)
        if isinstance(term, Number):
            return term
        raise ExpressionError(f"'{self._said(node)}' is {_called(term)}, but a number is needed")

    def _flag(self, node: ast.expr) -> Flag:
        term = self.term(node)
        if isinstance(term, Flag):
            return term
        said = self._said(node)
        hint = f"; compare it, as in {said} > 0" if isinstance(term, Number) else ""
        raise ExpressionError(f"'{said}' is {_called(term)}, but yes or no is needed{hint}")

    def _comparison(self, node: ast.Compare) -> Flag:
        sides = [node.left, *node.comparators]
        pairs = [
            self._pair(left, op, right)
            for left, op, right in zip(sides, node.ops, sides[1:], strict=False)
        ]
        return pairs[0] if len(pairs) == 1 else terms.all_of(pairs)

    def _pair(self, left: ast.expr, op: ast.cmpop, right: ast.expr) -> Flag:
        if isinstance(op, ast.In | ast.NotIn):
            within = terms.is_one_of(*self._membership(left, right))
            return within if isinstance(op, ast.In) else terms.negated(within)
        compare = _COMPARE.get(type(op))
        if compare is None:
            raise ExpressionError("'is' is not allowed here; write '==' or '!='")
        one, other = self.term(left), self.term(right)
        if isinstance(one, Number) and isinstance(other, Number):
            return terms.compared(one, compare, other)
        if isinstance(one, Word) and isinstance(other, Text):
            one, other = other, one
        if isinstance(one, Text) and isinstance(other, Word):
            if not isinstance(op, ast.Eq | ast.NotEq):
                raise ExpressionError(f"words have no order; compare {one.name} with == or !=")
            same = terms.is_one_of(one, frozenset({_choice_of(one, other.word)}))
            return same if isinstance(op, ast.Eq) else terms.negated(same)
        raise ExpressionError(self._unlike(left, one, right, other))

    def _unlike(self, left: ast.expr, one: Term, right: ast.expr, other: Term) -> str:
        message = (
            f"cannot compare '{self._said(left)}' ({_called(one)}) "
            f"with '{self._said(right)}' ({_called(other)})"
        )
        if isinstance(one, Flag) or isinstance(other, Flag):
            return f"{message}; write a yes-or-no fact alone, or not before it"
        return message

    def _membership(self, left: ast.expr, right: ast.expr) -> tuple[Text, frozenset[str]]:
        text = self.term(left)
        if not isinstance(text, Text):
            raise ExpressionError(f"'{self._said(left)}' is {_called(text)}; 'in' is for words")
        entries = right.elts if isinstance(right, ast.Tuple | ast.List) else [right]
        words = [self.term(entry) for entry in entries]
        if not words or not all(isinstance(word, Word) for word in words):
            raise ExpressionError(f"after 'in' write words in brackets: {text.name} in ('a', 'b')")
        return text, frozenset(
            _choice_of(text, word.word) for word in words if isinstance(word, Word)
        )

    def _choice(self, node: ast.IfExp) -> Term:
        test, one, other = self._flag(node.test), self.term(node.body), self.term(node.orelse)
        if isinstance(one, Number) and isinstance(other, Number):
            return terms.chosen_number(test, one, other)
        if isinstance(one, Flag) and isinstance(other, Flag):
            return terms.chosen_flag(test, one, other)
        raise ExpressionError("both sides of 'if ... else' must be numbers, or both yes or no")

    def _call(self, name: str, node: ast.Call) -> Term:
        if name not in functions.NAMES:
            raise ExpressionError(
                f"unknown function '{name}'{_did_you_mean(name, functions.NAMES)}"
            )
        if node.keywords:
            raise ExpressionError(f"{name} takes no '=' between its brackets")
        if name == functions.KNOWN:
            match node.args:
                case [ast.Name(id=fact)]:
                    self._spec(fact)
                    return terms.is_known(fact)
            raise ExpressionError("known takes the name of one fact: known(moisture_pct)")
        if name in functions.SEARCHES:
            match node.args:
                case [ast.Constant(value=str(rule_id))]:
                    self.calls.add((name, rule_id))
                    return terms.search(name, rule_id)
            raise ExpressionError(f"{name} takes the id of one rule in quotes: {name}('roof-leak')")
        numbers = [self._number(argument) for argument in node.args]
        if name in functions.OF_ONE:
            if len(numbers) != 1:
                raise ExpressionError(f"{name} takes one number")
            operate = functions.OF_ONE[name]
            return terms.computed(lambda one: operate(one[0]), numbers)
        if len(numbers) < 2:
            raise ExpressionError(f"{name} takes two numbers or more")
        return terms.computed(functions.OF_MANY[name], numbers)


def nearest(name: str, known: Iterable[str]) -> str:
    """``Did you mean 'x'?`` with the nearest spelling, or nothing when none is near."""
    close = get_close_matches(name, list(known), n=1, cutoff=0.75)
    return f"Did you mean '{close[0]}'?" if close else ""


def _did_you_mean(name: str, known: Iterable[str]) -> str:
    asked = nearest(name, known)
    return f"; d{asked[1:]}" if asked else ""


def _choice_of(text: Text, word: str) -> str:
    if word in text.choices:
        return word
    hint = _did_you_mean(word, text.choices) or "; it is one of " + ", ".join(text.choices)
    raise ExpressionError(f"{text.name} is never '{word}'{hint}")


def _called(term: Term) -> str:
    match term:
        case Number():
            return "a number"
        case Flag():
            return "yes or no"
        case Text():
            return "a word"
        case Word():
            return "a word in quotes"


def _instead(node: ast.expr) -> str:
    match node:
        case ast.BinOp(op=ast.Pow()):
            return "multiply the number with itself"
        case ast.BinOp():
            return "use + - * /"
        case ast.Attribute():
            return "a name holds no dot"
        case ast.Tuple() | ast.List() | ast.Set():
            return "brackets with words stand after 'in' only"
        case ast.UnaryOp():
            return "use 'not' or '-'"
    return "use facts, numbers, comparisons, and, or, not, + - * / and the listed functions"
