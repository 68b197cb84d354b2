"""Remaining sections against shapely (general-purpose geometry): area, center, strips summed."""

from __future__ import annotations

import pytest
from shapely import affinity
from shapely.geometry import Polygon, box

from leanto.trade.section_loss import (
    ProbeDepths,
    SectionLoss,
    cavity_loss,
    corner_loss,
    face_loss,
)

BREADTH_IN, DEPTH_IN = 3.5, 9.25
WHOLE = box(0, 0, BREADTH_IN, DEPTH_IN)
STRIPS = 400

CASES = [
    (
        "top and left",
        face_loss(BREADTH_IN, DEPTH_IN, ProbeDepths(top_in=1.25, left_in=0.5)),
        WHOLE.difference(box(0, 8.0, 3.5, 9.25)).difference(box(0, 0, 0.5, 9.25)),
    ),
    (
        "shell all round",
        face_loss(BREADTH_IN, DEPTH_IN, ProbeDepths(0.5, 0.5, 0.5, 0.5)),
        box(0.5, 0.5, 3.0, 8.75),
    ),
    (
        "corner",
        corner_loss(BREADTH_IN, DEPTH_IN, 1.25, 3.0),
        WHOLE.difference(box(0, 0, 1.25, 3.0)),
    ),
    (
        "corner the full breadth",
        corner_loss(BREADTH_IN, DEPTH_IN, BREADTH_IN, 2.0),
        box(0, 2.0, BREADTH_IN, DEPTH_IN),
    ),
    (
        "corner the full depth",
        corner_loss(BREADTH_IN, DEPTH_IN, 1.0, DEPTH_IN),
        box(1.0, 0, BREADTH_IN, DEPTH_IN),
    ),
    (
        "soft heart",
        cavity_loss(BREADTH_IN, DEPTH_IN, 1.5, 4.0),
        WHOLE.difference(box(1.0, 2.625, 2.5, 6.625)),
    ),
]


@pytest.mark.published("shapely, plane geometry library", "library")
@pytest.mark.parametrize(("loss", "left"), [case[1:] for case in CASES], ids=[c[0] for c in CASES])
def test_area_inertia_and_modulus_of_what_is_left(loss: SectionLoss, left: Polygon) -> None:
    remaining = loss.remaining
    assert remaining.area_sqin == pytest.approx(left.area)
    inertia = _inertia(left)
    assert remaining.inertia_in4 == pytest.approx(inertia, rel=1e-3)
    turned = affinity.rotate(left, 90, origin=(0, 0))
    assert remaining.weak_inertia_in4 == pytest.approx(_inertia(turned), rel=1e-3)
    _, low, _, high = left.bounds
    far = max(high - left.centroid.y, left.centroid.y - low)
    assert remaining.section_modulus_in3 == pytest.approx(inertia / far, rel=1e-3)


def _inertia(shape: Polygon) -> float:
    """Second moment of area about the level line through the center, from thin strips."""
    west, low, east, high = shape.bounds
    step = (high - low) / STRIPS
    total = 0.0
    for strip in range(STRIPS):
        bottom = low + strip * step
        slice_ = shape.intersection(box(west, bottom, east, bottom + step))
        total += slice_.area * (slice_.centroid.y - shape.centroid.y) ** 2
    return total
