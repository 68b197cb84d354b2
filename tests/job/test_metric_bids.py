"""A form that went out in metric comes back in metric, and stands beside one in feet."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from filled_bids import as_csv, as_pdf, as_xlsx, fields
from pypdf import PdfReader

from leanto.bids.in_feet import read_unit
from leanto.bids.model import BidForm
from leanto.job import Job
from leanto.job.package import send_package
from leanto.quantities import System, showing
from leanto.record.entry import ScopeAdded
from leanto.reports.text import to_text

PATCH, PROTECT = "patch-board@main.north.inside+1", "protect-room@building+2"
EACH = Decimal("0.09290304")
"""Square meters in a square foot; exact, NIST Special Publication 811, Appendix B.8; from memory"""


@pytest.fixture
def scoped(job: Job) -> Job:
    job.record(
        ScopeAdded(work="patch-board", surface_id="main.north.inside", quantity=118.4, place="")
    )
    job.record(ScopeAdded(work="protect-room", quantity=1))
    return job


def sent(job: Job, folder: Path, units: System) -> BidForm:
    job.show_in(units)
    return send_package(job, folder).form


def returned(of: BidForm, path: Path, **more: str) -> Path:
    filled = fields(of, more.pop("bidder", "Alder Works"), {PATCH: "100"}, **more)
    kind = path.suffix
    content = (
        as_pdf(of, filled, path.parent)
        if kind == ".pdf"
        else as_xlsx(of, filled)
        if kind == ".xlsx"
        else as_csv(of, filled)
    )
    path.write_bytes(content)
    return path


def test_a_metric_form_asks_for_metric_quantities_everywhere(scoped: Job, tmp_path: Path) -> None:
    form = sent(scoped, tmp_path / "out", System.METRIC)
    line = form.line(PATCH)
    assert line is not None
    # 118.4 sq ft are 11.0 m²: 10.9997, so eleven whole ones.
    assert (line.quantity, read_unit(line.unit)) == (11.0, "m²")
    text = "\n".join(
        page.extract_text() for page in PdfReader(tmp_path / "out" / "repair-scope.pdf").pages
    )
    assert "11 m²" in text and "sq ft" not in text


@pytest.mark.parametrize("name", ["bid.csv", "bid.xlsx", "bid.pdf"])
def test_a_metric_bid_is_read_in_metric_and_compared_in_feet(
    scoped: Job, tmp_path: Path, name: str
) -> None:
    form = sent(scoped, tmp_path / "out", System.METRIC)
    path = returned(form, tmp_path / name, **{f"amount|{PATCH}": "1100", "total": "1900"})
    bid = scoped.bids.add(path)
    (entry,) = bid.entries_of(PATCH)
    assert entry.unit_price.usd == 100 * EACH
    assert entry.quantity is None
    made = scoped.bids.table()
    (cell,) = next(line for line in made.lines if line.line.item_id == PATCH).cells
    assert cell.usd == pytest.approx(Decimal(1100))
    # With the 790 dollars of allowances that the form states.
    assert made.bids[0].faults == ()
    assert made.bids[0].summed == pytest.approx(Decimal(1900))


def test_forms_in_feet_and_in_metric_stand_on_one_base(scoped: Job, tmp_path: Path) -> None:
    feet = sent(scoped, tmp_path / "feet", System.FEET)
    first = returned(feet, tmp_path / "feet.csv", **{f"askunit|{_asked(feet)}": "9.290304"})
    metric = sent(scoped, tmp_path / "metric", System.METRIC)
    assert (feet.addendum, metric.addendum) == (0, 1)
    second = returned(
        metric, tmp_path / "m.csv", bidder="Birch", **{f"askunit|{_asked(metric)}": "100"}
    )
    scoped.bids.add(first)
    scoped.bids.add(second)
    made = scoped.bids.table()
    (a, b) = (line.cells for line in made.lines if line.line.item_id == PATCH).__next__()
    # 100 dollars a sq ft and 100 dollars a m², both for 11.0 m².
    assert a.usd / b.usd == pytest.approx(1 / EACH, rel=Decimal("0.001"))
    (one, other) = (standing.bid.unit_prices[_asked(feet)].usd for standing in made.bids)
    assert one is not None and other is not None
    assert one == other == Decimal("9.290304")


def test_showing_the_job_otherwise_changes_no_figure_and_asks_for_no_addendum(
    scoped: Job, tmp_path: Path
) -> None:
    form = sent(scoped, tmp_path / "out", System.FEET)
    scoped.bids.add(returned(form, tmp_path / "bid.csv"))
    feet = scoped.bids.table()
    scoped.show_in(System.METRIC)
    metric = scoped.bids.table()
    assert metric.notices == feet.notices
    assert [one.base for one in metric.bids] == [one.base for one in feet.bids]
    with showing(scoped.units):
        assert "11.06 m²" in to_text(scoped.bids.report(), 200)


def test_an_addendum_in_other_units_says_so_once(scoped: Job, tmp_path: Path) -> None:
    from leanto.reports.contents.package_changes import changes_between

    before = sent(scoped, tmp_path / "feet", System.FEET)
    after = sent(scoped, tmp_path / "metric", System.METRIC)
    told = changes_between(before, after)
    assert "Quantities and unit prices are given in metric now." in told
    assert not any(PATCH in line or "was" in line for line in told)


def _asked(form: BidForm) -> str:
    """A unit price that is asked for by the area."""
    return next(ask.id for ask in form.unit_prices if ask.unit.endswith("sq ft"))
