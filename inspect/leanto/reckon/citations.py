"""Citations taken out of sentences, so that each source stands once below them."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from leanto.source import Source
from leanto.trade.adjustment import DURATION_SOURCE
from leanto.trade.ceiling_check import BRITTLE_SOURCE
from leanto.trade.citation import CitedTable
from leanto.trade.design_values import design_table
from leanto.trade.floor_check import PLASTIC_SOURCE
from leanto.trade.loads import load_table
from leanto.trade.section_remedy import (
    BRASH_SOURCE,
    DAMAGE_SOURCE,
    ENGINEER_SOURCE,
    FULL_LENGTH_SOURCE,
    KEEP_SOURCE,
    OVERLAP_SOURCE,
)
from leanto.trade.span import SPAN_SOURCE

_BRACKETED: Final = re.compile(r" \(((?:[^()]|\([^()]*\))*)\)")


def without_citations(sentences: Iterable[str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """(the sentences without the citations in brackets, those citations each once)."""
    titles = _titles()
    found: dict[str, None] = {}

    def taken(match: re.Match[str]) -> str:
        if not match[1].startswith(titles):
            return match[0]
        found[match[1]] = None
        return ""

    bare = tuple(_BRACKETED.sub(taken, sentence) for sentence in sentences)
    return bare, tuple(found)


def _titles() -> tuple[str, ...]:
    """The titles that the span and section checks cite."""
    tables: tuple[CitedTable, ...] = (design_table(), load_table())
    sources: list[Source] = [source for table in tables for source in table.sources.values()]
    sources += [
        BRASH_SOURCE,
        BRITTLE_SOURCE,
        DAMAGE_SOURCE,
        DURATION_SOURCE,
        ENGINEER_SOURCE,
        FULL_LENGTH_SOURCE,
        KEEP_SOURCE,
        OVERLAP_SOURCE,
        PLASTIC_SOURCE,
        SPAN_SOURCE,
    ]
    return tuple({source.title for source in sources})
