"""How often the total falls where, as bars that grow with the terminal."""

from __future__ import annotations

from textual_plotext import PlotextPlot

from leanto.money import format_usd, round_to
from leanto.reports.chart_blocks import SpreadChart

_TICKS = 5


class SpreadPlot(PlotextPlot):
    """The distribution of the total, with a line for each mark and the budget."""

    DEFAULT_CSS = """
    SpreadPlot { height: 14; padding: 0 1; }
    """

    def on_mount(self) -> None:
        # Without colors of its own it reads in both looks, and a letter tells the lines apart.
        self.auto_theme = False
        self.theme = "textual-clear"

    def show(self, chart: SpreadChart) -> None:
        """Draw a chart in place of the one before."""
        plot, bins = self.plt, len(chart.counts)
        plot.clear_figure()
        step = (chart.high_usd - chart.low_usd) / bins
        middles = [chart.low_usd + step * (index + 0.5) for index in range(bins)]
        plot.bar(middles, list(chart.counts), width=1, marker="sd")
        for mark in chart.marks:
            plot.vline(mark.usd)
        plot.xlim(chart.low_usd, chart.high_usd)
        ticks = [
            chart.low_usd + (chart.high_usd - chart.low_usd) * index / (_TICKS - 1)
            for index in range(_TICKS)
        ]
        plot.xticks(ticks, [format_usd(round_to(tick, 100)) for tick in ticks])
        plot.yticks([])
        self.refresh()
