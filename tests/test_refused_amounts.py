"""Amounts, ranges and chances that cannot be are refused when a file is read, in clear words."""

from __future__ import annotations

import pytest
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.cost.price import Factors, PriceFile
from leanto.decision.hidden import HiddenFile
from leanto.errors import InputProblems
from leanto.places import checklists_dir
from leanto.strict import Strict
from leanto.yaml_input import parse_model

PRICE = """
prices:
  - work: patch
    hours: {low: 1, likely: 2, high: 3}
    materials_usd: {low: 1, likely: 2, high: 3}
    source: made up
    dated: 2026-01-01
"""
HIDDEN = (checklists_dir() / "hidden.yaml").read_text("utf-8")
FACTORS = (checklists_dir() / "prices" / "factors.yaml").read_text("utf-8")


def test_the_files_as_shipped_are_read() -> None:
    assert parse_model(PRICE, PriceFile, "f.yaml").prices
    assert parse_model(HIDDEN, HiddenFile, "f.yaml").heat is not None
    assert parse_model(FACTORS, Factors, "f.yaml").replacement_usd_per_sqft is not None


@pytest.mark.parametrize(
    ("model", "text", "old", "new", "said"),
    [
        (
            PriceFile,
            PRICE,
            "{low: 1, likely: 2, high: 3}",
            "{low: 3, likely: 2, high: 4}",
            "must not fall",
        ),
        (
            PriceFile,
            PRICE,
            "{low: 1, likely: 2, high: 3}",
            "{low: 1, likely: 5, high: 3}",
            "must not fall",
        ),
        (
            PriceFile,
            PRICE,
            "{low: 1, likely: 2, high: 3}",
            "{low: -1, likely: 2, high: 3}",
            "at least 0",
        ),
        (HiddenFile, HIDDEN, "chance: 0.12", "chance: 1.2", "at most 1"),
        (HiddenFile, HIDDEN, "chance: 0.12", "chance: -0.1", "at least 0"),
        (HiddenFile, HIDDEN, "shows_at_evidence: 0.8", "shows_at_evidence: 80", "at most 1"),
        (HiddenFile, HIDDEN, "reached_closed: 0.8", "reached_closed: 80", "at most 1"),
        (HiddenFile, HIDDEN, "a: 1.4", "a: 0.4", "at least 1"),
        (HiddenFile, HIDDEN, "years: 10", "years: 0", "more than 0"),
        (
            HiddenFile,
            HIDDEN,
            "{low: 0.12, likely: 0.17",
            "{low: 0.19, likely: 0.17",
            "must not fall",
        ),
        (Factors, FACTORS, "burden: 1.433", "burden: 0", "more than 0"),
        (Factors, FACTORS, "region: 1.0", "region: -1", "more than 0"),
        (Factors, FACTORS, "own_pace: 1.5", "own_pace: 0", "more than 0"),
        (
            Factors,
            FACTORS,
            "{low: 90, likely: 140, high: 220}",
            "{low: 90, likely: 140, high: 20}",
            "must not fall",
        ),
    ],
)
def test_an_amount_that_cannot_be_is_refused_with_its_line(
    model: type[Strict], text: str, old: str, new: str, said: str
) -> None:
    assert old in text
    with pytest.raises(InputProblems, match=said) as refused:
        parse_model(text.replace(old, new, 1), model, "f.yaml")
    assert refused.value.problems[0].line > 0


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("budget_usd: 0", "more than 0"),
        ("budget_usd: -5", "more than 0"),
        ("budget_usd: a lot", "A number is needed"),
        ("replacement_usd_per_sqft: 0", "more than 0"),
        ("replacement_usd_per_sqft: 99999", "at most 2000"),
    ],
)
def test_a_budget_of_nothing_is_no_budget(line: str, said: str) -> None:
    with pytest.raises(InputProblems, match=said) as refused:
        parse_building(f"{SHED.strip()}\n{line}\n", "shed.yaml")
    assert line.split(":")[0] in str(refused.value)
