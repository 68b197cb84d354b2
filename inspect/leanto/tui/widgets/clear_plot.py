"""A chart that takes its colors from the terminal."""

from __future__ import annotations

from textual_plotext import PlotextPlot

from leanto.money import format_usd, round_to


class ClearPlot(PlotextPlot):
    """Without colors of its own it reads in both looks."""

    def on_mount(self) -> None:
        self.auto_theme = False
        self.theme = "textual-clear"

    def mark_dollars(self, low_usd: float, high_usd: float, *, ticks: int, to: int) -> None:
        """Puts so many amounts below the chart, evenly, each rounded ``to`` dollars."""
        step = (high_usd - low_usd) / (ticks - 1)
        amounts = [low_usd + step * index for index in range(ticks)]
        self.plt.xlim(low_usd, high_usd)
        self.plt.xticks(amounts, [format_usd(round_to(usd, to)) for usd in amounts])
