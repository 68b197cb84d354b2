"""What was found against what was assumed: per surface, by evidence, by what it was."""

from __future__ import annotations

import math
from dataclasses import replace
from datetime import date
from types import SimpleNamespace

import pytest

from leanto.contract.compared import Compared, Sign, chance_of_at_least, compared
from leanto.contract.missed import NO_SIGN, by_evidence, by_found
from leanto.decision.unseen import Unseen
from leanto.record.agreed_entry import Opened

STAIN = Sign("stain", "water-from-above", "old stain", 2.5)
ANTS = Sign("ants", "pests", "live pests", 7)
CLEAN = Sign("clean", "opening", "a sound hole", 0.35)


def a_row(name: str, found_sqft: float = 0.0, *signs: Sign, **more: object) -> Compared:
    row = Compared(
        surface_id=name,
        name=name,
        openings=(1,),
        opened_sqft=100,
        found_sqft=found_sqft,
        found=("rot",) if found_sqft else (),
        seen_sqft=0,
        prior=0.2,
        chance=0.4,
        expected_sqft=10,
        at_least=0.3,
        signs=signs,
    )
    return replace(row, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("row", "verdict"),
    [
        (a_row("a", 12, STAIN), "within what was expected"),
        (a_row("a", 12, STAIN, at_least=0.1), "within what was expected"),
        (a_row("a", 12, STAIN, at_least=0.09), "more than expected"),
        (a_row("a", 12), "missed: no sign pointed to it"),
        (a_row("a", 12, CLEAN), "missed: no sign pointed to it"),
        (a_row("a", 0, STAIN, chance=0.49), "within what was expected"),
        (a_row("a", 0, STAIN, chance=0.5), "expected, not found"),
        (a_row("a", 12, prior=None, chance=None), "nothing was assumed here"),
    ],
)
def test_a_surface_in_a_few_words(row: Compared, verdict: str) -> None:
    assert row.verdict == verdict


def test_each_kind_of_evidence_is_counted_over_the_surfaces_it_was_on() -> None:
    rows = (a_row("a", 12, STAIN), a_row("b", 0, STAIN, ANTS), a_row("c", 5))

    found = {one.text: one for one in by_evidence(rows)}

    stain = found["old stain"]
    assert (stain.surfaces, stain.found_in, stain.found_sqft) == (2, 1, 12)
    assert stain.expected_in == pytest.approx(0.8)
    assert found[NO_SIGN].found_sqft == 5
    assert list(found) == ["old stain", "live pests", NO_SIGN]


@pytest.mark.parametrize(
    ("found_in", "reading"),
    [
        (0, "tells less than was assumed"),
        (1, "about as assumed"),
        (3, "about as assumed"),
        (4, "tells more than was assumed"),
    ],
)
def test_a_count_speaks_from_five_surfaces_on(found_in: int, reading: str) -> None:
    rows = [a_row(str(at), 3.0 if at < found_in else 0.0, STAIN) for at in range(5)]

    # 5 x 0.4: damage was expected in two of them
    assert by_evidence(rows)[0].reading == reading
    assert by_evidence(rows[:4])[0].reading == "too few to tell"


def test_damage_is_foreseen_only_by_a_sign_of_its_kind() -> None:
    rows = (
        a_row("a", 5, STAIN, found=("rot", "wiring")),
        a_row("b", 5, ANTS, found=("rot", "pests")),
    )

    told = {one.kind: (one.surfaces, one.foreseen, one.missed_at) for one in by_found(rows)}

    assert told == {
        "rot": (2, 1, ("b",)),
        "pests": (1, 1, ()),
        "wiring": (1, 0, ("a",)),
    }


def decided(unseen: Unseen, area: float = 120, damaged: float = 20) -> SimpleNamespace:
    return SimpleNamespace(
        area_sqft=area, damaged_sqft=damaged, prior=0.2, unseen=unseen, evidence=()
    )


def opened(number: int, opened_sqft: float, bad_sqft: float) -> Opened:
    return Opened(
        number=number,
        surface_id="n",
        opened_sqft=opened_sqft,
        bad_sqft=bad_sqft,
        opened_on=date(2026, 11, 25),
    )


def test_openings_of_one_surface_are_taken_together() -> None:
    unseen = Unseen(0.5, 1.0, 3.0)

    (row,) = compared(
        [opened(1, 60, 4), opened(2, 60, 6)],
        {"n": decided(unseen)},  # type: ignore[dict-item]
        {"n": "North"},
        {},
    )

    # 100 sq ft nobody had seen; a quarter of it bad with one chance in two
    assert (row.openings, row.opened_sqft, row.found_sqft) == ((1, 2), 100, 10)
    assert row.expected_sqft == pytest.approx(12.5)
    # Beta(1, 3): as much as a tenth or more with (1 - 0.1) cubed
    assert row.at_least == pytest.approx(0.5 * 0.9**3, abs=0.004)


def test_nothing_or_more_was_certain() -> None:
    assert chance_of_at_least(decided(Unseen(0.3, 1.4, 4.2)), 0.0) == 1.0  # type: ignore[arg-type]
    assert math.isclose(
        chance_of_at_least(decided(Unseen(0.3, 1.4, 4.2)), 1e-9),  # type: ignore[arg-type]
        0.3,
    )
