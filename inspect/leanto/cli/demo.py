"""Run the whole main job on the invented demo building."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

from leanto.cli.walk import walk

if TYPE_CHECKING:
    from leanto.job import Job
    from leanto.reports.written import WrittenReport

HELP = "run the whole job on an invented building"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "--to", type=Path, default=Path("output"), metavar="FOLDER", help="default: output"
    )
    parser.add_argument("--walk", action="store_true", help="open the demo in the terminal")


def run(arguments: argparse.Namespace) -> int:
    from leanto.demo.bids import add_demo_bids
    from leanto.demo.make import make_demo
    from leanto.demo.opening import add_demo_opening
    from leanto.reports.contents import summary_report
    from leanto.reports.contents.short_bids import short_bids_report
    from leanto.reports.text import to_text

    with make_demo(arguments.to / "demo-job") as job:
        add_demo_bids(job)
        add_demo_opening(job)
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
            if job.contract.award:
                written += (*_afterwards(job, arguments.to),)
        print("The building, the walk, the pictures, the bids and what came after are invented.")
        for report in written:
            print(f"{report.path}  ({report.pages} pages)")
        if job.walk.bids:
            print(job.bids.write_workbook(arguments.to / "bid-table.xlsx"))
        print(f"Walk it yourself: leanto demo --walk, or leanto walk {job.places.folder}")
    return 0


def _afterwards(job: Job, folder: Path) -> Iterator[WrittenReport]:
    """Says in two lines what came after the bids, and writes its pages."""
    from leanto.reports.contents.costs import contingency_in_words, headline

    contract, view = job.contract, job.contract.view()
    print(f"Then {contract.chosen().bidder} was chosen and two walls were opened.")
    print(f"{headline(view)} Contingency {contingency_in_words(view)}.\n")
    yield contract.write(folder / "costs.pdf")
    for number in job.walk.changes:
        yield job.opening.write_request(number, folder / f"change-order-{number}.pdf")
    yield job.opening.write(folder / "opened-walls.pdf")
