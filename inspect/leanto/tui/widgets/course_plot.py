"""What keeping and gutting may cost, as two hills on one axis."""

from __future__ import annotations

from leanto.reports.chart_blocks import BothSpreads
from leanto.tui.widgets.clear_plot import ClearPlot

_TICKS = 5


class CoursePlot(ClearPlot):
    """Keep in full blocks, gut as a line of dots over them: told apart without color."""

    DEFAULT_CSS = """
    CoursePlot { height: 1fr; min-height: 8; padding: 0 1; }
    """

    def show(self, chart: BothSpreads) -> None:
        """Draw a chart in place of the one before."""
        plot, bins = self.plt, len(chart.keep.counts)
        plot.clear_figure()
        step = (chart.high_usd - chart.low_usd) / bins
        middles = [chart.low_usd + step * (index + 0.5) for index in range(bins)]
        plot.bar(middles, list(chart.keep.counts), width=1, marker="sd")
        plot.plot(middles, list(chart.gut.counts), marker="*", color="default")
        plot.ylim(0, chart.most * 1.05)
        self.mark_dollars(chart.low_usd, chart.high_usd, ticks=_TICKS, to=10)
        plot.yticks([])
        self.refresh()
