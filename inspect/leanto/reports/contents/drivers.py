"""What moves the total, in words."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.cost.sensitivity import Driver, DriverKind
from leanto.reports.contents.numbering import Numbering

_SHARED = {
    "wages": "Local wages, all trades",
    "crew": "How good and busy the crews are",
    "prices": "Material prices, here and then",
}


def driver_in_words(driver: Driver, assessment: Assessment, numbers: Numbering) -> str:
    """``Line 12, New shingle roof, north roof slope`` and the like."""
    match driver.kind:
        case DriverKind.SHARED:
            return _SHARED[driver.key]
        case DriverKind.WAGE:
            return f"Wage of the {driver.key}"
        case DriverKind.HIDDEN:
            surface = assessment.surfaces.get(driver.key)
            return f"Hidden: {surface.name if surface else driver.key}"
        case DriverKind.LINE:
            item = assessment.scope.named(driver.key)
            if item is None:
                return driver.key
            return f"Line {numbers.items[item.id]}, {item.work.title}, {item.place}"
