"""A job with a small building and a small checklist, so that few keys reach everything."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from leanto.building.model import Building
from leanto.job import Job
from leanto.library import Library, read_library
from leanto.places import checklists_dir

WALK = """
id: framing
title: Framing
order: 1
items:
  - id: ground
    at: [site]
    prompt: Does the ground fall away?
    look: The slope of the ground.
    how: By eye.
    answers:
      sound: {means: Falls away.}
      worn: {means: Level.}
      failed: {means: Falls to the wall., measures: [test_fall_in]}
    why: Water runs to the sill otherwise.
    source: Invented for a test
  - id: sill
    at: [wall outside]
    prompt: Is the sill soft?
    look: The lowest timber.
    how: Push an awl in.
    caution: [dust]
    answers:
      sound: {means: Hard.}
      worn: {means: Soft skin., measures: [probe_depth_in]}
      failed: {means: Soft inside., measures: [probe_depth_in, run_ft], zone: true}
    why: It carries the wall above it.
    source: Invented for a test
  - id: boards
    at: [wall outside]
    prompt: Are the boards tight?
    look: Gaps and loose ends.
    how: By hand.
    answers:
      sound: {means: Tight.}
      worn: {means: Gaps.}
      failed: {means: Missing., measures: [is_active, test_look]}
    why: Rain gets in behind loose boards.
    source: Invented for a test
"""
MEASURES = """
measures:
  - {id: test_fall_in, label: Fall in 10 ft, unit: in, low: -60, high: 120}
  - {id: test_look, label: The stain, unit: choice, choices: [one ring, drip marks, tide line]}
"""
RULES = """
rules:
  - id: sill-rotted
    items: [sill]
    when: failed or worn and probe_depth_in >= 0.5
    finding: The sill is rotten.
    urgency: now
    work:
      - {work: test-repair, take: width}
    source: Invented for a test
  - id: others-bad
    items: [boards, ground]
    when: worn or failed
    finding: This lets water in.
    urgency: with the work
    watch: After rain.
    source: Invented for a test
"""
WORK = """
work:
  - id: test-repair
    title: Mend the sill
    description: What a bidder is to do.
    trade: carpenter
    phase: structure
    unit: lf
    element: B1010
"""
PRICES = """
prices:
  - work: test-repair
    hours: {low: 1, likely: 2, high: 3}
    materials_usd: {low: 10, likely: 20, high: 30}
    source: planning figure, no source
    dated: 2026-06-01
"""


@pytest.fixture(scope="session")
def small_library(tmp_path_factory: pytest.TempPathFactory) -> Library:
    """The shipped prices and shares with three items and two rules of our own."""
    folder = tmp_path_factory.mktemp("library") / "checklists"
    shutil.copytree(checklists_dir(), folder, ignore=shutil.ignore_patterns("walk", "rules"))
    for name, text in {
        "walk/test.yaml": WALK,
        "measures/test.yaml": MEASURES,
        "rules/test.yaml": RULES,
        "work/test.yaml": WORK,
        "prices/test.yaml": PRICES,
    }.items():
        (folder / name).parent.mkdir(exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    return read_library(shipped=folder)


@pytest.fixture
def job(
    tmp_path: Path, shed: Building, small_library: Library, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Job]:
    """A new job of the small shed; it starts at the site."""
    monkeypatch.setattr("leanto.job.job.read_library", lambda folders: small_library)
    with Job.create(tmp_path / "job", shed, who="walker") as job:
        yield job
