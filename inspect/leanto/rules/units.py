"""Units in expressions: what a rule adds, compares and orders must be of one kind and size.

Facts have units, numbers written in a rule have none and take the unit of what they stand beside.
Checked when rules are read, never when they are judged.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from typing import TYPE_CHECKING, cast

from leanto.quantities import Unit as CountedIn
from leanto.rules import functions
from leanto.rules.compiled import CompiledRule
from leanto.rules.expression import CompiledExpression, syntax_tree
from leanto.rules.facts import FactSpec
from leanto.rules.fault import Fault
from leanto.rules.syntax import ExpressionError

if TYPE_CHECKING:
    from pint import Unit, UnitRegistry

    Measured = Unit | None
    """The unit of a part; None for numbers alone, which take any."""

_DEFINITIONS = (
    "foot = [length]",
    "inch = foot / 12",
    "yard = 3 * foot",
    "square = 100 * foot ** 2",
    "percent = 0.01",
    "hour = [time]",
    "day = 24 * hour",
    "year = 365.25 * day",
    "calendar_year = [date]",
    "ampere = [current]",
    "fahrenheit = [warmth]",
    "gauge = [wire]",
    "volt = [voltage]",
    "pound = [weight]",
    "ton = 2000 * pound",
)
"""Of our own: the library's large table takes as long to read as all the rules."""

OF_FACT = {
    "amp": "ampere",
    "awg": "gauge",
    "count": "",
    "days": "day",
    "deg_f": "fahrenheit",
    "ft": "foot",
    "hours": "hour",
    "in": "inch",
    "in_12": "inch",  # the rise over a run of 12 in
    "lb": "pound",
    "pct": "percent",
    "psf": "pound / foot ** 2",
    "sqft": "foot ** 2",
    "sqin": "inch ** 2",
    "squares": "square",
    "va": "volt * ampere",
    "volt": "volt",
    "w": "volt * ampere",
    "year": "calendar_year",
    "years": "year",
}
"""By the unit of a fact; a unit that is not here goes with its like only."""

_OF_WORK = {
    CountedIn.BOARD_FOOT: "foot ** 2 * inch",
    CountedIn.CUBIC_FOOT: "foot ** 3",
    CountedIn.CY: "yard ** 3",
    CountedIn.DAY: "day",
    CountedIn.HOUR: "hour",
    CountedIn.LF: "foot",
    CountedIn.POUND: "pound",
    CountedIn.SQFT: "foot ** 2",
    CountedIn.SQUARE: "square",
    CountedIn.TON: "ton",
}
"""All other works are counted in pieces."""

_PACKED = ((100.0, "foot ** 2", "square"), (27.0, "foot ** 3", "yard ** 3"))
"""A quantity of the second unit divided by the number is in the third."""

_LABELS = {
    "": "a plain number",
    "ampere": "in amperes",
    "calendar_year": "a calendar year",
    "fahrenheit": "in degrees",
    "gauge": "in wire gauge",
    "day": "in days",
    "foot": "in feet",
    "foot ** 2": "in square feet",
    "foot ** 3": "in cubic feet",
    "hour": "in hours",
    "inch": "in inches",
    "inch ** 2": "in square inches",
    "percent": "in percent",
    "square": "in squares",
    "volt * ampere": "in watts",
    "year": "in years",
    "yard ** 3": "in cubic yards",
}
_CONVERTED = {functions.INCHES: ("foot", "inch"), functions.FEET: ("inch", "foot")}


class UnitError(ExpressionError):
    """Two parts of an expression that do not go together."""


def unit_faults(
    rule: CompiledRule, facts: Mapping[str, FactSpec], counted_in: Mapping[str, CountedIn]
) -> Iterator[Fault]:
    """What in the rule has the wrong unit; ``counted_in`` is the unit of each work by id."""
    yield from _faults(("when",), rule.when, facts)
    for index, call in enumerate(rule.calls):
        if call.when is not None:
            yield from _faults(("work", index, "when"), call.when, facts)
        if call.quantity is not None:
            work = call.call.work
            path = ("work", index, "quantity")
            yield from _faults(path, call.quantity, facts, work, counted_in.get(work))


def check_units(
    expression: CompiledExpression, facts: Mapping[str, FactSpec], counted_in: CountedIn | None
) -> None:
    """Raises UnitError when parts do not go together, or the whole is not in ``counted_in``."""
    found = _Checker(expression.text, facts).unit(syntax_tree(expression.text))
    if counted_in is None or found is None:
        return
    wanted, plain = _unit(_OF_WORK.get(counted_in, "")), _unit("")
    if found != wanted and (found != plain or counted_in in _MEASURED):
        raise UnitError(f"'{expression.text}' is {_label(found)}; it should be {_label(wanted)}")


_MEASURED = _OF_WORK.keys() - {CountedIn.DAY, CountedIn.HOUR, CountedIn.POUND, CountedIn.TON}
"""Works whose quantity is measured on the building: a count of something does not do."""


