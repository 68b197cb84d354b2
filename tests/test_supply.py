"""What leanto is built from: bounds that hold, and a lock that knows every library."""

from __future__ import annotations

import tomllib
from pathlib import Path

import pytest
from oldest import oldest, requirements
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name
from packaging.version import Version

ROOT = Path(__file__).resolve().parent.parent
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
LOCK = ROOT / ".ci" / "requirements.txt"


def locked() -> dict[str, set[Version]]:
    """The versions of each library in the lock; more than one where Pythons differ."""
    found: dict[str, set[Version]] = {}
    for line in LOCK.read_text("utf-8").splitlines():
        if line[:1].isalnum():
            requirement = Requirement(line.removesuffix("\\").strip())
            (pin,) = requirement.specifier
            assert pin.operator == "=="
            found.setdefault(canonicalize_name(requirement.name), set()).add(Version(pin.version))
    return found


@pytest.mark.parametrize("line", requirements(PROJECT))
def test_the_lock_holds_what_the_project_asks_for(line: str) -> None:
    wanted = Requirement(line)

    versions = locked().get(canonicalize_name(wanted.name), set())

    assert versions
    assert all(wanted.specifier.contains(version) for version in versions)


def test_every_library_in_the_lock_is_checked_by_its_hash() -> None:
    lines = LOCK.read_text("utf-8").splitlines()
    pins = [at for at, line in enumerate(lines) if line[:1].isalnum()]
    assert len(pins) > 20
    assert all(lines[at + 1].strip().startswith("--hash=sha256:") for at in pins)


def test_every_library_that_runs_has_an_oldest_version() -> None:
    pins = [Requirement(line) for line in oldest(requirements(PROJECT))]
    run = [Requirement(line) for line in requirements(PROJECT) if not line.startswith("types-")]
    assert [pin.name for pin in pins] == [one.name for one in run]
    for pin, one in zip(pins, run, strict=True):
        (exact,) = pin.specifier
        assert one.specifier.contains(exact.version)


def test_a_library_without_a_lower_bound_is_refused() -> None:
    with pytest.raises(ValueError, match="anything has no lower bound"):
        list(oldest(["anything"]))
