"""The exported document: what it may hold, and reading it with every fault found."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path
from typing import Annotated, Literal, Self

from pydantic import Field, FiniteFloat, model_validator

from leanto.building.check import building_problems
from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.errors import InputProblems, Problem
from leanto.quantities import System
from leanto.record.agreed_entry import AskedLine, BidAwarded, Count, Dollars, Opened, Paid
from leanto.record.bid_entry import (
    Bidder,
    Digest,
    FieldName,
    FieldText,
    FileName,
    SentForm,
)
from leanto.record.entry import (
    HumidityPct,
    ItemId,
    Mark,
    MeasureValue,
    MoreThanZeroFt,
    NoteText,
    Number,
    OwnQuantity,
    PlaceText,
    Reason,
    TempF,
)
from leanto.strict import Strict
from leanto.yaml_input import Lines, parse_model_with_lines, read_model_with_lines

FORMAT: Literal[1] = 1
"""Of the document; a reader refuses one that it does not know."""


class PhotoPart(Strict):
    digest: Digest
    """SHA-256 of ``photos/<digest>.jpg``."""
    original_name: FileName = ""
    taken_at: datetime | None = None


class ZonePart(Strict):
    left_ft: FiniteFloat
    bottom_ft: FiniteFloat
    width_ft: MoreThanZeroFt
    height_ft: MoreThanZeroFt


class ObservationPart(Strict):
    """One answer; what is left out was not entered."""

    station: str
    item: str
    number: Number = 1
    condition: Condition | None = None
    reason: Reason = ""
    danger: bool = False
    measures: dict[str, MeasureValue] = Field(default_factory=dict)
    zone: ZonePart | None = None
    note: NoteText = ""
    photos: tuple[PhotoPart, ...] = ()

    @model_validator(mode="after")
    def _reason_belongs_to_an_answer(self) -> Self:
        if self.reason and self.condition is None:
            raise ValueError("a reason needs a condition, such as no access")
        return self


class AirPart(Strict):
    temp_f: TempF
    humidity_pct: HumidityPct


class OverrulingPart(Strict):
    course: Literal["gut", "keep"]
    reason: Reason = ""


class ScopeEditPart(Strict):
    """What the owner changed about one repair item."""

    mark: Mark = "plain"
    quantity: OwnQuantity | None = None
    reason: Reason = ""
    """For the quantity."""
    note: Reason = ""
    """To the bidders."""

    @model_validator(mode="after")
    def _reason_belongs_to_a_quantity(self) -> Self:
        if self.reason and self.quantity is None:
            raise ValueError("a reason needs a quantity")
        return self


class AddedLinePart(Strict):
    """A repair item that the owner added."""

    work: str
    surface_id: str | None = None
    place: PlaceText = ""
    quantity: OwnQuantity
    note: Reason = ""


class BidPart(Strict):
    """A returned bid as it was typed."""

    digest: Digest
    file_name: FileName = ""
    bidder: Bidder
    added_on: date | None = None
    fields: dict[FieldName, FieldText] = Field(default_factory=dict)
    answers: dict[FieldName, FieldText] = Field(default_factory=dict)
    """The owner's readings of fields that could not be read."""


class ChangePart(Strict):
    """A change-order request as it was written, and what came of it."""

    number: Count
    lines: tuple[AskedLine, ...]
    asked_on: date
    settled_usd: Dollars | None = None
    settled_on: date | None = None

    @model_validator(mode="after")
    def _settled_on_a_day(self) -> Self:
        if (self.settled_usd is None) != (self.settled_on is None):
            raise ValueError("an agreed amount needs its day, and a day an amount")
        return self


class StandPart(Strict):
    station: str
    item: str = ""


class JobDocument(Strict):
    """All that a job knows, but for photos' files and the entries it took to get there."""

    leanto_export: Literal[1]
    job: FileName = ""
    """Name of the job's folder, whose ``photos`` hold the pictures."""
    walked_on: date | None = None
    building: Building | None = None
    standing_at: StandPart | None = None
    units: System = System.FEET
    air: dict[str, AirPart] = Field(default_factory=dict)
    """By station, the latest last."""
    observations: tuple[ObservationPart, ...] = ()
    overrulings: dict[str, OverrulingPart] = Field(default_factory=dict)
    """By surface."""
    added_lines: tuple[AddedLinePart, ...] = ()
    """Their order numbers them."""
    scope_edits: dict[ItemId, ScopeEditPart] = Field(default_factory=dict)
    """By repair item."""
    forms_sent: tuple[SentForm, ...] = ()
    """Bid forms that went out, the latest last."""
    bids: tuple[BidPart, ...] = ()
    award: BidAwarded | None = None
    """The bid that was chosen, with its baseline."""
    payments: tuple[Paid, ...] = ()
    openings: tuple[Opened, ...] = ()
    changes: tuple[ChangePart, ...] = ()
    bidding_file: Annotated[str, Field(max_length=200_000)] = ""
    """The owner's ``bidding.yaml``, as it was typed; empty where there is none."""


def read_export(path: Path) -> JobDocument:
    """The document of a file; InputProblems with every fault of it."""
    return _checked(*read_model_with_lines(path, JobDocument))


def parse_export(text: str, file: str) -> JobDocument:
    """The document of a text; ``file`` is what messages call it."""
    return _checked(*parse_model_with_lines(text, JobDocument, file))


def _checked(document: JobDocument, lines: Lines) -> JobDocument:
    problems: list[Problem] = []
    seen: dict[tuple[str, str, int], int] = {}
    for index, part in enumerate(document.observations):
        key = (part.station, part.item, part.number)
        if key in seen:
            first = lines.at("observations", seen[key])
            message = f"This observation is there twice, first on line {first}."
            remedy = "Join the two, or give this one the next number."
            problems.append(lines.problem(("observations", index), message, remedy))
        seen.setdefault(key, index)
    for field, message in building_problems(document.building) if document.building else ():
        steps = [int(step) if step.isdigit() else step for step in field.split(".")]
        problems.append(lines.problem(["building", *steps], message))
    if problems:
        raise InputProblems(problems)
    return document
