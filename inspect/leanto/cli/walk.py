"""Open a job in the terminal."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from leanto.cli.job_argument import add_job

if TYPE_CHECKING:
    from leanto.job import Job

HELP = "walk the building in the terminal"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)


def run(arguments: argparse.Namespace) -> int:
    from leanto.job import Job

    with Job.open(arguments.job) as job:
        return walk(job)


def walk(job: Job) -> int:
    """Hand the job to the terminal UI, which is loaded only now: no other command needs it.

    The library is read first, so that its faults are printed line by line and not in a notice.
    """
    from leanto.tui.app import LeantoApp

    assert job.library
    app = LeantoApp(job)
    app.run()
    return app.return_code or 0
