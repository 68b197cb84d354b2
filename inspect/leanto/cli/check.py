"""Check checklists, rules, work and prices."""

from __future__ import annotations

import argparse
from pathlib import Path

from leanto.errors import EXIT_USER_ERROR
from leanto.library import library_problems, read_library

HELP = "check checklists, rules and prices; names file, line and field of every fault"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder",
        nargs="?",
        type=Path,
        metavar="FOLDER",
        help="a folder of your own checklists, laid over the shipped ones",
    )


def run(arguments: argparse.Namespace) -> int:
    folders = () if arguments.folder is None else (arguments.folder,)
    problems = library_problems(folders)
    for problem in problems:
        print(problem)
    if problems:
        count = len(problems)
        print(f"{count} {'problem' if count == 1 else 'problems'} to put right.")
        return EXIT_USER_ERROR
    library = read_library(folders)
    print(
        f"No problems: {len(library.checklist.sections)} sections, "
        f"{len(library.checklist.items())} items, {len(library.rules)} rules, "
        f"{len(library.works)} repair items with prices."
    )
    return 0
