"""Debris as ranges and loads."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from leanto.trade.debris import Spread, debris_pile, debris_weight_lb, haul
from leanto.trade.debris_table import debris_table

MATERIALS = sorted(debris_table().materials)
CONTAINERS = sorted(debris_table().containers)


def test_light_debris_fills_by_room() -> None:
    # 1,000 sq ft at 0.6 lb over 15 lb a cubic yard = 40 cubic yards at most.
    run = haul(debris_pile({"insulation": 1000}), "roll-off-20")
    assert run.governed_by == "volume"
    assert (run.low_loads, run.high_loads) == (1, 3)  # 4 / 17 and 40 / 17


def test_heavy_debris_fills_a_trailer_by_weight() -> None:
    run = haul(debris_pile({"concrete": 27}), "trailer")
    assert run.governed_by == "weight"
    assert run.high_loads == 3  # 4,050 / 1,500
    assert run.low_loads == 2  # 4,050 / 2,500


def test_a_fuller_container_needs_no_more_loads() -> None:
    pile = debris_pile({"boards": 2000})
    assert haul(pile, "roll-off-10", fill=1).high_loads <= haul(pile, "roll-off-10").high_loads


def test_nothing_stripped_makes_no_load() -> None:
    run = haul(debris_pile({}), "roll-off-10")
    assert (run.low_loads, run.high_loads) == (0, 0)


@pytest.mark.parametrize("material", MATERIALS)
def test_every_material_has_weight_volume_and_a_source(material: str) -> None:
    pile = debris_pile({material: 100})
    assert 0 < pile.weight_lb.low <= pile.weight_lb.high
    assert 0 < pile.volume_cy.low <= pile.volume_cy.high
    assert pile.sources


@given(
    st.dictionaries(st.sampled_from(MATERIALS), st.floats(0, 5000), min_size=1),
    st.sampled_from(CONTAINERS),
)
def test_loads_hold_the_pile_by_room_and_by_weight(
    quantities: dict[str, float], container: str
) -> None:
    pile = debris_pile(quantities)
    run = haul(pile, container)
    box = debris_table().containers[container]
    slack = 1e-5
    assert run.low_loads <= run.high_loads
    assert run.high_loads * box.low_limit_lb >= pile.weight_lb.high - slack * box.low_limit_lb
    room_cy = box.volume_cy * 0.85
    assert run.high_loads * room_cy >= pile.volume_cy.high - slack * room_cy


def test_piles_add() -> None:
    both = debris_pile({"boards": 100, "slate": 2})
    apart = debris_pile({"boards": 100}).weight_lb + debris_pile({"slate": 2}).weight_lb
    assert both.weight_lb == apart == Spread(250 + 1450, 250 + 1920)


def test_impossible_amounts_are_refused() -> None:
    with pytest.raises(ValueError, match="quantity"):
        debris_weight_lb("boards", -1)
    with pytest.raises(ValueError, match="no debris"):
        debris_weight_lb("straw", 1)
    with pytest.raises(ValueError, match="fill"):
        haul(debris_pile({}), "trailer", fill=0)
