"""The rows of opening up: each surface with what was thought of it and what it showed."""

from __future__ import annotations

from leanto.contract.compared import Compared
from leanto.job.opening_up import Openable
from leanto.tui.short_place import short_place
from leanto.tui.widgets.rows_table import Column, Row

COLUMNS = (
    Column("No.", 3, "right"),
    Column("Surface", 0, shorten=short_place),
    Column("Chance", 6, "right"),
    Column("Opened", 6, "right"),
    Column("Bad", 5, "right"),
    Column("In short", 24, from_width=66),
)
SORTINGS = ("list", "chance", "found")


def rows(surfaces: tuple[Openable, ...], compared: tuple[Compared, ...]) -> tuple[Row, ...]:
    """Lined surfaces and opened ones first; the others below a heading."""
    told = {one.surface_id: one for one in compared}
    first = [one for one in surfaces if one.decision is not None or one.openings]
    rest = [one for one in surfaces if one not in first]
    made = [_row(one, told.get(one.surface.id)) for one in first]
    if rest:
        blank = ("", "Without a lining", "", "", "", "")
        made.append(Row("rest", blank, is_heading=True, style="bold"))
        made += [_row(one, None) for one in rest]
    return tuple(made)


def _row(one: Openable, seen: Compared | None) -> Row:
    chance = one.decision.unseen.p if one.decision else 0.0
    opened = sum(x.opened_sqft for x in one.openings)
    bad = sum(x.bad_sqft for x in one.openings)
    return Row(
        key=one.surface.id,
        cells=(
            str(one.number),
            one.surface.name,
            f"{chance:.0%}" if one.decision else "",
            f"{opened:.0f}" if one.openings else "",
            f"{bad:.3g}" if one.openings else "",
            seen.verdict if seen else "",
        ),
        orders=((-chance, one.number), (-bad, one.number)),
        style="bold" if one.openings else "",
    )
