"""What each course of one lined surface consists of, and what it costs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from leanto.building.kinds import Insulation
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.cost.build_up import by_owner, plain_lines
from leanto.cost.estimate import CostLine
from leanto.cost.price import Factors, Price
from leanto.cost.risk import SharedRisk, moments, own_risk, shared_risk
from leanto.cost.triangle import Triangle
from leanto.decision.hidden import HiddenFile, LiningWork
from leanto.decision.model import Course, CourseCost, Part
from leanto.decision.unseen import Line, Unseen
from leanto.money import NOTHING, Spread, format_usd
from leanto.rules.model import Take
from leanto.scope.build import build_scope
from leanto.scope.call import Call
from leanto.scope.work import Work


@dataclass(frozen=True, slots=True)
class Case:
    """Everything the two courses of one lined surface are computed from."""

    surface: Surface
    zones: tuple[Rectangle, ...]
    """United, widened zones where the lining must be opened or is bad itself."""
    damaged_sqft: float
    behind: tuple[Call, ...]
    """Repairs that the findings call for behind this lining."""
    unseen: Unseen
    wiring_ft: float
    """New cable on this surface; 0 when none is called for."""
    insulate: bool
    setup_share: float
    """This surface's part of the set-up of a gutted room, 0 to 1."""
    heat_lost: Spread = NOTHING
    """Money for the heat that a kept lining lets through on top, over the owner's years."""


@dataclass(frozen=True)
class Book:
    """Works, prices and factors, as both courses use them."""

    works: Mapping[str, Work]
    prices: Mapping[str, Price]
    factors: Factors
    hidden: HiddenFile
    surfaces: Mapping[str, Surface]
    by_owner: frozenset[str] = frozenset()
    """Ids of the repair items that the owner means to do."""

    @cached_property
    def shared(self) -> SharedRisk:
        return shared_risk(self.factors)

    def lining(self, surface: Surface) -> LiningWork:
        return next(entry for entry in self.hidden.linings if entry.lining is surface.lining)

    def lines(self, calls: Iterable[Call]) -> tuple[CostLine, ...]:
        """The cost lines of calls on their own, without minimum charges, all by contractors."""
        scope = build_scope(calls, self.surfaces, self.works)
        return plain_lines(scope.items, self.prices, self.factors)

    def owned(self, lines: Iterable[CostLine]) -> tuple[CostLine, ...]:
        """The lines with those that the owner means to do at materials and haul."""
        return tuple(
            by_owner(line, self.factors) if line.item.id in self.by_owner else line
            for line in lines
        )

    def own_labor(self, lines: Iterable[CostLine]) -> Spread:
        """What the owner's hours in lines are worth to the owner."""
        hours = Spread.total(line.own_hours for line in lines)
        return hours.scaled(self.factors.own_pace * self.factors.own_hour_usd)

    def expected(self, lines: Iterable[CostLine]) -> float:
        """The mean cost of lines, in dollars."""
        return moments([own_risk(line) for line in lines], (), self.shared).mean


def keep_cost(case: Case, book: Book) -> CourseCost:
    """Cut out what is bad, patch, and meet the hidden rest later at change-order prices."""
    lining = book.lining(case.surface)
    patch = tuple(_zone_call(lining.patch, case.surface, zone) for zone in case.zones)
    repair = tuple(replace(call, poor_access=True) for call in case.behind)
    wiring = _wiring(book.hidden.wire_closed, case)
    fill = (_whole(book.hidden.insulate_closed, case.surface),) if case.insulate else ()
    premium = book.factors.change_order_pct
    dearer = float(premium.low + premium.likely + premium.high) / 300
    later = _unseen_calls(case, lining.patch, book.hidden.repair_open)
    return _course(
        Course.KEEP,
        case,
        book,
        (
            ("cut out and patch the bad lining", patch),
            ("repair behind it, through the openings", repair),
            ("fish new cable through closed bays", wiring),
            ("insulate the closed bays", fill),
        ),
        added=(*patch, *wiring, *fill),
        unseen=("damage met later, at change-order prices", later, 1 + dearer),
        heat_lost=case.heat_lost if case.insulate else NOTHING,
    )


def gut_cost(case: Case, book: Book) -> CourseCost:
    """Strip and haul, repair in the open, insulate, wire, line and finish the whole surface."""
    lining = book.lining(case.surface)
    strip = (_whole(lining.strip, case.surface),)
    wiring = _wiring(book.hidden.wire_open, case)
    fill = (_whole(book.hidden.insulate_open, case.surface),) if case.insulate else ()
    line = (_whole(lining.line, case.surface), _whole(lining.finish, case.surface))
    found = _unseen_calls(case, None, book.hidden.repair_open)
    return _course(
        Course.GUT,
        case,
        book,
        (
            ("strip and haul the lining", strip),
            ("repair behind it, in the open", case.behind),
            ("run new cable in the open", wiring),
            ("insulate the open bays", fill),
            ("new lining and finish", line),
        ),
        added=(setup_call(case.surface, book.hidden), *strip, *wiring, *fill, *line),
        unseen=("damage found once it is open", found, 1.0),
        setup=book.lines((setup_call(case.surface, book.hidden),)),
    )


