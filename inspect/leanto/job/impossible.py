"""What no building can hold: refused when a file is read, with its line and field.

A number that only lies outside the range a checklist asks for is another matter: the checklist
may have changed since, so such a number is left out with a word when the job is opened.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from leanto.checklist.model import Checklist, Measure
from leanto.errors import InputProblems
from leanto.job.acceptance import measure_fault
from leanto.job.grounds import Grounds
from leanto.job.probing import probe_fault
from leanto.reckon.section import PROBE
from leanto.record.document import JobDocument
from leanto.yaml_input.document import read_document
from leanto.yaml_input.file_text import read_text

MOST_PCT = 100.0


def refuse_impossible(document: JobDocument, file: Path, checklist: Checklist) -> None:
    """Nothing when every measure can be; else InputProblems with the line of each that cannot."""
    faults = list(_faults(document, checklist))
    if not faults:
        return
    lines = read_document(read_text(file, file.name), file.name).lines
    raise InputProblems(
        [
            lines.problem(("observations", index, "measures", name), said)
            for index, name, said in faults
        ]
    )


def _faults(document: JobDocument, checklist: Checklist) -> Iterator[tuple[int, str, str]]:
    """(place in the list of observations, measure, why it cannot be) of every fault."""
    if document.building is None:
        return
    grounds = Grounds.of(document.building, checklist)
    for index, part in enumerate(document.observations):
        for name, value in part.measures.items():
            measure = grounds.measures.get(name)
            if measure is not None and isinstance(value, float) and _cannot_be(measure, value):
                yield index, name, measure_fault(measure, value)
        if said := probe_fault(part.station, part.item, part.measures, grounds):
            yield index, PROBE, said


def _cannot_be(measure: Measure, value: float) -> bool:
    """Below zero where nothing can be below zero, or more than all of it."""
    if measure.low is None or measure.high is None:
        return False
    is_below = value < 0 <= measure.low
    return is_below or (measure.unit == "pct" and value > MOST_PCT >= measure.high)
