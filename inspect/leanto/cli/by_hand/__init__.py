"""Computations by hand, one a file."""

from __future__ import annotations

from leanto.cli.by_hand import (
    box,
    breaker,
    cut,
    debris,
    drop,
    emc,
    feed,
    heat,
    insulation,
    life,
    mold,
    notch,
    paint,
    pest,
    roof,
    section,
    span,
    wet,
)

BY_HAND = (
    emc,
    section,
    notch,
    span,
    feed,
    drop,
    breaker,
    box,
    roof,
    life,
    mold,
    wet,
    cut,
    pest,
    paint,
    debris,
    insulation,
    heat,
)
"""Each module has HELP, add_arguments(parser) and reckoned(arguments) -> Reckoning."""
