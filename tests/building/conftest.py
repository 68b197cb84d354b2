"""Blocks and buildings to test with: a plain gable building, and what is changed on it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Any

import pytest

from leanto.building.model import Block, Building, Opening

BlockMaker = Callable[..., Block]
BuildingMaker = Callable[..., Building]


def _block(**changes: Any) -> Block:
    plain: dict[str, Any] = {
        "id": "main",
        "name": "Main room",
        "length": 24,
        "width": 12,
        "eave_height": 8,
        "walls": {"spacing": "24 in"},
        "roof": {"form": "gable", "pitch": "6:12", "overhang": 1, "spacing": "24 in"},
    }
    return Block.model_validate(plain | changes)


def _lean_to(**changes: Any) -> Block:
    plain: dict[str, Any] = {
        "id": "lean-to",
        "name": "Feed room",
        "length": 12,
        "width": 6,
        "eave_height": "5' 9\"",
        "roof": {"form": "shed", "pitch": "3:12", "high_side": "south", "overhang": 1},
        "attached": {"to": "main", "side": "north", "offset": 12},
    }
    return _block(**(plain | changes))


def _building(
    *blocks: Block, openings: Iterable[Mapping[str, Any]] = (), **changes: Any
) -> Building:
    placed = tuple(Opening.model_validate(dict(opening)) for opening in openings)
    plain: dict[str, Any] = {"name": "A shed", "year_built": 1938}
    return Building(**(plain | changes), blocks=blocks or (_block(),), openings=placed)


@pytest.fixture(scope="session")
def a_block() -> BlockMaker:
    """A 24 by 12 ft gable block, 8 ft to the eave, with any field changed."""
    return _block


@pytest.fixture(scope="session")
def a_lean_to() -> BlockMaker:
    """A 12 by 6 ft shed-roofed block on the north side of ``main``, with any field changed."""
    return _lean_to


@pytest.fixture(scope="session")
def a_building() -> BuildingMaker:
    """A building of the given blocks and openings; the plain block when none is given."""
    return _building
