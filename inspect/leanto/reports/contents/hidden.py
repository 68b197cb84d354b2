"""What the chance of damage that cannot be seen rests on: prior, each sign, and what follows."""

from __future__ import annotations

import math

from leanto.decision.model import Evidence, SurfaceDecision
from leanto.decision.unseen import posterior
from leanto.reports.blocks import Column, Row, Table
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.words import capitalized

ASSUMED = (
    "Chances, the weight of each sign and the share that is bad are planning assumptions without a "
    "source. Each stands in checklists/hidden.yaml and may be changed there, or for one job in a "
    "hidden.yaml in its own checklists folder. A sign multiplies the odds of damage by its weight; "
    "of signs with one cause only the strongest counts. Ranges in the tables are the least and the "
    "most that each part may cost; the expected figures add up."
)
_EVIDENCE = (
    Column("Damage behind what cannot be seen", 0.58),
    Column("Times the odds", 0.2, "right"),
    Column("Chance so far", 0.22, "right"),
)


def evidence_table(one: SurfaceDecision, numbers: Numbering) -> Table:
    """The prior, each sign with its weight and the chance after it, and the share in the end."""
    first = "Before anything was seen, by lining, age and base"
    rows: list[Row] = [(first, "", chance_pct(one.prior))]
    ratios: list[float] = []
    for piece in one.evidence:
        ratios.append(piece.ratio)
        found = numbers.of_findings(piece.findings)
        word = "findings" if "," in found else "finding"
        because = f" ({word} {found})" if found else ""
        chance = posterior(one.prior, tuple(ratios))
        sign = f"{capitalized(piece.text)}{because}"
        rows.append((sign, weight_in_words(piece), chance_pct(chance)))
    unseen = one.unseen
    foot = (
        f"If there is damage, {unseen.extent:.0%} of the unseen part on average: "
        f"{unseen.mean:.0%} in all",
        "",
        chance_pct(unseen.p),
    )
    return Table(_EVIDENCE, tuple(rows), (foot,), small=True)


def weight_in_words(piece: Evidence) -> str:
    """``× 6``; for proof that it was seen."""
    return "it was seen" if math.isinf(piece.ratio) else f"× {piece.ratio:.2g}"


def chance_pct(chance: float) -> str:
    """``13%``; with a tenth near none and near all."""
    return f"{chance:.0%}" if 0.01 <= chance <= 0.99 else f"{chance:.1%}"
