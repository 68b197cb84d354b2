"""What a test hole does to the chance of damage, by hand and against planning to look."""

from __future__ import annotations

from itertools import permutations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_money import NORTH, a_finding, a_plan, some_hidden

from leanto.building.rectangle import Rectangle
from leanto.decision.hidden import HiddenFile, HiddenKind
from leanto.decision.model import SurfaceDecision
from leanto.record.observation import ObservationKey
from leanto.rules.finding import Finding

STAIN = Rectangle(2, 0, 4, 4)
AT_SIGNS, AWAY = Rectangle(3, 1, 1, 1), Rectangle(20, 5, 1, 1)


def _kind(kind: str, group: str, **more: object) -> dict[str, object]:
    return {"id": kind, "group": group, "text": kind, "source": "made up", **more}


def _hidden() -> HiddenFile:
    kinds = [
        _kind("not-reached", "access", ratio=2.0),
        _kind("wet-stain", "water", ratio=8.0),
        _kind("old-stain", "water", ratio=3.0),
        _kind("hole-clean", "opening", is_clean_hole=True),
        _kind("hole-bad", "opening", is_proof=True),
    ]
    return some_hidden(kinds=kinds, extent={"a": 1, "b": 3, "source": "made up"})


def _hole(kind: str, zone: Rectangle | None, number: int = 1) -> Finding:
    key = ObservationKey(NORTH, "test-hole", number)
    return a_finding(NORTH, hidden=kind, zone=zone, observation=key, id=f"{kind}-{number}")


def _north(*findings: Finding) -> SurfaceDecision:
    plan = a_plan(*findings, hidden=_hidden())
    return next(one for one in plan.decision.surfaces if one.surface_id == NORTH)


WET = a_finding(NORTH, hidden="wet-stain", zone=STAIN, id="wet")
OLD = a_finding(NORTH, hidden="old-stain", zone=Rectangle(14, 0, 3, 3), id="old")


@pytest.mark.parametrize(
    ("signs", "zones", "odds", "extent"),
    [
        # Prior .2: odds 1/4. The stain 8: 2. At the signs a hole shows .8: clean leaves 1/5.
        ([], [], 0.25, (1, 3)),
        ([WET], [], 2.0, (1, 3)),
        ([WET], [AT_SIGNS], 0.4, (1, 3)),
        # Away from the signs it is a sample: E[1 - x] = 3/4, and sound once of Beta(1, 3).
        ([WET], [AWAY], 1.5, (1, 4)),
        ([WET], [None], 1.5, (1, 4)),  # where it was made is not known
        ([], [AT_SIGNS], 0.1875, (1, 4)),  # no sign points anywhere
        # Two samples: E[(1 - x)^2] = 3/4 x 4/5; at the signs looking twice counts once.
        ([], [AT_SIGNS, AWAY], 0.25 * 0.6, (1, 5)),
        ([WET], [AT_SIGNS, AT_SIGNS], 0.4, (1, 3)),
        ([WET], [AT_SIGNS, AWAY], 0.3, (1, 4)),
    ],
)
def test_a_clean_hole_counts_by_where_it_was_made(
    signs: list[Finding], zones: list[Rectangle | None], odds: float, extent: tuple[float, float]
) -> None:
    holes = [_hole("hole-clean", zone, number) for number, zone in enumerate(zones, start=1)]
    one = _north(*signs, *holes)
    assert one.unseen.p == pytest.approx(odds / (1 + odds))
    assert (one.unseen.a, one.unseen.b) == extent


@pytest.mark.parametrize(("zone", "a"), [(AT_SIGNS, 1), (AWAY, 2)])
def test_damage_away_from_the_signs_spreads_further(zone: Rectangle, a: float) -> None:
    one = _north(WET, _hole("hole-bad", zone))
    assert (one.unseen.p, one.unseen.a, one.unseen.b) == (1.0, a, 3)


def test_the_hole_is_planned_where_the_strongest_sign_is() -> None:
    assert _north(WET, OLD).place == STAIN
    assert _north(OLD).place == Rectangle(14, 0, 3, 3)
    assert _north().place is None


@pytest.mark.parametrize("signs", [[], [OLD], [WET], [WET, OLD]])
def test_what_a_hole_was_planned_to_tell_is_what_it_tells(signs: list[Finding]) -> None:
    before = _north(*signs)
    assert before.hole is not None
    zone = before.hole.place or AWAY
    after = _north(*signs, _hole("hole-clean", zone))
    assert after.unseen.p == pytest.approx(before.hole.after_clean)


def test_more_holes_never_contradict_each_other_by_their_order() -> None:
    holes = [
        _hole("hole-clean", AWAY, 1),
        _hole("hole-bad", AT_SIGNS, 2),
        _hole("hole-clean", None, 3),
    ]
    answers = {_north(WET, *order).unseen for order in permutations(holes)}
    (unseen,) = answers
    assert (unseen.p, unseen.a, unseen.b) == (1.0, 1, 5)  # damage seen goes before sound samples


@given(st.lists(st.sampled_from([AWAY, AT_SIGNS, None]), max_size=4))
def test_sound_holes_never_raise_the_chance(zones: list[Rectangle | None]) -> None:
    last = _north(WET).unseen
    for count in range(1, len(zones) + 1):
        holes = [_hole("hole-clean", zone, at) for at, zone in enumerate(zones[:count], start=1)]
        unseen = _north(WET, *holes).unseen
        assert unseen.p <= last.p + 1e-12
        assert unseen.mean <= last.mean + 1e-12
        last = unseen


@pytest.mark.parametrize(
    "facts",
    [
        {},
        {"ratio": 2.0, "is_proof": True},
        {"ratio": 2.0, "is_clean_hole": True},
        {"is_proof": True, "is_clean_hole": True},
        {"ratio": 0},
    ],
)
def test_a_kind_of_evidence_has_one_weight(facts: dict[str, object]) -> None:
    with pytest.raises(ValueError, match=r"give one of|greater than 0"):
        HiddenKind.model_validate(_kind("some-sign", "group", **facts))
