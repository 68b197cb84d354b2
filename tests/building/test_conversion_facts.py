"""What the conversion is reckoned with: lumber, snow, climate, targets, appliances, haul."""

from __future__ import annotations

import pytest

from leanto.building.load import parse_building
from leanto.building.model import Building
from leanto.errors import InputProblems
from leanto.yaml_output import dump_yaml

PLAIN = """
name: Shed
year_built: 1938
blocks:
  - {id: main, name: Main room, length: 24, width: 12, eave_height: 8, roof: {pitch: 6:12}}
"""
KNOWN = """
lumber: {species: southern pine, grade: no. 2, stamped: true}
ground_snow_psf: 30
climate_zone: 5
target_r: {walls: 15, ceiling: 38}
winter_low_f: -5
indoor_f: 65
appliances:
  - {name: kiln, amps: 40, volts: 240, continuous: true}
  - {name: press, watts: 1200}
haul: {container: roll-off-10}
"""


def test_none_of_it_has_to_be_known() -> None:
    building = parse_building(PLAIN, "shed.yaml")
    assert building.lumber.species is None
    assert building.ground_snow_psf is None
    assert building.climate_zone is None
    assert building.target_r.walls is None
    assert building.appliances == ()
    assert building.haul.container is None


def test_all_of_it_comes_back_from_a_file() -> None:
    building = parse_building(PLAIN + KNOWN, "shed.yaml")
    again = parse_building(dump_yaml(building.model_dump(mode="json")), "again.yaml")
    assert again == building
    assert [one.name for one in building.appliances] == ["kiln", "press"]
    assert Building.model_validate_json(building.model_dump_json()) == building


@pytest.mark.parametrize(
    ("line", "field"),
    [
        ("lumber: {species: oak}", "lumber.species"),
        ("lumber: {grade: best}", "lumber.grade"),
        ("ground_snow_psf: -1", "ground_snow_psf"),
        ("climate_zone: 9", "climate_zone"),
        ("target_r: {walls: 0}", "target_r.walls"),
        ("winter_low_f: -80", "winter_low_f"),
        ("indoor_f: 130", "indoor_f"),
        ("appliances: [{name: saw}]", "appliances.0"),
        ("appliances: [{name: saw, watts: 100, amps: 3}]", "appliances.0"),
        ("appliances: [{name: saw, watts: -100}]", "appliances.0.watts"),
        ("appliances: [{name: saw, watts: 100, volts: 200}]", "appliances.0.volts"),
        ("haul: {container: bucket}", "haul.container"),
    ],
)
def test_the_impossible_is_refused_at_its_field(line: str, field: str) -> None:
    with pytest.raises(InputProblems) as refused:
        parse_building(f"{PLAIN}{line}\n", "shed.yaml")
    assert field in {problem.field for problem in refused.value.problems}
