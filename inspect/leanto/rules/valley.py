"""Whether two roof slopes meet in a valley."""

from __future__ import annotations

from leanto.building.block_shape import eave_sides, rise_per_ft
from leanto.building.kinds import RoofForm
from leanto.building.model import Block, Building
from leanto.building.roof_shape import slope_sides


def has_valley(block: Block, building: Building) -> bool:
    """True when a ridge of this block, or of one that stands against it, runs into a slope."""
    return any(
        _runs_into(other, host)
        for other in building.blocks
        if other.attached is not None
        for host in building.blocks
        if host.id == other.attached.to and block.id in (other.id, host.id)
    )


def _runs_into(block: Block, host: Block) -> bool:
    """True when the ridge of ``block`` points at a slope of ``host`` and ends above its eave."""
    has_ridge = block.roof.form in (RoofForm.GABLE, RoofForm.HIP)
    if block.attached is None or not has_ridge or host.roof.form is RoofForm.FLAT:
        return False
    side = block.attached.side
    ridge_ft = block.eave_height + block.width / 2 * rise_per_ft(block)
    return (
        side not in eave_sides(block) and side in slope_sides(host) and ridge_ft > host.eave_height
    )
