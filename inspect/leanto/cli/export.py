"""Write everything in a job as readable YAML."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from leanto.cli.job_argument import add_job
from leanto.cli.plain import raw
from leanto.errors import LeantoError

HELP = "write everything in the job as YAML, to read back with new --from"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)
    parser.add_argument("--to", type=Path, metavar="FILE", help="a new file; default: the screen")


def run(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.record.kept_file import keep_new_file

    with Job.open(arguments.job) as job:
        text = job.export_text()
    if arguments.to is None:
        # As it is, for a file; in words for a terminal, which it must not steer.
        stream = sys.stdout if sys.stdout.isatty() else raw(sys.stdout)
        stream.write(text)
        return 0
    try:
        keep_new_file(arguments.to, text.encode("utf-8"))
    except FileExistsError:
        raise LeantoError(f"{arguments.to} exists already.", "Choose another name.") from None
    print(f"Wrote {arguments.to}")
    return 0
