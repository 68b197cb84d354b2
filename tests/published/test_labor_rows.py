"""Planned hours against published labor tables.

No repair is quicker than the same work in a new building, and where a work is exactly what a row
says, the row lies within the planned range.
"""

from __future__ import annotations

import pytest

from leanto.library import read_library

LIBRARY = read_library()
TEXTBOOK = "Estimating in Building Construction, fig. 13.55"
DOORS = "Estimating in Building Construction, fig. 15.14"
SEABEES = "NAVEDTRA 14045, Builder Advanced, p. 2-27"
ARMY = "FM 5-426, Appendix C, tables C-1 and C-2, quoted second-hand"
GUILD = "Guild of Project Controls, fit-out and finishes man-hours"
DIGGING = "Guild of Project Controls, hand excavation"
PAINT = "a published estimating problem: 160 sq ft an hour and coat, plaster 60 sq ft"

NEW_WORK = [
    # work, hours for one unit of the work as new work: low, high; how it follows; source; mark
    ("line-gypsum", 0.033, 0.033, "33 a 1,000 sq ft", SEABEES, "seen"),
    ("line-plywood", 0.012, 0.025, "1.2 to 2.5 a 100 sq ft", TEXTBOOK, "seen"),
    ("sheathe-gapped-deck", 0.014, 0.028, "1.4 to 2.8 a 100 sq ft", TEXTBOOK, "seen"),
    ("finish-board", 0.0125, 0.0125, "two coats at 160 sq ft an hour", PAINT, "seen"),
]
PART_OF = [
    ("replace-roof-deck", 0.014, "1.4 a 100 sq ft", TEXTBOOK, "seen"),
    ("replace-floor-boards", 0.01, "1 a 100 sq ft", TEXTBOOK, "seen"),
    ("replace-loft-floor", 0.01, "1 a 100 sq ft", TEXTBOOK, "seen"),
    ("patch-plywood", 0.012, "1.2 a 100 sq ft", TEXTBOOK, "seen"),
    ("replace-sill", 0.045, "4.5 a 100 lin ft", TEXTBOOK, "seen"),
    ("replace-fascia", 0.05, "5 a 100 lin ft", TEXTBOOK, "seen"),
    ("new-door", 3.5, "prehung, at most", DOORS, "seen"),
    ("replace-window", 4, "wood, double-hung or casement", GUILD, "seen"),
    ("new-big-door", 20, "sliding barn-type door, manual", GUILD, "seen"),
    ("rehang-door", 3.75 * 0.75, "fit, hang and lock 5, power tools 0.75, twice", GUILD, "seen"),
    ("patch-gypsum", 0.033, "33 a 1,000 sq ft", SEABEES, "seen"),
    ("cover-foam", 0.033, "33 a 1,000 sq ft", SEABEES, "seen"),
    ("patch-plaster", 1 / 60, "60 sq ft an hour", PAINT, "seen"),
    ("finish-gypsum", 2 / 160, "two coats", PAINT, "seen"),
    ("repaint-wall", 2 / 160, "two coats", PAINT, "seen"),
    (
        "replace-stud",
        45 * 5.33 / 1000,
        "2x4 of 8 ft, 45 a 1,000 board ft",
        ARMY,
        "seen second-hand",
    ),
    ("sister-stud", 45 * 5.33 / 1000, "2x4 of 8 ft, 45 a 1,000 board ft", ARMY, "seen second-hand"),
    ("replace-bottom-plate", 45 * 0.667 / 1000, "2x4 per foot", ARMY, "seen second-hand"),
    ("splice-top-plate", 45 * 1.333 / 1000, "two 2x4 per foot", ARMY, "seen second-hand"),
    ("replace-rafter", 45 * 14 / 1000, "2x6 of 14 ft", ARMY, "seen second-hand"),
    ("sister-rafter", 45 * 14 / 1000, "2x6 of 14 ft", ARMY, "seen second-hand"),
    ("replace-joist", 25 * 16 / 1000, "2x8 of 12 ft", ARMY, "seen second-hand"),
    ("sister-joist", 25 * 16 / 1000, "2x8 of 12 ft", ARMY, "seen second-hand"),
    ("replace-header", 30 * 3.333 / 1000, "two 2x10 per foot", ARMY, "seen second-hand"),
    ("add-floor-beam", 30 * 5 / 1000, "three 2x10 per foot", ARMY, "seen second-hand"),
    ("replace-roof-ledger", 30 * 1.333 / 1000, "2x8 per foot", ARMY, "seen second-hand"),
    ("replace-eaten-framing", 45 * 0.667 / 1000, "2x4 per foot", ARMY, "seen second-hand"),
    ("strip-dirt-floor", 1.16 * 0.5 / 27, "6 in. of loose soil", DIGGING, "seen"),
    (
        "dig-by-hand",
        1.34 * 0.5 * 22 / 12 / 27,
        "6 in. wide, 22 in. deep, firm soil",
        DIGGING,
        "seen",
    ),
    ("screen-base", 1.34 * 0.5 / 27, "6 in. wide, 12 in. deep, firm soil", DIGGING, "seen"),
    ("gravel-strip", 1.16 / 27, "2 ft wide, 6 in. deep, loose soil", DIGGING, "seen"),
    ("new-pier", 1.78 * 12 / 27, "a pit of 2 x 2 x 3 ft, firm soil", DIGGING, "seen"),
    ("splice-post", 1.78 * 12 / 27, "a pit of 2 x 2 x 3 ft, firm soil", DIGGING, "seen"),
]


@pytest.mark.published("Labor tables named in the rows", "by row")
@pytest.mark.parametrize(("work", "low", "high", "how", "source", "mark"), NEW_WORK)
def test_new_work_is_planned_within_the_published_range(
    work: str, low: float, high: float, how: str, source: str, mark: str
) -> None:
    hours = LIBRARY.prices[work].hours
    assert float(hours.low) <= high
    assert low <= float(hours.high)
    assert low * 0.9 <= float(hours.likely) <= high * 1.1


@pytest.mark.published("Labor tables named in the rows", "by row")
@pytest.mark.parametrize(("work", "new", "how", "source", "mark"), PART_OF)
def test_a_repair_takes_longer_than_its_new_part_alone(
    work: str, new: float, how: str, source: str, mark: str
) -> None:
    assert float(LIBRARY.prices[work].hours.likely) > new


@pytest.mark.published("The price files themselves", "own")
def test_every_row_names_its_source_in_the_price() -> None:
    names = ("NAVEDTRA", "Estimating in Building", "FM 5-426", "Guild of Project", "published")
    works = [row[0] for row in (*NEW_WORK, *PART_OF)]
    assert len(works) >= 30
    unnamed = [w for w in works if not any(n in LIBRARY.prices[w].source for n in names)]
    assert unnamed == []
