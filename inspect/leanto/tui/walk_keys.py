"""The keys of the walk: digits answer, letters act, Enter goes on."""

from __future__ import annotations

from textual.binding import Binding

from leanto.tui.marks import DIGITS


def _key(key: str, action: str, word: str, tooltip: str, *, show: bool = False) -> Binding:
    name = action.partition("(")[0].replace("_", "-")
    return Binding(key, action, word, show=show, id=f"walk.{name}.{key}", tooltip=tooltip)


WALK_KEYS = (
    *(
        _key(digit, f"answer('{digit}')", condition, f"Answer: {condition}")
        for digit, condition in DIGITS.items()
    ),
    _key("enter", "next_open", "Next", "Go to the next open item", show=True),
    _key("n", "note", "Note", "Write a note", show=True),
    _key("z", "zone", "Zone", "Place and size on the surface", show=True),
    _key("p", "photo", "Photo", "Add a photo", show=True),
    _key("v", "look_at_photos", "View", "Look at the photos of this item"),
    _key("w", "watch", "Watch", "Take in the photos that come into a folder, on or off"),
    _key("x", "photo_out", "Photo out", "Take a photo out again"),
    _key("d", "danger", "Danger", "Danger mark on or off", show=True),
    _key("l", "same", "Same", "Same answer as last, as it is shown", show=True),
    _key("e", "all_sound", "Sound", "Everything open at this station is sound", show=True),
    _key("a", "another", "More", "Another one of the same item", show=True),
    _key("t", "air", "Air", "Air temperature and humidity here"),
    _key("u", "undo", "Undo", "Take back the last entry", show=True),
    _key("r", "redo", "Redo", "Bring back what was taken back"),
    _key("s", "save_elsewhere", "Save", "Save in another folder what this disk refuses"),
    _key("j", "jump", "Jump", "Jump to a station by its name", show=True),
    _key("up", "item(-1)", "Up", "The item before"),
    _key("down", "item(1)", "Down", "The item after"),
    _key("left", "number(-1)", "Left", "Of several of one item, the one before"),
    _key("right", "number(1)", "Right", "Of several of one item, the one after"),
    _key("pageup", "station(-1)", "Page up", "The station before"),
    _key("pagedown", "station(1)", "Page down", "The station after"),
    _key("escape", "back", "Back", "Back to where you stood before"),
)
