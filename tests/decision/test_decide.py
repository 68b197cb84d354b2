"""Both courses by hand, with made-up round prices per sq ft and no markup.

strip 1, patch 10, line 4, finish 1, repair behind 5, insulate open 1 or closed 3, protect 100;
change orders 20 % dearer. The shed has five lined surfaces: four walls and the ceiling.
"""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st
from small_shed import SHED, make_work, three

from leanto.building.kinds import Lining
from leanto.building.load import parse_building
from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of
from leanto.checklist.condition import Condition
from leanto.cost.price import Factors, Price
from leanto.decision.courses import Book
from leanto.decision.decide import decide
from leanto.decision.hidden import HiddenFile
from leanto.decision.model import Course, Decision, SurfaceDecision
from leanto.decision.words import headline, in_words, interior_in_words
from leanto.record.observation import Observation, ObservationKey, Overruling
from leanto.record.walk import Walk
from leanto.rules.finding import CalledWork, Finding
from leanto.rules.model import OPEN_LINING, Decides, Take, Urgency, WorkCall
from leanto.scope.work import Trade, Work

NORTH = "main.north.inside"
AREA = 24 * 8
USD = {
    "strip": 1,
    "patch": 10,
    "line": 4,
    "finish": 1,
    "repair": 5,
    "insulate-open": 1,
    "insulate-closed": 3,
    "wire-open": 2,
    "wire-closed": 4,
    "protect": 100,
    "sister": 30,
    "hole": 40,
}


def _kind(kind: str, group: str, ratio: float | None, **more: object) -> dict[str, object]:
    return {"id": kind, "group": group, "text": kind, "ratio": ratio, "source": "made up", **more}


HIDDEN = HiddenFile.model_validate(
    {
        "prior": {
            "chance": 0.2,
            "linings": {"fiberboard": 4},
            "foundations": {"piers": 0.5},
            "ages": [{"up_to_years": 50, "ratio": 0.5}, {"up_to_years": 100, "ratio": 1}],
            "source": "made up",
        },
        "extent": {"a": 1, "b": 1, "source": "made up"},
        "not_reached": "not-reached",
        "kinds": [
            _kind("not-reached", "access", 2.0),
            _kind("old-stain", "water", 2.0),
            _kind("wet-stain", "water", 16.0),
            _kind("leak-above", "water", 6.0, falls=True),
            _kind("live-pests", "pests", 4.0),
            _kind("opened-clean", "opening", 0.25),
            _kind("opened-bad", "opening", None, is_proof=True),
        ],
        "test_hole": {
            "work": "hole",
            "shows_at_evidence": 0.8,
            "source": "made up",
        },
        "linings": [
            {"lining": lining} | {work: work for work in ("strip", "patch", "line", "finish")}
            for lining in Lining
            if lining is not Lining.NONE
        ],
        "repair_open": "repair",
        "insulate_open": "insulate-open",
        "insulate_closed": "insulate-closed",
        "wire_open": "wire-open",
        "wire_closed": "wire-closed",
        "wire_ft_per_sqft": 0.25,
        "wire_source": "made up",
        "protect": "protect",
    }
)
FACTORS = Factors.model_validate(
    {
        "wages": [
            {"trade": t, "hourly_usd": three(1, 1, 1), "source": "made up", "dated": "2026-01-01"}
            for t in Trade
        ],
        "burden": 1,
        "region": 1,
        "overhead_pct": 0,
        "profit_pct": 0,
        "poor_access": three(2, 2, 2),
        "change_order_pct": three(20, 20, 20),
        "haul_usd_per_lb": three(0, 0, 0),
        "crew": three(1, 1, 1),
        "prices": three(1, 1, 1),
        **{
            f"{name}_source": "made up"
            for name in (
                "burden", "region", "markup", "poor_access", "change_order", "haul", "shared",
            )
        },
    }
)  # fmt: skip


def _works() -> dict[str, Work]:
    special: dict[str, dict[str, object]] = {
        "protect": {"scope": "building", "once": True, "unit": "lump sum"},
        "sister": {"scope": "wall", "unit": "each"},
    }
    return {name: make_work(name, **special.get(name, {})) for name in USD}


def _prices(**changes: int) -> dict[str, Price]:
    """Round prices; a keyword such as ``strip=3`` changes one, ``patch_minimum`` its minimum."""
    return {
        name: Price(
            work=name,
            hours=three(0, 0, 0),
            materials_usd=three(*[changes.get(name, usd)] * 3),
            minimum_usd=Decimal(changes.get(f"{name}_minimum", 0)),
            source="made up",
            dated=date(2026, 1, 1),
        )
        for name, usd in USD.items()
    }


