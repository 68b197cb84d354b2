from __future__ import annotations

from decimal import Decimal

import pytest

from leanto.quantities import Unit, format_quantity


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (1250, Unit.SQFT, "1,250 sq ft"),
        (1, Unit.SQFT, "1 sq ft"),
        (12.5, Unit.LF, "12.5 lin ft"),
        (3, Unit.EACH, "3 each"),
        (1, Unit.HOUR, "1 hour"),
        (2.5, Unit.HOUR, "2.5 hours"),
        (0, Unit.SHEET, "0 sheets"),
        (10, Unit.SHEET, "10 sheets"),
        (100, Unit.BAG, "100 bags"),
        (2, Unit.BOX, "2 boxes"),
        (1, Unit.BOARD_FOOT, "1 board foot"),
        (24, Unit.BOARD_FOOT, "24 board feet"),
        (2, Unit.POUND, "2 lb"),
        (1, Unit.LUMP, "1 lump sum"),
        (Decimal("1.005"), Unit.CY, "1.01 cu yd"),
        (2.675, Unit.GALLON, "2.68 gal"),
        (0.999, Unit.DAY, "1 day"),
        (0.004, Unit.CY, "under 0.01 cu yd"),
    ],
)
def test_a_quantity_is_printed_with_its_unit(value: float | Decimal, unit: Unit, text: str) -> None:
    assert format_quantity(value, unit) == text


def test_a_unit_is_found_by_the_word_in_the_data() -> None:
    assert Unit("sf") is Unit.SQFT
    assert Unit("lump sum") is Unit.LUMP
    assert f"{Unit.SQUARE}" == "square"


@pytest.mark.parametrize("unit", list(Unit))
def test_every_unit_has_a_label_for_one_and_for_many(unit: Unit) -> None:
    assert unit.label
    assert unit.plural


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_printing_no_number_is_a_mistake(value: float) -> None:
    with pytest.raises(ValueError, match="no quantity"):
        format_quantity(value, Unit.SQFT)
