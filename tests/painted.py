"""What a screen of the program shows, cell by cell, with the colors that the terminal gets.

The framework has no public door to what it painted; its inside is used in this file only.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from textual.app import App

BLACK = (0, 0, 0)
WHITE = (255, 255, 255)
Rgb = tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Run:
    """Text in one style."""

    text: str
    color: Rgb
    background: Rgb
    looks: str
    """``bold``, ``underline`` and the like; empty for plain text."""


def painted(app: App[Any]) -> list[list[Run]]:
    """Every line of the screen and of the screens that show through it."""
    update = app.screen._compositor.render_update(full=True, screen_stack=app._background_screens)
    lines = app.console.render_lines(update, pad=False)
    return [
        [_run(segment.text, segment.style) for segment in line if not segment.control]
        for line in lines
    ]


def text_of(lines: list[list[Run]]) -> str:
    return "\n".join("".join(run.text for run in line).rstrip() for line in lines)


def runs(lines: list[list[Run]]) -> Iterator[Run]:
    for line in lines:
        yield from line


def _run(text: str, style: Any) -> Run:
    if style is None:
        return Run(text, WHITE, BLACK, "")
    front, back = _rgb(style.color, WHITE), _rgb(style.bgcolor, BLACK)
    if style.reverse:
        front, back = back, front
    looks = [
        name
        for name in ("bold", "dim", "italic", "underline", "strike", "blink")
        if getattr(style, name)
    ]
    return Run(text, front, back, " ".join(looks))


def _rgb(color: Any, default: Rgb) -> Rgb:
    if color is None or color.is_default:
        return default
    triplet = color.get_truecolor()
    return (triplet.red, triplet.green, triplet.blue)
