"""Roof covering to buy: squares, bundles, underlayment, edges, ridges and valleys.

Measures are along the slope. Amounts that share a purchase, such as starter and caps cut from the
same bundles, come back as parts of a bundle, and only their sum is rounded up.
"""

from __future__ import annotations

import math
from typing import Literal

from leanto.source import COMMON_PRACTICE, Source
from leanto.trade.counting import whole_units, with_waste

SQUARE_SQFT = 100.0

RoofForm = Literal["shed", "gable", "gambrel", "hip", "cut up"]

WASTE_BY_FORM: dict[RoofForm, float] = {
    "shed": 0.10,
    "gable": 0.10,
    "gambrel": 0.10,
    "hip": 0.15,
    "cut up": 0.15,
}
"""Share of shingles lost; `cut up` is a roof with valleys or dormers."""
WASTE_SOURCE = COMMON_PRACTICE
TEXTBOOK_WASTE = (0.05, 0.08)
TEXTBOOK_WASTE_SOURCE = Source("Estimating in Building Construction", place="section 14-11")

BUNDLE_SQFT = SQUARE_SQFT / 3
BUNDLE_SOURCE = Source("NAVEDTRA 14044, Builder", place="assignment 3")
STRIP_EXPOSURE_IN = 5.0
STRIP_LENGTH_IN = 36.0

FeltWeight = Literal["No. 15", "No. 30"]
FELT_ROLL_SQFT: dict[FeltWeight, float] = {"No. 15": 400.0, "No. 30": 200.0}
"""Area one roll covers in a single layer with 2 in. head laps; half of it at half lap."""
FELT_SOURCE = Source("Trade magazine field guide to asphalt shingles", place="felt coverage")

DOUBLE_UNDERLAYMENT_BELOW = 4.0
LEAST_SHINGLE_SLOPE = 2.0
UNDERLAYMENT_SOURCE = Source("International Residential Code", place="R905.2, city handout")

DRIP_EDGE_FT = 10.0
DRIP_EDGE_LAP_IN = 2.0
DRIP_EDGE_SOURCE = Source("International Residential Code", place="R905.2.8.5, trade page")

STARTER_FT_PER_BUNDLE = 80.0
"""80 or 120 ft by kind of shingle; the shorter is taken unless the kind is known."""
CUT_CAP_FT_PER_BUNDLE = 35.0
CAP_FT_PER_BUNDLE = (20.0, 25.0)
VALLEY_ROLL_FT = 33.0
WOVEN_VALLEY_FT_PER_BUNDLE = 16.0
ACCESSORY_SOURCE = Source("Published roofing quantity rules", place="starter, caps, valley, edge")


def squares(area_sqft: float, waste: float = 0.0) -> float:
    """Squares of 100 sq ft over an area on the slope, not rounded."""
    return with_waste(area_sqft, waste) / SQUARE_SQFT


def shingle_bundles(
    area_sqft: float,
    waste: float,
    bundle_sqft: float = BUNDLE_SQFT,
    extra_bundles: float = 0.0,
) -> int:
    """Whole bundles for an area; `extra_bundles` are starter, caps and weaving cut from them."""
    _need_positive(bundle_sqft)
    return whole_units(with_waste(area_sqft / bundle_sqft + extra_bundles, waste))


def starter_bundles(length_ft: float, ft_per_bundle: float = STARTER_FT_PER_BUNDLE) -> float:
    """Parts of a bundle for the starter course along eaves, and rakes where it is used there."""
    _need_positive(ft_per_bundle)
    return length_ft / ft_per_bundle


def cap_bundles(length_ft: float, ft_per_bundle: float = CUT_CAP_FT_PER_BUNDLE) -> float:
    """Parts of a bundle for caps along ridges and hips."""
    _need_positive(ft_per_bundle)
    return length_ft / ft_per_bundle


def woven_valley_bundles(length_ft: float) -> float:
    """Parts of a bundle that weaving the shingles across a valley takes in addition."""
    return length_ft / WOVEN_VALLEY_FT_PER_BUNDLE


def valley_rolls(length_ft: float, roll_ft: float = VALLEY_ROLL_FT) -> int:
    """Rolls of metal or lining for valleys."""
    _need_positive(roll_ft)
    return whole_units(length_ft / roll_ft)


def underlayment_layers(rise_in_12: float) -> int:
    """Layers of felt under asphalt shingles at this slope: two from 2:12 to below 4:12, else one.

    Below 2:12 shingles are not laid at all; that raises ValueError.
    """
    if rise_in_12 < LEAST_SHINGLE_SLOPE:
        raise ValueError(f"asphalt shingles are not laid below 2 in 12: {rise_in_12}")
    return 2 if rise_in_12 < DOUBLE_UNDERLAYMENT_BELOW else 1


def underlayment_rolls(area_sqft: float, layers: int, roll_sqft: float, waste: float = 0.0) -> int:
    """Rolls of underlayment; `roll_sqft` is what one covers in one layer, laps allowed for."""
    _need_positive(roll_sqft)
    if layers < 1:
        raise ValueError(f"layers must be one or more: {layers}")
    return whole_units(with_waste(area_sqft * layers, waste) / roll_sqft)


def drip_edge_pieces(
    eave_ft: float,
    rake_ft: float,
    piece_ft: float = DRIP_EDGE_FT,
    lap_in: float = DRIP_EDGE_LAP_IN,
    spare: int = 0,
) -> int:
    """Pieces of drip edge along eaves and rakes, each lapping the next."""
    net_ft = piece_ft - lap_in / 12.0
    _need_positive(net_ft)
    return whole_units((eave_ft + rake_ft) / net_ft) + spare


def courses(slope_length_ft: float, exposure_in: float = STRIP_EXPOSURE_IN) -> int:
    """Courses up a slope, the last one cut where it must be."""
    _need_positive(exposure_in)
    return whole_units(slope_length_ft * 12.0 / exposure_in)


def shingle_nails(
    covered_squares: float, per_strip: int = 4, exposure_in: float = STRIP_EXPOSURE_IN
) -> int:
    """Nails for strip shingles 36 in. long, before waste: four a strip, six where wind is high."""
    _need_positive(exposure_in)
    strips_per_square = SQUARE_SQFT * 144.0 / (STRIP_LENGTH_IN * exposure_in)
    return whole_units(covered_squares * strips_per_square * per_strip)


def wood_shingles(
    area_sqft: float, exposure_in: float, width_in: float = 4.0, waste: float = 0.0
) -> int:
    """Wood shingles of an average width over an area."""
    _need_positive(exposure_in * width_in)
    return whole_units(with_waste(area_sqft, waste) * 144.0 / (exposure_in * width_in))


def _need_positive(value: float) -> None:
    if not math.isfinite(value) or value <= 0:
        raise ValueError(f"a unit of purchase must be more than zero: {value}")
