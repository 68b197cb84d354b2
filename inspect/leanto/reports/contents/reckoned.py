"""Checks by the numbers: every computation over the walk with its working and its sources."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from leanto.assessment import Assessment
from leanto.cost.feed import least
from leanto.reckon.model import Reckoning
from leanto.reports.blocks import Block, Bullets, Column, Entry, Facts, Heading, Paragraph, Table
from leanto.reports.contents.feed import feed_blocks, first_in_words
from leanto.reports.contents.words import capitalized

SAID = (
    "Computed from the building as described and from the walk, by the tables and editions named. "
    "Nothing here is called safe: a check passes by a table, does not pass, or goes to somebody "
    "who may answer it. Local codes and editions govern."
)
_SHORT = 60
"""Figures up to so many letters stand beside each other."""
_GROUPS = (
    ("Tests before anything is disturbed", ("lead", "asbestos")),
    (
        "Floors, ceilings and rafters",
        ("floor", "ceiling", "ceiling-storage", "rafters", "rafters-next-layer"),
    ),
    ("Roof", ("roof-take-off", "roof-slope", "roof-layers", "roof-life")),
    ("Soft wood", ("section",)),
    ("Notches and holes", ("cut-member",)),
    ("Meter readings", ("moisture",)),
    ("Water and mold", ("mold", "wet-lining", "cut")),
    ("Pests, gaps and soil", ("pest", "gap", "clearance")),
    ("The feed", ("feed", "long-feed", "feed-there")),
    ("Insulation and heat", ("insulation", "heat")),
    ("Debris", ("debris-linings", "debris-coverings", "debris-apart")),
)
_AS_TABLE = {
    "section": (
        ("Member", "Member", 0.2),
        ("Awl sinks in", "Awl", 0.09),
        ("Strength lost", "Lost", 0.09),
        ("Piece beside it", "Piece beside it", 0.18),
    ),
    "moisture": (
        ("Meter", "Meter", 0.09),
        ("Corrected", "Corrected", 0.2),
        ("Explained by the air", "The air explains", 0.18),
        ("Beyond that", "Beyond", 0.11),
    ),
}
"""Kinds of which there are many: (figure, heading of its column, share of the width)."""


def reckoned_blocks(assessment: Assessment) -> tuple[Block, ...]:
    """Every reckoning, by subject, with the sources once below each subject."""
    blocks: list[Block] = [Paragraph(SAID, "note")]
    number = 1
    for title, kinds in _GROUPS:
        group = [one for one in assessment.reckonings if kind_of(one) in kinds]
        if not group:
            continue
        blocks.append(Heading(2, title))
        if kinds[0] in _AS_TABLE:
            blocks.append(_table(group, kinds[0]))
        else:
            for one in group:
                blocks.append(_entry(one, f"C{number}"))
                number += 1
        if "feed" in kinds and assessment.library.feed_materials is not None:
            side_by_side = feed_blocks(
                assessment.feed_ways, assessment.library.feed_materials.source
            )
            if side_by_side:
                blocks += [Heading(3, "Ways of running the feed, side by side"), *side_by_side]
        blocks += _below(group)
    return tuple(blocks)


def kind_of(one: Reckoning) -> str:
    """The computation that made it, such as ``floor``."""
    return one.id.partition("@")[0]


def single_blocks(one: Reckoning, more: Sequence[Block] = ()) -> tuple[Block, ...]:
    """One reckoning on its own, with all its words; ``more`` stands below the figures."""
    figures = tuple((figure.label, figure.text) for figure in one.figures)
    return (
        Paragraph(capitalized(one.verdict), "lead"),
        *((Facts(figures),) if figures else ()),
        *more,
        *((Bullets(one.reasons),) if one.reasons else ()),
        *((Heading(3, "Also to be looked at"), Bullets(one.asks)) if one.asks else ()),
        *(Paragraph(f"Caution: {caution}") for caution in one.cautions),
        *_below((one,)),
    )


def long_feed_in_words(assessment: Assessment) -> str:
    """A sentence for the summary on a run beyond 100 ft; empty without one."""
    for one in assessment.reckonings:
        if kind_of(one) == "long-feed":
            run = next(figure.text for figure in one.figures if figure.label == "Run")
            first = least(assessment.feed_ways)
            costs = f" The least that carries it all: {first_in_words(first)}." if first else ""
            return (
                f"The feed from the house runs {run}, beyond 100 ft: the distance sets wire, "
                f"conduit and price.{costs} See Checks by the numbers."
            )
    return ""


def _entry(one: Reckoning, number: str) -> Entry:
    return Entry(
        number=number,
        title=f"{one.title}: {one.verdict}.",
        lines=tuple(_lines(one)),
        body=(
            *((" ".join(one.reasons),) if one.reasons else ()),
            *((f"Also to be looked at: {' '.join(one.asks)}",) if one.asks else ()),
            *(f"Caution: {caution}" for caution in one.cautions),
        ),
    )


def _lines(one: Reckoning) -> Iterator[str]:
    """The figures, short ones beside each other."""
    together: list[str] = []
    for figure in one.figures:
        said = f"{figure.label}: {figure.text}"
        if len(said) > _SHORT:
            if together:
                yield "; ".join(together)
            together = []
            yield said
        else:
            together.append(said)
    if together:
        yield "; ".join(together)


def _table(group: Sequence[Reckoning], kind: str) -> Table:
    columns = _AS_TABLE[kind]
    left = 1.0 - sum(share for _, _, share in columns)
    rows = []
    for one in group:
        figures = {figure.label: figure.text for figure in one.figures}
        place = one.title.partition(", ")[2] or one.title
        rows.append((place, *(figures.get(label, "") for label, _, _ in columns), one.verdict))
    return Table(
        (
            Column("Place", left * 0.55),
            *(Column(heading, share) for _, heading, share in columns),
            Column("Verdict", left * 0.45),
        ),
        tuple(rows),
    )


def _below(group: Sequence[Reckoning]) -> Iterator[Block]:
    """Who confirms it, and where it comes from, each once."""
    confirm = dict.fromkeys(one.confirm for one in group if one.confirm)
    sources = dict.fromkeys(source for one in group for source in one.sources)
    if confirm:
        yield Paragraph(" ".join(confirm), "note")
    if sources:
        yield Paragraph(f"Sources: {'; '.join(sources)}.", "note")
