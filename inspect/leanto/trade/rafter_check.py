"""Do the rafters carry the roof, one more layer on it, and the snow."""

from __future__ import annotations

from typing import Final

from leanto.source import Source
from leanto.trade.framing_check import FramingCheck, check_member
from leanto.trade.framing_member import Member, SpanLoad
from leanto.trade.loads import SNOW_SOURCE, flat_roof_snow_psf, load_table, roof_live_psf
from leanto.trade.slope import slope_factor
from leanto.trade.span import RAFTER_LIMIT, RAFTER_WITH_CEILING_LIMIT, feet_inches

TABLE_LIVE_PSF: Final = 20.0
"""The rafter tables are printed for this roof live load at any slope."""
TABLE_SNOW_PSF: Final = 70.0
TABLE_DEAD_PSF: Final = 20.0
TABLE_SOURCE = Source("International Residential Code", "2018", "Tables R802.4.1")
REDUCED_SOURCE = Source("International Residential Code", "2018", "Table R301.6")
LEAST_RISE_IN_12: Final = 3.0
RIDGE_SOURCE = Source("International Residential Code", "2018", "R802.4.4", "from memory")
TIE_SOURCE = Source("International Residential Code", "2018", "R802.5.2", "from memory")
DRIFT_SOURCE = Source("ASCE 7", "2016", "section 7.7", "from memory")


def check_rafters(
    member: Member,
    run_in: float,
    rise_in_12: float,
    *,
    existing_psf: float,
    added_psf: float = 0.0,
    ground_snow_psf: float | None,
    ceiling_attached: bool,
    ridge_held: bool,
    tied: bool | None = None,
    below_higher_roof: bool = False,
) -> FramingCheck:
    """Whether rafters carry the roof with what is added, and the greater of live load and snow.

    ``run_in`` is the clear span measured level. ``existing_psf`` and ``added_psf`` are dead loads
    by area of roof; as in the tables they are taken on the plan, and where the steeper weight
    would change the answer an engineer is asked. ``ground_snow_psf`` comes from the building
    department; None leaves the answer open. ``ridge_held`` is true when a wall or beam carries
    the ridge or the high side, ``tied`` when ties or ceiling joists hold the feet together.
    L/180, or L/240 with a ceiling on the rafters.
    Source: International Residential Code 2018, Tables R802.4.1.
    """
    if min(existing_psf, added_psf, rise_in_12) < 0 or (ground_snow_psf or 0.0) < 0:
        raise ValueError("loads and rise must be zero or more")
    least_dead = load_table().dead_defaults.roof_psf
    weighed = existing_psf + added_psf
    dead = max(least_dead, weighed)
    limit = RAFTER_WITH_CEILING_LIMIT if ceiling_attached else RAFTER_LIMIT
    loads = _loads(dead, ground_snow_psf, limit)
    doubts = _doubts(dead, ground_snow_psf, rise_in_12, ridge_held, tied, below_higher_roof)
    steep = max(least_dead, weighed * slope_factor(rise_in_12))
    if steep > dead:
        doubts.extend(_steep_doubt(member, run_in, loads, dead, steep))
    notes = [f"Roof weight {weighed:.3g} psf, {added_psf:.3g} psf of it to be added."]
    if weighed < least_dead:
        notes.append(f"The tables start at {least_dead:g} psf dead ({TABLE_SOURCE}).")
    notes.extend(_load_notes(rise_in_12, ground_snow_psf))
    questions = [
        "Straps or nails that hold the rafters down against wind: note them; no number is given "
        "here.",
    ]
    if ground_snow_psf is None:
        questions.append("Ask the building department for the ground snow load of this place.")
    if tied is None and not ridge_held:
        questions.append(f"What ties the feet of the rafters together ({TIE_SOURCE})?")
    return check_member(
        member,
        run_in,
        loads,
        doubts=doubts,
        notes=notes,
        questions=questions,
        cautions=(
            "Do not cut a rafter, tie or post before the roof is shored.",
            "A roof that sags or creaks under snow: stay out from under it.",
        ),
    )


def _loads(dead_psf: float, snow_psf: float | None, limit: float) -> tuple[SpanLoad, ...]:
    live = SpanLoad("roof live", TABLE_LIVE_PSF, dead_psf, limit, "roof live")
    if not snow_psf:
        return (live,)
    return (live, SpanLoad("snow", snow_psf, dead_psf, limit, "snow"))


def _doubts(
    dead_psf: float,
    snow_psf: float | None,
    rise_in_12: float,
    ridge_held: bool,
    tied: bool | None,
    below_higher_roof: bool,
) -> list[str]:
    doubts = []
    if snow_psf is None:
        doubts.append("The ground snow load of this place is not known.")
    elif snow_psf > TABLE_SNOW_PSF:
        doubts.append(
            f"Ground snow {snow_psf:g} psf; the tables stop at {TABLE_SNOW_PSF:g} ({TABLE_SOURCE})."
        )
    if dead_psf > TABLE_DEAD_PSF:
        doubts.append(
            f"The roof weighs {dead_psf:.3g} psf; the tables stop at {TABLE_DEAD_PSF:g} "
            f"({TABLE_SOURCE})."
        )
    if below_higher_roof:
        doubts.append(
            f"Snow drifts and slides onto it from a higher roof; no table counts that "
            f"({DRIFT_SOURCE})."
        )
    if not ridge_held and rise_in_12 < LEAST_RISE_IN_12:
        doubts.append(
            f"Rise {rise_in_12:g} in 12 is below {LEAST_RISE_IN_12:g}: the ridge must be carried "
            f"as a beam ({RIDGE_SOURCE})."
        )
    if not ridge_held and not tied:
        seen = "It was not seen what ties" if tied is None else "Nothing ties"
        doubts.append(
            f"{seen} the rafters' feet together; untied, they push the walls out ({TIE_SOURCE})."
        )
    return doubts


def _steep_doubt(
    member: Member, run_in: float, loads: tuple[SpanLoad, ...], dead_psf: float, steep_psf: float
) -> list[str]:
    """A doubt when the weight along the slope, put on the plan, would fail what passed."""
    steep = tuple(
        SpanLoad(load.name, load.live_psf, steep_psf, load.deflection_limit, load.duration)
        for load in loads
    )
    flat_in = check_member(member, run_in, loads).allowed_in or 0.0
    steep_in = check_member(member, run_in, steep).allowed_in or 0.0
    if not steep_in < run_in <= flat_in:
        return []
    return [
        f"On this slope the roof weighs {steep_psf:.3g} psf of plan, not {dead_psf:.3g}; with "
        f"that the limit is {feet_inches(steep_in)}."
    ]


def _load_notes(rise_in_12: float, snow_psf: float | None) -> list[str]:
    notes = [f"Roof live load {TABLE_LIVE_PSF:g} psf as in the tables ({TABLE_SOURCE})."]
    reduced = roof_live_psf(rise_in_12)
    if reduced < TABLE_LIVE_PSF:
        notes.append(
            f"At {rise_in_12:g} in 12 the code would allow {reduced:g} psf live ({REDUCED_SOURCE})."
        )
    if snow_psf:
        notes.append(
            f"Ground snow {snow_psf:g} psf is taken whole, as in the tables; on a flat roof it "
            f"would be {flat_roof_snow_psf(snow_psf):.3g} psf ({SNOW_SOURCE})."
        )
    return notes
