"""Which pest the signs fit, and whether it is alive."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import length_in, one_of, words
from leanto.reckon.model import CONFIRM_PEST, Figure, Reckoning, cited
from leanto.reckon.pests import how_sure
from leanto.trade.pest_table import HoleShape, pest_table
from leanto.trade.pests import ORDER_SOURCE, identify_pest, judge_activity, order_pest_work

HELP = "which pest the signs fit, whether it is alive, and in what order work goes"
SHAPES: dict[str, HoleShape] = {"round": "round", "oval": "oval"}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--signs", nargs="*", default=[], metavar="SIGN", help="such as soil-tubes")
    parser.add_argument("--hole", metavar="1/16", help="across, inches")
    parser.add_argument("--shape", metavar="SHAPE", help="of the hole: round, oval")
    parser.add_argument("--dropping", metavar="1/4", help="length, inches")
    parser.add_argument("--damaged", action="store_true", help="wood is eaten or nested in")
    parser.add_argument("--carries", action="store_true", help="that wood carries load")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    known = words(sorted(pest_table().signs))
    signs = {one_of(sign, "Sign", known) for sign in arguments.signs}
    hole_in = length_in(arguments.hole, "Hole", 0, 4) if arguments.hole else None
    dropping_in = length_in(arguments.dropping, "Dropping", 0, 4) if arguments.dropping else None
    shape = one_of(arguments.shape, "Shape", SHAPES) if arguments.shape else None
    matches = identify_pest(signs, hole_in, shape, dropping_in)
    best = [one for one in matches if len(one.reasons) == len(matches[0].reasons)]
    figures = [
        Figure("Fits", ", ".join(one.label for one in best) or "no kind fits all signs"),
        Figure("How sure", how_sure(matches)),
    ]
    reasons = [f"{one.label.capitalize()}: {', '.join(one.reasons)}." for one in best]
    sources = [source for one in best for source in one.sources]
    if len(best) == 1:
        alive = judge_activity(best[0].kind, signs)
        figures.append(Figure("Alive", alive.activity.value))
        reasons += alive.reasons
        steps = order_pest_work(best[0].kind, alive.activity, arguments.damaged, arguments.carries)
        figures += [Figure(f"Step {step.order}, {step.by}", step.what) for step in steps]
        sources += [*alive.sources, ORDER_SOURCE]
    else:
        reasons.append("A pest firm names the kind before anything is treated.")
    return Reckoning(
        id="pest",
        title="Pest by its signs",
        station_id="",
        verdict=f"fits {best[0].label}" if len(best) == 1 else "kind not certain",
        figures=tuple(figures),
        reasons=tuple(reasons),
        sources=cited(sources or [ORDER_SOURCE]),
        confirm=CONFIRM_PEST,
    )
