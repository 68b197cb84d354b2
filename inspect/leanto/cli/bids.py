"""Bids: what goes out, what comes back, and both side by side."""

from __future__ import annotations

import argparse
from pathlib import Path

from leanto.cli.job_argument import add_job

HELP = "send the package for bidders, take bids in and lay them side by side"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    actions = parser.add_subparsers(title="actions", required=True, metavar="ACTION", dest="action")
    send = actions.add_parser("send", help="write the package for bidders: scope, form, photos")
    add_job(send)
    send.add_argument(
        "--to", type=Path, metavar="FOLDER", help="where to write; default: in JOB/reports"
    )
    send.set_defaults(act=_send)
    add = actions.add_parser("add", help="read a returned bid: PDF form, XLSX or CSV")
    add_job(add)
    add.add_argument("file", type=Path, metavar="FILE")
    add.add_argument("--bidder", default="", metavar="NAME", help="where the form does not say")
    add.add_argument(
        "--replace", action="store_true", help="put it in the place of the same bidder's bid"
    )
    add.set_defaults(act=_add)
    table = actions.add_parser("table", help="print the bids on one base, with what to ask")
    add_job(table)
    table.add_argument("--to", type=Path, metavar="FILE", help="write it as PDF instead")
    table.set_defaults(act=_table)
    answer = actions.add_parser("answer", help="say what a field means that could not be read")
    add_job(answer)
    answer.add_argument("bidder", metavar="BIDDER")
    answer.add_argument("field", metavar="FIELD", help="as it is named when the bid is added")
    answer.add_argument("text", metavar="TEXT", help="such as 1200; empty takes it back")
    answer.set_defaults(act=_answer)
    withdraw = actions.add_parser("withdraw", help="leave a bid out; its file is kept")
    add_job(withdraw)
    withdraw.add_argument("bidder", metavar="BIDDER")
    withdraw.add_argument("--reason", default="", metavar="TEXT")
    withdraw.set_defaults(act=_withdraw)


def run(arguments: argparse.Namespace) -> int:
    code: int = arguments.act(arguments)
    return code


def _send(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.job.bidding import bidding_file, lay_out_bidding
    from leanto.job.package import send_package

    with Job.open(arguments.job) as job:
        if not job.read_only and lay_out_bidding(job.places):
            print(f"Made {bidding_file(job.places)}: invitation, conditions, stated sums to edit.")
        package = send_package(job, arguments.to)
    form = package.form
    kind = f"Addendum {form.addendum}" if form.addendum else "Package"
    print(f"{kind}, form {form.form_id}: {len(form.lines)} lines, {package.pages} pages.")
    print(f"{package.paths[0].parent}  ({len(package.paths) - 1} files)")
    print(package.paths[-1])
    for notice in package.notices:
        print(f"Note: {notice}")
    print(f"When a bid comes back: leanto bids add {arguments.job} FILE")
    return 0


def _add(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.reports.contents.bids import found_in

    with Job.open(arguments.job) as job:
        bid = job.bids.add(arguments.file, bidder=arguments.bidder, in_place=arguments.replace)
        made = job.bids.table()
        one = next(x for x in made.bids if x.bid.bidder == bid.bidder)
        print(f"Added the bid of {bid.bidder}: {len(bid.entries)} of {len(made.lines)} lines.")
        for sentence in found_in(one):
            print(f"- {sentence}")
        if bid.unread:
            print("Say what a field means: leanto bids answer JOB BIDDER FIELD TEXT")
        print(f"Next: leanto bids table {arguments.job}")
    return 0


def _table(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.reports.text import to_text

    with Job.open(arguments.job) as job:
        if arguments.to is None:
            print(to_text(job.bids.report(), width=110))
            return 0
        written = job.bids.write_table(arguments.to)
        print(f"{written.path}  ({written.pages} pages)")
    return 0


def _answer(arguments: argparse.Namespace) -> int:
    from leanto.job import Job

    with Job.open(arguments.job) as job:
        bid = job.bids.answer(arguments.bidder, arguments.field, arguments.text)
    left = len(bid.unread)
    print(f"Kept. Not read in the bid of {bid.bidder}: {left}.")
    return 0


def _withdraw(arguments: argparse.Namespace) -> int:
    from leanto.job import Job

    with Job.open(arguments.job) as job:
        job.bids.withdraw(arguments.bidder, arguments.reason)
    print(f"The bid of {arguments.bidder} counts no more; its file is kept.")
    return 0
