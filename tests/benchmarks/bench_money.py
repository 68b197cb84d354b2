"""Seconds of the processor that the money takes, against drawing the same numbers one by one.

Run it by hand: ``python tests/benchmarks/bench_money.py``. Wanted: under 0.5 s for 10,000 draws of
300 lines. Nothing is asserted, as machines are noisy; the best of some runs is printed, with a
ratio that holds on any machine.
"""

from __future__ import annotations

import random
import sys
import time
from collections.abc import Callable
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "inspect"), str(ROOT / "tests")]

from invented import assessed  # noqa: E402

from leanto.assessment import with_money  # noqa: E402
from leanto.cost.risk import OwnRisk, SharedRisk  # noqa: E402
from leanto.cost.simulation import DRAWS, HiddenDraw, simulate  # noqa: E402
from leanto.cost.triangle import Triangle  # noqa: E402

LINES = [
    OwnRisk(
        Triangle(100 + i, 150 + 2 * i, 300 + 5 * i), Triangle(40, 60 + i, 140 + 2 * i), f"line-{i}"
    )
    for i in range(300)
]
HIDDEN = [HiddenDraw(0.3, 1.4, 4.2, 9000, f"surface-{i}") for i in range(10)]
SHARED = SharedRisk(Triangle(0.8, 1, 1.3), Triangle(0.85, 1, 1.35), Triangle(0.9, 1, 1.2))
RUNS = 5


def best_s(work: Callable[[], object], runs: int = RUNS) -> float:
    """The shortest of some runs, in seconds of the processor."""
    took = []
    for _ in range(runs):
        began = time.process_time()
        work()
        took.append(time.process_time() - began)
    return min(took)


def drawn_one_by_one() -> None:
    """As many triangular numbers as there are lines and draws, and nothing done with them."""
    for line in LINES:
        low, high, likely = line.labor.low, line.labor.high, line.labor.likely
        for _ in range(DRAWS):
            random.triangular(low, high, likely)


def main() -> None:
    ours = best_s(lambda: simulate(LINES, HIDDEN, SHARED))
    bare = best_s(drawn_one_by_one, runs=2)
    print(
        f"{len(LINES)} lines, {DRAWS:,} draws: {ours:.2f} s; bare random.triangular: {bare:.2f} s"
    )
    print(f"ratio: {ours / bare:.2f}")
    demo = assessed("demo")
    money = best_s(lambda: with_money(demo), runs=3)
    print(f"all the money of the demo ({len(demo.scope.items)} lines): {money:.2f} s")


if __name__ == "__main__":
    main()
