"""Expressions of rules and checklists: text in, a typed closure out, every name checked.

A closed whitelist over Python's own syntax tree: numbers, facts, comparisons, ``and or not``,
``+ - * /``, ``a if flag else b`` and the functions of ``leanto.rules.functions``. Nothing can
loop, nothing can reach outside, so the length of the text bounds the cost.
"""

from __future__ import annotations

import ast
import re
import warnings
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import accumulate
from types import MappingProxyType
from typing import Literal

from leanto.rules.facts import FactSpec
from leanto.rules.syntax import Compiler, ExpressionError, UnknownName
from leanto.rules.terms import Flag, Number, Searches, Text, Value, Values, Word

__all__ = ["CompiledExpression", "ExpressionError", "Kind", "UnknownName", "compile_expression"]

MAX_CHARACTERS = 500
MAX_NODES = 120
MAX_DEPTH = 30
"""Levels of brackets and of operators within operators."""

Kind = Literal["number", "flag", "text"]
_NO_SEARCHES: Searches = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class CompiledExpression:
    """An expression that is ready to be evaluated."""

    text: str
    names: frozenset[str]
    """Every fact it reads."""
    calls: frozenset[tuple[str, str]]
    """The searches it makes: function and rule id."""
    term: Number | Flag | Text = field(compare=False, repr=False)

    @property
    def kind(self) -> Kind:
        if isinstance(self.term, Number):
            return "number"
        return "flag" if isinstance(self.term, Flag) else "text"

    @property
    def unit(self) -> str | None:
        """The unit of a bare number fact; None for anything computed."""
        return self.term.unit if isinstance(self.term, Number) else None

    def evaluate(self, values: Values, searches: Searches = _NO_SEARCHES) -> Value:
        """The value from facts by name; raises Undecidable (MissingFact, NoNumber)."""
        return self.term.run(values, searches)


def compile_expression(text: str, facts: Mapping[str, FactSpec]) -> CompiledExpression:
    """The expression, ready to be evaluated; ExpressionError in plain words otherwise."""
    plain = " ".join(text.split())
    compiler = Compiler(plain, facts)
    term = compiler.term(syntax_tree(plain))
    if isinstance(term, Word):
        raise ExpressionError(f"'{term.word}' alone means nothing; compare a fact with it")
    return CompiledExpression(plain, frozenset(compiler.names), frozenset(compiler.calls), term)


@lru_cache(maxsize=4096)
def syntax_tree(text: str) -> ast.expr:
    """The tree of an expression, not to be changed; ExpressionError for what is none."""
    if not text:
        raise ExpressionError("the expression is empty")
    if len(text) > MAX_CHARACTERS:
        raise ExpressionError(f"longer than {MAX_CHARACTERS} characters; split the rule")
    if _bracket_depth(text) > MAX_DEPTH:
        raise ExpressionError(f"brackets more than {MAX_DEPTH} deep; split the rule")
    if "#" in text:
        raise ExpressionError("'#' would hide the rest of the expression; leave it out")
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("error")
            parsed = ast.parse(text, mode="eval").body
    except (SyntaxError, ValueError, RecursionError, MemoryError):
        raise ExpressionError(_why_unreadable(text)) from None
    # No part is shorter than a character.
    if len(text) > MAX_NODES and _parts(parsed) > MAX_NODES:
        raise ExpressionError(f"more than {MAX_NODES} parts; split the rule")
    if _depth(parsed) > MAX_DEPTH:
        raise ExpressionError(f"more than {MAX_DEPTH} levels deep; split the rule")
    return parsed


def _parts(parsed: ast.expr) -> int:
    return sum(isinstance(node, ast.expr) for node in ast.walk(parsed))


def _bracket_depth(text: str) -> int:
    depths = accumulate((c in "([{") - (c in ")]}") for c in text)
    return max(depths, default=0)


def _depth(node: ast.AST) -> int:
    """Expressions within expressions; the parser itself bounds how deep this can go."""
    below = (_depth(child) for child in ast.iter_child_nodes(node))
    return isinstance(node, ast.expr) + max(below, default=0)


def _why_unreadable(text: str) -> str:
    if re.search(r"(?<![=<>!])=(?!=)", text):
        return "'=' does not compare; write '=='"
    if "&&" in text or "||" in text:
        return "write 'and' and 'or' for && and ||"
    if "!" in text.replace("!=", ""):
        return "write 'not' for !"
    if "%" in text:
        return "leave out %: a percentage is a plain number, such as 20"
    if text.count("(") != text.count(")"):
        return "a bracket is not closed, or closed twice"
    if text.count("'") % 2 or text.count('"') % 2:
        return "a quote is not closed"
    return f"not understood as an expression: {text if len(text) <= 80 else text[:77] + '...'}"
