"""What stands at the place of a line, told to bidders from the building and the walk."""

from __future__ import annotations

import pytest
from invented import assessed

from leanto.reports.contents.there import there_in_words

LINES = [
    # building, line, what is said of the place
    ("timber-barn", "replace-sill@barn.north", "There now: sill 8x8; 8x8 posts at 12' 0\", full "),
    ("timber-barn", "splice-post@barn.south", "There now: post 8 in. square."),
    ("timber-barn", "refasten-metal-roof@barn.roof.south", "corrugated steel; 9:12 pitch; on"),
    ("slab-garage", "patch-gypsum@garage.south.inside", "; gypsum board inside"),
    ("slab-garage", "repair-door@garage.south.outside", "big door D1, 16' 0\" wide, 7' 0\" high"),
    ("slab-garage", "replace-siding@garage.west.outside", "2x4 studs at 1' 4\"; "),
    ("demo", "sister-joist@main.floor", "There now: 2x6 joists at 2' 0\", full sawn."),
    (
        "demo",
        "splice-rafter-tail@main.roof.south",
        "asphalt shingle, 2 layers; 6:12 pitch; on boards",
    ),
]


@pytest.mark.parametrize(("name", "line", "said"), LINES)
def test_sizes_and_materials_stand_in_the_line(name: str, line: str, said: str) -> None:
    made = assessed(name)
    item = made.scope.named(line)
    assert item is not None
    assert said in there_in_words(item, made)


@pytest.mark.parametrize(
    ("name", "line"),
    [
        ("timber-barn", "electrical-permit@building"),
        ("timber-barn", "gravel-strip@barn.south.outside"),
        ("demo", "test-opening@main.ceiling"),
    ],
)
def test_nothing_is_said_where_it_does_not_matter(name: str, line: str) -> None:
    made = assessed(name)
    item = made.scope.named(line)
    assert item is not None
    assert there_in_words(item, made) == ""
