"""Hole sizes, signs and clearances against the Wood Handbook, extension texts and the code."""

from __future__ import annotations

import pytest

from leanto.trade.outcome import Outcome
from leanto.trade.pest_table import HoleShape
from leanto.trade.pests import check_clearance, identify_pest, lets_in


def kinds(*signs: str, hole_in: float | None = None, shape: HoleShape | None = None) -> list[str]:
    return [match.kind for match in identify_pest(set(signs), hole_in, shape)]


# Wood Handbook, chapter 14, Table 14-2: hole sizes and dust. Seen (the weevil's name from memory).
@pytest.mark.published("Wood Handbook, Table 14-2", "seen")
@pytest.mark.parametrize(
    ("sign", "low_in", "high_in", "kind"),
    [
        ("flour-dust", 1 / 32, 1 / 16, "lyctid-beetle"),
        ("gritty-dust", 1 / 16, 1 / 8, "anobiid-beetle"),
        ("packed-dust", 3 / 32, 9 / 32, "bostrichid-beetle"),
        ("rotten-wood", 1 / 16, 1 / 12, "wood-weevil"),
    ],
)
def test_beetles_by_hole_and_dust(sign: str, low_in: float, high_in: float, kind: str) -> None:
    assert kinds(sign, hole_in=low_in, shape="round")[0] == kind
    assert kinds(sign, hole_in=high_in, shape="round")[0] == kind
    assert kind not in kinds(sign, hole_in=low_in - 0.01, shape="round")
    assert kind not in kinds(sign, hole_in=high_in + 0.01, shape="round")


# Forest pests of Georgia: old house borer, oval 1/4 to 3/8 in. Seen.
# How-to article on carpenter bees: round 3/8 to 1/2 in. Seen.
@pytest.mark.published("Extension and public health pages on pests", "seen")
@pytest.mark.parametrize(
    ("hole_in", "shape", "kind"),
    [
        (1 / 4, "oval", "old-house-borer"),
        (3 / 8, "oval", "old-house-borer"),
        (3 / 8, "round", "carpenter-bee"),
        (1 / 2, "round", "carpenter-bee"),
    ],
)
def test_large_holes_by_shape(hole_in: float, shape: HoleShape, kind: str) -> None:
    assert kinds(hole_in=hole_in, shape=shape) == [kind]


@pytest.mark.published("Extension and public health pages on pests", "seen")
@pytest.mark.parametrize(
    ("signs", "kind"),
    [
        # Extension text on subterranean termites. Seen.
        (("soil-tubes",), "subterranean-termite"),
        (("soil-in-galleries", "galleries-along-grain"), "subterranean-termite"),
        # How-to article on termite signs: six-sided pellets. Seen.
        (("six-sided-pellets",), "drywood-termite"),
        # Inspection page: polished galleries without soil. Seen.
        (("clean-galleries",), "carpenter-ant"),
        # How-to article on bat droppings: they crumble. Seen.
        (("crumbling-droppings",), "bat"),
    ],
)
def test_telling_signs(signs: tuple[str, ...], kind: str) -> None:
    assert kinds(*signs) == [kind]


# Public health page on droppings: mouse 1/8 to 1/4 in., rat 1/2 to 1 in. Seen.
@pytest.mark.published("Extension and public health pages on pests", "seen")
@pytest.mark.parametrize(
    ("length_in", "kind"), [(1 / 8, "mouse"), (1 / 4, "mouse"), (1 / 2, "rat"), (1, "rat")]
)
def test_droppings_by_length(length_in: float, kind: str) -> None:
    found = identify_pest(set(), dropping_in=length_in)
    assert [match.kind for match in found] == [kind]


# International Residential Code R317.1 and R317.1.4. Seen.
@pytest.mark.published("International Residential Code R317.1", "seen")
@pytest.mark.parametrize(
    ("place", "least_in"),
    [
        ("siding-to-soil", 6),
        ("siding-to-slab", 2),
        ("sill-to-soil", 8),
        ("joist-to-soil", 18),
        ("girder-to-soil", 12),
        ("column-to-soil", 8),
        ("column-base-on-slab", 1),
        ("column-base-on-soil", 6),
        ("girder-end-air", 0.5),
    ],
)
def test_clearances(place: str, least_in: float) -> None:
    assert check_clearance(place, least_in).outcome is Outcome.PASSES
    assert check_clearance(place, least_in - 0.1).outcome is Outcome.FAILS


# CDC, How to Seal Up to Prevent Rodent Infestations, quoted on a web page: mouse 1/4 in. Seen.
# Rat 1/2 in.: from memory.
@pytest.mark.published("CDC rodent guidance", "seen")
@pytest.mark.parametrize(
    ("gap_in", "animals"),
    [
        (0.2, ()),
        (0.25, ("mouse",)),
        pytest.param(0.49, ("mouse",), marks=pytest.mark.row("from memory")),
        pytest.param(0.5, ("mouse", "rat"), marks=pytest.mark.row("from memory")),
    ],
)
def test_gaps_that_let_rodents_in(gap_in: float, animals: tuple[str, ...]) -> None:
    assert lets_in(gap_in) == animals
