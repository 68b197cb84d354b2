"""Notches and holes that the walk measured, against the limits of the code."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from leanto.reckon.model import Reckoning

Figures = Callable[[Reckoning], dict[str, str]]


# International Residential Code 2018, R602.6 and R802.7.1, seen: a full-sawn 2x4 is 4 in. deep.
# Bearing stud: notch 1 in., hole 1.6 in.; ceiling joist: notch 0.667 in., hole 1.33 in.
@pytest.mark.parametrize(
    ("station", "kind", "cut_in", "verdict"),
    [
        ("main.south.inside", "notch", 1.0, "within the limits"),
        ("main.south.inside", "notch", 1.01, "over the limit"),
        ("main.south.inside", "bored hole", 1.6, "within the limits"),
        ("main.south.inside", "bored hole", 1.61, "over the limit"),
        ("main.south.inside", "cut through", None, "over the limit"),
        ("main.ceiling", "notch", 0.66, "within the limits"),
        ("main.ceiling", "notch", 0.67, "over the limit"),
        ("main.ceiling", "bored hole", 1.33, "within the limits"),
        ("main.ceiling", "bored hole", 1.34, "over the limit"),
        ("main.ceiling", "cut through", 4.0, "ask an engineer"),
        ("main.ceiling", "notch", 4.0, "ask an engineer"),
    ],
)
def test_a_cut_against_the_code(
    case: Any, figures: Figures, station: str, kind: str, cut_in: float | None, verdict: str
) -> None:
    measures: dict[str, float | str] = {"cut_kind": kind}
    if cut_in is not None:
        measures["cut_depth_in"] = cut_in
    key = case.answer(station, "cut-members", "worn", **measures)
    one = case.one(f"cut-member@{key}")
    assert one.verdict == one.facts["cut_check"] == verdict
    assert one.sources and one.asks
    assert (figures(one)["Over the limit"] == "no") is (verdict == "within the limits")


def test_a_cut_that_was_not_measured_is_not_judged(case: Any) -> None:
    key = case.answer("main.south.inside", "cut-members", "worn", cut_kind="notch")
    assert f"cut-member@{key}" not in case.reckoned()
