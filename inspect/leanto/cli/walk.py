"""Open a job in the terminal."""

from __future__ import annotations

import argparse

from leanto.cli.job_argument import add_job
from leanto.job import Job

HELP = "walk the building in the terminal"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)


def run(arguments: argparse.Namespace) -> int:
    with Job.open(arguments.job) as job:
        return walk(job)


def walk(job: Job) -> int:
    """Hand the job to the terminal UI, which is loaded only now: no other command needs it."""
    from leanto.tui.app import LeantoApp

    app = LeantoApp(job)
    app.run()
    return app.return_code or 0
