"""Short ids: what a bidder sees of a line's identity, and how it leads back."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from bid_forms import ALLOWANCES, ALTERNATES, ASKS, LINES, a_form

from leanto.bids.short_id import short_id, short_ids, shown_field, with_full_ids

STRIP = LINES[0].item_id


def test_every_line_has_a_short_id_of_its_own_and_it_leads_back() -> None:
    form = a_form()

    found = short_ids(form)

    assert len(found) == len(LINES) + len(ASKS) + len(ALTERNATES) + len(ALLOWANCES)
    assert all(re.fullmatch(r"[UAS]?[0-9]+-[b-z]{4}", short) for short in found)
    for short, (kind, id_) in found.items():
        part = "amount" if kind == "line" else kind
        assert with_full_ids({f"amount|{short}": "5"}, form) == {f"{part}|{id_}": "5"}


def test_a_line_is_found_by_its_letters_when_its_number_is_another_one_now() -> None:
    form = a_form()
    short = short_id(form, "line", STRIP)
    moved = replace(form, lines=tuple(replace(one, line=one.line + 7) for one in form.lines))

    assert with_full_ids({f"unit|{short}": "5"}, moved) == {f"unit|{STRIP}": "5"}


@pytest.mark.parametrize(
    ("field", "full"),
    [
        ("unit|1", f"unit|{STRIP}"),
        ("amount|1#2", f"amount|{STRIP}#2"),
        (f"unit|{STRIP}", f"unit|{STRIP}"),
        ("askunit|1", f"askunit|{ASKS[0].id}"),
        ("amount|U2", f"askunit|{ASKS[1].id}"),
        ("alt|A2", f"alt|{ALTERNATES[1].id}"),
        ("amount|s1", f"allowance|{ALLOWANCES[0].id}"),
        # nothing that the form has: left as it is, and asked about later
        ("unit|99", "unit|99"),
        ("unit|1-zzzz", "unit|1-zzzz"),
        ("unit|some-work@main", "unit|some-work@main"),
        ("bidder", "bidder"),
        ("added1|text", "added1|text"),
    ],
)
def test_numbers_alone_are_those_of_the_form(field: str, full: str) -> None:
    assert with_full_ids({field: "x"}, a_form()) == {full: "x"}


@pytest.mark.parametrize(
    ("field", "shown"),
    [
        (f"unit|{STRIP}", "unit|1"),
        (f"amount|{STRIP}#2", "amount|1#2"),
        (f"askunit|{ASKS[1].id}", "askunit|U2"),
        (f"alt|{ALTERNATES[0].id}", "alt|A1"),
        ("unit|gone@main", "unit|gone@main"),
        ("total", "total"),
    ],
)
def test_a_field_is_shown_by_its_number_and_answered_by_it(field: str, shown: str) -> None:
    form = a_form()

    assert shown_field(field, form) == shown
    assert with_full_ids({shown: "x"}, form) == {field: "x"}
