"""Scope edits in the record: folded, undone, exported and read back."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter, ValidationError

from leanto.errors import InputProblems
from leanto.record.document import parse_export
from leanto.record.entry import (
    Body,
    Entry,
    NoteToBidders,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
    Undone,
)
from leanto.record.exchange import bodies_of, export_text
from leanto.record.fold import fold, next_undo
from leanto.record.scope_edit import AddedLine, ScopeEdit

AT = datetime(2026, 6, 1, 12, tzinfo=UTC)
LINE = "patch@main.north.inside"


def entries_of(*bodies: Body) -> list[Entry]:
    return [Entry(id=n, at=AT, who="owner", body=body) for n, body in enumerate(bodies, 1)]


def test_changes_to_one_line_add_up() -> None:
    walk = fold(
        entries_of(
            ScopeMarked(item_id=LINE, mark="by owner"),
            ScopeQuantity(item_id=LINE, quantity=12.5, reason="measured"),
            NoteToBidders(item_id=LINE, text="Match the old boards."),
        )
    )
    edit = ScopeEdit(LINE, "by owner", 12.5, "measured", "Match the old boards.")
    assert walk.scope_edits == {LINE: edit}
    assert (walk.scope_edits[LINE].who, walk.scope_edits[LINE].at) == ("owner", AT)


@pytest.mark.parametrize(
    "back",
    [
        [ScopeMarked(item_id=LINE, mark="plain"), ScopeQuantity(item_id=LINE, quantity=None)],
        [Undone(entry=2), Undone(entry=1)],
    ],
    ids=["taken back", "undone"],
)
def test_what_is_taken_back_is_no_change(back: list[Body]) -> None:
    first: list[Body] = [
        ScopeMarked(item_id=LINE, mark="struck"),
        ScopeQuantity(item_id=LINE, quantity=3, reason="less"),
    ]
    assert fold(entries_of(*first, *back)).scope_edits == {}


def test_added_lines_are_numbered_in_their_order() -> None:
    bodies = [
        ScopeAdded(work="patch", surface_id="main.north.inside", quantity=4),
        ScopeAdded(work="paint", place="Porch", quantity=2, note="Two coats."),
    ]
    entries = entries_of(*bodies)
    assert fold(entries).added_lines == (
        AddedLine("patch@main.north.inside+1", "patch", "main.north.inside", "", 4, ""),
        AddedLine("paint@building+2", "paint", None, "Porch", 2, "Two coats."),
    )
    assert next_undo(entries) == entries[-1]


_ids = st.sampled_from([LINE, "reroof@main.roof.north", "paint@building+1"])
_texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=40)
_quantities = st.floats(0.1, 10_000)
_bodies: st.SearchStrategy[Body] = st.one_of(
    st.builds(
        ScopeMarked,
        item_id=_ids,
        mark=st.sampled_from(["plain", "struck", "by owner", "alternate"]),
    ),
    st.builds(ScopeQuantity, item_id=_ids, quantity=st.none() | _quantities, reason=_texts),
    st.builds(NoteToBidders, item_id=_ids, text=_texts),
    st.builds(
        ScopeAdded,
        work=st.sampled_from(["patch", "paint"]),
        surface_id=st.none() | st.just("main.north.inside"),
        place=_texts,
        quantity=_quantities,
        note=_texts,
    ),
)


@given(st.lists(_bodies, max_size=12))
def test_an_export_reads_back_as_the_same_walk(bodies: list[Body]) -> None:
    walk = fold(entries_of(*bodies))
    document = parse_export(export_text(walk, job="job", walked_on=None), "job.yaml")
    assert fold(entries_of(*bodies_of(document, "job.yaml"))) == walk


@given(_bodies)
def test_an_entry_reads_back_from_json(body: Body) -> None:
    entry = Entry(id=1, at=AT, who="owner", body=body)
    adapter: TypeAdapter[Entry] = TypeAdapter(Entry)
    assert adapter.validate_json(adapter.dump_json(entry)) == entry


@pytest.mark.parametrize("quantity", [0, -1, float("nan"), float("inf"), 2e6])
def test_a_quantity_that_cannot_be_is_refused(quantity: float) -> None:
    with pytest.raises(ValidationError):
        ScopeQuantity(item_id=LINE, quantity=quantity)


def test_a_document_with_a_reason_and_no_quantity_is_refused() -> None:
    text = f'leanto_export: 1\nscope_edits:\n  "{LINE}": {{reason: because}}\n'
    with pytest.raises(InputProblems, match="a reason needs a quantity"):
        parse_export(text, "job.yaml")
