"""Two looks: dim light for barns and evenings, bright sun for the yard."""

from __future__ import annotations

from textual.theme import Theme

DIM_LIGHT = Theme(
    name="dim-light",
    primary="#7fb4d9",
    secondary="#5a7d92",
    accent="#d9b166",
    foreground="#d8d3c8",
    background="#14171a",
    surface="#1b1f23",
    panel="#262c31",
    success="#86c27d",
    warning="#e0a95a",
    error="#f0776b",
    dark=True,
)
BRIGHT_SUN = Theme(
    name="bright-sun",
    primary="#003f6b",
    secondary="#22506e",
    accent="#5a3d00",
    foreground="#000000",
    background="#ffffff",
    surface="#ffffff",
    panel="#d9e2e8",
    success="#00560f",
    warning="#6b3d00",
    error="#8f0010",
    dark=False,
    text_alpha=1.0,
)
THEMES = (DIM_LIGHT, BRIGHT_SUN)


def other(name: str) -> Theme:
    """The theme to change to."""
    return BRIGHT_SUN if name == DIM_LIGHT.name else DIM_LIGHT


def spoken(theme: Theme) -> str:
    """The name as it is said: ``dim light``."""
    return theme.name.replace("-", " ")
