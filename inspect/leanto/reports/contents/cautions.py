"""The cautions that apply: where the work can hurt, and who must act."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.reports.blocks import Caution


def caution_blocks(assessment: Assessment) -> tuple[Caution, ...]:
    """Those that the findings and the repair items name, each once, in the library's order."""
    named = {caution for finding in assessment.judged.findings for caution in finding.caution}
    items = (*assessment.scope.items, *assessment.scope.alternates)
    named |= {caution for item in items for caution in item.work.caution}
    return tuple(
        Caution(caution.title, caution.text, caution.who)
        for caution in assessment.library.checklist.cautions
        if caution.id in named
    )
