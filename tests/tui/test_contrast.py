"""Every text on every screen stands out from what is behind it, in each look.

Source: W3C, Web Content Accessibility Guidelines (WCAG) 2.2, success criterion 1.4.3 (4.5:1) and
the definitions of relative luminance and contrast ratio; checked there against black on white
(21:1). From memory.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from painted import Rgb, Run, painted, runs
from rich.color import Color, ColorSystem

from leanto.demo.make import make_demo
from leanto.job import Job
from leanto.tui.app import LeantoApp
from leanto.tui.themes import BRIGHT_SUN, BRIGHT_SUN_16, DIM_LIGHT, DIM_LIGHT_16

LEAST = 4.5
DRAWN = range(0x2500, 0x25A0)
"""Lines and blocks, which are no text."""

VGA: tuple[Rgb, ...] = (
    *((0, 0, 0), (170, 0, 0), (0, 170, 0), (170, 85, 0)),
    *((0, 0, 170), (170, 0, 170), (0, 170, 170), (170, 170, 170)),
    *((85, 85, 85), (255, 85, 85), (85, 255, 85), (255, 255, 85)),
    *((85, 85, 255), (255, 85, 255), (85, 255, 255), (255, 255, 255)),
)
"""The 16 colors of the VGA text screen in the order of the terminal's codes; from memory."""

# Keys that lead to every screen and dialog, one after the other.
WAYS = (
    ("f2",),
    ("question_mark",),
    ("escape", "j"),
    ("escape", "n"),
    ("escape", "p"),
    ("escape", "z"),
    ("escape", "f3"),
    ("tab",),
    ("tab", "enter"),
    ("escape", "slash"),
    ("escape", "w"),
    ("enter",),
    ("f4",),
    ("d",),
    ("escape", "g"),
    ("escape", "f5"),
    ("o", "e"),
    ("escape", "a"),
    ("escape", "f6"),
    ("f7",),
    ("f2", "e"),
    ("escape", "v"),
    ("escape", "w"),
    ("escape", "f2", "b"),
    ("tab",),
    ("o",),
    ("escape", "c"),
    ("f9",),
)


def luminance(color: Rgb) -> float:
    def linear(part: int) -> float:
        share = part / 255
        return share / 12.92 if share <= 0.04045 else float(((share + 0.055) / 1.055) ** 2.4)

    red, green, blue = map(linear, color)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: Rgb, another: Rgb) -> float:
    low, high = sorted((luminance(one), luminance(another)))
    return (high + 0.05) / (low + 0.05)


def nearest_of_16(color: Rgb) -> Rgb:
    """What a terminal of 16 colors shows."""
    number = Color.from_rgb(*color).downgrade(ColorSystem.STANDARD).number
    assert number is not None
    return VGA[number]


def words_in(run: Run) -> str:
    return "".join(c for c in run.text if not c.isspace() and ord(c) not in DRAWN)


@pytest.mark.parametrize(
    ("one", "another", "ratio"),
    [
        ((0, 0, 0), (255, 255, 255), 21.0),  # WCAG 2.2, definition of contrast ratio
        ((255, 255, 255), (255, 255, 255), 1.0),  # the same
        ((118, 118, 118), (255, 255, 255), 4.54),  # the lightest gray that passes, well known
        ((119, 119, 119), (255, 255, 255), 4.48),
    ],
)
def test_contrast_is_reckoned_as_the_guideline_does(one: Rgb, another: Rgb, ratio: float) -> None:
    assert contrast(one, another) == pytest.approx(ratio, abs=0.005)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("demo") / "job"
    with make_demo(folder) as job:
        job.write_reports()
    return folder


@pytest.fixture
def walked(demo: Path, tmp_path: Path) -> Iterator[Job]:
    shutil.copytree(demo, tmp_path / "job")
    with Job.open(tmp_path / "job") as job:
        yield job


def too_faint(app: LeantoApp, theme: str, is_16: bool, where: str) -> dict[object, str]:
    """The faint texts of what is shown, each pair of colors once."""
    found: dict[object, str] = {}
    for run in runs(painted(app)):
        pair = (run.color, run.background)
        if is_16:
            pair = (nearest_of_16(run.color), nearest_of_16(run.background))
        if words_in(run) and (ratio := contrast(*pair)) < LEAST:
            found[(theme, *pair)] = f"{ratio:.2f} {where}: {run.text.strip()[:40]!r}"
    return found


@pytest.mark.parametrize(
    ("size", "no_color"), [((120, 40), False), ((80, 24), True)], ids=["colors", "no color"]
)
async def test_every_text_of_every_screen_stands_out(
    walked: Job, size: tuple[int, int], no_color: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    if no_color:
        monkeypatch.setenv("NO_COLOR", "1")
    themes = {DIM_LIGHT.name: False, BRIGHT_SUN.name: False}
    if not no_color:
        themes |= {DIM_LIGHT_16.name: True, BRIGHT_SUN_16.name: True}
    faint: dict[object, str] = {}
    seen = set()
    app = LeantoApp(walked)
    async with app.run_test(size=size) as pilot:
        for way in (*WAYS, ()):
            for key in way:
                await pilot.press(key)
            await app.workers.wait_for_complete()
            if not way:
                app.screen.add_class("-writing")
                for severity in ("information", "warning", "error"):
                    app.notify("told", title="title", severity=severity)  # type: ignore[arg-type]
            where = f"{type(app.screen).__name__} after {' '.join(way)}"
            seen.add(type(app.screen).__name__)
            for theme, is_16 in themes.items():
                app.theme = theme
                await pilot.pause()
                faint |= too_faint(app, theme, is_16, where)
    assert not faint, "\n".join(f"{pair}: {words}" for pair, words in faint.items())
    assert len(seen) > 15
