"""The file with invitation and conditions: the shipped one, and what is refused."""

from __future__ import annotations

from decimal import Decimal

import pytest

from leanto.bids.bidding import Bidding
from leanto.errors import InputProblems
from leanto.job.bidding import shipped_bidding
from leanto.library import read_library
from leanto.places import checklists_dir
from leanto.yaml_input import parse_model, read_model

SMALL = """
instructions: [Look first.]
caution: No contract.
conditions:
  - id: permits
    title: Permits
    points:
      - {use: true, text: The contractor takes them out.}
      - {use: false, text: The owner takes them out.}
"""


def test_the_shipped_file_covers_what_is_to_be_settled_and_leaves_the_invitation_open() -> None:
    shipped = read_model(checklists_dir() / "bidding.yaml", Bidding)

    assert {condition.id for condition in shipped.conditions} >= {
        "permits",
        "license",
        "insurance",
        "payment",
        "liens",
        "changes",
        "hazards",
        "protection",
        "warranty",
    }
    assert all(condition.used for condition in shipped.conditions)
    assert set(shipped.blanks) == set(type(shipped.invitation).model_fields)
    assert "no contract and no legal advice" in shipped.caution
    assert shipped.stated == ()


def test_the_unit_prices_that_are_always_asked_for_are_works_of_the_catalog() -> None:
    shipped, works = shipped_bidding(), read_library().works

    assert set(shipped.often_found) <= set(works)
    assert {works[id_].unit.label for id_ in shipped.often_found} >= {"each", "lin ft", "sheet"}
    assert shipped.hours


def test_only_the_points_in_use_are_sent() -> None:
    bidding = parse_model(SMALL, Bidding, "mine.yaml")

    assert bidding.conditions[0].used == ("The contractor takes them out.",)


def test_stated_sums_are_exact() -> None:
    text = SMALL + "allowances: [{id: lights, title: Light fittings, amount_usd: 600.10}]"

    (stated,) = parse_model(text, Bidding, "mine.yaml").stated

    assert stated.amount == Decimal("600.10")


@pytest.mark.parametrize(
    "extra",
    [
        "allowances: [{id: lights, title: Light fittings, amount_usd: 0}]",
        "allowances: [{id: lights, title: Light fittings, amount_usd: -5}]",
        "allowances: [{id: lights, title: Light fittings, amount_usd: 1.005}]",
        "allowances: [{id: lights, title: Light fittings, amount_usd: many}]",
        "allowances: [{id: a1, title: One, amount_usd: 1}, {id: a1, title: Two, amount_usd: 2}]",
        "invitation: {telephone: 555}",
        "exclusions: [x]",
    ],
)
def test_faults_are_named(extra: str) -> None:
    with pytest.raises(InputProblems):
        parse_model(SMALL + extra, Bidding, "mine.yaml")
