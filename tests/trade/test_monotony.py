"""More of what hurts never gives a better number, and more ground never less material."""

from __future__ import annotations

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from leanto.building.rectangle import Rectangle
from leanto.building.zones import union_area_sqft, union_width_ft
from leanto.trade.debris import debris_pile
from leanto.trade.design_values import design_values
from leanto.trade.mold import mold_band
from leanto.trade.roof_life import life_left
from leanto.trade.roofing import drip_edge_pieces, shingle_bundles, squares, underlayment_rolls
from leanto.trade.section_loss import ProbeDepths, face_loss
from leanto.trade.section_remedy import MemberRole, RemedyKind, lost_share, remedy
from leanto.trade.span import span_limit
from leanto.trade.water import cut_height
from leanto.trade.wiring.conductor import conductor
from leanto.trade.wiring.feed_need import WAYS, FeedNeed
from leanto.trade.wiring.feeder import Feeder, size_feeder
from leanto.trade.wiring.voltage_drop import drop_v

INCHES = st.floats(0, 1.5)
ROLES = st.sampled_from(MemberRole)
SEVERITY = {
    RemedyKind.KEEP: 0,
    RemedyKind.SISTER: 1,
    RemedyKind.REPLACE: 2,
    RemedyKind.ENGINEER: 2,
}


@given(probe=INCHES, more=INCHES, role=ROLES)
def test_a_deeper_probe_never_leaves_more_strength(
    probe: float, more: float, role: MemberRole
) -> None:
    before = face_loss(1.5, 5.5, ProbeDepths(top_in=probe))
    after = face_loss(1.5, 5.5, ProbeDepths(top_in=probe + more))
    assert after.section_modulus_share <= before.section_modulus_share
    assert after.inertia_share <= before.inertia_share
    assert lost_share(after, role) >= lost_share(before, role)
    assert SEVERITY[remedy(after, role).kind] >= SEVERITY[remedy(before, role).kind]


@given(
    depth_in=st.floats(3.5, 12),
    probe=st.floats(0, 1),
    more=st.floats(0, 1),
    live=st.floats(10, 100),
    extra=st.floats(0, 60),
)
def test_less_wood_or_more_load_never_spans_farther(
    depth_in: float, probe: float, more: float, live: float, extra: float
) -> None:
    def span_in(probe_in: float, live_psf: float) -> float:
        left = face_loss(1.5, depth_in, ProbeDepths(top_in=probe_in)).remaining
        return span_limit(
            design_values("hem_fir", "no_2", depth_in),
            breadth_in=1.5,
            depth_in=depth_in,
            spacing_in=16,
            live_psf=live_psf,
            dead_psf=10,
            deflection_limit=360,
            remaining=left,
        ).span_in

    assert span_in(probe + more, live) <= span_in(probe, live) + 1e-9
    assert span_in(probe, live + extra) <= span_in(probe, live) + 1e-9


@given(
    feet=st.floats(0, 500),
    farther=st.floats(0, 500),
    amps=st.floats(0.1, 100),
    more=st.floats(0, 50),
)
def test_distance_and_load_never_lose_less_voltage(
    feet: float, farther: float, amps: float, more: float
) -> None:
    ohm = conductor("6", "copper").ohm_per_kft
    assert drop_v(amps, feet + farther, ohm) >= drop_v(amps, feet, ohm)
    assert drop_v(amps + more, feet, ohm) >= drop_v(amps, feet, ohm)


@settings(max_examples=60)
@given(
    feet=st.floats(1, 400),
    farther=st.floats(0, 300),
    amps=st.floats(1, 90),
    way=st.sampled_from(WAYS),
)
def test_a_longer_feed_never_takes_thinner_wire(
    feet: float, farther: float, amps: float, way: object
) -> None:
    near = size_feeder(FeedNeed(load_a=amps, one_way_ft=feet), way)  # type: ignore[arg-type]
    far = size_feeder(FeedNeed(load_a=amps, one_way_ft=feet + farther), way)  # type: ignore[arg-type]
    if isinstance(far, Feeder):
        assert isinstance(near, Feeder)
        assert far.conductor.area_cmil >= near.conductor.area_cmil
        assert far.rating_a == near.rating_a


@given(
    left=st.floats(0, 10),
    width=st.floats(0.1, 10),
    wider=st.floats(0, 5),
    height=st.floats(0.1, 8),
)
def test_a_wider_zone_never_takes_less(
    left: float, width: float, wider: float, height: float
) -> None:
    other = Rectangle(3, 1, 4, 2)
    small = (Rectangle(left, 0, width, height), other)
    large = (Rectangle(left, 0, width + wider, height), other)
    assert union_area_sqft(large) >= union_area_sqft(small) - 1e-6
    assert union_width_ft(large) >= union_width_ft(small) - 1e-6


@given(area=st.floats(0, 5000), more=st.floats(0, 2000), waste=st.floats(0, 0.3))
def test_more_roof_never_takes_less_covering(area: float, more: float, waste: float) -> None:
    assert squares(area + more, waste) >= squares(area, waste)
    assert shingle_bundles(area + more, waste) >= shingle_bundles(area, waste)
    assert underlayment_rolls(area + more, 1, 400) >= underlayment_rolls(area, 1, 400)
    assert drip_edge_pieces(area + more, 0) >= drip_edge_pieces(area, 0)


@given(area=st.floats(0, 3000), more=st.floats(0, 1000))
def test_more_lining_never_weighs_less(area: float, more: float) -> None:
    small, large = debris_pile({"plaster": area}), debris_pile({"plaster": area + more})
    assert large.weight_lb.low >= small.weight_lb.low
    assert large.volume_cy.high >= small.volume_cy.high


@given(area=st.floats(0, 300), more=st.floats(0, 300))
def test_more_mold_never_falls_in_a_lesser_band(area: float, more: float) -> None:
    order = ("none", "small", "medium", "large")
    before, after = mold_band((area,)).size, mold_band((area, more)).size
    assert order.index(after) >= order.index(before)


@given(wet=st.floats(0, 90), higher=st.floats(0, 90))
def test_a_higher_tide_is_never_cut_lower(wet: float, higher: float) -> None:
    assume(wet + higher <= 96)
    assert cut_height(wet + higher, 96).height_in >= cut_height(wet, 96).height_in


@given(age=st.floats(0, 60), older=st.floats(0, 40))
def test_an_older_covering_never_has_more_left(age: float, older: float) -> None:
    before = life_left("wood-shingle", (age, age), "sound").years
    after = life_left("wood-shingle", (age + older, age + older), "sound").years
    assert before is not None and after is not None
    assert after.low <= before.low
    assert after.high is not None and before.high is not None and after.high <= before.high
