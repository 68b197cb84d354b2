"""Write the condition report and the repair scope."""

from __future__ import annotations

import argparse
from pathlib import Path

from leanto.cli.job_argument import add_job

HELP = "write the condition report and the repair scope (PDF, web page or plain text)"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)
    parser.add_argument(
        "--to", type=Path, metavar="FOLDER", help="where to write; default: JOB/reports"
    )
    parser.add_argument(
        "--as",
        dest="form",
        choices=("pdf", "html", "text"),
        default="pdf",
        help="html and text hold the same content for screen readers; default: pdf",
    )


def run(arguments: argparse.Namespace) -> int:
    from leanto.job import Job

    with Job.open(arguments.job) as job:
        if arguments.form != "pdf":
            for path in job.write_readable(arguments.form, arguments.to):
                print(path)
            return 0
        written = job.write_reports(arguments.to)
    for report in written:
        print(f"{report.path}  ({report.pages} pages)")
        if report.not_drawn:
            print(f"  Characters the font cannot draw: {report.not_drawn}")
    return 0
