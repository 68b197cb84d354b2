"""How a job shows amounts: in feet and inches or metric. The one place where amounts become text.

Amounts are kept, reckoned and recorded in one set of units; a display only makes text of them, so
nothing drifts by changing back and forth. What shows a job says which display holds, once, at its
edge (the command line, the app, the writing of a report); all below asks ``shown()``.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from enum import StrEnum
from typing import Literal

from leanto.quantities import length, unit
from leanto.quantities.metric import (
    KG_PER_LB,
    METRIC_UNITS,
    SQM_PER_SQFT,
    celsius,
    metric_area,
    metric_length,
    plain_number,
)
from leanto.quantities.prose import metric_words
from leanto.quantities.unit import Unit


class System(StrEnum):
    """What a job's amounts are shown in."""

    FEET = "feet and inches"
    METRIC = "metric"

    @property
    def other(self) -> System:
        return System.METRIC if self is System.FEET else System.FEET


@dataclass(frozen=True, slots=True)
class Display:
    """Makes text of amounts in one system."""

    system: System = System.FEET

    @property
    def is_metric(self) -> bool:
        return self.system is System.METRIC

    def length(self, ft: float, denominator: int = 8) -> str:
        """``7' 3 1/2"`` to 1/denominator inch, or ``2.223 m``; below a meter ``889 mm``."""
        if self.is_metric:
            return metric_length(ft, 1.0 if denominator <= 8 else 0.1)
        return length.format_ft_in(ft, denominator)

    def area(self, sqft: float) -> str:
        """``120 sq ft``, whole, or ``11.15 m²``."""
        return metric_area(sqft) if self.is_metric else f"{sqft:,.0f} sq ft"

    def measured(self, value: float, unit_code: str) -> tuple[float, str]:
        """The number of a measure and its unit: 12 ``in`` as 304.8 and ``mm``.

        The unit is one of a measure's; of one that is alike everywhere the number comes back as it
        is, and no unit.
        """
        match unit_code if self.is_metric else "":
            case "in":
                return value * 25.4, "mm"
            case "ft":
                return value * 0.3048, "m"
            case "sqft":
                return value * float(SQM_PER_SQFT), "m²"
            case "deg_f":
                return celsius(value), "°C"
        return value, ""

    @property
    def bare_length(self) -> Literal["ft", "m"]:
        """What a number without a unit means where it is typed for a length."""
        return "m" if self.is_metric else "ft"

    @property
    def bare_short_length(self) -> Literal["in", "mm"]:
        return "mm" if self.is_metric else "in"

    @property
    def bare_temperature(self) -> Literal["f", "c"]:
        return "c" if self.is_metric else "f"

    def weight(self, lb: float) -> str:
        """``1,250 lb``, or ``567 kg``; both whole."""
        return f"{lb * float(KG_PER_LB):,.0f} kg" if self.is_metric else f"{lb:,.0f} lb"

    def temperature(self, degrees_f: float) -> str:
        """``68 F`` as it was entered, or ``20 °C`` to a tenth."""
        if self.is_metric:
            return f"{plain_number(celsius(degrees_f), 1)} °C"
        return f"{degrees_f:g} F"

    def quantity(self, value: float | Decimal, of: Unit) -> str:
        """``1,250 sq ft`` or ``116.13 m²``; what would print as zero as ``under 0.01``."""
        metric = METRIC_UNITS.get(of) if self.is_metric else None
        if metric is None:
            return unit.format_quantity(value, of)
        exact = Decimal(str(value)) * metric.each
        if not exact.is_finite():
            raise ValueError(f"no quantity to print: {value!r}")
        finest = Decimal(1).scaleb(-metric.decimals)
        rounded = exact.quantize(finest, ROUND_HALF_UP)
        if exact and not rounded:
            return f"under {finest} {metric.symbol}"
        return f"{plain_number(rounded, metric.decimals)} {metric.symbol}"

    def number(self, value: float, of: Unit) -> float:
        """A quantity of the unit, in the unit that is shown for it; not rounded."""
        return float(Decimal(str(value)) * self._each(of))

    def label(self, of: Unit) -> str:
        """The unit after the number one: ``sq ft`` or ``m²``."""
        metric = METRIC_UNITS.get(of) if self.is_metric else None
        return metric.symbol if metric else of.label

    def plural(self, of: Unit) -> str:
        """The unit after any other number."""
        metric = METRIC_UNITS.get(of) if self.is_metric else None
        return metric.symbol if metric else of.plural

    def rate(self, usd: Decimal, of: Unit) -> Decimal:
        """A price for one of the unit as a price for one of the unit shown; exact."""
        return usd / self._each(of)

    @property
    def area_unit(self) -> str:
        return "m²" if self.is_metric else "sq ft"

    def words(self, text: str) -> str:
        """Words of our own with the amounts in them; not for what somebody typed."""
        return metric_words(text) if self.is_metric else text

    def _each(self, of: Unit) -> Decimal:
        metric = METRIC_UNITS.get(of) if self.is_metric else None
        return metric.each if metric else Decimal(1)


FEET = Display(System.FEET)
METRIC = Display(System.METRIC)
_DISPLAYS = {System.FEET: FEET, System.METRIC: METRIC}

# Asked anew each time: a screen lives on while its job is switched to the other system.
_asked: ContextVar[Callable[[], System]] = ContextVar("_asked", default=lambda: System.FEET)


def shown() -> Display:
    """The display that holds here; feet and inches where nobody said."""
    return _DISPLAYS[_asked.get()()]


def show_as(asked: Callable[[], System]) -> Callable[[], System]:
    """From here on, in this task and what it starts, ``asked`` says how amounts are shown.

    Returns what said it before, for ``restore_shown``.
    """
    before = _asked.get()
    _asked.set(asked)
    return before


def restore_shown(before: Callable[[], System]) -> None:
    """As it was before ``show_as``; may be called from another task than that was."""
    _asked.set(before)


@contextmanager
def showing(system: System) -> Iterator[Display]:
    """Inside, amounts are shown in the system."""
    token = _asked.set(lambda: system)
    try:
        yield _DISPLAYS[system]
    finally:
        _asked.reset(token)


def display_of(system: System) -> Display:
    return _DISPLAYS[system]


def format_ft_in(ft: float, denominator: int = 8) -> str:
    """The length as the display here shows it: ``7' 3 1/2"`` or ``2.223 m``."""
    return shown().length(ft, denominator)


def format_quantity(value: float | Decimal, of: Unit) -> str:
    """The quantity as the display here shows it: ``1,250 sq ft`` or ``116.13 m²``."""
    return shown().quantity(value, of)
