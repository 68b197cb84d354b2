"""Tables of a job's own take the place of the shipped ones, in computations and reports."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from leanto.assessment import Assessment, assess
from leanto.building.model import Building
from leanto.cli.main import main
from leanto.library import library_problems, read_library
from leanto.places import checklists_dir
from leanto.record.walk import Walk
from leanto.reports.blocks import Facts
from leanto.reports.contents.editions import edition_blocks
from leanto.trade.lead_paint import LEAD_BEFORE_YEAR
from leanto.trade.loads import floor_use
from leanto.trade.table_models import TABLE_MODELS
from leanto.trade.tables import NO_OWN, OwnTables, per_tables, read_table, using

SHIPPED = checklists_dir() / "tables"
WORKSHOP = """  - id: workshop
    live_psf: 40"""


def own(folder: Path, name: str, *changes: tuple[str, str]) -> Path:
    """A folder to lay over, with one table changed."""
    text = (SHIPPED / name).read_text("utf-8")
    for old, new in changes:
        assert text.count(old) >= 1, old
        text = text.replace(old, new, 1)
    path = folder / "checklists" / "tables" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, "utf-8")
    return folder / "checklists"


def assessed(*folders: Path) -> Assessment:
    facts: dict[str, Any] = {
        "name": "A shed",
        "year_built": LEAD_BEFORE_YEAR + 1,
        "intended_use": "workshop",
        "distance_to_panel": 140,
        "lumber": {"species": "spruce-pine-fir", "grade": "no. 2", "stamped": True},
        "blocks": [
            {
                "id": "main",
                "name": "Main room",
                "length": 24,
                "width": 12,
                "eave_height": 8,
                "roof": {"pitch": "6:12"},
                "floor": {"member": "2x8", "spacing": "16 in", "clear_span": "11 ft"},
            }
        ],
    }
    building = Building.model_validate(facts)
    walk = Walk(building=building)
    return assess(building, walk, read_library(folders), date(2026, 6, 1))


def fact(assessment: Assessment, name: str) -> object:
    return next(one.facts[name] for one in assessment.reckonings if name in one.facts)


def test_every_shipped_table_has_its_model() -> None:
    # The headings of the repair scope are a list of names and feed no computation.
    shipped = {path.name for path in SHIPPED.glob("*.yaml")} - {"uniformat.yaml"}
    assert shipped == set(TABLE_MODELS)
    for name, model in TABLE_MODELS.items():
        assert isinstance(read_table(name, model), model)


def test_an_own_load_changes_the_floor_check_and_nothing_stays_behind(tmp_path: Path) -> None:
    folder = own(tmp_path, "loads.yaml", (WORKSHOP, WORKSHOP.replace("40", "125")))
    assert fact(assessed(), "floor_check") == "passes by the table"
    assert fact(assessed(folder), "floor_check") == "does not pass"
    assert fact(assessed(), "floor_check") == "passes by the table"
    assert floor_use("workshop").live_psf == 40


def test_an_own_resistance_changes_the_feed(tmp_path: Path) -> None:
    folder = own(
        tmp_path,
        "electrical_resistance.yaml",
        ("copper_ohm_per_kft: 0.778", "copper_ohm_per_kft: 1.0"),
    )
    assert fact(assessed(folder), "feed_drop_pct") > fact(assessed(), "feed_drop_pct")  # type: ignore[operator]


def test_the_report_names_the_edition_of_the_tables_in_use(tmp_path: Path) -> None:
    folder = own(
        tmp_path,
        "electrical_ampacity.yaml",
        ('edition: "2017"', 'edition: "2031 of our county"'),
    )
    plain, mine = assessed(), assessed(folder)
    (before,) = [one for one in plain.reckonings if one.id == "feed@feed"]
    (after,) = [one for one in mine.reckonings if one.id == "feed@feed"]
    assert not any("2031 of our county" in source for source in before.sources)
    assert any("2031 of our county" in source for source in after.sources)
    assert plain.library.versions["tables"] != mine.library.versions["tables"]
    said = {
        row for block in edition_blocks(mine) if isinstance(block, Facts) for row in block.pairs
    }
    assert ("NFPA 70 (National Electrical Code)", "2011, 2017, 2020") not in said
    assert ("Tables of the job's own", "electrical_ampacity.yaml") in said
    unchanged = {
        row for block in edition_blocks(plain) if isinstance(block, Facts) for row in block.pairs
    }
    assert ("NFPA 70 (National Electrical Code)", "2011, 2017, 2020") in unchanged
    assert ("International Residential Code", "2006, 2018") in unchanged


def test_a_row_that_is_missing_is_named_with_file_line_and_field(tmp_path: Path) -> None:
    folder = own(tmp_path, "loads.yaml", ("id: workshop", "id: joinery"))
    (problem,) = library_problems([folder])
    assert problem.file == f"{folder}/tables/loads.yaml"
    assert problem.field == "floor_uses"
    assert problem.line > 1
    assert "There is no row for workshop" in str(problem)


@pytest.mark.parametrize(
    ("name", "old", "new", "field"),
    [
        ("loads.yaml", "live_psf: 30", "live_psf: -30", "live_psf"),
        ("debris.yaml", "low_lb: 1.6", "low_lb: heavy", "low_lb"),
        ("electrical_burial.yaml", "rows:", "lines:", "lines"),
        ("r_values.yaml", "r: ", "r: -", "r"),
    ],
)
def test_an_impossible_value_is_refused_with_file_line_and_field(
    tmp_path: Path, name: str, old: str, new: str, field: str
) -> None:
    folder = own(tmp_path, name, (old, new))
    problems = library_problems([folder])
    assert problems
    assert all(problem.file == f"{folder}/tables/{name}" for problem in problems)
    assert any(problem.field.endswith(field) and problem.line > 1 for problem in problems)


def test_a_table_that_nothing_reads_is_told(tmp_path: Path) -> None:
    folder = own(tmp_path, "loads.yaml")
    (folder / "tables" / "loads.yaml").rename(folder / "tables" / "load.yaml")
    (problem,) = library_problems([folder])
    assert "Nothing reads this file" in str(problem)


def test_a_number_by_hand_uses_the_tables_of_a_job(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    own(tmp_path, "debris.yaml", ("low_lb: 10, high_lb: 10", "low_lb: 11, high_lb: 11"))
    line = ["debris", "--material", "plaster", "--amount", "100"]
    assert main(["reckon", *line]) == 0
    assert "1,000 lb" in capsys.readouterr().out
    assert main(["reckon", "--job", str(tmp_path), *line]) == 0
    assert "1,100 lb" in capsys.readouterr().out
    assert main(["reckon", "--job", str(tmp_path / "nowhere"), *line]) != 0
    assert "is no folder" in capsys.readouterr().err


def test_what_is_kept_is_kept_for_each_set_of_tables() -> None:
    asked = []

    @per_tables(maxsize=4)
    def doubled(number: int) -> int:
        asked.append(number)
        return 2 * number

    assert [doubled(3), doubled(3)] == [6, 6]
    assert asked == [3]
    with using(OwnTables("other")):
        assert doubled(3) == 6
    assert asked == [3, 3]
    with using(NO_OWN):
        assert doubled(3) == 6
    assert asked == [3, 3]
