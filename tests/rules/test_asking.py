"""Which items are asked where."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.checklist.model import Checklist
from leanto.rules.asking import items_at, only_if
from leanto.rules.expression import ExpressionError


def asked(case: Any, station_id: str) -> list[str]:
    (station,) = [stop for stop in case.stations if stop.id == station_id]
    return [item.id for item in items_at(station, case.building, case.surfaces, case.checklist)]


def test_items_are_asked_at_their_kinds_of_place(
    case: Any, item: Callable[..., Any], checklist: Callable[..., Checklist]
) -> None:
    case.checklist = checklist(
        item("rot", at=["floor", "wall inside"]),
        item("roof", at=["roof"]),
        item("soil", at=["site"]),
    )
    assert asked(case, "main.floor") == ["rot"]
    assert asked(case, "main.south.inside") == ["rot"]
    assert asked(case, "main.roof.south") == ["roof"]
    assert asked(case, "site") == ["soil"]
    assert asked(case, "main.ceiling") == []


@pytest.mark.parametrize(
    ("condition", "station", "is_asked"),
    [
        ("lined", "main.south.inside", True),
        ("lined", "main.west.inside", False),
        ("flue_count > 0", "main.roof.south", True),
        ("flue_count > 0", "main.roof.north", False),
        ("meets_wall", "feed-room.roof.north", True),
        ("meets_wall", "main.roof.north", False),
        ("floor_kind in ('joists', 'sleepers')", "main.floor", True),
        ("floor_kind in ('joists', 'sleepers')", "feed-room.floor", False),
        ("year_built < 1978", "site", True),
        ("year_built < 1938", "site", False),
        ("not has_ceiling and place == 'ceiling'", "feed-room.ceiling", True),
        # The age of the main roof is not known: better asked for nothing than missed.
        ("covering_age_years > 20", "main.roof.south", True),
        ("covering_age_years > 40", "feed-room.roof.north", False),
    ],
)
def test_an_item_is_left_out_where_its_condition_is_false(
    case: Any,
    item: Callable[..., Any],
    checklist: Callable[..., Checklist],
    condition: str,
    station: str,
    is_asked: bool,
) -> None:
    case.checklist = checklist(item("rot", only_if=condition), item("stain"))
    assert asked(case, station) == (["rot", "stain"] if is_asked else ["stain"])


@pytest.mark.parametrize(
    ("condition", "message"),
    [
        ("failed", "failed is known only once something was observed"),
        ("emc_pct > 9", "emc_pct is known only once something was observed"),
        ("known(air_temp_f)", "air_temp_f is known only once something was observed"),
        ("building_age_years > 50", "building_age_years is known only once"),
        ("moisture_pct > 9", "unknown name"),
        ("found_here('leak')", "cannot hang on findings"),
        ("flue_count", "a yes or no is needed"),
        ("lining == 'tin'", "lining is never 'tin'"),
    ],
)
def test_a_condition_may_ask_only_what_is_known_before_the_walk(
    condition: str, message: str
) -> None:
    with pytest.raises(ExpressionError, match=message.replace("(", r"\(")):
        only_if(condition)
