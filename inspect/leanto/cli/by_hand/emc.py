"""Where wood settles in air, and what a meter reading says against it."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import one_of, percent, temperature_f
from leanto.reckon.model import CONFIRM_WATER, COUNTED, Figure, Reckoning, cited
from leanto.reckon.moisture import judged_reading
from leanto.record.observation import Air
from leanto.trade.emc import (
    SOURCE,
    TABLE_RH_PCT,
    TABLE_TEMP_F,
    emc_pct,
    inside_emc_table,
)
from leanto.trade.moisture_meter import RANGE_SOURCE, TEMPERATURE_SOURCE, species_table
from leanto.trade.moisture_verdict import (
    EXCESS_SOURCE,
    KEEPS_DECAY_SOURCE,
    STARTS_DECAY_SOURCE,
    moisture_band,
)

HELP = "what wood settles at in this air; with a reading, whether the air explains it"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--temp", required=True, metavar="70", help="air, deg F, or like 21 C")
    parser.add_argument("--humidity", required=True, metavar="50", help="relative, percent")
    parser.add_argument("--reading", metavar="18", help="meter reading, percent")
    parser.add_argument("--dry-spot", metavar="12", help="reading of like wood at a dry spot")
    parser.add_argument(
        "--species", default="other", metavar="WOOD", help="such as southern-pine; else unknown"
    )


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    temp_f = temperature_f(arguments.temp, "Temperature", -40, 160)
    humidity = percent(arguments.humidity, "Humidity")
    settles = emc_pct(temp_f, humidity)
    reasons = ["Midway between drying and wetting wood; a tenth of a point has no meaning."]
    if not inside_emc_table(temp_f, humidity):
        reasons.append(
            f"Outside the published table ({TABLE_TEMP_F[0]:g} to {TABLE_TEMP_F[1]:g} F, "
            f"{TABLE_RH_PCT[0]:g} to {TABLE_RH_PCT[1]:g} %): the equation is stretched."
        )
    figures = [
        Figure("Air", f"{temp_f:g} F, {humidity:g} %"),
        Figure("Wood settles at", f"{settles:.1f} %"),
    ]
    if arguments.reading is None:
        return Reckoning(
            id="emc",
            title="Moisture that wood settles at",
            station_id="",
            verdict=COUNTED_AIR,
            figures=tuple(figures),
            reasons=tuple(reasons),
            sources=cited((SOURCE,)),
            confirm=CONFIRM_WATER,
        )
    reading = percent(arguments.reading, "Reading")
    kinds = {row.id: row.id for row in species_table().rows}
    species = one_of(arguments.species, "Species", kinds)
    dry = percent(arguments.dry_spot, "Dry spot") if arguments.dry_spot else None
    answer = judged_reading(reading, dry, Air(temp_f, humidity), species)
    assert answer is not None
    figures += [
        Figure("Meter", f"{reading:g} %"),
        Figure("Corrected", f"{answer.corrected_pct:.1f} %, {moisture_band(answer.corrected_pct)}"),
    ]
    if answer.excess_points is not None:
        figures.append(Figure("Beyond what is explained", f"{answer.excess_points:+.1f} points"))
    return Reckoning(
        id="emc",
        title="Meter reading against the air",
        station_id="",
        verdict=answer.kind.value,
        figures=tuple(figures),
        reasons=(*reasons, *answer.reasons),
        sources=cited(
            (SOURCE, TEMPERATURE_SOURCE, RANGE_SOURCE),
            (KEEPS_DECAY_SOURCE, STARTS_DECAY_SOURCE, EXCESS_SOURCE),
        ),
        confirm=CONFIRM_WATER,
    )


COUNTED_AIR = COUNTED.replace("the building", "the air")
