"""A process is killed while it writes; what it was told is kept, is kept."""

from __future__ import annotations

import os
import random
import signal
import sqlite3
import time
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from leanto.record.entry import Noted
from leanto.record.store import Store

KILLS = 200 if os.environ.get("LEANTO_NIGHTLY") else 25


@pytest.mark.skipif(not hasattr(os, "fork"), reason="needs fork")
@pytest.mark.filterwarnings("ignore:This process:DeprecationWarning")
def test_every_acknowledged_entry_is_there_after_each_kill(tmp_path: Path) -> None:
    path = tmp_path / "record.db"
    Store.create(path).close()
    moments = random.Random(1938)
    acknowledged: list[int] = []

    for _ in range(KILLS):
        answers, after_s = moments.randrange(4), moments.uniform(0.0, 0.01)
        acknowledged += killed_while_writing(path, answers, after_s)
        with closing(sqlite3.connect(path)) as raw:
            assert raw.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        with Store.open(path) as store:
            assert not store.read_only
            read = store.entries()
        assert [entry.id for entry in read] == list(range(1, len(read) + 1))
        assert set(acknowledged) <= {entry.id for entry in read}
        assert all(f"answer {entry.id}" == entry.body.text for entry in read)  # type: ignore[union-attr]

    assert len(acknowledged) > KILLS
    assert sorted(set(acknowledged)) == acknowledged


def killed_while_writing(path: Path, answers: int, after_s: float) -> list[int]:
    """The ids that a child was given by ``append`` before it was killed.

    It is left to write so many answers and then some time more: how many that is, no machine knows.
    """
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        try:
            os.close(reading)
            store = Store.open(path)
            number = len(store.entries())
            os.write(writing, b"open\n")
            while True:
                number += 1
                body = Noted(station="site", item="sill", text=f"answer {number}")
                entry = store.append(body, at=datetime.now(UTC), who="child")
                os.write(writing, b"%d\n" % entry.id)
        finally:
            os._exit(1)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        assert pipe.readline() == b"open\n"
        told = [int(pipe.readline()) for _ in range(answers)]
        time.sleep(after_s)
        os.kill(child, signal.SIGKILL)
        _, status = os.waitpid(child, 0)
        assert os.WTERMSIG(status) == signal.SIGKILL
        return [*told, *(int(line) for line in pipe.read().splitlines())]
