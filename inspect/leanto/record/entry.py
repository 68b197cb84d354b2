"""What can be recorded: each entry is one fact that somebody entered, never changed afterwards."""

from __future__ import annotations

from datetime import date, datetime
from typing import Annotated, Literal

from pydantic import Field, FiniteFloat

from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.quantities import System
from leanto.record.agreed_entry import (
    BidAwarded,
    ChangeAsked,
    ChangeSettled,
    Opened,
    OpeningStruck,
    Paid,
    PaymentStruck,
)
from leanto.record.bid_entry import (
    BidAdded,
    BidAnswered,
    BidsSent,
    BidWithdrawn,
    Digest,
    FileName,
)
from leanto.strict import Strict

Number = Annotated[int, Field(ge=1, le=99)]
"""Which of several observations of one item at one station."""
Reason = Annotated[str, Field(max_length=500)]
NoteText = Annotated[str, Field(max_length=20_000)]
MeasureValue = FiniteFloat | Annotated[str, Field(max_length=200)]
MoreThanZeroFt = Annotated[FiniteFloat, Field(gt=0)]
TempF = Annotated[float, Field(ge=-60, le=140)]
HumidityPct = Annotated[float, Field(ge=0, le=100)]
ItemId = Annotated[str, Field(min_length=3, max_length=200)]
"""``<work>@<surface, block or building>``; see ``leanto.scope.item``."""
Mark = Literal["plain", "struck", "by owner", "alternate"]
OwnQuantity = Annotated[FiniteFloat, Field(gt=0, le=1_000_000)]
PlaceText = Annotated[str, Field(max_length=80)]


class AboutObservation(Strict):
    station: str
    item: str
    number: Number = 1
    batch: Annotated[str, Field(max_length=40, exclude_if=lambda batch: not batch)] = ""
    """Neighbors of one batch were entered by one key, so undo takes them back together."""


class BuildingSet(Strict):
    kind: Literal["building set"] = "building set"
    building: Building


class Answered(AboutObservation):
    kind: Literal["answered"] = "answered"
    condition: Condition
    reason: Reason = ""


class Measured(AboutObservation):
    kind: Literal["measured"] = "measured"
    measure: str
    value: MeasureValue | None
    """None takes the measure back."""


class Zoned(AboutObservation):
    kind: Literal["zoned"] = "zoned"
    left_ft: FiniteFloat
    bottom_ft: FiniteFloat
    width_ft: MoreThanZeroFt
    height_ft: MoreThanZeroFt


class Noted(AboutObservation):
    kind: Literal["noted"] = "noted"
    text: NoteText


class DangerMarked(AboutObservation):
    kind: Literal["danger marked"] = "danger marked"
    on: bool


class PhotoAdded(AboutObservation):
    kind: Literal["photo added"] = "photo added"
    digest: Digest
    original_name: FileName
    taken_at: datetime | None = None


class PhotoRemoved(AboutObservation):
    kind: Literal["photo removed"] = "photo removed"
    digest: Digest


ObservationBody = Answered | Measured | Zoned | Noted | DangerMarked | PhotoAdded | PhotoRemoved


class AirMeasured(Strict):
    kind: Literal["air measured"] = "air measured"
    station: str
    temp_f: TempF
    humidity_pct: HumidityPct


class Overruled(Strict):
    kind: Literal["overruled"] = "overruled"
    surface_id: str
    course: Literal["gut", "keep", "as computed"]
    reason: Reason = ""


class AboutItem(Strict):
    """About one repair item of the scope."""

    item_id: ItemId


class ScopeMarked(AboutItem):
    """What the owner does with a repair item; ``plain`` takes the mark back."""

    kind: Literal["scope marked"] = "scope marked"
    mark: Mark


class ScopeQuantity(AboutItem):
    """The owner's own quantity, in the unit of the work."""

    kind: Literal["scope quantity"] = "scope quantity"
    quantity: OwnQuantity | None
    """None takes it back."""
    reason: Reason = ""


class ScopeAdded(Strict):
    """A repair item that no finding calls for."""

    kind: Literal["scope added"] = "scope added"
    work: str
    surface_id: str | None = None
    place: PlaceText = ""
    """In words; empty for the name of the surface, or for the whole building."""
    quantity: OwnQuantity
    note: Reason = ""
    """Goes to the bidders with the line."""
    number: Annotated[int | None, Field(ge=1, exclude_if=lambda number: number is None)] = None
    """Given when two records are merged; else added lines are counted in their order."""


class NoteToBidders(AboutItem):
    """Words that go to the bidders with the line; empty takes them back."""

    kind: Literal["note to bidders"] = "note to bidders"
    text: Reason


class MovedTo(Strict):
    """Where the walker stands now; resuming starts here. Undo passes over it."""

    kind: Literal["moved to"] = "moved to"
    station: str
    item: str = ""


class UnitsSet(Strict):
    """What amounts are shown in from now on. Undo passes over it: it changes no fact."""

    kind: Literal["units set"] = "units set"
    system: System


class Imported(Strict):
    """The entries before this one came from an export; they are not undone one by one."""

    kind: Literal["imported"] = "imported"
    source: FileName = ""
    """Name of the file that was read."""
    walked_on: date | None = None
    """The day of the walk that was exported."""


class Undone(Strict):
    """Takes back an earlier entry."""

    kind: Literal["undone"] = "undone"
    entry: int


class Redone(Strict):
    """Takes back an undo."""

    kind: Literal["redone"] = "redone"
    entry: int
    """The entry that counts again."""


Body = Annotated[
    BuildingSet
    | Answered
    | Measured
    | Zoned
    | Noted
    | DangerMarked
    | PhotoAdded
    | PhotoRemoved
    | AirMeasured
    | Overruled
    | ScopeMarked
    | ScopeQuantity
    | ScopeAdded
    | NoteToBidders
    | BidsSent
    | BidAdded
    | BidAnswered
    | BidWithdrawn
    | BidAwarded
    | Paid
    | PaymentStruck
    | Opened
    | OpeningStruck
    | ChangeAsked
    | ChangeSettled
    | MovedTo
    | UnitsSet
    | Imported
    | Undone
    | Redone,
    Field(discriminator="kind"),
]


class Entry(Strict):
    """One row of the record."""

    id: int
    """1, 2, 3 ... without gaps."""
    at: datetime
    who: str
    body: Body
