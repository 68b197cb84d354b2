"""The photos that go out to bidders: those behind the lines that they price, each once."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from leanto.assessment import Assessment
from leanto.record.observation import Photo
from leanto.reports.blocks import Picture
from leanto.reports.contents.numbering import Numbering
from leanto.scope.item import RepairItem


@dataclass(frozen=True, slots=True)
class PackagePhoto:
    photo: Photo
    number: int
    """1, 2, 3 ... in the order of the findings."""
    place: str
    items: tuple[RepairItem, ...]
    """What it was taken for, in order of work."""

    @property
    def file_name(self) -> str:
        """What it is called in the package: nothing of the name it came with."""
        return f"photo-{self.number:02}.jpg"


def package_photos(assessment: Assessment) -> tuple[PackagePhoto, ...]:
    scope = assessment.scope
    priced = (*scope.for_bidders, *scope.alternates)
    found: dict[str, tuple[Photo, str, dict[str, RepairItem]]] = {}
    for finding in assessment.judged.grounds:
        items = {item.id: item for item in priced if finding.id in item.findings}
        for photo in finding.photos if items else ():
            held = found.setdefault(photo.digest, (photo, finding.station_name, {}))
            held[2].update(items)
    return tuple(
        PackagePhoto(photo, number, place, tuple(items.values()))
        for number, (photo, place, items) in enumerate(found.values(), start=1)
    )


def photo_blocks(photos: Iterable[PackagePhoto], numbers: Numbering) -> tuple[Picture, ...]:
    return tuple(Picture(one.photo, _caption(one, numbers)) for one in photos)


def _caption(one: PackagePhoto, numbers: Numbering) -> str:
    lines = [item for item in one.items if item.id in numbers.items]
    told = []
    if lines:
        told.append(f"{'line' if len(lines) == 1 else 'lines'} {numbers.of_items(lines)}")
    if len(lines) < len(one.items):
        told.append("alternates")
    return f"Photo {one.number}, {one.place}: {', '.join(told)}"
