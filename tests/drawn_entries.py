"""Entries as somebody leaves them, drawn at random; for what holds of any record."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime

from hypothesis import strategies as st

from leanto.building.model import Block, Building, Roof
from leanto.checklist.condition import Condition
from leanto.record.entry import (
    AirMeasured,
    Answered,
    Body,
    BuildingSet,
    DangerMarked,
    Entry,
    Measured,
    MovedTo,
    Noted,
    Overruled,
    PhotoAdded,
    PhotoRemoved,
    Redone,
    Undone,
    Zoned,
)
from leanto.record.fold import next_redo, next_undo

AT = datetime(2026, 11, 25, 15, 0, tzinfo=UTC)
DIGESTS = ["a" * 64, "b" * 64]

texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=30)
feet = st.floats(0, 100, allow_nan=False)
sizes = st.floats(1 / 96, 100)


def about(**parts: st.SearchStrategy[object]) -> dict[str, st.SearchStrategy[object]]:
    return {
        "station": st.sampled_from(["site", "main.north.outside", "main.floor", "gone"]),
        "item": st.sampled_from(["sill", "stain"]),
        "number": st.integers(1, 2),
        **parts,
    }


def building(length_ft: float) -> Building:
    block = Block(
        id="main", name="Main", length=length_ft, width=12, eave_height=8, roof=Roof(pitch=6)
    )
    return Building(name="Shed", year_built=1938, blocks=(block,))


bodies: st.SearchStrategy[Body] = st.one_of(
    st.builds(BuildingSet, building=st.builds(building, st.floats(4, 60))),
    st.builds(Answered, **about(condition=st.sampled_from(Condition), reason=texts)),
    st.builds(
        Measured,
        **about(
            measure=st.sampled_from(["moisture_pct", "is_active"]),
            value=st.one_of(st.none(), st.floats(-1e6, 1e6), texts),
        ),
    ),
    st.builds(Zoned, **about(left_ft=feet, bottom_ft=feet, width_ft=sizes, height_ft=sizes)),
    st.builds(Noted, **about(text=texts)),
    st.builds(DangerMarked, **about(on=st.booleans())),
    st.builds(
        PhotoAdded,
        **about(
            digest=st.sampled_from(DIGESTS),
            original_name=texts,
            taken_at=st.one_of(st.none(), st.datetimes()),
        ),
    ),
    st.builds(PhotoRemoved, **about(digest=st.sampled_from(DIGESTS))),
    st.builds(
        AirMeasured,
        station=st.sampled_from(["site", "main.floor"]),
        temp_f=st.floats(-60, 140),
        humidity_pct=st.floats(0, 100),
    ),
    st.builds(
        Overruled,
        surface_id=st.sampled_from(["main.ceiling", "main.north.inside"]),
        course=st.sampled_from(["gut", "keep", "as computed"]),
        reason=texts,
    ),
    st.builds(MovedTo, station=st.sampled_from(["site", "main.floor"]), item=texts),
)
steps = st.lists(st.one_of(bodies, st.sampled_from(["undo", "redo"])), max_size=25)


def record(steps: Sequence[Body | str], start: Sequence[Entry] = ()) -> list[Entry]:
    """The entries that somebody leaves who takes these steps."""
    entries = list(start)
    for step in steps:
        body: Body
        if step == "undo":
            target = next_undo(entries)
            if target is None:
                continue
            body = Undone(entry=target.id)
        elif step == "redo":
            target = next_redo(entries)
            if target is None:
                continue
            body = Redone(entry=target.id)
        else:
            assert not isinstance(step, str)
            body = step
        entries.append(Entry(id=len(entries) + 1, at=AT, who="tester", body=body))
    return entries
