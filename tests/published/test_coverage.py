"""What public standards and handbooks say must be looked at, against the items of the walk.

Every file of ``coverage/`` is one source: its list in our own words, and for each entry the items
that ask for it, or the reason why none does. ``mark`` says whether somebody read the entry there.
"""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal, Self

import pytest
from pydantic import Field, model_validator

from leanto.checklist.model import Identifier
from leanto.library import read_library
from leanto.strict import Strict
from leanto.yaml_input import read_model

FOLDER = Path(__file__).parent / "coverage"
FILES = sorted(FOLDER.glob("*.yaml"))
Said = Annotated[str, Field(min_length=3, max_length=200)]


class Entry(Strict):
    what: Said
    items: tuple[Identifier, ...] = ()
    reason: Annotated[str, Field(max_length=300)] = ""
    """Why no item asks for it."""
    mark: Literal["seen", "from memory"]

    @model_validator(mode="after")
    def _items_or_reason(self) -> Self:
        if bool(self.items) == bool(self.reason.strip()):
            raise ValueError("give either the items that ask for it or the reason why none does")
        if len(set(self.items)) != len(self.items):
            raise ValueError("an item stands here twice")
        return self


class Coverage(Strict):
    title: Said
    publisher: Said
    edition: Said
    where: Said
    """Sections, or what part of the text."""
    read: Said
    """How much of it somebody read, and what is from memory."""
    looks_at: Annotated[tuple[Entry, ...], Field(min_length=5)]


def read(path: Path) -> Coverage:
    return read_model(path, Coverage)


@pytest.fixture(scope="module")
def items() -> frozenset[str]:
    return frozenset(item.id for item in read_library().checklist.items())


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_all_that_a_source_wants_looked_at_is_asked_or_left_out_for_a_reason(
    path: Path, items: frozenset[str]
) -> None:
    coverage = read(path)
    gone = {entry.what: set(entry.items) - items for entry in coverage.looks_at}
    assert {what: ids for what, ids in gone.items() if ids} == {}
    assert len({entry.what for entry in coverage.looks_at}) == len(coverage.looks_at)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_what_is_marked_as_seen_is_not_called_from_memory_above(path: Path) -> None:
    coverage = read(path)
    from_memory = any(entry.mark == "from memory" for entry in coverage.looks_at)
    assert not from_memory or "memory" in coverage.read


def test_every_source_of_the_walk_is_there() -> None:
    assert {path.stem for path in FILES} >= {
        "ashi_standards_of_practice",
        "astm_e2018",
        "dangerous_building_rules",
        "fema_substantial_improvement",
        "hud_rehabilitation_inspection_guide",
        "internachi_standards_of_practice",
        "ipmc",
        "irc_sections",
        "nps_brief_04_roofs",
        "nps_brief_20_barns",
        "nps_brief_35_investigation",
        "nps_brief_39_moisture",
        "nps_brief_47_exteriors",
        "npma_33",
        "osha_1926_850",
        "rehab_guide",
        "state_rules_for_inspectors",
        "wood_inspection",
    }


@pytest.mark.parametrize(
    "section",
    [
        "framing-rot",
        "water-staining",
        "pest-damage",
        "roofing",
        "flashing",
        "existing-wiring",
        "site-drainage",
        "floor-foundation",
        "cladding-openings",
    ],
)
def test_most_items_of_a_section_answer_to_a_source(section: str) -> None:
    """An item that no list asks for may stay, but a section must not be of our own making."""
    named = {id_ for path in FILES for entry in read(path).looks_at for id_ in entry.items}
    (own,) = [s.items for s in read_library().checklist.sections if s.id == section]
    unnamed = [item.id for item in own if item.id not in named]
    assert len(unnamed) <= len(own) / 3, unnamed


@pytest.mark.parametrize(
    ("entry", "message"),
    [
        ({"what": "Roof", "mark": "seen"}, "give either"),
        ({"what": "Roof", "items": ["a-b"], "reason": "None.", "mark": "seen"}, "give either"),
        ({"what": "Roof", "reason": "  ", "mark": "seen"}, "give either"),
        ({"what": "Roof", "items": ["a-b", "a-b"], "mark": "seen"}, "twice"),
        ({"what": "Roof", "items": ["a-b"]}, "mark"),
    ],
)
def test_an_entry_that_leads_nowhere_is_refused(entry: dict[str, object], message: str) -> None:
    with pytest.raises(ValueError, match=message):
        Entry.model_validate(entry)
