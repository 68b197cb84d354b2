"""Open a job in the terminal, or in a browser."""

from __future__ import annotations

import argparse
import sys
from typing import TYPE_CHECKING

from leanto.cli.job_argument import add_job

if TYPE_CHECKING:
    from leanto.job import Job

HELP = "walk the building in the terminal"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)
    parser.add_argument(
        "--browser", action="store_true", help="show the walk in a browser of this machine"
    )
    parser.add_argument(
        "--host", default="", help="with --browser: the address to serve at; default: 127.0.0.1"
    )
    parser.add_argument(
        "--port", type=int, default=0, help="with --browser: the port; default: 8000"
    )


def run(arguments: argparse.Namespace) -> int:
    from leanto.job import Job

    with Job.open(arguments.job) as job:
        if not arguments.browser:
            return walk(job)
        assert job.library  # its faults are told here and not in the browser
    return _in_browser(arguments)


def walk(job: Job) -> int:
    """Hand the job to the terminal UI, which is loaded only now: no other command needs it.

    The library is read first, so that its faults are printed line by line and not in a notice.
    """
    from leanto.tui.app import LeantoApp

    assert job.library
    app = LeantoApp(job)
    app.run()
    if app.fault:
        print(app.fault, file=sys.stderr)
        print(
            "leanto met a fault of its own. Everything entered is kept; leanto doctor shows what "
            "a bug report needs.",
            file=sys.stderr,
        )
    return app.left_with or app.return_code or 0


def _in_browser(arguments: argparse.Namespace) -> int:
    """Serve the walk; each page opens the job for itself, so it is closed here."""
    from leanto.tui import browser

    host = arguments.host or browser.HOST
    for line in browser.warning(host):
        print(line, file=sys.stderr)
    browser.serve(arguments.job, host, arguments.port or browser.PORT)
    return 0
