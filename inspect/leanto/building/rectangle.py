"""A rectangle on a surface."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Rectangle:
    """Feet from the left and from the bottom of a surface, seen by somebody facing it."""

    left_ft: float
    bottom_ft: float
    width_ft: float
    height_ft: float

    def __post_init__(self) -> None:
        if self.width_ft <= 0 or self.height_ft <= 0:
            raise ValueError("a rectangle needs a width and a height of more than zero")

    @property
    def right_ft(self) -> float:
        return self.left_ft + self.width_ft

    @property
    def top_ft(self) -> float:
        return self.bottom_ft + self.height_ft

    @property
    def area_sqft(self) -> float:
        return self.width_ft * self.height_ft

    @property
    def corners(self) -> tuple[tuple[float, float], ...]:
        """The four corners, counterclockwise from the bottom left."""
        return (
            (self.left_ft, self.bottom_ft),
            (self.right_ft, self.bottom_ft),
            (self.right_ft, self.top_ft),
            (self.left_ft, self.top_ft),
        )

    def reaches_into(self, other: Rectangle, slack_ft: float = 0.0) -> bool:
        """True when the two share ground, more than ``slack_ft`` of it each way."""
        across = min(self.right_ft, other.right_ft) - max(self.left_ft, other.left_ft)
        upright = min(self.top_ft, other.top_ft) - max(self.bottom_ft, other.bottom_ft)
        return across > slack_ft and upright > slack_ft
