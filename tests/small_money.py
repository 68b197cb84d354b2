"""A money plan for the small lined shed, with made-up works at round prices and real ranges."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from small_shed import SHED, make_work, three

from leanto.building.kinds import Lining
from leanto.building.load import parse_building
from leanto.building.model import Building
from leanto.building.surfaces import surfaces_of
from leanto.checklist.condition import Condition
from leanto.checklist.model import Caution
from leanto.cost.estimate import Estimate
from leanto.cost.price import Factors, Price
from leanto.cost.total import estimate_scope
from leanto.decision.budget import MoneyBasis
from leanto.decision.courses import Book
from leanto.decision.decide import decide, hidden_risks
from leanto.decision.hidden import HiddenFile
from leanto.decision.plan import Change, Plan
from leanto.decision.whole import whole_scope
from leanto.record.observation import Observation, ObservationKey, Overruling
from leanto.record.scope_edit import AddedLine, ScopeEdit
from leanto.record.walk import Walk
from leanto.rules.finding import CalledWork, Finding
from leanto.rules.model import Take, Urgency, WorkCall
from leanto.scope.by_owner import marked_by_owner
from leanto.scope.edits import Edits, edited
from leanto.scope.work import Trade

AS_OF = date(2026, 6, 1)
NORTH = "main.north.inside"
WORKS: dict[str, tuple[float, dict[str, object]]] = {
    "strip": (1, {"trade": "laborer", "phase": "strip"}),
    "patch": (10, {"phase": "close in"}),
    "line": (4, {"phase": "close in"}),
    "finish": (2, {"trade": "painter", "phase": "finish"}),
    "repair": (5, {}),
    "insulate-open": (1, {"trade": "insulator", "phase": "close in"}),
    "insulate-closed": (3, {"trade": "insulator", "phase": "close in"}),
    "wire-open": (2, {"trade": "electrician", "phase": "rough-in", "unit": "lf"}),
    "wire-closed": (4, {"trade": "electrician", "phase": "rough-in", "unit": "lf"}),
    "protect": (
        200,
        {"scope": "building", "once": True, "unit": "lump sum", "phase": "protect and make safe"},
    ),
    "reroof": (8, {"trade": "roofer", "phase": "weather shell", "caution": ["ladder"]}),
    "strip-roof": (2, {"trade": "roofer", "phase": "strip", "caution": ["ladder"]}),
    "brace": (300, {"unit": "each", "caution": ["structure"]}),
    "gravel": (6, {"trade": "laborer", "unit": "lf", "phase": "weather shell"}),
}
CAUTIONS = {
    one.id: one
    for one in (
        Caution(
            id="structure",
            title="Unstable structure",
            text="x" * 9,
            who="An engineer",
            source="made up",
        ),
        Caution(id="ladder", title="Ladder", text="x" * 9, who="", source="made up"),
    )
}


def works() -> dict[str, object]:
    return {name: make_work(name, **facts) for name, (_, facts) in WORKS.items()}


def a_price(work: str, usd: float, minimum: float = 0) -> Price:
    """Half labor at a wage of 20, half materials, each from four fifths to seven fifths."""
    hours, materials = usd / 40, usd / 2
    return Price.model_validate(
        {
            "work": work,
            "hours": three(hours * 0.8, hours, hours * 1.4),
            "materials_usd": three(materials * 0.8, materials, materials * 1.4),
            "minimum_usd": minimum,
            "source": "made up",
            "dated": "2026-01-01",
        }
    )


def some_factors(**changes: object) -> Factors:
    names = ("burden", "region", "markup", "poor_access", "change_order", "haul", "shared")
    facts: dict[str, object] = {
        "wages": [
            {
                "trade": t,
                "hourly_usd": three(16, 20, 27),
                "source": "made up",
                "dated": "2026-01-01",
            }
            for t in Trade
        ],
        "burden": 1,
        "region": 1,
        "overhead_pct": 10,
        "profit_pct": 10,
        "poor_access": three(1, 1.5, 2),
        "change_order_pct": three(10, 20, 30),
        "haul_usd_per_lb": three(0, 0, 0),
        "crew": three(0.85, 1, 1.35),
        "prices": three(0.9, 1, 1.2),
        **{f"{name}_source": "made up" for name in names},
    }
    return Factors.model_validate(facts | changes)


def some_hidden(**changes: object) -> HiddenFile:
    kinds = [
        ("not-reached", "access", 2.0),
        ("wet-stain", "water", 8.0),
        ("old-stain", "water", 3.0),
    ]
    facts: dict[str, object] = {
        "prior": {
            "chance": 0.2,
            "ages": [{"up_to_years": 100, "ratio": 1}],
            "source": "made up",
        },
        "extent": {"a": 1.4, "b": 4.2, "source": "made up"},
        "not_reached": "not-reached",
        "kinds": [
            {"id": id_, "group": group, "text": id_, "ratio": ratio, "source": "made up"}
            for id_, group, ratio in kinds
        ],
        "test_hole": {
            "work": "strip",
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
    return HiddenFile.model_validate(facts | changes)


def a_finding(surface_id: str | None, *calls: WorkCall, **changes: object) -> Finding:
    facts: dict[str, object] = {
        "id": f"rule@{surface_id}",
        "rule_id": "rule",
        "observation": ObservationKey(surface_id or "site", "item"),
        "station_name": "somewhere",
        "surface_id": surface_id,
        "zone": None,
        "text": "Something was found.",
        "advice": "",
        "urgency": Urgency.WITH_THE_WORK,
        "danger": False,
        "note": "",
        "photos": (),
        "work": tuple(CalledWork(call, None if call.take else 1.0) for call in calls),
        "hidden": None,
        "decides": None,
        "caution": (),
        "watch": "",
        "source": "made up",
    }
    return Finding(**(facts | changes))  # type: ignore[arg-type]


ROOF = (
    WorkCall(work="strip-roof", take=Take.SURFACE),
    WorkCall(work="reroof", take=Take.SURFACE),
)
BRACE = WorkCall(work="brace", quantity="1")
GRAVEL = WorkCall(work="gravel", take=Take.WIDTH)


def a_shed(**changes: object) -> Building:
    return Building.model_validate(parse_building(SHED, "shed.yaml").model_dump() | changes)


def a_plan(
    *findings: Finding,
    building: Building | None = None,
    edits: Iterable[ScopeEdit] = (),
    added: tuple[AddedLine, ...] = (),
    overruled: Iterable[Overruling] = (),
    hidden: HiddenFile | None = None,
    factors: Factors | None = None,
) -> Plan:
    building = building or a_shed()
    surfaces = {surface.id: surface for surface in surfaces_of(building)}
    prices = {name: a_price(name, usd) for name, (usd, _) in WORKS.items()}
    edits = tuple(edits)
    owned = marked_by_owner({edit.item_id: edit for edit in edits}, works(), CAUTIONS)  # type: ignore[arg-type]
    book = Book(
        works(), prices, factors or some_factors(), hidden or some_hidden(), surfaces, owned
    )  # type: ignore[arg-type]
    keys = [ObservationKey(surface_id, "item") for surface_id in surfaces]
    walk = Walk(
        observations={key: Observation(key, Condition.SOUND) for key in keys},
        overrulings={one.surface_id: one for one in overruled},
    )
    decision = decide(building, surfaces, walk, findings, book, AS_OF)
    changes = Edits({edit.item_id: edit for edit in edits}, added)
    return Plan(book, findings, decision, changes, CAUTIONS)


def estimate_of(plan: Plan) -> Estimate:
    book = plan.book
    scope = edited(
        whole_scope(plan.findings, plan.decision, book),
        plan.edits,
        book.works,
        book.surfaces,
        plan.cautions,
    )
    return estimate_scope(
        scope, book.prices, book.factors, hidden_risks(plan.decision, book.shared)
    )


def a_basis(plan: Plan, **changes: object) -> MoneyBasis:
    return MoneyBasis(a_shed(**changes), plan, estimate_of(plan), AS_OF)


NOTHING = Change()
