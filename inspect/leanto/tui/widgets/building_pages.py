"""The pages of the building form: the building, each block, then the lists of parts."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leanto.tui.shown import on_one_line
from leanto.tui.widgets.building_draft import Draft, Texts
from leanto.tui.widgets.building_fields import BLOCK_FIELDS, BUILDING_FIELDS, Field
from leanto.tui.widgets.building_parts_table import LISTS, PartsList


@dataclass(frozen=True, slots=True)
class PageName:
    title: str
    faults: int
    is_open: bool


@dataclass(frozen=True, slots=True)
class Shown:
    """The part that a page shows."""

    prefix: str
    """What the paths of its fields begin with."""
    fields: tuple[Field, ...]
    texts: Texts


class Pages:
    """Which page is open, and which part of each list is typed."""

    def __init__(self, draft: Draft) -> None:
        self.draft = draft
        self.number = 0
        self._at = dict.fromkeys((one.path for one in LISTS), 0)

    @property
    def block(self) -> int | None:
        """Index of the block whose page is open."""
        at = self.number - 1
        return at if 0 <= at < len(self.draft.blocks) else None

    @property
    def listed(self) -> PartsList | None:
        """The list whose page is open."""
        at = self.number - 1 - len(self.draft.blocks)
        return LISTS[at] if at >= 0 else None

    @property
    def at(self) -> int:
        """Which part of the open list is typed."""
        return self._at[self.listed.path] if self.listed else 0

    @property
    def shown(self) -> Shown | None:
        """None on the page of a list that is empty."""
        block, listed = self.block, self.listed
        if listed is not None:
            parts = listed.texts(self.draft)
            if not parts:
                return None
            at = self._at[listed.path] = min(self.at, len(parts) - 1)
            return Shown(f"{listed.path}.{at}.", listed.fields, parts[at])
        if block is not None:
            return Shown(f"blocks.{block}.", BLOCK_FIELDS, self.draft.blocks[block])
        return Shown("", BUILDING_FIELDS, self.draft.facts)

    def turn(self, by: int) -> None:
        self.number = (self.number + by) % (1 + len(self.draft.blocks) + len(LISTS))

    def choose(self, at: int) -> bool:
        """Go to a part of the open list; False when it is there already, or is none."""
        listed = self.listed
        if listed is None or at == self.at or at >= len(listed.texts(self.draft)):
            return False
        self._at[listed.path] = at
        return True

    def go_to(self, path: str) -> None:
        """Open the page of a field."""
        group, index = (*path.split("."), "")[:2]
        self.number = 0
        if group == "blocks":
            self.number = 1 + int(index)
        for number, listed in enumerate(LISTS):
            if listed.path == group:
                self.number = 1 + len(self.draft.blocks) + number
                self._at[group] = int(index)

    def add(self) -> str:
        """The path of the field that a new part of the open list, or else a new block, lacks."""
        listed = self.listed
        if listed is None:
            path = f"blocks.{self.draft.add_block()}.name"
        else:
            after = self.at if listed.texts(self.draft) else None
            path = f"{listed.path}.{listed.add(self.draft, after)}.{listed.starts_at}"
        self.go_to(path)
        return path

    @property
    def removable(self) -> str:
        """What the page shows, in words; empty when it has to stay."""
        block, shown, listed = self.block, self.shown, self.listed
        if listed is not None:
            name = shown.texts[listed.shown[0]] if shown else ""
            return f"the {listed.noun} {on_one_line(name) or 'without a name'}" if shown else ""
        if block is None or len(self.draft.blocks) == 1:
            return ""
        return f"the block {on_one_line(self.draft.blocks[block]['name']) or 'without a name'}"

    def remove(self) -> None:
        """Take what the page shows out of the draft."""
        block, listed = self.block, self.listed
        if listed is not None:
            del listed.texts(self.draft)[self.at]
        elif block is not None:
            del self.draft.blocks[block]
            self.number -= 1

    def names(self, faults: Iterable[str]) -> tuple[PageName, ...]:
        """Every page with the number of its fields that have a fault."""
        pages = [_page_of(path) for path in faults]
        titles = [("Building", "")]
        titles += [
            (on_one_line(block["name"]) or f"Block {at + 1}", f"blocks.{at}")
            for at, block in enumerate(self.draft.blocks)
        ]
        titles += [(f"{one.title} ({len(one.texts(self.draft))})", one.path) for one in LISTS]
        return tuple(
            PageName(title, pages.count(page), number == self.number)
            for number, (title, page) in enumerate(titles)
        )


def _page_of(path: str) -> str:
    """What the paths of the fields on one page begin with; empty for the building's own."""
    group, index = (*path.split("."), "")[:2]
    if group == "blocks":
        return f"{group}.{index}"
    return group if any(group == listed.path for listed in LISTS) else ""
