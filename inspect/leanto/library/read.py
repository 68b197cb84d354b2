"""Reads every data file, lays folders over each other and cross-checks the whole."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from leanto.checklist.model import (
    CautionFile,
    Checklist,
    Item,
    MeasureFile,
    Section,
)
from leanto.cost.feed_materials import FeedMaterials
from leanto.cost.price import Factors, PriceFile
from leanto.decision.hidden import HiddenFile
from leanto.errors import InputProblems, Problem
from leanto.library.checks import cross_check
from leanto.library.folder import DataFolder, Reader
from leanto.library.model import Library
from leanto.library.own_tables import PATTERN, own_tables
from leanto.library.parts import Parts
from leanto.library.placed import Placed, laid_over
from leanto.places import checklists_dir
from leanto.rules.model import RuleFile
from leanto.scope.work import WorkFile

_FACTORS = "prices/factors.yaml"
_FEED_MATERIALS = "prices/feed-materials.yaml"
_CAUTIONS = "cautions.yaml"
_HIDDEN = "hidden.yaml"
_VERSIONED = {
    "checklists": ("walk/*.yaml", "measures/*.yaml", _CAUTIONS),
    "rules": ("rules/*.yaml",),
    "work": ("work/*.yaml",),
    "prices": ("prices/*.yaml",),
    "hidden": (_HIDDEN,),
    "tables": (PATTERN,),
}


def read_library(folders: Sequence[Path] = (), *, shipped: Path | None = None) -> Library:
    """The shipped data with each folder laid over it by id; ``shipped`` stands in for it.

    Raises InputProblems with every problem of every file.
    """
    library, problems = _read(folders, shipped)
    if library is None:
        raise InputProblems(problems)
    return library


def library_problems(folders: Sequence[Path] = (), *, shipped: Path | None = None) -> list[Problem]:
    """Every problem of every file; empty when the library can be used."""
    return _read(folders, shipped)[1]


def library_versions(folders: Sequence[Path] = ()) -> dict[str, str]:
    """Content hash by kind of file, as in ``Library.versions``, without reading what they say."""
    return _versions(Reader(_data_folders(folders, checklists_dir())))


def _versions(reader: Reader) -> dict[str, str]:
    return {kind: reader.version(*patterns) for kind, patterns in _VERSIONED.items()}


def _data_folders(folders: Sequence[Path], first: Path) -> list[DataFolder]:
    return [DataFolder(first, "checklists"), *(DataFolder(path, str(path)) for path in folders)]


def _read(folders: Sequence[Path], shipped: Path | None) -> tuple[Library | None, list[Problem]]:
    first = checklists_dir() if shipped is None else shipped
    reader = Reader(_data_folders(folders, first))
    factors = reader.last(_FACTORS, Factors)
    feed_materials = reader.last(_FEED_MATERIALS, FeedMaterials, needed=False)
    tables = own_tables(reader)
    sections, parts = _parts(reader)
    checklist = Checklist(
        sections=sections,
        measures=tuple(entry.value for entry in parts.measures.values()),
        cautions=tuple(entry.value for entry in parts.cautions.values()),
    )
    rules, found = cross_check(parts, checklist)
    problems = [*reader.problems, *reader.misplaced(), *found]
    if problems or parts.hidden is None or factors is None:
        return None, _in_file_order(problems)
    library = Library(
        checklist=checklist,
        rules=rules,
        works={work_id: entry.value for work_id, entry in parts.works.items()},
        prices={work_id: entry.value for work_id, entry in parts.prices.items()},
        factors=factors.value,
        feed_materials=feed_materials.value if feed_materials else None,
        hidden=parts.hidden.value,
        tables=tables,
        versions=_versions(reader),
    )
    return library, []


def _parts(reader: Reader) -> tuple[tuple[Section, ...], Parts]:
    """Every entry by id, later folders laid over earlier ones."""
    sections, items = _walk(reader)
    measures = reader.layers("measures/*.yaml", MeasureFile, lambda f: f.measures, "measures")
    cautions = reader.layers(_CAUTIONS, CautionFile, lambda f: f.cautions, "cautions")
    rules = reader.layers("rules/*.yaml", RuleFile, lambda f: f.rules, "rules")
    works = reader.layers("work/*.yaml", WorkFile, lambda f: f.work, "work")
    own = (_FACTORS, _FEED_MATERIALS)
    prices = reader.layers("prices/*.yaml", PriceFile, lambda f: f.prices, "prices", own)
    hidden = reader.last(_HIDDEN, HiddenFile)
    problems = reader.problems
    return sections, Parts(
        items=items,
        measures=laid_over(measures, lambda measure: measure.id, "measures", problems),
        cautions=laid_over(cautions, lambda caution: caution.id, "cautions", problems),
        rules=laid_over(rules, lambda rule: rule.id, "rules", problems),
        works=laid_over(works, lambda work: work.id, "works", problems),
        prices=laid_over(prices, lambda price: price.work, "prices", problems),
        hidden=hidden,
        unread=frozenset(reader.unread),
    )


def _walk(reader: Reader) -> tuple[tuple[Section, ...], dict[str, Placed[Item]]]:
    """The sections in order and their items by id.

    An item of a later folder takes the place of the one with its id, in the section where that
    one is; a new one goes to the end of the section that names it.
    """
    files = reader.whole("walk/*.yaml", Section)
    placed = [
        [
            Placed(item, section.lines, ("items", index))
            for section in layer
            for index, item in enumerate(section.value.items)
        ]
        for layer in files
    ]
    items = laid_over(placed, lambda item: item.id, "items", reader.problems)
    heads = laid_over(files, lambda section: section.id, "sections", reader.problems)
    home: dict[str, str] = {}
    for layer in files:
        for section in layer:
            for item in section.value.items:
                home.setdefault(item.id, section.value.id)
    sections: list[Section] = []
    for section_id, head in heads.items():
        own = tuple(entry.value for item_id, entry in items.items() if home[item_id] == section_id)
        if own:
            sections.append(head.value.model_copy(update={"items": own}))
    ordered = sorted(sections, key=lambda section: (section.order, section.id))
    return tuple(ordered), items


def _in_file_order(problems: Sequence[Problem]) -> list[Problem]:
    return sorted(dict.fromkeys(problems), key=lambda problem: (problem.file, problem.line))
