from __future__ import annotations

from typing import Any

import pytest
from pydantic import BaseModel, ValidationError

from leanto.quantities import LengthFt, Pitch


class Roof(BaseModel):
    eave: LengthFt
    pitch: Pitch = 6.0
    overhang: LengthFt | None = None


@pytest.mark.parametrize(
    ("given", "feet"), [("7' 6\"", 7.5), (7, 7.0), (7.5, 7.5), ("7.5", 7.5), (0, 0.0), (1000, 1000)]
)
def test_a_length_field_takes_text_or_bare_feet(given: Any, feet: float) -> None:
    assert Roof(eave=given).eave == feet


@pytest.mark.parametrize(
    "given", [-1, 1000.5, float("nan"), float("inf"), "inf", "-1", "seven", True, None, [7], {}]
)
def test_a_length_field_refuses_what_is_no_length(given: Any) -> None:
    with pytest.raises(ValidationError) as refused:
        Roof(eave=given)
    assert [error["loc"] for error in refused.value.errors()] == [("eave",)]


def test_a_length_field_may_be_optional() -> None:
    assert Roof(eave=8, overhang=None).overhang is None
    assert Roof.model_validate({"eave": 8, "overhang": '16"'}).overhang == pytest.approx(4 / 3)


@pytest.mark.parametrize(("given", "rise"), [("6:12", 6.0), (6, 6.0), (0.25, 0.25), (20, 20.0)])
def test_a_pitch_field_takes_text_or_a_bare_rise(given: Any, rise: float) -> None:
    assert Roof(eave=8, pitch=given).pitch == rise


@pytest.mark.parametrize(
    "given", [0, 0.2, 20.1, -6, "24:12", float("nan"), float("inf"), True, None, []]
)
def test_a_pitch_field_refuses_an_unbelievable_pitch(given: Any) -> None:
    with pytest.raises(ValidationError) as refused:
        Roof(eave=8, pitch=given)
    assert [error["loc"] for error in refused.value.errors()] == [("pitch",)]