def _finding(surface_id: str | None = NORTH, *calls: WorkCall, **changes: object) -> Finding:
    facts: dict[str, object] = {
        "id": f"rule@{surface_id}",
        "rule_id": "rule",
        "observation": ObservationKey(surface_id or "wiring", "item"),
        "station_name": "",
        "surface_id": surface_id,
        "zone": None,
        "text": "",
        "advice": "",
        "urgency": Urgency.WITH_THE_WORK,
        "danger": False,
        "note": "",
        "photos": (),
        "work": tuple(
            CalledWork(call, float(call.quantity) if call.quantity else None) for call in calls
        ),
        "hidden": None,
        "decides": None,
        "caution": (),
        "watch": "",
        "source": "made up",
    }
    return Finding(**(facts | changes))  # type: ignore[arg-type]


def _walked(surfaces: dict[str, Surface], **changes: object) -> Walk:
    keys = [ObservationKey(surface_id, "item") for surface_id in surfaces]
    seen = {key: Observation(key, Condition.SOUND) for key in keys}
    return Walk(observations=seen, **changes)  # type: ignore[arg-type]


def _decide(
    building: Building, *findings: Finding, walk: Walk | None = None, **prices: int
) -> tuple[SurfaceDecision, Decision]:
    surfaces = {surface.id: surface for surface in surfaces_of(building)}
    book = Book(_works(), _prices(**prices), FACTORS, HIDDEN, surfaces)
    walk = walk or _walked(surfaces)
    decision = decide(building, surfaces, walk, findings, book, date(2026, 6, 1))
    return next(one for one in decision.surfaces if one.surface_id == NORTH), decision


OPEN = WorkCall(work=OPEN_LINING, take=Take.AREA)
ZONE = Rectangle(4, 0, 4, 4)


def test_every_lined_surface_is_decided_and_no_other(shed: Building) -> None:
    _, decision = _decide(shed)
    sides = {f"main.{side}.inside" for side in ("north", "east", "south", "west")}
    assert {one.surface_id for one in decision.surfaces} == sides | {"main.ceiling"}


def test_both_courses_of_a_damaged_wall(shed: Building) -> None:
    # D = 4 x 4 = 16; U = 192 - 16 = 176; odds .25 x 16 = 4, chance .8, half of it: share .4
    # keep: patch 160, insulate 3 x 192 = 576, later 176 x .4 x (5 + 10) x 1.2 = 1,267.20
    # gut: protect 100 / 5 = 20, strip 192, insulate 192, line and finish 960,
    # found 176 x .4 x 5 = 352
    one, _ = _decide(shed, _finding(NORTH, OPEN, zone=ZONE, hidden="wet-stain"))
    assert one.damaged_sqft == pytest.approx(16)
    assert one.keep.expected == pytest.approx(160 + 576 + 1267.2)
    assert one.gut.expected == pytest.approx(20 + 192 + 192 + 960 + 352)
    assert one.computed is Course.GUT


def test_break_even_is_where_both_lines_cross(shed: Building) -> None:
    # keep(x) = 736 + x 176 x 18; gut(x) = 1,364 + x 176 x 5; cross at 628 / (176 x 13)
    one, _ = _decide(shed, _finding(NORTH, OPEN, zone=ZONE, hidden="old-stain"))
    assert one.break_even_share == pytest.approx(628 / (176 * 13))
    assert one.computed is Course.KEEP
    assert "more than 27 %" in in_words(one)


def test_a_wall_too_bad_everywhere_is_never_cheaper_to_keep(shed: Building) -> None:
    one, _ = _decide(shed, _finding(NORTH, OPEN))
    assert one.damaged_sqft == pytest.approx(AREA)
    assert one.break_even_share is None
    assert one.computed is Course.GUT


def test_work_behind_a_kept_lining_is_dearer_only_in_labor(shed: Building) -> None:
    sister = WorkCall(work="sister", take=Take.MEMBERS, behind_lining=True)
    one, _ = _decide(shed, _finding(NORTH, sister, zone=ZONE))
    # Studs at 4, 6 and 8 ft touch the zone 4..8 ft.
    keep = {part.text: part.cost.likely for part in one.keep.parts}
    gut = {part.text: part.cost.likely for part in one.gut.parts}
    assert keep["repair behind it, through the openings"] == 90
    assert gut["repair behind it, in the open"] == 90
    assert keep["cut out and patch the bad lining"] == 160


