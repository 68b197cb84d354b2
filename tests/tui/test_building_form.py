"""The building as it is typed: texts and back, refusals, and every fault at its field."""

from __future__ import annotations

from pathlib import Path
from typing import Any, get_args, get_origin

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import BaseModel

import leanto.demo
from leanto.building.kinds import Side
from leanto.building.load import read_building
from leanto.building.model import Appliance, Block, Building, Opening
from leanto.quantities import parse_length_ft
from leanto.tui.widgets.building_draft import Draft
from leanto.tui.widgets.building_fields import (
    APPLIANCE_FIELDS,
    BLOCK_FIELDS,
    BUILDING_FIELDS,
    OPENING_FIELDS,
    Field,
)
from leanto.tui.widgets.building_parts_table import LISTS
from leanto.tui.widgets.building_plan import area_lines, footprints, plan_lines
from leanto.tui.widgets.building_reading import choices_of, read
from leanto.tui.widgets.building_texts import length_text


@pytest.fixture
def brooder_house() -> Building:
    """Two blocks and thirteen openings."""
    return read_building(Path(leanto.demo.__file__).with_name("building.yaml"))


def by_path(fields: tuple[Field, ...], path: str) -> Field:
    return next(field for field in fields if field.path == path)


def changed(building: Building, **texts: str) -> Draft:
    """The draft of a building with other texts; ``blocks__0__roof__pitch`` is a path."""
    draft = Draft.of(building)
    for name, text in texts.items():
        path = name.replace("__", ".")
        part, index, rest = (*path.split(".", 2), "", "")[:3]
        if part in ("blocks", "openings"):
            getattr(draft, part)[int(index)][rest] = text
        else:
            draft.facts[path] = text
    return draft


def test_a_building_becomes_texts_and_comes_back_the_same(
    shed: Building, brooder_house: Building
) -> None:
    for building in (shed, brooder_house):
        reading = read(Draft.of(building))
        assert reading.problems == {}
        assert reading.building == building


def test_what_only_some_buildings_have_comes_back_too(brooder_house: Building) -> None:
    data = brooder_house.model_dump(mode="json")
    main, feed_room = data["blocks"]
    main["on_wall"] = {"north": {"lining": "plywood"}, "east": {"cladding": "metal"}}
    main["floor"] = {"kind": "slab", "member": "2x8", "spacing": 2.0}
    main["roof"] |= {"form": "hip", "pitch": 27.123 / 5, "overhang": 0.3048}
    feed_room["roof"] |= {"form": "flat", "pitch": None, "high_side": None}
    data["openings"] = []
    data["budget_usd"] = 38000.5
    data["lumber"] = {"species": "hem-fir", "grade": "no. 2", "stamped": True}
    data["target_r"] = {"walls": 21, "ceiling": 38.5, "floor": None}
    data["haul"] = {"container": "roll-off-10"}
    data |= {"ground_snow_psf": 30, "climate_zone": 5, "winter_low_f": -3.5, "indoor_f": 65}
    data["appliances"] = [
        {"name": "Press", "watts": 1500},
        {"name": "Kiln", "amps": 24.5, "volts": 240, "continuous": True},
    ]
    building = Building.model_validate(data)

    reading = read(Draft.of(building))

    assert reading.problems == {}
    assert reading.building == building


@given(st.floats(min_value=0, max_value=1000).filter(lambda ft: ft == 0 or ft > 1e-12))
def test_a_length_is_written_so_that_it_reads_back_without_loss(ft: float) -> None:
    assert parse_length_ft(length_text(ft)) == ft


@pytest.mark.parametrize(
    ("ft", "text"),
    [(7 + 3.5 / 12, "7' 3 1/2\""), (16 / 12, "1' 4\""), (0.0, '0"'), (1 / 3 / 12, None)],
)
def test_lengths_look_as_people_say_them(ft: float, text: str | None) -> None:
    assert length_text(ft) == text or (text is None and length_text(ft).endswith(" ft"))


def leaves(model: type[BaseModel]) -> set[str]:
    """The path of every value that a model holds; parts in lists have fields of their own."""
    found: set[str] = set()
    for name, info in model.model_fields.items():
        kinds = (info.annotation, *get_args(info.annotation))
        below = next((k for k in kinds if isinstance(k, type) and issubclass(k, BaseModel)), None)
        if below is None:
            found.add(name)
        elif get_origin(info.annotation) is dict:
            found |= {f"{name}.{side}.{leaf}" for side in Side for leaf in leaves(below)}
        elif get_origin(info.annotation) is not tuple:
            found |= {f"{name}.{leaf}" for leaf in leaves(below)}
    return found


@pytest.mark.parametrize(
    ("model", "fields"),
    [
        (Building, BUILDING_FIELDS),
        (Block, BLOCK_FIELDS),
        (Opening, OPENING_FIELDS),
        (Appliance, APPLIANCE_FIELDS),
    ],
)
def test_every_fact_of_the_model_has_a_field(
    model: type[BaseModel], fields: tuple[Field, ...]
) -> None:
    only_asked = {"ceiling", "on_wall"}  # whether there is one at all

    assert {field.path for field in fields} - only_asked == leaves(model)


