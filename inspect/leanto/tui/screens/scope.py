"""The scope: repair items in order of work, with their allowances."""

from __future__ import annotations

from collections.abc import Sequence

from textual.content import Content

from leanto.assessment import Assessment
from leanto.cost.estimate import CostLine
from leanto.reports.contents.allowances import bought_in_words
from leanto.reports.contents.numbering import numbering
from leanto.reports.contents.words import capitalized, zone_in_words
from leanto.tui.screens.details import Details, amounts, labeled, listed, said, strong
from leanto.tui.screens.rows_screen import RowsScreen
from leanto.tui.widgets import scope_table as table


class ScopeScreen(RowsScreen):
    """Repair items, each with where its quantity and its allowance come from."""

    def answer_of(self, assessment: Assessment) -> str:
        return table.answer(assessment)

    def fill(self, assessment: Assessment) -> None:
        self.table.fill(table.COLUMNS, table.rows(assessment), table.SORTINGS)

    def preview_of(self, assessment: Assessment, key: str) -> Sequence[Content]:
        line = _line(assessment, key)
        work = line.item.work
        lead = strong(f"{work.title}, {line.item.place}")
        facts = f"{capitalized(work.trade)} - {_bought(line)} - {amounts(line.total)}"
        return lead, said(facts), said(line.item.reason)

    def details_of(self, assessment: Assessment, key: str) -> Details:
        line = _line(assessment, key)
        number = numbering(assessment).items[key]
        title = f"{number}. {line.item.work.title}, {line.item.place}"
        return Details(title, tuple(_about(assessment, line)))


def _line(assessment: Assessment, key: str) -> CostLine:
    return next(line for line in assessment.estimate.lines if line.item.id == key)


def _bought(line: CostLine) -> str:
    return bought_in_words(line.item).replace("\n", ", ")


def _about(assessment: Assessment, line: CostLine) -> list[Content]:
    """What is to be done, how much of it, and where each number comes from."""
    item, work = line.item, line.item.work
    licensed = " (licensed in most places; local rules govern)" if work.trade.is_licensed else ""
    parts = [
        said(work.description),
        labeled("Trade", f"{work.trade}{licensed}; {work.phase}; UNIFORMAT II {work.element}"),
        labeled("Bought", _bought(line)),
        labeled("Quantity", item.reason),
    ]
    surface = assessment.surfaces.get(item.surface_id or "")
    if surface and item.zones:
        parts.append(listed("Zones", (zone_in_words(zone, surface) for zone in item.zones)))
    if item.poor_access:
        parts.append(said("Done through an opened patch, so it takes more hours."))
    parts += [
        labeled("Allowance", amounts(line.total)),
        listed(
            "Of that, with overhead and profit",
            (
                f"labor {amounts(line.labor)}",
                f"materials {amounts(line.materials)}",
                f"haul and dump {amounts(line.haul)}",
            ),
        ),
        labeled("How", line.explanation),
        labeled("Price source", f"{line.price.source}, {line.price.dated}"),
    ]
    parts.append(_reasons(assessment, item.findings))
    cautions = [c for c in assessment.library.checklist.cautions if c.id in work.caution]
    parts += [labeled(f"! Caution, {caution.title}", caution.text) for caution in cautions]
    return parts


def _reasons(assessment: Assessment, finding_ids: tuple[str, ...]) -> Content:
    """The findings that call for the item, each with the observation it was made from."""
    if not finding_ids:
        return labeled("Called for by", "the gut-or-keep choice for this surface")
    numbers = numbering(assessment).findings
    found = {finding.id: finding for finding in assessment.judged.findings}
    lines = []
    for finding in (found[id_] for id_ in finding_ids if id_ in found):
        seen = assessment.walk.observations.get(finding.observation)
        entries = ", ".join(map(str, seen.entries)) if seen else ""
        basis = f"; record entries {entries}" if entries else ""
        lines.append(f"{numbers[finding.id]}. {finding.text} ({finding.station_name}{basis})")
    return listed("Called for by", lines)
