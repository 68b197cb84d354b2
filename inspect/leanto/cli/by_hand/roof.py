"""Area, squares and bundles of a roof from its plan and pitch."""

from __future__ import annotations

import argparse

from leanto.cli.by_hand.typed import length_ft, length_in, number, one_of, words
from leanto.errors import LeantoError
from leanto.quantities import format_ft_in, parse_pitch
from leanto.reckon.model import CONFIRM_ROOF, COUNTED, Figure, Reckoning, cited
from leanto.reckon.take_off import counted
from leanto.trade import roofing
from leanto.trade.coverings import coverings_table
from leanto.trade.outcome import Check
from leanto.trade.roof_rules import check_recover, check_slope
from leanto.trade.slope import rafter_length_ft, roof_area_sqft, slope_factor
from leanto.trade.step_flashing import (
    CRICKET_SOURCE,
    STEP_SOURCE,
    check_cricket,
    flash_curb,
    step_pieces,
)

HELP = "area, squares, bundles, felt, edge metal and flashing of a roof from plan and pitch"
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
    parser.add_argument(
        "--covering", default="asphalt-strip", metavar="KIND", help="for its least pitch"
    )
    parser.add_argument("--layers", metavar="2", help="on it now: whether one more may go over")
    parser.add_argument("--exposure", default="5", metavar="5", help="of a course, inches")
    parser.add_argument("--wall", metavar="12", help="slope that runs up along a wall, feet")
    parser.add_argument("--valley", metavar="14", help="length of all valleys, feet")
    parser.add_argument("--flue", metavar="24x24", help="across by along the slope, inches")
    parser.add_argument("--skylight", metavar="24x48", help="across by along the slope, inches")


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
    figures += _joints(arguments)
    covering = one_of(arguments.covering, "Covering", words(coverings_table().coverings))
    check = check_slope(covering, pitch)
    over = _over(arguments, covering)
    return Reckoning(
        id="roof",
        title=f"{form.capitalize()} roof, {length:g} by {width:g} ft, {pitch:g} in 12",
        station_id="",
        verdict=COUNTED.replace("the building", "plan and pitch"),
        figures=tuple(figures),
        reasons=(
            f"Plan {eave_ft:g} x {width + 2 * overhang:g} ft x {slope_factor(pitch):.4f}.",
            f"Covering at this pitch: {check.outcome.value}. {' '.join(check.reasons)}",
            *(
                (f"One more layer over it: {over.outcome.value}. {' '.join(over.reasons)}",)
                if over
                else ()
            ),
        ),
        sources=cited(
            (roofing.WASTE_SOURCE, roofing.BUNDLE_SOURCE, roofing.FELT_SOURCE),
            (roofing.DRIP_EDGE_SOURCE, roofing.ACCESSORY_SOURCE, STEP_SOURCE, CRICKET_SOURCE),
            check.sources,
            over.sources if over else (),
        ),
        confirm=CONFIRM_ROOF,
    )


def _over(arguments: argparse.Namespace, covering: str) -> Check | None:
    """Whether a further layer may go over those that are there; None when none was named."""
    if arguments.layers is None:
        return None
    layers = round(number(arguments.layers, "Layers", 1, 10))
    return check_recover(covering, layers, None, None)


def _joints(arguments: argparse.Namespace) -> list[Figure]:
    """Flashing along walls, valleys, flues and skylights, as far as they were named."""
    exposure_in = length_in(arguments.exposure, "Exposure", 1, 24)
    figures = []
    if arguments.wall:
        along_ft = length_ft(arguments.wall, "Wall", 0.5, 200)
        count = step_pieces(along_ft, exposure_in)
        figures.append(
            Figure(
                "Step flashing", f"{counted(count, 'piece')}, one a course of {exposure_in:g} in."
            )
        )
    if arguments.valley:
        valley_ft = length_ft(arguments.valley, "Valley", 0.5, 500)
        rolls = roofing.valley_rolls(valley_ft)
        figures.append(
            Figure("Valley", f"{format_ft_in(valley_ft)}: {counted(rolls, 'roll')} of metal")
        )
    for name in ("flue", "skylight"):
        text = getattr(arguments, name)
        if text:
            across_in, along_in = _two(text, name.capitalize())
            curb = flash_curb(across_in, along_in, exposure_in)
            figures.append(
                Figure(
                    name.capitalize(),
                    f"{format_ft_in(curb.perimeter_ft)} of curb, "
                    f"{counted(curb.step_pieces, 'step flashing')}, apron and back of "
                    f"{format_ft_in(curb.apron_ft)}",
                )
            )
            if name == "flue":
                figures.append(Figure("Cricket", check_cricket(across_in).reason))
    return figures


def _two(text: str, what: str) -> tuple[float, float]:
    """Two lengths in inches, such as ``24x48``."""
    across, by, along = text.lower().partition("x")
    if not by:
        raise LeantoError(f"{what}: {text!r} is no pair of lengths.", "Write it like 24x48.")
    return length_in(across, what, 1, 240), length_in(along, what, 1, 240)


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
        Figure("Starter course", format_ft_in(eave_ft * slopes)),
        Figure("Shingles", f"{bundles} bundles, starter and caps among them"),
        Figure("No. 15 felt", f"{counted(rolls, 'roll')} in {counted(layers, 'layer')}"),
        Figure("Drip edge", f"{roofing.drip_edge_pieces(eaves_ft, rakes_ft)} pieces of 10 ft"),
        Figure("Ridge", format_ft_in(ridge_ft)),
    ]
