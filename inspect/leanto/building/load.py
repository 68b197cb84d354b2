"""A building file -> a building that is known to hold together."""

from __future__ import annotations

from pathlib import Path

from leanto.building.check import building_problems
from leanto.building.model import Building
from leanto.errors import InputProblems
from leanto.yaml_input import Lines, parse_model_with_lines, read_model_with_lines


def read_building(path: Path) -> Building:
    """The building of a YAML file; InputProblems with file, line and field of every fault."""
    return _checked(*read_model_with_lines(path, Building))


def parse_building(text: str, file: str) -> Building:
    """The building of a YAML text; ``file`` is what messages call it."""
    return _checked(*parse_model_with_lines(text, Building, file))


def _checked(building: Building, lines: Lines) -> Building:
    problems = [
        lines.problem([int(step) if step.isdigit() else step for step in field.split(".")], message)
        for field, message in building_problems(building)
    ]
    if problems:
        raise InputProblems(problems)
    return building
