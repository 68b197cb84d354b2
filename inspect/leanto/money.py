"""Money: Decimal dollars, a low-likely-high spread, and the one rounding.

Sums and products keep every digit; amounts are rounded where they are shown.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal, InvalidOperation

Number = Decimal | int | float | str

_CENT = Decimal("0.01")
_DOLLAR = Decimal(1)


def exact(number: Number) -> Decimal:
    """The number as a Decimal, a float by its shortest decimal form (0.1 is a tenth)."""
    try:
        value = number if isinstance(number, Decimal) else Decimal(str(number))
    except InvalidOperation:
        raise ValueError(f"not a number: {number!r}") from None
    if not value.is_finite():
        raise ValueError(f"not a finite number: {number!r}")
    return value


def dollars(amount: Number) -> Decimal:
    """The amount in dollars rounded to the cent; half a cent goes away from zero."""
    return round_to(amount, _CENT)


def round_to(amount: Number, step: Number) -> Decimal:
    """The multiple of ``step`` nearest to the amount; half a step goes away from zero."""
    size = exact(step)
    if size <= 0:
        raise ValueError(f"no step to round to: {step!r}")
    steps = (exact(amount) / size).to_integral_value(ROUND_HALF_UP)
    return (steps * size).quantize(size) if size < 1 else steps * size


def format_usd(amount: Number, cents: bool = False) -> str:
    """The amount as ``$1,250``, or as ``$1,250.00`` with cents; below zero as ``-$1,250``."""
    rounded = round_to(amount, _CENT if cents else _DOLLAR)
    sign = "-" if rounded < 0 else ""
    return f"{sign}${abs(rounded):,.{2 if cents else 0}f}"


@dataclass(frozen=True, slots=True)
class Spread:
    """An amount that is not known exactly, in dollars: low <= likely <= high."""

    low: Decimal
    likely: Decimal
    high: Decimal

    def __post_init__(self) -> None:
        if not all(amount.is_finite() for amount in (self.low, self.likely, self.high)):
            raise ValueError(f"a spread needs finite amounts: {self}")
        if not self.low <= self.likely <= self.high:
            raise ValueError(f"a spread goes from low over likely to high: {self}")

    @classmethod
    def of(cls, low: Number, likely: Number, high: Number) -> Spread:
        """The spread of three plain numbers."""
        return cls(exact(low), exact(likely), exact(high))

    @classmethod
    def zero(cls) -> Spread:
        return cls(Decimal(0), Decimal(0), Decimal(0))

    @classmethod
    def total(cls, spreads: Iterable[Spread]) -> Spread:
        """The sum, low with low and high with high: the widest it can be."""
        return sum(spreads, start=cls.zero())

    def __add__(self, other: Spread) -> Spread:
        return Spread(self.low + other.low, self.likely + other.likely, self.high + other.high)

    def scaled(self, factor: Number) -> Spread:
        """The spread times a factor that is not below zero."""
        times = exact(factor)
        if times < 0:
            raise ValueError(f"a factor below zero would turn the spread around: {factor!r}")
        return Spread(self.low * times, self.likely * times, self.high * times)

    def rounded(self, step: Number = _CENT) -> Spread:
        """The spread with each amount rounded to a multiple of ``step``."""
        return Spread(
            round_to(self.low, step), round_to(self.likely, step), round_to(self.high, step)
        )


NOTHING = Spread.zero()
