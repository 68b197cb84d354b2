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
}


def _share(kind: str, group: str, share: float, **more: object) -> dict[str, object]:
    shares = {"low": share, "likely": share, "high": share}
    return {"id": kind, "group": group, "text": kind, "source": "made up", **shares, **more}


HIDDEN = HiddenFile.model_validate(
    {
        "base": _share("no-evidence", "none", 0.0),
        "no_access": _share("not-reached", "access", 0.2),
        "kinds": [
            _share("old-stain", "water", 0.1),
            _share("wet-stain", "water", 0.5),
            _share("leak-above", "water", 0.3, falls=True),
            _share("live-pests", "pests", 0.4),
        ],
        "linings": [
            {
                "lining": lining,
                "strip": "strip",
                "patch": "patch",
                "line": "line",
                "finish": "finish",
            }
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
        "correlation": 0.25,
        **{
            f"{name}_source": "made up"
            for name in (
                "burden", "region", "markup", "poor_access", "change_order", "haul", "correlation",
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


def _prices() -> dict[str, Price]:
    return {
        name: Price(
            work=name,
            hours=three(0, 0, 0),
            materials_usd=three(usd, usd, usd),
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
    building: Building, *findings: Finding, walk: Walk | None = None
) -> tuple[SurfaceDecision, Decision]:
    surfaces = {surface.id: surface for surface in surfaces_of(building)}
    decision = decide(
        building,
        surfaces,
        walk or _walked(surfaces),
        findings,
        _works(),
        _prices(),
        FACTORS,
        HIDDEN,
    )
    return next(one for one in decision.surfaces if one.surface_id == NORTH), decision


OPEN = WorkCall(work=OPEN_LINING, take=Take.AREA)
ZONE = Rectangle(4, 0, 4, 4)


def test_every_lined_surface_is_decided_and_no_other(shed: Building) -> None:
    _, decision = _decide(shed)
    sides = {f"main.{side}.inside" for side in ("north", "east", "south", "west")}
    assert {one.surface_id for one in decision.surfaces} == sides | {"main.ceiling"}


def test_both_courses_of_a_damaged_wall(shed: Building) -> None:
    # D = 4 x 4 = 16; share .5; U = 192 - 16 = 176
    # keep: patch 160, insulate 3 x 192 = 576, later 176 x .5 x (5 + 10) x 1.2 = 1,584
    # gut: protect 100 / 5 = 20, strip 192, insulate 192, line and finish 960,
    # found 176 x .5 x 5 = 440
    one, _ = _decide(shed, _finding(NORTH, OPEN, zone=ZONE, hidden="wet-stain"))
    assert one.damaged_sqft == pytest.approx(16)
    assert one.keep.expected == pytest.approx(160 + 576 + 1584)
    assert one.gut.expected == pytest.approx(20 + 192 + 192 + 960 + 440)
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


def test_evidence_of_one_cause_counts_once_and_two_causes_combine(shed: Building) -> None:
    one, _ = _decide(
        shed,
        _finding(hidden="old-stain"),
        _finding(hidden="wet-stain"),
        _finding(hidden="live-pests"),
    )
    # water .5 (the stronger), pests .4: 1 - .5 x .6
    assert float(one.hidden_share.likely) == pytest.approx(0.7)
    assert {piece.kind for piece in one.evidence} == {"wet-stain", "live-pests"}


@pytest.mark.parametrize(
    ("surface_id", "kind", "expected"),
    [
        ("main.north.outside", "wet-stain", 0.5),
        ("main.roof.north", "leak-above", 0.3),
        ("main.roof.north", "wet-stain", 0.0),  # does not speak for what is below
        ("main.roof.south", "leak-above", 0.0),  # the other slope
        ("main.south.inside", "wet-stain", 0.0),
    ],
)
def test_evidence_reaches_the_other_face_and_what_lies_below(
    shed: Building, surface_id: str, kind: str, expected: float
) -> None:
    one, _ = _decide(shed, _finding(surface_id, hidden=kind))
    assert float(one.hidden_share.likely) == pytest.approx(expected)


def test_a_surface_nobody_walked_is_unknown_not_sound(shed: Building) -> None:
    one, _ = _decide(shed, walk=Walk())
    assert one.unknown == "not walked"
    assert float(one.hidden_share.likely) == pytest.approx(0.2)
    assert "Nobody looked" in in_words(one)


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
    above = float(one.hidden_share.likely) > one.break_even_share
    assert (one.gut.expected < one.keep.expected) == above
