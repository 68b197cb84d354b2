"""What old wiring is condemned on sight: kinds seen from the floor, reasons, and who acts."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import model_validator

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.tables import read_table
from leanto.trade.wiring.confirm import CONFIRM

OnSight = Literal["condemned", "condemned if", "electrician decides"]
Urgency = Literal["now", "before closing in", "with the work", "keep watching"]
Who = Literal[
    "electrician", "utility", "code office", "owner", "fire department", "private locator"
]


class OldWiring(Strict):
    """One kind of old or damaged wiring."""

    kind: str
    look: str
    """What shows from the floor, with nothing opened or touched."""
    on_sight: OnSight
    condition: str = ""
    """With ``condemned if``: what must be seen."""
    reason: str
    advice: str
    urgency: Urgency
    worse: str = ""
    """What makes it more urgent or a danger."""
    urgency_if_worse: Urgency | None = None
    is_danger: bool = False
    """It can hurt someone now, as it is."""
    danger_if_worse: bool = False
    runs_in_walls: bool = False
    """It usually goes on inside closed walls, so it bears on gut or keep."""
    who: tuple[Who, ...]
    sources: tuple[Source, ...]

    @model_validator(mode="after")
    def _halves_belong_together(self) -> Self:
        if (self.on_sight == "condemned if") != bool(self.condition):
            raise ValueError("a condition stands with 'condemned if', and only there")
        if bool(self.worse) != (self.urgency_if_worse is not None):
            raise ValueError("worse and urgency_if_worse stand together")
        if not self.who or not self.sources:
            raise ValueError("name who acts and at least one source")
        return self

    @property
    def confirm(self) -> str:
        return CONFIRM

    def is_condemned(self, condition_seen: bool | None) -> bool | None:
        """Whether the look alone condemns it; None when an electrician or another look decides."""
        if self.on_sight == "condemned":
            return True
        if self.on_sight == "condemned if" and condition_seen:
            return True
        return None


class Caution(Strict):
    id: str
    text: str


class CondemnedTable(Strict):
    source: Source
    rows: tuple[OldWiring, ...]
    cautions: tuple[Caution, ...]

    @model_validator(mode="after")
    def _kinds_are_named_once(self) -> Self:
        for names in ([row.kind for row in self.rows], [one.id for one in self.cautions]):
            doubled = {name for name in names if names.count(name) > 1}
            if doubled:
                raise ValueError(f"named more than once: {', '.join(sorted(doubled))}")
        return self


def condemned_table() -> CondemnedTable:
    """Kinds of old wiring, and the cautions shown before anyone goes near any."""
    return read_table("electrical_condemned.yaml", CondemnedTable)


def old_wiring(kind: str) -> OldWiring:
    """The row of a kind, such as ``knob and tube``; ValueError for an unknown one."""
    for row in condemned_table().rows:
        if row.kind == kind:
            return row
    raise ValueError(f"no kind of old wiring is named {kind!r}")


def cautions() -> tuple[str, ...]:
    """The cautions, in the order they are shown."""
    return tuple(caution.text for caution in condemned_table().cautions)
