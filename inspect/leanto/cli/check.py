"""Check checklists, rules, work and prices."""

from __future__ import annotations

import argparse
import shutil
import textwrap
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from leanto.errors import EXIT_USER_ERROR

if TYPE_CHECKING:
    from leanto.library import Notes

HELP = "check checklists, rules and prices; names file, line and field of every fault"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder",
        nargs="?",
        type=Path,
        metavar="FOLDER",
        help="a folder of your own checklists, laid over the shipped ones",
    )
    parser.add_argument(
        "--list", action="store_true", help="print sections, items, rules, works and prices"
    )


def run(arguments: argparse.Namespace) -> int:
    from leanto.cli.check_list import list_lines
    from leanto.job.bidding import shipped_bidding
    from leanto.library import library_problems, notes, read_library

    folders = () if arguments.folder is None else (arguments.folder,)
    problems = library_problems(folders)
    for problem in problems:
        print(problem)
    if problems:
        count = len(problems)
        print(f"{count} {'problem' if count == 1 else 'problems'} to put right.")
        return EXIT_USER_ERROR
    library, asked = read_library(folders), shipped_bidding().often_found
    print(
        f"No problems: {len(library.checklist.sections)} sections, "
        f"{len(library.checklist.items())} items, {len(library.rules)} rules, "
        f"{len(library.works)} repair items with prices."
    )
    columns = shutil.get_terminal_size((100, 24)).columns
    for note in _in_words(notes(library, asked), len(library.prices), named=arguments.list):
        print(textwrap.fill(note, columns, break_on_hyphens=False))
    if arguments.list:
        for line in list_lines(library, columns):
            print(line)
    return 0


def _in_words(found: Notes, prices: int, *, named: bool) -> Iterator[str]:
    """The notes, a line each; nothing for what needs none.

    Most prices are planning figures, so those without a source are named only when asked for.
    """
    if found.without_source:
        which = f": {', '.join(found.without_source)}" if named else "; --list names them"
        share = f"{len(found.without_source)} of {prices}"
        hours = f"{len(found.hours_without_source)} of them for the hours either"
        yield f"Note: {share} prices have no source in some part, {hours}{which}."
    if found.without_range:
        share = f"{len(found.without_range)} of {prices} prices have no range"
        yield f"Note: {share} (low = likely = high): {', '.join(found.without_range)}."
    if found.unused:
        count = len(found.unused)
        said = "1 repair item is" if count == 1 else f"{count} repair items are"
        yield (
            f"Note: {said} called by no rule and by neither course of gut or keep: "
            f"{', '.join(found.unused)}."
        )
