"""The hidden-damage shares and the courses' parts, as written in ``checklists/hidden.yaml``."""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import Field, model_validator

from leanto.building.kinds import Lining
from leanto.checklist.model import Identifier
from leanto.strict import Strict

Share = Annotated[float, Field(ge=0, le=1)]


class HiddenKind(Strict):
    """A kind of evidence and the share of the unseen surface it speaks for."""

    id: Identifier
    group: Identifier
    """Evidence of one cause counts once: from a group only the strongest."""
    text: Annotated[str, Field(max_length=120)]
    falls: bool = False
    """True when it also speaks for the surfaces below the one where it was found."""
    low: Share
    likely: Share
    high: Share
    source: Annotated[str, Field(min_length=3, max_length=300)]

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if not self.low <= self.likely <= self.high:
            raise ValueError("low, likely and high must not fall")
        return self


class LiningWork(Strict):
    """The works of both courses for one lining."""

    lining: Lining
    strip: Identifier
    patch: Identifier
    """Cut out and patch, per sf."""
    line: Identifier
    """New lining, per sf."""
    finish: Identifier
    """Finish of the new lining, per sf."""


class HiddenFile(Strict):
    base: HiddenKind
    """Without any evidence."""
    no_access: HiddenKind
    """When the surface was not walked or could not be reached."""
    kinds: tuple[HiddenKind, ...]
    linings: tuple[LiningWork, ...]
    repair_open: Identifier
    """Repair of damaged framing and sheathing behind the lining, per sf."""
    insulate_open: Identifier
    insulate_closed: Identifier
    wire_open: Identifier
    wire_closed: Identifier
    wire_ft_per_sqft: Annotated[float, Field(gt=0, le=5)]
    wire_source: str
    protect: Identifier
    """Set-up of a gutted room, once a building."""
