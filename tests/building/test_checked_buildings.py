"""Whatever the check lets pass can be walked; whatever it finds, it finds without failing."""

from __future__ import annotations

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.building.check import building_problems
from leanto.building.kinds import OpeningKind, Side
from leanto.building.model import Block, Building, Opening
from leanto.building.sketch import sketch_of
from leanto.building.stations import stations_of
from leanto.building.surfaces import surfaces_of

sides = st.sampled_from(list(Side))
names = st.sampled_from(["a", "b", "c"])
lengths = st.integers(1, 30)
small = st.integers(0, 6)


@st.composite
def blocks(draw: st.DrawFn, name: str) -> Block:
    ridge_runs = draw(st.sampled_from(["east-west", "north-south"]))
    form = draw(st.sampled_from(["gable", "shed", "hip", "flat"]))
    roof: dict[str, Any] = {"form": form, "spacing": draw(st.integers(1, 3)), "overhang": 1}
    if form != "flat":
        roof["pitch"] = draw(st.integers(1, 12))
    if form == "shed":
        across = ["north", "south"] if ridge_runs == "east-west" else ["east", "west"]
        roof["high_side"] = draw(st.sampled_from(across))
    attached = {"to": draw(names), "side": draw(sides), "offset": draw(small)}
    return Block.model_validate(
        {
            "id": name,
            "name": name,
            "length": draw(lengths),
            "width": draw(lengths),
            "eave_height": draw(st.integers(4, 20)),
            "ridge_runs": ridge_runs,
            "roof": roof,
            "ceiling": draw(st.sampled_from([None, {}])),
            "attached": attached if name != "a" or draw(st.booleans()) else None,
        }
    )


openings = st.builds(
    Opening,
    id=st.sampled_from(["D1", "D2", "W1"]),
    kind=st.sampled_from(list(OpeningKind)),
    on=st.builds(
        lambda block, part, side: f"{block}.{part}{side}",
        names,
        st.sampled_from(["", "roof."]),
        sides,
    ),
    from_left=small,
    from_bottom=small,
    width=small,
    height=small,
)
buildings = st.builds(
    Building,
    name=st.just("Any"),
    year_built=st.just(1930),
    blocks=st.tuples(blocks("a"))
    | st.tuples(blocks("a"), blocks("b"))
    | st.tuples(blocks("a"), blocks("b"), blocks("c")),
    openings=st.lists(openings, max_size=3).map(tuple),
)


@settings(max_examples=300)
@given(buildings)
def test_a_building_without_problems_can_be_walked(building: Building) -> None:
    problems = building_problems(building)
    for field, message in problems:
        assert field.startswith(("blocks.", "openings."))
        assert message.endswith(".")
        assert "\n" not in message
    if problems:
        return
    surfaces = surfaces_of(building)
    stations = stations_of(building)
    facing = sorted(station.surface_id for station in stations if station.surface_id)
    assert facing == sorted(surface.id for surface in surfaces)
    for surface in surfaces:
        assert -1e-6 <= surface.net_area_sqft <= surface.gross_area_sqft
        assert sketch_of(surface).outline == surface.outline
