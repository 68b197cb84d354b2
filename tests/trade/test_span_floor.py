"""The floor check: verdicts on each side of the limit, and what no table answers."""

from __future__ import annotations

from dataclasses import replace

import pytest

from leanto.trade.floor_check import check_floor, check_slab, check_sleepers, dirt_floor
from leanto.trade.framing_check import FramingCheck, Verdict
from leanto.trade.framing_member import Member
from leanto.trade.section_loss import rectangle

STAMPED = Member(1.5, 9.25, 16, species="spruce_pine_fir", grade="no_2", graded=True)


def says(check: FramingCheck, words: str) -> bool:
    return any(words in reason for reason in check.reasons)


@pytest.mark.parametrize(
    ("span_in", "verdict", "margin_in", "size"),
    [
        # 15 ft 5 in. is the printed limit of this joist.
        (184.0, Verdict.PASSES, 1.0, "2x10"),
        (185.0, Verdict.PASSES, 0.0, "2x10"),
        (185.1, Verdict.FAILS, -0.1, "2x12"),
        (214.0, Verdict.FAILS, -29.0, "2x12"),
        (214.1, Verdict.FAILS, -29.1, ""),
        (100.0, Verdict.PASSES, 85.0, "2x6"),
    ],
)
def test_stamped_joist_on_each_side_of_its_limit(
    span_in: float, verdict: Verdict, margin_in: float, size: str
) -> None:
    check = check_floor(STAMPED, span_in, "workshop")
    assert check.verdict is verdict
    assert check.allowed_in == 185
    assert check.margin_in == pytest.approx(margin_in)
    assert check.required_size == size
    assert check.governs == "bending"


@pytest.mark.parametrize(
    ("member", "words"),
    [
        (replace(STAMPED, graded=False), "No grade stamp"),
        (replace(STAMPED, species=None), "the species is not known"),
        (replace(STAMPED, species="oak"), "oak has none here"),
        (replace(STAMPED, grade="utility"), "No design values for the grade utility"),
        (replace(STAMPED, spacing_in=24.5), "tables stop at 24 in."),
        (replace(STAMPED, breadth_in=5.5), "is no dimension lumber"),
        (replace(STAMPED, breadth_in=1.375), "is no dimension lumber"),
        (replace(STAMPED, remaining=rectangle(1.2, 9.25)), "20% of its strength"),
    ],
    ids=["no stamp", "species", "oak", "grade", "spacing", "timber", "thin", "rot"],
)
def test_what_the_table_does_not_cover_goes_to_an_engineer(member: Member, words: str) -> None:
    check = check_floor(member, 120, "workshop")
    assert check.verdict is Verdict.ENGINEER
    assert says(check, words)


@pytest.mark.parametrize("member", [STAMPED, replace(STAMPED, breadth_in=1.5, depth_in=3.5)])
def test_edge_of_the_covered_sizes_and_spacing_passes(member: Member) -> None:
    assert check_floor(replace(member, spacing_in=24), 60, "workshop").verdict is Verdict.PASSES


def test_a_fifth_of_the_strength_is_where_the_engineer_comes_in() -> None:
    less = replace(STAMPED, remaining=rectangle(1.21, 9.25))
    assert check_floor(less, 120, "workshop").verdict is Verdict.PASSES


def test_unstamped_lumber_that_is_too_long_even_as_no_2_does_not_pass() -> None:
    old = Member(2.0, 6.0, 24)
    check = check_floor(old, 168, "workshop")
    assert check.verdict is Verdict.FAILS
    assert says(check, "No grade stamp")


def test_unknown_species_between_weakest_and_strongest_asks_an_engineer() -> None:
    """14 ft 6 in.: too long for southern pine No. 2 (14-0), within Douglas fir-larch (15-7)."""
    unknown = replace(STAMPED, species=None)
    assert check_floor(unknown, 174, "workshop").verdict is Verdict.ENGINEER
    assert check_floor(unknown, 187, "workshop").verdict is Verdict.ENGINEER
    assert check_floor(unknown, 188, "workshop").verdict is Verdict.FAILS


def test_an_unstamped_piece_never_counts_above_no_2_but_may_count_below() -> None:
    best = replace(STAMPED, grade="select_structural")
    guessed = check_floor(replace(best, graded=False), 150, "workshop")
    assert guessed.allowed_in == 185
    assert check_floor(best, 150, "workshop").allowed_in == 192
    poor = check_floor(replace(STAMPED, grade="no_3", graded=False), 150, "workshop")
    assert poor.allowed_in == 140


@pytest.mark.parametrize(("bearing_in", "verdict"), [(1.5, Verdict.PASSES), (1.4, Verdict.FAILS)])
def test_bearing_on_each_side_of_an_inch_and_a_half(bearing_in: float, verdict: Verdict) -> None:
    check = check_floor(replace(STAMPED, bearing_in=bearing_in), 144, "workshop")
    assert check.verdict is verdict


def test_crushing_can_ask_for_more_bearing_than_the_code_minimum() -> None:
    """125 psf and 10 psf over 15 ft at 24 in. put 2,025 lb on an end: 3.2 in. at 425 psi."""
    member = replace(STAMPED, depth_in=11.25, spacing_in=24, bearing_in=2.0)
    assert says(check_floor(member, 180, "storage"), "3.2 in. on wood")


