"""Where every figure comes from: findings, observations, rules and price lines."""

from __future__ import annotations

from leanto.assessment import Assessment
from leanto.cost.estimate import CostLine
from leanto.reports.blocks import Block, Column, Heading, Paragraph, Row, Table
from leanto.reports.contents.numbering import Numbering, in_ranges
from leanto.reports.contents.words import capitalized
from leanto.rules.finding import Finding

_ITEMS = (
    Column("Line", 0.055, "right"),
    Column("Id of the line", 0.23),
    Column("Findings", 0.11),
    Column("How it was counted and priced", 0.605),
)
_RULES = (
    Column("Rule", 0.2),
    Column("Findings and the observations behind them (station/item#number)", 0.42),
    Column("Source of the rule", 0.38),
)
GUT_OR_KEEP = "gut or keep"
BY_HAND = "added by hand"


def provenance_blocks(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    """Line by line what was counted and priced, then rule by rule what was seen."""
    items = tuple(_item_row(line, numbers) for line in assessment.estimate.lines)
    by_rule: dict[str, list[Finding]] = {}
    for finding in assessment.judged.grounds:
        by_rule.setdefault(finding.rule_id, []).append(finding)
    rules = tuple(_rule_row(rule, found, numbers) for rule, found in sorted(by_rule.items()))
    if not rules and not items:
        return (Paragraph("There is no finding and no line to account for."),)
    return (
        Heading(2, "Line by line"),
        Table(_ITEMS, items, small=True),
        Heading(2, "Rule by rule"),
        Table(_RULES, rules, small=True),
    )


def _item_row(line: CostLine, numbers: Numbering) -> Row:
    item = line.item
    otherwise = BY_HAND if item.added_by_hand else GUT_OR_KEEP
    called = in_ranges(numbers.findings[one] for one in item.findings) or otherwise
    how = f"{capitalized(item.reason)}. {line.explanation}"
    return (str(numbers.items[item.id]), item.id, called, how)


def _rule_row(rule_id: str, findings: list[Finding], numbers: Numbering) -> Row:
    seen = "; ".join(f"{numbers.findings[f.id]}: {f.observation}" for f in findings)
    return (rule_id, seen, findings[0].source)
