"""What is asked on the walk, as written in ``checklists/walk``."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from leanto.building.kinds import PlaceKind
from leanto.checklist.condition import Condition
from leanto.strict import Strict

Identifier = Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]{1,47}$")]
FactName = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{1,47}$")]
Line = Annotated[str, Field(min_length=1, max_length=70)]
Prose = Annotated[str, Field(min_length=1, max_length=600)]


class Measure(Strict):
    """A number with a unit, or a choice, that an observation carries.

    The id is also the name rules use, and ends with its unit: ``moisture_pct``, ``probe_depth_in``.
    """

    id: FactName
    label: Annotated[str, Field(min_length=1, max_length=40)]
    unit: Literal[
        "pct",
        "in",
        "ft",
        "sqft",
        "count",
        "deg_f",
        "years",
        "amp",
        "awg",
        "hours",
        "days",
        "choice",
        "yes_no",
    ]
    low: float | None = None
    high: float | None = None
    choices: tuple[str, ...] = ()
    help: Annotated[str, Field(max_length=200)] = ""

    @model_validator(mode="after")
    def _choices_fit_unit(self) -> Self:
        if (self.unit == "choice") != bool(self.choices):
            raise ValueError("a measure lists choices if and only if its unit is choice")
        if self.unit not in ("choice", "yes_no") and (self.low is None or self.high is None):
            raise ValueError("a number needs low and high, the limits of what can be entered")
        return self


class MeasureFile(Strict):
    """``checklists/measures.yaml``."""

    measures: tuple[Measure, ...]


class Caution(Strict):
    """A warning that stands wherever the work can hurt; ``checklists/cautions.yaml``."""

    id: Identifier
    title: Annotated[str, Field(max_length=40)]
    text: Prose
    who: Annotated[str, Field(max_length=120)] = ""
    """The licensed trade or agency that must act, if any."""
    source: Annotated[str, Field(min_length=3, max_length=300)]


class CautionFile(Strict):
    cautions: tuple[Caution, ...]


class Answer(Strict):
    """What one condition means for one item, and what it then calls for."""

    means: Annotated[str, Field(min_length=3, max_length=160)]
    measures: tuple[FactName, ...] = ()
    zone: bool = False
    """True when the walker is asked for the place and size on the surface."""


class Answers(Strict):
    """``no access`` and ``not there`` need no entry: they mean the same for every item."""

    sound: Answer
    worn: Answer
    failed: Answer


class Reach(StrEnum):
    """Where an earlier answer was given, seen from the place of the question."""

    HERE = "here"
    """At the same station."""
    ANYWHERE = "anywhere"
    """At one station or more."""
    EVERYWHERE = "everywhere"
    """At every station that asks the earlier item."""


class PointlessAfter(Strict):
    """An answer to another item that leaves nothing to ask."""

    item: Identifier
    answers: Annotated[tuple[Condition, ...], Field(min_length=1)]
    where: Reach = Reach.HERE
    measure: FactName = ""
    """A measure of that answer; only an answer with one of ``choices`` counts then."""
    choices: tuple[str, ...] = ()

    @model_validator(mode="after")
    def _choices_belong_to_a_measure(self) -> Self:
        if bool(self.measure) != bool(self.choices):
            raise ValueError("measure and choices stand together: name both, or neither")
        return self


class Item(Strict):
    """One question of the walk."""

    id: Identifier
    at: Annotated[tuple[PlaceKind, ...], Field(min_length=1)]
    """The place kinds where the item is asked."""
    only_if: Annotated[str, Field(max_length=300)] = ""
    """An expression over surface and building facts; the item is skipped where it is false."""
    pointless_after: tuple[PointlessAfter, ...] = ()
    """Answers to earlier items, any of which leaves nothing to ask here."""
    prompt: Line
    look: Prose
    """What to look at."""
    how: Prose
    """How, and with which tool."""
    tool: Annotated[str, Field(max_length=120)] = ""
    caution: tuple[Identifier, ...] = ()
    answers: Answers
    why: Annotated[str, Field(min_length=10, max_length=300)]
    """Why it matters, in one sentence for an owner who is no professional."""
    source: Annotated[str, Field(min_length=3, max_length=300)]

    def answer(self, condition: Condition) -> Answer | None:
        """The entry for a condition; None for *no access* and *not there*."""
        entries = {
            Condition.SOUND: self.answers.sound,
            Condition.WORN: self.answers.worn,
            Condition.FAILED: self.answers.failed,
        }
        return entries.get(condition)


class Section(Strict):
    """One file of ``checklists/walk``."""

    id: Identifier
    title: Annotated[str, Field(max_length=40)]
    order: int
    one_by_one: bool = False
    """True when its items hold what can hurt: they are never marked sound together."""
    items: Annotated[tuple[Item, ...], Field(min_length=1)]


class Checklist(Strict):
    """Every section, measure and caution, read together and cross-checked."""

    sections: tuple[Section, ...]
    measures: tuple[Measure, ...]
    cautions: tuple[Caution, ...]

    def items(self) -> tuple[Item, ...]:
        return tuple(item for section in self.sections for item in section.items)
