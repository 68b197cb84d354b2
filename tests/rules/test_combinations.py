"""Findings that only several observations together make, counted and tried on observations."""

from __future__ import annotations

import ast
from datetime import date
from typing import Any

import pytest

from leanto.assessment import Assessment, assess
from leanto.library import read_library
from leanto.rules.finding import Finding

LIBRARY = read_library()


def without_findings(node: ast.expr) -> bool | None:
    """What the condition comes to when no other rule has found anything; None when it depends."""
    match node:
        case ast.BoolOp(op=ast.And()):
            parts = [without_findings(value) for value in node.values]
            return False if False in parts else None if None in parts else True
        case ast.BoolOp():
            parts = [without_findings(value) for value in node.values]
            return True if True in parts else None if None in parts else False
        case ast.UnaryOp(op=ast.Not()):
            part = without_findings(node.operand)
            return None if part is None else not part
        case ast.Call(func=ast.Name(id=name)) if name.startswith("found_"):
            return False
    return None


def combinations() -> set[str]:
    """Rules that can never speak unless another rule has found something."""
    return {
        rule.id
        for rule in LIBRARY.rules
        if without_findings(ast.parse(rule.when.text, mode="eval").body) is False
    }


@pytest.mark.parametrize(
    ("text", "needs"),
    [
        ("failed and found_here('a')", True),
        ("failed or found_here('a')", False),
        ("failed and not found_here('a')", False),
        ("failed and (found_here('a') or worn)", False),
        ("failed and (found_here('a') or found_above('b'))", True),
    ],
)
def test_what_counts_as_a_combination(text: str, needs: bool) -> None:
    assert (without_findings(ast.parse(text, mode="eval").body) is False) is needs


def test_rules_and_combinations_are_many() -> None:
    assert len(LIBRARY.rules) >= 150
    assert len(combinations()) >= 90


@pytest.fixture
def made(case: Any) -> Any:
    """The small shed of the other tests, walked by the shipped library."""
    case.checklist = LIBRARY.checklist
    return case


def assessed(case: Any) -> Assessment:
    return assess(case.building, case.walk, LIBRARY, date(2026, 6, 1))


def findings(assessment: Assessment) -> dict[str, Finding]:
    """Every finding by its rule, also those told within another."""
    told = [part for finding in assessment.judged.findings for part in finding.parts]
    return {finding.rule_id: finding for finding in told}


def chain_of(assessment: Assessment, rule_id: str) -> list[str]:
    """The rules from the finding down to its first cause."""
    by_id = {finding.id: finding for finding in assessment.judged.findings}
    told = {part.id: whole for whole in by_id.values() for part in whole.parts}
    finding = next(whole for part, whole in told.items() if part.startswith(f"{rule_id}@"))
    chain = [finding.rule_id]
    while finding.cause_id is not None:
        finding = told[finding.cause_id]
        chain.append(finding.rule_id)
    return chain


def works(assessment: Assessment) -> list[str]:
    return [item.work.id for item in assessment.scope.items]


def test_a_stain_a_high_reading_and_failed_flashing_above_are_one_chain_with_one_cause(
    made: Any,
) -> None:
    made.answer("main.roof.south", "flue-flashing", zone=(6, 4, 2, 2), piece_count=1.0)
    made.answer(
        "main.ceiling",
        "ceiling-stain",
        zone=(6, 2, 3, 3),
        stain_look="ring",
        moisture_pct=24.0,
        dry_spot_moisture_pct=12.0,
    )
    made.answer("main.ceiling", "rafters", zone=(6, 2, 3, 3), probe_depth_in=0.5, soft_count=1.0)
    assessment = assessed(made)
    assert chain_of(assessment, "rafter-rotted") == [
        "rafter-rotted",
        "stain-active",
        "flashing-chimney-failed",
    ]
    told = [finding.rule_id for finding in assessment.judged.findings]
    order = ["flashing-chimney-failed", "stain-active", "rafter-rotted"]
    assert sorted(order, key=told.index) == order, "repaired from the cause down"
    scoped = works(assessment)
    assert "flash-flue" in scoped
    assert "sister-rafter" in scoped
    open_causes = [q.text for q in assessment.judged.questions if "stain" in str(q.observation)]
    assert open_causes == [], "a stain with its cause found asks nothing"


