"""Make a job folder for a building."""

from __future__ import annotations

import argparse
from pathlib import Path

from leanto.cli.job_argument import add_job

HELP = "make a job folder, from a building file or an export"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)
    source = parser.add_mutually_exclusive_group()
    source.add_argument(
        "--building", type=Path, metavar="FILE", help="a YAML file with the facts of the building"
    )
    source.add_argument(
        "--from", type=Path, metavar="FILE", dest="export", help="a YAML file made by leanto export"
    )


def run(arguments: argparse.Namespace) -> int:
    from leanto.building.load import read_building
    from leanto.job import Job

    if arguments.export:
        job = Job.from_export(arguments.job, arguments.export)
    else:
        facts = read_building(arguments.building) if arguments.building else None
        job = Job.create(arguments.job, facts)
    with job:
        for notice in job.notices:
            print(notice)
    print(f"Made {arguments.job}. Next: leanto walk {arguments.job}")
    return 0
