"""The process is told to stop, or its terminal goes away: the screen is put back, all is kept."""

from __future__ import annotations

import os
import select
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.job import Job

if os.name == "nt":
    pytest.skip("there are no such signals here", allow_module_level=True)

import fcntl
import pty
import struct
import termios

PATIENCE_S = 60
LEFT_OTHER_SCREEN = b"\x1b[?1049l"
# The terminal must be the process's own, or closing it sends no signal.
START = """
import fcntl, os, sys, termios
from pathlib import Path
os.setsid()
fcntl.ioctl(0, termios.TIOCSCTTY, 0)
from leanto.cli.walk import walk
from leanto.job import Job
with Job.open(Path(sys.argv[1])) as job:
    sys.exit(walk(job))
"""

# Of another session's terminal the process hears nothing but its end.
START_BORROWED = START.replace("os.setsid()", "").replace(
    "fcntl.ioctl(0, termios.TIOCSCTTY, 0)", ""
)


def read_until(terminal: int, wanted: bytes) -> bytes:
    """What the screen was sent up to the wanted bytes."""
    read, end = b"", time.monotonic() + PATIENCE_S
    while wanted not in read and time.monotonic() < end:
        if select.select([terminal], [], [], 0.2)[0]:
            try:
                read += os.read(terminal, 65536)
            except OSError:  # the other end is closed
                break
    return read


@pytest.mark.parametrize(
    ("start", "number", "code"),
    [
        (START, signal.SIGTERM, 143),
        (START, signal.SIGHUP, 129),
        (START, None, 129),
        (START_BORROWED, None, 129),
    ],
    ids=["told to stop", "hung up", "terminal closed", "borrowed terminal closed"],
)
def test_an_end_from_outside_is_an_orderly_one(
    tmp_path: Path, shed: Building, start: str, number: signal.Signals | None, code: int
) -> None:
    Job.create(tmp_path / "job", shed).close()
    terminal, slave = pty.openpty()
    fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
    source = Path(__file__).resolve().parents[2] / "inspect"
    process = subprocess.Popen(
        [sys.executable, "-c", start, str(tmp_path / "job")],
        stdin=slave,
        stdout=slave,
        stderr=slave,
        env={**os.environ, "PYTHONPATH": str(source), "TERM": "xterm-256color"},
    )
    os.close(slave)
    try:
        assert b"Site and drainage" in read_until(terminal, b"answered 0 of")
        os.write(terminal, b"1")
        assert b"SOUND" in read_until(terminal, b"SOUND")
        if number is None:
            os.close(terminal)
        else:
            process.send_signal(number)
            assert LEFT_OTHER_SCREEN in read_until(terminal, LEFT_OTHER_SCREEN)
        assert process.wait(PATIENCE_S) == code
    finally:
        if process.poll() is None:
            process.kill()
            process.wait()
        if number is not None:
            os.close(terminal)
    with Job.open(tmp_path / "job") as job:
        (seen,) = job.walk.observations.values()
        assert seen.condition is Condition.SOUND
        assert not job.read_only
