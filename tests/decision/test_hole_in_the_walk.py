"""A hole recorded in the walk of an invented building: chance, answer and scope follow at once."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime, time
from pathlib import Path

import pytest
from invented import invented

from leanto.checklist.condition import Condition
from leanto.decision.model import Course, SurfaceDecision
from leanto.demo.walk import Picture, steps_of
from leanto.job import Job
from leanto.record.entry import Answered, Zoned

CEILING = "garage.ceiling"
HOLE = {"station": CEILING, "item": "test-hole"}


@pytest.fixture
def garage(tmp_path: Path) -> Iterator[Job]:
    made = invented("slab-garage")
    at = datetime.combine(made.written.date, time(12), tzinfo=UTC)
    with Job.create(tmp_path / "garage", made.building, clock=lambda: at, who="test") as job:
        for step in steps_of(made.written):
            if not isinstance(step, Picture):
                job.record(step)
        yield job


def _ceiling(job: Job) -> SurfaceDecision:
    surfaces = job.assess().decision.surfaces
    return next(one for one in surfaces if one.surface_id == CEILING)


def _opened(job: Job, condition: Condition) -> None:
    job.record(Answered(**HOLE, condition=condition))
    job.record(Zoned(**HOLE, left_ft=2, bottom_ft=2, width_ft=1, height_ft=1))


def test_a_sound_hole_leaves_the_chance_that_was_planned_and_the_answer_stands(
    garage: Job,
) -> None:
    before = _ceiling(garage)
    assert before.hole is not None
    assert before.hole.pays
    assert (before.hole.now, before.hole.if_bad) == (Course.KEEP, Course.GUT)
    _opened(garage, Condition.SOUND)
    after = _ceiling(garage)
    assert after.unseen.p == pytest.approx(before.hole.after_clean)
    assert after.unseen.p < before.unseen.p
    assert after.computed is before.hole.if_clean
    assert after.keep.expected < before.keep.expected


def test_a_hole_that_shows_damage_turns_the_answer_and_undo_turns_it_back(garage: Job) -> None:
    before = _ceiling(garage)
    assert before.hole is not None
    _opened(garage, Condition.FAILED)
    after = _ceiling(garage)
    assert (after.unseen.p, after.unseen.a) == (1.0, before.unseen.a + 1)
    assert after.computed is before.hole.if_bad is Course.GUT
    assert after.hole is None  # damage was seen: there is nothing left to find out by one hole
    assert after.damaged_sqft > 0
    works = {item.work.id for item in garage.assess().scope.items}
    assert {"strip-gypsum", "repair-behind-lining"} <= works
    garage.undo()
    garage.undo()
    assert _ceiling(garage).unseen == before.unseen
    assert _ceiling(garage).computed is Course.KEEP


def test_marks_on_hard_wood_speak_for_damage_but_do_not_prove_it(garage: Job) -> None:
    before = _ceiling(garage)
    _opened(garage, Condition.WORN)
    after = _ceiling(garage)
    assert before.unseen.p < after.unseen.p < 1


@pytest.mark.parametrize("condition", [Condition.NOT_THERE, Condition.NO_ACCESS])
def test_a_hole_that_was_not_made_tells_nothing(garage: Job, condition: Condition) -> None:
    before = _ceiling(garage)
    reason = "the tests are not back" if condition is Condition.NO_ACCESS else ""
    garage.record(Answered(**HOLE, condition=condition, reason=reason))
    assert _ceiling(garage).unseen == before.unseen


def test_a_surface_with_nothing_but_no_access_is_not_reached(garage: Job) -> None:
    east = "garage.east.inside"
    one = next(s for s in garage.assess().decision.surfaces if s.surface_id == east)
    assert one.unknown == "not walked"
    garage.record(
        Answered(station=east, item="wall-stain", condition=Condition.NO_ACCESS, reason="shelves")
    )
    one = next(s for s in garage.assess().decision.surfaces if s.surface_id == east)
    assert one.unknown == "not reached"
