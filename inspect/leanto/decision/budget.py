"""The money of the whole scope under the chosen courses: range, contingency, drivers, fit.

Everything here is drawn or computed from the parts of an assessment; nothing is stored.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from leanto.building.model import Building
from leanto.cost.contingency import shares_of_spread
from leanto.cost.estimate import Estimate, Range
from leanto.cost.pert import pert_range
from leanto.cost.range import range_of
from leanto.cost.risk import own_risk
from leanto.cost.sensitivity import Driver, sensitivity
from leanto.cost.simulation import DRAWS, Distribution, Draws, Simulated
from leanto.decision.chances import AllChances, chances_of
from leanto.decision.decide import hidden_draws, hidden_risks
from leanto.decision.fit import Fit, fit
from leanto.decision.flat_rule import FlatRule, flat_rule
from leanto.decision.plan import Change, Plan
from leanto.decision.replacement import Replacement, replacement
from leanto.rules.model import Urgency

_SUPPLY = ("wiring", "feed")
"""Stations of what brings power."""


@dataclass(frozen=True, slots=True)
class MoneyBasis:
    """The parts of an assessment that the money follows from."""

    building: Building
    plan: Plan
    estimate: Estimate
    as_of: date


@dataclass(frozen=True, slots=True)
class PlaceContingency:
    """The part of the contingency that one place asks for."""

    place: str
    share: float
    usd: float


@dataclass(frozen=True, slots=True)
class Money:
    expected_usd: float
    """Of the lines and the hidden damage, in closed form."""
    drawn: Simulated
    """The total with hidden damage, its labor and its materials."""
    places: tuple[PlaceContingency, ...]
    """Most first; they add up to the contingency."""
    rule: FlatRule
    rule_base_usd: float
    """Likely cost of the lines, which the flat rule takes its percent of."""
    drivers: tuple[Driver, ...]
    chances: AllChances
    fit: Fit
    replacement: Replacement | None
    draws: int
    smooth_usd: tuple[float, float]
    """By how much the half and the four-in-five figure would change with smooth three-point
    shapes (PERT) in place of triangles."""

    @property
    def total(self) -> Distribution:
        return self.drawn.total

    @property
    def contingency_usd(self) -> float:
        """P80 less P50 of the total; never negative."""
        return self.drawn.total.contingency


def money(basis: MoneyBasis, *, draws: int = DRAWS) -> Money:
    """Everything about the money; takes about a second with the draws that reports ask for."""
    plan, estimate, building = basis.plan, basis.estimate, basis.building
    shared, decision = plan.book.shared, plan.decision
    lines, hidden = plan.parts(Change())
    drawn = Draws.none(shared, draws=draws).plus(lines.values(), hidden.values())
    simulated = drawn.simulated()
    return Money(
        expected_usd=plan.mean(Change()),
        drawn=simulated,
        places=_places(basis, simulated.total.contingency),
        rule=_rule(basis),
        rule_base_usd=float(estimate.total.likely),
        drivers=sensitivity(estimate.lines, hidden_draws(decision, shared), plan.book.factors),
        chances=chances_of(decision, shared, draws=draws),
        fit=fit(plan, drawn, estimate.lines, plan.cautions, building.budget_usd, basis.as_of),
        replacement=replacement(
            building, plan.book.factors, simulated.total.at(0.5), simulated.total.at(0.8)
        ),
        draws=draws,
        smooth_usd=_smooth(basis),
    )


def _smooth(basis: MoneyBasis) -> tuple[float, float]:
    """Both in closed form, so that nothing but the shape differs."""
    estimate, shared = basis.estimate, basis.plan.book.shared
    lines = [own_risk(line) for line in estimate.lines]
    hidden = [risk for _, risk in hidden_risks(basis.plan.decision, shared)]
    whole = estimate.total + estimate.hidden
    triangles = range_of(whole, lines, hidden, shared)
    smooth = pert_range(whole, lines, hidden, shared)
    return smooth.p50 - triangles.p50, smooth.p80 - triangles.p80


def drawn_range(estimate: Estimate, total: Distribution) -> Range:
    """The range of an estimate as it was drawn, in place of the quick one in closed form."""
    return Range(
        low=estimate.range.low,
        likely=estimate.range.likely,
        high=estimate.range.high,
        mean=total.mean,
        p10=total.at(0.1),
        p50=total.at(0.5),
        p80=total.at(0.8),
        p90=total.at(0.9),
    )


def _places(basis: MoneyBasis, contingency_usd: float) -> tuple[PlaceContingency, ...]:
    decision, shared = basis.plan.decision, basis.plan.book.shared
    names = [one.surface_name for one in decision.surfaces]
    risks = (risk for _, risk in hidden_risks(decision, shared))
    shares = shares_of_spread(
        ((line.item.place, own_risk(line)) for line in basis.estimate.lines),
        zip(names, risks, strict=True),
        shared,
    )
    places = [
        PlaceContingency(place, share, share * contingency_usd) for place, share in shares.items()
    ]
    return tuple(sorted(places, key=lambda one: (-one.usd, one.place)))


def _rule(basis: MoneyBasis) -> FlatRule:
    """Power counts as dead when something at the wiring or the feed is a danger or urgent now."""
    findings = basis.plan.findings
    dead = any(
        finding.observation.station in _SUPPLY
        and (finding.danger or finding.urgency is Urgency.NOW)
        for finding in findings
    )
    return flat_rule(
        max(0, basis.as_of.year - basis.building.year_built),
        has_termite_signs=any("termite" in finding.rule_id for finding in findings),
        utilities_work=not dead,
    )
