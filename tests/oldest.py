"""Prints the oldest version of every library that pyproject.toml allows, as pip constraints.

python tests/oldest.py > oldest.txt
pip install --constraint oldest.txt '.[test]'
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

PYPROJECT = Path(__file__).resolve().parent.parent / "pyproject.toml"
_BOUND = re.compile(r"(?P<name>[\w.-]+)(?:\[[\w,]+\])?\s*(?:>=|~=)\s*(?P<version>[\w.]+)")


def oldest(requirements: Sequence[str]) -> Iterator[str]:
    """One constraint a requirement; ValueError for one without a lower bound.

    Stubs are left out: nothing runs them, and their releases are dates.
    """
    for requirement in requirements:
        if requirement.startswith("types-"):
            continue
        bound = _BOUND.match(requirement)
        if bound is None:
            raise ValueError(f"{requirement} has no lower bound")
        yield f"{bound['name']}=={bound['version']}"


def requirements(project: Mapping[str, Any]) -> list[str]:
    """What the package needs, with every extra."""
    extras = project.get("optional-dependencies", {})
    return [*project["dependencies"], *(line for extra in extras.values() for line in extra)]


if __name__ == "__main__":
    with PYPROJECT.open("rb") as file:
        print("\n".join(oldest(requirements(tomllib.load(file)["project"]))))
