"""Two records of one job, joined."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Literal

from drawn_entries import AT, bodies, record
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.quantities import System
from leanto.record.conflict import conflicts, settled
from leanto.record.entry import (
    Entry,
    Noted,
    Redone,
    ScopeAdded,
    ScopeMarked,
    Undone,
    UnitsSet,
)
from leanto.record.fold import fold, next_undo
from leanto.record.merge import merged
from leanto.record.walk import Walk

lines = st.one_of(
    st.builds(ScopeAdded, work=st.sampled_from(["patch", "dig"]), quantity=st.floats(1, 9)),
    st.builds(
        ScopeMarked,
        item_id=st.sampled_from(["patch@building+1", "dig@building+2", "sill@main"]),
        mark=st.sampled_from(["struck", "plain"]),
    ),
    st.builds(UnitsSet, system=st.sampled_from(System)),
)
batches = st.lists(
    st.builds(
        Noted,
        station=st.just("site"),
        item=st.sampled_from(["sill", "stain"]),
        text=st.sampled_from("xy"),
    ),
    min_size=2,
    max_size=3,
)
steps = st.lists(st.one_of(bodies, lines, st.sampled_from(["undo", "redo", "undo"])), max_size=6)
HOUR = timedelta(hours=1)
clocks = st.lists(st.integers(-2, 4), min_size=30, max_size=30)
"""Ticks from entry to entry; some stand still, some go back."""


@st.composite
def walks(draw: st.DrawFn, start: Sequence[Entry] = ()) -> list[Entry]:
    """A record as somebody leaves it who goes on from ``start``."""
    walked = record(draw(steps), start)
    if draw(st.booleans()):
        mark = {"batch": f"b{draw(st.integers(0, 1))}"}
        for body in draw(batches):
            body = body.model_copy(update=mark)
            walked.append(Entry(id=len(walked) + 1, at=AT, who="tester", body=body))
        walked = record(draw(st.lists(st.sampled_from(["undo", "redo"]), max_size=3)), walked)
    ticks, at, who = draw(clocks), AT, draw(st.sampled_from(["ann", "bo"]))
    for index in range(len(start), len(walked)):
        at += timedelta(microseconds=ticks[index % 30])
        walked[index] = walked[index].model_copy(update={"at": at, "who": who})
    return walked


@st.composite
def pairs(draw: st.DrawFn, count: int = 2) -> tuple[list[Entry], ...]:
    """Records of copies of one job, each walked on by itself."""
    start = draw(walks())
    return tuple(draw(walks(start)) for _ in range(count))


@given(walks())
def test_a_merged_record_tells_what_was_told_and_leads_to_the_same_walk(
    walked: list[Entry],
) -> None:
    alone = merged(walked, walked)
    assert _plain(alone) == _plain(walked)
    assert merged(alone, alone) == alone
    assert _said(fold(alone)) == _said(fold(walked))
    assert _next(alone) == _next(walked)
    assert [entry.id for entry in alone] == list(range(1, len(alone) + 1))


@given(pairs())
@settings(max_examples=60)
def test_merging_is_commutative_and_idempotent(pair: tuple[list[Entry], list[Entry]]) -> None:
    one, other = pair
    both = merged(one, other)
    assert both == merged(other, one)
    assert merged(both, one) == both
    assert merged(other, both) == both
    assert merged(both, both) == both


@given(pairs(count=3))
@settings(max_examples=60)
def test_merging_is_associative(three: tuple[list[Entry], ...]) -> None:
    one, other, third = three
    assert merged(merged(one, other), third) == merged(one, merged(other, third))


@given(pairs())
def test_no_entry_is_dropped(pair: tuple[list[Entry], list[Entry]]) -> None:
    both = _plain(merged(*pair))
    for walked in pair:
        for said, count in _plain(merged(walked, walked)).items():
            assert both.get(said, 0) >= 1, (said, count)


@given(pairs(), st.sampled_from(["a", "b"]))
@settings(max_examples=60)
def test_what_is_settled_stays_settled_with_either_side(
    pair: tuple[list[Entry], list[Entry]], choice: Literal["a", "b"]
) -> None:
    one, other = pair
    found = conflicts(one, other)
    assert {c.where for c in found} == {c.where for c in conflicts(other, one)}
    entries = list(merged(one, other))
    for conflict in found:
        for body in settled(conflict, choice, one, other, fold(entries)):
            entries.append(Entry(id=len(entries) + 1, at=AT + HOUR, who="cy", body=body))
    assert conflicts(entries, one) == conflicts(other, entries) == ()
    chosen = fold(one if choice == "a" else other)
    for key in (conflict.key for conflict in found if conflict.key is not None):
        if key in chosen.observations:
            assert fold(entries).observations[key].measures == chosen.observations[key].measures
            assert fold(entries).observations[key].condition == (
                chosen.observations[key].condition
                or fold(merged(one, other)).observations[key].condition
            )


def _said(walk: Walk) -> Walk:
    """Without edits of added lines that never were: they say nothing."""
    lines = {line.id for line in walk.added_lines}
    edits = {id_: edit for id_, edit in walk.scope_edits.items() if "+" not in id_ or id_ in lines}
    return replace(walk, scope_edits=edits)


def _next(entries: Sequence[Entry]) -> str:
    """What undo would take next."""
    found = next_undo(entries)
    return found.body.model_dump_json(exclude={"batch", "number", "item_id"}) if found else ""


def _plain(entries: Sequence[Entry]) -> dict[tuple[str, str], int]:
    """How often each thing was said, by whom; numbers of entries and lines left out."""
    counted: dict[tuple[str, str], int] = {}
    for entry in entries:
        if isinstance(entry.body, Undone | Redone):
            continue
        body = entry.body
        said = body.model_dump_json(exclude={"batch", "number", "item_id"})
        counted[(entry.who, said)] = counted.get((entry.who, said), 0) + 1
    return counted
