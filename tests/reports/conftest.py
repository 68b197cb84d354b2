"""Hand-made assessments: findings and a library written here, the rest computed as usual."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from typing import Any

import pytest
from PIL import Image, ImageDraw
from small_shed import make_work, three

from leanto.assessment import Assessment, NotReached, assess
from leanto.building.kinds import Lining
from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.building.stations import stations_of
from leanto.checklist.condition import Condition
from leanto.checklist.model import Caution, Checklist, Measure
from leanto.cost.price import Factors, Price
from leanto.decision.hidden import HiddenFile
from leanto.library import Library
from leanto.record.observation import Observation, ObservationKey, Overruling, Photo
from leanto.record.walk import Walk
from leanto.rules.finding import CalledWork, Finding, Judged, OpenQuestion, Undecided
from leanto.rules.model import OPEN_LINING, Decides, Take, Urgency, WorkCall
from leanto.scope.work import Trade

AS_OF = date(2026, 6, 1)
SOURCED = (
    "burden",
    "region",
    "markup",
    "poor_access",
    "change_order",
    "haul",
    "correlation",
)
WORKS: dict[str, tuple[float, dict[str, object]]] = {
    "strip": (1.0, {"title": "Strip the lining", "trade": "laborer", "phase": "strip"}),
    "patch": (9.0, {"title": "Patch the lining", "phase": "close in", "element": "C3010"}),
    "line": (4.0, {"title": "New lining", "phase": "close in", "element": "C3010"}),
    "finish": (1.5, {"title": "Paint", "trade": "painter", "phase": "finish", "element": "C3010"}),
    "repair": (6.0, {"title": "Repair the framing behind"}),
    "insulate-open": (1.2, {"trade": "insulator", "phase": "close in"}),
    "insulate-closed": (3.0, {"trade": "insulator", "phase": "close in"}),
    "wire-open": (2.0, {"trade": "electrician", "phase": "rough-in", "element": "D5020"}),
    "wire-closed": (4.0, {"trade": "electrician", "phase": "rough-in", "element": "D5020"}),
    "protect": (150.0, {"scope": "building", "once": True, "unit": "lump sum", "phase": "strip"}),
    "replace-sill": (
        55.0,
        {
            "title": "Replace the sill",
            "unit": "lf",
            "waste_pct": 10,
            "purchase": {"size": 8, "name": "8 ft timber"},
            "caution": ["structure"],
        },
    ),
    "reroof": (7.0, {"title": "New covering", "trade": "roofer", "phase": "weather shell"}),
}
CAUTIONS = (
    Caution(
        id="structure",
        title="Unstable structure",
        text="Shore before anything that carries load is cut.",
        who="Structural engineer",
        source="Made up for a test",
    ),
    Caution(
        id="lead", title="Lead paint", text="Treat it as lead until tested.", source="Made up too"
    ),
)
MEASURES = (
    Measure(id="probe_depth_in", label="Awl sinks in", unit="in", low=0, high=12),
    Measure(id="moisture_pct", label="Meter reading", unit="pct", low=5, high=99),
)
SHED: dict[str, Any] = {
    "name": "Test shed",
    "place": "Nowhere Lane",
    "owner": "A. Owner",
    "year_built": 1938,
    "budget_usd": 12000,
    "blocks": [
        {
            "id": "main",
            "name": "Main room",
            "length": 24,
            "width": 12,
            "eave_height": 8,
            "walls": {"lining": "beaded board", "spacing": 2},
            "ceiling": {"lining": "fiberboard", "spacing": 2},
            "roof": {"pitch": "6:12", "spacing": 2},
        }
    ],
    "openings": [
        {"id": "D1", "kind": "door", "on": "main.south", "from_left": 10, "width": 3, "height": 6.5}
    ],
}


def a_building(**changes: Any) -> Building:
    return Building.model_validate(SHED | changes)


def a_library() -> Library:
    """Works at round prices, half of it labor at a wage of one."""
    kind = {"group": "water", "source": "made up", "ratio": 3}
    ages = [{"up_to_years": 100, "ratio": 1}]
    shows = {"shows_at_evidence": 0.8}
    hidden = HiddenFile.model_validate(
        {
            "prior": {"chance": 0.1, "ages": ages, "source": "made up"},
            "extent": {"a": 1.5, "b": 4.5, "source": "made up"},
            "not_reached": "not-reached",
            "kinds": [
                {"id": "not-reached", "text": "not reached", **kind},
                {"id": "wet", "text": "a wet stain", **kind},
            ],
            "test_hole": {"work": "protect", "source": "made up", **shows},
            "linings": [
                {
                    "lining": x,
                    "strip": "strip",
                    "patch": "patch",
                    "line": "line",
                    "finish": "finish",
                }
                for x in Lining
                if x is not Lining.NONE
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
    factors = Factors.model_validate(
        {
            "wages": [
                {"trade": t, "hourly_usd": three(1, 1, 1), "source": "made up", "dated": AS_OF}
                for t in Trade
            ],
            "burden": 1,
            "region": 1,
            "overhead_pct": 10,
            "profit_pct": 10,
            "poor_access": three(1, 1.5, 2),
            "change_order_pct": three(10, 20, 30),
            "haul_usd_per_lb": three(0.05, 0.1, 0.2),
            "crew": three(1, 1, 1),
            "prices": three(1, 1, 1),
        }
        | {
            f"{name}_source": "made up"
            for name in [
                "burden",
                "region",
                "markup",
                "poor_access",
                "change_order",
                "haul",
                "shared",
            ]
        }
    )
    prices = {
        name: Price(
            work=name,
            hours=three(usd * 0.4, usd * 0.5, usd * 0.7),
            materials_usd=three(usd * 0.4, usd * 0.5, usd * 0.8),
            debris_lb=1,
            source="made up",
            dated=AS_OF,
        )
        for name, (usd, _) in WORKS.items()
    }
    return Library(
        checklist=Checklist(sections=(), measures=MEASURES, cautions=CAUTIONS),
        rules=(),
        works={name: make_work(name, **facts) for name, (_, facts) in WORKS.items()},
        prices=prices,
        factors=factors,
        hidden=hidden,
        versions={"checklists": "0123456789ab", "prices": "ba9876543210"},
    )


@dataclass(slots=True)
class Walked:
    """Findings put down one by one, and what follows from them."""

    building: Building = field(default_factory=a_building)
    observations: dict[ObservationKey, Observation] = field(default_factory=dict)
    findings: list[Finding] = field(default_factory=list)
    questions: list[OpenQuestion] = field(default_factory=list)
    undecided: list[Undecided] = field(default_factory=list)
    overrulings: dict[str, Overruling] = field(default_factory=dict)

    def find(
        self,
        text: str,
        station: str,
        zone: Rectangle | None = None,
        work: tuple[WorkCall, ...] = (),
        condition: Condition = Condition.FAILED,
        measures: dict[str, float | str] | None = None,
        **changes: Any,
    ) -> Finding:
        """A finding at a surface's station, the observation behind it included."""
        number = len(self.findings) + 1
        key = ObservationKey(station, f"item-{number}")
        names = {s.id: (s.name, s.surface_id) for s in stations_of(self.building)}
        finding = Finding(
            id=f"rule-{number}@{key}",
            rule_id=f"rule-{number}",
            observation=key,
            station_name=names[station][0],
            surface_id=names[station][1],
            zone=zone,
            text=text,
            advice="",
            urgency=Urgency.WITH_THE_WORK,
            danger=False,
            note="",
            photos=(),
            work=tuple(CalledWork(call, 1.0 if call.take is None else None) for call in work),
            hidden=None,
            decides=None,
            caution=(),
            watch="",
            source="Made up for a test",
        )
        finding = replace(finding, **changes)
        self.findings.append(finding)
        self.observations[key] = Observation(
            key=key,
            condition=condition,
            measures=measures or {},
            zone=zone,
            note=finding.note,
            danger=finding.danger,
            photos=finding.photos,
        )
        return finding

    def assessment(self) -> Assessment:
        """What the pipeline makes of it, with these findings in place of judged ones."""
        judged = Judged(tuple(self.findings), tuple(self.questions), tuple(self.undecided))
        walk = Walk(self.building, self.observations, overrulings=self.overrulings)
        with pytest.MonkeyPatch.context() as patch:
            patch.setattr("leanto.assessment.judge", lambda *_arguments: judged)
            made = assess(self.building, walk, a_library(), AS_OF)
        missed = NotReached("Site", "The drain", "the owner said: locked $40")
        return replace(made, not_reached=(missed,))


