"""The facts that expressions may name: every name with its kind, unit and meaning."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from leanto.building.kinds import (
    Cladding,
    Covering,
    Deck,
    FloorKind,
    Foundation,
    Insulation,
    Lining,
    PlaceKind,
    RoofForm,
    Side,
    Use,
)
from leanto.checklist.model import Checklist, Measure
from leanto.trade.moisture_verdict import MoistureKind

NONE = "none"
"""The text of a fact that there is no such thing of at a place, such as the side of a floor."""

NO_VERDICT = MoistureKind.UNKNOWN
"""A verdict that is none: the fact then counts as missing, so that no rule passes on it."""


@dataclass(frozen=True, slots=True)
class FactSpec:
    """One name that an expression may use."""

    name: str
    kind: Literal["number", "flag", "text"]
    unit: str
    """``sqft``, ``ft``, ``in``, ``pct``, ``count``, ``years`` ...; empty for flags and texts."""
    doc: str
    choices: tuple[str, ...] = ()
    before_walk: bool = False
    """True when it is known without any observation; only such facts may decide what is asked."""
    made_from: tuple[str, ...] = ()
    """The facts it is computed from, in the order in which the walker should fill them in."""
    is_measure: bool = False


def _choices(kind: type[StrEnum], *more: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys([*(member.value for member in kind), *more]))


def _flag(name: str, doc: str, *, before_walk: bool = False) -> FactSpec:
    return FactSpec(name, "flag", "", doc, before_walk=before_walk)


def _place_flag(name: str, doc: str) -> FactSpec:
    return _flag(name, doc, before_walk=True)


def _place_text(name: str, doc: str, choices: tuple[str, ...]) -> FactSpec:
    return FactSpec(name, "text", "", doc, choices, before_walk=True)


def _place_number(name: str, unit: str, doc: str) -> FactSpec:
    return FactSpec(name, "number", unit, doc, before_walk=True)


def _number(name: str, unit: str, doc: str, *made_from: str) -> FactSpec:
    return FactSpec(name, "number", unit, doc, made_from=made_from)


_AIR = ("air_temp_f", "air_humidity_pct")

_OBSERVED = (
    _flag("sound", "The answer is sound."),
    _flag("worn", "The answer is worn."),
    _flag("failed", "The answer is failed."),
    _flag("no_access", "The answer is no access."),
    _flag("danger", "The walker marked that this can hurt someone now."),
    _flag("has_zone", "A place and size on the surface was given."),
    _number("zone_area_sqft", "sqft", "Area of the zone; of the whole surface without one."),
    _number("zone_width_ft", "ft", "Width of the zone; of the whole surface without one."),
    _number("zone_height_ft", "ft", "Height of the zone; of the whole surface without one."),
    _number("zone_bottom_ft", "ft", "Lower edge of the zone above the bottom of the surface."),
    _number("zone_top_ft", "ft", "Upper edge of the zone above the bottom of the surface."),
)

_AIR_AND_WOOD = (
    _number(
        "air_temp_f",
        "deg_f",
        "Air temperature here; else of the same block, inside or outside as here.",
    ),
    _number("air_humidity_pct", "pct", "Relative humidity of the air, taken with air_temp_f."),
    _number("emc_pct", "pct", "Moisture content that wood settles at in this air.", *_AIR),
    _number(
        "moisture_over_air_pct",
        "pct",
        "moisture_pct, corrected for the warmth of the wood, less emc_pct.",
        "moisture_pct",
        *_AIR,
    ),
    FactSpec(
        "moisture_verdict",
        "text",
        "",
        "What moisture_pct says against this air or dry_spot_moisture_pct; missing below 20 % "
        "when neither was taken.",
        tuple(kind.value for kind in MoistureKind if kind is not NO_VERDICT),
        made_from=("moisture_pct", *_AIR),
    ),
    _number(
        "section_left_pct",
        "pct",
        "Bending strength (section modulus) left after probe_depth_in went off one face.",
        "probe_depth_in",
        "member_depth_in",
    ),
    _number("building_age_years", "years", "Age of the building on the day of the report."),
)

_PLACE = (
    _place_text("place", "The kind of place where the walker stands.", _choices(PlaceKind)),
    _place_text("side", "Compass side of this wall or slope.", _choices(Side, NONE)),
    _place_flag("lined", "A finish hides the framing of this wall, ceiling or floor."),
    _place_text("lining", "Inside finish of this wall, ceiling or floor.", _choices(Lining)),
    _place_text("cladding", "Outside face of this wall.", _choices(Cladding)),
    _place_text("insulation", "In this wall, ceiling or floor.", _choices(Insulation)),
    _place_text("floor_kind", "Floor of the block.", _choices(FloorKind)),
    _place_number("surface_area_sqft", "sqft", "Area of the surface, less openings."),
    _place_number("surface_width_ft", "ft", "Width of the surface."),
    _place_number("surface_height_ft", "ft", "Height of the surface."),
    _place_number("surface_perimeter_ft", "ft", "Length round the surface."),
    _place_number("member_spacing_in", "in", "Framing of the surface, center to center."),
    _place_number("member_breadth_in", "in", "Real thin side of the framing members."),
    _place_number("member_depth_in", "in", "Real deep side of the framing members."),
    _place_number("door_count", "count", "Doors on the surface; of the building at a site stop."),
    _place_number("window_count", "count", "Windows on the surface; of the building likewise."),
    _place_number("vent_count", "count", "Vents on the surface; of the building likewise."),
    _place_number("skylight_count", "count", "Skylights on the surface; of the building likewise."),
    _place_number("flue_count", "count", "Flues on the surface; of the building likewise."),
)

_BLOCK = (
    _place_text("covering", "What sheds the water on the block's roof.", _choices(Covering)),
    _place_text("deck", "What the covering is fastened to.", _choices(Deck)),
    _place_text("roof_form", "Form of the block's roof.", _choices(RoofForm)),
    _place_number("pitch_in_12", "in_12", "Rise of the roof in 12; 0 for a flat roof."),
    _place_number("covering_age_years", "years", "Age of the covering, when it is known."),
    _place_number("layers", "count", "Layers of covering on the roof."),
    _place_number("overhang_in", "in", "Overhang at the eaves, level."),
    _place_flag("has_gutter", "The block's roof has gutters."),
    _place_flag("has_valley", "Two roof slopes meet in a valley on this block's roof."),
    _place_flag("meets_wall", "The top of this block's roof dies into the wall of another block."),
    _place_flag("has_ceiling", "The block has a ceiling; else it is open to the rafters."),
    _place_flag("is_attached", "The block stands against another block."),
    _place_number("eave_height_ft", "ft", "Floor to the underside of the roof at the eave."),
    _place_number("block_length_ft", "ft", "Length of the block."),
    _place_number("block_width_ft", "ft", "Width of the block."),
    _place_number("floor_area_sqft", "sqft", "Floor of the block; of the building at a site stop."),
    _place_number("floor_clear_span_ft", "ft", "Span of the floor between supports."),
)

_BUILDING = (
    _place_text("foundation", "What the building stands on.", _choices(Foundation)),
    _place_text("intended_use", "What the building is to become.", _choices(Use)),
    _place_flag("to_be_heated", "The building is to be heated."),
    _place_number("year_built", "year", "Year the building was built."),
    _place_number("distance_to_panel_ft", "ft", "Run from the supply panel to the building."),
)

STATIC_FACTS: tuple[FactSpec, ...] = (*_OBSERVED, *_PLACE, *_BLOCK, *_BUILDING, *_AIR_AND_WOOD)
"""Every fact that does not depend on the checklist. Site, wiring and feed stops know a fact of
the blocks when it is the same for all of them, and a flag when it holds for one of them."""


def fact_specs(checklist: Checklist) -> dict[str, FactSpec]:
    """Every fact by name: the static ones, and each measure of the checklist by its id."""
    measures = (_of_measure(measure) for measure in checklist.measures)
    return {spec.name: spec for spec in (*measures, *STATIC_FACTS)}


def wanting(name: str, facts: Mapping[str, FactSpec], values: Mapping[str, object]) -> str:
    """What has to be observed so that the fact is known: the fact itself, or what it is made of."""
    spec = facts.get(name)
    missing = (part for part in spec.made_from if part not in values) if spec else iter(())
    return next(missing, name)


def _of_measure(measure: Measure) -> FactSpec:
    match measure.unit:
        case "choice":
            return FactSpec(measure.id, "text", "", measure.label, measure.choices, is_measure=True)
        case "yes_no":
            return FactSpec(measure.id, "flag", "", measure.label, is_measure=True)
    return FactSpec(measure.id, "number", measure.unit, measure.label, is_measure=True)
