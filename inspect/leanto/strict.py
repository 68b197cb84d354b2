"""The base of every model that data crosses a border through."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Strict(BaseModel):
    """Frozen, and refuses a key it does not know."""

    # Built when first used: a start uses few of the many models.
    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)
