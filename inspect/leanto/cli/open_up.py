"""Opening up: what a wall showed, what it changes, and what the assessment missed."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from leanto.cli.job_argument import add_job
from leanto.errors import LeantoError

if TYPE_CHECKING:
    from leanto.job import Job
    from leanto.job.opening_up import Openable

HELP = "record what an opened wall shows, price it, and set it against what was assumed"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    add_job(parser)
    parser.add_argument(
        "surface", nargs="?", metavar="SURFACE", help="its number in the list, or part of its name"
    )
    found = parser.add_argument_group("what a surface showed")
    found.add_argument("--opened", metavar="AREA", help="area opened; default: all that is left")
    found.add_argument("--bad", metavar="AREA", help="area bad beyond the scope; 0 for sound")
    found.add_argument(
        "--what", action="append", default=[], metavar="KIND", help="rot, wet, mold, pests ..."
    )
    found.add_argument(
        "--work", action="append", default=[], metavar="WORK=QTY", help="such as sister-stud=3"
    )
    found.add_argument("--note", default="", metavar="TEXT", help="goes to the contractor")
    found.add_argument("--photo", action="append", default=[], type=Path, metavar="FILE")
    found.add_argument("--on", metavar="DAY", help="such as 2026-11-25; default: today")
    actions = parser.add_argument_group("what follows")
    actions.add_argument("--request", action="store_true", help="write the change-order request")
    actions.add_argument("--change", type=int, metavar="N", help="write request N once more")
    actions.add_argument(
        "--settle", nargs=2, metavar=("N", "AMOUNT"), help="what both agreed on; 0 for nothing"
    )
    actions.add_argument("--strike", type=int, metavar="N", help="take opening N out again")
    actions.add_argument(
        "--missed", action="store_true", help="what the assessment missed, at the end"
    )
    actions.add_argument("--to", type=Path, metavar="FILE", help="where a PDF goes")


def run(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.reports.text import to_text

    with Job.open(arguments.job) as job:
        if arguments.surface is not None:
            _record(job, arguments)
        elif arguments.strike is not None:
            taken = job.opening.strike(arguments.strike)
            print(f"Opening {taken.number} counts no more.")
        elif arguments.request or arguments.change is not None:
            number = job.opening.ask().number if arguments.request else arguments.change
            print(to_text(job.opening.request_report(number), width=100))
            written = job.opening.write_request(number, arguments.to)
            print(f"{written.path}  ({written.pages} pages)")
            print("When both have agreed: leanto open-up JOB --settle N AMOUNT")
        elif arguments.settle is not None:
            _settle(job, *arguments.settle)
        elif arguments.missed:
            print(to_text(job.opening.report(), width=100))
            written = job.opening.write(arguments.to)
            print(f"{written.path}  ({written.pages} pages)")
        else:
            print(to_text(job.opening.list_report(), width=100))
            print('Record one: leanto open-up JOB SURFACE --bad "12" --what rot --photo FILE')
    return 0


def _record(job: Job, arguments: argparse.Namespace) -> None:
    from leanto.contract.pricing import amount_of
    from leanto.contract.typed import typed_area_sqft, typed_day, typed_kinds, typed_works
    from leanto.money import format_usd
    from leanto.quantities import shown
    from leanto.reports.contents.openings import asked_in_words

    one = job.opening.named(arguments.surface)
    _caution(job, one)
    if arguments.bad is None:
        _ask(one, arguments)
    opened = None if not arguments.opened else typed_area_sqft(arguments.opened, "Opened")
    body = job.opening.record(
        one.surface.id,
        opened_sqft=opened,
        bad_sqft=typed_area_sqft(arguments.bad, "Bad"),
        found=typed_kinds(arguments.what),
        works=typed_works(arguments.work),
        note=arguments.note,
        pictures=arguments.photo,
        opened_on=typed_day(arguments.on) if arguments.on else None,
    )
    share = f"{_area(body.bad_sqft)} of {_area(body.opened_sqft)}"
    print(f"Opening {body.number}: {one.surface.name}, {share}.")
    row = next(x for x in job.opening.compared() if x.surface_id == one.surface.id)
    if row.chance is not None and row.prior is not None:
        print(
            f"Thought before: {row.chance:.0%} for damage ({row.prior:.0%} before the walk), "
            f"{shown().area(row.expected_sqft)} of it. {row.verdict.capitalize()}."
        )
    lines = job.opening.lines_of(body)
    for line in lines:
        print(f"- {asked_in_words(line)}")
    if lines:
        total = sum(amount_of(line) for line in lines)
        print(
            f"Beyond the scope: {format_usd(total, cents=True)}. Nothing is done before both agree."
        )
        print("Write it out: leanto open-up JOB --request")


def _area(sqft: float) -> str:
    from leanto.quantities import shown

    return shown().area(sqft) if shown().is_metric else f"{sqft:g} sq ft"


def _caution(job: Job, one: Openable) -> None:
    tests = job.opening.test_first(one.surface.id)
    for test in tests:
        print(f"Test before anything more is disturbed: {test}")


def _ask(one: Openable, arguments: argparse.Namespace) -> None:
    """Asks for what was left out, where somebody is there to answer."""

    from leanto.contract.typed import KINDS
    from leanto.quantities import shown

    if not sys.stdin.isatty():
        raise LeantoError("How much is bad?", "Say it with --bad, such as --bad 12 or --bad 0.")
    print(f"{one.surface.name}. Enter alone takes what stands in brackets.")
    whole = one.surface.net_area_sqft - sum(x.opened_sqft for x in one.openings)
    arguments.opened = arguments.opened or _answer(f"Opened [{_area(whole)}, all of it]: ")
    arguments.bad = _answer(f"Bad beyond the scope, {shown().area_unit} [0]: ") or "0"
    if arguments.bad != "0" and not arguments.what:
        arguments.what = [_answer(f"What is it ({', '.join(KINDS)}): ")]
    if not arguments.work:
        said = _answer("Work it takes, such as sister-stud=3 [repair of what is bad]: ")
        arguments.work = [said]
    arguments.note = arguments.note or _answer("Note for the contractor []: ")
    if not arguments.photo:
        said = _answer("Picture, its file []: ")
        arguments.photo = [Path(said.strip("'\"")).expanduser()] if said else []


def _answer(question: str) -> str:
    print(question, end="", flush=True)
    return sys.stdin.readline().strip()


def _settle(job: Job, number: str, amount: str) -> None:
    from leanto.contract.typed import typed_usd
    from leanto.reports.contents.costs import contingency_in_words
    from leanto.reports.contents.openings import change_in_words

    if not number.isdecimal():
        raise LeantoError(f"“{number}” is no number of a change.", "leanto open-up JOB lists them.")
    print(change_in_words(job.opening.settle(int(number), typed_usd(amount))))
    print(f"Contingency {contingency_in_words(job.contract.view())}.")
