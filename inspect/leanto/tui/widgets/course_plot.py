"""What keeping and gutting may cost, as two hills on one axis."""

from __future__ import annotations

from textual_plotext import PlotextPlot

from leanto.money import format_usd, round_to
from leanto.reports.chart_blocks import BothSpreads

_TICKS = 5


class CoursePlot(PlotextPlot):
    """Keep in full blocks, gut as a line of dots over them: told apart without color."""

    DEFAULT_CSS = """
    CoursePlot { height: 1fr; min-height: 8; padding: 0 1; }
    """

    def on_mount(self) -> None:
        self.auto_theme = False
        self.theme = "textual-clear"

    def show(self, chart: BothSpreads) -> None:
        """Draw a chart in place of the one before."""
        plot, bins = self.plt, len(chart.keep.counts)
        plot.clear_figure()
        step = (chart.high_usd - chart.low_usd) / bins
        middles = [chart.low_usd + step * (index + 0.5) for index in range(bins)]
        plot.bar(middles, list(chart.keep.counts), width=1, marker="sd")
        plot.plot(middles, list(chart.gut.counts), marker="*", color="default")
        plot.xlim(chart.low_usd, chart.high_usd)
        plot.ylim(0, chart.most * 1.05)
        width = chart.high_usd - chart.low_usd
        ticks = [chart.low_usd + width * index / (_TICKS - 1) for index in range(_TICKS)]
        plot.xticks(ticks, [format_usd(round_to(tick, 10)) for tick in ticks])
        plot.yticks([])
        self.refresh()
