"""Entries -> the walk as it stands now, and what undo and redo would take next. Pure."""

from __future__ import annotations

from collections.abc import Container, Iterable, Sequence
from dataclasses import replace
from typing import Any

from leanto.building.model import Building
from leanto.building.rectangle import Rectangle
from leanto.quantities import System
from leanto.record.agreed_entry import AfterBids
from leanto.record.bid_entry import (
    AboutBid,
    BidAdded,
    BidAnswered,
    BidsSent,
    BidWithdrawn,
    SentForm,
)
from leanto.record.entry import (
    AboutItem,
    AboutObservation,
    AirMeasured,
    Answered,
    BuildingSet,
    DangerMarked,
    Entry,
    Measured,
    MovedTo,
    Noted,
    NoteToBidders,
    Overruled,
    PhotoAdded,
    PhotoRemoved,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
    UnitsSet,
    Zoned,
)
from leanto.record.fold_agreed import Agreed
from leanto.record.history import History
from leanto.record.kept_bid import KeptBid
from leanto.record.observation import Air, Observation, ObservationKey, Overruling, Photo
from leanto.record.scope_edit import AddedLine, ScopeEdit
from leanto.record.walk import Walk


def fold(entries: Iterable[Entry]) -> Walk:
    """The walk that the entries lead to, undone ones left out.

    Entries come in the order of their ids. An observation that holds nothing any more is none.
    """
    building: Building | None = None
    observations: dict[ObservationKey, Observation] = {}
    air: dict[str, Air] = {}
    overrulings: dict[str, Overruling] = {}
    edits: dict[str, ScopeEdit] = {}
    added: list[AddedLine] = []
    sent: list[SentForm] = []
    bids: dict[str, KeptBid] = {}
    agreed = Agreed()
    stands = MovedTo(station="")
    units = System.FEET
    for entry in History.of(entries).live:
        match entry.body:
            case BuildingSet() as body:
                building = body.building
            case AboutObservation() as body:
                key = ObservationKey(body.station, body.item, body.number)
                observations[key] = _changed(observations.get(key, Observation(key)), body, entry)
            case AirMeasured() as body:
                # The latest stands last: readers take the last one for a place without its own.
                air.pop(body.station, None)
                air[body.station] = Air(body.temp_f, body.humidity_pct)
            case Overruled(surface_id=surface_id, course="as computed"):
                overrulings.pop(surface_id, None)
            case Overruled(surface_id=surface_id) as body:
                overrulings[surface_id] = Overruling(surface_id, body.course, body.reason)
            case AboutItem() as body:
                before = edits.get(body.item_id, ScopeEdit(body.item_id))
                edits[body.item_id] = _edited(before, body, entry)
            case ScopeAdded() as body:
                added.append(_added(body, added, entry))
            case BidsSent(form=form):
                sent.append(form)
            case BidAdded() | AboutBid() as body:
                bids = _with_bid(bids, body, entry)
            case AfterBids() as body:
                agreed = agreed.after(body)
            case MovedTo() as body:
                stands = body
            case UnitsSet(system=system):
                units = system
    return Walk(
        building=building,
        observations={key: seen for key, seen in observations.items() if _holds_something(seen)},
        air=air,
        overrulings=overrulings,
        scope_edits={id_: edit for id_, edit in edits.items() if edit.says_something},
        added_lines=tuple(added),
        forms_sent=tuple(sent),
        bids=bids,
        award=agreed.award,
        payments=agreed.payments,
        openings=agreed.openings,
        changes=agreed.changes,
        station=stands.station,
        item=stands.item,
        units=units,
    )


def folded_on(walk: Walk, entry: Entry, known: Container[ObservationKey]) -> Walk | None:
    """The walk after one more entry, or None for one that only a whole fold can judge.

    ``known`` are the observations that any entry was ever about: one that was emptied since
    remembers its older entries, which only a whole fold finds.
    """
    match entry.body:
        case AboutObservation() as body:
            key = ObservationKey(body.station, body.item, body.number)
            if key not in walk.observations and key in known:
                return None
            before = walk.observations.get(key, Observation(key))
            after = _changed(before, body, entry)
            if not _holds_something(after):
                return None
            return replace(walk, observations={**walk.observations, key: after})
        case MovedTo(station=station, item=item):
            return replace(walk, station=station, item=item)
        case UnitsSet(system=system):
            return replace(walk, units=system)
    return None


