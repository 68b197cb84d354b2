"""The scope: calls for work merged per place, counted once, rounded, and put in order."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from leanto.building.kinds import PlaceKind
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.rules.model import Take
from leanto.scope.call import Call
from leanto.scope.item import RepairItem, Scope
from leanto.scope.purchases import together
from leanto.scope.quantity import bought, in_words, taken, widened_union
from leanto.scope.work import Work

_WALL_FACES = (PlaceKind.WALL_INSIDE, PlaceKind.WALL_OUTSIDE)


def build_scope(
    calls: Iterable[Call], surfaces: Mapping[str, Surface], works: Mapping[str, Work]
) -> Scope:
    """Every call merged into repair items, in order of work."""
    groups: dict[tuple[str, str], list[Call]] = {}
    for call in calls:
        work = works[call.work]
        groups.setdefault((work.id, _place_key(work, call, surfaces)), []).append(call)
    items = [
        item
        for (work_id, _), group in groups.items()
        if (item := _merged(works[work_id], group, surfaces)) is not None
    ]
    return Scope(in_order_of_work(together(items)))


def in_order_of_work(items: Iterable[RepairItem]) -> tuple[RepairItem, ...]:
    """By phase, then by trade and work."""
    return tuple(
        sorted(
            items, key=lambda item: (item.work.phase.rank, item.work.trade, item.work.id, item.id)
        )
    )


def _place_key(work: Work, call: Call, surfaces: Mapping[str, Surface]) -> str:
    surface = surfaces.get(call.surface_id or "")
    if work.scope == "building" or surface is None:
        return ""
    if work.scope == "block":
        return surface.block
    if work.scope == "wall" and surface.kind in _WALL_FACES:
        return surface.id.rpartition(".")[0]
    return surface.id


@dataclass(frozen=True, slots=True)
class _Count:
    quantity: float
    zones: tuple[Rectangle, ...]
    reason: str


def _merged(work: Work, calls: list[Call], surfaces: Mapping[str, Surface]) -> RepairItem | None:
    """One repair item for all calls of a work at one place; None when nothing is left to do."""
    counts: list[_Count] = []
    by_surface: dict[str, list[Call]] = {}
    for call in _on_one_face(work, calls, surfaces):
        by_surface.setdefault(call.surface_id or "", []).append(call)
    for surface_id, group in by_surface.items():
        counts.extend(_counted(group, surfaces.get(surface_id), work.once))
    quantity = (
        max(count.quantity for count in counts)
        if work.once
        else sum(count.quantity for count in counts)
    )
    if quantity <= 0:
        return None
    amount, purchases = bought(work, quantity)
    first = surfaces.get(next(iter(by_surface)))
    one_surface = first if len(by_surface) == 1 and work.scope in ("surface", "wall") else None
    place = _place_name(work, first)
    reasons = dict.fromkeys(count.reason for count in counts)
    return RepairItem(
        id=f"{work.id}@{_place_key(work, calls[0], surfaces) or 'building'}",
        work=work,
        place=place,
        surface_id=one_surface.id if one_surface else None,
        quantity=quantity,
        bought=amount,
        purchases=purchases,
        zones=tuple(zone for count in counts for zone in count.zones) if one_surface else (),
        findings=tuple(dict.fromkeys(call.finding_id for call in calls if call.finding_id)),
        reason="; ".join(reasons)
        + ("; the largest counts" if work.once and len(counts) > 1 else ""),
        poor_access=any(call.poor_access for call in calls),
    )


def _place_name(work: Work, surface: Surface | None) -> str:
    if work.scope == "building" or surface is None:
        return "Whole building"
    if work.scope == "block":
        return surface.name.partition(",")[0]
    return surface.name


def _on_one_face(work: Work, calls: list[Call], surfaces: Mapping[str, Surface]) -> Iterable[Call]:
    """The calls with their zones moved to the face of the first one, for work on whole walls.

    Both faces of a wall show the same framing, left and right exchanged.
    """
    if work.scope != "wall":
        return calls
    face = surfaces.get(calls[0].surface_id or "")
    if face is None or face.kind not in _WALL_FACES:
        return calls
    return [
        call
        if call.surface_id == face.id
        else replace(call, surface_id=face.id, zone=_mirrored(call.zone, face.width_ft))
        for call in calls
    ]


def _mirrored(zone: Rectangle | None, width_ft: float) -> Rectangle | None:
    if zone is None:
        return None
    left_ft = max(0.0, width_ft - zone.right_ft)
    return Rectangle(left_ft, zone.bottom_ft, zone.width_ft, zone.height_ft)


def _counted(calls: list[Call], surface: Surface | None, once: bool) -> Iterable[_Count]:
    """The quantities of the calls on one surface, each way of taking them counted once.

    Of work that is done once, the largest quantity counts, not the sum.
    """
    by_take: dict[Take, list[Call]] = {}
    summed: list[float] = []
    largest: list[float] = []
    for call in calls:
        if call.take is not None:
            by_take.setdefault(call.take, []).append(call)
        elif call.quantity is not None:
            (largest if once or call.largest else summed).append(call.quantity)
    for take, group in by_take.items():
        if surface is None:
            raise ValueError(f"{group[0].work} takes its quantity from a surface, but has none")
        zones = widened_union([(call.zone, call.widen_ft) for call in group], surface)
        covers_all = any(call.zone is None for call in group)
        yield _Count(
            taken(take, zones, surface), () if covers_all else zones, in_words(take, zones)
        )
    if summed:
        yield _Count(
            sum(summed),
            (),
            "as observed" if len(summed) == 1 else f"sum of {len(summed)} observations",
        )
    if largest:
        yield _Count(
            max(largest), (), "as observed" if len(largest) == 1 else "largest of the observations"
        )
