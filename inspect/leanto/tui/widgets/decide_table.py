"""The rows of gut or keep."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.decision.model import SurfaceDecision
from leanto.decision.words import headline
from leanto.reports.contents.words import about
from leanto.tui.short_place import short_place
from leanto.tui.widgets.rows_table import Column, Row

COLUMNS = (
    Column("Lined surface", 0, shorten=short_place),
    Column("Answer", 20),
    Column("Keep", 7, "right"),
    Column("Gut", 7, "right"),
    Column("Bad", 4, "right"),
    Column("Pays at", 7, "right"),
)
SORTINGS = ("place", "cost", "damage seen")


def damaged_percent(one: SurfaceDecision) -> float:
    """Of the lined surface, what was seen to be bad."""
    return 100 * one.damaged_sqft / one.area_sqft if one.area_sqft else 0.0


def break_even(one: SurfaceDecision) -> str:
    """The damaged share of the unseen part from which gutting pays."""
    if one.break_even_share is not None:
        return f"{100 * one.break_even_share:.0f} %"
    return "always" if one.gut.expected < one.keep.expected else "never"


def rows(assessment: Assessment) -> tuple[Row, ...]:
    return tuple(
        Row(
            key=one.surface_id,
            cells=(
                one.surface_name,
                headline(one),
                about(one.keep.expected),
                about(one.gut.expected),
                f"{damaged_percent(one):.0f} %",
                break_even(one),
            ),
            orders=((-one.chosen_cost.expected, at), (-damaged_percent(one), at)),
            search=one.overruled,
            style="bold" if one.overruled else "",
        )
        for at, one in enumerate(assessment.decision.surfaces)
    )