@pytest.mark.parametrize(
    ("end_depth_in", "verdict"), [(6.94, Verdict.PASSES), (6.9, Verdict.FAILS)]
)
def test_end_loss_on_each_side_of_a_quarter_of_the_depth(
    end_depth_in: float, verdict: Verdict
) -> None:
    member = replace(STAMPED, end_depth_in=end_depth_in)
    assert check_floor(member, 120, "workshop").verdict is verdict


@pytest.mark.parametrize(
    ("use", "span_in", "verdict"),
    [
        ("sleeping room", 206, Verdict.PASSES),
        ("sleeping room", 207, Verdict.FAILS),
        ("garage", 120, Verdict.ENGINEER),
        ("garage", 180, Verdict.FAILS),
        ("storage", 150, Verdict.ENGINEER),
        ("storage", 190, Verdict.FAILS),
        ("animals", 150, Verdict.ENGINEER),
    ],
)
def test_use_sets_the_load(use: str, span_in: float, verdict: Verdict) -> None:
    """17 ft 2 in. is printed for 30 psf; garage, storage and animals are in no joist table."""
    assert check_floor(STAMPED, span_in, use).verdict is verdict


def test_tile_heavy_machine_and_weight() -> None:
    assert check_floor(STAMPED, 150, "studio", tiled=True).allowed_in == 169
    assert check_floor(STAMPED, 150, "workshop", heavy_machine=True).verdict is Verdict.ENGINEER
    assert check_floor(STAMPED, 100, "studio", dead_psf=20).verdict is Verdict.PASSES
    assert check_floor(STAMPED, 100, "studio", dead_psf=20.1).verdict is Verdict.ENGINEER


def test_unknown_use_and_impossible_sizes_are_refused() -> None:
    with pytest.raises(ValueError, match="no floor load"):
        check_floor(STAMPED, 150, "ballroom")
    with pytest.raises(ValueError, match="a span"):
        check_floor(STAMPED, 0, "workshop")
    with pytest.raises(ValueError, match="a size"):
        replace(STAMPED, depth_in=0)


SLEEPER = Member(1.5, 3.5, 16, species="douglas_fir", grade="no_2", graded=True)


@pytest.mark.parametrize(
    ("skid_spacing_in", "touches_ground", "treated", "verdict"),
    [
        (48.0, False, False, Verdict.PASSES),
        (48.0, True, True, Verdict.PASSES),
        (48.0, True, False, Verdict.FAILS),
        (100.0, False, True, Verdict.FAILS),
        (None, False, False, Verdict.NO_SPAN),
        (None, True, True, Verdict.NO_SPAN),
        (None, True, False, Verdict.FAILS),
    ],
)
def test_sleepers_span_from_skid_to_skid(
    skid_spacing_in: float | None, touches_ground: bool, treated: bool, verdict: Verdict
) -> None:
    check = check_sleepers(
        SLEEPER, skid_spacing_in, "workshop", touches_ground=touches_ground, treated=treated
    )
    assert check.verdict is verdict
    assert any("Skids" in question for question in check.questions)
    assert (check.allowed_in is None) == (skid_spacing_in is None)


def test_sleepers_on_the_ground_count_as_wet() -> None:
    dry, wet = (
        check_sleepers(SLEEPER, 48, "workshop", touches_ground=ground, treated=True)
        for ground in (False, True)
    )
    assert (wet.allowed_in or 0) < (dry.allowed_in or 0)
    assert says(wet, "above 19 percent moisture")


@pytest.mark.parametrize(
    ("width_in", "offset_in", "settled", "verdict"),
    [
        (0.0, 0.0, False, Verdict.NO_SPAN),
        (0.24, 0.24, False, Verdict.NO_SPAN),
        (0.25, 0.0, False, Verdict.ENGINEER),
        (0.0, 0.25, False, Verdict.ENGINEER),
        (0.0, 0.0, True, Verdict.ENGINEER),
    ],
)
def test_slab_has_no_span_but_its_cracks_ask(
    width_in: float, offset_in: float, settled: bool, verdict: Verdict
) -> None:
    check = check_slab(
        "workshop", crack_width_in=width_in, crack_offset_in=offset_in, settled=settled
    )
    assert check.verdict is verdict
    assert check.span_in is None
    assert len(check.questions) >= 5


def test_dirt_floor_names_the_load_of_a_new_one() -> None:
    check = dirt_floor("sleeping room")
    assert check.verdict is Verdict.NO_SPAN
    assert says(check, "30 psf")


def test_the_answer_comes_first_and_every_number_has_its_source() -> None:
    check = check_floor(replace(STAMPED, remaining=rectangle(1.5, 8.75)), 144, "workshop")
    assert check.reasons[0] == (
        "Clear span 12 ft 0 in.; what is left of 1.5 x 9.25 in. at 16 in. on center may span "
        "14 ft 7 in.: 31 in. to spare."
    )
    assert says(check, "National Design") or says(check, "NDS Supplement")
    assert says(check, "International Residential Code, 2018, Table R301.5")
    assert says(check, "weaker than it looks")


def test_no_output_calls_anything_safe() -> None:
    checks = (
        check_floor(STAMPED, 120, "workshop"),
        check_sleepers(SLEEPER, 48, "studio", touches_ground=True, treated=False),
        check_slab("garage", settled=True, heavy_machine=True),
        dirt_floor("storage"),
    )
    for check in checks:
        words = " ".join((check.verdict, *check.reasons, *check.questions, *check.cautions))
        assert "safe" not in words.lower()
        assert check.reasons
