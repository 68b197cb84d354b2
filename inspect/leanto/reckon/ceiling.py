"""Do the ceiling joists carry insulation, and would they carry things stored on them."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.building.block_shape import rise_per_ft
from leanto.building.kinds import Insulation, Lining, RoofForm
from leanto.building.model import Block, Ceiling
from leanto.reckon.basis import Basis
from leanto.reckon.framing_verdict import checked, not_sized
from leanto.reckon.member import member_of, size_in_words
from leanto.reckon.model import Figure, Reckoning
from leanto.trade.ceiling_check import check_ceiling
from leanto.trade.framing_member import Member
from leanto.trade.heat_loss import fill_r
from leanto.trade.loads import Load, dead_load, framing_psf
from leanto.trade.r_values import r_table
from leanto.trade.tables import per_tables

_CHECKED = per_tables(maxsize=128)(check_ceiling)
_HEATED_FILL_IN = 12.0
"""Taken for a heated room whose climate zone is not known."""


def ceilings(basis: Basis) -> Iterator[Reckoning]:
    """Two reckonings for every block with a ceiling: as insulated, and with storage."""
    for block in basis.building.blocks:
        if block.ceiling is not None:
            yield from _of_block(basis, block, block.ceiling)


def _of_block(basis: Basis, block: Block, ceiling: Ceiling) -> Iterator[Reckoning]:
    station = f"{block.id}.ceiling"
    insulated, stored = f"ceiling@{station}", f"ceiling-storage@{station}"
    titles = (
        f"{block.name}, ceiling joists under insulation",
        f"{block.name}, ceiling joists under storage",
    )
    member = member_of(ceiling, basis.building)
    if member is None:
        yield not_sized(insulated, titles[0], station, ceiling.member)
        return
    weight = _weight(basis, ceiling, member)
    figures = (
        Figure("Ceiling joists", size_in_words(ceiling, basis.building)),
        Figure("Own weight", f"{weight.psf:.1f} psf"),
    )
    for storage, id_, title, fact in (
        (False, insulated, titles[0], "ceiling_check"),
        (True, stored, titles[1], "ceiling_storage_check"),
    ):
        check = _CHECKED(
            member,
            min(block.length, block.width) * 12,
            storage=storage,
            clear_height_in=None if storage else _clear_height_in(block, member),
            dead_psf=weight.psf,
            plaster=ceiling.lining is Lining.PLASTER_ON_LATH,
            ties_rafters=block.roof.form in (RoofForm.GABLE, RoofForm.HIP),
        )
        allowed_in = check.allowed_in
        yield checked(
            check,
            id_=id_,
            title=title,
            station_id=station,
            fact=fact,
            figures=figures,
            facts={"ceiling_allowed_span_ft": allowed_in / 12}
            if allowed_in is not None and not storage
            else {},
        )


def _weight(basis: Basis, ceiling: Ceiling, member: Member) -> Load:
    """Lining, framing and the insulation that is there or planned, whichever is deeper."""
    fill_in = planned_fill_in(basis) if basis.building.to_be_heated else 0.0
    if ceiling.insulation is not Insulation.NONE:
        fill_in = max(fill_in, member.depth_in)
    return dead_load(
        (("lining", ceiling.lining.value, 1), ("insulation", "loose fill", fill_in / 12)),
        framing_psf(member.breadth_in, member.depth_in, member.spacing_in),
    )


def planned_fill_in(basis: Basis) -> float:
    """Depth of loose fill over a heated room's ceiling, inches."""
    wanted = basis.building.target_r.ceiling
    if wanted is None and basis.building.climate_zone is not None:
        wanted = r_table().target(basis.building.climate_zone).ceiling
    if wanted is None:
        return _HEATED_FILL_IN
    return wanted / fill_r(r_table().fill("loose fill"), 1.0)


def _clear_height_in(block: Block, member: Member) -> float:
    """The greatest height over the ceiling joists, up to the underside of the ridge."""
    if block.roof.form in (RoofForm.GABLE, RoofForm.HIP):
        run_ft = min(block.length, block.width) / 2
        if block.roof.form is RoofForm.GABLE:
            run_ft = block.width / 2
        return max(0.0, run_ft * rise_per_ft(block) * 12 - member.depth_in)
    return max(0.0, block.width * rise_per_ft(block) * 12 - member.depth_in)
