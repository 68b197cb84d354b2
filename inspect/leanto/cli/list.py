"""List the jobs below a folder."""

from __future__ import annotations

import argparse
import shutil
from pathlib import Path

from leanto.errors import LeantoError

HELP = "list the jobs below a folder: building, day of the walk, answers, middle of the range"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder",
        nargs="?",
        type=Path,
        default=Path(),
        metavar="FOLDER",
        help="default: this folder",
    )


def run(arguments: argparse.Namespace) -> int:
    from leanto.job.listing import jobs_below
    from leanto.money import format_usd, round_to
    from leanto.reports.blocks import Column, Table
    from leanto.reports.text_table import table_lines

    if not arguments.folder.is_dir():
        raise LeantoError(f"There is no folder {arguments.folder}.", "Check its name.")
    jobs = list(jobs_below(arguments.folder))
    rows = [
        (
            str(job.folder),
            job.name or "-",
            job.walked_on.isoformat() if job.walked_on else "-",
            str(job.answered),
            "-" if job.p50_usd is None else format_usd(round_to(job.p50_usd, 10)),
        )
        for job in jobs
        if not job.fault
    ]
    if rows:
        titles = ("job", "building", "walked on", "answers", "half stay under")
        table = Table(tuple(Column(title, 1) for title in titles), tuple(rows))
        for line in table_lines(table, shutil.get_terminal_size((100, 24)).columns):
            print(line)
    for job in jobs:
        if job.fault:
            print(f"{job.folder}: {job.fault}")
    if any(job.p50_usd is None for job in jobs):
        print("- : not computed since the last change; leanto money JOB computes it.")
    print(f"{len(jobs)} {'job' if len(jobs) == 1 else 'jobs'}.")
    return 0
