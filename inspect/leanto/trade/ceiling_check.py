"""Do the ceiling joists carry insulation, or storage above them."""

from __future__ import annotations

from typing import Final

from leanto.source import Source
from leanto.trade.framing_check import FramingCheck, check_member
from leanto.trade.framing_member import Member, SpanLoad
from leanto.trade.loads import Load, attic_live_load, floor_use, load_table
from leanto.trade.span import CEILING_LIMIT, FLOOR_LIMIT

BRITTLE_LIMIT: Final = 360.0
BRITTLE_SOURCE = Source("International Residential Code", "2018", "Table R301.7", "from memory")
TABLE_DEAD_PSF: Final = 10.0
"""The ceiling tables stop at this dead load."""


def check_ceiling(
    member: Member,
    span_in: float,
    *,
    storage: bool,
    clear_height_in: float | None = None,
    dead_psf: float | None = None,
    plaster: bool = False,
    fixed_stair: bool = False,
    ties_rafters: bool = True,
) -> FramingCheck:
    """Whether ceiling joists carry insulation only (10 psf) or limited storage (20 psf).

    ``clear_height_in`` is the greatest height under the rafters; 42 in. or more counts as
    storage. ``dead_psf`` is left out for the tables' own 5 or 10 psf. L/240, or L/360 under
    plaster. A fixed stair makes it a floor of 30 psf.
    Source: International Residential Code 2018, Tables R301.5 and R802.5.1.
    """
    live = _stair_load() if fixed_stair else attic_live_load(storage, clear_height_in)
    table = load_table()
    bare = live.psf <= table.attic.no_storage_psf
    defaults = table.dead_defaults
    own = defaults.ceiling_psf if bare else defaults.storage_ceiling_psf
    if dead_psf is not None and not dead_psf >= 0:
        raise ValueError(f"dead_psf must be zero or more: {dead_psf}")
    dead = own if dead_psf is None else max(own, dead_psf)
    limit = FLOOR_LIMIT if fixed_stair else BRITTLE_LIMIT if plaster else CEILING_LIMIT
    notes = [*live.reasons]
    if dead_psf is not None and dead_psf < own:
        notes.append(f"The tables start at {own:g} psf dead; {dead_psf:.3g} psf was weighed.")
    if plaster and not fixed_stair:
        notes.append(f"Plaster cracks early: L/{BRITTLE_LIMIT:g} ({BRITTLE_SOURCE}).")
    doubts = []
    if dead > TABLE_DEAD_PSF:
        doubts.append(
            f"The ceiling weighs {dead:.3g} psf; the tables stop at {TABLE_DEAD_PSF:g} psf."
        )
    questions = []
    if ties_rafters:
        questions.append(
            "These joists also tie the rafters together: count the nails where they meet, and "
            "the splices in the middle."
        )
    return check_member(
        member,
        span_in,
        (SpanLoad("ceiling", live.psf, dead, limit),),
        doubts=doubts,
        notes=notes,
        questions=questions,
        cautions=(
            "Step only on joists; the lining between them carries nobody.",
            *(
                ("Do not cut or take out a joist that ties rafters before they are shored.",)
                if ties_rafters
                else ()
            ),
        ),
    )


def _stair_load() -> Load:
    row = floor_use("habitable attic")
    cited = load_table().cite(row)
    return Load(row.live_psf, (f"A fixed stair leads up: {row.live_psf:g} psf live ({cited}).",))
