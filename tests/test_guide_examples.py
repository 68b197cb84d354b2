"""The examples of the guide are short; a walk with them leads to a finding, work and a price."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from invented import invented

from leanto.assessment import assess
from leanto.checklist.condition import Condition
from leanto.library import read_library
from leanto.record.observation import Observation, ObservationKey
from leanto.record.walk import Walk

GUIDE = Path(__file__).resolve().parent.parent / "DEVELOPERS.md"
EXAMPLES: dict[str, str] = dict(
    re.findall(
        r"```yaml\n# (checklists/\S+/mine\.yaml)\n(.*?)```",
        GUIDE.read_text(encoding="utf-8"),
        re.DOTALL,
    )
)


def test_there_is_one_of_an_item_a_rule_a_work_and_a_price() -> None:
    kinds = {name.split("/")[1] for name in EXAMPLES}
    assert kinds == {"walk", "rules", "work", "prices"}


@pytest.mark.parametrize("name", EXAMPLES)
def test_one_entry_takes_ten_lines_at_most(name: str) -> None:
    _, dash, entry = EXAMPLES[name].partition("  - ")
    assert dash
    assert len(entry.strip().splitlines()) <= 10


def test_a_walk_with_the_examples_ends_in_a_priced_line(tmp_path: Path) -> None:
    for name, text in EXAMPLES.items():
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    library = read_library([tmp_path / "checklists"])
    made = invented("slab-garage")
    key = ObservationKey("garage.north.inside", "loft-ladder")
    walk = Walk(building=made.building, observations={key: Observation(key, Condition.FAILED)})
    assessment = assess(made.building, walk, library, made.written.date)
    (finding,) = assessment.judged.findings
    assert finding.text == "The loft ladder does not hold."
    (line,) = [one for one in assessment.scope.items if one.work.id == "replace-loft-ladder"]
    assert line.quantity == pytest.approx(1)
    (cost,) = [one for one in assessment.estimate.lines if one.item.id == line.id]
    assert cost.total.likely > 140
