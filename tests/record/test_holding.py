"""Entries that the disk refuses are held in memory, and brought to it as soon as it takes them."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

from leanto.errors import NotKept
from leanto.record.entry import Noted
from leanto.record.journal import Journal
from leanto.record.store import Store

Refuse = Callable[[bool], None]


def at() -> datetime:
    return datetime(2026, 11, 25, 12, tzinfo=UTC)


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "record.db"


@pytest.fixture
def store(path: Path) -> Iterator[Store]:
    with Store.create(path) as store:
        yield store


@pytest.fixture(params=["full", "read-only"])
def refuse(request: pytest.FixtureRequest, store: Store, path: Path) -> Iterator[Refuse]:
    """Makes the disk refuse what is written, or take it again."""
    resource = pytest.importorskip("resource")
    soft, hard = resource.getrlimit(resource.RLIMIT_FSIZE)

    def full(on: bool) -> None:
        size = path.with_name("record.db-wal").stat().st_size
        resource.setrlimit(resource.RLIMIT_FSIZE, (size if on else soft, hard))

    def read_only(on: bool) -> None:
        store._connection.execute(f"PRAGMA query_only = {int(on)}")

    yield full if request.param == "full" else read_only
    resource.setrlimit(resource.RLIMIT_FSIZE, (soft, hard))


def note(text: str) -> Noted:
    return Noted(station="main.south.outside", item="sill", text=text)


def texts(path: Path) -> list[str]:
    with Store.open(path) as store:
        return [entry.body.text for entry in store.entries() if isinstance(entry.body, Noted)]


def test_what_is_refused_is_held_in_order_and_kept_later(
    store: Store, refuse: Refuse, path: Path
) -> None:
    journal = Journal(store, at, "me")
    journal.append(note("before"))
    journal.holds = True
    refuse(True)
    journal.append(note("one"))
    journal.append_together([note("two"), note("three")])

    assert [entry.id for entry in journal.held] == [2, 3, 4]
    assert journal.held_because is not None
    assert "disk is full" in str(journal.held_because) or "can be written" in str(
        journal.held_because
    )
    assert next(iter(journal.walk.observations.values())).note == "three"
    with pytest.raises(NotKept):
        journal.keep_held()
    assert len(journal.held) == 3
    refuse(False)
    journal.append(note("after"))

    assert journal.held == ()
    assert journal.held_because is None
    journal.close()
    assert texts(path) == ["before", "one", "two", "three", "after"]


def test_an_undo_of_what_is_held_is_held_too(store: Store, refuse: Refuse, path: Path) -> None:
    journal = Journal(store, at, "me")
    journal.append(note("before"))
    journal.holds = True
    refuse(True)
    journal.append(note("one"))
    journal.undo()
    assert next(iter(journal.walk.observations.values())).note == "before"
    refuse(False)
    journal.close()  # tries once more

    with Store.open(path) as again:
        assert next(iter(Journal(again, at, "me").walk.observations.values())).note == "before"
        assert len(again.entries()) == 3


def test_without_being_asked_to_hold_it_raises_and_forgets(store: Store, refuse: Refuse) -> None:
    journal = Journal(store, at, "me")
    journal.append(note("before"))
    refuse(True)
    with pytest.raises(NotKept):
        journal.append(note("one"))

    assert journal.held == ()
    assert len(journal.entries) == 1


def test_the_journal_goes_on_in_another_record(
    store: Store, refuse: Refuse, tmp_path: Path, path: Path
) -> None:
    journal = Journal(store, at, "me")
    for number in range(20):
        journal.append(note(str(number)))
    journal.holds = True
    refuse(True)
    journal.append(note("held"))
    elsewhere = tmp_path / "new" / "record.db"
    elsewhere.parent.mkdir()
    journal.go_on_in(Store.create(elsewhere, journal.entries))
    journal.append(note("there"))
    assert journal.held == ()
    journal.close()

    assert texts(elsewhere)[-2:] == ["held", "there"]
    assert texts(path)[-1] == "19"


def test_entries_that_do_not_follow_the_last_one_are_not_added(store: Store, path: Path) -> None:
    entry = Journal(store, at, "me").append(note("one"))
    with pytest.raises(ValueError, match="entry 1 cannot be added as number 2"):
        store.add([entry])
    store.close()
    assert texts(path) == ["one"]
