"""Test holes: which are worth making, best first, where, and which answer changes the choice."""

from __future__ import annotations

from collections.abc import Sequence

from leanto.assessment import Assessment
from leanto.decision.model import HoleValue, SurfaceDecision
from leanto.decision.words import what_turns
from leanto.reports.blocks import Block, Column, Paragraph, Row, Table
from leanto.reports.contents.words import about, capitalized, counted, zone_in_words

_HOLES = (
    Column("Lined surface, and where to open", 0.4),
    Column("Costs", 0.1, "right"),
    Column("Is worth", 0.1, "right"),
    Column("Knowing all is worth", 0.13, "right"),
    Column("What would change the choice", 0.27),
)


def hole_blocks(assessment: Assessment) -> tuple[Block, ...]:
    """The answer, the table of every hole that can tell something, and how to go on."""
    valued = valued_holes(assessment.decision.surfaces)
    if not valued:
        return (
            Paragraph(
                "No test hole is of use: a condition decides, damage was seen already, or nothing "
                "is hidden."
            ),
        )
    hidden = assessment.library.hidden
    shows = f"{hidden.test_hole.shows_at_evidence:.0%}"
    found = f"{hidden.extent.a / (hidden.extent.a + hidden.extent.b):.0%}"
    return (
        Paragraph(holes_in_words(valued)),
        Table(_HOLES, tuple(_row(assessment, one, hole) for one, hole in valued)),
        Paragraph(
            "A hole is worth what its answer saves on average: the cost of the better course now, "
            "less that of the better course after each answer, by their chances. Knowing all is "
            "what seeing the whole surface would save; no number of holes is worth more. One hole "
            f"shows damage that is there in {shows} of cases where the signs are; elsewhere it is "
            f"a sample of one point and shows it in {found} (planning assumptions). Enter what it "
            'shows at the item "A test hole was opened here": chance and answer follow at once. '
            "Never before the lead and asbestos tests.",
            "note",
        ),
    )


def holes_in_words(valued: Sequence[tuple[SurfaceDecision, HoleValue]]) -> str:
    """How many holes pay, and how to go on."""
    pays = sum(hole.pays for _, hole in valued)
    if not pays:
        return (
            "No test hole is worth its cost as things stand: its answer would not change the "
            "choice, or not save enough."
        )
    said = "is worth more than it costs" if pays == 1 else "are worth more than they cost"
    return (
        f"{counted(pays, 'test hole')} {said}. Make the first, enter what it shows, and look here "
        "again before the next."
    )


def valued_holes(
    surfaces: tuple[SurfaceDecision, ...],
) -> tuple[tuple[SurfaceDecision, HoleValue], ...]:
    """The holes that can tell something, the best for its cost first."""
    valued = [(one, one.hole) for one in surfaces if one.hole is not None]
    return tuple(
        sorted(
            valued,
            key=lambda pair: (
                pair[1].cost_usd - pair[1].worth_usd,
                -pair[1].perfect_usd,
                pair[0].surface_id,
            ),
        )
    )


def where_in_words(assessment: Assessment, one: SurfaceDecision, hole: HoleValue) -> str:
    """The zone of the strongest sign; else where damage most often begins."""
    if hole.away:
        return "away from the signs, to see how far it goes"
    if hole.place is None:
        return "no sign has a place here: low in a corner, or below the highest joint"
    return zone_in_words(hole.place, assessment.surfaces[one.surface_id])


def _row(assessment: Assessment, one: SurfaceDecision, hole: HoleValue) -> Row:
    first = "; test for lead and asbestos first" if one.test_first else ""
    return (
        f"{one.surface_name}{' - open it' if hole.pays else ''}\n"
        f"{where_in_words(assessment, one, hole)}{first}",
        about(hole.cost_usd),
        about(hole.worth_usd),
        about(hole.perfect_usd),
        f"{capitalized(what_turns(hole))}\nshows damage: {hole.chance_bad:.0%}; after sound wood "
        f"{hole.after_clean:.0%} is left",
    )
