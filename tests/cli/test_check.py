"""``leanto check``: problems, notes, and everything as tables."""

from __future__ import annotations

from pathlib import Path

import pytest

from leanto.cli.main import main
from leanto.job.bidding import shipped_bidding
from leanto.library import notes, read_library

WORK = """
work:
  - id: paint-the-cat
    title: Paint the cat
    description: Hold it still, then paint it twice.
    trade: painter
    phase: finish
    unit: each
    element: C2010
"""
PRICE = """
prices:
  - work: paint-the-cat
    hours: {low: 2, likely: 2, high: 2}
    materials_usd: {low: 12.5, likely: 12.5, high: 12.5}
    source: A printed price list, 2026
    dated: 2026-06-01
"""
RULE = """
rules:
  - id: cat-unpainted
    items: [cladding]
    when: failed
    finding: The cat is not painted.
    urgency: with the work
    work:
      - {work: paint-the-cat, quantity: "1"}
    source: Invented for a test
"""


@pytest.fixture
def own(tmp_path: Path) -> Path:
    """A folder with one more work that nothing calls for."""
    for name, text in {"work": WORK, "prices": PRICE}.items():
        (tmp_path / name).mkdir()
        (tmp_path / name / "mine.yaml").write_text(text, encoding="utf-8")
    return tmp_path


def test_the_shipped_data_has_no_problem_and_no_work_that_nothing_calls_for(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["check"]) == 0
    said = capsys.readouterr().out
    assert said.startswith("No problems: ")
    assert "have no source" in said
    assert "called by no rule" not in said
    assert "have no range" not in said


def test_what_nothing_calls_for_and_has_no_range_is_noted(
    own: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["check", str(own)]) == 0
    said = " ".join(capsys.readouterr().out.split())  # wrapped to the terminal's width
    assert "by no rule and by neither course of gut or keep: paint-the-cat." in said
    assert "1 of" in said and "have no range (low = likely = high): paint-the-cat." in said


def test_a_called_work_with_a_source_is_not_noted(own: Path) -> None:
    (own / "rules").mkdir()
    (own / "rules" / "mine.yaml").write_text(RULE, encoding="utf-8")
    found = notes(read_library([own]), shipped_bidding().often_found)
    assert found.unused == ()
    assert "paint-the-cat" not in found.without_source
    assert found.without_range == ("paint-the-cat",)


def test_works_of_gut_and_keep_are_used() -> None:
    library = read_library()
    without_rules = notes(
        type(library)(
            checklist=library.checklist,
            rules=(),
            works=library.works,
            prices=library.prices,
            factors=library.factors,
            hidden=library.hidden,
            versions=library.versions,
        )
    )
    assert library.hidden.protect not in without_rules.unused
    assert library.hidden.test_hole.work not in without_rules.unused
    assert len(without_rules.unused) > 100


def test_the_list_holds_every_entry(
    own: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "200")
    library = read_library([own])
    assert main(["check", "--list", str(own)]) == 0
    lines = capsys.readouterr().out.splitlines()
    starts = {line.split()[0] for line in lines if line.strip()}
    assert {section.id for section in library.checklist.sections} <= starts
    assert {item.id for item in library.checklist.items()} <= starts
    assert {rule.id for rule in library.rules} <= starts
    assert library.works.keys() <= starts
    price = next(line for line in lines if line.startswith("paint-the-cat") and "12.5" in line)
    assert "A printed price list" in price
    assert max(map(len, lines)) <= 200


def test_problems_are_printed_and_end_with_2(own: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (own / "rules").mkdir()
    text = RULE.replace('"1"', "surface_width_ft")
    (own / "rules" / "mine.yaml").write_text(text, encoding="utf-8")
    assert main(["check", "--list", str(own)]) == 2
    said = capsys.readouterr().out
    assert f"{own}/rules/mine.yaml:9:" in said
    assert "'surface_width_ft' is in feet; it should be a plain number" in said
    assert said.endswith("1 problem to put right.\n")
