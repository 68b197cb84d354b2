"""Three invented bids on the demo's own form: sent out, filled in, and taken back in."""

from __future__ import annotations

import datetime
import hashlib
import tempfile
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field

from leanto.bids.bidding import Invitation
from leanto.bids.layout import added_field, field
from leanto.bids.levelled import Base
from leanto.bids.model import BidForm, BidLine
from leanto.demo.filled import fill
from leanto.job import Job
from leanto.job.bid_base import bid_base
from leanto.job.bidding import lay_out_bidding
from leanto.job.bidding_text import bidding_file
from leanto.job.package import Package, send_package
from leanto.money import dollars, exact, round_to
from leanto.scope.work import Phase, Trade
from leanto.strict import Strict
from leanto.yaml_input import read_model

_BIDS = Path(__file__).with_name("bids.yaml")
_EARLY = (Phase.PROTECT, Phase.TREAT, Phase.STRIP)
_HOUR_USD = 85
_JITTER_PCT = 8
"""No two bidders price a line alike."""


Dollars = Annotated[dict[str, int], Field(default_factory=dict)]


class DemoBid(Strict):
    """How one bidder's prices follow from ours."""

    bidder: str
    file: str
    level: Annotated[float, Field(gt=0)]
    early: float = 1.0
    """Times the price of what is done before anything is built."""
    late: float = 1.0
    hidden: float = 1.0
    """Times the unit prices for what a wall may hide."""
    leaves_blank: tuple[Trade, ...] = ()
    slips: Dollars
    """Dollars by which a line's amount is wrong, by the id of its work."""
    total_slip: int = 0
    added: Dollars
    terms: dict[str, str]


class DemoBids(Strict):
    """``bids.yaml``."""

    invented: Literal[True]
    day: datetime.date
    invitation: Invitation
    bids: tuple[DemoBid, ...]


def add_demo_bids(job: Job) -> Package | None:
    """Sends the package and adds the three bids; None where the job has sent or has bids already.

    What somebody did with the demo's bids stays as it is.
    """
    if job.read_only or job.bids.sent or job.walk.bids:
        return None
    made = read_model(_BIDS, DemoBids)
    _invite(job, made.invitation)
    package = send_package(job, day=made.day)
    base = bid_base(job.assess(), job.walk, package.form)
    with tempfile.TemporaryDirectory(prefix="leanto-demo-") as folder:
        for bid in made.bids:
            path = Path(folder) / bid.file
            blank = next((one for one in package.paths if one.suffix == path.suffix), path)
            fill(blank, path, package.form, fields_of(bid, package.form, base))
            job.bids.add(path)
    return package


def fields_of(one: DemoBid, form: BidForm, base: Base) -> dict[str, str]:
    """What the bidder writes, by field; ``base`` has our own figures."""
    fields = {"bidder": one.bidder, **one.terms}
    total = form.allowed + one.total_slip
    for line in form.lines:
        if line.trade in one.leaves_blank or line.item_id not in base.ours:
            continue
        price = _unit_price(one, line, base)
        amount = dollars(price * exact(line.quantity)) + one.slips.get(_work(line.item_id), 0)
        fields[field("unit", line.item_id)] = f"{price}"
        fields[field("amount", line.item_id)] = f"{amount:,.2f}"
        total += amount
    for number, (text, usd) in enumerate(one.added.items(), start=1):
        fields[added_field(number, "text")] = text
        fields[added_field(number, "amount")] = str(usd)
        total += usd
    for ask in form.unit_prices:
        likely = next((w.ours.likely for w in base.hidden if w.ask_id == ask.id), _HOUR_USD)
        price = exact(likely) * exact(one.hidden) * _jitter(one.bidder, ask.id)
        fields[field("askunit", ask.id)] = f"{_round(price)}"
    for alternate in form.alternates:
        if ours := base.ours.get(alternate.id):
            price = ours.likely * exact(one.level) * _jitter(one.bidder, alternate.id)
            fields[field("alt", alternate.id)] = f"{round_to(price, 10)}"
    fields["total"] = f"${total:,.2f}"
    return {name: text for name, text in fields.items() if text}


def _unit_price(one: DemoBid, line: BidLine, base: Base) -> Decimal:
    is_early = base.phases.get(line.item_id) in _EARLY
    times = exact(one.level) * exact(one.early if is_early else one.late)
    each = base.ours[line.item_id].likely / exact(line.quantity)
    return _round(each * times * _jitter(one.bidder, line.item_id))


def _round(price: Decimal) -> Decimal:
    """As a bidder rounds: to the dime, the dollar, or five dollars."""
    step = "0.10" if price < 20 else "1" if price < 300 else "5"
    return max(round_to(price, step), Decimal(step))


def _jitter(bidder: str, id_: str) -> Decimal:
    """A factor near one, always the same for the same bidder and line."""
    drawn = hashlib.sha256(f"{bidder} {id_}".encode()).digest()[0]
    return 1 + Decimal(drawn - 128) * _JITTER_PCT / 12_800


def _work(item_id: str) -> str:
    return item_id.partition("@")[0]


def _invite(job: Job, invitation: Invitation) -> None:
    """The job's own file, its invitation filled in."""
    if not lay_out_bidding(job.places):
        return
    path = bidding_file(job.places)
    path.write_text(_answered(path.read_text("utf-8"), invitation.model_dump()), "utf-8")


def _answered(text: str, answers: Mapping[str, str]) -> str:
    for name, answer in answers.items():
        if answer:
            text = text.replace(f'  {name}: ""', f'  {name}: "{answer}"', 1)
    return text
