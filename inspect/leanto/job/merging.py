"""Two jobs that two people walked, joined into one. Neither of the two is written to."""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from leanto.errors import JobError
from leanto.job.bidding_text import NAME as BIDDING
from leanto.job.copying import copied_files, copied_photos
from leanto.job.folder import find_job, make_folder
from leanto.places import JobPlaces
from leanto.record.conflict import Choice, Conflict, conflicts, settled
from leanto.record.entry import BuildingSet, Entry
from leanto.record.fold import fold
from leanto.record.kept_file import keep_file
from leanto.record.merge import merged
from leanto.record.store import Store
from leanto.record.told import told
from leanto.record.walk import Walk


@dataclass(frozen=True, slots=True)
class Sides:
    """Both jobs as they were read, and what they say differently."""

    a: JobPlaces
    b: JobPlaces
    entries_a: tuple[Entry, ...]
    entries_b: tuple[Entry, ...]
    conflicts: tuple[Conflict, ...]
    files: tuple[str, ...]
    """The owner's own files that both have, and that differ."""

    @property
    def walk_a(self) -> Walk:
        return fold(self.entries_a)

    @property
    def walk_b(self) -> Walk:
        return fold(self.entries_b)


@dataclass(frozen=True, slots=True)
class MergedJob:
    folder: Path
    entries: int
    only_a: int
    """Entries of the first job that the second one had not."""
    only_b: int
    photos: int
    lines: tuple[str, ...]
    """What else the owner should know, a sentence each."""


def read_sides(a: Path, b: Path) -> Sides:
    """Both jobs, read from copies; JobError for one that cannot be read, or for two buildings."""
    first, second = find_job(a), find_job(b)
    if first.folder.resolve() == second.folder.resolve():
        raise JobError(f"{a} and {b} are the same job.", "Name the job of each laptop.")
    entries_a, entries_b = _entries(first), _entries(second)
    _refuse_strangers(first, second, entries_a, entries_b)
    return Sides(
        first,
        second,
        entries_a,
        entries_b,
        conflicts(entries_a, entries_b),
        tuple(_differing_files(first, second)),
    )


def merge_sides(
    sides: Sides,
    choices: Mapping[Conflict, Choice],
    files: Mapping[str, Choice],
    folder: Path,
    *,
    who: str,
    now: datetime | None = None,
) -> MergedJob:
    """Both in a new job: every entry of both, then those that settle what they say differently.

    ``choices`` has one for each conflict, ``files`` one for each file. Raises JobError when the
    folder is not new or empty.
    """
    entries = merged_entries(sides, choices, who, now or datetime.now(UTC))
    new = make_folder(folder)
    lines = list(_copy_files(sides, files, new))
    Store.create(new.record, entries).close()
    mine, theirs = told(sides.entries_a), told(sides.entries_b)
    return MergedJob(
        folder=new.folder,
        entries=len(entries),
        only_a=sum(len(mine[key].bodies) for key in mine.keys() - theirs.keys()),
        only_b=sum(len(theirs[key].bodies) for key in theirs.keys() - mine.keys()),
        photos=len(list(new.photos.glob("*.jpg"))),
        lines=tuple(lines),
    )


def merge_into_first(
    sides: Sides,
    choices: Mapping[Conflict, Choice],
    files: Mapping[str, Choice],
    *,
    who: str,
    now: datetime | None = None,
) -> MergedJob:
    """The same, in the place of the first job; its record before is kept in ``backups``.

    Raises JobError when that job is open elsewhere.
    """
    place = sides.a.folder.resolve()
    at = now or datetime.now(UTC)
    with tempfile.TemporaryDirectory(prefix=".merging-", dir=place.parent) as beside:
        made = merge_sides(sides, choices, files, Path(beside) / "job", who=who, now=at)
        new, old = JobPlaces(made.folder), JobPlaces(place)
        with Store.open(old.record) as store:
            if store.read_only:
                raise JobError(
                    f"{sides.a.folder} cannot be written to: {store.read_only_reason}",
                    "Close it there, or leave --into-first away.",
                )
            if store.entries() != sides.entries_a:
                raise JobError(f"{sides.a.folder} was added to meanwhile.", "Merge again.")
            if fault := store.back_up(old.backups, at):
                raise JobError(fault, "Free some space, then merge again.")
            copied_photos(new.photos, old.photos)
            for name in ("bids", "checklists"):
                copied_files(new.folder / name, old.folder / name, "**/*")
            copied_files(new.folder, old.folder, BIDDING)
        new.record.replace(old.record)
    return MergedJob(
        sides.a.folder, made.entries, made.only_a, made.only_b, made.photos, made.lines
    )


