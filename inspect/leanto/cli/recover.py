"""Save what can be read of a damaged job into a new one."""

from __future__ import annotations

import argparse
from pathlib import Path

from leanto.cli.job_argument import add_job

HELP = "save what can be read of a damaged job into a new folder"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)
    parser.add_argument("new_job", type=Path, metavar="NEW-FOLDER", help="a new or empty folder")


def run(arguments: argparse.Namespace) -> int:
    from leanto.job.recovering import REPORT, rescue

    rescued = rescue(arguments.job, arguments.new_job)
    for line in rescued.lines:
        print(line)
    print(f"Saved into {rescued.folder}; this list is kept there as {REPORT}.")
    print(f"Next: leanto walk {rescued.folder}")
    return 0
