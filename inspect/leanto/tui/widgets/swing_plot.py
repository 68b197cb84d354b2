"""What moves the total most, as bars that grow with the terminal."""

from __future__ import annotations

from textual.content import Content

from leanto.money import format_usd, round_to
from leanto.reports.chart_blocks import SwingChart
from leanto.tui.shown import on_one_line
from leanto.tui.widgets.clear_plot import ClearPlot

_TICKS = 3
_USD_COLUMNS = 9


class SwingPlot(ClearPlot):
    """A row for each thing, the largest swing on top, around the expected total."""

    DEFAULT_CSS = """
    SwingPlot { height: 14; padding: 0 1; }
    """

    def show(self, chart: SwingChart, width: int) -> None:
        """Draw a chart in place of the one before, names cut to two fifths of ``width``."""
        plot, count = self.plt, len(chart.bars)
        self.styles.height = count + 4
        plot.clear_figure()
        low, high = chart.ends_usd
        rows = [float(row) for row in range(count, 0, -1)]
        for row, bar in zip(rows, chart.bars, strict=True):
            plot.plot([bar.low_usd, bar.high_usd], [row, row], marker="sd")
        plot.vline(chart.middle_usd)
        room = max(12, width * 2 // 5 - _USD_COLUMNS)
        plot.yticks(
            rows,
            [
                f"{_cut(on_one_line(bar.label), room)}{_usd(bar.high_usd - bar.low_usd):>9}"
                for bar in chart.bars
            ],
        )
        plot.ylim(0.5, count + 0.5)
        self.mark_dollars(low, high, ticks=_TICKS, to=10)
        self.refresh()


def _cut(text: str, width: int) -> str:
    """The text in exactly so many cells."""
    cells = Content(text)
    kept = cells.truncate(width, ellipsis=True) if cells.cell_length > width else cells
    return kept.plain + " " * (width - kept.cell_length)


def _usd(amount: float) -> str:
    return format_usd(round_to(amount, 10))
