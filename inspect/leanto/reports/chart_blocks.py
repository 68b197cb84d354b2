"""Charts before they have a format: what the text and PDF writers draw."""

from __future__ import annotations

from dataclasses import dataclass

from leanto.cost.simulation import Distribution

BINS = 56


@dataclass(frozen=True, slots=True)
class SwingBar:
    """What one thing does to the total between its P10 and its P90."""

    label: str
    low_usd: float
    high_usd: float


@dataclass(frozen=True, slots=True)
class SwingChart:
    """Bars around the expected total, the longest first."""

    bars: tuple[SwingBar, ...]
    middle_usd: float

    @property
    def ends_usd(self) -> tuple[float, float]:
        """The least and the greatest amount on the axis."""
        lows = [bar.low_usd for bar in self.bars]
        highs = [bar.high_usd for bar in self.bars]
        return min([self.middle_usd, *lows]), max([self.middle_usd, *highs])


@dataclass(frozen=True, slots=True)
class Mark:
    """A line across a chart."""

    label: str
    usd: float


@dataclass(frozen=True, slots=True)
class SpreadChart:
    """How often a total falls into each of many equal steps."""

    low_usd: float
    high_usd: float
    counts: tuple[int, ...]
    marks: tuple[Mark, ...]

    @classmethod
    def of(cls, total: Distribution, marks: tuple[Mark, ...]) -> SpreadChart:
        """The draws between one in a hundred and 99 in a hundred, and as far as the marks lie."""
        low = min([total.at(0.01), *(mark.usd for mark in marks)])
        high = max([total.at(0.99), *(mark.usd for mark in marks)])
        margin = max((high - low) / (BINS - 2), 1.0)
        low, high = low - margin, high + margin
        counts = [0] * BINS
        for value in total.values:
            if low <= value < high:
                counts[min(BINS - 1, int((value - low) / (high - low) * BINS))] += 1
        return cls(low, high, tuple(counts), marks)

    def at(self, usd: float) -> float:
        """Where an amount lies on the axis, 0 to 1."""
        return (usd - self.low_usd) / (self.high_usd - self.low_usd)


@dataclass(frozen=True, slots=True)
class CourseBar:
    """One course of a surface as it was drawn."""

    label: str
    p10: float
    p50: float
    p80: float
    p90: float

    @classmethod
    def of(cls, label: str, drawn: Distribution) -> CourseBar:
        return cls(label, *(drawn.at(p) for p in (0.1, 0.5, 0.8, 0.9)))


@dataclass(frozen=True, slots=True)
class CourseChart:
    """Both courses of surfaces on one axis that starts at zero."""

    surfaces: tuple[tuple[str, CourseBar, CourseBar], ...]
    """Name, keep, gut."""

    @property
    def end_usd(self) -> float:
        bars = [bar for _, keep, gut in self.surfaces for bar in (keep, gut)]
        return max((bar.p90 for bar in bars), default=0.0) or 1.0


@dataclass(frozen=True, slots=True)
class CourseSpread:
    """One course over the steps of an axis."""

    label: str
    counts: tuple[int, ...]
    p50: float
    p80: float


@dataclass(frozen=True, slots=True)
class BothSpreads:
    """How often each of two courses costs how much, on one axis."""

    low_usd: float
    high_usd: float
    keep: CourseSpread
    gut: CourseSpread

    @classmethod
    def of(cls, keep: Distribution, gut: Distribution) -> BothSpreads:
        """Both from one in a hundred to 99 in a hundred."""
        low, high = min(keep.at(0.01), gut.at(0.01)), max(keep.at(0.99), gut.at(0.99))
        margin = max((high - low) / (BINS - 2), 1.0)
        low, high = max(0.0, low - margin), high + margin

        def counted(label: str, drawn: Distribution) -> CourseSpread:
            counts = [0] * BINS
            for value in drawn.values:
                if low <= value < high:
                    counts[min(BINS - 1, int((value - low) / (high - low) * BINS))] += 1
            return CourseSpread(label, tuple(counts), drawn.at(0.5), drawn.at(0.8))

        return cls(low, high, counted("keep", keep), counted("gut", gut))

    @property
    def most(self) -> int:
        """The highest count of both."""
        return max(*self.keep.counts, *self.gut.counts, 1)

    def at(self, usd: float) -> float:
        """Where an amount lies on the axis, 0 to 1."""
        return (usd - self.low_usd) / (self.high_usd - self.low_usd)


Chart = SwingChart | SpreadChart | CourseChart | BothSpreads
