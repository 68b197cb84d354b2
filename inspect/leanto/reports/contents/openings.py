"""What may be opened, what was assumed of it, what was found, and what that changes."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from leanto.bids.in_feet import shown_quantity, shown_rate
from leanto.building.model import Building
from leanto.contract.pricing import amount_of
from leanto.contract.spending import Spending, asked_total
from leanto.decision.model import SurfaceDecision
from leanto.money import format_usd
from leanto.record.agreed_entry import AgreedRate, AskedLine, BidAwarded, Opened
from leanto.record.kept_change import KeptChange
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
from leanto.reports.contents.costs import contingency_in_words
from leanto.reports.contents.owners import owners_report
from leanto.reports.contents.words import rounded_area

_SURFACES = (
    Column("No.", 0.06, "right"),
    Column("Surface", 0.34),
    Column("Seen bad", 0.12, "right"),
    Column("Chance of more", 0.14, "right"),
    Column("Opened", 0.14, "right"),
    Column("Found more", 0.2, "right"),
)
NO_AWARD = "No bid was chosen yet: what is found is priced by our own figures."

SurfaceRow = tuple[int, str, SurfaceDecision | None, Sequence[Opened]]
"""Number, name, what was decided, and what was opened."""


def openings_report(
    surfaces: Sequence[SurfaceRow],
    waiting: Sequence[AskedLine],
    changes: Sequence[KeptChange],
    award: BidAwarded | None,
    view: Spending | None,
    building: Building,
    as_of: date,
) -> Report:
    """The list that one opens walls by; ``waiting`` stands in no change yet."""
    blocks: list[Block] = [
        Table(_SURFACES, tuple(_surface(row) for row in surfaces if row[2] or row[3])),
        *_waiting(waiting),
        *_changes(changes),
    ]
    if view is not None:
        blocks.append(Facts((("Contingency", contingency_in_words(view)),)))
    if award is None:
        blocks.append(Paragraph(NO_AWARD, "note"))
    elif award.rates:
        rates = tuple(f"{rate.id}: {rate.title}, {_rate_in_words(rate)}" for rate in award.rates)
        blocks += [Heading(2, f"Unit prices agreed with {award.bidder}"), Bullets(rates)]
    others = [f"{number} {name}" for number, name, *rest in surfaces if not any(rest)]
    if others:
        blocks.append(Paragraph(f"Without a lining: {'; '.join(others)}.", "note"))
    return owners_report("Opening up", blocks, building, as_of)


def asked_in_words(line: AskedLine) -> str:
    """``Sister a stud, 3 each at $45.00 = $135.00 (unit price of the bid)``."""
    amount = format_usd(amount_of(line), cents=True)
    rate, _ = shown_rate(line.rate_usd, line.unit)
    return (
        f"{line.title}, {shown_quantity(line.quantity, line.unit)} at "
        f"{format_usd(rate, cents=True)} = {amount} ({line.said})"
    )


def change_in_words(change: KeptChange) -> str:
    """``Change 2: asked for $410, agreed $380``."""
    asked = f"Change {change.number}: asked for {format_usd(asked_total(change), cents=True)}"
    if change.settled_usd is None:
        return f"{asked}, not agreed yet"
    return f"{asked}, agreed {format_usd(change.settled_usd, cents=True)}"


def _surface(row: SurfaceRow) -> Row:
    number, name, decided, opened = row
    area = sum(one.opened_sqft for one in opened)
    bad = sum(one.bad_sqft for one in opened)
    found = ", ".join(dict.fromkeys(kind for one in opened for kind in one.found))
    return (
        str(number),
        name,
        rounded_area(decided.damaged_sqft) if decided and decided.damaged_sqft else "",
        f"{decided.unseen.p:.0%}\n{decided.prior:.0%} before the walk" if decided else "",
        rounded_area(area) if opened else "",
        (f"{rounded_area(bad)}\n{found}" if found else rounded_area(bad)) if opened else "",
    )


def _waiting(lines: Sequence[AskedLine]) -> tuple[Block, ...]:
    if not lines:
        return ()
    told = tuple(f"Opening {x.opening}, {x.place}: {asked_in_words(x)}" for x in lines)
    total = sum(amount_of(line) for line in lines)
    return (
        Heading(2, f"In no change-order request yet, {format_usd(total, cents=True)}"),
        Bullets(told),
    )


def _changes(changes: Sequence[KeptChange]) -> tuple[Block, ...]:
    if not changes:
        return ()
    return Heading(2, "Changes"), Bullets(tuple(map(change_in_words, changes)))


def _rate_in_words(rate: AgreedRate) -> str:
    usd, unit = shown_rate(rate.usd, rate.unit)
    return f"{format_usd(usd, cents=True)} {_per(unit)}"


def _per(unit: str) -> str:
    return unit if unit == "each" else f"per {unit}"
