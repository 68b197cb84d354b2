"""A rule with its expressions ready to be evaluated."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.rules.expression import CompiledExpression
from leanto.rules.model import Rule, WorkCall


@dataclass(frozen=True, slots=True)
class CompiledCall:
    """A call for work with its expressions."""

    call: WorkCall
    when: CompiledExpression | None
    quantity: CompiledExpression | None


@dataclass(frozen=True, slots=True)
class CompiledRule:
    rule: Rule
    when: CompiledExpression
    calls: tuple[CompiledCall, ...]
    searched: frozenset[str]
    """Rules whose findings it asks for; they are judged before it."""

    @property
    def id(self) -> str:
        return self.rule.id

    def expressions(self) -> tuple[CompiledExpression, ...]:
        """Every expression of the rule."""
        of_calls = (part for call in self.calls for part in (call.when, call.quantity))
        return (self.when, *(part for part in of_calls if part is not None))
