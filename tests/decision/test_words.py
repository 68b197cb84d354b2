"""What the owner reads: chances and shares in words, both answers, and what nobody saw."""

from __future__ import annotations

from dataclasses import replace

import pytest
from small_money import NORTH, a_finding, a_plan

from leanto.decision.model import Course, Decision, Reason, SurfaceDecision
from leanto.decision.words import (
    chance_in_words,
    differs,
    headline,
    in_words,
    interior_in_words,
    share_in_words,
    what_turns,
)
from leanto.record.observation import Overruling


def _decision(**changes: object) -> Decision:
    return a_plan(a_finding(NORTH, hidden="wet-stain"), **changes).decision  # type: ignore[arg-type]


def _north(decision: Decision) -> SurfaceDecision:
    return next(one for one in decision.surfaces if one.surface_id == NORTH)


@pytest.mark.parametrize(
    ("chance", "words"),
    [
        (0.0, "hardly a chance"),
        (0.09, "one chance in 11"),
        (0.2, "one chance in five"),
        (0.33, "one chance in three"),
        (0.5, "an even chance"),
        (0.7, "seven chances in ten"),
        (0.95, "nine chances in ten"),
        (0.99, "as good as certain"),
    ],
)
def test_chances_as_people_say_them(chance: float, words: str) -> None:
    assert chance_in_words(chance) == words


@pytest.mark.parametrize(
    ("share", "words"),
    [
        (0.01, "hardly any"),
        (0.13, "an eighth"),
        (0.34, "a third"),
        (0.5, "half"),
        (1, "nearly all"),
    ],
)
def test_shares_as_people_say_them(share: float, words: str) -> None:
    assert share_in_words(share) == words


def test_the_break_even_is_said_as_a_fraction_and_a_figure() -> None:
    one = _north(_decision())
    assert one.break_even_share is not None
    said = f"Gutting pays as soon as {share_in_words(one.break_even_share)} of what cannot be seen"
    assert said in in_words(one)
    assert f"(more than {100 * one.break_even_share:.0f} %)" in in_words(one)


def test_an_overruling_states_both_answers_with_their_costs() -> None:
    overruled = Overruling(NORTH, "gut", "I want to see the sill.")
    one = _north(_decision(overruled=[overruled]))
    assert headline(one) == "Gut (your choice)"
    said = in_words(one)
    assert f"The figures say keep, about ${round(one.keep.expected, -1):,.0f}" in said
    assert f"you chose gut, about ${round(one.gut.expected, -1):,.0f}" in said
    assert "Your reason: I want to see the sill." in said


def test_a_choice_that_the_figures_share_is_no_contradiction() -> None:
    one = _north(_decision(overruled=[Overruling(NORTH, "keep", "I like it")]))
    assert "as the figures do. Your reason: I like it." in in_words(one)


def test_a_choice_elsewhere_that_turns_this_surface_is_told() -> None:
    one = replace(_north(_decision()), chosen=Course.GUT)
    assert "The figures alone say keep; with your own choice elsewhere" in in_words(one)


@pytest.mark.parametrize(
    ("unknown", "words"),
    [("not walked", "Nobody looked at"), ("not reached", "Nobody could see anything of")],
)
def test_what_nobody_saw_is_unknown(unknown: str, words: str) -> None:
    one = replace(_north(_decision()), unknown=unknown)
    assert headline(one) == f"Unknown, {unknown}"
    assert words in in_words(one)
    assert "by them keep it for now" in in_words(one)


def test_a_condition_decides_also_where_nobody_looked() -> None:
    one = replace(
        _north(_decision()),
        unknown="not walked",
        decisive=(Reason("Foul water.", "A standard"),),
        chosen=Course.GUT,
    )
    assert headline(one) == "Gut"
    assert "Decides whatever the cost: Foul water." in in_words(one)
    assert "Foul water" not in in_words(one, conditions=False)


def test_an_interior_that_nobody_saw_is_unknown_as_a_whole() -> None:
    decision = _decision()
    unseen = tuple(replace(one, unknown="not walked") for one in decision.surfaces)
    assert interior_in_words(replace(decision, surfaces=unseen)).startswith(
        "Unknown: nobody has looked at a lined surface yet. By assumption, keep"
    )
    some = (unseen[0], *decision.surfaces[1:])
    assert "Unknown, as nobody could look: 1 of them." in interior_in_words(
        replace(decision, surfaces=some)
    )
    assert "Unknown" not in interior_in_words(decision)


def test_surfaces_with_another_answer_alone_are_named() -> None:
    decision = _decision()
    assert differs(decision) == ()
    other = replace(decision.surfaces[0], alone=Course.GUT)
    assert differs(replace(decision, surfaces=(other, *decision.surfaces[1:]))) == (other,)


@pytest.mark.parametrize(
    ("now", "bad", "clean", "said"),
    [
        (Course.KEEP, Course.GUT, Course.KEEP, "damage: then gut it"),
        (Course.GUT, Course.GUT, Course.KEEP, "sound wood: then keep it"),
        (Course.KEEP, Course.KEEP, Course.KEEP, "neither answer"),
    ],
)
def test_which_answer_of_a_hole_turns_the_choice(
    now: Course, bad: Course, clean: Course, said: str
) -> None:
    hole = _north(_decision()).hole
    assert hole is not None
    asked = replace(hole, now=now, if_bad=bad, if_clean=clean)
    assert what_turns(asked) == said
    assert asked.turns == (said != "neither answer")
    one = replace(_north(_decision()), hole=asked)
    assert ("neither answer would change" in in_words(one)) == (not asked.turns)
