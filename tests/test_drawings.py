"""The pictures of the help: whole, plain, and about items that are asked."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from leanto.checklist.drawings import COLUMNS, ROWS, Drawing, drawings
from leanto.library import read_library

# What has to be held, measured or told apart by eye; words alone leave it open.
NEEDED = [
    "sill",
    "stud-feet",
    "post-feet",
    "pick-test",
    "framing-moisture",
    "soil-gap",
    "ground-slope",
    "roof-pitch",
    "floor-sag",
    "roof-sag",
    "wall-lean",
    "cut-members",
    "flue-flashing",
    "step-flashing",
    "wall-apron",
    "eave-edge",
    "roof-layers",
    "pin-holes",
    "oval-holes",
    "bee-holes",
    "soil-tubes",
    "panel-space",
]


@pytest.mark.parametrize("item", NEEDED)
def test_what_is_hard_to_say_is_drawn(item: str) -> None:
    assert drawings()[item]


def test_every_drawing_is_about_items_that_are_asked() -> None:
    known = {item.id for item in read_library().checklist.items()}

    assert drawings().keys() <= known


@pytest.mark.parametrize(
    "picture",
    [
        "x" * (COLUMNS + 1) + " too wide",
        "tall line\n" * (ROWS + 1),
        "a line with a box \u2500\u2500\u2500",
    ],
)
def test_a_picture_that_does_not_fit_is_refused(picture: str) -> None:
    with pytest.raises(ValidationError):
        Drawing(items=("sill",), title="A sill", picture=picture, source="Common practice")
