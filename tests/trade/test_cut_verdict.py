"""Verdicts on cuts tell the rule missed, by how much, and when an engineer must look."""

from __future__ import annotations

import pytest

from leanto.trade.cut_verdict import CutKind
from leanto.trade.notches import Edge, Place, Spanning, spanning_hole, spanning_notch
from leanto.trade.stud_cuts import stud_notch


def test_over_by_how_much() -> None:
    verdict = stud_notch(3.5, 1.125, bearing=True)
    assert verdict.over_in == pytest.approx(0.25)
    assert "0.875 in. allowed" in verdict.words
    assert "R602.6" in verdict.words


def test_the_worst_of_several_rules_counts() -> None:
    verdict = spanning_hole(Spanning.JOIST, 9.25, 3.0, 0.5, 1.75)
    assert len(verdict.missed) == 2
    assert verdict.over_in == pytest.approx(1.5)


def test_within_names_its_section_and_promises_nothing() -> None:
    words = spanning_hole(Spanning.RAFTER, 9.25, 1.0, 3.0, 3.0).words
    assert "R802.7.1" in words
    assert "safe" not in words.lower()


@pytest.mark.parametrize(
    ("notch", "cracked", "kind"),
    [
        (0.5, False, CutKind.WITHIN),
        (0.5, True, CutKind.ENGINEER),
        (9.2, False, CutKind.OVER),
        (9.25, False, CutKind.ENGINEER),
    ],
)
def test_cracked_or_cut_through_asks_an_engineer(
    notch: float, cracked: bool, kind: CutKind
) -> None:
    verdict = spanning_notch(
        Spanning.JOIST, 9.25, notch, 1.0, Place.OUTER_THIRD, Edge.TOP, cracked=cracked
    )
    assert verdict.kind is kind
    assert (kind is CutKind.WITHIN) == (not verdict.missed)


def test_no_notch_is_within_anywhere() -> None:
    verdict = spanning_notch(Spanning.JOIST, 9.25, 0.0, 0.0, Place.MIDDLE_THIRD, Edge.BOTTOM)
    assert verdict.kind is CutKind.WITHIN


def test_impossible_measures_are_refused() -> None:
    with pytest.raises(ValueError, match="depth_in"):
        spanning_hole(Spanning.JOIST, 0.0, 1.0, 2.0, 2.0)
    with pytest.raises(ValueError, match="notch_depth_in"):
        stud_notch(3.5, -0.1, bearing=True)