def test_a_stain_with_no_cause_is_a_question_and_no_repair(made: Any) -> None:
    made.answer("main.ceiling", "ceiling-stain", zone=(6, 2, 3, 3), moisture_pct=24.0)
    assessment = assessed(made)
    assert findings(assessment)["stain-active"].cause_id is None
    assert any(q.finding_id.startswith("stain-active@") for q in assessment.judged.questions)


COMBINED = [
    # name, answers (station, item, condition, zone, measures), the rule that speaks
    (
        "rot and ants",
        [
            ("main.north.outside", "sill", "failed", (0, 0, 6, 1), {"probe_depth_in": 1.0}),
            ("main.north.inside", "ants", "failed", (0, 0, 6, 2), {}),
        ],
        {"ants-in-rot", "sill-rot-with-ants"},
    ),
    (
        "a wet sill and ground too high",
        [
            (
                "main.north.outside",
                "ground-slope",
                "failed",
                None,
                {"floor_above_ground_in": 2.0, "run_ft": 6.0},
            ),
            (
                "main.north.outside",
                "sill",
                "failed",
                (0, 0, 6, 1),
                {"probe_depth_in": 1.0, "moisture_pct": 26.0},
            ),
        ],
        {"high-ground-on-rotten-sill"},
    ),
    (
        "layers and sag",
        [
            ("main.roof.south", "roof-layers", "worn", None, {"layers_seen_count": 2.0}),
            ("main.ceiling", "roof-sag", "failed", None, {"sag_in": 2.0, "span_ft": 12.0}),
        ],
        {"layers-and-sag"},
    ),
    (
        "cloth cable, rodents and a closed lining",
        [
            (
                "main.south.inside",
                "cable-kind",
                "worn",
                None,
                {"wire_kind": "cloth or rubber", "goes_behind_lining": 1.0},
            ),
            ("main.floor", "rodents", "failed", None, {"share_pct": 20.0}),
        ],
        {"cloth-cable-with-rodents"},
    ),
]


@pytest.mark.parametrize(
    ("answers", "rules"), [case[1:] for case in COMBINED], ids=[case[0] for case in COMBINED]
)
def test_things_seen_together_mean_more_than_each_alone(
    made: Any, answers: list[tuple[Any, ...]], rules: set[str]
) -> None:
    assert rules <= combinations()
    for station, item, condition, zone, measures in answers:
        made.answer(station, item, condition, zone, **measures)
    together = findings(assessed(made))
    assert rules <= together.keys()
    for left_out in answers:
        made.observations.clear()
        for station, item, condition, zone, measures in answers:
            if (station, item) != left_out[:2]:
                made.answer(station, item, condition, zone, **measures)
        assert not rules & findings(assessed(made)).keys(), f"without {left_out[1]}"


def test_cloth_cable_in_an_open_wall_is_no_such_combination(made: Any) -> None:
    """The west wall of the small shed has no lining."""
    cable = {"wire_kind": "cloth or rubber", "goes_behind_lining": 1.0}
    made.answer("main.west.inside", "cable-kind", "worn", **cable)
    made.answer("main.floor", "rodents", "failed", share_pct=20.0)
    assert "cloth-cable-with-rodents" not in findings(assessed(made))


def test_ground_too_high_is_the_cause_of_the_rotten_sill(made: Any) -> None:
    made.answer("main.north.outside", "ground-slope", floor_above_ground_in=2.0, run_ft=6.0)
    made.answer("main.north.outside", "sill", zone=(0, 0, 6, 1), probe_depth_in=1.0)
    assessment = assessed(made)
    assert chain_of(assessment, "sill-rotted")[-1] in {"grade-too-high", "drainage-to-wall"}
    scoped = works(assessment)
    assert scoped.index("lower-ground") < scoped.index("replace-sill")
