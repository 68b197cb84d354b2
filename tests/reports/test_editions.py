"""The editions of codes that a report names."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from leanto.reckon.model import Reckoning
from leanto.reports.blocks import Facts
from leanto.reports.contents.editions import edition_blocks


@pytest.mark.parametrize(
    ("source", "row"),
    [
        (
            "NFPA 70 (National Electrical Code), 2020, Table 250.122",
            ("NFPA 70 (National Electrical Code)", "2020"),
        ),
        (
            "International Residential Code, 2018, Table R301.5",
            ("International Residential Code", "2018"),
        ),
        # A section is no year.
        ("International Building Code, 1507.4, trade page", None),
        ("Common practice (common practice, no source)", None),
    ],
)
def test_a_source_gives_its_edition(small: Any, source: str, row: tuple[str, str] | None) -> None:
    one = Reckoning("a@b", "A check", "b", "passes by the table", sources=(source,))
    blocks = edition_blocks(replace(small, reckonings=(one,)))
    facts = [block.pairs for block in blocks if isinstance(block, Facts)]
    assert facts == ([(row,)] if row else [])
