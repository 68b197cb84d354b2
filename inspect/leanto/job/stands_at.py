"""The file and line where a rule, an item or a price stands, to be looked up and edited there."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path
from typing import Any, Literal

from leanto.errors import InputProblems
from leanto.places import JobPlaces, checklists_dir
from leanto.yaml_input.document import read_document

Kind = Literal["rules", "prices", "walk"]
_ENTRIES: dict[Kind, tuple[str, str]] = {
    "rules": ("rules", "id"),
    "prices": ("prices", "work"),
    "walk": ("items", "id"),
}
"""The key that holds the entries of such a file, and the one that names each of them."""


def stands_at(kind: Kind, name: str, places: JobPlaces) -> str:
    """Such as ``checklists/rules/roof.yaml:120``; the job's own file comes before the shipped one.

    Empty when the entry stands nowhere: the files were changed since they were read.
    """
    for folder, shown in (
        (places.checklists, str(places.checklists)),
        (checklists_dir(), "checklists"),
    ):
        for path in sorted((folder / kind).glob("*.yaml")):
            line = _lines(path, path.stat().st_mtime_ns, kind).get(name)
            if line:
                return f"{shown}/{kind}/{path.name}:{line}"
    return ""


@lru_cache(maxsize=200)
def _lines(path: Path, changed_ns: int, kind: Kind) -> Mapping[str, int]:
    """The line of each entry of the file as it was at ``changed_ns``; none of a faulty one."""
    key, field = _ENTRIES[kind]
    try:
        document = read_document(path.read_text("utf-8"), path.name)
    except (OSError, UnicodeDecodeError, InputProblems):
        return {}
    held: Any = document.data.get(key) if isinstance(document.data, dict) else None
    return {
        str(entry[field]): document.lines.at(key, at)
        for at, entry in enumerate(held if isinstance(held, list) else ())
        if isinstance(entry, dict) and field in entry
    }
