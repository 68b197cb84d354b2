"""The item is shortened to the room there is, and never by what one answers by."""

from __future__ import annotations

import pytest
from textual.content import Content

from leanto.checklist.condition import Condition
from leanto.checklist.model import Item
from leanto.library import read_library
from leanto.record.observation import Observation, ObservationKey
from leanto.tui.marks import mark
from leanto.tui.paragraphs import one_line, packed, paragraph
from leanto.tui.shown import on_one_line, visible
from leanto.tui.widgets.item_view import ShownItem, item_lines

CHECKLIST = read_library().checklist
CAUTIONS = {caution.id: caution for caution in CHECKLIST.cautions}
# What the item gets at 80x24 with nothing asked and the most that can follow.
WIDTH, HEIGHT = 53, 13


def shown(item: Item, seen: Observation | None = None) -> ShownItem:
    return ShownItem(item=item, cautions=tuple(CAUTIONS[id_] for id_ in item.caution), seen=seen)


def text_of(lines: list[Content]) -> str:
    return " ".join(" ".join(line.plain.split()) for line in lines)


@pytest.mark.parametrize("item", CHECKLIST.items(), ids=lambda item: item.id)
@pytest.mark.parametrize("condition", [None, Condition.FAILED])
def test_every_shipped_item_keeps_its_cautions_question_and_answers_on_a_small_screen(
    item: Item, condition: Condition | None
) -> None:
    seen = Observation(ObservationKey("site", item.id), condition)

    lines = item_lines(shown(item, seen), WIDTH, HEIGHT)

    text = text_of(lines)
    assert len(lines) <= HEIGHT
    assert all(line.cell_length <= WIDTH for line in lines)
    assert on_one_line(item.prompt) in text
    for id_ in item.caution:
        assert f"! {CAUTIONS[id_].title}" in text
    for digit, answer in enumerate(Condition, start=1):
        word = answer.upper() if answer is condition else answer
        assert f"{digit} {mark(answer)} {word}" in text


@pytest.mark.parametrize("item", CHECKLIST.items()[::7], ids=lambda item: item.id)
def test_nothing_is_cut_where_there_is_room(item: Item) -> None:
    lines = item_lines(shown(item), 60, 60)

    text = text_of(lines)
    assert "…" not in text
    for piece in (item.look, item.how, item.answers.sound.means, item.answers.failed.means):
        assert on_one_line(piece) in text
    for id_ in item.caution:
        assert on_one_line(CAUTIONS[id_].text) in text


def test_a_paragraph_that_is_cut_says_so() -> None:
    lines = paragraph("one two three four five six", 10, label="A", indent=2, at_most=2)

    assert [line.plain for line in lines] == ["A one two", "  three…"]
    assert paragraph("", 10)[0].plain == ""


def test_pieces_are_packed_without_breaking_one() -> None:
    pieces = [Content("aaa  "), Content("bbb  "), Content("ccc  ")]

    assert [line.plain.rstrip() for line in packed(pieces, 8)] == ["aaa  bbb", "ccc"]
    assert [line.plain.rstrip() for line in packed(pieces, 7)] == ["aaa", "bbb", "ccc"]


def test_the_right_side_of_a_line_is_never_cut() -> None:
    assert one_line(Content("a long name"), Content("3/9"), 10).plain == "a lon… 3/9"
    assert one_line(Content("ab"), Content("3/9"), 10).plain == "ab     3/9"


@pytest.mark.parametrize(
    ("text", "safe"),
    [
        ("[bold]plain[/]", "[bold]plain[/]"),
        ("a\x1b[31mb", "a\\x1b[31mb"),
        ("bell\x07", "bell\\x07"),
        ("\u202eturned", "\\u202eturned"),
        ("c1 \x9b", "c1 \\x9b"),
        ("two\r\nlines", "two\nlines"),
        ("Grüße 納屋", "Grüße 納屋"),
    ],
)
def test_control_characters_are_shown_as_codes(text: str, safe: str) -> None:
    assert visible(text) == safe
    assert "\n" not in on_one_line(text)
