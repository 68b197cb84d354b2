"""Does the floor carry its new use: joists, sleepers over skids, a slab, or bare dirt."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.framing_check import FramingCheck, Verdict, check_member
from leanto.trade.framing_member import Member, SpanLoad
from leanto.trade.loads import FloorUse, floor_use, load_table
from leanto.trade.span import FLOOR_LIMIT

GROUND_SOURCE = Source("International Residential Code", "2018", "R317.1.2", "from memory")
CLEARANCE_SOURCE = Source("International Residential Code", "2018", "R317.1", "from memory")
SLAB_SOURCE = Source("International Residential Code", "2018", "R506.1", "from memory")
PLASTIC_SOURCE = Source("ASTM D4263, plastic sheet method", mark="from memory")
TABLE_DEAD_PSF: Final = 20.0
"""The floor tables stop at this dead load."""
WIDE_CRACK_IN: Final = 0.25
CRACK_SOURCE = COMMON_PRACTICE
CLEARANCE_IN: Final = 18.0

SOFT_FLOOR_CAUTION: Final = (
    "Keep off boards that give underfoot; lay planks across several joists to work from."
)


def check_floor(
    member: Member,
    span_in: float,
    use: str,
    *,
    dead_psf: float | None = None,
    tiled: bool = False,
    heavy_machine: bool = False,
) -> FramingCheck:
    """Whether joists carry ``use`` over a clear span, by the rule of the floor tables, L/360.

    ``use`` is a floor use of the load table; ``dead_psf`` is left out for the tables' own 10 psf,
    or 20 psf under tile. A heavy machine is a point load and goes to an engineer.
    Source: International Residential Code 2018, Tables R301.5 and R502.3.1.
    """
    row = floor_use(use)
    dead = _dead_psf(dead_psf, tiled)
    return check_member(
        member,
        span_in,
        (_load(row, row.live_psf, dead),),
        least=(_load(row, row.least_psf or row.live_psf, dead),),
        doubts=_use_doubts(row, dead, heavy_machine),
        notes=(*_use_notes(row), _dead_note(dead, dead_psf is None)),
        questions=(
            "Posts, beams and what they stand on carry this floor and are not in this check.",
        ),
        cautions=(SOFT_FLOOR_CAUTION,),
    )


def check_sleepers(
    member: Member,
    skid_spacing_in: float | None,
    use: str,
    *,
    touches_ground: bool,
    treated: bool,
    dead_psf: float | None = None,
    tiled: bool = False,
    heavy_machine: bool = False,
) -> FramingCheck:
    """Whether sleepers carry ``use`` where they span from skid to skid.

    ``skid_spacing_in`` is the clear distance between skids; None when the sleepers lie on the
    ground or on a slab all along and so have no span. Wood on the ground
    counts as wet, and untreated wood there fails.
    Source: International Residential Code 2018, Tables R301.5 and R502.3.1, and R317.1.2.
    """
    row = floor_use(use)
    failures = (
        (f"Untreated wood lies on the ground; the code asks for treated wood ({GROUND_SOURCE}).",)
        if touches_ground and not treated
        else ()
    )
    questions = (
        "Skids: timbers this thick are in no joist table. Note their size, rot and how far apart "
        "the stones or blocks under them stand; an engineer checks them.",
        "Level each skid at every stone: has it settled, and does water stand there?",
        f"Clear height under the sleepers: {CLEARANCE_IN:g} in. to bare soil, or treated wood "
        f"({CLEARANCE_SOURCE}).",
        "Is the building held down, or does it only stand on its skids?",
    )
    if skid_spacing_in is None:
        return FramingCheck(
            verdict=Verdict.FAILS if failures else Verdict.NO_SPAN,
            span_in=None,
            allowed_in=None,
            margin_in=None,
            governs="",
            required_size="",
            reasons=(
                *failures,
                "The sleepers rest all along on ground or slab: they span nothing, and what lies "
                "under them carries the floor.",
                *_use_notes(row),
            ),
            questions=questions,
            cautions=(SOFT_FLOOR_CAUTION,),
        )
    dead = _dead_psf(dead_psf, tiled)
    return check_member(
        replace(member, wet=True) if touches_ground else member,
        skid_spacing_in,
        (_load(row, row.live_psf, dead),),
        least=(_load(row, row.least_psf or row.live_psf, dead),),
        doubts=_use_doubts(row, dead, heavy_machine),
        failures=failures,
        notes=(
            "The span is the clear distance from skid to skid.",
            *_use_notes(row),
            _dead_note(dead, dead_psf is None),
        ),
        questions=questions,
        cautions=(SOFT_FLOOR_CAUTION,),
    )


def check_slab(
    use: str,
    *,
    crack_width_in: float = 0.0,
    crack_offset_in: float = 0.0,
    settled: bool = False,
    heavy_machine: bool = False,
) -> FramingCheck:
    """A slab on the ground spans nothing; cracks that stepped and settlement go to an engineer.

    ``crack_offset_in`` is the step in height across the worst crack.
    """
    row = floor_use(use)
    troubles = []
    if crack_width_in >= WIDE_CRACK_IN:
        troubles.append(
            f"A crack is {crack_width_in:g} in. wide; {WIDE_CRACK_IN:g} in. or more is worth an "
            f"engineer's look ({CRACK_SOURCE})."
        )
    if crack_offset_in >= WIDE_CRACK_IN:
        troubles.append(
            f"The two sides of a crack differ by {crack_offset_in:g} in. in height: the ground "
            f"has moved ({CRACK_SOURCE})."
        )
    if settled:
        troubles.append(f"The slab has settled or sounds hollow ({CRACK_SOURCE}).")
    if heavy_machine:
        troubles.append("A heavy machine needs a slab thickness and soil somebody has looked at.")
    return FramingCheck(
        verdict=Verdict.ENGINEER if troubles else Verdict.NO_SPAN,
        span_in=None,
        allowed_in=None,
        margin_in=None,
        governs="",
        required_size="",
        reasons=(
            "A slab lies on the ground and spans nothing; no joist table holds for it.",
            *troubles,
            *_use_notes(row),
        ),
        questions=(
            f"Thickness at a drilled hole or at the edge: 3-1/2 in. or more ({SLAB_SOURCE})?",
            "Damp from below: tape a square of clear plastic to it, 18 in. a side, for 16 hours; "
            f"drops or a dark patch under it mean damp ({PLASTIC_SOURCE}).",
            "Plastic sheet and insulation under it: a heated room over bare concrete stays cold.",
            "How far is its top above the ground outside, and which way does the ground fall?",
            "Does the edge reach below frost, or has it heaved?",
            "Oil, manure or chemicals soaked in: finishes will not stick, and some must go.",
        ),
    )


def dirt_floor(use: str) -> FramingCheck:
    """A dirt floor: nothing to check, a floor has to be built."""
    row = floor_use(use)
    return FramingCheck(
        verdict=Verdict.NO_SPAN,
        span_in=None,
        allowed_in=None,
        margin_in=None,
        governs="",
        required_size="",
        reasons=(
            f"There is no floor; a new one is to carry {row.live_psf:g} psf for {row.id} "
            f"({load_table().cite(row)}).",
        ),
        questions=(
            "Height from the ground to the sills: room for a slab, or for joists "
            f"{CLEARANCE_IN:g} in. clear of bare soil ({CLEARANCE_SOURCE})?",
            "Does water stand on it or run through it?",
        ),
    )


def _dead_psf(dead_psf: float | None, tiled: bool) -> float:
    defaults = load_table().dead_defaults
    if dead_psf is not None:
        if not dead_psf >= 0:
            raise ValueError(f"dead_psf must be zero or more: {dead_psf}")
        return dead_psf
    return defaults.tiled_floor_psf if tiled else defaults.floor_psf


def _dead_note(dead_psf: float, by_table: bool) -> str:
    table = load_table()
    origin = f"as in the {table.cite(table.dead_defaults)}" if by_table else "as weighed"
    return f"The floor itself: {dead_psf:.3g} psf dead, {origin}."


def _load(row: FloorUse, live_psf: float, dead_psf: float) -> SpanLoad:
    return SpanLoad(row.id, live_psf, dead_psf, FLOOR_LIMIT)


def _use_doubts(row: FloorUse, dead_psf: float, heavy_machine: bool) -> list[str]:
    doubts = []
    if not row.by_table:
        doubts.append(f"No joist table covers {row.id}. {row.note}".strip())
    if dead_psf > TABLE_DEAD_PSF:
        doubts.append(
            f"The floor itself weighs {dead_psf:.3g} psf; the tables stop at {TABLE_DEAD_PSF:g}."
        )
    if heavy_machine:
        doubts.append("A heavy machine is a point load; no joist table covers it.")
    return doubts


def _use_notes(row: FloorUse) -> tuple[str, ...]:
    cited = load_table().cite(row)
    note = (row.note,) if row.note and row.by_table else ()
    return (f"Use {row.id}: {row.live_psf:g} psf live ({cited}).", *note)
