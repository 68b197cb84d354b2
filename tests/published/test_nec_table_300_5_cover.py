"""NFPA 70 (National Electrical Code), Table 300.5, 0 to 1000 V: least cover in inches. Seen."""

from __future__ import annotations

import pytest

from leanto.trade.wiring.burial import Method, Place, check_cover, least_cover_in
from leanto.trade.wiring.confirm import Verdict

# direct burial, rigid metal, PVC, GFCI branch (cable, raceway), low voltage (cable, raceway)
ROWS: list[tuple[Place, tuple[int, ...]]] = [
    (Place.YARD, (24, 6, 18, 12, 12, 6, 6)),
    (Place.TRENCH_UNDER_CONCRETE, (18, 6, 12, 6, 6, 6, 6)),
    (Place.UNDER_BUILDING, (0, 0, 0, 0, 0, 0, 0)),
    (Place.UNDER_SLAB, (18, 4, 4, 6, 4, 6, 4)),
    (Place.ROAD, (24, 24, 24, 24, 24, 24, 24)),
    (Place.HOUSE_DRIVEWAY, (18, 18, 18, 12, 12, 18, 18)),
    (Place.RUNWAY, (18, 18, 18, 18, 18, 18, 18)),
]


@pytest.mark.published("NFPA 70 (National Electrical Code), Table 300.5 cover", "seen")
@pytest.mark.parametrize(("place", "covers"), ROWS)
def test_cover_has_two_sides(place: Place, covers: tuple[int, ...]) -> None:
    for method, cover in zip(Method, covers, strict=True):
        assert cover == least_cover_in(place, method)
        assert check_cover(cover, place, method).verdict is Verdict.PASSES
        if cover:
            short = check_cover(cover - 0.5, place, method)
            assert short.verdict is Verdict.DOES_NOT_PASS


@pytest.mark.published("NFPA 70 (National Electrical Code), Table 300.5 cover", "seen")
def test_rigid_conduit_at_6_in_under_a_driveway_is_a_common_mistake() -> None:
    # Often repeated on the web; the table asks for 18 in under a house driveway, 24 in elsewhere.
    shallow = check_cover(6, Place.HOUSE_DRIVEWAY, Method.RIGID_METAL)
    assert shallow.verdict is Verdict.DOES_NOT_PASS
