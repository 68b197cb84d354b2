"""Pure functions that give their last results again for the very same arguments.

An assessment is made after every answer, and most of what it needs is the same as before. The
arguments are told apart by identity, not by content: looking them up costs nothing however large
they are, and a value that is never changed is its own content. They are held as long as the result.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from threading import Lock
from typing import ParamSpec, TypeVar

P = ParamSpec("P")
R = TypeVar("R")


def remembered(most: int) -> Callable[[Callable[P, R]], Callable[P, R]]:
    """Makes a pure function of frozen values remember that many results, the newest ones.

    The results are handed out again: nobody may change them. Arguments go by position.
    """

    def decorated(compute: Callable[P, R]) -> Callable[P, R]:
        held: dict[tuple[int, ...], tuple[tuple[object, ...], R]] = {}
        one_at_a_time = Lock()

        @wraps(compute)
        def again(*args: P.args, **kwargs: P.kwargs) -> R:
            assert not kwargs
            key = tuple(map(id, args))
            found = held.get(key)
            if found is None:
                found = (args, compute(*args, **kwargs))
                with one_at_a_time:
                    held[key] = found
                    if len(held) > most:
                        del held[next(iter(held))]
            return found[1]

        return again

    return decorated