def test_evidence_of_one_cause_counts_once_and_two_causes_multiply(shed: Building) -> None:
    signs = [_finding(hidden=kind) for kind in ("old-stain", "wet-stain", "live-pests")]
    one, _ = _decide(shed, *signs)
    # prior .2: odds .25; water 16 (the stronger of two), pests 4: odds 16
    assert one.unseen.p == pytest.approx(16 / 17)
    assert [piece.kind for piece in one.evidence] == ["wet-stain", "live-pests"]


@pytest.mark.parametrize(
    ("surface_id", "kind", "odds"),
    [
        ("main.north.outside", "wet-stain", 4.0),
        ("main.roof.north", "leak-above", 1.5),
        ("main.roof.north", "wet-stain", 0.25),  # does not speak for what is below
        ("main.roof.south", "leak-above", 0.25),  # the other slope
        ("main.south.inside", "wet-stain", 0.25),
        (NORTH, "opened-clean", 0.0625),
    ],
)
def test_evidence_reaches_the_other_face_and_what_lies_below(
    shed: Building, surface_id: str, kind: str, odds: float
) -> None:
    one, _ = _decide(shed, _finding(surface_id, hidden=kind))
    assert one.unseen.p == pytest.approx(odds / (1 + odds))


@pytest.mark.parametrize(
    ("changes", "surface_id", "odds"),
    [
        ({}, NORTH, 0.25),
        ({}, "main.ceiling", 1.0),  # fiberboard, 4 times
        ({"year_built": 1990}, NORTH, 0.125),  # 36 years
        ({"year_built": 1850}, NORTH, 0.25),  # older than the last band
        ({"foundation": "piers"}, NORTH, 0.125),
    ],
)
def test_the_prior_follows_lining_age_and_foundation(
    shed: Building, changes: dict[str, object], surface_id: str, odds: float
) -> None:
    building = Building.model_validate(shed.model_dump() | changes)
    _, decision = _decide(building)
    one = next(one for one in decision.surfaces if one.surface_id == surface_id)
    assert one.prior == pytest.approx(odds / (1 + odds))


def test_a_surface_nobody_walked_is_unknown_not_sound(shed: Building) -> None:
    one, _ = _decide(shed, walk=Walk())
    assert one.unknown == "not walked"
    assert one.unseen.p == pytest.approx(1 / 3)  # odds .25 x 2
    assert "Nobody looked" in in_words(one)


def test_a_hole_that_showed_damage_settles_it(shed: Building) -> None:
    one, _ = _decide(shed, _finding(hidden="opened-bad"))
    assert one.unseen.p == 1.0
    assert one.hole is None
    assert "Damage was seen behind it" in in_words(one)


def test_a_hole_is_worth_making_where_its_answer_turns_the_choice(shed: Building) -> None:
    one, _ = _decide(shed, _finding(NORTH, zone=ZONE, hidden="leak-above"))
    assert one.hole is not None
    # keep(x) = 576 + x 192 x 18; gut(x) = 1,444 + x 192 x 5: no other wall bears the set-up
    keep, gut = (lambda x: 576 + 3456 * x), (lambda x: 1444 + 960 * x)
    now = min(keep(0.3), gut(0.3))
    # At the signs: chance .6, shows .8: bad .48 -> share .5; clean .52 -> chance .12 / .52
    at_signs = now - 0.48 * gut(0.5) - 0.52 * keep(0.12 / 0.52 / 2)
    # Elsewhere one point of Beta(1, 1): bad .3 -> Beta(2, 1), share 2/3; clean .7 -> chance 3/7
    # of Beta(1, 2), share 1/7. It tells how far the damage goes, and is worth more here.
    elsewhere = now - 0.3 * gut(2 / 3) - 0.7 * keep(1 / 7)
    assert 0 < at_signs < elsewhere
    assert one.hole.worth_usd == pytest.approx(elsewhere)
    assert (one.hole.place, one.hole.away) == (None, True)
    assert (one.hole.if_bad, one.hole.if_clean) == (Course.GUT, Course.KEEP)
    assert one.hole.pays
    assert one.place == ZONE
    assert "Open one test hole first, away from the signs" in in_words(one)


def test_shared_set_up_turns_the_answer_of_a_wall(shed: Building) -> None:
    # Alone each wall bears a fifth of the set-up; once other surfaces are gutted it costs nothing.
    keep_dear = {"insulate-closed": 7}  # keep 1,344 + 1,728 x .1 ; gut 1,344 + set-up + 96
    signs = [_finding(one, OPEN) for one in ("main.ceiling", "main.south.inside")]
    one, decision = _decide(shed, *signs, protect=2000, **keep_dear)
    assert decision.is_exact
    assert one.alone is Course.KEEP
    assert one.computed is Course.GUT
    assert "On its own it would be cheaper to keep" in in_words(one)


