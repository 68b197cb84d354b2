"""Where each kind of number comes from: a finding, a line of the scope, a surface, the total."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from textual.content import Content

from leanto.assessment import Assessment
from leanto.cost.estimate import CostLine
from leanto.decision.model import CourseCost
from leanto.decision.words import headline
from leanto.job import Job
from leanto.quantities import format_quantity
from leanto.record.observation import ObservationKey
from leanto.reports.contents.numbering import numbering
from leanto.reports.contents.words import about, capitalized, zone_in_words
from leanto.rules.finding import Finding
from leanto.scope.item import RepairItem
from leanto.tui.origin import Origin, Step, leads_on, price_step, rule_step, seen_step
from leanto.tui.screens.details import amounts, labeled, listed, said

_RANGE = (
    "The range: every line and the hidden damage is drawn between its low, likely and high. A high "
    "lies farther off than a low, so the middle of the range lies above the sum of the likely "
    "figures."
)


def of_finding(job: Job, finding_id: str) -> Origin | None:
    """What was seen and the rules that read it; then the finding that caused it."""
    assessment = job.assess()
    findings = {one.id: one for one in assessment.judged.findings}
    finding = findings.get(finding_id)
    if finding is None:
        return None
    numbers = numbering(assessment).findings
    steps = _grounds(job, assessment, finding.parts)
    cause = findings.get(finding.cause_id or "")
    if cause is not None:
        words = labeled("Follows from", f"{numbers[cause.id]}. {cause.text}")
        steps.append(leads_on(words, partial(of_finding, job, cause.id)))
    return Origin(f"{numbers[finding_id]}. {finding.text}", tuple(steps))


def of_answer(job: Job, key: ObservationKey, rule_id: str, title: str) -> Origin:
    """An open question, or a rule that lacks a measure: the answer and the rule."""
    assessment = job.assess()
    steps = [seen_step(job, assessment, key)]
    if rule_id:
        steps.append(rule_step(job, assessment, rule_id))
    return Origin(title, tuple(steps))


def of_item(job: Job, item_id: str) -> Origin | None:
    """How a line of the scope was counted and priced, and all that calls for it."""
    assessment = job.assess()
    item = assessment.scope.named(item_id)
    if item is None:
        return None
    number = numbering(assessment).items.get(item_id)
    title = f"{item.work.title}, {item.place}"
    lines = (*assessment.estimate.lines, *assessment.estimate.alternates)
    priced = (line for line in lines if line.item.id == item_id)
    steps = [_counted(assessment, item)]
    steps += [price_step(job, assessment, line) for line in priced]
    found = [one for one in assessment.judged.grounds if one.id in item.findings]
    steps += _grounds(job, assessment, found)
    if item.added_by_hand:
        steps.append(Step(said("You added this line by hand; no finding calls for it.")))
    elif not found:
        surface = _surface_step(job, assessment, item.surface_id)
        steps.append(surface or Step(said("It follows from gut or keep alone.")))
    return Origin(title if number is None else f"{number}. {title}", tuple(steps))


def of_surface(job: Job, surface_id: str) -> Origin | None:
    """Both courses of a lined surface part by part, and the findings that speak for damage."""
    assessment = job.assess()
    decided = (one for one in assessment.decision.surfaces if one.surface_id == surface_id)
    one = next(decided, None)
    if one is None:
        return None
    steps = [Step(_course(one.keep)), Step(_course(one.gut))]
    findings = {finding.id: finding for finding in assessment.judged.findings}
    numbers = numbering(assessment).findings
    told: set[str] = set()
    for piece in one.evidence:
        for finding_id in piece.findings:
            if finding_id in findings and finding_id not in told:
                told.add(finding_id)
                words = f"{piece.text}: {numbers[finding_id]}. {findings[finding_id].text}"
                text = labeled("Speaks for or against hidden damage", words)
                steps.append(leads_on(text, partial(of_finding, job, finding_id)))
    lines = {line.item.work.id: line for line in (*one.chosen_cost.lines, *one.chosen_cost.setup)}
    steps += [price_step(job, assessment, line) for line in lines.values()]
    shares = "How much may be bad where nobody can see, by evidence and lining"
    steps.append(Step(listed(shares, ("In checklists/hidden.yaml, each with its source",))))
    return Origin(f"{one.surface_name}: {headline(one)}", tuple(steps))


def of_total(job: Job) -> Origin | None:
    """What the total is made of: every line, the widest first, hidden damage, and what is put on
    top."""
    assessment = job.assess()
    estimate, factors = assessment.estimate, assessment.library.factors
    numbers = numbering(assessment).items
    title = f"All lines: {amounts(estimate.total)}"
    on_top = listed(
        "Put on top of hours and materials",
        (
            "In checklists/prices/factors.yaml",
            f"Burden on wages: {factors.burden} times; {factors.burden_source}",
            f"Region: {factors.region} times; {factors.region_source}",
            f"Overhead {factors.overhead_pct} %, profit {factors.profit_pct} %, sales tax "
            f"{factors.sales_tax_pct} %; {factors.markup_source}",
        ),
    )
    steps = [Step(said(_RANGE)), Step(on_top)]
    for line in sorted(estimate.lines, key=_width):
        item = line.item
        text = labeled(f"{numbers[item.id]}. {item.work.title}, {item.place}", amounts(line.total))
        steps.append(leads_on(text, partial(of_item, job, item.id)))
    for one in assessment.decision.surfaces:
        if one.chosen_cost.hidden.high > 0:
            words = f"{one.surface_name}, {amounts(one.chosen_cost.hidden)}"
            text = labeled("Hidden damage, likely to come up later", words)
            steps.append(leads_on(text, partial(of_surface, job, one.surface_id)))
    return Origin(title, tuple(steps))


def _width(line: CostLine) -> float:
    return float(line.total.low - line.total.high)


def _counted(assessment: Assessment, item: RepairItem) -> Step:
    """The quantity: how it was counted, and the owner's own beside it."""
    unit = item.work.unit
    lines = [capitalized(item.reason)]
    if item.computed_quantity is not None:
        own, ours = (
            format_quantity(round(x, 2), unit) for x in (item.quantity, item.computed_quantity)
        )
        lines.append(f"Yours: {own}, because: {item.quantity_reason}")
        lines.append(f"By the walk: {ours}")
    surface = assessment.surfaces.get(item.surface_id or "")
    if surface:
        lines += [zone_in_words(zone, surface) for zone in item.zones]
    bought = format_quantity(round(item.bought, 1), unit)
    if item.work.waste_pct:
        lines.append(f"With {item.work.waste_pct:g} % waste, bought: {bought}")
    return Step(listed(f"Quantity: {format_quantity(round(item.quantity, 2), unit)}", lines))


def _grounds(job: Job, assessment: Assessment, findings: Iterable[Finding]) -> list[Step]:
    """Every observation once, and below it the rules that read it, each once."""
    rules: dict[ObservationKey, dict[str, None]] = {}
    for finding in findings:
        rules.setdefault(finding.observation, {})[finding.rule_id] = None
    steps: list[Step] = []
    told: set[str] = set()
    for key, read_by in rules.items():
        steps.append(seen_step(job, assessment, key))
        new = [rule_id for rule_id in read_by if rule_id not in told]
        told.update(new)
        steps += [rule_step(job, assessment, rule_id) for rule_id in new]
    return steps


def _surface_step(job: Job, assessment: Assessment, surface_id: str | None) -> Step | None:
    for one in assessment.decision.surfaces:
        if one.surface_id == surface_id:
            text = labeled("Gut or keep", f"{one.surface_name}: {headline(one)}")
            return leads_on(text, partial(of_surface, job, one.surface_id))
    return None


def _course(course: CourseCost) -> Content:
    title = f"To {course.course}: about {about(course.expected)}"
    return listed(title, (f"{capitalized(p.text)}: {amounts(p.cost)}" for p in course.parts))
