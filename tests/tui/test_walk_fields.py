"""What is typed into a field, how it is read, and what is offered."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from leanto.building.kinds import PlaceKind
from leanto.building.station import Station
from leanto.checklist.model import Measure
from leanto.errors import LeantoError
from leanto.tui.asking import Asking, Step
from leanto.tui.fields import choice_field, choice_of, measure_field, text_field
from leanto.tui.pictures import newest_picture, typed_paths
from leanto.tui.screens.jump import matching


def measure(unit: str, **changes: Any) -> Measure:
    limits = {} if unit in ("choice", "yes_no") else {"low": 0, "high": 500}
    return Measure.model_validate({"id": "it", "label": "It", "unit": unit} | limits | changes)


@pytest.mark.parametrize(
    ("unit", "typed", "value"),
    [
        ("in", "1.5", 1.5),
        ("in", "1 1/2", 1.5),
        ("in", '3/4"', 0.75),
        ("in", "2 cm", 0.787402),
        ("in", "-2", -2.0),
        ("ft", "7-3", 7.25),
        ("ft", "7' 3\"", 7.25),
        ("ft", "2.5", 2.5),
        ("ft", "88 in", 88 / 12),
        ("sqft", "12", 12.0),
        ("sqft", "3' x 4'", 12.0),
        ("pct", "28", 28.0),
        ("pct", "28 %", 28.0),
        ("count", "4", 4.0),
        ("deg_f", "5 C", 41.0),
        ("days", "3 days", 3.0),
        ("days", "3 d", 3.0),
        ("amp", "20 A", 20.0),
        ("years", "12", 12.0),
        ("yes_no", "y", 1.0),
        ("yes_no", "No", 0.0),
    ],
)
def test_a_measure_is_typed_as_it_is_said(unit: str, typed: str, value: float) -> None:
    assert measure_field(measure(unit), None, "").read(typed) == pytest.approx(value)


@pytest.mark.parametrize(
    ("unit", "typed"),
    [
        ("in", "wide"),
        ("ft", "-3"),
        ("pct", "20 C"),
        ("count", "2.5"),
        ("days", "3 feet"),
        ("yes_no", "perhaps"),
        ("sqft", "3 ft"),
    ],
)
def test_what_is_no_measure_is_refused_in_one_line(unit: str, typed: str) -> None:
    with pytest.raises(LeantoError) as refused:
        measure_field(measure(unit), None, "").read(typed)
    assert "\n" not in str(refused.value)


@pytest.mark.parametrize("unit", ["in", "ft", "sqft", "pct", "count", "deg_f", "days", "amp"])
@pytest.mark.parametrize("value", [0.0, 3.0, 12.0, 41.0])
def test_what_is_offered_can_be_typed_again(unit: str, value: float) -> None:
    field = measure_field(measure(unit), value, "last time")

    assert field.read(field.default) == pytest.approx(value)
    assert field.value_of("  ") == value


def test_enter_takes_the_exact_value_and_not_its_rounded_words() -> None:
    field = measure_field(measure("ft"), 2.24 / 0.3048, "last time")

    assert field.value_of("") == 2.24 / 0.3048


@pytest.mark.parametrize(
    ("typed", "choice"),
    [("2", "drip marks"), ("tide", "tide line"), ("DRIP MARKS", "drip marks"), ("old", "old")],
)
def test_a_choice_goes_by_number_or_beginning(typed: str, choice: str) -> None:
    assert choice_of(typed, ("one ring", "drip marks", "tide line", "old", "old ring")) == choice


@pytest.mark.parametrize("typed", ["", "0", "4", "d", "xyz"])
def test_a_choice_that_is_none_or_unclear_is_refused(typed: str) -> None:
    with pytest.raises(LeantoError):
        choice_of(typed, ("drip marks", "dark", "tide line"))


def test_a_digit_chooses_at_once_only_while_one_digit_is_enough() -> None:
    assert choice_field("Which", tuple("abc")).is_whole("3")
    assert not choice_field("Which", tuple("abc")).is_whole("4")
    assert not choice_field("Which", tuple("abcdefghij")).is_whole("1")
    assert measure_field(measure("yes_no"), None, "").is_whole("Y")
    assert not measure_field(measure("in"), None, "").is_whole("1")


def test_a_reason_in_words_needs_some() -> None:
    assert text_field("Why", 20).read("  a   dog ") == "a dog"
    for typed in ("  ", "x" * 21):
        with pytest.raises(LeantoError):
            text_field("Why", 20).read(typed)


def test_steps_are_skipped_by_group_and_asked_again_backwards() -> None:
    kept: list[str] = []

    def step(name: str, group: str = "", more: tuple[Step, ...] = ()) -> Step:
        def keep(value: object) -> tuple[Step, ...]:
            kept.append(f"{name}={value}")
            return more

        return Step(lambda: text_field(name, 20), keep, group)

    asking = Asking(
        [step("a"), step("b", more=(step("b2"),)), step("c", "zone"), step("d", "zone")]
    )
    asking.take(1.0)
    asking.back()
    asking.take(2.0)
    asking.take(3.0)
    assert asking.step is not None and asking.step.field().label == "b2"
    assert asking.left == 2
    asking.skip()
    asking.skip()

    assert asking.step is None
    assert kept == ["a=1.0", "a=2.0", "b=3.0"]


@pytest.mark.parametrize(
    "write",
    [
        lambda path: str(path),
        lambda path: f"'{path}'",
        lambda path: f'"{path}"',
        lambda path: str(path).replace(" ", "\\ "),
        lambda path: "file://" + str(path).replace(" ", "%20"),
        lambda path: f"  {path} \n",
    ],
)
def test_a_dragged_picture_is_understood(tmp_path: Path, write: Any) -> None:
    picture = tmp_path / "old sill.jpg"
    picture.write_bytes(b"")

    assert typed_paths(write(picture)) == (picture,)


def test_several_dragged_pictures_are_understood(tmp_path: Path) -> None:
    first, second = tmp_path / "a b.jpg", tmp_path / "c.jpg"
    first.write_bytes(b"")

    assert typed_paths(f"'{first}' {second}") == (first, second)
    assert typed_paths("  ") == ()
    assert typed_paths("no such file.jpg") == (Path("no such file.jpg"),)
    assert typed_paths("bob's.jpg") == (Path("bob's.jpg"),)


def test_the_newest_picture_of_a_folder_is_found(tmp_path: Path) -> None:
    import os

    for name, second in (("new.JPG", 30), ("old.png", 10), ("newer.txt", 40)):
        (tmp_path / name).write_bytes(b"")
        os.utime(tmp_path / name, (second, second))
    (tmp_path / "folder.jpg").mkdir()

    assert newest_picture(tmp_path) == tmp_path / "new.JPG"
    assert newest_picture(tmp_path / "folder.jpg") is None
    assert newest_picture(tmp_path / "not there") is None


def test_a_station_is_found_by_the_beginnings_of_its_words() -> None:
    names = ("Main room, north wall, inside", "Main room, north wall, outside", "Feed room, floor")
    stations = [Station(str(at), name, PlaceKind.FLOOR, None) for at, name in enumerate(names)]

    assert [one.id for one in matching(stations, "north in")] == ["0"]
    assert [one.id for one in matching(stations, "Wall")] == ["0", "1"]
    assert [one.id for one in matching(stations, "")] == ["0", "1", "2"]
    assert matching(stations, "attic") == []
