"""Join the records of two laptops that walked one building."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator, Mapping
from pathlib import Path
from typing import TYPE_CHECKING, cast

from leanto.errors import LeantoError

if TYPE_CHECKING:
    from leanto.job.conflict_words import ConflictWords
    from leanto.job.merging import MergedJob, Sides
    from leanto.record.conflict import Choice, Conflict

HELP = "join two jobs that two people walked into a new one"
_WHAT = {"a": "the first job's", "b": "the second job's", "both": "both", "later": "the later one"}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("a", type=Path, metavar="A", help="one job's folder")
    parser.add_argument("b", type=Path, metavar="B", help="the other one's")
    where = parser.add_mutually_exclusive_group()
    where.add_argument(
        "--to", type=Path, metavar="FOLDER", help="a new folder; default: A-merged, beside A"
    )
    where.add_argument(
        "--into-first", action="store_true", help="put the result in the place of A instead"
    )
    parser.add_argument(
        "--keep",
        choices=tuple(_WHAT),
        help="settle everything that both say differently alike; without it you are asked",
    )
    parser.add_argument(
        "--settle",
        action="append",
        default=[],
        metavar="N=a",
        help="settle number N of the list: a, b, both or later; may be given again",
    )
    parser.add_argument(
        "--list", action="store_true", help="only list what both say differently; write nothing"
    )


def run(arguments: argparse.Namespace) -> int:
    from leanto.job.conflict_words import ConflictWords
    from leanto.job.merging import merge_into_first, merge_sides, read_sides
    from leanto.job.who import user_name
    from leanto.library import read_library
    from leanto.quantities import showing

    sides = read_sides(arguments.a, arguments.b)
    with showing(sides.walk_a.units):
        words = ConflictWords(sides, read_library(()))
        if arguments.list:
            _list(sides, words)
            return 0
        given = _given(arguments.settle, len(sides.conflicts) + len(sides.files))
        conflicts, files = _settled(sides, words, given, arguments.keep)
    if arguments.into_first:
        made = merge_into_first(sides, conflicts, files, who=user_name())
    else:
        first = arguments.a.resolve()
        folder = arguments.to or first.with_name(f"{first.name}-merged")
        made = merge_sides(sides, conflicts, files, folder, who=user_name())
    _tell(made, sides)
    return 0


def _list(sides: Sides, words: ConflictWords) -> None:
    if not sides.conflicts and not sides.files:
        print("Nothing is said differently: every entry of both can be kept as it is.")
        return
    for number, line in enumerate(_lines(sides, words), start=1):
        print(f"{number}. {line}")


def _lines(sides: Sides, words: ConflictWords) -> Iterator[str]:
    for conflict in sides.conflicts:
        sayings = "".join(
            f"\n   {side}: {words.said(conflict, side)}"
            + (" (later)" if conflict.later == side else "")
            for side in ("a", "b")
        )
        yield f"{words.about(conflict)}{sayings}"
    for name in sides.files:
        yield f"The file {name} differs."


def _given(settle: list[str], count: int) -> dict[int, str]:
    """What was said on the command line, by number."""
    given: dict[int, str] = {}
    for said in settle:
        number, equals, word = said.partition("=")
        if not equals or not number.isdecimal() or word not in _WHAT:
            raise LeantoError(f"--settle {said} is not understood.", "Write it like --settle 2=b.")
        if not 1 <= int(number) <= count:
            raise LeantoError(f"There is no number {number} to settle.", f"There are {count}.")
        given[int(number)] = word
    return given


def _settled(
    sides: Sides, words: ConflictWords, given: Mapping[int, str], keep: str | None
) -> tuple[dict[Conflict, Choice], dict[str, Choice]]:
    """A choice for each conflict and each file; asked for where it was not given."""
    lines = list(_lines(sides, words))
    conflicts: dict[Conflict, Choice] = {}
    files: dict[str, Choice] = {}
    open_ones = [n for n in range(1, len(lines) + 1) if n not in given and keep is None]
    if open_ones and not sys.stdin.isatty():
        _list(sides, words)
        raise LeantoError(
            f"Not settled yet: {', '.join(map(str, open_ones))}. Nothing was written.",
            "Say --settle 1=a and so on, or --keep later for all.",
        )
    for number, line in enumerate(lines, start=1):
        if number <= len(sides.conflicts):
            conflict = sides.conflicts[number - 1]
            said = given.get(number) or keep or _asked(number, line, bool(conflict.both))
            conflicts[conflict] = _choice(number, said, conflict, asked=number in given)
        else:
            said = given.get(number) or keep or _asked(number, line, False)
            files[sides.files[number - 1 - len(sides.conflicts)]] = "b" if said == "b" else "a"
    return conflicts, files


def _choice(number: int, said: str, conflict: Conflict, *, asked: bool) -> Choice:
    """The later one where ``both`` was said of all, and both cannot be."""
    if said == "both" and not conflict.both:
        if asked:
            raise LeantoError(f"Of number {number} only one can be kept.", "Say a, b or later.")
        said = "later"
    return conflict.later if said == "later" else cast("Choice", said)


def _asked(number: int, line: str, may_keep_both: bool) -> str:
    words = ("a", "b", "both", "later") if may_keep_both else ("a", "b", "later")
    print(f"{number}. {line}")
    while True:
        try:
            said = input(f"   Keep {', '.join(words[:-1])} or {words[-1]}? ").strip().lower()
        except EOFError:
            raise LeantoError("Nothing was written.", "Start again, or use --settle.") from None
        if said in words:
            return said


def _tell(made: MergedJob, sides: Sides) -> None:
    print(f"Only in {sides.a.folder}: entries: {made.only_a}.")
    print(f"Only in {sides.b.folder}: entries: {made.only_b}.")
    settled = len(sides.conflicts) + len(sides.files)
    print(f"Said differently and settled: {settled}. What was not chosen stays in the record.")
    for line in made.lines:
        print(line)
    print(f"Merged into {made.folder}: entries: {made.entries}, photos: {made.photos}.")
    print(f"Next: leanto walk {made.folder}")