def test_a_decisive_condition_wins_over_the_cost(shed: Building) -> None:
    decides = Decides(course="gut", reason="sewage reached the wall")
    plain, _ = _decide(shed)
    one, _ = _decide(shed, _finding(decides=decides))
    assert (plain.computed, one.computed) == (Course.KEEP, Course.GUT)
    assert "sewage reached the wall" in in_words(one)


def test_suspected_asbestos_means_test_before_gutting(shed: Building) -> None:
    test = Decides(course="test first", reason="fiberboard may hold asbestos")
    one, _ = _decide(shed, _finding(NORTH, OPEN), _finding(NORTH, decides=test))
    assert headline(one) == "Test first, then gut"
    assert "may hold asbestos" in in_words(one)


def test_the_owner_may_overrule_with_a_reason(shed: Building, surfaces: dict[str, Surface]) -> None:
    overruling = Overruling(NORTH, "gut", "I want to see the sill")
    walk = _walked(surfaces, overrulings={NORTH: overruling})
    one, decision = _decide(shed, walk=walk)
    assert (one.computed, one.chosen) == (Course.KEEP, Course.GUT)
    assert "I want to see the sill" in in_words(one)
    assert interior_in_words(decision).startswith("Gut 1 of 5")


def test_new_wiring_called_for_the_building_is_priced_on_every_surface(shed: Building) -> None:
    wiring = WorkCall(work="new-wiring", quantity="1")
    one, _ = _decide(shed, _finding(None, wiring))
    keep = {part.text: part.cost.likely for part in one.keep.parts}
    gut = {part.text: part.cost.likely for part in one.gut.parts}
    assert keep["fish new cable through closed bays"] == Decimal("192.000")  # 192 x .25 x 4
    assert gut["run new cable in the open"] == Decimal("96.000")


@given(share=st.sampled_from(["old-stain", "wet-stain", "live-pests"]), width=st.integers(1, 20))
def test_keep_and_gut_cross_exactly_at_the_break_even(share: str, width: int) -> None:
    building = parse_building(SHED, "shed.yaml")
    finding = _finding(NORTH, OPEN, zone=Rectangle(2, 0, width, 4), hidden=share)
    one, _ = _decide(building, finding)
    if one.break_even_share is None:
        return
    above = one.unseen.mean > one.break_even_share
    assert (one.gut.expected < one.keep.expected) == above


_KINDS = ("old-stain", "wet-stain", "leak-above", "live-pests", "opened-bad")


@given(st.lists(st.sampled_from(_KINDS), max_size=3), st.sampled_from(_KINDS))
def test_more_evidence_of_damage_never_makes_keeping_look_better(
    kinds: list[str], more: str
) -> None:
    building = parse_building(SHED, "shed.yaml")
    before, _ = _decide(building, *(_finding(hidden=kind) for kind in kinds))
    after, _ = _decide(building, *(_finding(hidden=kind) for kind in (*kinds, more)))
    margin = after.keep.expected - after.gut.expected
    assert margin >= before.keep.expected - before.gut.expected - 1e-6


@given(st.integers(0, 20), st.integers(0, 20))
def test_a_dearer_strip_never_makes_gutting_look_better(one: int, other: int) -> None:
    building = parse_building(SHED, "shed.yaml")
    finding = _finding(NORTH, OPEN, zone=ZONE, hidden="wet-stain")
    cheap, _ = _decide(building, finding, strip=min(one, other))
    dear, _ = _decide(building, finding, strip=max(one, other))
    assert dear.gut.expected >= cheap.gut.expected
    assert not (cheap.computed is Course.KEEP and dear.computed is Course.GUT)


@given(st.permutations([("old-stain", 2), ("wet-stain", 6), ("live-pests", 12)]))
def test_the_order_of_observations_changes_nothing(order: list[tuple[str, int]]) -> None:
    building = parse_building(SHED, "shed.yaml")
    findings = [
        _finding(NORTH, OPEN, zone=Rectangle(left, 0, 3, 3), hidden=kind, id=kind)
        for kind, left in order
    ]
    one, _ = _decide(building, *findings)
    assert one.damaged_sqft == pytest.approx(4 * 3 * 3)
    assert one.unseen.p == pytest.approx(16 / 17)
