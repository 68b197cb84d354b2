"""Every target fuzzed for some seconds; ``run.py`` goes on by hand for as long as one likes."""

from __future__ import annotations

import os
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

import pytest
from fuzz.targets import REFUSED, TARGETS, samples

RUN = Path(__file__).with_name("run.py")
APART = "import subprocess, sys; sys.exit(subprocess.run(sys.argv[1:]).returncode)"
"""Starts a program from a small one: Linux counts the memory of who started it as its own peak,
and a process that runs thousands of tests is large."""
SECONDS = 120 if os.environ.get("LEANTO_NIGHTLY") else 3


@pytest.mark.parametrize("target", TARGETS)
def test_the_samples_are_whole(target: str) -> None:
    """Else the fuzzing would never come past the first refusal."""
    passed = 0
    for sample in samples(target):
        try:
            TARGETS[target](sample)
            passed += 1
        except REFUSED:
            pass
    assert passed or target in ("checklist", "prices", "rules")  # files that are cut short


@pytest.mark.skipif(find_spec("atheris") is None, reason="atheris is not made for this system")
@pytest.mark.parametrize("target", TARGETS)
def test_any_input_is_read_or_refused_in_time_and_memory(target: str, tmp_path: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-c", APART, sys.executable, str(RUN), target, str(SECONDS)],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        check=False,
    )

    assert done.returncode == 0, done.stderr[-3000:]
    assert "stat::number_of_executed_units" in done.stderr
    assert not list(tmp_path.iterdir())
