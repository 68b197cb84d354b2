"""Does each floor carry the new use: joists, sleepers, slab or bare dirt."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from leanto.building.kinds import FloorKind, Foundation
from leanto.building.model import Block
from leanto.reckon import asked
from leanto.reckon.basis import Basis, number
from leanto.reckon.framing_verdict import TABLE_SOURCE, checked, not_sized
from leanto.reckon.member import member_of, size_in_words
from leanto.reckon.model import Figure, Reckoning, cited
from leanto.reckon.section import PROBE
from leanto.trade.floor_check import (
    CRACK_SOURCE,
    GROUND_SOURCE,
    SLAB_SOURCE,
    check_floor,
    check_slab,
    check_sleepers,
    dirt_floor,
)
from leanto.trade.framing_check import FramingCheck
from leanto.trade.framing_member import Member
from leanto.trade.section_loss import ProbeDepths, face_loss
from leanto.trade.span import SPAN_SOURCE, feet_inches
from leanto.trade.tables import per_tables

_JOISTS = per_tables(maxsize=128)(check_floor)
"""The same floor is checked again at every answer of the walk."""


def floors(basis: Basis) -> Iterator[Reckoning]:
    """A reckoning for the floor of every block."""
    for block in basis.building.blocks:
        match block.floor.kind:
            case FloorKind.JOISTS:
                yield _joists(basis, block)
            case FloorKind.SLEEPERS:
                yield _sleepers(basis, block)
            case FloorKind.SLAB:
                yield _slab(basis, block)
            case FloorKind.DIRT:
                check = dirt_floor(basis.building.intended_use.value)
                yield _floor(basis, block, check, (Figure("Floor", "bare dirt"),))


def clear_span_in(block: Block) -> float:
    """Between the supports of the floor; the block's short side where none was measured."""
    return 12 * (block.floor.clear_span or min(block.length, block.width))


def _joists(basis: Basis, block: Block) -> Reckoning:
    member = member_of(block.floor, basis.building)
    if member is None:
        return not_sized(_id(block), _title(block), _station(block), block.floor.member)
    use, span_in = basis.building.intended_use.value, clear_span_in(block)
    check = _JOISTS(member, span_in, use)
    figures = [
        Figure("Joists", size_in_words(block.floor, basis.building)),
        Figure("New use", use),
        *_with_worst_spot(basis, block, member, span_in, use),
    ]
    if block.floor.clear_span is None:
        figures.append(Figure("Span taken", "the whole short side: no support was measured"))
    return _floor(basis, block, check, tuple(figures))


def _with_worst_spot(
    basis: Basis, block: Block, member: Member, span_in: float, use: str
) -> tuple[Figure, ...]:
    """What the softest joist that was probed still spans; nothing when none was soft."""
    seen = basis.seen(asked.FLOOR_JOISTS, block_id=block.id)
    depths = [depth for one in seen if (depth := number(one, PROBE))]
    worst_in = max((d for d in depths if 0 < d < member.depth_in), default=None)
    if worst_in is None:
        return ()
    left = face_loss(member.breadth_in, member.depth_in, ProbeDepths(top_in=worst_in)).remaining
    softened = member_of(block.floor, basis.building, remaining=left)
    assert softened is not None
    check = _JOISTS(softened, span_in, use)
    words = check.verdict.value
    if check.allowed_in is not None:
        words += f"; may span {feet_inches(check.allowed_in)}"
    return (Figure(f"Softest joist, {worst_in:g} in. gone", words),)


def _sleepers(basis: Basis, block: Block) -> Reckoning:
    """Sleepers with no span given are taken to rest all along; what they lie on is asked."""
    member = member_of(block.floor, basis.building)
    if member is None:
        return not_sized(_id(block), _title(block), _station(block), block.floor.member)
    span_ft = block.floor.clear_span
    check = check_sleepers(
        member,
        span_ft * 12 if span_ft else None,
        basis.building.intended_use.value,
        touches_ground=False,
        treated=False,
    )
    reckoned = _floor(
        basis, block, check, (Figure("Sleepers", size_in_words(block.floor, basis.building)),)
    )
    if basis.building.foundation is Foundation.SLAB_EDGE:
        return reckoned
    return replace(
        reckoned,
        asks=(*reckoned.asks, "Do the sleepers lie on soil? Untreated wood there does not pass."),
        sources=cited(reckoned.sources, (GROUND_SOURCE,)),
    )


def _slab(basis: Basis, block: Block) -> Reckoning:
    cracks = list(basis.seen(asked.SLAB, block_id=block.id))
    check = check_slab(
        basis.building.intended_use.value,
        crack_width_in=max((number(one, "crack_width_in") or 0.0 for one in cracks), default=0.0),
        crack_offset_in=max((number(one, "crack_step_in") or 0.0 for one in cracks), default=0.0),
    )
    return _floor(basis, block, check, (Figure("Floor", "slab on the ground"),))


def _floor(
    basis: Basis, block: Block, check: FramingCheck, figures: tuple[Figure, ...]
) -> Reckoning:
    allowed_in = check.allowed_in
    return checked(
        check,
        id_=_id(block),
        title=_title(block),
        station_id=_station(block),
        fact="floor_check",
        figures=figures,
        facts={} if allowed_in is None else {"floor_allowed_span_ft": allowed_in / 12},
        sources=(TABLE_SOURCE, SPAN_SOURCE)
        if allowed_in is not None
        else (TABLE_SOURCE, SLAB_SOURCE, CRACK_SOURCE),
    )


def _id(block: Block) -> str:
    return f"floor@{_station(block)}"


def _title(block: Block) -> str:
    return f"{block.name}, floor under the new use"


def _station(block: Block) -> str:
    return f"{block.id}.floor"
