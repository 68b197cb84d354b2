"""Box fill: the volume that wires, clamps and devices take, against the volume of the box.

For a box being planned, or for counts an electrician gives. Nobody opens a box to count.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Annotated, Literal

from pydantic import Field

from leanto.source import Source
from leanto.strict import Strict
from leanto.trade.tables import read_table
from leanto.trade.wiring.confirm import Check, Step, Verdict

Shape = Literal["octagon", "square", "device"]
Positive = Annotated[float, Field(gt=0)]
GROUNDS_FOR_ONE = 4
"""Up to this many grounding conductors take one allowance; each further one a quarter."""


class ConductorVolume(Strict):
    size: str
    volume_cuin: Positive


class Box(Strict):
    name: str
    shape: Shape
    volume_cuin: Positive


class BoxTable(Strict):
    source: Source
    conductors: tuple[ConductorVolume, ...]
    box_source: Source
    boxes: tuple[Box, ...]
    ground_rule_source: Source


@dataclass(frozen=True, slots=True)
class BoxContents:
    """What is in a box, in allowances."""

    conductors: Mapping[str, int]
    """Size to count of insulated conductors from outside that end, are spliced or pass through.
    Pigtails that stay in the box do not count."""
    device_sizes: Sequence[str] = ()
    """For each yoke (switch, receptacle), the largest conductor on it."""
    fittings: int = 0
    """Studs and hickeys, each kind counted once."""
    has_internal_clamps: bool = False
    grounds: Mapping[str, int] = field(default_factory=dict)
    """Size to count of grounding conductors."""


def box_table() -> BoxTable:
    """Tables 314.16(A) and (B)."""
    return read_table("electrical_boxes.yaml", BoxTable)


def conductor_volume_cuin(size: str) -> float:
    """Volume allowance of one conductor, cubic inches. Source: Table 314.16(B)."""
    for row in box_table().conductors:
        if row.size == size:
            return row.volume_cuin
    raise ValueError(f"no box allowance for size {size!r} in the table")


def fill_steps(contents: BoxContents) -> tuple[tuple[Step, float], ...]:
    """Each allowance with its cubic inches. Source: 314.16(B)(1) to (5), 2020."""
    table = box_table()
    steps: list[tuple[Step, float]] = []

    def add(label: str, count: float, size: str, source: Source) -> None:
        each = conductor_volume_cuin(size)
        step = Step(label, f"{count:g} x {each:g}", f"{count * each:g} cu in", source)
        steps.append((step, count * each))

    for size, count in contents.conductors.items():
        if count < 0:
            raise ValueError(f"a count is zero or more: {count}")
        add(f"{size} AWG conductors", count, size, table.source)
    largest = _largest(contents.conductors)
    if contents.has_internal_clamps and largest:
        add("internal clamps, together", 1, largest, table.source)
    if contents.fittings and largest:
        add("studs and hickeys", contents.fittings, largest, table.ground_rule_source)
    for size in contents.device_sizes:
        add("device", 2, size, table.source)
    ground_count = sum(contents.grounds.values())
    largest_ground = _largest(contents.grounds)
    if largest_ground:
        further = max(0, ground_count - GROUNDS_FOR_ONE)
        source = table.ground_rule_source if further else table.source
        add("grounding conductors", 1 + further * 0.25, largest_ground, source)
    return tuple(steps)


def fill_cuin(contents: BoxContents) -> float:
    """Cubic inches the contents take."""
    return sum(volume for _, volume in fill_steps(contents))


def smallest_box(contents: BoxContents, shape: Shape) -> Box | None:
    """The listed metal box of a shape with the least volume that holds the contents."""
    wanted = fill_cuin(contents)
    fitting = [b for b in box_table().boxes if b.shape == shape and b.volume_cuin >= wanted]
    return min(fitting, key=lambda box: box.volume_cuin, default=None)


def most_conductors(volume_cuin: float, size: str) -> int:
    """How many conductors of one size an otherwise empty box holds."""
    return int(volume_cuin / conductor_volume_cuin(size) + 1e-9)


def check_box(volume_cuin: float, contents: BoxContents) -> Check:
    """How a box of this volume stands against its contents."""
    wanted = fill_cuin(contents)
    verdict = Verdict.PASSES if wanted <= volume_cuin else Verdict.DOES_NOT_PASS
    return Check(verdict, f"{wanted:g} cu in wanted, {volume_cuin:g} there.", box_table().source)


def _largest(counts: Mapping[str, int]) -> str | None:
    return max((s for s, n in counts.items() if n), key=conductor_volume_cuin, default=None)
