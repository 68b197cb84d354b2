"""How often the total falls where, as bars that grow with the terminal."""

from __future__ import annotations

from leanto.reports.chart_blocks import SpreadChart
from leanto.tui.widgets.clear_plot import ClearPlot

_TICKS = 5


class SpreadPlot(ClearPlot):
    """The distribution of the total, with a line for each mark and the budget."""

    DEFAULT_CSS = """
    SpreadPlot { height: 14; padding: 0 1; }
    """

    def show(self, chart: SpreadChart) -> None:
        """Draw a chart in place of the one before."""
        plot, bins = self.plt, len(chart.counts)
        plot.clear_figure()
        step = (chart.high_usd - chart.low_usd) / bins
        middles = [chart.low_usd + step * (index + 0.5) for index in range(bins)]
        plot.bar(middles, list(chart.counts), width=1, marker="sd")
        for mark in chart.marks:
            plot.vline(mark.usd)
        self.mark_dollars(chart.low_usd, chart.high_usd, ticks=_TICKS, to=100)
        plot.yticks([])
        self.refresh()
