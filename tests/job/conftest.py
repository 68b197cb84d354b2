"""A job on the small lined shed, with three items of its own instead of the shipped ones."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from leanto.building.model import Building
from leanto.job import Job
from leanto.places import checklists_dir

COMMON = (
    "cautions.yaml",
    "hidden.yaml",
    "measures/common.yaml",
    "work/common.yaml",
    "prices/common.yaml",
    "prices/factors.yaml",
)
WALK = """
id: trial
title: Trial
order: 1
items:
  - id: grade
    at: [site]
    prompt: Ground
    look: The slope of the ground.
    how: By eye.
    answers: {sound: {means: Falls away.}, worn: {means: Level.}, failed: {means: Falls in.}}
    why: Water runs to the wall otherwise.
    source: Invented for a test
  - id: stain
    at: [wall inside, ceiling]
    only_if: lined
    prompt: Stain
    look: Rings and streaks.
    how: With a lamp.
    answers:
      sound: {means: None.}
      worn: {means: Old ones.}
      failed: {means: Wet ones., measures: [moisture_pct, piece_count, is_active], zone: true}
    why: It tells where water came in.
    source: Invented for a test
  - id: sill
    at: [wall outside]
    prompt: Sill
    look: The lowest timber.
    how: Push an awl in.
    answers:
      sound: {means: Hard.}
      worn: {means: Soft skin., measures: [probe_depth_in]}
      failed: {means: Soft inside., measures: [probe_depth_in], zone: true}
    why: It carries the wall above it.
    source: Invented for a test
"""
MEASURES = """
measures:
  - {id: stain_kind, label: Kind of stain, unit: choice, choices: [ring, streak]}
"""
RULES = """
rules:
  - id: grade-wrong
    items: [grade]
    when: worn or failed
    finding: The ground does not fall away.
    urgency: with the work
    watch: After rain.
    source: Invented for a test
  - id: stained
    items: [stain]
    when: worn or failed
    finding: Water came in here.
    urgency: with the work
    question: Where from?
    source: Invented for a test
  - id: sill-soft
    items: [sill]
    when: worn or failed
    finding: The sill is soft.
    urgency: now
    work: [{work: open-lining, take: area}]
    source: Invented for a test
"""


@pytest.fixture(autouse=True)
def small_library(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The data that stand in for the shipped ones."""
    folder = tmp_path / "shipped"
    for name in COMMON:
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(checklists_dir() / name, folder / name)
    for name, text in (
        ("walk/trial.yaml", WALK),
        ("rules/trial.yaml", RULES),
        ("measures/trial.yaml", MEASURES),
    ):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, encoding="utf-8")
    monkeypatch.setattr("leanto.library.read.checklists_dir", lambda: folder)
    return folder


@pytest.fixture
def clock() -> Callable[[], datetime]:
    """Noon of a day in 2026 wherever the test runs, a minute later at each look."""
    minutes = iter(range(10_000))
    noon = datetime(2026, 11, 25, 12).astimezone(UTC)
    return lambda: noon + timedelta(minutes=next(minutes))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "jobs" / "shed"


@pytest.fixture
def job(folder: Path, shed: Building, clock: Callable[[], datetime]) -> Iterator[Job]:
    with Job.create(folder, shed, clock=clock, who="tester") as job:
        yield job
