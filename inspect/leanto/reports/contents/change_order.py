"""A change-order request: what an opened wall showed, and what it changes. For the contractor."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from decimal import Decimal

from leanto.assessment import Assessment
from leanto.bids.in_feet import quantity_in_words, shown_rate
from leanto.contract.pricing import amount_of, is_agreed
from leanto.money import format_usd
from leanto.quantities import Unit, format_quantity
from leanto.record.agreed_entry import AskedLine, BidAwarded, Opened
from leanto.record.kept_change import KeptChange
from leanto.reports.blocks import (
    Band,
    Block,
    Bullets,
    Caution,
    Column,
    Facts,
    Heading,
    Paragraph,
    Picture,
    Report,
    Row,
    Table,
)
from leanto.reports.contents.words import capitalized, counted, date_in_words
from leanto.reports.in_units import in_shown_units

_LINES = (
    Column("Work", 0.42),
    Column("Quantity", 0.13, "right"),
    Column("Unit price", 0.13, "right"),
    Column("Amount", 0.13, "right"),
    Column("Price from", 0.19),
)
_SIGN = (Column("", 0.28), Column("Name", 0.32, blank=True), Column("Signed, day", 0.4, blank=True))
_UNITS = {unit.label: unit for unit in Unit}
CAUTIONS_OF: dict[str, tuple[str, ...]] = {
    "rot": ("structure",),
    "mold": ("mold",),
    "pests": ("rodents", "insects"),
    "wiring": ("wiring",),
    "cut or missing framing": ("structure",),
}
"""Cautions that go with what was found, besides those of the work."""
NOT_YET = (
    "Nothing of this is done before both have agreed in writing on the amount and the days. It is "
    "no contract and no legal advice."
)


def change_order(
    change: KeptChange, openings: Sequence[Opened], award: BidAwarded, assessment: Assessment
) -> Report:
    """The lines with the bidder's own prices first, then what was found with its pictures.

    Holds no figure of ours: a line that no price was agreed for is left open. No contingency, no
    budget, no allowance.
    """
    building = assessment.building
    total = sum((amount_of(line) for line in change.lines if is_agreed(line)), Decimal(0))
    asked = [line for line in change.lines if not is_agreed(line)]
    said = f"{counted(len(change.lines), 'line')} beyond the scope"
    open_said = f"; {counted(len(asked), 'price')} asked for" if asked else ""
    blocks: list[Block] = [
        Paragraph(
            f"{said}, {format_usd(total, cents=True)} at your own prices{open_said}.", "lead"
        ),
        Facts(
            (
                ("To", award.bidder),
                ("Contract on form", award.form_id),
                ("Change", str(change.number)),
                ("Written", date_in_words(change.asked_on)),
                ("Days it takes", "to be said by the contractor: ____"),
            )
        ),
        Caution("Before it is done", NOT_YET),
        Heading(1, "What it changes"),
        Table(_LINES, tuple(_rows(change.lines)), (_foot(total, bool(asked)),)),
        *_how(change.lines),
        *_cautions(openings, change.lines, assessment),
        Heading(1, "What was found"),
        *(block for one in openings for block in _found(one, assessment)),
        Heading(1, "Agreed"),
        Table(_SIGN, (("Owner", "", ""), ("Contractor", "", ""))),
    ]
    if building.invented:
        blocks.append(Paragraph("The building and what was found are invented.", "note"))
    report = Report(
        kind=f"Change-order request {change.number}",
        title=building.name,
        subtitle=building.place,
        as_of=change.asked_on,
        blocks=tuple(blocks),
        invented=building.invented,
        footer="Counted together on the site before it is covered.",
        keywords=("change order", building.name),
    )
    return in_shown_units(report, building, award.bidder, [one.note for one in openings])


def _rows(lines: Sequence[AskedLine]) -> Iterator[Row | Band]:
    by_place: dict[str, list[AskedLine]] = {}
    for line in lines:
        by_place.setdefault(line.place, []).append(line)
    for place, held in by_place.items():
        yield Band(capitalized(place))
        yield from (_row(line) for line in held)


def _row(line: AskedLine) -> Row:
    less = "\nless than the scope has" if line.quantity < 0 else ""
    unit = _UNITS.get(line.unit)
    quantity = (
        format_quantity(line.quantity, unit)
        if unit is not None and line.quantity > 0
        else quantity_in_words(line.quantity, line.unit)
    )
    if not is_agreed(line):
        return f"{line.title}{less}", quantity, "______", "______", "asked for"
    return (
        f"{line.title}{less}",
        quantity,
        format_usd(shown_rate(line.rate_usd, line.unit)[0], cents=True),
        format_usd(amount_of(line), cents=True),
        _source(line),
    )


def _source(line: AskedLine) -> str:
    return (
        "your unit price" if line.basis == "agreed unit price" else line.said.replace("as in ", "")
    )


def _foot(total: Decimal, has_open: bool) -> Row:
    what = "At your own prices; open lines to be added" if has_open else "All"
    return what, "", "", format_usd(total, cents=True), ""


def _how(lines: Sequence[AskedLine]) -> Iterator[Block]:
    told = ["Unit prices are those of your bid for work that is found."]
    if any(line.basis == "price of the bid" for line in lines):
        told.append(
            "Where none was asked for, the price of the same work in your own lines counts."
        )
    if any(not is_agreed(line) for line in lines):
        told.append(
            "Lines marked “asked for” have no price in your bid. Please give one, or hours at your "
            "hourly price and materials at cost as the conditions say."
        )
    yield Bullets(tuple(told))


def _cautions(
    openings: Sequence[Opened], lines: Sequence[AskedLine], assessment: Assessment
) -> Iterator[Block]:
    works = assessment.library.works
    named = {
        caution for one in openings for kind in one.found for caution in CAUTIONS_OF.get(kind, ())
    }
    named |= {
        caution for line in lines if line.work in works for caution in works[line.work].caution
    }
    found = [
        Caution(one.title, one.text, one.who)
        for one in assessment.library.checklist.cautions
        if one.id in named
    ]
    if found:
        yield Heading(1, "Cautions")
        yield from found


def _found(opening: Opened, assessment: Assessment) -> Iterator[Block]:
    surface = assessment.surfaces.get(opening.surface_id)
    name = surface.name if surface else opening.surface_id
    yield Heading(2, f"Opening {opening.number}: {name}")
    area = format_quantity(opening.opened_sqft, Unit.SQFT)
    bad = format_quantity(opening.bad_sqft, Unit.SQFT) if opening.bad_sqft else "nothing more"
    yield Facts(
        (
            ("Opened", f"{area}, {date_in_words(opening.opened_on)}"),
            ("Bad beyond the scope", bad),
            ("What it is", ", ".join(opening.found) or "not said"),
            *((("Note", opening.note),) if opening.note else ()),
        )
    )
    for number, kept in enumerate(opening.pictures, start=1):
        yield Picture(kept.photo, f"Opening {opening.number}, picture {number}: {name}")
