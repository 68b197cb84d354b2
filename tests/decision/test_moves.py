"""How gut or keep of the demo moves as one input changes; the table is ``decision_moves.py``."""

from __future__ import annotations

import pytest
from decision_moves import CEILING, EAST, MOVES, SOUTH, WEST, moved, rows, watched

from leanto.decision.model import SurfaceDecision
from leanto.decision.words import headline


def _after(text: str, surface_id: str) -> SurfaceDecision:
    """The surface after the move of this text; a text that is there once for each surface."""
    found = [
        at for at, move in enumerate(MOVES) if move.text == text and move.surface_id == surface_id
    ]
    (at,) = found
    return watched(at)


@pytest.mark.parametrize(
    ("surface_id", "text", "keep", "gut", "share", "course"),
    [
        # Each column: -1 falls, 0 stays, +1 rises against the demo as it was walked.
        (SOUTH, "reading: stain and base dry, stud feet hard", -1, -1, -1, "keep"),
        (SOUTH, "hole away from the signs: rot", 1, 1, 1, "gut"),
        (SOUTH, "hole away from the signs: sound", -1, -1, -1, "keep"),
        (SOUTH, "price: repair behind the lining x 1.5", 1, 1, 0, "gut"),
        (SOUTH, "price: new board lining x 0.7", 0, -1, 0, "gut"),
        (SOUTH, "price: stripping boards x 4", 0, 1, 0, "keep"),
        (SOUTH, "price: no change-order premium", -1, 0, 0, "keep"),
        (SOUTH, "use: not to be heated", -1, -1, 0, "keep"),
        (EAST, "access: east wall could not be reached", 1, 1, 1, "keep"),
        (EAST, "reading: wet stain and soft stud feet", 1, 1, 1, "keep"),
        (WEST, "access: lumber moved, all sound inside", -1, -1, -1, "keep"),
        (CEILING, "reading: a paper says no asbestos", 0, 0, 0, "gut"),
        (CEILING, "price: gutting the ceiling x 3", 0, 1, 0, "gut"),
    ],
)
def test_one_input_moves_the_decision_the_right_way(
    surface_id: str, text: str, keep: int, gut: int, share: int, course: str
) -> None:
    before, after = _after("as walked", surface_id), _after(text, surface_id)
    assert _sign(before.keep.expected, after.keep.expected) == keep
    assert _sign(before.gut.expected, after.gut.expected) == gut
    assert _sign(before.unseen.mean, after.unseen.mean) == share
    assert after.chosen == course


def test_the_asbestos_paper_takes_away_the_test_and_nothing_else() -> None:
    before, after = (
        _after(text, CEILING) for text in ("as walked", "reading: a paper says no asbestos")
    )
    assert headline(before) == "Test first, then gut"
    assert headline(after) == "Gut"


def test_a_wall_that_could_not_be_reached_is_unknown() -> None:
    assert headline(_after("access: east wall could not be reached", EAST)) == (
        "Unknown, not reached"
    )


def test_the_table_has_a_row_for_each_move_and_gutting_everything_is_never_cheaper() -> None:
    assert len(list(rows())) == len(MOVES) + 1
    for at in range(len(MOVES)):
        decision = moved(at)  # a condition may forbid to keep everything, never to gut it
        assert decision.chosen <= decision.gut_all + 1e-6


def _sign(before: float, after: float) -> int:
    return (after > before + 1e-6) - (after < before - 1e-6)
