"""Rules as written in ``checklists/rules``: from what was seen to what it means and calls for."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from leanto.checklist.model import Identifier
from leanto.strict import Strict

Expression = Annotated[str, Field(min_length=1, max_length=500)]


class Urgency(StrEnum):
    NOW = "now"
    BEFORE_CLOSING_IN = "before closing in"
    WITH_THE_WORK = "with the work"
    KEEP_WATCHING = "keep watching"

    @property
    def rank(self) -> int:
        """0 is the most urgent."""
        return _RANKS[self]


_RANKS = {urgency: rank for rank, urgency in enumerate(Urgency)}


class Take(StrEnum):
    """How a repair item's quantity follows from the place; taken from the union of all zones on
    a surface that call for the item, widened to the framing grid, so nothing is counted twice."""

    AREA = "area"
    """sf of the union."""
    WIDTH = "width"
    """lf along the bottom of the union (sills, plates, eaves, flashings)."""
    HEIGHT = "height"
    """lf up the union, one line (corner posts, valleys)."""
    MEMBERS = "members"
    """Framing members that the union touches, each."""
    MEMBER_LENGTH = "member length"
    """lf of those members, full height of the union."""
    SURFACE = "surface"
    """sf of the whole surface, once."""
    PERIMETER = "perimeter"
    """lf round the whole surface, once."""


OPEN_LINING = "open-lining"
"""Reserved work: the lining in the zone is bad itself. Gut or keep turns it into a patch or into
part of the strip."""

NEW_WIRING = "new-wiring"
"""Reserved work: new cable is needed on this surface, or on every surface when it is called at the
wiring or feed station. Gut or keep turns it into open or fished cable."""

RESERVED_WORKS = frozenset({OPEN_LINING, NEW_WIRING})


class WorkCall(Strict):
    """One repair item that a rule calls for: either ``take`` or ``quantity``."""

    work: Identifier
    take: Take | None = None
    quantity: Expression | None = None
    """An expression in the unit of the work."""
    merge: Literal["sum", "largest"] = "sum"
    """For ``quantity``: several observations on one surface add up, or the largest counts."""
    widen_ft: Annotated[float, Field(ge=0, le=8)] = 0.0
    """Taken beyond the zone on every side before widening to the grid."""
    behind_lining: bool = False
    """True when the work is reached only by opening the lining of that surface."""
    when: Expression | None = None

    @model_validator(mode="after")
    def _one_way_to_count(self) -> Self:
        if (self.take is None) == (self.quantity is None):
            raise ValueError("give either take or quantity, not both and not neither")
        return self


class CauseSearch(Strict):
    """Findings that would explain this one."""

    rules: Annotated[tuple[Identifier, ...], Field(min_length=1)]
    where: Literal["here", "above", "beside", "anywhere"] = "anywhere"
    """``here``: same surface or its other face; ``above``: the roof or ceiling over it;
    ``beside``: any face of the same block."""


class Replacement(Strict):
    """Findings that need not be told beside this one: it says the main thing.

    Their work, evidence, cautions and reasons still count, and their words stand below its own.
    A rule that names itself makes one finding a place, however many answers lead to it.
    """

    rules: Annotated[tuple[Identifier, ...], Field(min_length=1)]
    where: Literal["answer", "place", "anywhere"] = "answer"
    """``answer``: of the same answer; ``place``: of any answer where the walker stands."""


class Decides(Strict):
    """A condition that decides gut or keep whatever the cost."""

    course: Literal["gut", "test first"]
    reason: Annotated[str, Field(max_length=200)]


class Rule(Strict):
    id: Identifier
    items: Annotated[tuple[Identifier, ...], Field(min_length=1)]
    """The checklist items whose observations it reads, one at a time."""
    when: Expression
    """For example ``failed and probe_depth_in >= 0.5``."""
    finding: Annotated[str, Field(min_length=5, max_length=160)]
    """What it means, in plain words."""
    advice: Annotated[str, Field(max_length=400)] = ""
    urgency: Urgency
    needs_cause: bool = False
    """True for an effect (a stain): with no cause found it becomes an open question."""
    causes: tuple[CauseSearch, ...] = ()
    replaces: tuple[Replacement, ...] = ()
    question: Annotated[str, Field(max_length=200)] = ""
    """Asked when no cause was found, or when the finding itself is one that only somebody else
    can answer."""
    ask: Annotated[str, Field(max_length=80)] = ""
    """Who can answer the question."""
    watch: Annotated[str, Field(max_length=160)] = ""
    """What to look at again and when, for *keep watching*."""
    work: tuple[WorkCall, ...] = ()
    hidden: Identifier | None = None
    """The kind of evidence for damage behind the lining; a key of ``checklists/hidden.yaml``."""
    decides: Decides | None = None
    caution: tuple[Identifier, ...] = ()
    source: Annotated[str, Field(min_length=3, max_length=300)]

    @model_validator(mode="after")
    def _leads_somewhere(self) -> Self:
        if self.needs_cause and not self.question:
            raise ValueError("needs_cause wants a question, asked when no cause was found")
        if not (self.work or self.watch or self.question):
            raise ValueError("a finding must lead to work, to a watch, or to a question")
        return self


class RuleFile(Strict):
    rules: Annotated[tuple[Rule, ...], Field(min_length=1)]
