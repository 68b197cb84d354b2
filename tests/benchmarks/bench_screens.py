"""How long a key takes until its screen is painted, a start takes, and what memory it needs.

Run it by hand: ``python tests/benchmarks/bench_screens.py``. Wanted: at 500 observations a key in
100 ms at the median and in 3 times that of a bare screen of the framework; a start in 1.5 times
that of a bare app that has imported what we import; under 150 MiB at 2,000 observations. Nothing
is asserted, as machines are noisy; all is measured in one run, in a pseudo-terminal of 80x24.
"""

from __future__ import annotations

import fcntl
import os
import pty
import select
import statistics
import struct
import subprocess
import sys
import tempfile
import termios
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "inspect"), str(ROOT / "tests")]

from invented import invented  # noqa: E402
from large_walk import large_job  # noqa: E402

from leanto.library import read_library  # noqa: E402

STARTS, KEYS = 5, 30
STILL_S = 0.08
"""A screen that gets nothing for so long is painted."""

BARE = """
from textual.app import App
from textual.widgets import Static
class Bare(App):
    def compose(self):
        yield Static("answered 0")
    def on_key(self):
        self.count = getattr(self, "count", 0) + 1
        self.query_one(Static).update(f"answered {self.count}")
Bare().run()
"""
IMPORTS = "import leanto.cli.main, leanto.cli.walk, leanto.job, leanto.library, leanto.tui.app\n"
UP, DOWN, F3, F5 = b"\x1b[A", b"\x1b[B", b"\x1bOR", b"\x1b[15~"


class Terminal:
    """A program in a pseudo-terminal; what it draws is only timed."""

    def __init__(self, *arguments: str) -> None:
        self._terminal, slave = pty.openpty()
        fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", 24, 80, 0, 0))
        environ = {**os.environ, "PYTHONPATH": str(ROOT / "inspect"), "TERM": "xterm-256color"}
        self._began = time.perf_counter()
        self.process = subprocess.Popen(
            [sys.executable, "-P", *arguments], stdin=slave, stdout=slave, stderr=slave, env=environ
        )
        os.close(slave)

    def started_s(self) -> float:
        """From the start of the process to the first screen that can be worked with."""
        drawn, end = b"", time.monotonic() + 60
        while b"answered " not in drawn and time.monotonic() < end:
            drawn += self._read(1.0)
        took = time.perf_counter() - self._began
        while self._read(0.5):
            pass
        return took

    def key_s(self, key: bytes) -> float:
        """From the key to the last byte of what it paints at once."""
        began = last = time.perf_counter()
        os.write(self._terminal, key)
        wait = 2.0
        while self._read(wait):
            last, wait = time.perf_counter(), STILL_S
        return last - began

    def processor_s(self) -> float:
        """What the program has used of the processor so far: a busy machine does not show in it."""
        fields = (
            Path(f"/proc/{self.process.pid}/stat").read_text("ascii").rpartition(")")[2].split()
        )
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def memory_mib(self) -> tuple[float, float]:
        """Resident memory now, and the most there ever was."""
        status = Path(f"/proc/{self.process.pid}/status").read_text("ascii")
        found = dict(line.split(":", 1) for line in status.splitlines())
        now, most = (int(found[name].split()[0]) / 1024 for name in ("VmRSS", "VmHWM"))
        return now, most

    def close(self) -> None:
        self.process.kill()
        self.process.wait()
        os.close(self._terminal)

    def _read(self, seconds: float) -> bytes:
        if not select.select([self._terminal], [], [], seconds)[0]:
            return b""
        try:
            return os.read(self._terminal, 65_536)
        except OSError:  # the other end is closed
            return b""


def start_s(*arguments: str) -> float:
    terminal = Terminal(*arguments)
    try:
        return terminal.started_s()
    finally:
        terminal.close()


def told(
    name: str, terminal: Terminal, keys: tuple[bytes, ...], bare: tuple[float, float] | None = None
) -> tuple[float, float]:
    """The median time of a key and its mean share of the processor, in ms; both are printed."""
    began = terminal.processor_s()
    times = [terminal.key_s(keys[at % len(keys)]) * 1000 for at in range(KEYS)]
    used = (terminal.processor_s() - began) * 1000 / KEYS
    median, most = statistics.median(times), sorted(times)[int(KEYS * 0.95)]
    line = f"{name:28} median {median:5.1f} ms, 95 % {most:6.1f} ms, processor {used:5.1f} ms"
    print(line + (f"; {median / bare[0]:.1f} and {used / bare[1]:.1f} times bare" if bare else ""))
    return median, used


def main() -> None:
    demo, checklist = invented("demo"), read_library().checklist
    with tempfile.TemporaryDirectory() as name:
        # Compiled modules are kept, as an installation keeps them.
        os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
        os.environ["PYTHONPYCACHEPREFIX"] = str(Path(name, "compiled"))
        sizes = {
            size: str(large_job(Path(name, str(size)), demo.building, checklist, size))
            for size in (500, 2_000)
        }
        cases = {
            "bare app": ("-c", BARE),
            "bare app and our imports": ("-c", IMPORTS + BARE),
            "first screen at 500": ("-m", "leanto", "walk", sizes[500]),
        }
        best = dict.fromkeys(cases, 1e9)
        for _ in range(STARTS):
            for case, arguments in cases.items():
                best[case] = min(best[case], start_s(*arguments))
        for case, seconds in best.items():
            print(f"{case:34} {seconds * 1000:5.0f} ms")
        floor = best["bare app and our imports"]
        print(f"first screen / bare app and imports: {best['first screen at 500'] / floor:.2f}")
        terminal = Terminal("-c", BARE)
        terminal.started_s()
        bare = told("a key on a bare screen", terminal, (b"a", b"b"))
        terminal.close()
        terminal = Terminal("-m", "leanto", "walk", sizes[500])
        terminal.started_s()
        told("walk: next and last item", terminal, (DOWN, UP), bare)
        told("walk: an answer", terminal, (b"1", b"5"), bare)
        terminal.key_s(F3)
        told("findings: up and down", terminal, (DOWN, UP), bare)
        told("findings to scope and back", terminal, (F5, F3), bare)
        terminal.close()
        terminal = Terminal("-m", "leanto", "walk", sizes[2_000])
        terminal.started_s()
        print("memory at 2,000: {:.0f} MiB, most {:.0f} MiB".format(*terminal.memory_mib()))
        for key in (b"1", F3, F5):
            terminal.key_s(key)
            time.sleep(2)
        print("after findings and scope: {:.0f} MiB, most {:.0f}".format(*terminal.memory_mib()))
        terminal.close()


if __name__ == "__main__":
    main()