def merged_entries(
    sides: Sides, choices: Mapping[Conflict, Choice], who: str, now: datetime
) -> tuple[Entry, ...]:
    """Every entry of both in order of time, then what settles the conflicts."""
    both = merged(sides.entries_a, sides.entries_b)
    walk = fold(both)
    entries = list(both)
    at = max([now, *(entry.at for entry in both)])
    for conflict in sides.conflicts:
        bodies = settled(conflict, choices[conflict], sides.entries_a, sides.entries_b, walk)
        for body in bodies:
            entries.append(Entry(id=len(entries) + 1, at=at, who=who, body=body))
        if bodies:
            walk = fold(entries)
    return tuple(entries)


def _entries(places: JobPlaces) -> tuple[Entry, ...]:
    """The entries of a job, read from a copy: opening a record writes beside it."""
    with tempfile.TemporaryDirectory(prefix="leanto-") as beside:
        copy = Path(beside) / places.record.name
        for name in (places.record.name, f"{places.record.name}-wal"):
            source = places.folder / name
            if source.is_file() and not source.is_symlink():
                shutil.copyfile(source, Path(beside) / name)
        try:
            with Store.open(copy) as store:
                return store.entries()
        except JobError as error:
            what = error.what.replace(str(copy), str(places.record))
            raise JobError(
                what, f"Save what can be read: leanto recover {places.folder} NEW"
            ) from (error)


def _refuse_strangers(
    first: JobPlaces, second: JobPlaces, a: Sequence[Entry], b: Sequence[Entry]
) -> None:
    """JobError for the records of two buildings.

    Those of one share an entry, as copies do, or are of buildings with one name.
    """
    if told(a).keys() & told(b).keys():
        return
    names = [_names(entries) for entries in (a, b)]
    if all(names) and not names[0] & names[1]:
        mine, theirs = (next(iter(sorted(found))) for found in names)
        raise JobError(
            f"These are two buildings: {mine} in {first.folder}, {theirs} in {second.folder}.",
            "Merge two records of one building.",
        )


def _names(entries: Sequence[Entry]) -> set[str]:
    return {
        " ".join(entry.body.building.name.casefold().split())
        for entry in entries
        if isinstance(entry.body, BuildingSet)
    }


def _own_files(places: JobPlaces) -> dict[str, Path]:
    """The owner's own files of a job by their place in it; no links."""
    found = [
        *(sorted(places.checklists.rglob("*.yaml")) if places.checklists.is_dir() else ()),
        places.folder / BIDDING,
    ]
    return {
        path.relative_to(places.folder).as_posix(): path
        for path in found
        if path.is_file() and not path.is_symlink()
    }


def _differing_files(a: JobPlaces, b: JobPlaces) -> Iterator[str]:
    mine, theirs = _own_files(a), _own_files(b)
    for name in sorted(mine.keys() & theirs.keys()):
        if mine[name].read_bytes() != theirs[name].read_bytes():
            yield name


def _copy_files(sides: Sides, files: Mapping[str, Choice], new: JobPlaces) -> Iterator[str]:
    """Photos, returned bids and the owner's own files of both; of two, the other one beside it."""
    for places in (sides.a, sides.b):
        copied_photos(places.photos, new.photos)
        yield from copied_files(places.bids, new.bids, "*")
    mine, theirs = _own_files(sides.a), _own_files(sides.b)
    for name in sorted(mine.keys() | theirs.keys()):
        kept, other = mine.get(name), theirs.get(name)
        if files.get(name) == "b":
            kept, other = other, kept
        source = kept or other
        assert source is not None
        target = new.folder / name
        target.parent.mkdir(parents=True, exist_ok=True)
        keep_file(target, source.read_bytes())
        if name in files and other is not None:
            left = target.with_name(f"{target.name}.other")
            keep_file(left, other.read_bytes())
            yield f"The other {name} is kept as {left.name}; it is not read."
