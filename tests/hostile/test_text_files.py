"""Any text for a file that users edit is read, or refused with file, line and words; never more."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hostile.wild import steering, tampered
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from pydantic import BaseModel
from small_shed import SHED

from leanto.building.load import parse_building
from leanto.checklist.model import CautionFile, MeasureFile, Section
from leanto.cost.price import Factors, PriceFile
from leanto.decision.hidden import HiddenFile
from leanto.demo.make import BUILDING
from leanto.errors import InputProblems
from leanto.library import library_problems
from leanto.places import checklists_dir
from leanto.record.document import parse_export
from leanto.rules.model import RuleFile
from leanto.scope.work import WorkFile
from leanto.yaml_input import parse_model

EXPORT = """
leanto_export: 1
job: shed
walked_on: 2026-11-25
air: {site: {temp_f: 55, humidity_pct: 60}}
observations:
  - station: main.south.outside
    item: sill
    condition: failed
    measures: {probe_depth_in: 1.5, stain_kind: ring}
    zone: {left_ft: 2, bottom_ft: 0, width_ft: 4, height_ft: 1}
    note: Soft to the awl.
    photos:
      - {digest: "%s", original_name: sill.jpg, taken_at: "2026-11-25T10:00:00"}
overrulings: {main.south.inside: {course: gut, reason: new wiring}}
""" % ("ab" * 32)
FILES: dict[str, type[BaseModel]] = {
    "walk/framing-rot.yaml": Section,
    "measures/common.yaml": MeasureFile,
    "cautions.yaml": CautionFile,
    "rules/roofing.yaml": RuleFile,
    "work/common.yaml": WorkFile,
    "prices/common.yaml": PriceFile,
    "prices/factors.yaml": Factors,
    "hidden.yaml": HiddenFile,
}

fuzzed = settings(
    max_examples=60, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
)


def read_or_refused(read: Callable[[], object]) -> None:
    try:
        read()
    except InputProblems as refused:
        assert refused.problems
        for problem in refused.problems:
            assert problem.message
            assert len(str(problem)) < 5000
            assert not steering(problem.message + problem.remedy)


@fuzzed
@given(text=tampered((SHED, BUILDING.read_text("utf-8"))))
def test_a_building(text: str) -> None:
    read_or_refused(lambda: parse_building(text, "shed.yaml"))


@fuzzed
@given(text=tampered((EXPORT,)))
def test_an_export(text: str) -> None:
    read_or_refused(lambda: parse_export(text, "export.yaml"))


@pytest.mark.parametrize("name", FILES)
@settings(parent=fuzzed, max_examples=25)
@given(data=st.data())
def test_a_data_file(name: str, data: st.DataObject) -> None:
    shipped = (checklists_dir() / name).read_text("utf-8")
    text = data.draw(tampered((shipped[:6000],)))
    read_or_refused(lambda: parse_model(text, FILES[name], name))


@fuzzed
@given(text=st.text(max_size=300))
def test_any_text_at_all(text: str) -> None:
    read_or_refused(lambda: parse_building(text, "shed.yaml"))
    read_or_refused(lambda: parse_export(text, "export.yaml"))


@pytest.mark.parametrize("name", ["rules/mine.yaml", "walk/mine.yaml", "work/mine.yaml"])
@settings(parent=fuzzed, max_examples=4)
@given(data=st.data())
def test_own_files_over_the_shipped_ones(
    name: str, data: st.DataObject, tmp_path_factory: pytest.TempPathFactory
) -> None:
    folder = tmp_path_factory.mktemp("own")
    kind = name.partition("/")[0]
    shipped = checklists_dir() / kind / f"{'common' if kind == 'work' else 'roofing'}.yaml"
    text = data.draw(tampered((shipped.read_text("utf-8")[:6000],)))
    (folder / kind).mkdir()
    (folder / name).write_text(text, "utf-8", errors="surrogatepass")
    for problem in library_problems((folder,)):
        assert problem.message
        assert not steering(problem.message + problem.remedy)


BOMBS = {
    "aliases": "a: &a [x]\n" + "\n".join(f"k{n}: [{', '.join(['*a'] * 50)}]" for n in range(50)),
    "deep list": "[" * 100_000,
    "deep mapping": "{a: " * 20_000,
    "deep indent": "\n".join(" " * n + "a:" for n in range(1500)),
    "one long line": "name: " + "x" * 1_900_000,
    "many keys": "\n".join(f"k{n}: 1" for n in range(100_000)),
    "many entries": "blocks:\n" + "  - {}\n" * 100_000,
    "quotes": "name: " + "'" * 100_001,
    "digits": "year_built: " + "9" * 100_000,
    "length of digits": "blocks: [{length: " + "1" * 100_000 + "'}]",
    "hash marks": "#" * 1_000_000,
    "half characters": 'name: "\\ud800"',
    "NUL": "name: a\0b",
}


@pytest.mark.parametrize("name", BOMBS)
def test_a_bomb_is_refused(name: str) -> None:
    with pytest.raises(InputProblems) as refused:
        parse_building(BOMBS[name], "shed.yaml")

    assert all(len(str(problem)) < 1000 for problem in refused.value.problems)
