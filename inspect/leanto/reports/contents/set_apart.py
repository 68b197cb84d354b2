"""What bidders read about lines that are not in the base bid: alternates, and the owner's own."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from leanto.assessment import Assessment
from leanto.reports.blocks import Band, Block, Bullets, Column, Heading, Paragraph, Row, Table
from leanto.reports.contents.numbering import Numbering
from leanto.scope.item import RepairItem

Rows = Callable[[Iterable[RepairItem], Numbering], Iterator[Row | Band]]


def alternate_blocks(
    assessment: Assessment, numbers: Numbering, columns: tuple[Column, ...], rows: Rows
) -> tuple[Block, ...]:
    """The lines that are priced apart; nothing when there are none."""
    items = assessment.scope.alternates
    if not items:
        return ()
    return (
        Heading(1, "Alternates"),
        Paragraph(
            "Price each of these lines as an amount to add. They are not part of the base bid and "
            "are taken up one by one, or not at all."
        ),
        Table(columns, tuple(rows(items, numbers))),
    )


def by_owner_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """The lines that the owner does; nothing when there are none."""
    items = assessment.scope.by_owner
    if not items:
        return ()
    return (
        Heading(2, "By the owner"),
        Paragraph("The owner does these lines. Do not price them; name what you need before them."),
        Bullets(
            tuple(
                f"Line {numbers.items[item.id]}: {item.work.title}, {item.place}" for item in items
            )
        ),
    )
