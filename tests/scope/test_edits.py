"""The owner's changes laid over the scope."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_money import BRACE, CAUTIONS, GRAVEL, ROOF, a_finding, a_plan, estimate_of, works

from leanto.decision.whole import whole_scope
from leanto.record.scope_edit import AddedLine, ScopeEdit
from leanto.scope.by_owner import is_offered_to_owner, refusal_by_owner
from leanto.scope.edits import Edits, edited
from leanto.scope.item import Scope
from leanto.scope.mark import Mark
from leanto.scope.work import Work

AT = datetime(2026, 6, 1, 12, tzinfo=UTC)
GRAVEL_LINE = "gravel@main.north.outside"
PLAN = a_plan(
    a_finding("main.north.outside", GRAVEL, id="gravel"),
    a_finding("main.roof.north", *ROOF, id="roof"),
    a_finding("main.floor", BRACE, id="brace"),
)
BEFORE = whole_scope(PLAN.findings, PLAN.decision, PLAN.book)


def _edited(*edits: ScopeEdit, added: tuple[AddedLine, ...] = ()) -> Scope:
    changes = Edits({edit.item_id: edit for edit in edits}, added)
    return edited(BEFORE, changes, PLAN.book.works, PLAN.book.surfaces, CAUTIONS)


def _ids(scope: Scope) -> set[str]:
    return {item.id for item in scope.items}


def test_no_change_leaves_the_scope_as_it_is() -> None:
    assert _edited() == BEFORE


def test_a_struck_line_leaves_the_scope_and_says_who_and_when() -> None:
    scope = _edited(ScopeEdit(GRAVEL_LINE, mark="struck", who="owner", at=AT))
    (struck,) = scope.struck
    assert GRAVEL_LINE not in _ids(scope)
    assert (struck.item.id, struck.item.mark, struck.who, struck.at) == (
        GRAVEL_LINE,
        Mark.STRUCK,
        "owner",
        AT,
    )
    assert scope.named(GRAVEL_LINE) == struck.item


def test_an_alternate_is_priced_apart_and_in_no_total() -> None:
    edit = ScopeEdit(GRAVEL_LINE, mark="alternate")
    scope = _edited(edit)
    assert (GRAVEL_LINE in _ids(scope), [item.id for item in scope.alternates]) == (
        False,
        [GRAVEL_LINE],
    )
    findings = PLAN.findings
    plain, apart = estimate_of(a_plan(*findings)), estimate_of(a_plan(*findings, edits=[edit]))
    (line,) = apart.alternates
    assert plain.total.likely - apart.total.likely == pytest.approx(line.total.likely)


def test_a_line_by_the_owner_stays_and_no_bidder_prices_it() -> None:
    scope = _edited(ScopeEdit(GRAVEL_LINE, mark="by owner"))
    assert [item.id for item in scope.by_owner] == [GRAVEL_LINE]
    assert GRAVEL_LINE in _ids(scope)
    assert GRAVEL_LINE not in {item.id for item in scope.for_bidders}


def test_what_an_owner_may_not_do_stays_with_a_firm_and_says_why() -> None:
    scope = _edited(ScopeEdit("brace@main.floor", mark="by owner"))
    item = scope.named("brace@main.floor")
    assert item is not None
    assert item.mark is Mark.PLAIN
    assert "An engineer" in scope.without_effect[0]


def test_the_owners_quantity_stands_in_place_of_ours_and_ours_beside_it() -> None:
    scope = _edited(ScopeEdit(GRAVEL_LINE, quantity=10.0, reason="measured it"))
    item, before = scope.named(GRAVEL_LINE), BEFORE.named(GRAVEL_LINE)
    assert item is not None
    assert before is not None
    assert (item.quantity, item.bought, item.computed_quantity) == (10, 10, before.quantity)
    assert item.quantity_reason == "measured it"
    assert "measured it" not in item.reason  # it stays with the owner


def test_a_note_goes_with_the_line() -> None:
    item = _edited(ScopeEdit(GRAVEL_LINE, note="Round stones.")).named(GRAVEL_LINE)
    assert item is not None
    assert item.note_to_bidders == "Round stones."


def test_an_added_line_says_so_and_can_be_changed_like_any_other() -> None:
    line = AddedLine(
        "gravel@main.south.outside+1", "gravel", "main.south.outside", "", 12.0, "By hand."
    )
    (item,) = [one for one in _edited(added=(line,)).items if one.added_by_hand]
    assert (item.place, item.quantity, item.reason) == (
        "Main room, south wall, outside",
        12.0,
        "added by hand",
    )
    assert item.note_to_bidders == "By hand."
    struck = _edited(ScopeEdit(line.id, mark="struck"), added=(line,))
    assert [one.item.id for one in struck.struck] == [line.id]


@pytest.mark.parametrize(
    ("work", "surface", "said"),
    [("gone", None, "no repair item gone"), ("gravel", "gone", "no longer part of the building")],
)
def test_an_added_line_that_has_no_place_any_more_is_left_out_and_named(
    work: str, surface: str | None, said: str
) -> None:
    line = AddedLine(f"{work}@x+1", work, surface, "", 1.0, "")
    scope = _edited(added=(line,))
    assert _ids(scope) == _ids(BEFORE)
    assert said in scope.without_effect[0]


def test_a_change_to_a_line_that_is_gone_waits_for_it() -> None:
    scope = _edited(ScopeEdit("gravel@main.east.outside", mark="struck"))
    assert scope.items == BEFORE.items
    assert "waits" in scope.without_effect[0]


@pytest.mark.parametrize(
    ("work", "refused", "offered"),
    [
        ("gravel", False, True),
        ("reroof", False, False),  # a ladder: may be marked, is not proposed
        ("brace", True, False),  # its caution names who must act
        ("wire-open", True, False),  # licensed
        ("protect", False, False),  # set-up
    ],
)
def test_what_an_owner_may_do(work: str, refused: bool, offered: bool) -> None:
    known = works()[work]
    assert isinstance(known, Work)
    assert bool(refusal_by_owner(known, CAUTIONS)) is refused
    assert is_offered_to_owner(known, CAUTIONS) is offered


_marks = st.dictionaries(
    st.sampled_from([item.id for item in BEFORE.items]),
    st.sampled_from(["plain", "struck", "by owner", "alternate"]),
    max_size=8,
)


@given(_marks)
def test_every_line_stands_in_exactly_one_place(marks: dict[str, str]) -> None:
    scope = _edited(*(ScopeEdit(item_id, mark=mark) for item_id, mark in marks.items()))
    places = [
        *(item.id for item in scope.items),
        *(item.id for item in scope.alternates),
        *(one.item.id for one in scope.struck),
    ]
    assert sorted(places) == sorted(item.id for item in BEFORE.items)


@given(_marks)
def test_no_mark_makes_the_scope_dearer(marks: dict[str, str]) -> None:
    edits = [ScopeEdit(item_id, mark=mark) for item_id, mark in marks.items()]
    after = estimate_of(a_plan(*PLAN.findings, edits=edits))
    assert after.total.likely <= estimate_of(PLAN).total.likely
