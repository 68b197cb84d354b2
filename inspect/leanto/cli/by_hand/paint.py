"""Old paint that work disturbs, against the federal rule."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import number
from leanto.reckon.model import CONFIRM_HAZARD, NOT_SUSPECT, TEST_FIRST, Figure, Reckoning, cited
from leanto.trade.lead_paint import INSIDE_LIMIT_SQFT, OUTSIDE_LIMIT_SQFT, disturbed_paint

HELP = "old paint that the work disturbs, against the limits of the federal lead rule"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--year", required=True, metavar="1938", help="year built")
    parser.add_argument("--inside", default="0", metavar="12", help="sq ft in one room")
    parser.add_argument("--outside", default="0", metavar="30", help="sq ft, all sides together")
    parser.add_argument("--windows", action="store_true", help="a window is replaced")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    inside = number(arguments.inside, "Inside", 0, 100_000, "sq ft")
    outside = number(arguments.outside, "Outside", 0, 100_000, "sq ft")
    year = round(number(arguments.year, "Year", 1600, 2100))
    answer = disturbed_paint(
        year, {"the room": inside}, outside, replaces_windows=arguments.windows
    )
    rule = "over its limits" if answer.is_over else "within its limits"
    return Reckoning(
        id="paint",
        title="Old paint that the work disturbs",
        station_id="",
        verdict=TEST_FIRST if answer.is_suspect else NOT_SUSPECT,
        figures=(
            Figure("Inside, one room", f"{inside:g} sq ft; {INSIDE_LIMIT_SQFT:g} is the limit"),
            Figure("Outside", f"{outside:g} sq ft; {OUTSIDE_LIMIT_SQFT:g} is the limit"),
            Figure("Federal rule", rule if answer.is_suspect else "not by the year"),
        ),
        reasons=answer.reasons,
        sources=cited(answer.sources),
        confirm=CONFIRM_HAZARD,
    )
