"""How long leanto takes to start, against the bare imports that it cannot do without.

Run it by hand: ``python tests/benchmarks/bench_start.py``. Wanted: 1.3 times the imports for the
help. The first screen of a walk also reads the data files and the record; its parts are printed.
Nothing is asserted. Compiled modules are kept, as an installation keeps them.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Mapping
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "inspect"), str(ROOT / "tests")]

from screen import Program  # noqa: E402

from leanto.demo.make import make_demo  # noqa: E402

RUNS = 9
CASES = {
    "python alone": ["-c", "pass"],
    "help: its libraries": ["-c", "import argparse, dataclasses, pathlib, shutil, unicodedata"],
    "leanto --help": ["-m", "leanto", "--help"],
    "walk: its libraries": ["-c", "import textual.app, textual.widgets, pydantic, yaml, sqlite3"],
    "walk: libraries and leanto": ["-c", "import leanto.job, leanto.tui.app"],
    "data files": ["-m", "leanto", "check"],
}


def environment(cache: str) -> dict[str, str]:
    kept = {k: v for k, v in os.environ.items() if k != "PYTHONDONTWRITEBYTECODE"}
    return {**kept, "PYTHONPATH": str(ROOT / "inspect"), "PYTHONPYCACHEPREFIX": cache}


def took_s(arguments: list[str], environ: Mapping[str, str]) -> float:
    began = time.perf_counter()
    subprocess.run(
        [sys.executable, "-P", *arguments], env=environ, stdout=subprocess.DEVNULL, check=True
    )
    return time.perf_counter() - began


def first_screen_s(job: Path) -> float:
    began = time.perf_counter()
    program = Program(["walk", str(job)])
    try:
        program.wait_for("answered ")
        return time.perf_counter() - began
    finally:
        program.kill()
        program.close()


def main() -> None:
    with tempfile.TemporaryDirectory() as name:
        environ = environment(str(Path(name, "compiled")))
        os.environ.clear()
        os.environ.update(environ)
        best = dict.fromkeys(CASES, 1e9)
        for _ in range(RUNS):
            for case, arguments in CASES.items():
                best[case] = min(best[case], took_s(arguments, environ))
        with make_demo(Path(name, "job")) as job:
            folder = job.places.folder
        screen = min(first_screen_s(folder) for _ in range(3))
    for case, seconds in best.items():
        print(f"{case:28} {seconds * 1000:5.0f} ms")
    print(f"{'first screen of the demo':28} {screen * 1000:5.0f} ms")
    print(f"help / its imports: {best['leanto --help'] / best['help: its libraries']:.2f}")
    print(
        f"walk's imports / libraries: "
        f"{best['walk: libraries and leanto'] / best['walk: its libraries']:.2f}"
    )
    floor = best["walk: its libraries"]
    print(f"first screen / libraries: {screen / floor:.2f}")


if __name__ == "__main__":
    main()
