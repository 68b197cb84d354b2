"""What came after the bids of the demo, invented too: a choice, a payment, and two opened walls."""

from __future__ import annotations

import tempfile
from decimal import Decimal
from pathlib import Path
from typing import Literal

from leanto.demo.pictures import draw_picture
from leanto.job import Job
from leanto.record.agreed_entry import FoundKind, FoundWork
from leanto.strict import Strict
from leanto.yaml_input import read_model

_OPENING = Path(__file__).with_name("opening.yaml")


class DemoPayment(Strict):
    line: str
    usd: Decimal
    note: str


class DemoWall(Strict):
    surface: str
    opened_sqft: float
    bad_sqft: float
    found: tuple[FoundKind, ...]
    works: tuple[FoundWork, ...] = ()
    note: str
    picture: str


class DemoOpening(Strict):
    """``opening.yaml``."""

    invented: Literal[True]
    bidder: str
    reason: str
    paid: tuple[DemoPayment, ...]
    openings: tuple[DemoWall, ...]
    settled_usd: Decimal


def add_demo_opening(job: Job) -> bool:
    """Chooses a bid, pays, opens two walls and settles what they change.

    False where the job has a choice or an opening already, or not the demo's bid: what somebody
    did with the demo stays as it is.
    """
    told = read_model(_OPENING, DemoOpening)
    bidders = [bid.bidder for bid in job.walk.bids.values()]
    if job.read_only or job.walk.award or job.walk.openings or told.bidder not in bidders:
        return False
    job.contract.choose(told.bidder, reason=told.reason)
    for one in told.paid:
        job.contract.pay(one.line, one.usd, note=one.note)
    with tempfile.TemporaryDirectory(prefix="leanto-demo-") as drawn:
        for wall in told.openings:
            job.opening.record(
                wall.surface,
                opened_sqft=wall.opened_sqft,
                bad_sqft=wall.bad_sqft,
                found=wall.found,
                works=wall.works,
                note=wall.note,
                pictures=[draw_picture(wall.picture, Path(drawn))],
            )
    change = job.opening.ask()
    job.opening.settle(change.number, told.settled_usd)
    return True
