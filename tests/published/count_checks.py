"""Counts the published checks by source and mark, with the largest deviation of each source.

    PYTHONPATH=inspect:tests python tests/published/count_checks.py

Runs every check once. The deviation is the largest difference between a computed number and the
number it was compared with by ``pytest.approx``; spans are compared in inches with their cells.
Numbers compared for equality do not deviate at all.
"""

from __future__ import annotations

import importlib.util
import sys
from collections import Counter
from dataclasses import dataclass, field
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

FOLDER = Path(__file__).resolve().parent
SPANS = FOLDER / "test_irc_spans.py"


@dataclass(slots=True)
class Tally:
    """What was counted for one source."""

    marks: Counter[str] = field(default_factory=Counter)
    files: set[str] = field(default_factory=set)
    largest: float = 0.0
    largest_share: float = 0.0
    compared: int = 0

    def meet(self, actual: float, expected: float) -> None:
        """Takes in one comparison."""
        self.compared += 1
        off = abs(actual - expected)
        self.largest = max(self.largest, off)
        if expected:
            self.largest_share = max(self.largest_share, off / abs(expected))


class Counting:
    """Counts the items, and listens to what they compare."""

    def __init__(self) -> None:
        self.tallies: dict[str, Tally] = {}
        self.now: Tally | None = None
        self.failed = 0

    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        marks = _module(FOLDER / "conftest.py")
        items[:] = [item for item in items if item.path.name != marks.LISTS]
        for item in items:
            source, mark = marks.source_and_mark(item)
            tally = self.tallies.setdefault(source, Tally())
            tally.marks[mark] += 1
            if mark != "own":
                tally.files.add(item.path.name)

    def pytest_runtest_call(self, item: pytest.Item) -> None:
        published = item.get_closest_marker("published")
        self.now = self.tallies[published.args[0]] if published else None

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        self.now = None if report.when == "teardown" else self.now
        self.failed += report.failed

    def listen(self) -> None:
        """Every comparison with a number passes through here from now on."""
        kind: Any = type(pytest.approx(1.0))
        plain = kind.__eq__

        def heard(approx: Any, actual: Any) -> Any:
            agrees = plain(approx, actual)
            if agrees and self.now is not None and isinstance(actual, int | float):
                self.now.meet(float(actual), float(approx.expected))
            return agrees

        kind.__eq__ = heard


def _module(path: Path) -> ModuleType:
    spec = importlib.util.spec_from_file_location(path.stem, path)
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[path.stem] = module
    spec.loader.exec_module(module)
    return module


def spans() -> dict[str, tuple[int, float, int]]:
    """(cells, largest deviation in inches, cells that are off) by span table."""
    found: dict[str, tuple[int, float, int]] = {}
    for cell in _module(SPANS).CELLS:
        title = f"{cell.table.title}, {cell.table.live_psf:g} + {cell.table.dead_psf:g} psf"
        name = f"{title} ({cell.table.mark})"
        count, largest, off = found.get(name, (0, 0.0, 0))
        deviation = abs(cell.computed_in - cell.printed_in)
        found[name] = (count + 1, max(largest, deviation), off + (deviation > 0))
    return found


def main() -> int:
    counting = Counting()
    counting.listen()
    quiet = ["-q", "-n", "0", "-p", "no:cacheprovider", "--no-header", "--no-summary"]
    pytest.main([*quiet, str(FOLDER)], plugins=[counting])
    marks = ("seen", "from memory", "by hand", "library", "own")
    print("\nchecks | seen | from memory | by hand | library | own | largest deviation | source")
    total: Counter[str] = Counter()
    for source, tally in sorted(counting.tallies.items()):
        total += tally.marks
        counts = " | ".join(str(tally.marks[mark]) for mark in marks)
        off = "equal" if not tally.compared else f"{tally.largest:.3g}, {tally.largest_share:.2%}"
        if SPANS.name in tally.files:
            off = "see the cells below"
        print(f"{tally.marks.total()} | {counts} | {off} | {source}")
    print(f"{total.total()} | {' | '.join(str(total[mark]) for mark in marks)} | | all")
    print("\ncells | largest deviation, in. | cells that are off | span table")
    for name, (count, largest, off) in spans().items():
        print(f"{count} | {largest:g} | {off} | {name}")
    return 1 if counting.failed else 0


if __name__ == "__main__":
    raise SystemExit(main())