def next_undo(entries: Iterable[Entry]) -> Entry | None:
    """The entry that undo would take back, or None."""
    kept = History.of(entries).kept
    return kept[-1] if kept else None


def next_redo(entries: Iterable[Entry]) -> Entry | None:
    """The entry that redo would bring back, or None."""
    undone = History.of(entries).undone
    return undone[-1] if undone else None


def _changed(before: Observation, body: AboutObservation, entry: Entry) -> Observation:
    """The observation after one more entry about it."""
    return replace(before, entries=(*before.entries, entry.id), **_changes(before, body))


def _changes(seen: Observation, body: AboutObservation) -> dict[str, Any]:
    """The fields that the entry sets anew.

    A new answer keeps the measures, zone, note and photos: who mistypes loses nothing.
    """
    match body:
        case Answered():
            return {"condition": body.condition, "reason": body.reason}
        case Measured(value=None):
            others = {id_: value for id_, value in seen.measures.items() if id_ != body.measure}
            return {"measures": others}
        case Measured():
            return {"measures": {**seen.measures, body.measure: body.value}}
        case Zoned():
            return {"zone": Rectangle(body.left_ft, body.bottom_ft, body.width_ft, body.height_ft)}
        case Noted():
            return {"note": body.text}
        case DangerMarked():
            return {"danger": body.on}
        case PhotoAdded() if all(photo.digest != body.digest for photo in seen.photos):
            photo = Photo(body.digest, body.original_name, body.taken_at)
            return {"photos": (*seen.photos, photo)}
        case PhotoRemoved():
            kept = tuple(photo for photo in seen.photos if photo.digest != body.digest)
            return {"photos": kept}
    return {}


def _edited(before: ScopeEdit, body: AboutItem, entry: Entry) -> ScopeEdit:
    """The edit of a repair item after one more entry about it."""
    changes: dict[str, Any] = {}
    match body:
        case ScopeMarked(mark=mark):
            changes = {"mark": mark}
        case ScopeQuantity(quantity=None):
            changes = {"quantity": None, "reason": ""}
        case ScopeQuantity(quantity=quantity, reason=reason):
            changes = {"quantity": quantity, "reason": reason}
        case NoteToBidders(text=text):
            changes = {"note": text}
    return replace(before, who=entry.who, at=entry.at, **changes)


def _with_bid(
    bids: dict[str, KeptBid], body: BidAdded | AboutBid, entry: Entry
) -> dict[str, KeptBid]:
    """The bids after one more entry; one about a bid that is gone changes nothing."""
    held = bids.get(body.digest)
    match body:
        case BidAdded():
            added = KeptBid(
                digest=body.digest,
                file_name=body.file_name,
                bidder=body.bidder,
                fields=body.fields,
                added_on=body.added_on or entry.at.date(),
            )
            others = {key: bid for key, bid in bids.items() if key != body.replaces}
            return {**others, body.digest: added}
        case BidAnswered(field=field, text=text) if held is not None:
            answers = {key: said for key, said in held.answers.items() if key != field}
            if text:
                answers[field] = text
            return {**bids, body.digest: replace(held, answers=answers)}
        case BidWithdrawn():
            return {key: bid for key, bid in bids.items() if key != body.digest}
    return bids


def _added(body: ScopeAdded, before: Sequence[AddedLine], entry: Entry) -> AddedLine:
    number = body.number or max((line.number for line in before), default=0) + 1
    return AddedLine(
        id=f"{body.work}@{body.surface_id or 'building'}+{number}",
        work=body.work,
        surface_id=body.surface_id,
        place=body.place,
        quantity=body.quantity,
        note=body.note,
        who=entry.who,
        at=entry.at,
    )


def _holds_something(seen: Observation) -> bool:
    has_answer = seen.condition is not None
    return has_answer or bool(seen.measures or seen.zone or seen.note or seen.danger or seen.photos)
