"""Heat through an area of a known R."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import number, temperature_f
from leanto.errors import LeantoError
from leanto.reckon.model import CONFIRM_HEAT, COUNTED, Figure, Reckoning, cited
from leanto.trade.heat_loss import METHOD_SOURCE, WATT_SOURCE, loss_btuh, watts

HELP = "heat through an area of a known R between two temperatures"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--area", required=True, metavar="480", help="sq ft")
    parser.add_argument("--r", required=True, metavar="13", help="of the whole wall, films in it")
    parser.add_argument("--inside", default="68", metavar="68", help="deg F, or like 20 C")
    parser.add_argument("--outside", required=True, metavar="5", help="deg F, or like -15 C")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    area = number(arguments.area, "Area", 0, 100_000, "sq ft")
    r = number(arguments.r, "R", 0.1, 200)
    inside = temperature_f(arguments.inside, "Inside", 35, 95)
    outside = temperature_f(arguments.outside, "Outside", -60, 95)
    if outside > inside:
        raise LeantoError(f"Outside: up to {inside:g} F is possible, not {outside:g}.")
    loss = loss_btuh(area, r, inside - outside)
    return Reckoning(
        id="heat",
        title="Heat through a wall, ceiling or floor",
        station_id="",
        verdict=COUNTED.replace("the building", "area and R"),
        figures=(Figure("Heat", f"{watts(loss):,.0f} W, {loss:,.0f} Btu/h"),),
        reasons=(f"{area:g} sq ft x {inside - outside:g} deg F / R {r:g}; 3.412 Btu/h a watt.",),
        sources=cited((METHOD_SOURCE, WATT_SOURCE)),
        confirm=CONFIRM_HEAT,
    )
