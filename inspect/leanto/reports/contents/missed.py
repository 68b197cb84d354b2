"""What the assessment missed, set against what was seen and assumed. The owner's."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date

from leanto.building.model import Building
from leanto.contract.compared import Compared, Sign
from leanto.contract.missed import FEW, ByEvidence, ByFound, by_evidence, by_found
from leanto.contract.spending import Spending
from leanto.reports.blocks import (
    Block,
    Bullets,
    Column,
    Facts,
    Heading,
    Paragraph,
    Report,
    Row,
    Table,
)
from leanto.reports.contents.condition import INVENTED
from leanto.reports.contents.costs import contingency_in_words
from leanto.reports.contents.owners import owners_report
from leanto.reports.contents.words import counted, rounded_area

_SURFACES = (
    Column("Surface", 0.28),
    Column("Chance: before, after the walk", 0.15, "right"),
    Column("Opened", 0.11, "right"),
    Column("Expected bad", 0.12, "right"),
    Column("Found bad", 0.11, "right"),
    Column("In short", 0.23),
)
_EVIDENCE = (
    Column("Evidence", 0.34),
    Column("Surfaces", 0.11, "right"),
    Column("Damage expected in", 0.13, "right"),
    Column("Found in", 0.11, "right"),
    Column("Expected, found bad", 0.16, "right"),
    Column("Reading", 0.15),
)
_FOUND = (
    Column("What was found", 0.24),
    Column("Surfaces", 0.12, "right"),
    Column("Foreseen by a sign", 0.16, "right"),
    Column("No sign of it at", 0.48),
)
HOW_TO_LEARN = (
    "One building is one sample. If the same evidence misleads on several jobs, change its ratio "
    "in checklists/hidden.yaml, or in the checklists folder of a job."
)


def missed_report(
    rows: Sequence[Compared], view: Spending | None, building: Building, as_of: date
) -> Report:
    """The answer first, then surface by surface, by kind of evidence, and by what was found."""
    blocks: list[Block] = [Paragraph(headline(rows), "lead")]
    if view is not None:
        blocks.append(Facts((("Contingency", contingency_in_words(view)),)))
    if rows:
        blocks += [
            Heading(1, "Surface by surface"),
            Table(_SURFACES, tuple(map(_surface, rows)), (_all(rows),), small=True),
            Paragraph(
                "Expected is the chance of damage times its extent, as it was assumed for what "
                "nobody had seen. Bad zones that the walk saw are not counted here.",
                "note",
            ),
            Heading(1, "What the assessment missed, by kind of evidence"),
            *_evidence_blocks(by_evidence(rows)),
            *_found_blocks(by_found(rows)),
            Heading(1, "For the next assessment"),
            Bullets(tuple(lessons(rows))),
        ]
    if building.invented:
        blocks.append(Paragraph(INVENTED, "note"))
    return owners_report("Opened walls against the assessment", blocks, building, as_of)


def headline(rows: Sequence[Compared]) -> str:
    """How much was found against what was expected, in a sentence or two."""
    if not rows:
        return "Nothing was opened yet."
    found, expected = (
        rounded_area(sum(r.found_sqft for r in rows)),
        rounded_area(sum(r.expected_sqft for r in rows)),
    )
    missed = [row.name for row in rows if row.verdict.startswith("missed")]
    said = (
        f"{counted(len(rows), 'surface')} opened: {found} bad beyond what was seen, against "
        f"{expected} expected."
    )
    return f"{said} No sign pointed to what was found at {'; '.join(missed)}." if missed else said


def lessons(rows: Sequence[Compared]) -> list[str]:
    """What to do otherwise next time; each sentence from what this job showed."""
    told = []
    for row in rows:
        if row.verdict.startswith("missed"):
            what = ", ".join(row.found) or "damage"
            told.append(f"{row.name}: {what} without a sign. A test hole there would have told.")
        elif row.verdict == "more than expected":
            told.append(
                f"{row.name}: more than expected; as much or more was thought "
                f"{row.at_least or 0:.0%} likely."
            )
        elif row.verdict == "expected, not found":
            signs = ", ".join(sign.text for sign in row.pointed)
            told.append(f"{row.name}: sound in spite of {signs or 'its age and make'}.")
    for one in by_evidence(rows):
        if one.reading.startswith("tells"):
            told.append(f"“{one.text}” {one.reading}.")
    return [*told, HOW_TO_LEARN]


def _evidence_blocks(rows: Sequence[ByEvidence]) -> tuple[Block, ...]:
    if not rows:
        return (Paragraph("Nothing was assumed of the surfaces that were opened."),)
    table = Table(_EVIDENCE, tuple(map(_evidence, rows)), small=True)
    note = Paragraph(
        f"A surface with several signs counts under each. Fewer than {FEW} surfaces say little.",
        "note",
    )
    return table, note


def _found_blocks(rows: Sequence[ByFound]) -> tuple[Block, ...]:
    if not rows:
        return ()
    table = Table(
        _FOUND,
        tuple(
            (one.kind, str(one.surfaces), str(one.foreseen), "; ".join(one.missed_at))
            for one in rows
        ),
        small=True,
    )
    return Heading(2, "By what was found"), table


def _surface(row: Compared) -> Row:
    chance = "nothing assumed"
    if row.prior is not None and row.chance is not None:
        chance = f"{row.prior:.0%}, {row.chance:.0%}"
    signs = "; ".join(map(_sign, row.signs))
    found = f"\n{', '.join(row.found)}" if row.found else ""
    at_least = ""
    if row.at_least is not None and row.found_sqft:
        at_least = f"\nso much or more: {row.at_least:.0%} likely"
    return (
        f"{row.name}\n{signs}" if signs else row.name,
        chance,
        rounded_area(row.opened_sqft),
        rounded_area(row.expected_sqft) if row.chance is not None else "",
        f"{rounded_area(row.found_sqft)}{found}",
        f"{row.verdict}{at_least}",
    )


def _all(rows: Sequence[Compared]) -> Row:
    return (
        "All",
        "",
        rounded_area(sum(row.opened_sqft for row in rows)),
        rounded_area(sum(row.expected_sqft for row in rows)),
        rounded_area(sum(row.found_sqft for row in rows)),
        "",
    )


def _evidence(one: ByEvidence) -> Row:
    return (
        one.text,
        str(one.surfaces),
        f"{one.expected_in:.1f}",
        str(one.found_in),
        f"{rounded_area(one.expected_sqft)}, {rounded_area(one.found_sqft)}",
        one.reading,
    )


def _sign(sign: Sign) -> str:
    if math.isinf(sign.ratio):
        return f"{sign.text} (seen)"
    if sign.ratio >= 1:
        return f"{sign.text} (x {sign.ratio:g})"
    return f"{sign.text} (against: x {sign.ratio:.2g})"
