"""What kind of water it was, what may be dried, what comes out, and how high to cut."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from leanto.source import Source
from leanto.trade.wetting import Category, Material, find_material, find_origin, water_table


class Fate(StrEnum):
    """What happens to a wet material."""

    DRY = "dry in place"
    CLEAN = "clean and dry"
    DISINFECT = "clean, disinfect and dry"
    REMOVE = "take out"
    UNDECIDED = "undecided"


@dataclass(frozen=True, slots=True)
class WaterCategory:
    """1 clean, 2 gray, 3 foul."""

    category: Category
    reasons: tuple[str, ...]
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class WetMaterial:
    """What happens to one wet material, why, and where that comes from."""

    fate: Fate
    reasons: tuple[str, ...]
    sources: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class CutHeight:
    """Where to cut lining above the floor."""

    height_in: float
    is_full_height: bool
    reason: str
    sources: tuple[Source, ...]


def water_category(origin: str, hours_wet: float | None) -> WaterCategory:
    """The category of water from this origin; one step worse once it has stood too long.

    None for hours that are not known keeps the category and says that it may be worse.
    """
    table, row = water_table(), find_origin(origin)
    reasons = [f"It was {row.label}."]
    sources = [table.cite(row)]
    category = row.category
    limit = table.worsens_after.hours
    if category == 3:
        return WaterCategory(3, tuple(reasons), tuple(sources))
    sources.append(table.cite(table.worsens_after))
    if hours_wet is None:
        reasons.append("How long it stood is not known; it may have become worse.")
    elif hours_wet > limit:
        category = 2 if category == 1 else 3
        reasons.append(f"It stood {hours_wet:g} hours, over {limit:g}; counted one step worse.")
    return WaterCategory(category, tuple(reasons), tuple(sources))


def wetting_class(
    covers_room: bool,
    wicked_in: float,
    from_overhead: bool = False,
    is_held_deep: bool = False,
) -> int:
    """Class 1 to 4 of how much is wet.

    1 part of a room, 2 a whole room with walls wet less than 24 in. up, 3 higher or from
    overhead, 4 held deep in plaster, concrete or hardwood. Source: after ANSI/IICRC S500.
    """
    if wicked_in < 0:
        raise ValueError(f"wicked_in must be zero or more: {wicked_in}")
    if is_held_deep:
        return 4
    if from_overhead or wicked_in > water_table().wicking.inches:
        return 3
    return 2 if covers_room else 1


def wet_material(
    material: str,
    category: Category,
    hours_wet: float | None,
    is_swollen: bool | None,
    seams_open: bool | None = False,
    was_under_water: bool = False,
) -> WetMaterial:
    """What happens to a wet material; None stands for what is not known.

    `is_swollen` is swollen, soft or coming apart, `seams_open` counts for board with seams,
    `was_under_water` for what stood below a flood line.
    """
    row = find_material(material)
    if category == 3:
        return _foul(row)
    if row.wet == "take out":
        return _told(Fate.REMOVE, row, f"Wet {row.label} is not dried.")
    if row.wet == "clean and dry":
        return _told(Fate.CLEAN, row, f"{row.label.capitalize()} can be cleaned and dried.")
    if row.wet == "dry":
        return _dried(row, hours_wet)
    if is_swollen:
        return _told(Fate.REMOVE, row, f"The {row.label} is swollen or coming apart.")
    if row.wet == "dry if whole":
        if is_swollen is None:
            return _told(Fate.UNDECIDED, row, f"Look whether the {row.label} is swollen.")
        return _dried(row, hours_wet)
    return _board(row, category, hours_wet, is_swollen, seams_open, was_under_water)


def _foul(row: Material) -> WetMaterial:
    source = (water_table().sources[row.foul_source],)
    if row.foul == "take out":
        reason = f"Foul water was in it; {row.label} comes out to above the wet line."
        return WetMaterial(Fate.REMOVE, (reason,), source)
    reason = f"Foul water was in it; {row.label} that will not come clean is taken out."
    return WetMaterial(Fate.DISINFECT, (reason,), source)


def _board(
    row: Material,
    category: Category,
    hours_wet: float | None,
    is_swollen: bool | None,
    seams_open: bool | None,
    was_under_water: bool,
) -> WetMaterial:
    """Gypsum board and its like: dried only if clean, quick and whole."""
    table = water_table()
    limit = table.dry_within.high_hours
    if was_under_water:
        reason = f"The {row.label} was under flood water."
        return WetMaterial(Fate.REMOVE, (reason,), (table.sources["flood"],))
    if category != 1:
        return _told(Fate.REMOVE, row, f"The water was not clean (category {category}).")
    if seams_open:
        return _told(Fate.REMOVE, row, "Its seams have opened.")
    if hours_wet is not None and hours_wet >= limit:
        return _told(Fate.REMOVE, row, f"Wet for {hours_wet:g} hours; {limit:g} is the limit.")
    if hours_wet is None or is_swollen is None or seams_open is None:
        return _told(Fate.UNDECIDED, row, "Hours wet, swelling and seams are not all known.")
    reason = f"Clean water, {hours_wet:g} hours, not swollen, seams closed. Dry it at once."
    return _told(Fate.DRY, row, reason)


def _dried(row: Material, hours_wet: float | None) -> WetMaterial:
    table = water_table()
    reasons = [f"{row.label.capitalize()} may be dried.", table.close_up.text]
    if hours_wet is None or hours_wet >= table.dry_within.high_hours:
        reasons.append("Wet long enough for mold to grow; look for it.")
    sources = (table.cite(row), table.cite(table.close_up), table.cite(table.dry_within))
    return WetMaterial(Fate.DRY, tuple(reasons), sources)


def _told(fate: Fate, row: Material, reason: str) -> WetMaterial:
    table = water_table()
    return WetMaterial(fate, (reason,), (table.cite(row), table.cite(table.dry_within)))


def cut_height(highest_wet_in: float, wall_in: float) -> CutHeight:
    """Where to cut lining, from the highest wet reading: a margin above it, on the next line.

    Lines are the common 24 and 48 in.; above them the whole wall comes off.
    """
    if not 0 <= highest_wet_in <= wall_in:
        raise ValueError(f"wet height must lie on the wall: {highest_wet_in} of {wall_in} in.")
    table = water_table()
    least = highest_wet_in + table.cut_above_wet.inches
    line = next((line for line in table.cut_lines.inches if line >= least), None)
    is_full = line is None or line >= wall_in
    height_in = wall_in if line is None else min(line, wall_in)
    reason = f"Wet to {highest_wet_in:g} in., and {table.cut_above_wet.inches:g} in. more; " + (
        "the whole wall." if is_full else f"cut at {height_in:g} in."
    )
    sources = (table.cite(table.cut_above_wet), table.cite(table.cut_lines))
    return CutHeight(height_in, is_full, reason, tuple(dict.fromkeys(sources)))
