"""What goes out beside the scope, as an owner edits it: invitation, conditions, stated sums."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Self

from pydantic import Field, model_validator

from leanto.bids.model import Allowance
from leanto.checklist.model import Identifier
from leanto.scope.work import Trade
from leanto.strict import Strict

Answer = Annotated[str, Field(max_length=400)]
Said = Annotated[str, Field(min_length=3, max_length=600)]
Title = Annotated[str, Field(min_length=3, max_length=90)]


class Invitation(Strict):
    """What a bidder must know first; a blank is pointed out when the package is written."""

    place: Answer = ""
    access: Answer = ""
    site_visits: Answer = ""
    contact: Answer = ""
    questions_until: Answer = ""
    bids_due: Answer = ""
    work_window: Answer = ""


class Point(Strict):
    use: bool
    """False for a point that is kept in the file and not sent."""
    text: Said


class Condition(Strict):
    """One heading of the general conditions."""

    id: Identifier
    title: Title
    points: tuple[Point, ...]

    @property
    def used(self) -> tuple[str, ...]:
        return tuple(point.text for point in self.points if point.use)


class StatedAllowance(Strict):
    """A sum that every bidder carries alike."""

    id: Identifier
    title: Title
    amount_usd: Annotated[Decimal, Field(gt=0, le=1_000_000, decimal_places=2)]


class Bidding(Strict):
    """``checklists/bidding.yaml``, and ``bidding.yaml`` in a job folder in its place."""

    invitation: Invitation = Invitation()
    instructions: tuple[Said, ...]
    caution: Said
    conditions: tuple[Condition, ...]
    allowances: tuple[StatedAllowance, ...] = ()
    exclusions: tuple[Said, ...] = ()
    often_found: tuple[Identifier, ...] = ()
    """Works whose unit prices are asked for, besides those that the walk points to."""
    hours: tuple[Trade, ...] = ()
    """Trades of which the price of an hour is asked for."""

    @model_validator(mode="after")
    def _ids_once(self) -> Self:
        for kind, ids in (
            ("conditions", [one.id for one in self.conditions]),
            ("allowances", [one.id for one in self.allowances]),
        ):
            if twice := sorted({id_ for id_ in ids if ids.count(id_) > 1}):
                raise ValueError(f"{kind} with the same id: {', '.join(twice)}")
        return self

    @property
    def stated(self) -> tuple[Allowance, ...]:
        """The allowances as the bid form holds them."""
        return tuple(Allowance(one.id, one.title, one.amount_usd) for one in self.allowances)

    @property
    def blanks(self) -> tuple[str, ...]:
        """The fields of the invitation that hold nothing."""
        answers = self.invitation.model_dump()
        return tuple(name for name, answer in answers.items() if not answer.strip())
