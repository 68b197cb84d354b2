"""Danger that a walker marked and no rule spoke of: it is a finding of its own, never lost."""

from __future__ import annotations

from leanto.building.station import Station
from leanto.checklist.model import Item
from leanto.record.observation import Observation
from leanto.rules.finding import Finding
from leanto.rules.model import Urgency

DANGER_RULE = "danger-marked"
"""Stands for a rule in the finding's id; no file holds it."""


def danger_finding(observation: Observation, item: Item | None, station: Station) -> Finding:
    """The finding of a danger mark that no rule made one of."""
    about = item.prompt if item else observation.key.item
    return Finding(
        id=f"{DANGER_RULE}@{observation.key}",
        rule_id=DANGER_RULE,
        observation=observation.key,
        station_name=station.name,
        surface_id=station.surface_id,
        zone=observation.zone,
        text=f"Marked on the walk as a danger now: {about}",
        advice="Keep people away from it until somebody who may judge it has looked.",
        urgency=Urgency.NOW,
        danger=True,
        note=observation.note,
        photos=observation.photos,
        work=(),
        hidden=None,
        decides=None,
        caution=item.caution if item else (),
        watch="Look again before anybody works or walks there.",
        source="The walker's own mark",
    )
