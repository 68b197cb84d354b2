"""Scope changes through the job: held against the scope as it stands."""

from __future__ import annotations

import pytest

from leanto.checklist.condition import Condition
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.record.entry import (
    Answered,
    Body,
    NoteToBidders,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
    Zoned,
)
from leanto.scope.mark import Mark

SILL = {"station": "main.south.outside", "item": "sill"}


@pytest.fixture
def line(job: Job) -> str:
    """A line that the owner may do: a patch of boards, in a scope that a rotten sill calls for."""
    job.record(Answered(**SILL, condition=Condition.FAILED))
    job.record(Zoned(**SILL, left_ft=1, bottom_ft=0, width_ft=4, height_ft=2))
    items = job.assess().scope.items
    assert items
    return items[-1].id


def test_a_line_is_struck_and_comes_back_with_undo(job: Job, line: str) -> None:
    total = job.assess().estimate.total.likely
    job.record(ScopeMarked(item_id=line, mark="struck"))
    scope = job.assess().scope
    assert line not in {item.id for item in scope.items}
    assert (scope.struck[0].who, scope.struck[0].at) == ("tester", job.entries[-1].at)
    assert job.assess().estimate.total.likely < total
    job.undo()
    assert job.assess().estimate.total.likely == total


def test_a_quantity_of_ones_own_is_priced_and_kept_when_the_job_is_opened_again(
    job: Job, line: str
) -> None:
    before = job.assess().scope.named(line)
    assert before is not None
    job.record(ScopeQuantity(item_id=line, quantity=before.quantity * 2, reason="measured"))
    job.record(NoteToBidders(item_id=line, text="Use old boards."))
    job.close()
    with Job.open(job.places.folder) as again:
        item = again.assess().scope.named(line)
        assert item is not None
        assert (item.computed_quantity, item.note_to_bidders) == (
            before.quantity,
            "Use old boards.",
        )


def test_a_line_is_added_and_marked(job: Job, line: str) -> None:
    work = line.partition("@")[0]
    job.record(ScopeAdded(work=work, surface_id="main.east.inside", quantity=6, note="Here too."))
    added = f"{work}@main.east.inside+1"
    assert job.assess().scope.named(added) is not None
    job.record(ScopeMarked(item_id=added, mark="alternate"))
    assert [item.id for item in job.assess().scope.alternates] == [added]
    job.record(ScopeMarked(item_id=added, mark="plain"))
    item = job.assess().scope.named(added)
    assert item is not None
    assert item.mark is Mark.PLAIN


@pytest.mark.parametrize(
    ("body", "said"),
    [
        (ScopeMarked(item_id="no-work@main", mark="struck"), 'no line "no-work@main"'),
        (ScopeQuantity(item_id="no-work@main", quantity=2, reason="x"), "no line"),
        (NoteToBidders(item_id="no-work@main", text="x"), "no line"),
        (ScopeAdded(work="no-work", quantity=1), 'no repair item "no-work"'),
        (ScopeAdded(work="repair-behind-lining", surface_id="gone", quantity=1), "no surface"),
    ],
)
def test_a_change_to_nothing_is_refused_and_not_recorded(
    job: Job, line: str, body: Body, said: str
) -> None:
    count = len(job.entries)
    with pytest.raises(LeantoError, match=said):
        job.record(body)
    assert len(job.entries) == count


def test_a_quantity_needs_a_reason(job: Job, line: str) -> None:
    with pytest.raises(LeantoError, match="needs a reason"):
        job.record(ScopeQuantity(item_id=line, quantity=2))


def test_an_owner_is_refused_licensed_work_in_plain_words(job: Job, line: str) -> None:
    electric = next(
        work
        for work in job.library.works.values()
        if work.trade.is_licensed and work.unit.value != "each"
    )
    job.record(ScopeAdded(work=electric.id, quantity=1))
    added = f"{electric.id}@building+1"
    with pytest.raises(LeantoError, match=f"licensed {electric.trade}"):
        job.record(ScopeMarked(item_id=added, mark="by owner"))


def test_pieces_are_counted_whole(job: Job, line: str) -> None:
    piece = next(work for work in job.library.works.values() if work.unit.value == "each")
    with pytest.raises(LeantoError, match="whole pieces"):
        job.record(ScopeAdded(work=piece.id, quantity=1.5))
