"""Buildings that do not hold together, and the words for it."""

from __future__ import annotations

from typing import Any

import pytest

from leanto.building.check import building_problems

DOOR = {"id": "D1", "kind": "door", "on": "main.south", "from_left": 1, "width": 3, "height": 6}
FLUE = {"id": "F1", "kind": "flue", "on": "main.roof.south", "width": 2, "height": 2}
SHED = {"form": "shed", "pitch": "3:12", "high_side": "south"}
FLAT = {"form": "flat", "spacing": 2}


def test_a_sound_building_has_no_problems(a_building: Any, a_block: Any, a_lean_to: Any) -> None:
    openings = [DOOR, FLUE | {"from_left": 2, "from_bottom": 2}]
    assert building_problems(a_building(a_block(), a_lean_to(), openings=openings)) == []


@pytest.mark.parametrize(
    ("opening", "field", "says"),
    [
        ({"on": "main.roof"}, "on", "There is no main.roof here"),
        ({"on": "main.roof.east"}, "on", "There is no main.roof.east here"),
        ({"on": "shed.north"}, "on", "openings can be on main.north"),
        ({"width": 0}, "width", "must be more than zero"),
        ({"height": 0}, "height", "must be more than zero"),
        ({"from_left": 21 + 1 / 100}, None, ""),
        (
            {"from_left": 22},
            "from_left",
            "D1 runs 1' 0\" past the right end; main.south is 24' 0\" wide",
        ),
        ({"height": 8}, None, ""),
        ({"height": 8.5}, "from_bottom", 'D1 runs 6" past the top'),
        ({"from_bottom": 2.5}, "from_bottom", 'D1 runs 6" past the top'),
        # On a gable end of 12 by 8 ft at 6:12 the rake is 9 ft high at 2 ft from the corner.
        ({"on": "main.east", "from_left": 2, "height": 9}, None, ""),
        ({"on": "main.east", "from_left": 2, "height": 9.2}, "from_bottom", "sloping edge"),
        ({"kind": "skylight"}, "kind", "A skylight lies in a roof"),
        ({"on": "main.roof.south", "height": 3}, "kind", "A door stands in a wall"),
        ({"kind": "skylight", "on": "main.roof.south", "height": 3}, None, ""),
        ({"kind": "vent", "on": "main.roof.south", "height": 3}, None, ""),
    ],
)
def test_an_opening_must_fit_its_surface(
    a_building: Any, opening: dict[str, Any], field: str | None, says: str
) -> None:
    problems = building_problems(a_building(openings=[DOOR | opening]))
    if field is None:
        assert problems == []
        return
    assert [path for path, _ in problems] == [f"openings.0.{field}"]
    assert says in problems[0][1]


@pytest.mark.parametrize(("from_left", "overlaps"), [(4, False), (3.5, True), (0, True)])
def test_openings_must_not_overlap(a_building: Any, from_left: float, overlaps: bool) -> None:
    second = DOOR | {"id": "D2", "from_left": from_left}
    problems = building_problems(a_building(openings=[DOOR, second]))
    assert problems == ([("openings.1.from_left", "D2 overlaps D1.")] if overlaps else [])


def test_openings_at_the_same_place_on_two_walls_do_not_overlap(a_building: Any) -> None:
    assert (
        building_problems(a_building(openings=[DOOR, DOOR | {"id": "D2", "on": "main.north"}]))
        == []
    )


@pytest.mark.parametrize(("from_left", "is_cut"), [(8, False), (12, False), (10, True)])
def test_an_opening_lies_within_or_beside_a_lean_to(
    a_building: Any, a_block: Any, a_lean_to: Any, from_left: float, is_cut: bool
) -> None:
    door = DOOR | {"on": "main.north", "from_left": from_left}
    problems = building_problems(a_building(a_block(), a_lean_to(), openings=[door]))
    assert [path for path, _ in problems] == (["openings.0.from_left"] if is_cut else [])


