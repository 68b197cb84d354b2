"""Do the rafters carry the roof as it is, and one more layer, under the snow of the place."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.building.kinds import RoofForm
from leanto.building.model import Block
from leanto.checklist.condition import Condition
from leanto.reckon import asked
from leanto.reckon.basis import Basis
from leanto.reckon.framing_verdict import checked, not_sized
from leanto.reckon.member import member_of, size_in_words
from leanto.reckon.model import Figure, Reckoning
from leanto.reckon.section import rafter_run_ft
from leanto.trade.framing_member import Member
from leanto.trade.loads import Load, dead_load, framing_psf
from leanto.trade.rafter_check import TABLE_LIVE_PSF, check_rafters
from leanto.trade.tables import per_tables

_CHECKED = per_tables(maxsize=128)(check_rafters)


def rafters(basis: Basis) -> Iterator[Reckoning]:
    """Two reckonings for every block: the roof as it is, and with another layer laid over."""
    for block in basis.building.blocks:
        station = f"{block.id}.ceiling"
        as_is = f"rafters@{station}"
        title = f"{block.name}, rafters under the roof as it is"
        member = member_of(block.roof, basis.building)
        if member is None:
            yield not_sized(as_is, title, station, block.roof.member)
            continue
        weight, layer = _weight(block, member), _layer(block)
        for added, id_, words, fact in (
            (0.0, as_is, title, "rafter_check"),
            (
                layer.psf,
                f"rafters-next-layer@{station}",
                f"{block.name}, rafters under one more layer",
                "rafter_next_layer_check",
            ),
        ):
            yield _checked(basis, block, member, weight, added, id_, words, fact)


def _checked(
    basis: Basis,
    block: Block,
    member: Member,
    weight: Load,
    added_psf: float,
    id_: str,
    title: str,
    fact: str,
) -> Reckoning:
    snow = basis.building.ground_snow_psf
    check = _CHECKED(
        member,
        rafter_run_ft(block) * 12,
        block.roof.pitch or 0.0,
        existing_psf=weight.psf,
        added_psf=added_psf,
        ground_snow_psf=snow,
        ceiling_attached=False,
        ridge_held=block.roof.form in (RoofForm.SHED, RoofForm.FLAT),
        tied=_tied(basis, block),
        below_higher_roof=_is_below_another(basis, block),
    )
    allowed_in = check.allowed_in
    return checked(
        check,
        id_=id_,
        title=title,
        station_id=f"{block.id}.ceiling",
        fact=fact,
        figures=(
            Figure("Rafters", size_in_words(block.roof, basis.building)),
            Figure("Roof weighs", f"{weight.psf + added_psf:.1f} psf"),
            Figure("Roof live load", f"{TABLE_LIVE_PSF:g} psf"),
            Figure("Ground snow", "not known" if snow is None else f"{snow:g} psf"),
        ),
        facts={"rafter_allowed_span_ft": allowed_in / 12}
        if allowed_in is not None and not added_psf
        else {},
    )


def _weight(block: Block, member: Member) -> Load:
    """Every layer of covering, the deck and the rafters, by area of roof."""
    roof = block.roof
    return dead_load(
        (("covering", roof.covering.value, roof.layers), ("deck", roof.deck.value, 1)),
        framing_psf(member.breadth_in, member.depth_in, member.spacing_in),
    )


def _layer(block: Block) -> Load:
    """One more layer of what lies there now."""
    return dead_load((("covering", block.roof.covering.value, 1),))


def _tied(basis: Basis, block: Block) -> bool | None:
    """Whether ties hold the rafters' feet together; None when nobody has seen it."""
    for seen in basis.seen(asked.ROOF_TIES, block_id=block.id):
        if seen.condition is Condition.FAILED:
            return False
        if seen.condition is Condition.SOUND:
            return True
    return True if block.ceiling is not None else None


def _is_below_another(basis: Basis, block: Block) -> bool:
    """True for a roof that snow slides onto from a higher one."""
    if block.attached is None:
        return False
    return basis.block(block.attached.to).eave_height > block.eave_height