def small_walk() -> Walked:
    """A wet sill with its stain, a roof, a question and a rule left open."""
    walked = Walked()
    sill = walked.find(
        "The sill is rotten.",
        "main.north.outside",
        Rectangle(4.5, 0, 5, 1),
        work=(WorkCall(work="replace-sill", take=Take.WIDTH),),
        urgency=Urgency.NOW,
        danger=True,
        caution=("structure",),
        advice="Cut back to hard wood.",
        note="Owner paid $300 for paint here <b>last</b> year & wants it back.",
        measures={"probe_depth_in": 1.5, "moisture_pct": 24.0},
        photos=(photo("1"),),
    )
    walked.find(
        "The lining is stained.",
        "main.north.inside",
        Rectangle(14, 0, 4, 3),
        work=(WorkCall(work=OPEN_LINING, take=Take.AREA),),
        condition=Condition.WORN,
        hidden="wet",
        cause_id=sill.id,
        decides=Decides(course="test first", reason="The old paint may hold lead."),
    )
    walked.find(
        "The covering is at its end.",
        "main.roof.south",
        work=(WorkCall(work="reroof", take=Take.SURFACE),),
        urgency=Urgency.BEFORE_CLOSING_IN,
        watch="Look again after a storm.",
    )
    walked.questions.append(
        OpenQuestion(sill.id, sill.observation, "What wets this sill?", "Carpenter")
    )
    walked.undecided.append(Undecided("rule-9", sill.observation, "moisture_pct"))
    return walked


def photo(name: str) -> Photo:
    return Photo(digest=name * 64, original_name=f"{name}.jpg")


@pytest.fixture
def walked() -> Walked:
    return small_walk()


@pytest.fixture
def small(walked: Walked) -> Assessment:
    return walked.assessment()


@pytest.fixture
def pictures(tmp_path: Path) -> Callable[[Photo], Path]:
    """Finds a drawn picture for any photo."""

    def path_of(one: Photo) -> Path:
        path = tmp_path / f"{one.digest}.jpg"
        if not path.exists():
            image = Image.new("RGB", (1600, 1200), "#8a7f70")
            ImageDraw.Draw(image).line((0, 0, 1600, 1200), "#40382f", 60)
            image.save(path, "JPEG", quality=82)
        return path

    return path_of
