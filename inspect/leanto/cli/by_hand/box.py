"""The room that wires, clamps and devices take in an outlet box."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import number, one_of, words
from leanto.errors import LeantoError
from leanto.reckon.model import CONFIRM_WIRING, Figure, Reckoning, cited
from leanto.trade.wiring.box_fill import (
    BoxContents,
    Shape,
    box_table,
    check_box,
    fill_cuin,
    fill_steps,
    smallest_box,
)
from leanto.trade.wiring.confirm import EDITION_NOTE, LOOK_ONLY

HELP = "the room that wires, clamps and devices take in an outlet box, for planning"
MOST = 60
SHAPES: tuple[Shape, ...] = ("octagon", "square", "device")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--wires",
        required=True,
        nargs="+",
        metavar="12:4",
        help="size and count of insulated wires that end, splice or pass",
    )
    parser.add_argument("--devices", nargs="*", default=[], metavar="12", help="wire of each yoke")
    parser.add_argument("--grounds", nargs="*", default=[], metavar="12:3", help="bare wires")
    parser.add_argument("--clamps", action="store_true", help="cable clamps inside the box")
    parser.add_argument("--fittings", default="0", metavar="1", help="kinds of stud and hickey")
    parser.add_argument("--box", metavar="NAME", help="a listed box, or its room in cubic inches")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    sizes = words(row.size for row in box_table().conductors)
    contents = BoxContents(
        conductors=_counted(arguments.wires, "Wires", sizes),
        device_sizes=tuple(one_of(size, "Device", sizes) for size in arguments.devices),
        fittings=round(number(arguments.fittings, "Fittings", 0, 4)),
        has_internal_clamps=arguments.clamps,
        grounds=_counted(arguments.grounds, "Grounds", sizes),
    )
    steps = fill_steps(contents)
    figures = [Figure("Wanted", f"{fill_cuin(contents):g} cu in.")]
    for shape in SHAPES:
        least = smallest_box(contents, shape)
        name = f"{least.name} in., {least.volume_cuin:g} cu in." if least else "none listed"
        figures.append(Figure(f"Least {shape} box", name))
    sources = [step.source for step, _ in steps]
    verdict = "counted from the wires"
    if arguments.box:
        room = _room_cuin(arguments.box)
        check = check_box(room, contents)
        verdict = check.verdict.value
        figures.append(Figure("The box", f"{room:g} cu in."))
        sources.append(check.source)
    return Reckoning(
        id="box",
        title="Box fill",
        station_id="",
        verdict=verdict,
        figures=tuple(figures),
        reasons=(
            *(f"{step.label}: {step.working} = {step.result}." for step, _ in steps),
            EDITION_NOTE,
        ),
        sources=cited(sources, (box_table().box_source,)),
        confirm=CONFIRM_WIRING,
        cautions=(f"For a box that is planned. {LOOK_ONLY}",),
    )


def _counted(texts: list[str], what: str, sizes: dict[str, str]) -> dict[str, int]:
    """Counts by size, from texts such as ``12:4``; a bare size counts once."""
    counts: dict[str, int] = {}
    for text in texts:
        size_text, _, count_text = text.partition(":")
        size = one_of(size_text, what, sizes)
        count = number(count_text or "1", what, 0, MOST)
        if count != round(count):
            raise LeantoError(f"{what}: {count:g} is no whole number of wires.")
        counts[size] = counts.get(size, 0) + round(count)
    return counts


def _room_cuin(text: str) -> float:
    names = {box.name: box.volume_cuin for box in box_table().boxes}
    try:
        float(text)
    except ValueError:
        return one_of(text, "Box", names)
    return number(text, "Box", 1, 500, "cu in.")
