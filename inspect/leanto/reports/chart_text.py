"""Charts in characters, for the terminal and for tests."""

from __future__ import annotations

from collections.abc import Iterator

from leanto.money import format_usd, round_to
from leanto.reports.characters import columns, printable
from leanto.reports.chart_blocks import (
    BothSpreads,
    Chart,
    CourseBar,
    CourseChart,
    CourseSpread,
    SpreadChart,
    SwingChart,
)
from leanto.reports.text_wrap import wrapped

_EIGHTHS = " ▁▂▃▄▅▆▇█"
_HIGH_LINES = 6
_USD_COLUMNS = 9


def chart_lines(chart: Chart, width: int) -> Iterator[str]:
    """The chart in lines of at most ``width`` columns; nothing for one without content."""
    match chart:
        case SwingChart():
            yield from _swings(chart, width)
        case SpreadChart():
            yield from _spread(chart, width)
        case CourseChart():
            yield from _courses(chart, width)
        case BothSpreads():
            yield from _both(chart, width)


def _swings(chart: SwingChart, width: int) -> Iterator[str]:
    name = max(4, min(38, width * 9 // 20, width - 2 * _USD_COLUMNS - 12))
    room = max(8, width - name - 2 * _USD_COLUMNS - 2)
    low, high = chart.ends_usd
    middle = _place(chart.middle_usd, low, high, room)
    for bar in chart.bars:
        left, right = (_place(usd, low, high, room) for usd in (bar.low_usd, bar.high_usd))
        cells = ["█" if left <= at <= right else " " for at in range(room)]
        cells[middle] = "│"
        yield (
            f"{_cut(bar.label, name)} {_usd(bar.low_usd):>{_USD_COLUMNS}}"
            f"{''.join(cells)}{_usd(bar.high_usd):>{_USD_COLUMNS}}"
        ).rstrip()


def _spread(chart: SpreadChart, width: int) -> Iterator[str]:
    counts = _fewer(chart.counts, width)
    yield from _hills(counts, max(counts) or 1, _HIGH_LINES)
    axis, letters = ["─"] * len(counts), [" "] * len(counts)
    legend = []
    for mark, letter in zip(chart.marks, "ABCDEF", strict=False):
        at = max(0, min(len(counts) - 1, int(chart.at(mark.usd) * len(counts))))
        while letters[at] != " " and at < len(counts) - 1:
            at += 1
        axis[at], letters[at] = "┴", letter
        legend.append(f"{letter} {mark.label} {_usd(mark.usd)}")
    yield "".join(axis)
    yield "".join(letters).rstrip()
    yield from wrapped("; ".join(legend), width)


def _hills(counts: tuple[int, ...], most: int, high: int) -> Iterator[str]:
    """Counts as bars of so many lines, in steps of an eighth."""
    for line in range(high, 0, -1):
        eighths = (count / most * high * 8 - (line - 1) * 8 for count in counts)
        yield "".join(_EIGHTHS[max(0, min(8, round(eighth)))] for eighth in eighths).rstrip()


def _both(chart: BothSpreads, width: int) -> Iterator[str]:
    """One hill above the other on the same axis."""
    keep, gut = (_fewer(one.counts, width) for one in (chart.keep, chart.gut))
    most = max(*keep, *gut, 1)
    for one, counts in ((chart.keep, keep), (chart.gut, gut)):
        yield from wrapped(spread_in_words(one), width)
        yield from _hills(counts, most, _HIGH_LINES // 2)
        yield "─" * len(counts)
    ends = (_usd(chart.low_usd), _usd(chart.high_usd))
    yield f"{ends[0]}{ends[1]:>{max(1, len(keep) - len(ends[0]))}}"


def spread_in_words(one: CourseSpread) -> str:
    return f"{one.label}: half under {_usd(one.p50)}, four in five under {_usd(one.p80)}"


def _courses(chart: CourseChart, width: int) -> Iterator[str]:
    room = max(8, width - 8 - 2 * _USD_COLUMNS)
    for name, keep, gut in chart.surfaces:
        yield from wrapped(name, width)
        yield _course(keep, chart.end_usd, room)
        yield _course(gut, chart.end_usd, room)
    if chart.surfaces:
        yield from wrapped("─ one in ten to nine in ten; █ one half to four in five", width)


def _course(bar: CourseBar, end_usd: float, room: int) -> str:
    p10, p50, p80, p90 = (
        _place(usd, 0.0, end_usd, room) for usd in (bar.p10, bar.p50, bar.p80, bar.p90)
    )
    cells = ["█" if p50 <= at <= p80 else "─" if p10 <= at <= p90 else " " for at in range(room)]
    return (
        f"  {bar.label:<5} {_usd(bar.p50):>{_USD_COLUMNS - 1}} {''.join(cells)}"
        f"{_usd(bar.p80):>{_USD_COLUMNS}}"
    )


def _fewer(counts: tuple[int, ...], width: int) -> tuple[int, ...]:
    """The counts, neighbors together where there are more than columns."""
    size = -(-len(counts) // width)
    return tuple(sum(counts[at : at + size]) for at in range(0, len(counts), size))


def _place(usd: float, low: float, high: float, room: int) -> int:
    share = 0.0 if high <= low else (usd - low) / (high - low)
    return max(0, min(room - 1, round(share * (room - 1))))


def _cut(text: str, width: int) -> str:
    """The text in exactly so many columns."""
    shown = printable(text).replace("\n", " ")
    while columns(shown) > width:
        shown = shown[:-2] + "…"
    return shown + " " * (width - columns(shown))


def _usd(amount: float) -> str:
    return format_usd(round_to(amount, 10))