def setup_call(surface: Surface, hidden: HiddenFile) -> Call:
    """The set-up of a gutted room, asked for by every surface and paid once."""
    return Call(hidden.protect, surface.id, quantity=1.0, largest=True)


def needs_insulation(surface: Surface, to_be_heated: bool) -> bool:
    return to_be_heated and surface.insulation in (None, Insulation.NONE)


def _course(
    course: Course,
    case: Case,
    book: Book,
    named: tuple[tuple[str, tuple[Call, ...]], ...],
    *,
    added: tuple[Call, ...],
    unseen: tuple[str, tuple[Call, ...], float],
    setup: tuple[CostLine, ...] = (),
    heat_lost: Spread = NOTHING,
) -> CourseCost:
    """A course from its named parts, and from what the unseen part would cost if it were bad."""
    priced = [(text, book.owned(book.lines(calls))) for text, calls in named if calls]
    certain = tuple(line for _, lines in priced for line in lines)
    text, calls, dearer = unseen
    all_bad = book.expected(book.lines(calls)) * dearer
    hidden = _hidden_spread(case.unseen, all_bad)
    parts = [
        Part(name, Spread.total(line.total for line in lines), book.expected(lines))
        for name, lines in priced
    ]
    if setup:
        share = Spread.total(line.total for line in setup).scaled(case.setup_share)
        mean = book.expected(setup) * case.setup_share
        parts.insert(0, Part("share of protecting the room", share, mean))
    own_labor = book.own_labor(certain)
    hour = format_usd(book.factors.own_hour_usd)
    own_mean = Triangle.of(own_labor).mean
    parts.append(Part(f"your own labor, an hour worth {hour}", own_labor, own_mean))
    if book.hidden.heat is not None:
        years = f"{book.hidden.heat.years:g} years"
        name = f"heat lost over {years}, where fill does not reach"
        parts.append(Part(name, heat_lost, Triangle.of(heat_lost).mean))
    start = sum(part.expected for part in parts)
    parts.append(Part(text, hidden, all_bad * case.unseen.mean))
    counted = tuple(part for part in parts if part.cost.high > 0)
    by_work: dict[str, float] = {}
    for line in certain:
        if line.item.id in book.by_owner:
            continue  # no visit, so no minimum charge
        by_work[line.item.work.id] = by_work.get(line.item.work.id, 0.0) + float(line.total.likely)
    return CourseCost(
        course=course,
        parts=counted,
        total=Spread.total(part.cost for part in counted),
        calls=added,
        lines=certain,
        all_bad_usd=all_bad,
        hidden=hidden,
        line=Line(start, all_bad),
        expected=start + all_bad * case.unseen.mean,
        likely_by_work=by_work,
        setup=setup,
        setup_share=case.setup_share if setup else 0.0,
        heat_lost=heat_lost,
        own_labor=own_labor,
    )


def _hidden_spread(unseen: Unseen, all_bad_usd: float) -> Spread:
    """Nothing; the mean; and what is passed in one case of ten, or the mean where that is more."""
    mean = unseen.mean * all_bad_usd
    return Spread.of(0, mean, max(mean, unseen.quantile(0.9) * all_bad_usd))


def _unseen_calls(case: Case, patch: str | None, repair: str) -> tuple[Call, ...]:
    """Repair of the whole unseen part; with a patch also cut out, reached poorly and patched."""
    unseen_sqft = case.surface.net_area_sqft - case.damaged_sqft
    if unseen_sqft <= 0:
        return ()
    fix = Call(repair, case.surface.id, quantity=unseen_sqft, poor_access=patch is not None)
    return (fix,) if patch is None else (fix, Call(patch, case.surface.id, quantity=unseen_sqft))


def _zone_call(work: str, surface: Surface, zone: Rectangle) -> Call:
    return Call(work, surface.id, zone=zone, take=Take.AREA)


def _whole(work: str, surface: Surface) -> Call:
    return Call(work, surface.id, take=Take.SURFACE)


def _wiring(work: str, case: Case) -> tuple[Call, ...]:
    if case.wiring_ft <= 0:
        return ()
    return (Call(work, case.surface.id, quantity=case.wiring_ft),)
