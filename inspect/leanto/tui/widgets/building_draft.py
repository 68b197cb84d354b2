"""A building being typed: every field as text, whatever it says, until it is recorded."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from leanto.building.kinds import RoofForm, Side
from leanto.building.model import Building
from leanto.tui.widgets.building_fields import (
    APPLIANCE_FIELDS,
    BLOCK_FIELDS,
    BUILDING_FIELDS,
    OPENING_FIELDS,
    Field,
)
from leanto.tui.widgets.building_texts import text_of

Texts = dict[str, str]
"""By the path of the field."""


@dataclass
class Draft:
    """What stands in every field; a refused text stays as it was typed."""

    facts: Texts = field(default_factory=dict)
    blocks: list[Texts] = field(default_factory=list)
    openings: list[Texts] = field(default_factory=list)
    appliances: list[Texts] = field(default_factory=list)

    @classmethod
    def of(cls, building: Building | None) -> Draft:
        """The texts of a building; of none, a first block with nothing measured yet."""
        if building is None:
            draft = cls(facts=_starts(BUILDING_FIELDS))
            draft.add_block()
            return draft
        return cls(
            facts=_texts(BUILDING_FIELDS, building),
            blocks=[_texts(BLOCK_FIELDS, block) for block in building.blocks],
            openings=[_texts(OPENING_FIELDS, opening) for opening in building.openings],
            appliances=[_texts(APPLIANCE_FIELDS, one) for one in building.appliances],
        )

    def parts(self) -> Iterator[tuple[str, tuple[Field, ...], Texts]]:
        """(path before its fields, fields, texts) of the building, then of each block, opening and
        appliance."""
        yield "", BUILDING_FIELDS, self.facts
        for index, texts in enumerate(self.blocks):
            yield f"blocks.{index}.", BLOCK_FIELDS, texts
        for index, texts in enumerate(self.openings):
            yield f"openings.{index}.", OPENING_FIELDS, texts
        for index, texts in enumerate(self.appliances):
            yield f"appliances.{index}.", APPLIANCE_FIELDS, texts

    def add_block(self) -> int:
        """Index of a new block: the first one, or a lean-to against the first one."""
        texts = _starts(BLOCK_FIELDS)
        if not self.blocks:
            texts |= {"id": "main", "name": "Main room"}
        else:
            texts |= {
                "id": _free("block-", {block["id"] for block in self.blocks}),
                "attached.to": self.blocks[0]["id"],
                "attached.side": Side.NORTH.value,
                "roof.form": RoofForm.SHED.value,
                "roof.high_side": Side.SOUTH.value,
            }
        self.blocks.append(texts)
        return len(self.blocks) - 1

    def add_opening(self, after: int | None = None) -> int:
        """Index of a new opening; kind, place and size are those of the one before it."""
        texts = _starts(OPENING_FIELDS)
        if self.openings:
            like = self.openings[-1 if after is None else after]
            texts |= {path: text for path, text in like.items() if path not in ("id", "from_left")}
        elif self.blocks:
            texts["on"] = f"{self.blocks[0]['id']}.{Side.SOUTH.value}"
        letter = texts["kind"][:1].upper()
        texts["id"] = _free(letter, {opening["id"] for opening in self.openings})
        at = len(self.openings) if after is None else after + 1
        self.openings.insert(at, texts)
        return at

    def add_appliance(self, after: int | None = None) -> int:
        """Index of a new appliance."""
        at = len(self.appliances) if after is None else after + 1
        self.appliances.insert(at, _starts(APPLIANCE_FIELDS))
        return at

    def follow_rename(self, before: str, now: str) -> None:
        """Let openings and lean-tos follow a block whose short name was changed.

        Nothing follows where either name could mean two blocks.
        """
        ids = [block["id"] for block in self.blocks]
        if before == now or not before or not now or before in ids or ids.count(now) != 1:
            return
        for block in self.blocks:
            if block["attached.to"] == before:
                block["attached.to"] = now
        for opening in self.openings:
            if opening["on"].startswith(f"{before}."):
                opening["on"] = now + opening["on"].removeprefix(before)


def is_asked(one: Field, texts: Texts) -> bool:
    """True while the field matters, by what stands in the field it hangs on."""
    if one.only_if is None:
        return True
    path, values = one.only_if
    return texts[path] in values if values else bool(texts[path])


def _starts(fields: tuple[Field, ...]) -> Texts:
    return {one.path: str(one.start) for one in fields}


def _texts(fields: tuple[Field, ...], part: object) -> Texts:
    return {one.path: text_of(one, part) for one in fields}


def _free(stem: str, taken: set[str]) -> str:
    number = 1 if len(stem) == 1 else 2
    while f"{stem}{number}" in taken:
        number += 1
    return f"{stem}{number}"
