"""Looking up design values, and what the table refuses."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from leanto.trade.design_values import (
    GRADE_NAMES,
    DesignTable,
    design_table,
    design_values,
    known_grade,
    known_species,
    species_names,
)


def test_every_species_has_every_grade_and_better_grades_are_stronger() -> None:
    for species in species_names():
        values = [design_values(species, grade, 7.25) for grade in GRADE_NAMES]
        bending = [value.fb_psi for value in values]
        assert bending == sorted(bending, reverse=True)
        assert bending[0] > bending[-1]


def test_older_edition_is_lower_where_it_was_and_the_same_elsewhere() -> None:
    assert design_values("douglas_fir", "no_2", 7.25, "older").fb_psi == 875
    assert design_values("douglas_fir", "no_2", 7.25).fb_psi == 900
    assert design_values("hem_fir", "no_2", 7.25, "older") == design_values("hem_fir", "no_2", 7.25)


@pytest.mark.parametrize(
    ("depth_in", "fb_psi"),
    [(3.5, 1100), (4.0, 1100), (4.1, 1000), (8.0, 925), (11.25, 750), (12.1, 675)],
)
def test_southern_pine_goes_by_width(depth_in: float, fb_psi: float) -> None:
    assert design_values("southern_pine", "no_2", depth_in).fb_psi == pytest.approx(fb_psi)


def test_names_that_have_no_values_are_unknown() -> None:
    assert known_species("oak") is None
    assert known_species(None) is None
    assert known_species("hem_fir") == "hem_fir"
    assert known_grade("stud") is None
    assert known_grade("no_3") == "no_3"


def _table(**change: object) -> dict[str, object]:
    row: dict[str, object] = {
        "species": "hem_fir",
        "grade": "no_2",
        "fb_psi": 850.0,
        "fv_psi": 150.0,
        "fc_perp_psi": 405.0,
        "e_psi": 1.3e6,
        "source": "seen",
    }
    return {
        "sources": {"seen": {"title": "A table"}},
        "species": ({"id": "hem_fir", "name": "hem-fir"},),
        "rows": (row | change,),
    }


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"fb_psi": None}, "either fb_psi"),
        ({"fb_by_width_psi": ((4, 900.0),)}, "either fb_psi"),
        ({"fb_psi": None, "fb_by_width_psi": ((6, 900.0), (4, 950.0))}, "must rise"),
        ({"source": "nowhere"}, "does not list"),
        ({"e_psi": 0.0}, "greater than 0"),
    ],
)
def test_faulty_rows_are_refused(change: dict[str, object], message: str) -> None:
    with pytest.raises(ValidationError, match=message):
        DesignTable.model_validate(_table(**change))


def test_a_row_may_not_stand_twice() -> None:
    table = design_table()
    with pytest.raises(ValidationError, match="stands twice"):
        DesignTable(sources=table.sources, species=table.species, rows=(*table.rows, table.rows[0]))
