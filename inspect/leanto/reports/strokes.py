"""Which lines fill a zone on a sketch: told apart without color, alike in every writer."""

from __future__ import annotations

STROKES = {"failed": "/\\", "worn": "/", "no access": "-", "work": "/"}
"""By the word for the zone: ``/`` and ``\\`` slant, ``-`` is level. Other words have none."""
