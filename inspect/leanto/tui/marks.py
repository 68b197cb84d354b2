"""The marks that stand beside the words, so that color never says anything alone."""

from __future__ import annotations

from leanto.checklist.condition import Condition
from leanto.rules.model import Urgency

OPEN_MARK = "."
DANGER_MARK = "!"

# Plain ASCII: it is there in every terminal and has one width in all of them.
_MARKS = {
    Condition.SOUND: "+",
    Condition.WORN: "~",
    Condition.FAILED: "x",
    Condition.NO_ACCESS: "?",
    Condition.NOT_THERE: "-",
}
_STYLES = {
    Condition.SOUND: "$text-success",
    Condition.WORN: "$text-warning",
    Condition.FAILED: "bold $text-error",
    Condition.NO_ACCESS: "$text-accent",
    Condition.NOT_THERE: "$foreground 70%",
}
_URGENCY_STYLES = {
    Urgency.NOW: "bold $text-error",
    Urgency.BEFORE_CLOSING_IN: "$text-warning",
    Urgency.WITH_THE_WORK: "$text-accent",
    Urgency.KEEP_WATCHING: "$foreground 70%",
}
DANGER_STYLE = "bold $text-error reverse"
FAINT = "$foreground 70%"

DIGITS = {str(number): condition for number, condition in enumerate(Condition, start=1)}
"""The key of each answer."""


def mark(condition: Condition | None) -> str:
    """The mark of an answer; a dot while there is none."""
    return OPEN_MARK if condition is None else _MARKS[condition]


def style(condition: Condition | None) -> str:
    return FAINT if condition is None else _STYLES[condition]


def urgency_style(urgency: Urgency) -> str:
    return _URGENCY_STYLES[urgency]
