"""Where things lie on disk: the shipped data and the parts of a job folder."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from leanto.errors import LeantoError

_PACKAGE = Path(__file__).resolve().parent


@cache
def checklists_dir() -> Path:
    """The shipped checklists, rules, prices and tables: in the wheel, else in the checkout."""
    for candidate in (_PACKAGE / "checklists", _PACKAGE.parent.parent / "checklists"):
        if candidate.is_dir():
            return candidate
    raise LeantoError("leanto's checklists are missing.", "Install leanto again.")


@dataclass(frozen=True, slots=True)
class JobPlaces:
    """The parts of one job folder."""

    folder: Path

    @property
    def record(self) -> Path:
        return self.folder / "record.db"

    @property
    def photos(self) -> Path:
        return self.folder / "photos"

    @property
    def backups(self) -> Path:
        """Copies of the record from the last starts."""
        return self.folder / "backups"

    @property
    def bids(self) -> Path:
        """Returned bids as they came, each under the digest of its content."""
        return self.folder / "bids"

    @property
    def reports(self) -> Path:
        return self.folder / "reports"

    @property
    def checklists(self) -> Path:
        """The owner's own items, rules and prices, laid over the shipped ones by id."""
        return self.folder / "checklists"
