"""Why a returned file is not read."""

from __future__ import annotations

from leanto.errors import LeantoError


class BidFileError(LeantoError):
    """A returned file that cannot be opened, or that is no bid of this job."""
