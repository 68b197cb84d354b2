"""What may wait, and what never does."""

from __future__ import annotations

from datetime import date

import pytest
from small_money import AS_OF, BRACE, GRAVEL, NOTHING, ROOF, a_finding, a_plan

from leanto.decision.waiting import RISKS, Waiting, may_wait
from leanto.record.scope_edit import ScopeEdit
from leanto.rules.finding import Finding
from leanto.rules.model import Urgency, WorkCall
from leanto.scope.work import Phase

NORTH_ROOF, SOUTH_ROOF = "main.roof.north", "main.roof.south"


def _waiting(*findings: Finding, edits: tuple[ScopeEdit, ...] = ()) -> tuple[Waiting, ...]:
    plan = a_plan(*findings, edits=edits)
    return tuple(
        group
        for group in may_wait(plan.items(NOTHING), findings, AS_OF)
        if any(item.findings for item in group.items)
    )


def test_a_roof_is_not_stripped_without_a_new_one() -> None:
    (group,) = _waiting(a_finding(NORTH_ROOF, *ROOF))
    assert {item.work.id for item in group.items} == {"strip-roof", "reroof"}
    assert group.risk == RISKS[Phase.WEATHER_SHELL]


def test_two_slopes_wait_apart() -> None:
    groups = _waiting(
        a_finding(NORTH_ROOF, *ROOF, id="one"), a_finding(SOUTH_ROOF, *ROOF, id="two")
    )
    assert [{item.surface_id for item in group.items} for group in groups] == [
        {NORTH_ROOF},
        {SOUTH_ROOF},
    ]


@pytest.mark.parametrize(
    ("changes", "waits"),
    [
        ({"urgency": Urgency.WITH_THE_WORK}, True),
        ({"urgency": Urgency.KEEP_WATCHING}, True),
        ({"urgency": Urgency.BEFORE_CLOSING_IN}, False),
        ({"urgency": Urgency.NOW}, False),
        ({"urgency": Urgency.KEEP_WATCHING, "danger": True}, False),
    ],
)
def test_only_patient_findings_wait(changes: dict[str, object], waits: bool) -> None:
    assert bool(_waiting(a_finding(NORTH_ROOF, *ROOF, **changes))) is waits


def test_work_that_an_urgent_finding_calls_for_too_does_not_wait() -> None:
    patient = a_finding(NORTH_ROOF, *ROOF, id="patient")
    urgent = a_finding(NORTH_ROOF, ROOF[1], id="urgent", urgency=Urgency.NOW)
    waiting = _waiting(patient, urgent)
    assert {item.work.id for group in waiting for item in group.items} == {"strip-roof"}


def test_two_findings_told_under_one_id_both_count() -> None:
    told = a_finding(NORTH_ROOF, *ROOF)
    behind = a_finding(NORTH_ROOF, ROOF[1], urgency=Urgency.NOW)
    assert told.id == behind.id
    assert _waiting(told, behind) == ()


@pytest.mark.parametrize("work", ["wire-open", "protect"])
def test_licensed_trades_and_set_up_never_wait(work: str) -> None:
    assert _waiting(a_finding("main.floor", WorkCall(work=work, quantity="1"))) == ()


def test_what_the_owner_does_alone_is_not_put_off_for_them() -> None:
    gravel = a_finding("main.north.outside", GRAVEL)
    edit = ScopeEdit("gravel@main.north.outside", mark="by owner")
    assert len(_waiting(gravel)) == 1
    assert _waiting(gravel, edits=(edit,)) == ()


def test_when_to_look_again_and_at_what() -> None:
    soon = a_finding(NORTH_ROOF, *ROOF, watch="After rain.")
    late = a_finding(SOUTH_ROOF, *ROOF, id="late", urgency=Urgency.KEEP_WATCHING)
    first, second = _waiting(soon, late)
    assert (first.look_again, first.watch) == (date(2026, 11, 30), "After rain.")
    assert (second.look_again, second.watch) == (date(2027, 6, 1), "")


def test_braces_wait_when_nobody_is_in_danger() -> None:
    (group,) = _waiting(a_finding("main.north.outside", BRACE))
    assert group.risk == RISKS[Phase.STRUCTURE]
