"""Results are given again for the very same arguments, and made anew for any others."""

from __future__ import annotations

import pytest

from leanto.remembered import remembered


def test_the_same_arguments_give_the_same_result_again() -> None:
    made = []

    @remembered(2)
    def listed(one: tuple[int, ...], other: str) -> list[object]:
        made.append((one, other))
        return [one, other]

    one, equal, other = (1, 2), (*map(int, "12"),), "x"
    assert listed(one, other) is listed(one, other)
    assert len(made) == 1
    assert listed(equal, other) == listed(one, other)
    assert len(made) == 2


def test_only_the_newest_results_are_kept() -> None:
    made = []

    @remembered(2)
    def once(one: tuple[int, ...]) -> int:
        made.append(one)
        return len(made)

    first, second, third = (1, 1), (2, 2), (3, 3)
    assert [once(first), once(second), once(third)] == [1, 2, 3]
    assert [once(second), once(third)] == [2, 3]
    assert once(first) == 4


def test_arguments_are_held_so_that_no_other_takes_their_place() -> None:
    @remembered(1000)
    def first_of(one: list[int]) -> int:
        return one[0]

    assert [first_of([number]) for number in range(500)] == list(range(500))


def test_an_error_is_not_remembered() -> None:
    tries = []

    @remembered(2)
    def fails(one: str) -> None:
        tries.append(one)
        raise ValueError(one)

    for _ in range(2):
        with pytest.raises(ValueError, match="x"):
            fails("x")
    assert len(tries) == 2
