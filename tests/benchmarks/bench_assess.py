"""How the assessment grows with the answers, and what one more answer costs in the walk.

Run it by hand: ``python tests/benchmarks/bench_assess.py``. Wanted: from 500 to 5,000 observations
no more than 10 log(5000)/log(500) = 13.7 times the time, under 1 s at 5,000; an answer in the walk
under 30 ms at 500: that is what its key waits for, kept and drawn; what follows from it is assessed
in a thread once the keys rest. Nothing is asserted, as machines are noisy; the best of some runs
is printed, in seconds of the processor.
"""

from __future__ import annotations

import asyncio
import gc
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import replace
from itertools import cycle, islice, pairwise
from math import log
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "inspect"), str(ROOT / "tests")]

from invented import invented  # noqa: E402

from leanto.assessment import assess  # noqa: E402
from leanto.building.model import Building  # noqa: E402
from leanto.checklist.condition import Condition  # noqa: E402
from leanto.job import Job  # noqa: E402
from leanto.library import read_library  # noqa: E402
from leanto.record.entry import Answered  # noqa: E402
from leanto.record.observation import Observation, ObservationKey  # noqa: E402
from leanto.record.walk import Walk  # noqa: E402
from leanto.tui.app import LeantoApp  # noqa: E402

SIZES = (50, 500, 5_000)


def walk_of(size: int) -> Walk:
    """The demo's walk with so many observations: every kind of them, several of each item."""
    demo = invented("demo")
    seen: dict[ObservationKey, Observation] = {}
    numbers: dict[tuple[str, str], int] = {}
    for one in islice(cycle(demo.walk.observations.values()), size):
        about = (one.key.station, one.key.item)
        numbers[about] = numbers.get(about, 0) + 1
        key = ObservationKey(*about, numbers[about])
        seen[key] = replace(one, key=key)
    return replace(demo.walk, observations=seen)


def best_s(work: Callable[[], object], runs: int) -> float:
    took = []
    for _ in range(runs):
        began = time.process_time()
        work()
        took.append(time.process_time() - began)
    return min(took)


def afresh(building: Building) -> Building:
    """An equal building that was never seen before, so that nothing is remembered."""
    return building.model_copy()


async def answers_drawn_s(job: Job) -> float:
    """Seconds of the main thread from a key that answers to the record and the new screen."""
    app = LeantoApp(job)
    took = []
    async with app.run_test(size=(120, 40)) as pilot:
        await pilot.pause(1.0)
        for number in range(20):
            began = time.thread_time()
            app.screen.action_answer("15"[number % 2])
            app.screen.refresh(layout=False)
            await asyncio.sleep(0)
            took.append(time.thread_time() - began)
            await pilot.pause(0.01)
    return min(took)


def main() -> None:
    gc.set_threshold(50_000, 20, 20)  # as the command line does
    demo, library = invented("demo"), read_library()
    times = {}
    for size in SIZES:
        walk = walk_of(size)
        times[size] = best_s(
            lambda walk=walk: assess(afresh(demo.building), walk, library, demo.written.date),
            runs=5 if size < 5_000 else 2,
        )
        print(f"{size:>5} observations: {times[size]:.3f} s")
    for one, more in pairwise(SIZES):
        allowed = more / one * log(more) / log(one)
        print(f"{one} -> {more}: {times[more] / times[one]:.1f} times (n log n: {allowed:.1f})")
    walk, turns = walk_of(500), cycle([Condition.WORN, Condition.FAILED])
    key = next(iter(walk.observations))

    def assess_on() -> None:
        one = replace(walk.observations[key], condition=next(turns))
        changed = replace(walk, observations={**walk.observations, key: one})
        assess(demo.building, changed, library, demo.written.date)

    print(f"assessed on after one answer, at 500: {best_s(assess_on, 20) * 1000:.1f} ms")
    with tempfile.TemporaryDirectory() as name, Job.create(Path(name, "job"), demo.building) as job:
        asked = [(s.id, item.id) for s in job.stations for item in job.items_at(s.id)]
        for (station, item), number in islice(((a, n) for n in (1, 2, 3) for a in asked), 500):
            job.record(Answered(station=station, item=item, number=number, condition="worn"))
        station, item = asked[0]
        conditions = cycle([Condition.SOUND, Condition.WORN])

        def answer() -> None:
            job.record(Answered(station=station, item=item, condition=next(conditions)))

        print(f"an answer kept, at 500: {best_s(answer, 40) * 1000:.1f} ms")
        drawn_s = asyncio.run(answers_drawn_s(job))
        print(f"an answer kept and drawn in the walk, at 500: {drawn_s * 1000:.1f} ms")


if __name__ == "__main__":
    main()
