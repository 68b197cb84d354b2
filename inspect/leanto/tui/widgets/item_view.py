"""The item in the middle of the walk: what to look at, what each answer means, what was entered."""

from __future__ import annotations

from dataclasses import dataclass, field

from textual.content import Content
from textual.reactive import reactive
from textual.widget import Widget

from leanto.checklist.condition import Condition
from leanto.checklist.model import Caution, Item
from leanto.record.observation import Observation
from leanto.tui.marks import DANGER_MARK, DANGER_STYLE, DIGITS, FAINT, mark, style
from leanto.tui.paragraphs import cut, one_line, packed, paragraph
from leanto.tui.shown import on_one_line


@dataclass(frozen=True, slots=True)
class ShownItem:
    """Everything that is shown of one item at one station."""

    section: str = ""
    place: str = ""
    """Where it stands in the station: ``3 of 12``."""
    copy: str = ""
    """Which of several observations: ``#1 of 2``; empty when there is one."""
    item: Item | None = None
    cautions: tuple[Caution, ...] = ()
    seen: Observation | None = None
    same: str = ""
    """The answer that one key gives again; empty when there is none."""
    measures: tuple[str, ...] = field(default=())
    """Label and value of each measure entered."""
    missing: tuple[str, ...] = ()
    """Labels of the measures that the answer calls for and that are open."""
    zone: str = ""
    air: str = ""
    nothing: str = ""
    """What is said when there is no item."""


@dataclass(frozen=True, slots=True)
class _Room:
    """How many lines each part may take; None for as many as it needs."""

    other_answers: int | None = None
    """The answers that were not given, once one was."""
    look: int | None = None
    how: int | None = None
    caution: int | None = None
    answers: int | None = None
    tool: bool = True


# From everything down to what must never be missing: the cautions' names, question and answers.
# What the answers mean goes last, as it holds the limits that one answers by.
_ROOMS = (
    _Room(),
    _Room(other_answers=1),
    _Room(other_answers=1, tool=False),
    _Room(other_answers=1, tool=False, caution=3),
    _Room(other_answers=1, tool=False, caution=2),
    _Room(other_answers=1, tool=False, caution=2, look=3, how=2),
    _Room(other_answers=1, tool=False, caution=1, look=3, how=2),
    _Room(other_answers=1, tool=False, caution=1, look=2, how=1),
    _Room(other_answers=1, tool=False, caution=1, look=2, how=1, answers=2),
    _Room(other_answers=0, tool=False, caution=1, look=2, how=1, answers=2),
    _Room(other_answers=0, tool=False, caution=1, look=1, how=0, answers=2),
    _Room(other_answers=0, tool=False, caution=1, look=0, how=0, answers=1),
)


class ItemView(Widget):
    """Shows as much of the item as there is room for; the help screen shows all of it."""

    shown: reactive[ShownItem] = reactive(ShownItem())

    def render(self) -> Content:
        return Content("\n").join(item_lines(self.shown, self.size.width, self.size.height))


def item_lines(shown: ShownItem, width: int, height: int) -> list[Content]:
    """The lines of an item, shortened only as far as the height asks for."""
    if shown.item is None:
        return paragraph(shown.nothing, width)
    parts = _parts(shown, shown.item, width)
    whole = _fitted(parts, _ROOMS[0], width)
    if len(whole) + 1 <= height:
        return [_header(shown, width, cut_short=False), *whole]
    header = _header(shown, width, cut_short=True)
    for room in _ROOMS[1:]:
        lines = [header, *_fitted(parts, room, width)]
        if len(lines) <= height:
            return lines
    return lines[:height]


@dataclass(frozen=True, slots=True)
class _Parts:
    """Every part of an item, wrapped and whole."""

    cautions: list[list[Content]]
    prompt: list[Content]
    look: list[Content]
    how: list[Content]
    tool: list[Content]
    answers: list[_AnswerPart]
    same: list[Content]
    entered: list[Content]


@dataclass(frozen=True, slots=True)
class _AnswerPart:
    label: Content
    means: list[Content]
    """With the label; empty for answers that mean the same everywhere."""
    is_other: bool
    """True when another answer was given."""


