"""Voltage lost along a run in a wire of a size."""

from __future__ import annotations

import argparse
from typing import Literal, cast

from leanto.cli.by_hand.typed import length_ft, number, one_of, words
from leanto.reckon.model import CONFIRM_WIRING, Figure, Reckoning, cited
from leanto.trade.wiring.conductor import conductor, conductors, resistance_table
from leanto.trade.wiring.confirm import EDITION_NOTE, Verdict
from leanto.trade.wiring.voltage_drop import (
    RECOMMENDED_PCT,
    RECOMMENDED_SOURCE,
    drop_pct,
    drop_v,
    longest_run_ft,
)

HELP = "voltage lost along a run, and how far the wire reaches at 3 percent"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--length", required=True, metavar="140", help="one way, feet")
    parser.add_argument("--amps", required=True, metavar="16", help="as they run")
    parser.add_argument(
        "--size", required=True, metavar="6", help="wire: 14 to 1, 1/0 to 4/0, 250 up"
    )
    parser.add_argument("--metal", default="copper", metavar="METAL", help="copper, aluminum")
    parser.add_argument("--volts", default="240", metavar="240", help="between the two wires")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    metal = cast(
        Literal["copper", "aluminum"],
        one_of(arguments.metal, "Metal", words(("copper", "aluminum"))),
    )
    sizes = words(one.size for one in conductors(metal))
    wire = conductor(one_of(arguments.size.upper().removesuffix("AWG"), "Size", sizes), metal)
    feet = length_ft(arguments.length, "Length", 0, 1000)
    amps = number(arguments.amps, "Amps", 0.1, 600, "A")
    volts = number(arguments.volts, "Volts", 12, 480, "V")
    lost = drop_v(amps, feet, wire.ohm_per_kft)
    lost_pct = drop_pct(lost, volts)
    reach = longest_run_ft(amps, volts * RECOMMENDED_PCT / 100, wire.ohm_per_kft)
    passes = lost_pct <= RECOMMENDED_PCT
    return Reckoning(
        id="drop",
        title=f"Voltage drop in {wire.label}",
        station_id="",
        verdict=(Verdict.PASSES if passes else Verdict.DOES_NOT_PASS).value,
        figures=(
            Figure("Lost", f"{lost:.2f} V, {lost_pct:.2f} % of {volts:g} V"),
            Figure(f"Reaches {RECOMMENDED_PCT:g} percent at", f"{reach:.0f} ft"),
        ),
        reasons=(
            f"2 x {amps:g} A x {feet:g} ft x {wire.ohm_per_kft:g} ohm/kft / 1000 = {lost:.2f} V.",
            f"{RECOMMENDED_PCT:g} percent is advice for a feeder or a branch, not a limit.",
            EDITION_NOTE,
        ),
        sources=cited((resistance_table().source, RECOMMENDED_SOURCE)),
        confirm=CONFIRM_WIRING,
    )
