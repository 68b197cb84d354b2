"""The allowance of a line: every step by hand."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest
from small_shed import make_work, three

from leanto.building.surface import Surface
from leanto.cost.build_up import price_lines
from leanto.cost.estimate import CostLine
from leanto.cost.price import Factors, Price
from leanto.scope.build import build_scope
from leanto.scope.call import Call
from leanto.scope.mark import Mark
from leanto.scope.work import Trade


def _factors() -> Factors:
    return Factors.model_validate(
        {
            "wages": [
                {
                    "trade": trade,
                    "hourly_usd": three(20, 25, 30),
                    "source": "made up",
                    "dated": date(2026, 1, 1),
                }
                for trade in Trade
            ],
            "burden": Decimal("1.4"),
            "burden_source": "made up",
            "region": Decimal("1.1"),
            "region_source": "made up",
            "overhead_pct": 10,
            "profit_pct": 10,
            "sales_tax_pct": 5,
            "markup_source": "made up",
            "poor_access": three(1, 1.5, 2),
            "poor_access_source": "made up",
            "change_order_pct": three(10, 20, 30),
            "change_order_source": "made up",
            "haul_usd_per_lb": three(0.05, 0.1, 0.2),
            "haul_source": "made up",
            "crew": three(1, 1, 1),
            "prices": three(1, 1, 1),
            "shared_source": "made up",
        }
    )


def _lines(
    surfaces: dict[str, Surface],
    calls: list[Call],
    minimum: int = 0,
    by_owner: tuple[str, ...] = (),
) -> tuple[CostLine, ...]:
    work = make_work("patch", waste_pct=10, purchase={"size": 32, "name": "sheet"})
    price = Price.model_validate(
        {
            "work": "patch",
            "hours": three(0.1, 0.2, 0.4),
            "materials_usd": three(1, 2, 3),
            "minimum_usd": minimum,
            "debris_lb": 2,
            "source": "made up",
            "dated": date(2026, 1, 1),
        }
    )
    scope = build_scope(calls, surfaces, {"patch": work})
    items = [
        replace(item, mark=Mark.BY_OWNER) if item.surface_id in by_owner else item
        for item in scope.items
    ]
    return price_lines(items, {"patch": price}, _factors())


def test_a_line_is_built_up_step_by_step(surfaces: dict[str, Surface]) -> None:
    (line,) = _lines(surfaces, [Call("patch", "main.north.inside", quantity=60.0)])
    # hours 60 x .2 = 12; labor 12 x 25 x 1.4 x 1.1 = 462
    # bought 66 -> 3 sheets = 96 sq ft; materials 96 x 2 x 1.05 = 201.60
    # haul 60 x 2 lb x .10 = 12; (462 + 201.60 + 12) x 1.21 = 817.476
    assert line.labor_hours.likely == Decimal(12)
    assert line.labor.likely == pytest.approx(Decimal("559.02"))
    assert line.materials.likely == pytest.approx(Decimal("243.936"))
    assert line.haul.likely == pytest.approx(Decimal("14.52"))
    assert line.total.likely == pytest.approx(Decimal("817.476"))
    assert line.labor + line.materials + line.haul == line.total


def test_poor_access_makes_labor_dearer_and_nothing_else(surfaces: dict[str, Surface]) -> None:
    (open_,) = _lines(surfaces, [Call("patch", "main.north.inside", quantity=60.0)])
    (poor,) = _lines(
        surfaces, [Call("patch", "main.north.inside", quantity=60.0, poor_access=True)]
    )
    assert poor.labor.likely == pytest.approx(open_.labor.likely * Decimal("1.5"))
    assert poor.materials == open_.materials


@pytest.mark.parametrize(("minimum", "expected"), [(0, None), (10, None), (900, 900)])
def test_two_places_of_one_work_share_one_minimum(
    surfaces: dict[str, Surface], minimum: int, expected: int | None
) -> None:
    calls = [
        Call("patch", surface_id, quantity=8.0)
        for surface_id in ("main.north.inside", "main.south.inside")
    ]
    lines = _lines(surfaces, calls, minimum)
    total = sum(line.total.likely for line in lines)
    plain = sum(line.total.likely for line in _lines(surfaces, calls))
    assert total == pytest.approx(Decimal(expected) if expected else plain)


def test_the_explanation_carries_the_figures(surfaces: dict[str, Surface]) -> None:
    (line,) = _lines(surfaces, [Call("patch", "main.north.inside", quantity=60.0)])
    for figure in ("12.0 h", "$25.00", "1.4 burden", "$202 materials", "$12 haul", "$817"):
        assert figure in line.explanation


def test_a_line_by_the_owner_costs_materials_and_haul_alone(surfaces: dict[str, Surface]) -> None:
    call = Call("patch", "main.north.inside", quantity=60.0)
    (line,) = _lines(surfaces, [call], minimum=5000, by_owner=("main.north.inside",))
    # materials 201.60 and haul 12 without the 1.21 of overhead and profit, and no minimum charge
    assert line.labor.likely == 0
    assert line.labor_hours.likely == 0
    assert line.total.likely == pytest.approx(Decimal("213.60"))
    assert line.own_hours.likely == Decimal(12)
    # saved: 817.476 - 213.60
    assert line.saved.likely == pytest.approx(Decimal("603.876"))
    assert "by owner" in line.explanation


def test_a_line_by_the_owner_takes_no_part_of_the_minimum(surfaces: dict[str, Surface]) -> None:
    calls = [
        Call("patch", surface_id, quantity=8.0)
        for surface_id in ("main.north.inside", "main.south.inside")
    ]
    lines = _lines(surfaces, calls, minimum=900, by_owner=("main.north.inside",))
    by_surface = {line.item.surface_id: line.total.likely for line in lines}
    assert by_surface["main.south.inside"] == pytest.approx(Decimal(900))
    assert by_surface["main.north.inside"] < 100
