"""Loss of section, the pick test and a break decide what follows for a member."""

from __future__ import annotations

import pytest

from leanto.trade.section_loss import ProbeDepths, SectionLoss, face_loss
from leanto.trade.section_remedy import (
    MemberRole,
    RemedyKind,
    lost_share,
    remedy,
    sister_length,
)

REPEATED, MAIN, POST, PLATE = (
    MemberRole.REPEATED,
    MemberRole.MAIN,
    MemberRole.POST,
    MemberRole.PLATE,
)


def _thinned(lost: float) -> SectionLoss:
    """A member ten inches thick whose two sides together lost this share of area and strength."""
    return face_loss(10.0, 10.0, ProbeDepths(left_in=lost * 5, right_in=lost * 5))


# 10 percent: AASHTO element inspection, defect 1140 (seen). 20 percent: ASCE MOP 130 remark (seen).
# 50 percent: New York City waterfront guidelines (seen).
@pytest.mark.parametrize(
    ("role", "lost", "kind"),
    [
        (REPEATED, 0.0, RemedyKind.KEEP),
        (REPEATED, 0.099, RemedyKind.KEEP),
        (REPEATED, 0.10, RemedyKind.SISTER),
        (REPEATED, 0.50, RemedyKind.SISTER),
        (REPEATED, 0.501, RemedyKind.REPLACE),
        (REPEATED, 1.0, RemedyKind.REPLACE),
        (MAIN, 0.099, RemedyKind.KEEP),
        (MAIN, 0.10, RemedyKind.SISTER),
        (MAIN, 0.199, RemedyKind.SISTER),
        (MAIN, 0.20, RemedyKind.ENGINEER),
        (MAIN, 0.9, RemedyKind.ENGINEER),
        (PLATE, 0.099, RemedyKind.KEEP),
        (PLATE, 0.10, RemedyKind.REPLACE),
    ],
)
def test_what_follows_from_the_share_lost(role: MemberRole, lost: float, kind: RemedyKind) -> None:
    decided = remedy(_thinned(lost), role)
    assert decided.kind is kind
    assert decided.lost_share == pytest.approx(lost)


def test_a_post_counts_stiffness_where_a_beam_does_not() -> None:
    thinner = _thinned(0.09)
    assert lost_share(thinner, MAIN) == pytest.approx(0.09)
    assert lost_share(thinner, POST) == pytest.approx(1 - 0.91**3)
    assert remedy(thinner, MAIN).kind is RemedyKind.KEEP
    assert remedy(thinner, POST).kind is RemedyKind.ENGINEER


@pytest.mark.parametrize(
    ("role", "kind"),
    [
        (REPEATED, RemedyKind.SISTER),
        (MAIN, RemedyKind.ENGINEER),
        (POST, RemedyKind.ENGINEER),
        (PLATE, RemedyKind.REPLACE),
    ],
)
def test_early_decay_is_never_kept(role: MemberRole, kind: RemedyKind) -> None:
    assert remedy(_thinned(0.0), role).kind is RemedyKind.KEEP
    assert remedy(_thinned(0.0), role, brash=True).kind is kind


def test_early_decay_does_not_soften_a_replacement() -> None:
    assert remedy(_thinned(0.6), REPEATED, brash=True).kind is RemedyKind.REPLACE


@pytest.mark.parametrize("role", list(MemberRole))
def test_a_member_that_broke_or_dropped_asks_an_engineer(role: MemberRole) -> None:
    decided = remedy(_thinned(0.0), role, moved=True)
    assert decided.kind is RemedyKind.ENGINEER
    assert any("prop it first" in why for why in decided.reasons)


def test_reasons_name_shares_and_source_and_promise_nothing() -> None:
    reasons = " ".join(remedy(face_loss(1.5, 7.25, ProbeDepths(left_in=0.5)), REPEATED).reasons)
    assert "67% of bending strength" in reasons
    assert "twist" in reasons
    assert "New York City waterfront" in reasons
    assert "safe" not in reasons.lower()


@pytest.mark.parametrize(
    ("loss_in", "span_in", "lost", "length_in", "full"),
    [
        (12.0, 144.0, 0.15, 108.0, False),  # a third of the span, 48 in., either side
        (47.9, 144.0, 0.15, 143.9, False),
        (48.0, 144.0, 0.15, 144.0, True),  # the overlaps reach both bearings
        (12.0, 144.0, 0.249, 108.0, False),
        (12.0, 144.0, 0.25, 144.0, True),
        (12.0, 60.0, 0.15, 60.0, True),  # two feet either side make 60 in.
        (11.0, 60.0, 0.15, 59.0, False),
        (12.0, None, 0.15, 60.0, False),
        (12.0, None, 0.40, 60.0, False),
    ],
)
def test_length_of_the_piece_beside(
    loss_in: float, span_in: float | None, lost: float, length_in: float, full: bool
) -> None:
    piece = sister_length(loss_in, span_in, lost=lost)
    assert piece.length_in == pytest.approx(length_in)
    assert piece.full_length is full
    assert piece.engineer_to_approve is not full


def test_impossible_lengths_are_refused() -> None:
    with pytest.raises(ValueError, match="span"):
        sister_length(12.0, 0.0)
    with pytest.raises(ValueError, match="loss"):
        sister_length(-1.0)
