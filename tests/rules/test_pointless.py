"""Questions that an earlier answer leaves without a point."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from pydantic import ValidationError

from leanto.checklist.model import Checklist, Item, PointlessAfter
from leanto.record.observation import Observation, ObservationKey
from leanto.record.walk import Walk
from leanto.rules.asking import items_at
from leanto.rules.pointless import still_asked

Made = Callable[..., Any]
NOT_THERE = {"item": "panel", "answers": ["not there"]}
OVERHEAD = {"item": "panel", "answers": ["worn"], "measure": "stain_kind", "choices": ["ring"]}


def asked(case: Any) -> dict[str, list[str]]:
    occurring = {
        station.id: items_at(station, case.building, case.surfaces, case.checklist)
        for station in case.stations
    }
    return {
        station: [item.id for item in items]
        for station, items in still_asked(occurring, case.walk).items()
    }


@pytest.fixture
def with_question(
    case: Any, item: Callable[..., Item], checklist: Callable[..., Checklist]
) -> Callable[..., Any]:
    """A checklist of a panel, a fuse that earlier answers make pointless, and one thing more."""

    def made(*after: dict[str, Any], at: tuple[str, ...] = ("wiring", "feed")) -> Any:
        case.checklist = checklist(
            item("panel", at=list(at)),
            item("fuse", at=["wiring", "feed"], pointless_after=list(after)),
            item("rot"),
        )
        return case

    return made


@pytest.mark.parametrize(
    ("answer", "is_asked"),
    [("not there", False), ("failed", True), ("no access", True), (None, True)],
)
def test_an_answer_here_leaves_nothing_to_ask_here_alone(
    with_question: Made, answer: str | None, is_asked: bool
) -> None:
    case = with_question(NOT_THERE)
    case.answer("wiring", "panel", answer)
    assert ("fuse" in asked(case)["wiring"]) is is_asked
    assert "fuse" in asked(case)["feed"]
    assert {"panel", "rot"} <= set(asked(case)["wiring"])


@pytest.mark.parametrize(
    ("where", "given", "is_asked"),
    [
        ("anywhere", [], True),
        ("anywhere", ["wiring"], False),
        ("everywhere", [], True),
        ("everywhere", ["wiring"], True),
        ("everywhere", ["wiring", "feed"], False),
    ],
)
def test_an_answer_anywhere_or_everywhere(
    with_question: Made, where: str, given: list[str], is_asked: bool
) -> None:
    case = with_question({**NOT_THERE, "where": where})
    for station in given:
        case.answer(station, "panel", "not there")
    assert ("fuse" in asked(case)["feed"]) is is_asked


def test_everywhere_needs_a_place_that_asks_the_earlier_item(item: Callable[..., Item]) -> None:
    fuse = item("fuse", pointless_after=[{**NOT_THERE, "where": "everywhere"}])
    assert still_asked({"wiring": (fuse,)}, Walk()) == {"wiring": (fuse,)}


@pytest.mark.parametrize(
    ("answer", "measures", "is_asked"),
    [
        ("worn", {"stain_kind": "ring"}, False),
        ("worn", {"stain_kind": "streak"}, True),
        ("worn", {}, True),
        ("failed", {"stain_kind": "ring"}, True),
    ],
)
def test_a_choice_beside_the_answer_may_decide(
    with_question: Made, answer: str, measures: dict[str, str], is_asked: bool
) -> None:
    case = with_question(OVERHEAD)
    case.answer("feed", "panel", answer, **measures)
    assert ("fuse" in asked(case)["feed"]) is is_asked


def test_one_of_several_earlier_answers_is_enough(with_question: Made) -> None:
    case = with_question(OVERHEAD, NOT_THERE)
    case.answer("feed", "panel", "not there")
    assert "fuse" not in asked(case)["feed"]


def test_of_two_observations_of_the_earlier_item_both_must_say_so(with_question: Made) -> None:
    case = with_question(NOT_THERE)
    case.answer("wiring", "panel", "not there")
    case.answer("wiring", "panel", "sound", number=2)
    assert "fuse" in asked(case)["wiring"]


def test_an_answer_that_was_given_stays_and_so_does_its_question(with_question: Made) -> None:
    case = with_question(NOT_THERE)
    case.answer("wiring", "fuse", "failed")
    case.answer("wiring", "panel", "not there")
    assert "fuse" in asked(case)["wiring"]


@pytest.mark.parametrize("entered", [{"note": "Taped."}, {"danger": True}])
def test_a_note_or_the_mark_of_danger_keeps_the_question_too(
    with_question: Made, entered: dict[str, Any]
) -> None:
    case = with_question(NOT_THERE)
    key = ObservationKey("wiring", "fuse")
    case.observations[key] = Observation(key, **entered)
    case.answer("wiring", "panel", "not there")
    assert "fuse" in asked(case)["wiring"]


def test_a_changed_answer_brings_the_question_back(with_question: Made) -> None:
    case = with_question(NOT_THERE)
    case.answer("wiring", "panel", "not there")
    assert "fuse" not in asked(case)["wiring"]
    case.answer("wiring", "panel", "worn")
    assert "fuse" in asked(case)["wiring"]


@pytest.mark.parametrize("one", [{"measure": "stain_kind"}, {"choices": ["ring"]}])
def test_measure_and_choices_stand_together(one: dict[str, Any]) -> None:
    with pytest.raises(ValidationError, match="stand together"):
        PointlessAfter.model_validate({**NOT_THERE, **one})
