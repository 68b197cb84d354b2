from __future__ import annotations

from datetime import UTC, date, datetime

import pytest
from pydantic import ValidationError

from leanto.building.model import Block, Building, Roof
from leanto.building.rectangle import Rectangle
from leanto.checklist.condition import Condition
from leanto.record.entry import (
    AirMeasured,
    Answered,
    Body,
    BuildingSet,
    DangerMarked,
    Entry,
    Imported,
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
from leanto.record.fold import fold, next_redo, next_undo
from leanto.record.observation import Air, Observation, ObservationKey, Overruling, Photo

AT = datetime(2026, 11, 25, 15, 0, tzinfo=UTC)
SILL = {"station": "main.north.outside", "item": "sill"}
KEY = ObservationKey("main.north.outside", "sill")
DIGEST = "5" * 64


def entries_of(*bodies: Body) -> list[Entry]:
    return [Entry(id=n, at=AT, who="tester", body=body) for n, body in enumerate(bodies, 1)]


def seen_after(*bodies: Body) -> Observation:
    return fold(entries_of(*bodies)).observations[KEY]


def answered(condition: Condition = Condition.FAILED, reason: str = "") -> Answered:
    return Answered(**SILL, condition=condition, reason=reason)


def building(name: str) -> Building:
    block = Block(id="main", name="Main", length=24, width=12, eave_height=8, roof=Roof(pitch=6))
    return Building(name=name, year_built=1938, blocks=(block,))


def test_an_empty_record_is_an_empty_walk() -> None:
    walk = fold([])

    assert (walk.building, walk.observations, walk.station) == (None, {}, "")
    assert next_undo([]) is None
    assert next_redo([]) is None


def test_an_observation_gathers_what_was_entered_and_by_which_entries() -> None:
    seen = seen_after(
        answered(),
        Measured(**SILL, measure="probe_depth_in", value=1.5),
        MovedTo(station="site"),
        Zoned(**SILL, left_ft=2, bottom_ft=0, width_ft=6, height_ft=1),
        Noted(**SILL, text="soft by the downspout"),
        DangerMarked(**SILL, on=True),
        PhotoAdded(**SILL, digest=DIGEST, original_name="IMG_1.JPG"),
    )

    assert seen == Observation(
        key=KEY,
        condition=Condition.FAILED,
        measures={"probe_depth_in": 1.5},
        zone=Rectangle(2, 0, 6, 1),
        note="soft by the downspout",
        danger=True,
        photos=(Photo(DIGEST, "IMG_1.JPG"),),
    )
    assert seen.entries == (1, 2, 4, 5, 6, 7)


def test_a_new_answer_keeps_everything_but_the_condition_and_its_reason() -> None:
    seen = seen_after(
        answered(Condition.NO_ACCESS, "stored hay"),
        Measured(**SILL, measure="probe_depth_in", value=1.5),
        Zoned(**SILL, left_ft=2, bottom_ft=0, width_ft=6, height_ft=1),
        Noted(**SILL, text="behind the hay"),
        PhotoAdded(**SILL, digest=DIGEST, original_name="IMG_1.JPG"),
        answered(Condition.WORN),
    )

    assert (seen.condition, seen.reason) == (Condition.WORN, "")
    assert seen.measures == {"probe_depth_in": 1.5}
    assert seen.zone == Rectangle(2, 0, 6, 1)
    assert seen.note == "behind the hay"
    assert len(seen.photos) == 1


@pytest.mark.parametrize(
    "body",
    [
        DangerMarked(**SILL, on=True),
        Noted(**SILL, text="look again"),
        PhotoAdded(**SILL, digest=DIGEST, original_name="IMG_1.JPG"),
        Measured(**SILL, measure="probe_depth_in", value=0.0),
    ],
)
def test_an_observation_may_be_there_without_an_answer(body: Body) -> None:
    assert seen_after(body).condition is None


@pytest.mark.parametrize(
    ("made", "taken_back"),
    [
        (DangerMarked(**SILL, on=True), DangerMarked(**SILL, on=False)),
        (Noted(**SILL, text="look again"), Noted(**SILL, text="")),
        (
            PhotoAdded(**SILL, digest=DIGEST, original_name="a.jpg"),
            PhotoRemoved(**SILL, digest=DIGEST),
        ),
        (
            Measured(**SILL, measure="probe_depth_in", value=1.0),
            Measured(**SILL, measure="probe_depth_in", value=None),
        ),
    ],
)
def test_an_observation_that_holds_nothing_any_more_is_none(made: Body, taken_back: Body) -> None:
    assert fold(entries_of(made, taken_back)).observations == {}


def test_the_same_photo_is_held_once() -> None:
    photo = PhotoAdded(**SILL, digest=DIGEST, original_name="a.jpg")

    assert seen_after(photo, photo.model_copy(update={"original_name": "b.jpg"})).photos == (
        Photo(DIGEST, "a.jpg"),
    )


def test_two_of_one_item_are_two_observations() -> None:
    second = answered().model_copy(update={"number": 2})

    assert [key.number for key in fold(entries_of(answered(), second)).observations] == [1, 2]


def test_the_air_measured_last_stands_last() -> None:
    first = AirMeasured(station="site", temp_f=40, humidity_pct=80)
    inside = AirMeasured(station="main.floor", temp_f=60, humidity_pct=50)
    later = AirMeasured(station="site", temp_f=45, humidity_pct=70)

    walk = fold(entries_of(first, inside, later))

    assert list(walk.air.items()) == [("main.floor", Air(60, 50)), ("site", Air(45, 70))]


def test_as_computed_takes_an_overruling_back() -> None:
    gut = Overruled(surface_id="main.ceiling", course="gut", reason="smells")
    back = Overruled(surface_id="main.ceiling", course="as computed")

    assert fold(entries_of(gut)).overrulings == {
        "main.ceiling": Overruling("main.ceiling", "gut", "smells")
    }
    assert fold(entries_of(gut, back)).overrulings == {}


def test_undo_passes_over_moves_and_redo_brings_back() -> None:
    entries = entries_of(answered(), MovedTo(station="site"), Undone(entry=1))

    assert fold(entries).observations == {}
    assert fold(entries).station == "site"
    assert next_undo(entries) is None
    assert next_redo(entries) == entries[0]

    redone = entries_of(*[entry.body for entry in entries], Redone(entry=1))
    assert KEY in fold(redone).observations
    assert next_undo(redone) == redone[0]
    assert next_redo(redone) is None


def test_undo_of_a_change_goes_back_to_the_earlier_building_and_the_first_one_stays() -> None:
    first, second = (BuildingSet(building=building(name)) for name in ("First", "Second"))

    changed = entries_of(first, second)
    undone = entries_of(first, second, Undone(entry=2))

    assert next_undo(changed) == changed[1]
    assert fold(undone).building == first.building
    assert next_undo(undone) is None


def test_a_batch_is_undone_and_redone_as_one() -> None:
    other = {**SILL, "number": 2}
    bodies = (
        Noted(**SILL, text="before"),
        Answered(**SILL, condition=Condition.WORN, batch="a"),
        Measured(**SILL, measure="probe_depth_in", value=1.5, batch="a"),
        Answered(**other, condition=Condition.SOUND, batch="b"),
    )

    one_undone = entries_of(*bodies, Undone(entry=4))
    assert len(fold(one_undone).observations) == 1
    undone = entries_of(*[entry.body for entry in one_undone], Undone(entry=3))
    seen = fold(undone).observations[KEY]
    assert (seen.note, seen.condition, seen.measures) == ("before", None, {})
    assert next_redo(undone) == undone[1]
    redone = entries_of(*[entry.body for entry in undone], Redone(entry=2))
    assert fold(redone).observations[KEY].condition is Condition.WORN
    assert fold(redone).observations[KEY].measures == {"probe_depth_in": 1.5}
    assert next_redo(redone) == redone[3]


@pytest.mark.parametrize("target", [1, 3, 99])
def test_an_undo_of_any_but_the_next_entry_has_no_effect(target: int) -> None:
    entries = entries_of(answered(), Noted(**SILL, text="x"), Undone(entry=target))

    assert fold(entries).observations[KEY].note == "x"
    assert next_undo(entries) == entries[1]


def test_what_was_imported_is_not_undone_piece_by_piece() -> None:
    entries = entries_of(answered(), Imported(walked_on=date(2026, 11, 25)))

    assert next_undo(entries) is None
    assert KEY in fold(entries).observations


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_a_number_without_end_is_no_entry(value: float) -> None:
    with pytest.raises(ValidationError):
        Measured(**SILL, measure="probe_depth_in", value=value)
    with pytest.raises(ValidationError):
        Zoned(**SILL, left_ft=value, bottom_ft=0, width_ft=6, height_ft=1)
