"""The findings, effects under their causes, with notes and pictures."""

from __future__ import annotations

from collections.abc import Iterable

from leanto.assessment import Assessment
from leanto.reports.blocks import Block, Entry, Heading, Paragraph, Picture
from leanto.reports.contents.measures import measured_in_words
from leanto.reports.contents.numbering import Numbering, chains
from leanto.reports.contents.words import capitalized, zone_in_words
from leanto.rules.finding import Finding
from leanto.rules.model import Urgency

_HEADINGS = {
    Urgency.NOW: "Now",
    Urgency.BEFORE_CLOSING_IN: "Before closing in",
    Urgency.WITH_THE_WORK: "With the work",
    Urgency.KEEP_WATCHING: "Keep watching",
}
MAX_DEPTH = 3


def finding_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """A heading for each urgency, below it the chains that are as urgent as that."""
    writer = _Writer(assessment, numbers)
    blocks: list[Block] = []
    for urgency in Urgency:
        fitting = [c for c in chains(assessment.judged.findings) if _urgency(c) is urgency]
        if fitting:
            blocks.append(Heading(2, _HEADINGS[urgency]))
            blocks += [writer.entry(f, depth) for chain in fitting for f, depth in chain]
    return tuple(blocks) or (Paragraph("Nothing was found that calls for work or a question."),)


def _urgency(chain: Iterable[tuple[Finding, int]]) -> Urgency:
    """That of the most urgent finding; danger is always for now."""
    return min(
        (Urgency.NOW if finding.danger else finding.urgency for finding, _ in chain),
        key=lambda urgency: urgency.rank,
    )


class _Writer:
    """Writes entries; what belongs to an observation stands with its first finding only."""

    def __init__(self, assessment: Assessment, numbers: Numbering) -> None:
        self._assessment = assessment
        self._numbers = numbers
        self._told = {finding.observation for finding in assessment.judged.findings}
        self._measures = {measure.id: measure for measure in assessment.library.checklist.measures}

    def entry(self, finding: Finding, depth: int) -> Entry:
        number = self._numbers.findings[finding.id]
        first = self._numbers.seen_under[finding.id] == number
        links = (*self._place(finding, first), *self._links(finding, first))
        return Entry(
            number=str(number),
            title=finding.text,
            marks=("danger",) if finding.danger else (),
            lines=(" · ".join(links), *(self._measured(finding) if first else ())),
            body=(*self._besides(finding), *self._advice(finding), *self._note(finding, first)),
            pictures=tuple(
                Picture(photo, f"{number}: {part.station_name}")
                for part in self._seen_in(finding, first)
                for photo in part.photos
            ),
            depth=min(depth, MAX_DEPTH),
        )

    def _place(self, finding: Finding, first: bool) -> list[str]:
        """Urgency and place; the place stands with the first finding of an observation."""
        if not first:
            return [capitalized(finding.urgency)]
        surface = self._assessment.surfaces.get(finding.surface_id or "")
        words = [capitalized(finding.urgency), finding.station_name]
        if finding.zone and surface:
            words.append(zone_in_words(finding.zone, surface))
        return words

    def _links(self, finding: Finding, first: bool) -> list[str]:
        """Where else to look: the cause, the same observation, the scope."""
        words: list[str] = []
        if finding.cause_id in self._numbers.findings:
            words.append(f"follows from {self._numbers.findings[finding.cause_id]}")
        if not first:
            words.append(f"seen as under {self._numbers.seen_under[finding.id]}")
        lines = [item for item in self._assessment.scope.items if finding.id in item.findings]
        if lines:
            word = "line" if len(lines) == 1 else "lines"
            words.append(f"scope {word} {self._numbers.of_items(lines)}")
        return words

    def _advice(self, finding: Finding) -> tuple[str, ...]:
        said = [finding.advice] if finding.advice else []
        if finding.watch:
            said.append(f"Keep watching: {finding.watch}")
        if finding.decides:
            said.append(f"For gut or keep, {finding.decides.course}: {finding.decides.reason}")
        return (" ".join(said),) if said else ()

    def _besides(self, finding: Finding) -> tuple[str, ...]:
        """What the findings say that this one stands for."""
        return (f"With it: {' '.join(finding.besides)}",) if finding.besides else ()

    def _seen_in(self, finding: Finding, first: bool) -> tuple[Finding, ...]:
        """One finding for each observation whose note and pictures stand here."""
        seen = {} if not first else {finding.observation: finding}
        for part in finding.also:
            if part.observation not in self._told:
                seen.setdefault(part.observation, part)
        return tuple(seen.values())

    def _note(self, finding: Finding, first: bool) -> tuple[str, ...]:
        return tuple(f"Note: {part.note}" for part in self._seen_in(finding, first) if part.note)

    def _measured(self, finding: Finding) -> tuple[str, ...]:
        seen = self._assessment.walk.observations.get(finding.observation)
        values = measured_in_words(seen.measures, self._measures) if seen else ()
        return (f"Measured: {'; '.join(values)}",) if values else ()
