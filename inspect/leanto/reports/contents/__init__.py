"""What each report says: an assessment in, plain blocks out."""

from __future__ import annotations

from leanto.reports.contents.condition import condition_report
from leanto.reports.contents.repair import repair_scope
from leanto.reports.contents.short import (
    decision_report,
    findings_report,
    money_report,
    scope_report,
    summary_report,
)

__all__ = [
    "condition_report",
    "decision_report",
    "findings_report",
    "money_report",
    "repair_scope",
    "scope_report",
    "summary_report",
]
