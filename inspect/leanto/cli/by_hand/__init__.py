"""Computations by hand, one a file."""

from __future__ import annotations

from leanto.cli.by_hand import (
    cut,
    debris,
    drop,
    emc,
    feed,
    heat,
    life,
    mold,
    paint,
    roof,
    section,
    span,
)

BY_HAND = (emc, section, span, feed, drop, roof, life, mold, cut, paint, debris, heat)
"""Each module has HELP, add_arguments(parser) and reckoned(arguments) -> Reckoning."""
