"""The facts of the building, as typed."""

from __future__ import annotations

from datetime import date

from leanto.assessment import Assessment
from leanto.building.model import Block, Building
from leanto.quantities import format_ft_in, format_pitch
from leanto.reports.blocks import Column, Facts, Table
from leanto.reports.contents.words import capitalized, date_in_words

_BLOCKS = (
    Column("Part", 0.16),
    Column("Size", 0.2),
    Column("Walls", 0.24),
    Column("Roof", 0.24),
    Column("Ceiling and floor", 0.24),
)


def title_facts(assessment: Assessment, who: str = "") -> Facts:
    """What stands under the title: whose it is, what for, when it was walked."""
    building = assessment.building
    heated = "to be heated" if building.to_be_heated else "not to be heated"
    pairs = (
        ("Owner", building.owner),
        ("Built", f"{building.year_built}; to become: {building.intended_use}, {heated}"),
        ("Walked", _walked(assessment.as_of, who)),
    )
    return Facts(tuple((label, value) for label, value in pairs if value))


def block_table(building: Building) -> Table:
    return Table(_BLOCKS, tuple(_block_row(block) for block in building.blocks))


def site_facts(building: Building) -> Facts:
    pairs = [("Foundation", capitalized(building.foundation))]
    if building.distance_to_panel > 0:
        pairs.append(("House panel", f"{format_ft_in(building.distance_to_panel)} away"))
    counts: dict[str, int] = {}
    for opening in building.openings:
        counts[opening.kind] = counts.get(opening.kind, 0) + 1
    if counts:
        pairs.append(("Openings", ", ".join(f"{n} × {kind}" for kind, n in counts.items())))
    return Facts(tuple(pairs))


def _walked(day: date, who: str) -> str:
    return f"{date_in_words(day)}, by {who}" if who else date_in_words(day)


def _block_row(block: Block) -> tuple[str, ...]:
    walls, roof = block.walls, block.roof
    pitch = f", {format_pitch(roof.pitch)}" if roof.pitch is not None else ""
    layers = f", {roof.layers} layers" if roof.layers > 1 else ""
    age = f", about {roof.covering_age_years} years" if roof.covering_age_years else ""
    ceiling = f"Ceiling: {block.ceiling.lining}" if block.ceiling else "Open to the rafters"
    return (
        block.name,
        f"{format_ft_in(block.length)} × {format_ft_in(block.width)}"
        f"\neave {format_ft_in(block.eave_height)}",
        f"{walls.member} at {format_ft_in(walls.spacing)}"
        f"\n{walls.cladding} outside, {walls.lining} inside, insulation {walls.insulation}",
        f"{capitalized(roof.form)}{pitch}\n{roof.covering}{layers}{age}",
        f"{ceiling}\nfloor: {block.floor.kind}",
    )
