"""Purchases of a work over all its places: rounded up once for the building, not at each place."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from leanto.scope.item import RepairItem
from leanto.scope.mark import Mark
from leanto.scope.quantity import bought, with_waste


def together(items: Iterable[RepairItem]) -> tuple[RepairItem, ...]:
    """The items, what is bought for one work shared among its places.

    Each place takes its quantity with waste, and the largest what is left of the last purchase
    besides. What the owner buys for work of their own is bought apart.
    """
    lines = list(items)
    groups: dict[tuple[str, bool], list[int]] = {}
    for index, item in enumerate(lines):
        if item.work.purchase is not None:
            groups.setdefault((item.work.id, item.mark is Mark.BY_OWNER), []).append(index)
    for group in groups.values():
        for index, item in zip(group, _shared([lines[i] for i in group]), strict=True):
            lines[index] = item
    return tuple(lines)


def apart(item: RepairItem) -> RepairItem:
    """The item as it is bought when it stands alone."""
    amount, purchases = bought(item.work, item.quantity)
    return replace(item, bought=amount, purchases=purchases, is_bought_together=False)


def _shared(items: list[RepairItem]) -> list[RepairItem]:
    if len(items) == 1:
        return [apart(items[0])]
    work = items[0].work
    amount, purchases = bought(work, sum(item.quantity for item in items))
    largest = max(range(len(items)), key=lambda index: items[index].quantity)
    rest = amount - sum(
        with_waste(work, item.quantity) for i, item in enumerate(items) if i != largest
    )
    return [
        replace(
            item,
            bought=rest if index == largest else with_waste(work, item.quantity),
            purchases=purchases,
            is_bought_together=True,
        )
        for index, item in enumerate(items)
    ]
