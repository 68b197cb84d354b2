"""A pin meter's reading put right for the wood's kind and warmth, and how far it may be trusted."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from pydantic import Field

from leanto.source import COMMON_PRACTICE, Mark, Source
from leanto.strict import Strict
from leanto.trade.tables import read_table

TEMPERATURE_SOURCE = Source(
    "Moisture Meters: Correcting for Temperature", place="about 1 point for each 20 deg F from 70"
)
RANGE_SOURCE = Source(
    "Resistance-type moisture meter to appraise decay hazard, FPL Report 2147",
    "1959",
    "useful range 7 to 25 percent",
)
METER_TEMP_F: Final = 70.0
"""Wood temperature pin meters are set for."""
DEG_F_PER_POINT: Final = 20.0
LOWEST_RELIABLE_PCT: Final = 7.0
HIGHEST_RELIABLE_PCT: Final = 25.0
"""Above it the meter only tells low, middling or high; fiber saturation is at 28 to 30."""
RULE_TEMP_F: Final = (30.0, 122.0)
"""Wood temperatures for which correction rules were found in print (30 F to 50 C)."""
DOUBT_POINTS: Final = 1.0
"""Spread of three published temperature rules about each other."""
SPECIES_DOUBT_POINTS: Final = 2.0
"""Doubt where no species figures are entered."""
SPECIES_DOUBT_SOURCE = COMMON_PRACTICE


class SpeciesRow(Strict):
    """One kind of wood: moisture = (reading - b) / a, or no figures at all."""

    id: str = Field(min_length=1)
    name: str = Field(min_length=1)
    a: float | None = Field(default=None, gt=0)
    b: float | None = None
    mark: Mark
    note: str = ""

    @property
    def has_figures(self) -> bool:
        """Whether the row can correct a reading."""
        return self.a is not None and self.b is not None


class SpeciesTable(Strict):
    """The kinds of wood a reading can be corrected for."""

    source: str = Field(min_length=1)
    rows: tuple[SpeciesRow, ...] = Field(min_length=1)

    def row(self, species: str) -> SpeciesRow:
        """The row with this id; ValueError when there is none."""
        for row in self.rows:
            if row.id == species:
                return row
        raise ValueError(f"no species row {species!r}")


@dataclass(frozen=True, slots=True)
class CorrectedMoisture:
    """A corrected reading with its doubt and whether it can be relied on."""

    pct: float
    reading_pct: float
    doubt_points: float
    """The true figure is taken to lie this many points either side."""
    reliable: bool
    reasons: tuple[str, ...]


def corrected_moisture_pct(
    reading_pct: float,
    wood_temp_f: float,
    species: SpeciesRow | str = "douglas_fir",
    *,
    treated: bool = False,
) -> CorrectedMoisture:
    """The reading corrected for species, then for the warmth of the wood (not of the air).

    ``reading_pct`` as shown on the pin meter's wood scale, ``wood_temp_f`` in deg F. A species id
    is looked up in the shipped table. Cold wood reads low, warm wood reads high. ValueError for a
    reading outside 0 to 100 percent, a temperature outside -40 to 160 F or an unknown species.
    """
    if not 0.0 <= reading_pct <= 100.0:
        raise ValueError(f"a meter reads 0 to 100 percent, not {reading_pct}")
    if not -40.0 <= wood_temp_f <= 160.0:
        raise ValueError(f"wood temperature must be -40 to 160 deg F, not {wood_temp_f}")
    row = species_table().row(species) if isinstance(species, str) else species
    by_species = reading_pct if row.a is None or row.b is None else (reading_pct - row.b) / row.a
    points = (METER_TEMP_F - wood_temp_f) / DEG_F_PER_POINT
    pct = max(0.0, by_species + points)
    doubts = _doubts(reading_pct, pct, wood_temp_f)
    notes = [f"Meter {reading_pct:.1f} %, wood at {wood_temp_f:.0f} F: {points:+.1f} points."]
    if not row.has_figures:
        notes.append(f"No correction figures for {row.name}; taken as the meter shows it.")
    elif row.mark != "seen":
        notes.append(f"Species figures for {row.name}: {row.mark}.")
    if treated:
        notes.append("Salt-treated wood reads 1 to 2 points high; nothing was taken off for it.")
    return CorrectedMoisture(
        pct=pct,
        reading_pct=reading_pct,
        doubt_points=DOUBT_POINTS if row.has_figures else SPECIES_DOUBT_POINTS,
        reliable=not doubts,
        reasons=(*notes, *doubts),
    )


def species_table() -> SpeciesTable:
    """The shipped species figures, checklists/tables/wood_species_correction.yaml."""
    return read_table("wood_species_correction.yaml", SpeciesTable)


def _doubts(reading_pct: float, pct: float, wood_temp_f: float) -> list[str]:
    doubts = []
    if min(reading_pct, pct) < LOWEST_RELIABLE_PCT:
        doubts.append(f"Below {LOWEST_RELIABLE_PCT:.0f} % a pin meter only says: dry.")
    if max(reading_pct, pct) > HIGHEST_RELIABLE_PCT:
        doubts.append(
            f"Above {HIGHEST_RELIABLE_PCT:.0f} %, near fiber saturation (28 to 30 %), "
            "a pin meter only says: wet."
        )
    if not RULE_TEMP_F[0] <= wood_temp_f <= RULE_TEMP_F[1]:
        doubts.append("The wood is colder or hotter than the correction was published for.")
    return doubts
