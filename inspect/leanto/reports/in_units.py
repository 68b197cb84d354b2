"""A report with the amounts in its sentences as the job shows them.

Numbers are printed in the right unit where they are printed; this is for the sentences around
them, which data files and computations write in feet and inches. What somebody typed (a note, a
reason, a name) is left as it was typed, wherever it stands.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass, replace
from datetime import date
from functools import cache
from typing import Any

from pydantic import BaseModel

from leanto.assessment import Assessment
from leanto.building.sketch import Sketch
from leanto.cost.price import Factors
from leanto.quantities import shown
from leanto.record.bid_entry import SentForm
from leanto.record.observation import Photo
from leanto.reports.blocks import Field, Report

_OURS = frozenset({"measures", "forms_sent", "award", "changes", "works"})
"""Parts of a walk whose texts are choices and titles of our own."""
_SOURCES = tuple(name for name in Factors.model_fields if name.endswith("_source"))
_LEFT = (Photo, Sketch, date)


def in_shown_units(report: Report, *typed: object) -> Report:
    """The report in the units shown here; ``typed`` holds, at any depth, what people typed."""
    display = shown()
    if not display.is_metric:
        return report
    kept = {text for source in typed for text in _texts(source) if display.words(text) != text}
    said = _sayer(display.words, kept)
    blocks = tuple(_said(block, said) for block in report.blocks)
    return replace(report, subtitle=said(report.subtitle), blocks=blocks)


def typed_for(assessment: Assessment) -> tuple[object, ...]:
    """Where the texts stand that people typed about this building, and those of sources."""
    library = assessment.library
    cited = (
        *(rule.rule.source for rule in library.rules),
        *(item.source for item in library.checklist.items()),
        *(caution.source for caution in library.checklist.cautions),
        *(price.source for price in library.prices.values()),
        *(getattr(library.factors, name) for name in _SOURCES),
        *(source for one in assessment.reckonings for source in one.sources),
    )
    return (assessment.building, assessment.walk, cited)


def _sayer(words: Callable[[str], str], kept: Iterable[str]) -> Callable[[str], str]:
    """Says everything in a text but the pieces that are kept."""
    longest_first = sorted(kept, key=len, reverse=True)
    if not longest_first:
        return words
    pieces = re.compile(f"({'|'.join(re.escape(text) for text in longest_first)})")

    def said(text: str) -> str:
        return "".join(
            piece if at % 2 else words(piece) for at, piece in enumerate(pieces.split(text))
        )

    return said


def _said(value: Any, said: Callable[[str], str]) -> Any:
    """The block, or part of one, with its texts said."""
    if type(value) is str:
        return said(value)
    if isinstance(value, tuple):
        return tuple(_said(one, said) for one in value)
    if isinstance(value, Field):
        return replace(value, label=said(value.label))
    if not is_dataclass(value) or isinstance(value, (*_LEFT, type)):
        return value
    changes = {}
    for name in _names(type(value)):
        before = getattr(value, name)
        after = _said(before, said)
        if after is not before:
            changes[name] = after
    return replace(value, **changes) if changes else value


@cache
def _names(kind: type) -> tuple[str, ...]:
    return tuple(one.name for one in fields(kind) if one.init)


def _texts(value: object) -> Iterator[str]:
    """Every text in the value that somebody typed."""
    if type(value) is str:
        yield value
        yield from (line for line in value.split("\n") if line != value)
    elif isinstance(value, SentForm | date):
        return
    elif isinstance(value, Mapping):
        for one in value.values():
            yield from _texts(one)
    elif isinstance(value, tuple | list):
        for one in value:
            yield from _texts(one)
    elif isinstance(value, BaseModel):
        for name in type(value).model_fields:
            if name not in _OURS:
                yield from _texts(getattr(value, name))
    elif is_dataclass(value) and not isinstance(value, type):
        for name in _names(type(value)):
            if name not in _OURS:
                yield from _texts(getattr(value, name))
