"""Two looks: dim light for barns and evenings, bright sun for the yard; each also in 16 colors.

Every text keeps a contrast of 4.5:1 with what is behind it (W3C, WCAG 2.2, success criterion
1.4.3), in the 16 colors by the palette of the VGA text screen.
"""

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
    variables={"input-selection-background": "#2f4756"},
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
# A terminal with 16 colors shows the nearest one: these are among them already, and no gray is,
# which would be hard to read on black and on white.
DIM_LIGHT_16 = Theme(
    name="dim-light-16",
    primary="#55ffff",
    secondary="#55ffff",
    accent="#ffff55",
    foreground="#ffffff",
    background="#000000",
    surface="#000000",
    panel="#000000",
    success="#55ff55",
    warning="#ffff55",
    error="#ff5555",
    dark=True,
    text_alpha=1.0,
    variables={
        "input-selection-background": "#0000aa",
        "block-cursor-foreground": "#000000",
        "block-cursor-blurred-foreground": "#ffffff",
        "block-cursor-blurred-background": "#0000aa",
        "text-muted": "#ffffff",
    },
)
BRIGHT_SUN_16 = Theme(
    name="bright-sun-16",
    primary="#0000aa",
    secondary="#0000aa",
    accent="#0000aa",
    foreground="#000000",
    background="#ffffff",
    surface="#ffffff",
    panel="#ffffff",
    success="#0000aa",
    warning="#aa0000",
    error="#aa0000",
    dark=False,
    text_alpha=1.0,
    variables={
        "input-selection-background": "#55ffff",
        "block-cursor-foreground": "#ffffff",
        "block-cursor-blurred-foreground": "#000000",
        "block-cursor-blurred-background": "#55ffff",
        "text-muted": "#000000",
    },
)
THEMES = (DIM_LIGHT, BRIGHT_SUN, DIM_LIGHT_16, BRIGHT_SUN_16)
_OTHERS = {
    DIM_LIGHT.name: BRIGHT_SUN,
    BRIGHT_SUN.name: DIM_LIGHT,
    DIM_LIGHT_16.name: BRIGHT_SUN_16,
    BRIGHT_SUN_16.name: DIM_LIGHT_16,
}


def first(color_system: str | None) -> Theme:
    """The look to start with; ``color_system`` is what the terminal can show."""
    return DIM_LIGHT_16 if color_system == "standard" else DIM_LIGHT


def other(name: str) -> Theme:
    """The theme to change to."""
    return _OTHERS.get(name, DIM_LIGHT)


def spoken(theme: Theme) -> str:
    """The name as it is said: ``dim light``."""
    return theme.name.removesuffix("-16").replace("-", " ")
