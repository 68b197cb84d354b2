"""What is known of a place before anything was observed there: the values of the place facts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from leanto.building.kinds import Insulation, OpeningKind, PlaceKind, RoofForm
from leanto.building.model import Block, Building
from leanto.building.relations import other_face
from leanto.building.station import Station
from leanto.building.surface import FramingGrid, Surface
from leanto.reckon.member import member_size_in
from leanto.remembered import remembered
from leanto.rules.facts import NONE
from leanto.rules.terms import Value
from leanto.rules.valley import has_valley

_COUNTS = {
    "door_count": (OpeningKind.DOOR, OpeningKind.BIG_DOOR),
    "big_door_count": (OpeningKind.BIG_DOOR,),
    "window_count": (OpeningKind.WINDOW,),
    "vent_count": (OpeningKind.VENT,),
    "skylight_count": (OpeningKind.SKYLIGHT,),
    "flue_count": (OpeningKind.FLUE,),
}


def place_values(
    station: Station, building: Building, surfaces: Mapping[str, Surface]
) -> dict[str, Value]:
    """Every place fact that is known at the station, by name."""
    return {**_place_values(station, building, surfaces)}


@remembered(200)
def _place_values(
    station: Station, building: Building, surfaces: Mapping[str, Surface]
) -> Mapping[str, Value]:
    surface = surfaces.get(station.surface_id or "")
    values: dict[str, Value | None] = {"place": station.kind.value, "side": NONE}
    values |= _of_building(building)
    if surface is None:
        values |= _shared([_of_block(block, building, surfaces) for block in building.blocks])
        values["floor_area_sqft"] = sum(_floor_area_sqft(b, surfaces) for b in building.blocks)
        values |= _counts(opening.kind for opening in building.openings)
    else:
        for block in building.blocks:
            if block.id == surface.block:
                values |= _of_block(block, building, surfaces)
        values |= _of_surface(surface, surfaces, building.year_built)
    return {name: value for name, value in values.items() if value is not None}


def _of_building(building: Building) -> dict[str, Value | None]:
    return {
        "foundation": building.foundation.value,
        "intended_use": building.intended_use.value,
        "to_be_heated": building.to_be_heated,
        "year_built": float(building.year_built),
        "distance_to_panel_ft": building.distance_to_panel,
    }


def _of_block(
    block: Block, building: Building, surfaces: Mapping[str, Surface]
) -> dict[str, Value | None]:
    roof = block.roof
    is_flat = roof.form is RoofForm.FLAT
    return {
        "covering": roof.covering.value,
        "deck": roof.deck.value,
        "roof_form": roof.form.value,
        "pitch_in_12": 0.0 if is_flat else roof.pitch,
        "covering_age_years": _number(roof.covering_age_years),
        "layers": float(roof.layers),
        "overhang_in": roof.overhang * 12,
        "has_gutter": roof.gutters,
        "has_valley": has_valley(block, building),
        "meets_wall": any(
            surface.meets is not None for surface in surfaces.values() if surface.block == block.id
        ),
        "has_ceiling": block.ceiling is not None,
        "is_attached": block.attached is not None,
        "floor_kind": block.floor.kind.value,
        "eave_height_ft": block.eave_height,
        "block_length_ft": block.length,
        "block_width_ft": block.width,
        "floor_area_sqft": _floor_area_sqft(block, surfaces),
        "floor_clear_span_ft": block.floor.clear_span or min(block.length, block.width),
    }


def _of_surface(
    surface: Surface, surfaces: Mapping[str, Surface], year_built: int
) -> dict[str, Value | None]:
    back = other_face(surface, surfaces.values())
    faces = (surface,) if back is None else (surface, back)
    values: dict[str, Value | None] = {
        "side": surface.side.value if surface.side else NONE,
        "lined": any(face.is_lined for face in faces),
        "lining": _first(face.lining for face in faces) or NONE,
        "cladding": _first(face.cladding for face in faces) or NONE,
        "insulation": _first(face.insulation for face in faces) or Insulation.NONE.value,
        "surface_area_sqft": surface.net_area_sqft,
        "surface_width_ft": surface.width_ft,
        "surface_height_ft": surface.height_ft,
        "surface_perimeter_ft": surface.perimeter_ft,
    }
    values |= _counts(opening.kind for opening in surface.openings)
    if surface.grid is not None:
        values |= _of_grid(surface.grid, year_built)
    return values


def _of_grid(grid: FramingGrid, year_built: int) -> dict[str, Value | None]:
    size = member_size_in(grid, year_built)
    breadth_in, depth_in = size or (None, None)
    return {
        "member_spacing_in": grid.spacing_ft * 12,
        "member_breadth_in": breadth_in,
        "member_depth_in": depth_in,
    }


def _floor_area_sqft(block: Block, surfaces: Mapping[str, Surface]) -> float:
    floors = [
        surface.net_area_sqft
        for surface in surfaces.values()
        if surface.block == block.id and surface.kind is PlaceKind.FLOOR
    ]
    return sum(floors) if floors else block.length * block.width


def _counts(kinds: Iterable[OpeningKind]) -> dict[str, Value | None]:
    present = list(kinds)
    return {
        name: float(sum(kind in counted for kind in present)) for name, counted in _COUNTS.items()
    }


def _shared(blocks: list[dict[str, Value | None]]) -> dict[str, Value | None]:
    """Of several blocks: flags that hold for any, other facts where all agree."""
    return {name: _common([block[name] for block in blocks]) for name in blocks[0]}


def _common(values: list[Value | None]) -> Value | None:
    if any(isinstance(value, bool) for value in values):
        return any(values)
    return values[0] if all(value == values[0] for value in values) else None


def _first(values: Iterable[str | None]) -> str | None:
    return next((str(value) for value in values if value is not None), None)


def _number(value: int | None) -> float | None:
    return None if value is None else float(value)
