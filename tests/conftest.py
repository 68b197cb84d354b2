"""The small lined shed as fixtures; and no deadlines, as the machines that run this are noisy."""

from __future__ import annotations

import pytest
from hypothesis import settings
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.building.model import Building
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of

settings.register_profile("no deadlines", deadline=None)
settings.load_profile("no deadlines")


@pytest.fixture
def shed() -> Building:
    return parse_building(SHED, "shed.yaml")


@pytest.fixture
def surfaces(shed: Building) -> dict[str, Surface]:
    return {surface.id: surface for surface in surfaces_of(shed)}
