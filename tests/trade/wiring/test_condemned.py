"""Old wiring seen from the floor: complete rows, and nothing that asks for a hand on a wire."""

from __future__ import annotations

import re

import pytest
from pydantic import ValidationError

from leanto.trade.wiring.condemned import OldWiring, cautions, condemned_table, old_wiring
from leanto.trade.wiring.confirm import CONFIRM

ROWS = condemned_table().rows
TOUCHING = re.compile(
    r"\b(open|remove|unscrew|pull|lift|touch|test|measure|probe|dig|reset)\b", re.IGNORECASE
)
# Words of the pattern that name a state of the thing, and ask nothing of the walker.
STATES = ("an open box", "an open slot", "stands open", "no test and reset")


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.kind)
def test_looking_asks_for_no_touch(row: OldWiring) -> None:
    look = row.look.lower()
    for state in STATES:
        look = look.replace(state, "")
    asked = TOUCHING.findall(
        look.replace("known only from a test report", "").replace("an electrician's test", "")
    )
    assert asked == []


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.kind)
def test_every_kind_names_reason_advice_and_who_acts(row: OldWiring) -> None:
    assert row.reason.endswith(".")
    assert row.advice.endswith(".")
    assert row.confirm == CONFIRM
    assert {"electrician", "utility"} & set(row.who)
    assert " safe" not in f" {row.reason} {row.advice}".lower()


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.kind)
def test_a_danger_is_for_now(row: OldWiring) -> None:
    if row.is_danger:
        assert row.urgency == "now"
    if row.danger_if_worse:
        assert row.urgency_if_worse == "now"


@pytest.mark.parametrize(
    ("kind", "condition_seen", "condemned"),
    [
        ("open splice", None, True),
        ("cord used as wiring", False, True),
        ("knob and tube", True, True),
        ("knob and tube", False, None),
        ("knob and tube", None, None),
        ("no ground wire", True, None),
    ],
)
def test_what_the_look_alone_decides(
    kind: str, condition_seen: bool | None, condemned: bool | None
) -> None:
    assert condemned is old_wiring(kind).is_condemned(condition_seen)


def test_unknown_kind_is_refused() -> None:
    with pytest.raises(ValueError, match="no kind of old wiring"):
        old_wiring("bell wire")


def test_cautions_begin_with_looking_only_and_cover_digging_and_lines() -> None:
    shown = cautions()
    assert shown[0].startswith("Look and photograph only.")
    joined = " ".join(shown)
    for word in ("811", "10 ft", "asbestos", "utility", "Permit"):
        assert word in joined


def test_a_condition_stands_only_where_it_decides() -> None:
    row = old_wiring("open splice").model_dump()
    with pytest.raises(ValidationError, match="condition stands"):
        OldWiring.model_validate({**row, "condition": "it is wet"})
