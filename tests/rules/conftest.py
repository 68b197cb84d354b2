"""A small building, a small checklist and rules in short form, to judge with."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from datetime import date
from typing import Any

import pytest

from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.building.station import Station
from leanto.building.stations import stations_of
from leanto.building.surface import Surface
from leanto.building.surfaces import surfaces_of
from leanto.checklist.condition import Condition
from leanto.checklist.model import Checklist, Item, Measure, Section
from leanto.record.observation import Air, Observation, ObservationKey
from leanto.record.walk import Walk
from leanto.rules.compiled import CompiledRule
from leanto.rules.finding import Judged
from leanto.rules.load import compile_rules
from leanto.rules.matching import judge
from leanto.rules.model import Rule

AS_OF = date(2026, 6, 1)

MAIN: dict[str, Any] = {
    "id": "main",
    "name": "Main room",
    "length": 24,
    "width": 12,
    "eave_height": 8,
    "walls": {"spacing": "24 in", "lining": "beaded board", "insulation": "batts"},
    "roof": {
        "form": "gable",
        "pitch": "6:12",
        "overhang": 1,
        "covering": "asphalt shingle",
        "layers": 2,
    },
    "ceiling": {"lining": "beaded board"},
    "floor": {"member": "2x8", "spacing": "16 in"},
    "on_wall": {"west": {"lining": "none"}},
}
LEAN_TO: dict[str, Any] = {
    "id": "feed-room",
    "name": "Feed room",
    "length": 12,
    "width": 6,
    "eave_height": 5,
    "roof": {
        "form": "shed",
        "pitch": "3:12",
        "high_side": "south",
        "covering": "corrugated steel",
        "gutters": True,
        "covering_age_years": 30,
    },
    "floor": {"kind": "dirt"},
    "attached": {"to": "main", "side": "north", "offset": 12},
}
OPENINGS: list[dict[str, Any]] = [
    {"id": "D1", "kind": "door", "on": "main.south", "from_left": 2, "width": 3, "height": 6.5},
    {
        "id": "W1",
        "kind": "window",
        "on": "main.south",
        "from_left": 8,
        "from_bottom": 3,
        "width": 2,
        "height": 3,
    },
    {"id": "F1", "kind": "flue", "on": "main.roof.south", "from_left": 6, "width": 2, "height": 2},
]


def a_building(**changes: Any) -> Building:
    plain: dict[str, Any] = {
        "name": "A shed",
        "year_built": 1938,
        "distance_to_panel": 140,
        "blocks": [MAIN, LEAN_TO],
        "openings": OPENINGS,
    }
    return Building.model_validate(plain | changes)


MEASURES = [
    {"id": "probe_depth_in", "label": "Awl sinks in", "unit": "in", "low": 0, "high": 12},
    {"id": "moisture_pct", "label": "Reading", "unit": "pct", "low": 5, "high": 99},
    {"id": "dry_spot_moisture_pct", "label": "Dry spot", "unit": "pct", "low": 5, "high": 99},
    {"id": "run_ft", "label": "Length", "unit": "ft", "low": 0, "high": 400},
    {"id": "is_active", "label": "Wet now?", "unit": "yes_no"},
    {
        "id": "stain_kind",
        "label": "Kind",
        "unit": "choice",
        "choices": ["ring", "streak", "edge of a lid"],
    },
]
EVERYWHERE = ["site", "wall outside", "roof", "wall inside", "ceiling", "floor", "wiring", "feed"]


def an_item(item_id: str, **changes: Any) -> Item:
    measures = [measure["id"] for measure in MEASURES]
    plain: dict[str, Any] = {
        "id": item_id,
        "at": EVERYWHERE,
        "prompt": item_id,
        "look": "Look.",
        "how": "By eye.",
        "answers": {
            "sound": {"means": "Good."},
            "worn": {"means": "Tired.", "measures": measures},
            "failed": {"means": "Bad.", "measures": measures, "zone": True},
        },
        "why": "It matters for the owner.",
        "source": "Invented for a test",
    }
    return Item.model_validate(plain | changes)


def a_checklist(*items: Item) -> Checklist:
    asked = items or tuple(map(an_item, ("stain", "flashing", "rot", "ants", "panel")))
    section = Section(id="all", title="All", order=1, items=asked)
    measures = tuple(Measure.model_validate(measure) for measure in MEASURES)
    return Checklist(sections=(section,), measures=measures, cautions=())


def a_rule(rule_id: str, when: str, **changes: Any) -> Rule:
    plain: dict[str, Any] = {
        "id": rule_id,
        "items": [rule_id.partition("-")[0]],
        "when": when,
        "finding": f"Finding of {rule_id}",
        "urgency": "with the work",
        "watch": "Look again in spring.",
        "source": "Invented for a test",
    }
    return Rule.model_validate(plain | changes)


@dataclass(slots=True)
class Case:
    """One walk through the small building, answer by answer."""

    building: Building = field(default_factory=a_building)
    checklist: Checklist = field(default_factory=a_checklist)
    observations: dict[ObservationKey, Observation] = field(default_factory=dict)
    air: dict[str, Air] = field(default_factory=dict)

    @property
    def surfaces(self) -> dict[str, Surface]:
        return {surface.id: surface for surface in surfaces_of(self.building)}

    @property
    def stations(self) -> tuple[Station, ...]:
        return stations_of(self.building)

    def answer(
        self,
        station: str,
        item: str,
        condition: str | None = "failed",
        zone: tuple[float, float, float, float] | None = None,
        number: int = 1,
        danger: bool = False,
        **measures: float | str,
    ) -> Observation:
        key = ObservationKey(station, item, number)
        self.observations[key] = Observation(
            key,
            Condition(condition) if condition else None,
            measures=measures,
            zone=Rectangle(*zone) if zone else None,
            danger=danger,
        )
        return self.observations[key]

    @property
    def walk(self) -> Walk:
        return Walk(
            building=self.building, observations=dict(self.observations), air=dict(self.air)
        )

    def judged(self, rules: Sequence[Rule] | Sequence[CompiledRule]) -> Judged:
        compiled = compile_rules(
            (rule.rule if isinstance(rule, CompiledRule) else rule for rule in rules),
            self.checklist,
        )
        return judge(
            self.building,
            self.surfaces,
            self.stations,
            self.walk,
            self.checklist,
            compiled,
            AS_OF,
        )

    def found(self, *rules: Rule) -> set[str]:
        """Ids of the findings."""
        return {finding.id for finding in self.judged(rules).findings}


@pytest.fixture
def case() -> Case:
    return Case()


@pytest.fixture
def rule() -> Callable[..., Rule]:
    return a_rule


@pytest.fixture
def item() -> Callable[..., Item]:
    return an_item


@pytest.fixture
def checklist() -> Callable[..., Checklist]:
    return a_checklist


@pytest.fixture
def building() -> Callable[..., Building]:
    return a_building