def _faults(
    path: tuple[str | int, ...],
    expression: CompiledExpression,
    facts: Mapping[str, FactSpec],
    work: str = "",
    counted_in: CountedIn | None = None,
) -> Iterator[Fault]:
    try:
        check_units(expression, facts, counted_in)
    except UnitError as error:
        about = f"{work} is counted in {counted_in}. " if counted_in else ""
        yield Fault(path, error.sentence, f"{about}See Units in DEVELOPERS.md.")


class _Checker:
    """Works out the unit of every part of one syntax tree."""

    def __init__(self, text: str, facts: Mapping[str, FactSpec]) -> None:
        self._text = text
        self._facts = facts

    def unit(self, node: ast.expr) -> Measured:
        """The unit of a number; None for a number alone and for what is no number."""
        match node:
            case ast.Name(id=name):
                spec = self._facts[name]
                return _unit_of_fact(spec.unit) if spec.kind == "number" else None
            case ast.UnaryOp(operand=operand):
                return self.unit(operand)
            case ast.BoolOp(values=values):
                for value in values:
                    self.unit(value)
            case ast.BinOp():
                return self._operation(node)
            case ast.Compare():
                self._comparison(node)
            case ast.IfExp():
                self.unit(node.test)
                return self._alike([node.body, node.orelse])
            case ast.Call(func=ast.Name(id=name)):
                return self._call(name, node.args)
        return None

    def _operation(self, node: ast.BinOp) -> Measured:
        if isinstance(node.op, ast.Add | ast.Sub):
            return self._alike([node.left, node.right])
        left, right = self.unit(node.left), self.unit(node.right)
        if isinstance(node.op, ast.Mult):
            if left is None or right is None:
                return left if right is None else right
            return cast("Unit", left * right)
        if right is not None:
            return cast("Unit", (_unit("") if left is None else left) / right)
        divisor = node.right.value if isinstance(node.right, ast.Constant) else None
        return None if left is None else _divided(left, divisor)

    def _comparison(self, node: ast.Compare) -> None:
        sides = [node.left, *node.comparators]
        for left, op, right in zip(sides, node.ops, sides[1:], strict=False):
            if not isinstance(op, ast.In | ast.NotIn):
                self._alike([left, right])

    def _call(self, name: str, arguments: Sequence[ast.expr]) -> Measured:
        if name in (functions.KNOWN, *functions.SEARCHES):
            return None
        found = self._alike(arguments)
        if name == functions.NUMBER:
            return _unit("")
        if name in _CONVERTED:
            taken, given = map(_unit, _CONVERTED[name])
            if found is not None and found != taken:
                said = self._said(arguments[0])
                raise UnitError(
                    f"{self._text}: {name} takes what is {_label(taken)}, "
                    f"but '{said}' is {_label(found)}"
                )
            return given
        if name == "sqrt" and found is not None:
            return cast("Unit", found**0.5)
        return found

    def _alike(self, nodes: Sequence[ast.expr]) -> Measured:
        """The one unit of all parts."""
        first: tuple[ast.expr, Unit] | None = None
        for node in nodes:
            found = self.unit(node)
            if found is None:
                continue
            if first is not None and found != first[1]:
                raise UnitError(self._unlike(*first, node, found))
            first = first or (node, found)
        return None if first is None else first[1]

    def _unlike(self, one: ast.expr, left: Unit, other: ast.expr, right: Unit) -> str:
        message = (
            f"{self._text}: '{self._said(one)}' is {_label(left)}, "
            f"but '{self._said(other)}' is {_label(right)}"
        )
        for name, (taken, given) in _CONVERTED.items():
            for node, unit, into in ((one, left, right), (other, right, left)):
                if unit == _unit(taken) and into == _unit(given):
                    return f"{message}; write {name}({self._said(node)})"
        return message

    def _said(self, node: ast.expr) -> str:
        return ast.get_source_segment(self._text, node) or self._text


def _divided(unit: Unit, divisor: object) -> Unit:
    """The unit after a division by a number alone: it stays, but for shares and packs."""
    for number, loose, packed in _PACKED:
        if divisor == number and unit == _unit(loose):
            return _unit(packed)
    if divisor == 100 and "percent" in str(unit):
        return cast("Unit", unit / _unit("percent"))
    return unit


@cache
def _registry() -> UnitRegistry[float]:
    import pint

    registry: UnitRegistry[float] = pint.UnitRegistry(None)
    for definition in _DEFINITIONS:
        registry.define(definition)
    return registry


@cache
def _unit(text: str) -> Unit:
    return _registry().Unit(text)


@cache
def _unit_of_fact(name: str) -> Unit:
    if name not in OF_FACT:
        _registry().define(f"fact_{name} = [fact_{name}]")
        return _unit(f"fact_{name}")
    return _unit(OF_FACT[name])


def _label(unit: Unit) -> str:
    for text, label in _LABELS.items():
        if unit == _unit(text):
            return label
    return "in " + str(unit).replace("fact_", "").replace(" ** ", "^")
