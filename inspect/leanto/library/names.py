"""Names in one data file that should stand in another, and do not."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TypeVar

from leanto.decision.hidden import HiddenFile
from leanto.errors import Problem
from leanto.library.parts import Parts
from leanto.library.placed import Placed
from leanto.rules.model import RESERVED_WORKS
from leanto.rules.syntax import nearest

T = TypeVar("T")
Path = tuple[str | int, ...]


def unknown_names(parts: Parts) -> Iterator[Problem]:
    """A Problem for each item, measure, caution, rule, work or hidden kind that is not there."""
    if parts.has_all("cautions.yaml"):
        yield from _unknown_cautions(parts)
    if parts.has_all("measures"):
        yield from _unknown_measures(parts)
    if parts.has_all("walk"):
        for rule in parts.rules.values():
            yield from _unknown(rule, "item", rule.value.items, parts.items, ("items",))
    if parts.has_all("rules"):
        yield from _unknown_rules(parts)
    if parts.has_all("work"):
        yield from _unknown_works(parts)
    if parts.hidden is not None:
        hidden = parts.hidden.value
        kinds = {kind.id for kind in hidden.kinds}
        for rule in parts.rules.values():
            if rule.value.hidden is not None:
                yield from _unknown(rule, "hidden kind", [rule.value.hidden], kinds, ("hidden",))


def _unknown_cautions(parts: Parts) -> Iterator[Problem]:
    for item in parts.items.values():
        yield from _unknown(item, "caution", item.value.caution, parts.cautions, ("caution",))
    for rule in parts.rules.values():
        yield from _unknown(rule, "caution", rule.value.caution, parts.cautions, ("caution",))
    for work in parts.works.values():
        yield from _unknown(work, "caution", work.value.caution, parts.cautions, ("caution",))


def _unknown_measures(parts: Parts) -> Iterator[Problem]:
    for item in parts.items.values():
        answers = item.value.answers
        named = {"sound": answers.sound, "worn": answers.worn, "failed": answers.failed}
        for condition, answer in named.items():
            path = ("answers", condition, "measures")
            yield from _unknown(item, "measure", answer.measures, parts.measures, path)


def _unknown_rules(parts: Parts) -> Iterator[Problem]:
    for rule in parts.rules.values():
        for index, search in enumerate(rule.value.causes):
            yield from _unknown(rule, "rule", search.rules, parts.rules, ("causes", index, "rules"))
        for index, of in enumerate(rule.value.replaces):
            yield from _unknown(rule, "rule", of.rules, parts.rules, ("replaces", index, "rules"))


def _unknown_works(parts: Parts) -> Iterator[Problem]:
    callable_works = {*parts.works, *RESERVED_WORKS}
    for rule in parts.rules.values():
        for index, call in enumerate(rule.value.work):
            yield from _unknown(rule, "work", [call.work], callable_works, ("work", index, "work"))
    for price in parts.prices.values():
        yield from _unknown(price, "work", [price.value.work], parts.works, ("work",))
    if parts.hidden is not None:
        for path, name in works_of(parts.hidden.value):
            yield from _unknown(parts.hidden, "work", [name], parts.works, path)


def works_of(hidden: HiddenFile) -> Iterator[tuple[Path, str]]:
    """Every work that the file names, with its path."""
    for index, of_lining in enumerate(hidden.linings):
        yield ("linings", index, "strip"), of_lining.strip
        yield ("linings", index, "patch"), of_lining.patch
        yield ("linings", index, "line"), of_lining.line
        yield ("linings", index, "finish"), of_lining.finish
    yield ("repair_open",), hidden.repair_open
    yield ("insulate_open",), hidden.insulate_open
    yield ("insulate_closed",), hidden.insulate_closed
    yield ("wire_open",), hidden.wire_open
    yield ("wire_closed",), hidden.wire_closed
    yield ("protect",), hidden.protect
    yield ("test_hole", "work"), hidden.test_hole.work


def _unknown(
    entry: Placed[T], what: str, names: Iterable[str], known: Iterable[str], path: Path
) -> Iterator[Problem]:
    at_hand = set(known)
    for name in names:
        if name not in at_hand:
            yield entry.problem(path, f"There is no {what} '{name}'.", nearest(name, at_hand))
