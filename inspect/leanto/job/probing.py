"""An awl cannot sink deeper than the member is thick."""

from __future__ import annotations

from collections.abc import Mapping

from leanto.job.grounds import Grounds
from leanto.quantities import shown
from leanto.reckon.section import PROBE, deepest_probe_in

_SLACK_IN = 1 / 16
"""What a tape and an awl are read to."""


def probe_fault(
    station_id: str, item: str, measures: Mapping[str, float | str], grounds: Grounds
) -> str:
    """Why the probe depth among the measures is impossible, in words; empty when it can be.

    Nothing is said where the size of the member is not known.
    """
    probe_in = measures.get(PROBE)
    if not isinstance(probe_in, float | int):
        return ""
    surface = grounds.surface_at(station_id)
    deepest = deepest_probe_in(item, measures, surface, grounds.building)
    if deepest is None or probe_in <= deepest[0] + _SLACK_IN:
        return ""
    return shown().words(
        f"The {deepest[1]} measures {deepest[0]:g} in. here: an awl sinks 0 to {deepest[0]:g} in., "
        f"not {probe_in:g} in."
    )
