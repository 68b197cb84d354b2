"""Print one computation by hand, with its working and its source."""

from __future__ import annotations

import argparse

HELP = "compute one number by hand, with its working and source"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    from leanto.cli.by_hand import BY_HAND

    subjects = parser.add_subparsers(title="computations", required=True, metavar="COMPUTATION")
    for module in BY_HAND:
        name = module.__name__.rpartition(".")[2]
        one = subjects.add_parser(name, help=module.HELP, description=module.HELP)
        module.add_arguments(one)
        one.set_defaults(reckoned=module.reckoned)


def run(arguments: argparse.Namespace) -> int:
    from datetime import date

    from leanto.reports.blocks import Report
    from leanto.reports.contents.reckoned import single_blocks
    from leanto.reports.text import to_text

    one = arguments.reckoned(arguments)
    report = Report("Checked by hand", one.title, "", date.today(), single_blocks(one))
    print(to_text(report), end="")
    return 0
