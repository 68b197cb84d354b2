"""What one key may mark as sound at a station, and what it must leave to be looked at."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from leanto.checklist.condition import Condition
from leanto.checklist.model import Item
from leanto.job import Job
from leanto.record.entry import Answered


@dataclass(frozen=True, slots=True)
class SoundHere:
    """The open items of a station, parted by whether they can be marked together."""

    marked: tuple[Item, ...]
    left: tuple[tuple[Item, str], ...]
    """Each with the reason why it is left open."""

    def entries(self, station: str) -> Sequence[Answered]:
        return [
            Answered(station=station, item=item.id, condition=Condition.SOUND)
            for item in self.marked
        ]


def sound_here(job: Job, station: str) -> SoundHere:
    """What *all sound here* comes to at the station as it stands now."""
    one_by_one = {
        item.id: section.title
        for section in job.library.checklist.sections
        if section.one_by_one
        for item in section.items
    }
    begun = {
        key.item: seen for key, seen in job.walk.observations.items() if key.station == station
    }
    marked: list[Item] = []
    left: list[tuple[Item, str]] = []
    for item in job.items_at(station):
        seen = begun.get(item.id)
        sound = item.answers.sound
        if seen is not None and seen.condition is not None:
            continue
        if item.id in one_by_one:
            left.append((item, f"{one_by_one[item.id].lower()} one by one"))
        elif sound.measures or sound.zone:
            left.append((item, "sound here needs a measure"))
        elif seen is not None:
            left.append((item, "something is noted already"))
        else:
            marked.append(item)
    return SoundHere(tuple(marked), tuple(left))
