"""Every source that a table or a computation names, for the page on the method."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path
from typing import Any

import yaml

import leanto
from leanto.source import Source

TABLES = Path(__file__).resolve().parent.parent / "checklists" / "tables"


def in_code() -> Iterator[Source]:
    """The sources that stand beside a constant, in every module that computes."""
    for module in pkgutil.walk_packages(leanto.__path__, "leanto."):
        if module.name.startswith(("leanto.trade", "leanto.reckon", "leanto.decision")):
            yield from (
                value
                for value in vars(import_module(module.name)).values()
                if isinstance(value, Source)
            )


def in_tables() -> Iterator[Source]:
    """The sources of the tables, in whatever block they stand."""
    for path in sorted(TABLES.rglob("*.yaml")):
        yield from _below(yaml.safe_load(path.read_text("utf-8")))


def _below(value: Any) -> Iterator[Source]:
    if isinstance(value, dict):
        if "title" in value and set(value) <= {"title", "edition", "place", "mark"}:
            yield Source(**{key: str(text) for key, text in value.items()})  # type: ignore[arg-type]
        else:
            for inner in value.values():
                yield from _below(inner)
    elif isinstance(value, list):
        for inner in value:
            yield from _below(inner)


def source_list() -> str:
    """One line a title: editions, places, and what is only from memory."""
    by_title: dict[str, list[Source]] = {}
    for source in dict.fromkeys([*in_code(), *in_tables()]):
        by_title.setdefault(source.title, []).append(source)
    lines = []
    for title in sorted(by_title, key=str.lower):
        places = sorted(
            {
                " ".join(filter(None, (one.edition, one.place)))
                + ("" if one.mark == "seen" else f" ({one.mark})")
                for one in by_title[title]
            }
        )
        said = "; ".join(place.strip() for place in places if place)
        lines.append(f"- **{title}**: {said}" if said else f"- **{title}**")
    return "\n".join(lines) + "\n"