def _parts(shown: ShownItem, item: Item, width: int) -> _Parts:
    given = shown.seen.condition if shown.seen else None
    return _Parts(
        cautions=[_caution(caution, width) for caution in shown.cautions],
        prompt=paragraph(item.prompt, width, style="bold $text-primary"),
        look=_told("Look", item.look, width),
        how=_told("How", item.how, width),
        tool=_told("Tool", item.tool, width) if item.tool else [],
        answers=[
            _answer(item, digit, condition, given, width) for digit, condition in DIGITS.items()
        ],
        same=_same(shown.same, width) if shown.same else [],
        entered=_entered(shown, width),
    )


def _fitted(parts: _Parts, room: _Room, width: int) -> list[Content]:
    """The parts below each other, each within its room."""
    means: list[Content] = []
    labels: list[Content] = []
    for answer in parts.answers:
        at_most = room.other_answers if answer.is_other else room.answers
        if answer.means and at_most != 0:
            means += cut(answer.means, at_most, width)
        else:
            labels.append(answer.label)
    return [
        *(line for caution in parts.cautions for line in cut(caution, room.caution, width)),
        *parts.prompt,
        *cut(parts.look, room.look, width),
        *cut(parts.how, room.how, width),
        *(parts.tool if room.tool else ()),
        *means,
        *packed(labels, width),
        *parts.same,
        *parts.entered,
    ]


def _header(shown: ShownItem, width: int, cut_short: bool) -> Content:
    left = Content.styled(f"{on_one_line(shown.section)}  {shown.place}", FAINT)
    said = [shown.copy, "? shows it whole" if cut_short else ""]
    return one_line(left, Content.styled("  ".join(part for part in said if part), FAINT), width)


def _caution(caution: Caution, width: int) -> list[Content]:
    title = Content.styled(f"{DANGER_MARK} {on_one_line(caution.title)}:", DANGER_STYLE)
    who = f" ({on_one_line(caution.who)})" if caution.who else ""
    text = Content.assemble(title, " ", (on_one_line(caution.text) + who, "$text-warning"))
    return paragraph(text, width)


def _told(label: str, text: str, width: int, at_most: int | None = None) -> list[Content]:
    head = Content.styled(label, FAINT)
    return paragraph(on_one_line(text), width, label=head, indent=5, at_most=at_most)


def _answer(
    item: Item, digit: str, condition: Condition, given: Condition | None, width: int
) -> _AnswerPart:
    label = _answer_label(digit, condition, given)
    answer = item.answer(condition)
    means = paragraph(on_one_line(answer.means), width, label=label, indent=13) if answer else []
    return _AnswerPart(label, means, given is not None and condition is not given)


def _answer_label(digit: str, condition: Condition, given: Condition | None) -> Content:
    chosen = condition is given
    word = condition.upper() if chosen else str(condition)
    look = f"{style(condition)} reverse" if chosen else style(condition)
    return Content.assemble(
        (digit, "bold $text-accent"), " ", (f"{mark(condition)} {word}", look), "  "
    )


def _same(said: str, width: int) -> list[Content]:
    label = Content.assemble(("l", "bold $text-accent"), " same again: ")
    return paragraph(on_one_line(said), width, label=label, at_most=1)


def _entered(shown: ShownItem, width: int) -> list[Content]:
    seen = shown.seen
    lines: list[Content] = []
    if seen is None:
        return _told("Air", shown.air, width) if shown.air else []
    if seen.danger:
        lines.append(Content.styled(f"{DANGER_MARK} DANGER: can hurt someone now", DANGER_STYLE))
    if seen.reason:
        lines += _told("Why", on_one_line(seen.reason), width, 2)
    if shown.measures:
        lines += _told("Is", ", ".join(shown.measures), width)
    if shown.missing:
        lines += _told("Open", ", ".join(shown.missing), width, 2)
    if shown.zone:
        lines += _told("Zone", shown.zone, width)
    if seen.note:
        lines += _told("Note", seen.note, width, 2)
    if seen.photos:
        names = ", ".join(on_one_line(photo.original_name) for photo in seen.photos)
        lines += _told("Pic", f"{len(seen.photos)}: {names}", width, 1)
    if shown.air:
        lines += _told("Air", shown.air, width)
    return lines
