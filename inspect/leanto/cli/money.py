"""Print the range, the contingency and whether the budget holds."""

from __future__ import annotations

import argparse

from leanto.cli.job_argument import add_job

HELP = "print the range, the contingency, what moves the total, and whether the budget holds"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)


def run(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.reports.contents import money_report
    from leanto.reports.text import to_text

    with Job.open(arguments.job) as job:
        print(to_text(money_report(job.assess())))
    return 0
