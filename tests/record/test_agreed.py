"""What was agreed, paid and opened: folded, undone, exported and read back the same."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, date, datetime
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import ValidationError

from leanto.record.agreed_entry import (
    AgreedLine,
    AgreedRate,
    AskedLine,
    BidAwarded,
    ChangeAsked,
    ChangeSettled,
    FoundWork,
    KeptPicture,
    Opened,
    OpeningStruck,
    Paid,
    PaymentStruck,
    pictures_of,
)
from leanto.record.document import parse_export
from leanto.record.entry import Body, Entry, Undone
from leanto.record.exchange import bodies_of, export_text
from leanto.record.fold import fold
from leanto.record.walk import Walk

AT = datetime(2026, 11, 25, 15, 0, tzinfo=UTC)
DAY = date(2026, 11, 25)

texts = st.text(st.characters(exclude_categories=["Cs"]), max_size=30)
usd = st.decimals(-99_999, 99_999, places=2)
numbers = st.integers(1, 4)
quantities = st.floats(0.1, 99_999, allow_nan=False)
pictures = st.builds(KeptPicture, digest=st.sampled_from(["a" * 64, "b" * 64]), original_name=texts)
lines = st.builds(
    AgreedLine,
    number=st.sampled_from(["1", "A1", "O3"]),
    kind=st.sampled_from(["line", "alternate", "by owner"]),
    id=st.just("strip@north"),
    title=texts,
    place=texts,
    quantity=quantities,
    usd=usd,
    ours_usd=st.none() | usd,
    said=texts,
)
asked = st.builds(
    AskedLine,
    opening=numbers,
    work=st.just("strip"),
    title=texts,
    place=texts,
    quantity=quantities,
    unit=st.just("each"),
    rate_usd=usd,
    basis=st.sampled_from(["agreed unit price", "price of the bid", "ours"]),
    said=texts,
)
bodies: st.SearchStrategy[Body] = st.one_of(
    st.builds(
        BidAwarded,
        digest=st.just("5" * 64),
        bidder=st.text("abc", min_size=1, max_size=9),
        form_id=st.just("abcdef"),
        lines=st.lists(lines, max_size=3).map(tuple),
        rates=st.lists(
            st.builds(AgreedRate, id=st.just("stud"), title=texts, unit=texts, usd=usd), max_size=2
        ).map(tuple),
        contingency_usd=usd,
        budget_usd=st.none() | usd,
        reason=texts,
        awarded_on=st.just(DAY),
    ),
    st.builds(
        Paid,
        number=numbers,
        line=st.sampled_from(["1", "all", "C1"]),
        usd=usd,
        paid_on=st.dates(date(2020, 1, 1), DAY),
        note=texts,
        receipt=st.none() | pictures,
    ),
    st.builds(PaymentStruck, number=numbers),
    st.builds(
        Opened,
        number=numbers,
        surface_id=st.just("main.north.inside"),
        opened_sqft=quantities,
        bad_sqft=quantities,
        found=st.lists(st.sampled_from(["rot", "cut or missing framing"]), max_size=2).map(tuple),
        works=st.lists(
            st.builds(FoundWork, work=st.just("stud"), quantity=quantities | quantities.map(float)),
            max_size=2,
        ).map(tuple),
        note=texts,
        pictures=st.lists(pictures, max_size=2).map(tuple),
        opened_on=st.just(DAY),
    ),
    st.builds(OpeningStruck, number=numbers),
    st.builds(
        ChangeAsked,
        number=numbers,
        lines=st.lists(asked, min_size=1, max_size=2).map(tuple),
        asked_on=st.just(DAY),
    ),
    st.builds(ChangeSettled, number=numbers, usd=st.none() | usd, settled_on=st.just(DAY)),
)


def folded(found: Sequence[Body]) -> Walk:
    return fold(Entry(id=n, at=AT, who="t", body=body) for n, body in enumerate(found, 1))


@settings(max_examples=60)
@given(st.lists(bodies, max_size=12))
def test_an_export_read_back_gives_the_same(found: list[Body]) -> None:
    walk = folded(found)

    document = parse_export(export_text(walk, job="x", walked_on=None), "export.yaml")
    again = folded(bodies_of(document, "export.yaml"))

    assert (again.award, again.payments, again.openings) == (
        walk.award,
        walk.payments,
        walk.openings,
    )
    assert again.changes == walk.changes


@settings(max_examples=60)
@given(st.lists(bodies, min_size=1, max_size=8))
def test_the_last_one_undone_leaves_what_was_before(found: list[Body]) -> None:
    assert folded([*found, Undone(entry=len(found))]) == folded(found[:-1])


@given(texts)
def test_the_text_of_an_owners_file_comes_back_as_it_was_typed(text: str) -> None:
    walk = folded([])

    document = parse_export(
        export_text(walk, job="x", walked_on=None, bidding_file=text), "export.yaml"
    )

    assert document.bidding_file == text


def test_what_is_about_something_gone_changes_nothing() -> None:
    gone = (
        PaymentStruck(number=1),
        OpeningStruck(number=1),
        ChangeSettled(number=1, usd=Decimal(5), settled_on=DAY),
    )

    assert folded(gone) == folded(())


@pytest.mark.parametrize("quantity", [0.0, 1e7, float("nan")])
def test_work_needs_a_quantity(quantity: float) -> None:
    with pytest.raises(ValidationError):
        FoundWork(work="stud", quantity=quantity)


def test_pictures_are_those_of_openings_and_receipts() -> None:
    kept = KeptPicture(digest="a" * 64)
    paid = Paid(number=1, line="all", usd=Decimal(1), paid_on=DAY, receipt=kept)

    assert pictures_of(paid) == (kept,)
    assert pictures_of(paid.model_copy(update={"receipt": None})) == ()
    assert pictures_of(PaymentStruck(number=1)) == ()
