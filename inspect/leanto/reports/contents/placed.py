"""Where on its surface a line of work lies, so that a bidder finds it with a tape."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.building.kinds import PlaceKind
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.quantities import format_ft_in
from leanto.reports.contents.words import counted, seen_from
from leanto.scope.item import RepairItem

MOST_ZONES = 4
_EDGES = {
    PlaceKind.FLOOR: ("the west edge", "the south edge"),
    PlaceKind.CEILING: ("the west edge", "the south edge"),
    PlaceKind.ROOF: ("the left end", "the eave"),
}


def where_in_words(item: RepairItem, assessment: Assessment) -> str:
    """From where to where, for each zone of the line; empty when it covers a whole surface.

    A line that is counted in pieces lies where its findings were entered.
    """
    surface = assessment.surfaces.get(item.surface_id or "")
    if surface is None:
        return ""
    zones = item.zones or _found(item, surface, assessment)
    if not zones:
        return ""
    said = [_reach(zone, surface) for zone in zones[:MOST_ZONES]]
    if len(zones) > MOST_ZONES:
        said.append(f"and {counted(len(zones) - MOST_ZONES, 'more zone')}, see the sketch")
    return f"Where: {'; '.join(said)} ({seen_from(surface)})."


def _found(item: RepairItem, surface: Surface, assessment: Assessment) -> tuple[Rectangle, ...]:
    zones = {
        finding.zone: None
        for finding in assessment.judged.grounds
        if finding.id in item.findings and finding.surface_id == surface.id and finding.zone
    }
    return tuple(sorted(zones))


def _reach(zone: Rectangle, surface: Surface) -> str:
    """``6' to 14' 8" from the left end, up to 1' from the floor line``."""
    across, up = _EDGES.get(surface.kind, ("the left end", "the floor line"))
    left, right = format_ft_in(zone.left_ft), format_ft_in(zone.right_ft)
    bottom, top = format_ft_in(zone.bottom_ft), format_ft_in(zone.top_ft)
    return f"{left} to {right} from {across}, {bottom} to {top} from {up}"