@pytest.mark.parametrize(
    ("changes", "field", "says"),
    [
        ({"attached": None}, "attached", "Say where this block stands against main"),
        ({"attached": {"to": "barn", "side": "north"}}, "attached.to", "no block barn; others"),
        ({"attached": {"to": "lean-to", "side": "north"}}, "attached.to", "in a circle"),
        (
            {"attached": {"to": "main", "side": "north", "offset": 13}},
            "attached.offset",
            "runs 1' 0\" past the end of main's north wall, which is 24' 0\" long",
        ),
        ({"eave_height": "6' 6\""}, None, ""),  # 6.5 + 6 x 3/12 = 8 ft, as high as the wall
        ({"eave_height": 7}, "attached", "lean-to is 8' 6\" high where it meets main's north wall"),
        ({"roof": SHED | {"high_side": "north"}}, "roof.high_side", "must be south"),
        ({"roof": {"form": "hip", "pitch": 3}}, "roof.form", "cannot have a hip roof"),
        ({"roof": FLAT}, None, ""),
        (
            {"on_wall": {"south": {"lining": "board"}}},
            "on_wall.south",
            "lean-to has no south wall of its own",
        ),
    ],
)
def test_a_lean_to_must_fit_the_wall_it_stands_against(
    a_building: Any,
    a_block: Any,
    a_lean_to: Any,
    changes: dict[str, Any],
    field: str | None,
    says: str,
) -> None:
    problems = building_problems(a_building(a_block(), a_lean_to(**changes)))
    if field is None:
        assert problems == []
        return
    assert [path for path, _ in problems] == [f"blocks.1.{field}"]
    assert says in problems[0][1]


def test_a_lean_to_may_be_higher_under_a_gable(
    a_building: Any, a_block: Any, a_lean_to: Any
) -> None:
    def against_east(offset: float) -> Any:
        return a_lean_to(
            length=4,
            eave_height=8,
            ridge_runs="north-south",
            attached={"to": "main", "side": "east", "offset": offset},
            roof=SHED | {"high_side": "west", "pitch": "2:12"},
        )

    # 9 ft high: the rake passes 9 ft at 2 ft from the corner.
    assert building_problems(a_building(a_block(), against_east(4))) == []
    problems = building_problems(a_building(a_block(), against_east(1)))
    assert [path for path, _ in problems] == ["blocks.1.attached"]


def test_two_lean_tos_need_their_own_places(a_building: Any, a_block: Any, a_lean_to: Any) -> None:
    def beside_it(offset: float) -> Any:
        second = a_lean_to(
            id="coop", length=8, attached={"to": "main", "side": "north", "offset": offset}
        )
        return building_problems(a_building(a_block(), a_lean_to(), second))

    assert beside_it(4) == []
    assert beside_it(5) == [
        ("blocks.1.attached.offset", "lean-to overlaps coop on main's north wall.")
    ]


def test_nothing_stands_against_a_wall_that_is_not_there(
    a_building: Any, a_block: Any, a_lean_to: Any
) -> None:
    third = a_lean_to(id="coop", length=8, attached={"to": "lean-to", "side": "south"})
    problems = building_problems(a_building(a_block(), a_lean_to(), third))
    assert problems == [("blocks.2.attached.side", "lean-to has no south wall of its own.")]


def test_ids_are_used_once(a_building: Any, a_block: Any) -> None:
    problems = building_problems(a_building(a_block(), a_block(), openings=[DOOR, DOOR]))
    assert problems == [
        ("blocks.1.id", "Another block is already called main."),
        ("openings.1.id", "Another opening is already called D1."),
    ]


@pytest.mark.parametrize(
    ("spacing", "is_fine"), [("4 in", True), ("3 in", False), ("20 ft", True), ("21 ft", False)]
)
@pytest.mark.parametrize("part", ["walls", "ceiling", "floor"])
def test_no_framing_is_that_close_or_wide(
    a_building: Any, a_block: Any, part: str, spacing: str, is_fine: bool
) -> None:
    problems = building_problems(a_building(a_block(**{part: {"spacing": spacing}})))
    assert [path for path, _ in problems] == ([] if is_fine else [f"blocks.0.{part}.spacing"])


@pytest.mark.parametrize(("span", "is_fine"), [(24, True), (25, False), (0, False)])
def test_a_floor_span_fits_the_floor(
    a_building: Any, a_block: Any, span: float, is_fine: bool
) -> None:
    problems = building_problems(a_building(a_block(floor={"clear_span": span})))
    assert [path for path, _ in problems] == ([] if is_fine else ["blocks.0.floor.clear_span"])
