"""Print one computation by hand, with its working and its source."""

from __future__ import annotations

import argparse
from pathlib import Path

HELP = "compute one number by hand, with its working and source"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    from leanto.cli.by_hand import BY_HAND

    parser.add_argument(
        "--job", metavar="FOLDER", help="use the tables and prices of this job's own checklists"
    )
    subjects = parser.add_subparsers(title="computations", required=True, metavar="COMPUTATION")
    for module in BY_HAND:
        name = module.__name__.rpartition(".")[2]
        one = subjects.add_parser(name, help=module.HELP, description=module.HELP)
        module.add_arguments(one)
        one.set_defaults(reckoned=module.reckoned, blocks=getattr(module, "blocks", None))


def run(arguments: argparse.Namespace) -> int:
    from datetime import date

    from leanto.library import read_library
    from leanto.reports.blocks import Report
    from leanto.reports.contents.reckoned import single_blocks
    from leanto.reports.text import to_text
    from leanto.trade.tables import NO_OWN, using

    # The whole library is read only where prices or an owner's own tables are asked for.
    is_wanted = arguments.job is not None or arguments.blocks is not None
    library = read_library(_own(arguments.job)) if is_wanted else None
    with using(library.tables if library else NO_OWN):
        one = arguments.reckoned(arguments)
        own = arguments.blocks(arguments, library) if arguments.blocks else ()
    report = Report("Checked by hand", one.title, "", date.today(), single_blocks(one, own))
    print(to_text(report), end="")
    return 0


def _own(job: str | None) -> tuple[Path, ...]:
    """The job's own checklists, where it has any; LeantoError for a folder that is not there."""
    from leanto.errors import LeantoError
    from leanto.places import JobPlaces

    if job is None:
        return ()
    folder = Path(job)
    if not folder.is_dir():
        raise LeantoError(f"{job} is no folder.", "Give the folder of a job.")
    own = JobPlaces(folder).checklists
    return (own,) if own.is_dir() else ()
