"""The real program in a real terminal, killed at any moment: what was shown as answered is kept."""

from __future__ import annotations

import os
import random
import re
from pathlib import Path

import pytest

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.job import Job
from leanto.record.entry import Answered, Noted
from leanto.record.observation import ObservationKey

if os.name == "nt":
    pytest.skip("there is no pseudo-terminal here", allow_module_level=True)

from screen import Program

KILLS = 200 if os.environ.get("LEANTO_NIGHTLY") else 25
WORKERS = 5
"""Kinds of luck, so that several cores can share the kills."""
KEYS = {"1": Condition.SOUND, "5": Condition.NOT_THERE}
_SHOWN = re.compile(r"answered (\d+) of (\d+)")


def answers_in(folder: Path) -> list[Condition]:
    with Job.open(folder) as job:
        assert not job.read_only
        return [e.body.condition for e in job.entries if isinstance(e.body, Answered)]


@pytest.mark.parametrize("luck", range(WORKERS))
def test_every_answer_that_was_shown_is_there_after_each_kill(
    tmp_path: Path, shed: Building, luck: int
) -> None:
    chance = random.Random(luck)
    folder = tmp_path / "job"
    Job.create(folder, shed).close()
    before: list[Condition] = []
    shown_in_all = 0
    for _ in range(KILLS // WORKERS):
        program = Program(["walk", str(folder)])
        pressed = ""
        try:
            program.wait_for(f"answered {len(before)} of ")
            for _ in range(chance.randrange(1, 9)):
                key = chance.choice("15")
                program.press("\r" + key)  # to the next open item, and the answer
                pressed += key
                program.look(chance.choice([0.0, 0.0, 0.02, 0.1, 0.4]))
            program.kill()
        finally:
            program.close()
        shown = _SHOWN.search(program.screen.text())
        assert shown is not None
        kept = answers_in(folder)
        acknowledged = int(shown[1]) - len(before)
        assert kept[: len(before)] == before
        new = kept[len(before) :]
        assert new == [KEYS[key] for key in pressed[: len(new)]]
        assert 0 <= acknowledged <= len(new)
        shown_in_all += acknowledged
        before = kept
    assert shown_in_all > 0


def test_a_note_that_was_shown_is_there_after_a_kill(tmp_path: Path, shed: Building) -> None:
    folder = tmp_path / "job"
    Job.create(folder, shed).close()
    program = Program(["walk", str(folder)])
    try:
        program.wait_for("answered 0 of ")
        program.press("n")
        program.wait_for("Enter keeps it")
        program.press("wet to the knee")
        program.wait_for("wet to the knee")
        program.press("\x13")  # Ctrl+S
        program.wait_for("Note wet to the knee")
        program.kill()
    finally:
        program.close()

    with Job.open(folder) as job:
        assert [e.body.text for e in job.entries if isinstance(e.body, Noted)] == [
            "wet to the knee"
        ]


def test_nothing_in_a_job_steers_the_terminal_of_the_walk(tmp_path: Path, shed: Building) -> None:
    evil = "\x1b]0;owned\x07\x1b[2J\x9b31m\u202eturned [bold red]loud[/]"
    folder = tmp_path / "job"
    blocks = tuple(block.model_copy(update={"name": evil[:40]}) for block in shed.blocks)
    wild = shed.model_copy(update={"name": evil, "owner": evil, "blocks": blocks})
    with Job.create(folder, wild, who=evil) as job:
        station = job.stations[0].id
        for item in job.items_at(station)[:3]:
            about = ObservationKey(station, item.id)
            job.record(Answered(station=station, item=about.item, condition=Condition.FAILED))
            job.record(Noted(station=station, item=about.item, text=evil))
    program = Program(["walk", str(folder)])
    try:
        program.wait_for("answered 3 of ")
        program.press("\x1b[A")  # up to the item with its note
        program.wait_for(r"Note \x1b]0;owned")
        shown = ""
        for key, said in (("\x1bOR", "by cause"), ("\x1bOS", "by place"), ("\x1b[15~", "order of")):
            program.press(key)  # F3, F4, F5
            program.wait_for(said)
            shown += program.screen.text()
        program.kill()
    finally:
        program.close()

    assert r"\x1b]" in shown
    for sent in (b"\x1b]0;owned", b"\x07\x1b[2J", "\x9b".encode(), "\u202e".encode()):
        assert sent not in program.screen.raw
