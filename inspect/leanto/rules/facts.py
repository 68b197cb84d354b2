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
from leanto.reckon.pests import NOT_CERTAIN, PEST_KINDS
from leanto.reckon.water import BAND_WORDS
from leanto.remembered import remembered
from leanto.trade.cut_verdict import CutKind
from leanto.trade.framing_check import Verdict as FramingVerdict
from leanto.trade.moisture_verdict import MoistureBand, MoistureKind
from leanto.trade.outcome import Outcome
from leanto.trade.pests import Activity
from leanto.trade.section_remedy import RemedyKind
from leanto.trade.water import Fate
from leanto.trade.wiring.confirm import Verdict as WiringVerdict

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


def _text(name: str, doc: str, choices: tuple[str, ...]) -> FactSpec:
    return FactSpec(name, "text", "", doc, choices)


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
    _place_number("big_door_count", "count", "Those of them wide enough for a vehicle."),
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

_FRAMING = _choices(FramingVerdict)
_OUTCOMES = _choices(Outcome)

RECKONED_FACTS: tuple[FactSpec, ...] = (
    # Known before anything was observed.
    _place_text("floor_check", "Whether the floor of the block carries the new use.", _FRAMING),
    _place_number("floor_allowed_span_ft", "ft", "Span that the floor's members may have."),
    _place_text("ceiling_check", "Whether the ceiling joists carry insulation.", _FRAMING),
    _place_text("ceiling_storage_check", "Whether they would carry limited storage.", _FRAMING),
    _place_number("ceiling_allowed_span_ft", "ft", "Span that the ceiling joists may have."),
    _place_text("rafter_check", "Whether the rafters carry the roof as it is.", _FRAMING),
    _place_text("rafter_next_layer_check", "Whether they would carry one more layer.", _FRAMING),
    _place_number("rafter_allowed_span_ft", "ft", "Level span that the rafters may have."),
    _place_text("slope_check", "The pitch against the least one of its covering.", _OUTCOMES),
    _place_number("roof_squares", "squares", "Squares of covering for the slope, with waste."),
    _place_text("walls_insulation_check", "Fill that fits the walls, to the target.", _OUTCOMES),
    _place_text("ceiling_insulation_check", "Fill that fits overhead, likewise.", _OUTCOMES),
    _place_text("floor_insulation_check", "Fill that fits the floor, likewise.", _OUTCOMES),
    _place_number("heat_now_w", "w", "Heat of the block on the coldest night, as it is."),
    _place_number("heat_keep_w", "w", "The same with the lining kept and filled behind."),
    _place_number("heat_gut_w", "w", "The same gutted, filled and sealed."),
    _place_flag("feed_is_long", "The run from the house panel is beyond 100 ft."),
    _place_number("feed_rating_a", "amp", "Breaker that the load of the new use asks for."),
    _place_number("feed_drop_pct", "pct", "Drop of the new feed, copper in conduit."),
    _place_number("feed_breaker_drop_pct", "pct", "Drop in the wire that its breaker asks for."),
    _place_flag("asbestos_suspect", "Something described may hold asbestos by year and kind."),
    _place_number("debris_linings_high_lb", "lb", "Weight of all linings at most."),
    _place_number("debris_coverings_high_lb", "lb", "Weight of all roof coverings at most."),
    # Known from answers of the walk.
    _text("recover_check", "Whether a new covering may be laid over this slope.", _OUTCOMES),
    _text("life_check", "The years left in the covering against two.", _OUTCOMES),
    _number("life_left_low_years", "years", "Years left in the covering at least."),
    _number("life_left_high_years", "years", "Years left at most; missing without an upper end."),
    _flag("lead_area_over_limit", "More old paint is disturbed than the federal rule lets pass."),
    _number("lead_inside_sqft", "sqft", "Old paint to be disturbed in one room at most."),
    _number("lead_outside_sqft", "sqft", "Old paint to be disturbed outside."),
    _text("mold_band", "The band that all mold of the room falls in.", BAND_WORDS),
    _number("mold_area_sqft", "sqft", "All mold of the room."),
    # Known for one answer.
    _text("moisture_band", "How wet the corrected reading is.", _choices(MoistureBand)),
    _text("section_remedy", "What follows from the strength lost.", _choices(RemedyKind)),
    _number("section_lost_pct", "pct", "Strength lost to probe_depth_in."),
    _number("sister_length_ft", "ft", "Length of the piece beside the soft one."),
    _text("cut_check", "A notch or hole against the code's depth limits.", _choices(CutKind)),
    _text("lining_fate", "What happens to this wet lining.", _choices(Fate)),
    _number("cut_height_in", "in", "Where a wet lining is cut, above the floor."),
    _text("pest_kind", "The kind the signs fit.", (*PEST_KINDS, NOT_CERTAIN)),
    _text("pest_activity", "Whether it is alive, by the signs.", _choices(Activity)),
    _text("clearance_check", "The gap between wood and soil against the code.", _OUTCOMES),
    _text("feed_there_check", "The feed that is there, for the new use.", _choices(WiringVerdict)),
    _number("feed_there_drop_pct", "pct", "Its drop at the planned load, taken as copper."),
)
"""What the computations of ``leanto.reckon`` give; missing where they could not be made."""

STATIC_FACTS: tuple[FactSpec, ...] = (
    *_OBSERVED,
    *_PLACE,
    *_BLOCK,
    *_BUILDING,
    *_AIR_AND_WOOD,
    *RECKONED_FACTS,
)
"""Every fact that does not depend on the checklist. Site, wiring and feed stops know a fact of
the blocks when it is the same for all of them, and a flag when it holds for one of them."""


@remembered(4)
def fact_specs(checklist: Checklist) -> Mapping[str, FactSpec]:
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
