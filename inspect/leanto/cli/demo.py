"""Run the whole main job on the invented demo building."""

from __future__ import annotations

import argparse
from pathlib import Path

from leanto.cli.walk import walk
from leanto.demo.make import make_demo
from leanto.reports.contents import summary_report
from leanto.reports.text import to_text

HELP = "run the whole job on an invented building"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--to", type=Path, default=Path("output"), metavar="FOLDER", help="default: output"
    )
    parser.add_argument("--walk", action="store_true", help="open the demo in the terminal")


def run(arguments: argparse.Namespace) -> int:
    with make_demo(arguments.to / "demo-job") as job:
        if arguments.walk:
            return walk(job)
        written = job.write_reports(arguments.to)
        print(to_text(summary_report(job.assess())))
        print("The building, the walk and the pictures are invented.")
        for report in written:
            print(f"{report.path}  ({report.pages} pages)")
        print(f"Walk it yourself: leanto demo --walk, or leanto walk {job.places.folder}")
    return 0
