"""Area, squares and bundles of a roof from its plan and pitch."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import length_ft, one_of
from leanto.errors import LeantoError
from leanto.quantities import format_ft_in, parse_pitch
from leanto.reckon.model import CONFIRM_ROOF, COUNTED, Figure, Reckoning, cited
from leanto.reckon.take_off import counted
from leanto.trade import roofing
from leanto.trade.roof_rules import check_slope
from leanto.trade.slope import rafter_length_ft, roof_area_sqft, slope_factor

HELP = "area, squares, bundles, felt and edge metal of a roof from plan and pitch"
FORMS: dict[str, roofing.RoofForm] = {
    "gable": "gable",
    "shed": "shed",
    "hip": "hip",
    "cut up": "cut up",
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--length", required=True, metavar="24", help="along the ridge, feet")
    parser.add_argument("--width", required=True, metavar="12", help="across it, wall to wall")
    parser.add_argument("--pitch", required=True, metavar="6", help="rise in 12")
    parser.add_argument("--form", default="gable", metavar="FORM", help=", ".join(FORMS))
    parser.add_argument("--overhang", default="0", metavar="1", help="at the eaves, level feet")
    parser.add_argument("--rake", default="0", metavar="0.5", help="past the end walls, feet")


def reckoned(arguments: argparse.Namespace) -> Reckoning:
    length = length_ft(arguments.length, "Length", 1, 500)
    width = length_ft(arguments.width, "Width", 1, 500)
    overhang = length_ft(arguments.overhang, "Overhang", 0, 8)
    rake = length_ft(arguments.rake, "Rake", 0, 8)
    form = one_of(arguments.form, "Form", FORMS)
    pitch = parse_pitch(arguments.pitch)
    if form in ("hip", "cut up") and width > length:
        raise LeantoError("Width: a hip roof's width is its shorter side.", "Swap the two.")
    ends = overhang if form in ("hip", "cut up") else rake
    eave_ft = length + 2 * ends
    area = roof_area_sqft(eave_ft * (width + 2 * overhang), pitch)
    waste = roofing.WASTE_BY_FORM[form]
    figures = [
        Figure("Slope factor", f"{slope_factor(pitch):.4f}"),
        Figure("Area", f"{area:.0f} sq ft"),
        Figure(
            "Squares",
            f"{roofing.squares(area):.2f}, with {waste:.0%} waste "
            f"{roofing.squares(area, waste):.2f}",
        ),
    ]
    run = width if form == "shed" else width / 2
    figures.append(
        Figure("Rafter along the slope", format_ft_in(rafter_length_ft(run, pitch, overhang)))
    )
    if pitch >= roofing.LEAST_SHINGLE_SLOPE and form in ("gable", "shed"):
        figures += _shingles(area, pitch, waste, eave_ft, form)
    check = check_slope("asphalt-strip", pitch)
    return Reckoning(
        id="roof",
        title=f"{form.capitalize()} roof, {length:g} by {width:g} ft, {pitch:g} in 12",
        station_id="",
        verdict=COUNTED.replace("the building", "plan and pitch"),
        figures=tuple(figures),
        reasons=(
            f"Plan {eave_ft:g} x {width + 2 * overhang:g} ft x {slope_factor(pitch):.4f}.",
            f"Asphalt shingles at this pitch: {check.outcome.value}. {' '.join(check.reasons)}",
        ),
        sources=cited(
            (roofing.WASTE_SOURCE, roofing.BUNDLE_SOURCE, roofing.FELT_SOURCE),
            (roofing.DRIP_EDGE_SOURCE,),
            check.sources,
        ),
        confirm=CONFIRM_ROOF,
    )


def _shingles(area: float, pitch: float, waste: float, eave_ft: float, form: str) -> list[Figure]:
    slopes = 1 if form == "shed" else 2
    high_ft = area / (eave_ft * slopes)
    eaves_ft = eave_ft * 2
    rakes_ft = high_ft * slopes * 2
    ridge_ft = eave_ft if form == "gable" else 0.0
    starter = roofing.starter_bundles(eave_ft * slopes)
    extra = starter + roofing.cap_bundles(ridge_ft)
    layers = roofing.underlayment_layers(pitch)
    rolls = roofing.underlayment_rolls(area, layers, roofing.FELT_ROLL_SQFT["No. 15"])
    bundles = roofing.shingle_bundles(area, waste, extra_bundles=extra)
    return [
        Figure("Shingles", f"{bundles} bundles, starter and caps among them"),
        Figure("No. 15 felt", f"{counted(rolls, 'roll')} in {counted(layers, 'layer')}"),
        Figure("Drip edge", f"{roofing.drip_edge_pieces(eaves_ft, rakes_ft)} pieces of 10 ft"),
        Figure("Ridge", format_ft_in(ridge_ft)),
    ]
