"""What each course of one lined surface consists of, and what it costs."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from leanto.building.kinds import Insulation
from leanto.building.rectangle import Rectangle
from leanto.building.surface import Surface
from leanto.cost.build_up import price_lines, spread_of
from leanto.cost.price import Factors, Price, Three
from leanto.cost.range import triangular_mean
from leanto.decision.hidden import HiddenFile, LiningWork
from leanto.decision.model import Course, CourseCost, Part
from leanto.money import Spread, exact
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
    share: Spread
    """Of the unseen rest that is bad."""
    wiring_ft: float
    """New cable on this surface; 0 when none is called for."""
    insulate: bool
    setup_share: float
    """This surface's part of the set-up of a gutted room, 0 to 1."""


@dataclass(frozen=True, slots=True)
class Book:
    """Works, prices and factors, as both courses use them."""

    works: Mapping[str, Work]
    prices: Mapping[str, Price]
    factors: Factors
    hidden: HiddenFile
    surfaces: Mapping[str, Surface]

    def lining(self, surface: Surface) -> LiningWork:
        return next(entry for entry in self.hidden.linings if entry.lining is surface.lining)

    def cost(self, calls: Iterable[Call]) -> Spread:
        """The allowance of calls on their own."""
        scope = build_scope(calls, self.surfaces, self.works)
        return Spread.total(
            line.total for line in price_lines(scope.items, self.prices, self.factors)
        )


def keep_cost(case: Case, book: Book) -> CourseCost:
    """Cut out what is bad, patch, and meet the hidden rest later at change-order prices."""
    lining = book.lining(case.surface)
    patch = tuple(_zone_call(lining.patch, case.surface, zone) for zone in case.zones)
    repair = tuple(replace(call, poor_access=True) for call in case.behind)
    wiring = _wiring(book.hidden.wire_closed, case)
    fill = (_whole(book.hidden.insulate_closed, case.surface),) if case.insulate else ()
    later = _hidden_cost(case, book)
    parts = _parts(
        book,
        ("cut out and patch the bad lining", patch),
        ("repair behind it, through the openings", repair),
        ("fish new cable through closed bays", wiring),
        ("insulate the closed bays", fill),
    )
    parts.append(Part("damage met later, at change-order prices", later))
    return _course(Course.KEEP, parts, (*patch, *wiring, *fill), later)


def gut_cost(case: Case, book: Book) -> CourseCost:
    """Strip and haul, repair in the open, insulate, wire, line and finish the whole surface."""
    lining = book.lining(case.surface)
    strip = (_whole(lining.strip, case.surface),)
    wiring = _wiring(book.hidden.wire_open, case)
    fill = (_whole(book.hidden.insulate_open, case.surface),) if case.insulate else ()
    line = (_whole(lining.line, case.surface), _whole(lining.finish, case.surface))
    setup = Call(book.hidden.protect, case.surface.id, quantity=1.0, largest=True)
    found = _open_repair_cost(case, book)
    parts = [Part("share of protecting the room", book.cost((setup,)).scaled(case.setup_share))]
    parts += _parts(
        book,
        ("strip and haul the lining", strip),
        ("repair behind it, in the open", case.behind),
        ("run new cable in the open", wiring),
        ("insulate the open bays", fill),
        ("new lining and finish", line),
    )
    parts.append(Part("damage found once it is open", found))
    return _course(Course.GUT, parts, (setup, *strip, *wiring, *fill, *line), found)


def break_even_share(case: Case, book: Book, keep: CourseCost, gut: CourseCost) -> float | None:
    """The bad share of the unseen rest at which both courses cost the same.

    Both costs are straight lines in that share; None when they do not cross between 0 and 1.
    """
    keep_rise = triangular_mean(_hidden_cost(_all_bad(case), book))
    gut_rise = triangular_mean(_open_repair_cost(_all_bad(case), book))
    start = (gut.expected - triangular_mean(gut.hidden)) - (
        keep.expected - triangular_mean(keep.hidden)
    )
    if keep_rise <= gut_rise:
        return None
    share = start / (keep_rise - gut_rise)
    return share if 0.0 <= share <= 1.0 else None


def needs_insulation(surface: Surface, to_be_heated: bool) -> bool:
    return to_be_heated and surface.insulation in (None, Insulation.NONE)


def _course(
    course: Course, parts: list[Part], calls: tuple[Call, ...], hidden: Spread
) -> CourseCost:
    counted = tuple(part for part in parts if part.cost.high > 0)
    return CourseCost(course, counted, Spread.total(p.cost for p in counted), calls, hidden)


def _parts(book: Book, *named: tuple[str, tuple[Call, ...]]) -> list[Part]:
    return [Part(text, book.cost(calls)) for text, calls in named if calls]


def _hidden_cost(case: Case, book: Book) -> Spread:
    """Cut out, repair and patch the bad share of the unseen rest, with the premium on top."""
    lining = book.lining(case.surface)
    unseen = _unseen_sqft(case)
    if unseen <= 0:
        return Spread.zero()
    repair = Call(book.hidden.repair_open, case.surface.id, quantity=unseen, poor_access=True)
    whole_rest = book.cost((repair, Call(lining.patch, case.surface.id, quantity=unseen)))
    premium = book.factors.change_order_pct
    dearer = Three(
        low=1 + premium.low / 100, likely=1 + premium.likely / 100, high=1 + premium.high / 100
    )
    return _product(_product(whole_rest, spread_of(dearer)), case.share)


def _open_repair_cost(case: Case, book: Book) -> Spread:
    """Repair the bad share of the unseen rest while everything is open."""
    unseen = _unseen_sqft(case)
    if unseen <= 0:
        return Spread.zero()
    repair = Call(book.hidden.repair_open, case.surface.id, quantity=unseen)
    return _product(book.cost((repair,)), case.share)


def _all_bad(case: Case) -> Case:
    return replace(case, share=Spread(exact(1), exact(1), exact(1)))


def _unseen_sqft(case: Case) -> float:
    return max(0.0, case.surface.net_area_sqft - case.damaged_sqft)


def _product(one: Spread, other: Spread) -> Spread:
    return Spread(one.low * other.low, one.likely * other.likely, one.high * other.high)


def _zone_call(work: str, surface: Surface, zone: Rectangle) -> Call:
    return Call(work, surface.id, zone=zone, take=Take.AREA)


def _whole(work: str, surface: Surface) -> Call:
    return Call(work, surface.id, take=Take.SURFACE)


def _wiring(work: str, case: Case) -> tuple[Call, ...]:
    if case.wiring_ft <= 0:
        return ()
    return (Call(work, case.surface.id, quantity=case.wiring_ft),)
