"""Bids: what goes out, what comes back, both side by side, the choice and its costs."""

from __future__ import annotations

import argparse
from pathlib import Path

from leanto.cli.job_argument import add_job

HELP = "send the package, lay the bids side by side, choose one, and follow what it costs"


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
    table.add_argument("--to", type=Path, metavar="FILE", help="write it as PDF or XLSX instead")
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
    award = actions.add_parser("award", help="choose a bid: its figures are frozen as the baseline")
    add_job(award)
    award.add_argument("bidder", metavar="BIDDER", help="its name, or a part of it")
    award.add_argument(
        "--alternate", action="append", default=[], metavar="A1", help="one that is taken"
    )
    award.add_argument("--sum", metavar="AMOUNT", help="what both agreed on; default: the lines")
    award.add_argument("--contingency", metavar="AMOUNT", help="default: P80 less P50")
    award.add_argument("--reason", default="", metavar="TEXT")
    award.set_defaults(act=_award)
    pay = actions.add_parser("pay", help="record a payment against a line, with its receipt")
    add_job(pay)
    pay.add_argument("line", metavar="LINE", help="7, A1, C1 for a change, or all")
    pay.add_argument("amount", metavar="AMOUNT", help="below zero for money that came back")
    pay.add_argument("--on", metavar="DAY", help="such as 2026-11-25; default: today")
    pay.add_argument("--note", default="", metavar="TEXT")
    pay.add_argument("--receipt", type=Path, metavar="PICTURE")
    pay.set_defaults(act=_pay)
    costs = actions.add_parser("costs", help="print budget, committed, paid and to go")
    add_job(costs)
    costs.add_argument("--to", type=Path, metavar="FILE", help="write it as PDF instead")
    costs.add_argument("--strike", type=int, metavar="N", help="take payment N out again")
    costs.set_defaults(act=_costs)


def run(arguments: argparse.Namespace) -> int:
    code: int = arguments.act(arguments)
    return code


def _send(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.job.bidding import lay_out_bidding
    from leanto.job.bidding_text import bidding_file
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
        if arguments.to.suffix.lower() == ".xlsx":
            print(job.bids.write_workbook(arguments.to))
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


def _award(arguments: argparse.Namespace) -> int:
    from leanto.contract.baseline import open_lines
    from leanto.contract.typed import typed_usd
    from leanto.job import Job
    from leanto.money import format_usd
    from leanto.reports.contents.costs import headline

    agreed = None if arguments.sum is None else typed_usd(arguments.sum)
    aside = None if arguments.contingency is None else typed_usd(arguments.contingency)
    with Job.open(arguments.job) as job:
        award = job.contract.choose(
            arguments.bidder,
            alternates=arguments.alternate,
            agreed_usd=agreed,
            contingency_usd=aside,
            reason=arguments.reason,
        )
        view = job.contract.view()
    print(f"Chosen: {award.bidder}. Its {len(award.lines)} lines are the baseline from now on.")
    print(headline(view))
    print(f"Contingency: {format_usd(view.contingency)}.")
    if missing := open_lines(award.lines):
        numbers = ", ".join(line.number for line in missing)
        print(f"Without a price in this bid, and in no sum: {numbers}. Settle who does them.")
    print("It is a note of your choice, not a contract. Payments: leanto bids pay JOB LINE AMOUNT")
    return 0


def _pay(arguments: argparse.Namespace) -> int:
    from leanto.contract.typed import typed_day, typed_usd
    from leanto.job import Job
    from leanto.money import format_usd
    from leanto.reports.contents.costs import headline

    with Job.open(arguments.job) as job:
        paid = job.contract.pay(
            arguments.line,
            typed_usd(arguments.amount),
            paid_on=typed_day(arguments.on) if arguments.on else None,
            note=arguments.note,
            receipt=arguments.receipt,
        )
        view = job.contract.view()
    print(f"Payment {paid.number}: {format_usd(paid.usd, cents=True)} on line {paid.line}.")
    print(headline(view))
    return 0


def _costs(arguments: argparse.Namespace) -> int:
    from leanto.job import Job
    from leanto.reports.text import to_text

    with Job.open(arguments.job) as job:
        if arguments.strike is not None:
            job.contract.strike_payment(arguments.strike)
            print(f"Payment {arguments.strike} counts no more.")
        elif arguments.to is not None:
            written = job.contract.write(arguments.to)
            print(f"{written.path}  ({written.pages} pages)")
        else:
            print(to_text(job.contract.report(), width=100))
    return 0
