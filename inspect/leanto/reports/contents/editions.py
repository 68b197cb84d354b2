"""The editions of codes and standards that the checks stand on, and tables of the job's own."""

from __future__ import annotations

import re
from collections.abc import Iterator

from leanto.assessment import Assessment
from leanto.reports.blocks import Block, Facts, Heading, Paragraph

GOVERNS = (
    "The edition adopted where the building stands, and its local changes, govern. A table of the "
    "job's own replaces the shipped one of the same name."
)
_DATED = re.compile(
    r"^(NFPA 70 \(National Electrical Code\)|International [A-Z][A-Za-z ]+ Code|ASCE 7"
    r"|National Design Specification[^,]*|NDS Supplement[^,]*|Wood Handbook[^,]*"
    r"|40 CFR [0-9.]+)(?:, [^,]*?)??, ((?:19|20)\d\d)\b"
)


def edition_blocks(assessment: Assessment) -> tuple[Block, ...]:
    """Every code or standard with the years of the editions used; nothing without checks."""
    years: dict[str, set[str]] = {}
    for one in assessment.reckonings:
        for source in one.sources:
            found = _DATED.match(source)
            if found:
                years.setdefault(found[1], set()).add(found[2])
    rows = [(title, ", ".join(sorted(years[title]))) for title in sorted(years)]
    rows += _own(assessment)
    if not rows:
        return ()
    return (
        Heading(3, "Editions of codes and standards"),
        Facts(tuple(rows)),
        Paragraph(GOVERNS, "note"),
    )


def _own(assessment: Assessment) -> Iterator[tuple[str, str]]:
    names = sorted(assessment.library.tables.by_name)
    if names:
        yield "Tables of the job's own", ", ".join(names)
