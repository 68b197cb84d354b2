"""What holds for any record: undo, redo, and the exported document."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from drawn_entries import AT, bodies, record, steps
from hypothesis import given, settings
from hypothesis import strategies as st

from leanto.record.document import parse_export
from leanto.record.entry import (
    AboutObservation,
    Body,
    Entry,
    MovedTo,
)
from leanto.record.exchange import bodies_of, export_text
from leanto.record.fold import fold, folded_on, next_redo, next_undo
from leanto.record.observation import ObservationKey
from leanto.record.walk import Walk


def provenance(walk: Walk) -> dict[str, tuple[int, ...]]:
    return {str(key): seen.entries for key, seen in walk.observations.items()}


@given(steps)
def test_undoing_all_and_redoing_all_gives_the_same_walk(steps: list[Body | str]) -> None:
    entries = record(steps)
    before = fold(entries)

    undos = 0
    while next_undo(entries):
        entries = record(["undo"], entries)
        undos += 1
    undone = fold(entries)
    entries = record(["redo"] * undos, entries)

    assert not (undone.observations or undone.air or undone.overrulings)
    assert fold(entries) == before
    assert provenance(fold(entries)) == provenance(before)


@given(steps, bodies)
def test_an_undone_entry_leaves_no_trace_in_the_walk(steps: list[Body | str], body: Body) -> None:
    before = record(steps)
    after = record([body], before)

    target = next_undo(after)

    if target is not None and target.id == after[-1].id:
        assert fold(record(["undo"], after)) == fold(before)


@given(steps, bodies)
def test_a_new_entry_drops_what_could_be_redone_and_a_move_does_not(
    steps: list[Body | str], body: Body
) -> None:
    before = record([*steps, "undo"])

    after = record([body], before)

    if isinstance(body, MovedTo):
        assert next_redo(after) == next_redo(before)
        assert next_undo(after) == next_undo(before)
    else:
        assert next_redo(after) is None


@given(steps)
def test_every_observation_names_the_live_entries_that_made_it(steps: list[Body | str]) -> None:
    entries = record(steps)

    walk = fold(entries)

    for key, seen in walk.observations.items():
        made = [entry for entry in entries if entry.id in seen.entries]
        assert [entry.id for entry in made] == list(seen.entries) != []
        again = fold([entry.model_copy(update={"id": n}) for n, entry in enumerate(made, 1)])
        assert again.observations == {key: seen}


@given(steps, st.one_of(st.none(), st.dates()))
@settings(max_examples=200)
def test_a_walk_comes_back_from_its_document(
    steps: list[Body | str], walked_on: date | None
) -> None:
    walk = fold(record(steps))

    text = export_text(walk, job="shed", walked_on=walked_on)
    document = parse_export(text, "shed.yaml")
    back = fold(record(bodies_of(document, "shed.yaml")))

    assert back == walk
    assert list(back.air) == list(walk.air)
    assert (document.job, document.walked_on) == ("shed", walked_on)
    assert export_text(back, job="shed", walked_on=walked_on) == text


@given(st.lists(bodies, max_size=20))
def test_folding_on_by_one_entry_is_folding_anew(made: Sequence[Body]) -> None:
    """Invariant 4: the walk is a pure fold, however it is reached."""
    entries = [Entry(id=n, at=AT, who="a", body=body) for n, body in enumerate(made, start=1)]
    known: set[ObservationKey] = set()
    for count, entry in enumerate(entries):
        walk = folded_on(fold(entries[:count]), entry, known)
        whole = fold(entries[: count + 1])
        if walk is not None:
            assert walk == whole
            assert {k: o.entries for k, o in walk.observations.items()} == {
                k: o.entries for k, o in whole.observations.items()
            }
        if isinstance(entry.body, AboutObservation):
            known.add(ObservationKey(entry.body.station, entry.body.item, entry.body.number))
