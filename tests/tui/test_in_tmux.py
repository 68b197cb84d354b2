"""The walk in a real terminal of 80x24: keys are sent, the screen is read, the record is opened."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.job import Job

TMUX = shutil.which("tmux")
SOURCE = Path(__file__).resolve().parents[2] / "inspect"
PATIENCE_S = 90

pytestmark = pytest.mark.skipif(TMUX is None, reason="tmux is not installed")


class Terminal:
    """One tmux server of its own, with one window of 80x24."""

    def __init__(self, folder: Path, job: Path, environ: dict[str, str]) -> None:
        assert TMUX is not None
        # The socket lies in the folder: no server of the user's is touched.
        self._tmux = [TMUX, "-S", str(folder / "tmux"), "-f", os.devnull]
        command = [sys.executable, "-P", "-m", "leanto", "walk", str(job)]
        given = [f"{name}={value}" for name, value in environ.items()]
        words = ["env", "-u", "COLORTERM", f"PYTHONPATH={SOURCE}", *given, *command]
        self._run("new-session", "-d", "-x", "80", "-y", "24", *words)

    def press(self, *keys: str) -> None:
        self._run("send-keys", *keys)

    def resize(self, width: int, height: int) -> None:
        self._run("resize-window", "-x", str(width), "-y", str(height))

    def wait_for(self, *words: str) -> str:
        """What stands on the screen as soon as all the words do."""
        end = time.monotonic() + PATIENCE_S
        while True:
            shown = self._run("capture-pane", "-p")
            if all(word in shown for word in words):
                return shown
            assert time.monotonic() < end, f"{words} did not come:\n{shown}"
            time.sleep(0.1)

    def colors(self) -> str:
        return self._run("capture-pane", "-p", "-e")

    def ended(self) -> bool:
        """True once the program is gone, and the server with its only window."""
        end = time.monotonic() + PATIENCE_S
        while time.monotonic() < end:
            if subprocess.run([*self._tmux, "has-session"], capture_output=True).returncode:
                return True
            time.sleep(0.1)
        return False

    def close(self) -> None:
        subprocess.run([*self._tmux, "kill-server"], capture_output=True)

    def _run(self, *arguments: str) -> str:
        done = subprocess.run([*self._tmux, *arguments], capture_output=True, check=True)
        return done.stdout.decode("utf-8", "replace")


@pytest.fixture(params=["colors", "16 colors", "no color"])
def terminal(
    request: pytest.FixtureRequest, tmp_path: Path, shed: Building
) -> Iterator[tuple[Terminal, Path]]:
    environ = {
        "colors": {"TERM": "tmux-256color"},
        "16 colors": {"TERM": "screen"},
        "no color": {"TERM": "tmux-256color", "NO_COLOR": "1"},
    }[request.param]
    Job.create(tmp_path / "job", shed).close()
    terminal = Terminal(tmp_path, tmp_path / "job", environ)
    try:
        yield terminal, tmp_path / "job"
    finally:
        terminal.close()


def test_a_walk_by_keys_reads_well_and_is_kept(terminal: tuple[Terminal, Path]) -> None:
    window, folder = terminal
    shown = window.wait_for("Site and drainage", "sound", "failed")
    lines = shown.rstrip("\n").split("\n")
    assert len(lines) <= 24
    assert max(map(len, lines)) <= 80
    window.press("1")
    window.wait_for("+ SOUND")
    window.press("F8")
    window.wait_for("Look: bright sun")
    window.resize(60, 15)
    window.wait_for("SOUND")
    window.resize(80, 24)
    window.press("F5")
    window.wait_for("Likely", "Where from", "Help")
    window.press("F3")
    window.wait_for("goes back")
    window.press("q")
    assert window.ended()
    with Job.open(folder) as job:
        (seen,) = job.walk.observations.values()
        assert seen.condition is Condition.SOUND


@pytest.mark.parametrize("terminal", ["16 colors"], indirect=True)
def test_a_terminal_of_16_colors_gets_no_others(terminal: tuple[Terminal, Path]) -> None:
    window, _ = terminal
    window.wait_for("Site and drainage")
    painted = window.colors()
    assert "\x1b[38;" not in painted  # neither of 256 colors nor mixed ones
    assert "\x1b[48;" not in painted