def test_every_list_of_the_model_has_a_page() -> None:
    lists = {
        name for name, info in Building.model_fields.items() if get_origin(info.annotation) is tuple
    }

    assert lists == {"blocks", *(one.path for one in LISTS)}


REFUSALS = [
    # field, what is typed, what is said
    ("name", "", "This is needed."),
    ("year_built", "", "like 1938"),
    ("year_built", "old", '"old" is not understood as a number.'),
    ("year_built", "1066", "at least 1600"),
    ("budget_usd", "-5", "must be more than 0"),
    ("distance_to_panel", "far", "Write it like 7' 3 1/2\""),
    ("blocks__0__id", "Main Room", "The text is not written in the form expected here"),
    ("blocks__0__length", "", "like 24' 6\""),
    ("blocks__0__length", "12-6-3", "Write it like"),
    ("blocks__0__length", "0", "must be more than zero"),
    ("blocks__0__walls__member", "3.5", "found"),
    ("blocks__0__walls__spacing", "2", 'A spacing of 2" is not between'),
    ("blocks__0__roof__pitch", "", "like 6:12"),
    ("blocks__0__roof__pitch", "steep", "Write it like 6:12"),
    ("blocks__0__roof__overhang", "12", "has no unit"),
    ("blocks__0__roof__layers", "7", "at most 6"),
    ("blocks__0__floor__clear_span", "40'", "does not fit a floor of"),
    ("openings__0__id", "door 1", "The text is not written in the form expected here"),
    ("openings__0__on", "main.up", "There is no main.up here"),
    ("openings__0__from_left", "23'", "past the right end"),
    ("openings__0__height", "9'", "past the top"),
    ("openings__0__width", "", "This is needed."),
    ("openings__0__height", "0 in", "must be more than zero"),
    ("climate_zone", "9", "at most 8"),
    ("winter_low_f", "-80 F", "at least -60"),
]


@pytest.mark.parametrize(("field", "typed", "message"), REFUSALS)
def test_what_is_refused_is_said_at_its_field_and_stays_typed(
    shed: Building, field: str, typed: str, message: str
) -> None:
    draft = changed(shed, **{field: typed})
    reading = read(draft)
    path = field.replace("__", ".")
    if typed == "9'":
        path = "openings.0.from_bottom"  # the top is passed by height and place together

    assert reading.building is None
    assert message in " ".join(reading.problems.values())
    assert list(reading.problems) == [path]
    assert texts_at(draft, field.replace("__", ".")) == typed


def texts_at(draft: Draft, path: str) -> str:
    texts = {
        prefix + name: text for prefix, _, part in draft.parts() for name, text in part.items()
    }
    return texts[path]


ACCEPTED = [
    ("blocks__0__length", "7.5 m", lambda b: b.blocks[0].length, 7.5 / 0.3048),
    ("blocks__0__length", "24-6", lambda b: b.blocks[0].length, 24.5),
    ("blocks__0__width", "12", lambda b: b.blocks[0].width, 12.0),
    ("blocks__0__walls__spacing", "16", lambda b: b.blocks[0].walls.spacing, 16 / 12),
    ("blocks__0__walls__member", "2 X 6", lambda b: b.blocks[0].walls.member, "2x6"),
    ("blocks__0__roof__pitch", "6 in 12", lambda b: b.blocks[0].roof.pitch, 6.0),
    ("blocks__0__roof__overhang", "8 in", lambda b: b.blocks[0].roof.overhang, 8 / 12),
    ("budget_usd", "$38,000", lambda b: b.budget_usd, 38000.0),
    ("budget_usd", "", lambda b: b.budget_usd, None),
]


@pytest.mark.parametrize(("field", "typed", "value", "expected"), ACCEPTED)
def test_facts_are_typed_as_people_say_them(
    shed: Building, field: str, typed: str, value: Any, expected: object
) -> None:
    reading = read(changed(shed, **{field: typed}))

    assert reading.problems == {}
    assert value(reading.building) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("watts", "amps", "is_refused"), [("", "", True), ("1,500", "12", True), ("1,500", "", False)]
)
def test_an_appliance_has_either_watts_or_amps(
    shed: Building, watts: str, amps: str, is_refused: bool
) -> None:
    draft = Draft.of(shed)
    draft.appliances[draft.add_appliance()] |= {"name": "Saw", "watts": watts, "amps": amps}

    assert ("appliances.0.watts" in read(draft).problems) is is_refused


def test_all_faults_are_named_at_once(shed: Building) -> None:
    reading = read(
        changed(shed, name="", blocks__0__width="wide", openings__0__from_left="left a bit")
    )
    assert list(reading.problems) == ["name", "blocks.0.width", "openings.0.from_left"]


def test_a_new_building_lacks_only_what_nobody_can_guess() -> None:
    reading = read(Draft.of(None))
    assert list(reading.problems) == [
        "name",
        "year_built",
        "blocks.0.length",
        "blocks.0.width",
        "blocks.0.eave_height",
        "blocks.0.roof.pitch",
    ]


