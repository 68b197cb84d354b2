"""Building files, read with the line of each fault."""

from __future__ import annotations

from pathlib import Path

import pytest

from leanto.building.load import parse_building, read_building
from leanto.errors import InputProblems

GOOD = """\
name: Small shed
year_built: 1950
blocks:
  - id: shed
    name: Shed
    length: 12 ft
    width: 8' 6"
    eave_height: 7
    roof: {form: gable, pitch: 6:12}
openings:
  - {id: D1, kind: door, on: shed.south, from_left: 1 ft, width: 3 ft, height: 6' 8"}
"""


def test_a_file_becomes_a_building(tmp_path: Path) -> None:
    file = tmp_path / "building.yaml"
    file.write_text(GOOD, encoding="utf-8")
    building = read_building(file)
    assert building == parse_building(GOOD, "building.yaml")
    assert building.blocks[0].width == 8.5
    assert building.openings[0].on == "shed.south"


def _refused(text: str) -> list[str]:
    with pytest.raises(InputProblems) as refused:
        parse_building(text, "b.yaml")
    return [str(problem) for problem in refused.value.problems]


def test_a_fault_between_fields_has_its_line() -> None:
    text = GOOD.replace("from_left: 1 ft", "from_left: 10 ft")
    assert _refused(text) == [
        "b.yaml:11: openings.0.from_left: D1 runs 1' 0\" past the right end; "
        "shed.south is 12' 0\" wide and 7' 0\" high."
    ]


def test_a_fault_of_a_missing_key_has_the_line_of_its_block() -> None:
    second = GOOD.index("openings:")
    block = "  - {id: coop, name: Coop, length: 6, width: 4, eave_height: 5, roof: {form: flat}}\n"
    problems = _refused(GOOD[:second] + block + GOOD[second:])
    assert problems == ["b.yaml:10: blocks.1.attached: Say where this block stands against shed."]


@pytest.mark.parametrize(
    ("was", "now", "says"),
    [
        ("pitch: 6:12", "spacing: 2 ft", "a gable roof needs a pitch"),
        ("form: gable", "form: flat", "a flat roof has no pitch"),
        ("form: gable", "form: shed", "a shed roof needs high_side"),
        ("eave_height: 7", "eave_height: 0", "must be more than zero"),
        ("length: 12 ft", "length: long", "is not understood as a length"),
        ("year_built: 1950", "year: 1950", 'The key "year" is not known here'),
    ],
)
def test_a_fault_of_one_field_is_told(was: str, now: str, says: str) -> None:
    assert any(says in problem for problem in _refused(GOOD.replace(was, now)))
