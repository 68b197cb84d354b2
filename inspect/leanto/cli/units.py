"""Say or choose what a job's amounts are shown in."""

from __future__ import annotations

import argparse

from leanto.cli.job_argument import add_job

HELP = "show a job in feet and inches or in metric; without a word, say which it is"
_WORDS = ("feet", "metric")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)
    parser.add_argument("system", nargs="?", choices=_WORDS, help="what to show it in")


def run(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.quantities import System

    with Job.open(arguments.job) as job:
        if arguments.system is not None:
            job.show_in(System.METRIC if arguments.system == "metric" else System.FEET)
        print(f"Shown in {job.units}.")
    return 0
