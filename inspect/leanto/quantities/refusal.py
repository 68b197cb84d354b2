"""Refusals of typed quantities.

QuantityError          typed text that is no quantity, or not a believable one
  LengthError          the same, of a length
"""

from __future__ import annotations

from leanto.errors import LeantoError


class QuantityError(LeantoError, ValueError):
    """Typed text that cannot be taken as the quantity asked for.

    Also a ValueError, so that pydantic reports it with the field in which it was met.
    """


class LengthError(QuantityError):
    """Typed text that cannot be taken as a length."""
