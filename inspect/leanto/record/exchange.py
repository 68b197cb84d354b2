"""The walk -> an exported document, and the document -> entries for a new record."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from leanto.building.rectangle import Rectangle
from leanto.building.stations import stations_of
from leanto.quantities import System
from leanto.record.agreed_entry import ChangeAsked, ChangeSettled
from leanto.record.bid_entry import BidAdded, BidAnswered, BidsSent
from leanto.record.document import (
    FORMAT,
    AddedLinePart,
    AirPart,
    BidPart,
    ChangePart,
    JobDocument,
    ObservationPart,
    OverrulingPart,
    PhotoPart,
    ScopeEditPart,
    StandPart,
    ZonePart,
)
from leanto.record.entry import (
    AirMeasured,
    Answered,
    Body,
    BuildingSet,
    DangerMarked,
    Imported,
    Measured,
    MovedTo,
    Noted,
    NoteToBidders,
    Overruled,
    PhotoAdded,
    ScopeAdded,
    ScopeMarked,
    ScopeQuantity,
    UnitsSet,
    Zoned,
)
from leanto.record.observation import Observation
from leanto.record.walk import Walk
from leanto.yaml_output import dump_yaml


def export_text(walk: Walk, *, job: str, walked_on: date | None, bidding_file: str = "") -> str:
    """The walk as YAML, its observations in walking order.

    ``bidding_file`` is the text of the owner's own ``bidding.yaml``.
    """
    document = JobDocument(
        leanto_export=FORMAT,
        job=job,
        walked_on=walked_on,
        building=walk.building,
        standing_at=StandPart(station=walk.station, item=walk.item) if walk.station else None,
        units=walk.units,
        air={
            station: AirPart(temp_f=air.temp_f, humidity_pct=air.humidity_pct)
            for station, air in walk.air.items()
        },
        observations=tuple(_part(seen) for seen in in_walking_order(walk)),
        overrulings={
            surface_id: OverrulingPart.model_validate(
                {"course": overruling.course, "reason": overruling.reason}
            )
            for surface_id, overruling in sorted(walk.overrulings.items())
        },
        added_lines=tuple(
            AddedLinePart(
                work=line.work,
                surface_id=line.surface_id,
                place=line.place,
                quantity=line.quantity,
                note=line.note,
            )
            for line in walk.added_lines
        ),
        scope_edits={
            item_id: ScopeEditPart.model_validate(
                {
                    "mark": edit.mark,
                    "quantity": edit.quantity,
                    "reason": edit.reason,
                    "note": edit.note,
                }
            )
            for item_id, edit in sorted(walk.scope_edits.items())
        },
        forms_sent=walk.forms_sent,
        bids=tuple(
            BidPart(
                digest=bid.digest,
                file_name=bid.file_name,
                bidder=bid.bidder,
                added_on=bid.added_on,
                fields=bid.fields,
                answers=bid.answers,
            )
            for bid in walk.bids.values()
        ),
        award=walk.award,
        payments=tuple(walk.payments.values()),
        openings=tuple(walk.openings.values()),
        changes=tuple(
            ChangePart(
                number=one.number,
                lines=one.lines,
                asked_on=one.asked_on,
                settled_usd=one.settled_usd,
                settled_on=one.settled_on,
            )
            for one in walk.changes.values()
        ),
        bidding_file=bidding_file,
    )
    data = document.model_dump(mode="json", exclude_defaults=True)
    if walk.building is not None:
        # With its defaults, which may change from version to version.
        data["building"] = walk.building.model_dump(mode="json", exclude_none=True)
    return dump_yaml(data)


def in_walking_order(walk: Walk) -> tuple[Observation, ...]:
    """The observations station by station, in the order of keys at each; strangers last."""
    stations = stations_of(walk.building) if walk.building else ()
    place = {station.id: index for index, station in enumerate(stations)}
    return tuple(
        walk.observations[key]
        for key in sorted(
            walk.observations, key=lambda key: (place.get(key.station, len(place)), key)
        )
    )


def bodies_of(document: JobDocument, source: str) -> tuple[Body, ...]:
    """The entries that lead to the document's walk, for a new record."""
    return tuple(_bodies(document, source))


def _part(seen: Observation) -> ObservationPart:
    return ObservationPart(
        station=seen.key.station,
        item=seen.key.item,
        number=seen.key.number,
        condition=seen.condition,
        reason=seen.reason,
        danger=seen.danger,
        measures=seen.measures,
        zone=_zone_part(seen.zone),
        note=seen.note,
        photos=tuple(
            PhotoPart(
                digest=photo.digest, original_name=photo.original_name, taken_at=photo.taken_at
            )
            for photo in seen.photos
        ),
    )


def _zone_part(zone: Rectangle | None) -> ZonePart | None:
    if zone is None:
        return None
    return ZonePart(
        left_ft=zone.left_ft,
        bottom_ft=zone.bottom_ft,
        width_ft=zone.width_ft,
        height_ft=zone.height_ft,
    )


def _bodies(document: JobDocument, source: str) -> Iterator[Body]:
    if document.building is not None:
        yield BuildingSet(building=document.building)
    for station, air in document.air.items():
        yield AirMeasured(station=station, temp_f=air.temp_f, humidity_pct=air.humidity_pct)
    for part in document.observations:
        yield from _about(part)
    for surface_id, ruling in document.overrulings.items():
        yield Overruled(surface_id=surface_id, course=ruling.course, reason=ruling.reason)
    for line in document.added_lines:
        yield ScopeAdded.model_validate(line.model_dump())
    for item_id, edit in document.scope_edits.items():
        if edit.mark != "plain":
            yield ScopeMarked(item_id=item_id, mark=edit.mark)
        if edit.quantity is not None:
            yield ScopeQuantity(item_id=item_id, quantity=edit.quantity, reason=edit.reason)
        if edit.note:
            yield NoteToBidders(item_id=item_id, text=edit.note)
    for form in document.forms_sent:
        yield BidsSent(form=form)
    for bid in document.bids:
        yield BidAdded.model_validate(bid.model_dump(exclude={"answers"}))
        for field, text in bid.answers.items():
            yield BidAnswered(digest=bid.digest, field=field, text=text)
    yield from _agreed(document)
    if document.standing_at is not None:
        yield MovedTo(station=document.standing_at.station, item=document.standing_at.item)
    if document.units is not System.FEET:
        yield UnitsSet(system=document.units)
    yield Imported(source=source, walked_on=document.walked_on)


def _agreed(document: JobDocument) -> Iterator[Body]:
    if document.award is not None:
        yield document.award
    yield from document.payments
    yield from document.openings
    for part in document.changes:
        yield ChangeAsked(number=part.number, lines=part.lines, asked_on=part.asked_on)
        if part.settled_usd is not None and part.settled_on is not None:
            yield ChangeSettled(
                number=part.number, usd=part.settled_usd, settled_on=part.settled_on
            )


def _about(part: ObservationPart) -> Iterator[Body]:
    about = {"station": part.station, "item": part.item, "number": part.number}
    if part.condition is not None:
        yield Answered.model_validate({**about, "condition": part.condition, "reason": part.reason})
    for measure, value in part.measures.items():
        yield Measured.model_validate({**about, "measure": measure, "value": value})
    if part.zone is not None:
        yield Zoned.model_validate({**about, **part.zone.model_dump()})
    if part.note:
        yield Noted.model_validate({**about, "text": part.note})
    if part.danger:
        yield DangerMarked.model_validate({**about, "on": True})
    for photo in part.photos:
        yield PhotoAdded.model_validate({**about, **photo.model_dump()})
