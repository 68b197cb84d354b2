"""A draft read as a building: the building, or every fault at the field it belongs to."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from pydantic import ValidationError

from leanto.building.block_shape import wall_sides
from leanto.building.check import building_problems
from leanto.building.kinds import RoofForm, Side
from leanto.building.model import Block, Building
from leanto.building.roof_shape import slope_sides
from leanto.errors import LeantoError
from leanto.tui.widgets.building_draft import Draft, Texts, is_asked
from leanto.tui.widgets.building_fields import APPLIANCE_FIELDS, BLOCK_FIELDS, NO, Field, Kind
from leanto.tui.widgets.building_texts import value_of
from leanto.yaml_input.messages import plain_words

_ALONG = {"east-west": (Side.NORTH, Side.SOUTH), "north-south": (Side.EAST, Side.WEST)}
"""The two sides along the length, by the way it runs."""


@dataclass(frozen=True, slots=True)
class Reading:
    building: Building | None
    """None while there are problems."""
    problems: dict[str, str]
    """By the full path of the field, in the order of the form."""


def read(draft: Draft) -> Reading:
    """The building that the draft describes, or every fault with what to type instead."""
    data: dict[str, Any] = {}
    found: dict[str, str] = {}
    groups: dict[str, list[Any]] = {"blocks": [], "openings": [], "appliances": []}
    for prefix, fields, texts in draft.parts():
        part = data if not prefix else {}
        if prefix:
            groups[prefix.split(".")[0]].append(part)
        for path, message in _read_part(fields, texts, part).items():
            found[prefix + path] = message
    data |= groups
    building: Building | None = None
    try:
        building = Building.model_validate(data)
    except ValidationError as refused:
        for error in refused.errors(include_url=False):
            path = ".".join(str(step) for step in error["loc"])
            if not any(known == path or known.startswith(f"{path}.") for known in found):
                message, remedy = plain_words(error)
                found[path] = f"{message} {remedy}".strip()
    if building is not None and not found:
        for path, message in building_problems(building):
            found[path] = f"{found[path]} {message}" if path in found else message
    return Reading(None if found else building, _at_fields(draft, found))


def choices_of(field: Field, texts: Texts, draft: Draft) -> tuple[str, ...]:
    """The words to choose from, as the rest of the building stands now."""
    if field.choices or field.kind is not Kind.CHOICE:
        return field.choices
    match field.path:
        case "attached.to":
            return ("", *(other["id"] for other in draft.blocks if other is not texts))
        case "roof.high_side":
            return _ALONG[texts["ridge_runs"]]
        case _:
            return tuple(place for block in draft.blocks for place in _places_on(block))


def _read_part(fields: tuple[Field, ...], texts: Texts, part: dict[str, Any]) -> dict[str, str]:
    """Puts the values of the fields into ``part``; gives the faults by path."""
    faults: dict[str, str] = {}
    for field in fields:
        text = texts[field.path].strip()
        is_hidden = not is_asked(field, texts)
        if is_hidden and not field.counts_hidden:
            continue
        if field.path in ("ceiling", "on_wall"):
            part[field.path] = None if text == NO and field.path == "ceiling" else {}
            continue
        if not text and (field.may_be_empty or is_hidden):
            continue
        try:
            value = value_of(field, text) if text else None
        except LeantoError as error:
            if not is_hidden:
                faults[field.path] = str(error)
            continue
        if value is None:
            faults[field.path] = f"This is needed. {field.help}."
            continue
        _put(part, field.path, value)
    if fields is APPLIANCE_FIELDS and not faults and ("watts" in part) == ("amps" in part):
        faults["watts"] = "Either watts or amps is needed, from the name plate, not both."
    return faults


def _put(part: dict[str, Any], path: str, value: Any) -> None:
    *above, last = path.split(".")
    for step in above:
        part = part.setdefault(step, {})
    part[last] = value


def _at_fields(draft: Draft, found: dict[str, str]) -> dict[str, str]:
    """The messages at fields that are asked, in the order of the form."""
    asked = [
        prefix + field.path
        for prefix, fields, texts in draft.parts()
        for field in fields
        if is_asked(field, texts)
    ]
    placed: dict[str, list[str]] = {}
    for path, message in found.items():
        placed.setdefault(_nearest(path, asked), []).append(message)
    return {path: " ".join(placed[path]) for path in asked if path in placed}


def _nearest(path: str, asked: list[str]) -> str:
    """The field itself, else the first one below it, else the first one beside it."""
    while path:
        if path in asked:
            return path
        below = next((one for one in asked if one.startswith(f"{path}.")), "")
        if below:
            return below
        path = path.rpartition(".")[0]
    return asked[0]


def _places_on(texts: Texts) -> Iterable[str]:
    """What an opening can be on: the walls of a block and its roof slopes."""
    block = _shape_of(texts)
    if block is None:
        return ()
    walls = (f"{block.id}.{side}" for side in wall_sides(block))
    return (*walls, *(f"{block.id}.roof.{side}" for side in slope_sides(block)))


def _shape_of(texts: Texts) -> Block | None:
    """The block with made-up sizes where it is not measured yet; None while it has no shape."""
    part: dict[str, Any] = {}
    _read_part(BLOCK_FIELDS, texts, part)
    sizes = {"name": "", "length": 1.0, "width": 1.0, "eave_height": 1.0}
    roof = part.setdefault("roof", {})
    if texts["roof.form"] != RoofForm.FLAT:
        roof.setdefault("pitch", 4.0)
    if texts["roof.form"] == RoofForm.SHED:
        sides = _ALONG[texts["ridge_runs"]]
        if roof.get("high_side") not in sides:
            roof["high_side"] = sides[0]
    try:
        return Block.model_validate(sizes | part)
    except ValidationError:
        return None
