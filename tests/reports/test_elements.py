"""Headings of the building elements."""

from __future__ import annotations

import pytest

from leanto.places import checklists_dir
from leanto.reports.contents.elements import ElementTable, element_title
from leanto.scope.work import WorkFile
from leanto.yaml_input import read_model


@pytest.mark.parametrize(
    ("element", "expected"),
    [
        # UNIFORMAT II, NISTIR 6389, element table (seen)
        ("B2010", "B2010 Exterior walls"),
        ("B3010", "B3010 Roof coverings"),
        ("D5020", "D5020 Lighting and branch wiring"),
        ("F2010", "F2010 Building elements demolition"),
        # an element that the table lacks takes its group's title; an unknown group has none
        ("B2099", "B2099 Exterior enclosure"),
        ("E9910", "E9910"),
    ],
)
def test_an_element_has_its_title(element: str, expected: str) -> None:
    assert element_title(element) == expected


def test_every_element_of_the_shipped_works_is_in_the_table() -> None:
    table = read_model(checklists_dir() / "tables" / "uniformat.yaml", ElementTable)
    known = {element.id for element in table.elements}

    files = sorted((checklists_dir() / "work").glob("*.yaml"))
    used = {work.element for file in files for work in read_model(file, WorkFile).work}

    assert used
    assert used <= known


def test_no_element_stands_twice() -> None:
    table = read_model(checklists_dir() / "tables" / "uniformat.yaml", ElementTable)
    ids = [element.id for element in table.elements]

    assert len(ids) == len(set(ids))
