"""Run the whole main job on the invented demo building."""

from __future__ import annotations

import argparse
from pathlib import Path

from leanto.cli.walk import walk

HELP = "run the whole job on an invented building"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--to", type=Path, default=Path("output"), metavar="FOLDER", help="default: output"
    )
    parser.add_argument("--walk", action="store_true", help="open the demo in the terminal")


def run(arguments: argparse.Namespace) -> int:
    from leanto.demo.bids import add_demo_bids
    from leanto.demo.make import make_demo
    from leanto.reports.contents import summary_report
    from leanto.reports.contents.short_bids import short_bids_report
    from leanto.reports.text import to_text

    with make_demo(arguments.to / "demo-job") as job:
        add_demo_bids(job)
        if arguments.walk:
            return walk(job)
        written = job.write_reports(arguments.to)
        assessment = job.assess()
        print(to_text(summary_report(assessment)))
        if job.walk.bids:
            written += (job.bids.write_table(arguments.to / "bid-table.pdf"),)
            made = job.bids.table()
            print(
                to_text(short_bids_report(made, assessment.building, assessment.as_of), width=100)
            )
        print("The building, the walk, the pictures and the bids are invented.")
        for report in written:
            print(f"{report.path}  ({report.pages} pages)")
        print(f"Walk it yourself: leanto demo --walk, or leanto walk {job.places.folder}")
    return 0