def test_what_is_not_asked_does_not_count(shed: Building) -> None:
    draft = changed(shed, blocks__0__roof__form="flat", blocks__0__roof__pitch="steep")
    assert read(draft).problems == {}
    draft = changed(shed, blocks__0__ceiling="no", blocks__0__ceiling__spacing="?")
    reading = read(draft)
    assert reading.building is not None
    assert reading.building.blocks[0].ceiling is None


def test_a_new_block_is_a_lean_to_that_needs_only_its_sizes(shed: Building) -> None:
    draft = Draft.of(shed)
    at = draft.add_block()
    texts = draft.blocks[at]
    assert (
        set(read(draft).problems)
        == {
            "blocks.1.name",
            "blocks.1.length",
            "blocks.1.width",
            "blocks.1.eave_height",
            "blocks.1.roof.pitch",
        }
        or texts["name"]
    )
    texts |= {"name": "Lean-to", "length": "12'", "width": "6'", "eave_height": "5'"}
    texts["roof.pitch"] = "3:12"
    reading = read(draft)
    assert reading.problems == {}
    assert reading.building is not None
    assert reading.building.blocks[1].attached is not None


def test_a_lean_to_that_is_too_high_is_told_where_it_stands_against(shed: Building) -> None:
    draft = Draft.of(shed)
    draft.blocks[draft.add_block()] |= {
        "name": "Lean-to",
        "length": "12'",
        "width": "6'",
        "eave_height": "9'",
        "roof.pitch": "3:12",
    }
    problems = read(draft).problems
    assert list(problems) == ["blocks.1.attached.to"]
    assert "higher than that wall" in problems["blocks.1.attached.to"]


def test_a_new_opening_is_like_the_one_before_it_with_its_own_mark(shed: Building) -> None:
    draft = Draft.of(shed)
    at = draft.add_opening(0)
    assert draft.openings[at]["id"] == "D2"
    assert draft.openings[at]["width"] == draft.openings[0]["width"]
    assert list(read(draft).problems) == ["openings.1.from_left"]


def test_openings_and_lean_tos_follow_a_renamed_block(brooder_house: Building) -> None:
    draft = Draft.of(brooder_house)
    draft.blocks[0]["id"] = "house"
    draft.follow_rename("main", "house")
    assert draft.blocks[1]["attached.to"] == "house"
    assert {texts["on"].split(".")[0] for texts in draft.openings} == {"house", "feed-room"}
    assert read(draft).problems == {}


def test_nothing_follows_a_name_that_another_block_has(brooder_house: Building) -> None:
    draft = Draft.of(brooder_house)
    draft.blocks[0]["id"] = "feed-room"
    draft.follow_rename("main", "feed-room")
    assert draft.openings[0]["on"] == "main.south"
    assert "blocks.1.id" in read(draft).problems


def test_choices_follow_the_rest_of_the_building(brooder_house: Building) -> None:
    draft = Draft.of(brooder_house)
    main, feed_room = draft.blocks
    on, opening = by_path(OPENING_FIELDS, "on"), draft.openings[0]
    assert "main.roof.south" in choices_of(on, opening, draft)
    assert "feed-room.south" not in choices_of(on, opening, draft)  # it stands against the house
    assert "main.roof.east" not in choices_of(on, opening, draft)
    main["roof.form"] = "hip"
    assert "main.roof.east" in choices_of(on, opening, draft)
    assert choices_of(by_path(BLOCK_FIELDS, "attached.to"), feed_room, draft) == ("", "main")
    high_side = by_path(BLOCK_FIELDS, "roof.high_side")
    assert choices_of(high_side, feed_room, draft) == ("north", "south")
    feed_room["ridge_runs"] = "north-south"
    assert choices_of(high_side, feed_room, draft) == ("east", "west")


def test_the_plan_puts_a_lean_to_where_its_wall_coordinates_say(brooder_house: Building) -> None:
    main, feed_room = footprints(brooder_house)
    assert (main.west_ft, main.south_ft, main.wide_ft, main.deep_ft) == (0, 0, 24, 12)
    # 12 ft from the left end of the north wall, which seen from outside is its east end
    assert (feed_room.west_ft, feed_room.south_ft) == (0, 12)
    assert plan_lines(brooder_house, 25, 10) == [
        "┌─────W─────┐",
        "│ Feed room │",
        "D           │",
        "├─────D─────┴───────────┐",
        "│                       │",
        "│                       │",
        "W       Main room       W",
        "│                       │",
        "│                       │",
        "└───D────W───W───W───W──┘",
    ]


def test_areas_are_listed_by_block_and_side(shed: Building) -> None:
    # 24 x 8 ft walls, 12 x 8 ft with gables of 12 x 3 / 2 sq ft, a door of 3 x 6' 8"
    assert "  walls outside: N 192, E 114, S 172, W 114 sq ft" in area_lines(shed)
