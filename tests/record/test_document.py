from __future__ import annotations

from datetime import UTC, date, datetime
from pathlib import Path

import pytest

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.errors import InputProblems
from leanto.record.document import parse_export, read_export
from leanto.record.entry import (
    AirMeasured,
    Answered,
    BuildingSet,
    DangerMarked,
    Entry,
    Measured,
    MovedTo,
    Noted,
    Overruled,
    PhotoAdded,
    Zoned,
)
from leanto.record.exchange import bodies_of, export_text
from leanto.record.fold import fold
from leanto.record.walk import Walk

SILL = {"station": "main.south.outside", "item": "sill"}
DIGEST = "5" * 64
WALKED_ON = date(2026, 11, 25)


@pytest.fixture
def walk(shed: Building) -> Walk:
    bodies = (
        BuildingSet(building=shed),
        Noted(station="site", item="grading", text="Water stands here.\nAfter rain only."),
        AirMeasured(station="main.ceiling", temp_f=61.5, humidity_pct=48),
        Answered(**SILL, condition=Condition.FAILED),
        Measured(**SILL, measure="probe_depth_in", value=1.5),
        Measured(**SILL, measure="is_active", value=1.0),
        Measured(**SILL, measure="kind", value="12:30"),
        Zoned(**SILL, left_ft=2.25, bottom_ft=0, width_ft=6, height_ft=0.5),
        DangerMarked(**SILL, on=True),
        PhotoAdded(
            **SILL,
            digest=DIGEST,
            original_name="IMG: 1.JPG",
            taken_at=datetime(2026, 11, 20, 14, 3, 9),
        ),
        Answered(
            station="main.ceiling", item="stain", condition=Condition.NO_ACCESS, reason="too high"
        ),
        Overruled(surface_id="main.ceiling", course="gut", reason="It smells."),
        MovedTo(station="main.ceiling", item="stain"),
    )
    at = datetime(2026, 11, 25, 15, tzinfo=UTC)
    return fold(Entry(id=n, at=at, who="t", body=body) for n, body in enumerate(bodies, 1))


def test_the_document_is_readable_and_in_walking_order(walk: Walk) -> None:
    text = export_text(walk, job="test-shed", walked_on=WALKED_ON)
    head, _, tail = text.partition("building:\n")
    _, _, tail = tail.partition("standing_at:\n")

    assert head == "leanto_export: 1\njob: test-shed\nwalked_on: '2026-11-25'\n"
    assert tail == (
        "  station: main.ceiling\n"
        "  item: stain\n"
        "air:\n"
        "  main.ceiling:\n"
        "    temp_f: 61.5\n"
        "    humidity_pct: 48.0\n"
        "observations:\n"
        "  - station: site\n"
        "    item: grading\n"
        "    note: |-\n"
        "      Water stands here.\n"
        "      After rain only.\n"
        "  - station: main.south.outside\n"
        "    item: sill\n"
        "    condition: failed\n"
        "    danger: true\n"
        "    measures:\n"
        "      probe_depth_in: 1.5\n"
        "      is_active: 1.0\n"
        "      kind: '12:30'\n"
        "    zone:\n"
        "      left_ft: 2.25\n"
        "      bottom_ft: 0.0\n"
        "      width_ft: 6.0\n"
        "      height_ft: 0.5\n"
        "    photos:\n"
        f"      - digest: '{DIGEST}'\n"
        "        original_name: 'IMG: 1.JPG'\n"
        "        taken_at: '2026-11-20T14:03:09'\n"
        "  - station: main.ceiling\n"
        "    item: stain\n"
        "    condition: no access\n"
        "    reason: too high\n"
        "overrulings:\n"
        "  main.ceiling:\n"
        "    course: gut\n"
        "    reason: It smells.\n"
    )


def test_the_document_comes_back_as_an_equal_walk(walk: Walk, tmp_path: Path) -> None:
    file = tmp_path / "shed.yaml"
    file.write_text(export_text(walk, job="shed", walked_on=WALKED_ON), encoding="utf-8")

    bodies = bodies_of(read_export(file), file.name)

    at = datetime(2027, 1, 1, tzinfo=UTC)
    assert walk == fold(
        Entry(id=n, at=at, who="someone else", body=body) for n, body in enumerate(bodies, 1)
    )


def test_a_job_without_a_building_is_a_document_too() -> None:
    text = export_text(Walk(), job="", walked_on=None)

    assert text == "leanto_export: 1\n"
    assert (
        fold(
            Entry(id=n, at=datetime(2027, 1, 1, tzinfo=UTC), who="t", body=body)
            for n, body in enumerate(bodies_of(parse_export(text, "x.yaml"), "x.yaml"), 1)
        )
        == Walk()
    )


OBSERVATION = "leanto_export: 1\nobservations:\n  - {station: site, item: sill"


@pytest.mark.parametrize(
    ("text", "line", "field", "said"),
    [
        ("", 0, "", "empty"),
        ("name: Shed\n", 1, "leanto_export", "missing"),
        ("leanto_export: 2\n", 1, "leanto_export", "not one of"),
        ("leanto_export: 1\nwalls: 4\n", 2, "walls", "not known"),
        (f"{OBSERVATION}, condition: rotten}}\n", 3, "observations.0.condition", "not one of"),
        (f"{OBSERVATION}, reason: locked}}\n", 3, "observations.0", "needs a condition"),
        (f"{OBSERVATION}, photos: [{{digest: '12'}}]}}\n", 3, "observations.0.photos.0.digest", ""),
        (f"{OBSERVATION}, measures: {{a_ft: [1]}}}}\n", 3, "observations.0.measures.a_ft", ""),
        (f"{OBSERVATION}, zone: {{left_ft: 0, bottom_ft: 0, width_ft: 0, height_ft: 1}}}}\n",
         3, "observations.0.zone.width_ft", "0"),
        (f"{OBSERVATION}, number: 1}}\n  - {{station: site, item: sill}}\n",
         4, "observations.1", "twice, first on line 3"),
    ],
)  # fmt: skip
def test_a_fault_is_named_with_its_line(text: str, line: int, field: str, said: str) -> None:
    with pytest.raises(InputProblems) as refused:
        parse_export(text, "shed.yaml")

    first = refused.value.problems[0]
    assert (first.file, first.line, first.field) == ("shed.yaml", line, field)
    assert said in first.message


def test_a_building_that_does_not_hold_together_is_named_with_its_line(walk: Walk) -> None:
    text = export_text(walk, job="shed", walked_on=None)
    assert "from_left: 10.0" in text
    broken = text.replace("from_left: 10.0", "from_left: 23.0")
    line = broken.splitlines().index("      from_left: 23.0") + 1

    with pytest.raises(InputProblems) as refused:
        parse_export(broken, "shed.yaml")

    assert refused.value.problems[0].line == line
    assert refused.value.problems[0].field.startswith("building.openings.0")
