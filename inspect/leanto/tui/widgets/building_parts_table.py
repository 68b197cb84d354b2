"""The openings or the appliances of a building being typed, one a row."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from leanto.tui.widgets.building_draft import Draft, Texts
from leanto.tui.widgets.building_fields import APPLIANCE_FIELDS, OPENING_FIELDS, Field
from leanto.tui.widgets.rows_table import Column, Row


@dataclass(frozen=True, slots=True)
class PartsList:
    """Parts of one kind that are chosen in a table and typed below it."""

    path: str
    """Within the building: ``openings``."""
    title: str
    noun: str
    fields: tuple[Field, ...]
    columns: tuple[Column, ...]
    """One for the mark of a fault, then one for each of the fields named below."""
    shown: tuple[str, ...]
    starts_at: str
    """The field that a new one lacks."""

    def texts(self, draft: Draft) -> list[Texts]:
        return draft.openings if self is OPENINGS else draft.appliances

    def add(self, draft: Draft, after: int | None) -> int:
        """Index of a new one."""
        add = draft.add_opening if self is OPENINGS else draft.add_appliance
        return add(after)

    def rows(self, draft: Draft, faults: Mapping[str, str]) -> tuple[Row, ...]:
        """A row for each one; ``!`` stands before one with a fault."""
        wrong = {path.split(".")[1] for path in faults if path.startswith(f"{self.path}.")}
        return tuple(
            Row(
                key=str(index),
                cells=("!" if str(index) in wrong else "", *(texts[one] for one in self.shown)),
            )
            for index, texts in enumerate(self.texts(draft))
        )


_FAULT = Column("", 1)
OPENINGS = PartsList(
    path="openings",
    title="Openings",
    noun="opening",
    fields=OPENING_FIELDS,
    columns=(
        _FAULT,
        Column("Mark", 5),
        Column("Kind", 9),
        Column("On", 0),
        Column("Left", 9, "right"),
        Column("Up", 9, "right"),
        Column("Wide", 9, "right"),
        Column("High", 9, "right"),
    ),
    shown=("id", "kind", "on", "from_left", "from_bottom", "width", "height"),
    starts_at="from_left",
)
APPLIANCES = PartsList(
    path="appliances",
    title="Appliances",
    noun="appliance",
    fields=APPLIANCE_FIELDS,
    columns=(
        _FAULT,
        Column("Name", 0),
        Column("Watts", 8, "right"),
        Column("Amps", 8, "right"),
        Column("Volts", 6, "right"),
        Column("Runs for hours", 14, "right"),
    ),
    shown=("name", "watts", "amps", "volts", "continuous"),
    starts_at="name",
)
LISTS = (OPENINGS, APPLIANCES)
