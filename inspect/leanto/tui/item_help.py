"""The whole text of an item: everything that a small screen may have cut short."""

from __future__ import annotations

from textual.content import Content

from leanto.checklist.condition import Condition
from leanto.checklist.drawings import Drawing, drawings
from leanto.checklist.model import Caution, Item
from leanto.tui.marks import DANGER_MARK, DANGER_STYLE, FAINT, mark, style
from leanto.tui.shown import on_one_line, visible
from leanto.tui.widgets.item_view import ShownItem

_MEANS = {
    Condition.NO_ACCESS: "It could not be looked at; the reason is asked.",
    Condition.NOT_THERE: "There is no such thing here.",
}


def item_help(shown: ShownItem) -> Content:
    """Cautions, what to look at and how, what each answer means, why it matters, the source."""
    if shown.item is None:
        return Content(shown.nothing)
    item = shown.item
    parts = [
        Content.styled(on_one_line(item.prompt), "bold"),
        *(_caution(caution) for caution in shown.cautions),
        _told("Look", item.look),
        _told("How", item.how),
        *([_told("Tool", item.tool)] if item.tool else []),
        *(_drawing(drawing) for drawing in drawings().get(item.id, ())),
        *(_answer(item, condition) for condition in Condition),
        Content.assemble((f"{DANGER_MARK} danger", DANGER_STYLE), "  It can hurt someone now (d)."),
        _told("Why", item.why),
        _told("Source", item.source),
        *([_told("Note", shown.seen.note)] if shown.seen and shown.seen.note else []),
    ]
    return Content("\n").join(parts)


def _told(label: str, text: str) -> Content:
    return Content.assemble((f"{label}: ", FAINT), visible(text))


def _drawing(drawing: Drawing) -> Content:
    """The picture between empty lines; it is the one thing here that must not be wrapped."""
    title = Content.styled(f"{drawing.title}:", "bold $text-accent")
    indented = "\n".join(f"  {line}" for line in drawing.picture.split("\n"))
    return Content.assemble("\n", title, f"\n{indented}\n")


def _caution(caution: Caution) -> Content:
    who = f" Who must act: {visible(caution.who)}." if caution.who else ""
    return Content.assemble(
        (f"{DANGER_MARK} {on_one_line(caution.title)}:", DANGER_STYLE),
        f" {visible(caution.text)}{who} (Source: {visible(caution.source)})",
    )


def _answer(item: Item, condition: Condition) -> Content:
    answer = item.answer(condition)
    means = visible(answer.means) if answer else _MEANS[condition]
    return Content.assemble((f"{mark(condition)} {condition}", style(condition)), f"  {means}")
