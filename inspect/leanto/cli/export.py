"""Write everything in a job as readable YAML."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from leanto.cli.job_argument import add_job
from leanto.errors import LeantoError
from leanto.job import Job

HELP = "write everything in the job as YAML, to read back with new --from"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)
    parser.add_argument("--to", type=Path, metavar="FILE", help="a new file; default: the screen")


def run(arguments: argparse.Namespace) -> int:
    with Job.open(arguments.job) as job:
        text = job.export_text()
    if arguments.to is None:
        sys.stdout.write(text)
        return 0
    try:
        with arguments.to.open("x", encoding="utf-8") as file:
            file.write(text)
    except FileExistsError:
        raise LeantoError(f"{arguments.to} exists already.", "Choose another name.") from None
    print(f"Wrote {arguments.to}")
    return 0
