"""Bids whose sum is fair and whose parts are not: paid too early, or far off line by line."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from leanto.bids.figure import How
from leanto.bids.in_feet import shown_rate
from leanto.bids.levelled import Levelled, LevelLine
from leanto.bids.model import MISSING, UnitPriceAsk
from leanto.bids.outlier import FEWEST
from leanto.bids.plug import middle_of
from leanto.money import format_usd
from leanto.scope.work import Phase
from leanto.source import Source

UNBALANCED = Source("48 CFR 15.404-1(g)", place="unbalanced pricing")
EARLY = (Phase.PROTECT, Phase.TREAT, Phase.STRIP)
"""Paid before anything is built."""

_EARLY_TIMES, _EARLY_MORE = Decimal("1.5"), Decimal("0.10")
_FAR = Decimal(2)
_ASK_FAR = Decimal("1.5")
_LEAST_SHARE = Decimal("0.01")
_NEAR_TOTAL = Decimal("0.15")
_MOST = 4
"""Thresholds are common practice, no source."""


@dataclass(frozen=True, slots=True)
class FarLine:
    """A line whose price is the double or the half of the middle one, or more."""

    line: LevelLine
    usd: Decimal
    middle: Decimal
    """The median of the bids, or our likely figure where there are fewer than three."""

    @property
    def is_over(self) -> bool:
        return self.usd > self.middle


def unbalanced(made: Levelled, at: int) -> tuple[str, ...]:
    """What is unbalanced in one bid, a sentence each."""
    told = [_front_loaded(made, at), *_lines_in_words(made, at), *_asks_in_words(made, at)]
    return tuple(sentence for sentence in told if sentence)


def far_lines(made: Levelled, at: int) -> tuple[FarLine, ...]:
    """The lines far from the middle of the bids, the most money first."""
    least = _LEAST_SHARE * made.bids[at].base
    found = []
    for line in made.lines:
        cell = line.cells[at]
        middle = _middle(
            [one.usd for one in line.cells if one.how.is_bid],
            line.ours.likely if line.ours else None,
        )
        if not cell.how.is_bid or cell.how is How.RESCALED or not middle:
            continue
        far = cell.usd >= _FAR * middle or cell.usd * _FAR <= middle
        if far and abs(cell.usd - middle) >= least:
            found.append(FarLine(line, cell.usd, middle))
    return tuple(sorted(found, key=lambda one: -abs(one.usd - one.middle)))


def _middle(given: Sequence[Decimal], ours: Decimal | None) -> Decimal | None:
    """The median of three prices or more: it does not follow one that is far off. With fewer,
    nobody can say which one is off, and our likely figure stands in."""
    return middle_of(given) if len(given) >= FEWEST else ours


def early_share(amounts: Mapping[str, Decimal], phases: Mapping[str, Phase]) -> Decimal | None:
    """The share of amounts, by line, that falls due before anything is built; None of nothing."""
    total = sum(amounts.values(), Decimal(0))
    early = sum((x for id_, x in amounts.items() if phases.get(id_) in EARLY), Decimal(0))
    return early / total if total else None


def _front_loaded(made: Levelled, at: int) -> str:
    # Only lines that everybody has priced: a line that one left out would shift the shares.
    lines = [line for line in made.lines if all(cell.how.is_bid for cell in line.cells)]
    phases = made.base.phases
    shares = [
        early_share({line.line.item_id: line.cells[i].usd for line in lines}, phases)
        for i in range(len(made.bids))
    ]
    ours = early_share({x.line.item_id: x.ours.likely for x in lines if x.ours}, phases)
    own, middle = shares[at], _middle([share for share in shares if share is not None], ours)
    if own is None or middle is None:
        return ""
    if own < middle * _EARLY_TIMES or own - middle < _EARLY_MORE:
        return ""
    total = sum((line.cells[at].usd for line in lines), Decimal(0))
    return (
        f"Front-loaded: {own:.0%} of the lines that all have priced is for protecting, treating "
        f"and stripping, against {middle:.0%}{_whose(made)}. Paid line by line, about "
        f"{format_usd((own - middle) * total)} would be paid ahead of its work: tie payments to "
        "what stands."
    )


def _whose(made: Levelled) -> str:
    return " in the middle of the bids" if len(made.bids) >= FEWEST else " in our allowances"


def _lines_in_words(made: Levelled, at: int) -> list[str]:
    found = far_lines(made, at)
    over, under = [x for x in found if x.is_over], [x for x in found if not x.is_over]
    told = [
        f"Far {word} {_compared(made)}: {'; '.join(map(_line_in_words, far[:_MOST]))}"
        + (f"; and {len(far) - _MOST} more lines." if len(far) > _MOST else ".")
        for word, far in (("over", over), ("under", under))
        if far
    ]
    middle = middle_of(one.base for one in made.bids)
    near = middle is not None and abs(made.bids[at].base - middle) <= _NEAR_TOTAL * middle
    if len(made.bids) > 1 and near and over and under:
        told.append(
            "Some lines are far over and some far under, while the total is near the others'. If "
            f"line {over[0].line.line.line} grows or line {under[0].line.line.line} is struck, "
            "this bid costs more than it seems."
        )
    return told


def _compared(made: Levelled) -> str:
    return "the median of the bids" if len(made.bids) >= FEWEST else "our likely figures"


def _line_in_words(one: FarLine) -> str:
    line = one.line.line
    quantity = Decimal(str(line.quantity))
    each = ""
    if quantity > 1:
        (own, unit), (middle, _) = (
            shown_rate(x / quantity, line.unit) for x in (one.usd, one.middle)
        )
        each = (
            f" ({format_usd(own, cents=True)} against {format_usd(middle, cents=True)} {per(unit)})"
        )
    return (
        f"line {line.line}, {line.title}, {line.place}, {format_usd(one.usd)} against "
        f"{format_usd(one.middle)}{each}"
    )


def far_unit_prices(made: Levelled, at: int) -> list[tuple[UnitPriceAsk, Decimal, Decimal]]:
    """The unit prices for what may be found that are far off, each with its middle."""
    ours = {work.ask_id: work.ours.likely for work in made.base.hidden}
    found = []
    for ask in made.base.form.unit_prices:
        prices = [one.bid.unit_prices.get(ask.id, MISSING).usd for one in made.bids]
        own = prices[at]
        middle = _middle([price for price in prices if price is not None], ours.get(ask.id))
        if own is not None and middle and not middle / _ASK_FAR < own < middle * _ASK_FAR:
            found.append((ask, own, middle))
    return found


def _asks_in_words(made: Levelled, at: int) -> list[str]:
    far: dict[str, list[str]] = {"over": [], "under": []}
    for ask, own, middle in far_unit_prices(made, at):
        (mine, unit), (others, _) = (shown_rate(x, ask.unit) for x in (own, middle))
        against = format_usd(others, cents=True)
        price = f"{format_usd(mine, cents=True)} {per(unit)} against {against}"
        far["over" if own > middle else "under"].append(f"{ask.title}, {price}")
    return [
        f"Unit prices for what may be found far {word} {_compared(made)}: {'; '.join(asks)}."
        for word, asks in far.items()
        if asks
    ]


def per(unit: str) -> str:
    """``each``, ``per sq ft``."""
    return unit if unit == "each" else f"per {unit}"
