"""Seconds that ``leanto list`` takes for 1,000 jobs, against opening each record and counting.

Run it by hand: ``python tests/benchmarks/bench_list.py``. Wanted: under 5 s. Nothing is asserted.
"""

from __future__ import annotations

import contextlib
import io
import shutil
import sqlite3
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "inspect"), str(ROOT / "tests")]

from leanto.cli.main import main as leanto  # noqa: E402
from leanto.demo.make import make_demo  # noqa: E402

JOBS = 1_000


def timed(work: object) -> float:
    assert callable(work)
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def bare(folder: Path) -> None:
    for record in sorted(folder.glob("*/record.db")):
        uri = f"{record.as_uri()}?mode=ro&immutable=1"
        with contextlib.closing(sqlite3.connect(uri, uri=True)) as connection:
            connection.execute("SELECT at, kind, body FROM entries").fetchall()


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        with make_demo(folder / "one") as job:
            job.assess()
            entries = len(job.entries)
        for number in range(JOBS):
            place = folder / "jobs" / f"job-{number:04}"
            place.mkdir(parents=True)
            for part in ("record.db", "last-range.json"):
                shutil.copyfile(folder / "one" / part, place / part)

        def ours() -> None:
            with contextlib.redirect_stdout(io.StringIO()) as said:
                leanto(["list", str(folder / "jobs")])
            assert said.getvalue().endswith(f"{JOBS} jobs.\n")

        ours_s = min(timed(ours) for _ in range(2))
        bare_s = min(timed(lambda: bare(folder / "jobs")) for _ in range(2))
    print(f"{JOBS:,} jobs of {entries} entries: {ours_s:.2f} s; bare reading: {bare_s:.2f} s")
    print(f"ratio {ours_s / bare_s:.1f}")


if __name__ == "__main__":
    main()
