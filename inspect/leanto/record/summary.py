"""A few facts of a record, read without its checklists and without opening it for writing."""

from __future__ import annotations

import contextlib
import sqlite3
from dataclasses import dataclass
from datetime import date, datetime
from pathlib import Path

from leanto.errors import JobError
from leanto.record import refusal
from leanto.record.connection import connect_for_reading, connect_untouched

_OBSERVED = frozenset(
    {
        *("answered", "measured", "zoned", "noted", "danger marked"),
        *("photo added", "photo removed", "air measured"),
    }
)
NOT_ASSESSED = frozenset({"moved to", "bids sent", "bid added", "bid answered", "bid withdrawn"})
"""Kinds of entries from which nothing follows for findings, scope and money."""
_QUERY = """
SELECT id, at, kind, CASE
    WHEN kind = 'answered' THEN json_extract(body, '$.station', '$.item', '$.number')
    WHEN kind IN ('undone', 'redone') THEN json_extract(body, '$.entry')
    WHEN kind = 'building set' THEN json_extract(body, '$.building.name')
    WHEN kind = 'imported' THEN json_extract(body, '$.walked_on')
END FROM entries ORDER BY id
"""


@dataclass(frozen=True, slots=True)
class Summary:
    name: str
    """The building's; empty while there is none."""
    walked_on: date | None
    answered: int
    """Items with a condition."""
    last_change: int
    """Id of the last entry that changes what is assessed."""


def summarize(record: Path) -> Summary:
    """The record in short; JobError when it cannot be read. Damage may pass unseen here."""
    log = record.with_name(record.name + "-wal")
    try:
        with contextlib.closing(
            connect_for_reading(record) if log.exists() else connect_untouched(record)
        ) as connection:
            return _summary(connection.execute(_QUERY).fetchall())
    except sqlite3.Error as error:
        raise refusal.not_opened(record, error) from error
    except (ValueError, TypeError, OSError) as error:
        raise JobError(f"{record} cannot be read ({error}).", "Open the job to see why.") from error


def _summary(rows: list[tuple[int, str, str, str | int | None]]) -> Summary:
    names: dict[int, str] = {}
    answers: dict[int, str] = {}
    """Station, item and number of each, as one text."""
    fixed: list[int] = []
    kept: list[int] = []
    undone: list[int] = []
    imported_on: date | None = None
    observed_at = ""
    last_change = 0
    for id_, at, kind, fact in rows:
        last_change = last_change if kind in NOT_ASSESSED else id_
        match kind:
            case "moved to" | "units set":
                continue
            case "undone" | "redone":
                source, onto = (kept, undone) if kind == "undone" else (undone, kept)
                if source and source[-1] == fact:
                    onto.append(source.pop())
                continue
            case "imported":
                fixed += kept
                kept.clear()
                if isinstance(fact, str):
                    imported_on, observed_at = date.fromisoformat(fact), ""
            case "building set" if not names:
                names[id_] = str(fact)
                fixed.append(id_)
            case _:
                kept.append(id_)
                if kind == "building set":
                    names[id_] = str(fact)
                elif kind == "answered":
                    answers[id_] = str(fact)
        undone.clear()
        if kind in _OBSERVED:
            observed_at = at
    live = [*fixed, *kept]
    last_building = max((id_ for id_ in live if id_ in names), default=None)
    return Summary(
        name="" if last_building is None else names[last_building],
        walked_on=datetime.fromisoformat(observed_at).astimezone().date()
        if observed_at
        else imported_on,
        answered=len({answers[id_] for id_ in live if id_ in answers}),
        last_change=last_change,
    )
