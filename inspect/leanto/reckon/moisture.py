"""Each meter reading against the air beside it and a dry spot."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.reckon import asked
from leanto.reckon.air import air_at, settled_pct
from leanto.reckon.basis import Basis, number
from leanto.reckon.model import CONFIRM_WATER, Fact, Figure, Reckoning, cited
from leanto.record.observation import Air, Observation
from leanto.trade.emc import SOURCE as EMC_SOURCE
from leanto.trade.moisture_meter import (
    METER_TEMP_F,
    RANGE_SOURCE,
    TEMPERATURE_SOURCE,
    CorrectedMoisture,
    corrected_moisture_pct,
)
from leanto.trade.moisture_verdict import (
    EXCESS_SOURCE,
    KEEPS_DECAY_SOURCE,
    STARTS_DECAY_SOURCE,
    MoistureBand,
    MoistureKind,
    MoistureVerdict,
    moisture_band,
    moisture_verdict,
)

READING = "moisture_pct"
DRY_SPOT = "dry_spot_moisture_pct"
UNKNOWN_WOOD = "other"
"""Row of the species table that leaves a meter reading as it is."""


def moisture(basis: Basis) -> Iterator[Reckoning]:
    """A reckoning for every answer with a meter reading."""
    for observation in basis.seen():
        reading = number(observation, READING)
        station = basis.stations[observation.key.station]
        air = air_at(station, basis.surfaces, basis.stations, basis.walk.air)
        wood = species_of(observation, basis)
        verdict = judged_reading(reading, number(observation, DRY_SPOT), air, wood)
        if verdict is not None:
            yield _reckoned(observation, verdict, station.name, air)


def species_of(observation: Observation, basis: Basis) -> str:
    """The species row of the wood that was read: the lumber's for framing, else unknown."""
    species = basis.building.lumber.species
    is_frame = observation.key.item in asked.FRAME_WOOD
    return species.name.lower() if species and is_frame else UNKNOWN_WOOD


def judged_reading(
    reading_pct: float | None,
    dry_spot_pct: float | None,
    air: Air | None,
    species: str = UNKNOWN_WOOD,
) -> MoistureVerdict | None:
    """What a reading says, put right for kind and warmth of the wood; None without a usable one.

    The wood is taken to be as warm as the air; without air, as warm as meters are set for.
    """
    if air is not None and settled_pct(air) is None:
        air = None
    corrected = _corrected(reading_pct, air, species)
    if corrected is None:
        return None
    dry_spot = _corrected(dry_spot_pct, air, species)
    return moisture_verdict(
        corrected,
        air.temp_f if air else None,
        air.humidity_pct if air else None,
        dry_spot.pct if dry_spot is not None else None,
    )


def _corrected(
    reading_pct: float | None, air: Air | None, species: str
) -> CorrectedMoisture | None:
    if reading_pct is None:
        return None
    warmth_f = METER_TEMP_F if air is None else air.temp_f
    try:
        return corrected_moisture_pct(reading_pct, warmth_f, species)
    except ValueError:
        return None


def _reckoned(
    observation: Observation, verdict: MoistureVerdict, place: str, air: Air | None
) -> Reckoning:
    band = moisture_band(verdict.corrected_pct)
    figures = [
        Figure("Meter", f"{number(observation, READING):g} %"),
        Figure("Corrected", f"{verdict.corrected_pct:.1f} %, {band}"),
    ]
    if air is not None and verdict.emc_pct is not None:
        figures.append(
            Figure(
                "Explained by the air",
                f"{verdict.emc_pct:.1f} % at {air.temp_f:g} F and {air.humidity_pct:g} %",
            )
        )
    if verdict.excess_points is not None:
        figures.append(Figure("Beyond that", f"{verdict.excess_points:+.1f} points"))
    return Reckoning(
        id=f"moisture@{observation.key}",
        title=f"Meter reading, {place}",
        station_id=observation.key.station,
        verdict=verdict.kind.value,
        figures=tuple(figures),
        reasons=verdict.reasons,
        sources=cited(
            (EMC_SOURCE, TEMPERATURE_SOURCE, RANGE_SOURCE),
            (KEEPS_DECAY_SOURCE, STARTS_DECAY_SOURCE, EXCESS_SOURCE),
        ),
        confirm=CONFIRM_WATER,
        facts=_facts(verdict, band),
        observation=observation.key,
    )


def _facts(verdict: MoistureVerdict, band: MoistureBand) -> dict[str, Fact]:
    facts: dict[str, Fact] = {"moisture_band": band.value}
    if verdict.kind is not MoistureKind.UNKNOWN:
        facts["moisture_verdict"] = verdict.kind.value
    if verdict.emc_pct is not None:
        facts["moisture_over_air_pct"] = verdict.corrected_pct - verdict.emc_pct
    return facts
