"""Print how gut or keep of the demo moves as one input changes: readings, access, prices.

Run it by hand: ``python tests/decision_moves.py``. Each row changes one thing against the demo as
it was walked and is assessed from the start; ``tests/decision/test_moves.py`` holds the direction
of every row.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, time
from decimal import Decimal
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
sys.path[:0] = [str(ROOT / "inspect"), str(ROOT / "tests")]

from invented import invented  # noqa: E402

from leanto.assessment import assess  # noqa: E402
from leanto.building.model import Building  # noqa: E402
from leanto.checklist.condition import Condition  # noqa: E402
from leanto.decision.model import Decision, SurfaceDecision  # noqa: E402
from leanto.decision.words import headline  # noqa: E402
from leanto.demo.walk import Picture, steps_of  # noqa: E402
from leanto.library import Library, read_library  # noqa: E402
from leanto.record.entry import Answered, Body, BuildingSet, Entry, Measured, Zoned  # noqa: E402
from leanto.record.fold import fold  # noqa: E402

NORTH, EAST, SOUTH, WEST = (f"main.{side}.inside" for side in ("north", "east", "south", "west"))
CEILING = "main.ceiling"


@dataclass(frozen=True, slots=True)
class Move:
    """One changed input, and the surface to watch."""

    text: str
    surface_id: str
    entered: tuple[Body, ...] = ()
    library: Callable[[Library], Library] = lambda library: library
    building: Callable[[Building], Building] = lambda building: building


def answered(station: str, item: str, condition: Condition, reason: str = "") -> Answered:
    return Answered(station=station, item=item, condition=condition, reason=reason)


def zoned(
    station: str, item: str, left: float, bottom: float, width: float, height: float
) -> Zoned:
    return Zoned(
        station=station,
        item=item,
        left_ft=left,
        bottom_ft=bottom,
        width_ft=width,
        height_ft=height,
    )


def hole(station: str, condition: Condition, left: float, bottom: float) -> tuple[Body, ...]:
    return (
        answered(station, "test-hole", condition),
        zoned(station, "test-hole", left, bottom, 1, 1),
    )


def priced(factor: str, *works: str) -> Callable[[Library], Library]:
    """All costs of some works times a factor."""
    times = Decimal(factor)

    def change(library: Library) -> Library:
        prices = dict(library.prices)
        for name in works:
            price = prices[name]
            hours, materials = (
                three.model_copy(
                    update={end: getattr(three, end) * times for end in ("low", "likely", "high")}
                )
                for three in (price.hours, price.materials_usd)
            )
            prices[name] = price.model_copy(update={"hours": hours, "materials_usd": materials})
        return replace(library, prices=prices)

    return change


def no_premium(library: Library) -> Library:
    zero = library.factors.change_order_pct.model_copy(
        update={"low": Decimal(0), "likely": Decimal(0), "high": Decimal(0)}
    )
    return replace(library, factors=library.factors.model_copy(update={"change_order_pct": zero}))


CEILING_WORK = ("strip-fiberboard", "line-gypsum", "finish-gypsum")
ASKED_INSIDE = (
    "stud-feet", "framing-moisture", "wall-stain", "opening-stain", "wall-base", "wet-lining",
    "hollow-wood", "ants", "fill-nests", "lining-state",
)  # fmt: skip
DRY = (
    answered(SOUTH, "wall-stain", Condition.WORN),
    Measured(station=SOUTH, item="wall-stain", measure="moisture_pct", value=12.0),
    answered(SOUTH, "wall-base", Condition.SOUND),
    answered(SOUTH, "stud-feet", Condition.SOUND),
)
LOOSE = (answered(WEST, "lining-state", Condition.FAILED), zoned(WEST, "lining-state", 0, 0, 4, 7))
WET = (
    answered(EAST, "wall-stain", Condition.FAILED),
    zoned(EAST, "wall-stain", 2, 4, 4, 3),
    answered(EAST, "stud-feet", Condition.FAILED),
    zoned(EAST, "stud-feet", 2, 0, 4, 2),
)
HIDDEN_EAST = tuple(
    answered(EAST, item, Condition.NO_ACCESS, "goods")
    for item in (*ASKED_INSIDE, "mold", "cable-damage")
)
SOUND_WEST = tuple(answered(WEST, item, Condition.SOUND) for item in ASKED_INSIDE)
NO_ASBESTOS = (answered(CEILING, "suspect-lining", Condition.SOUND),)


def unheated(building: Building) -> Building:
    return building.model_copy(update={"to_be_heated": False})


MOVES = (
    Move("as walked", SOUTH),
    Move("reading: stain and base dry, stud feet hard", SOUTH, DRY),
    Move("hole away from the signs: rot", SOUTH, hole(SOUTH, Condition.FAILED, 20, 5)),
    Move("hole away from the signs: sound", SOUTH, hole(SOUTH, Condition.SOUND, 20, 5)),
    Move("price: repair behind the lining x 1.5", SOUTH, (), priced("1.5", "repair-behind-lining")),
    Move("price: new board lining x 0.7", SOUTH, (), priced("0.7", "line-board", "finish-board")),
    Move("price: stripping boards x 4", SOUTH, (), priced("4", "strip-board")),
    Move("price: no change-order premium", SOUTH, (), no_premium),
    Move("use: not to be heated", SOUTH, building=unheated),
    Move("as walked", EAST),
    Move("access: east wall could not be reached", EAST, HIDDEN_EAST),
    Move("reading: wet stain and soft stud feet", EAST, WET),
    Move("as walked", WEST),
    Move("access: lumber moved, all sound inside", WEST, SOUND_WEST),
    Move("access: lumber moved, a third loose", WEST, (*SOUND_WEST, *LOOSE)),
    Move("as walked", CEILING),
    Move("reading: a paper says no asbestos", CEILING, NO_ASBESTOS),
    Move("price: gutting the ceiling x 3", CEILING, (), priced("3", *CEILING_WORK)),
)


@cache
def moved(at: int) -> Decision:
    """The decision after one move."""
    move, made, library = MOVES[at], invented("demo"), read_library()
    when = datetime.combine(made.written.date, time(12), tzinfo=UTC)
    building = move.building(made.building)
    steps = [step for step in steps_of(made.written) if not isinstance(step, Picture)]
    bodies: list[Body] = [BuildingSet(building=building), *steps, *move.entered]
    entries = [
        Entry(id=at, at=when, who="somebody", body=body) for at, body in enumerate(bodies, start=1)
    ]
    return assess(building, fold(entries), move.library(library), made.written.date).decision


def watched(at: int) -> SurfaceDecision:
    """The surface that a move is about, after it."""
    surfaces = moved(at).surfaces
    return next(one for one in surfaces if one.surface_id == MOVES[at].surface_id)


def rows() -> Iterator[str]:
    yield (
        f"{'one input changed':<50}{'surface':<9}{'chance':>7}{'share':>7}{'keep':>9}{'gut':>9}"
        f"{'pays at':>9}{'hole':>6}  {'answer':<24}{'N E S W C':<11}{'all':>9}"
    )
    for at, move in enumerate(MOVES):
        one, decision = watched(at), moved(at)
        by_id = {s.surface_id: s.chosen[0] for s in decision.surfaces}
        courses = " ".join(by_id[name] for name in (NORTH, EAST, SOUTH, WEST, CEILING))
        share = one.break_even_share
        pays = "-" if share is None else f"{share:.0%}"
        worth = "-" if one.hole is None else f"${one.hole.worth_usd:,.0f}"
        yield (
            f"{move.text:<50}{move.surface_id.split('.')[1]:<9}{one.unseen.p:>7.0%}"
            f"{one.unseen.mean:>7.1%}{usd(one.keep.expected)}{usd(one.gut.expected)}{pays:>9}"
            f"{worth:>6}  {headline(one):<24}{courses:<11}{usd(decision.chosen)}"
        )


def usd(amount: float) -> str:
    return f"{f'${amount:,.0f}':>9}"


if __name__ == "__main__":
    for row in rows():
        print(row)
