"""Gut or keep: the answer for every lined surface with both courses' costs."""

from __future__ import annotations

from itertools import zip_longest

from leanto.decision.model import CourseCost, Decision, Part, SurfaceDecision
from leanto.decision.words import headline, in_words, interior_in_words
from leanto.money import format_usd
from leanto.reports.blocks import Block, Column, Heading, Paragraph, Table
from leanto.reports.contents.words import about, capitalized, spread_in_words

_TABLE = (
    Column("Lined surface", 0.34),
    Column("Area", 0.11, "right"),
    Column("Seen bad", 0.11, "right"),
    Column("Keep", 0.12, "right"),
    Column("Gut", 0.12, "right"),
    Column("Answer", 0.22),
)
_PARTS = (
    Column("To keep", 0.32),
    Column("Likely", 0.18, "right"),
    Column("To gut", 0.32),
    Column("Likely", 0.18, "right"),
)

_NOT_EXACT = (
    "There are too many lined surfaces to compare every combination of courses; they were "
    "compared part by part of the building."
)


def decision_blocks(decision: Decision) -> tuple[Block, ...]:
    """The answer first, then the table, then the reasons surface by surface."""
    blocks: list[Block] = [Paragraph(interior_in_words(decision), "lead")]
    if decision.surfaces:
        blocks.append(decision_table(decision))
        blocks.append(
            Paragraph(
                "Keep and gut are expected costs, each with the damage that is likely but not seen "
                "yet. Conditions that decide whatever the cost, and tests that come first, are "
                "named below.",
                "note",
            )
        )
    if not decision.is_exact:
        blocks.append(Paragraph(_NOT_EXACT, "note"))
    for one in decision.surfaces:
        blocks += [
            Heading(3, f"{one.surface_name}: {headline(one)}"),
            Paragraph(in_words(one)),
            _parts_table(one),
        ]
    return tuple(blocks)


def decision_table(decision: Decision) -> Table:
    rows = tuple(
        (
            one.surface_name,
            f"{one.area_sqft:,.0f} sq ft",
            f"{one.damaged_sqft:,.0f} sq ft",
            about(one.keep.expected),
            about(one.gut.expected),
            headline(one),
        )
        for one in decision.surfaces
    )
    total = f"Chosen: {about(decision.chosen)}"
    foot = ("All lined surfaces", "", "", about(decision.keep_all), about(decision.gut_all), total)
    return Table(_TABLE, rows, (foot,))


def _parts_table(one: SurfaceDecision) -> Table:
    pairs = zip_longest(one.keep.parts, one.gut.parts)
    rows = tuple((*_part(keep), *_part(gut)) for keep, gut in pairs)
    foot = (
        "Expected to keep",
        _expected(one.keep),
        "Expected to gut",
        _expected(one.gut),
    )
    return Table(_PARTS, rows, (foot,))


def _part(part: Part | None) -> tuple[str, str]:
    return ("", "") if part is None else (capitalized(part.text), spread_in_words(part.cost))


def _expected(course: CourseCost) -> str:
    return format_usd(course.expected)
