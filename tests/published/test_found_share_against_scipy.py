"""How likely so much or more was thought behind a lining, against scipy's Beta distribution.

Source: scipy.stats.beta.sf, a general-purpose library.
"""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from scipy.stats import beta

from leanto.contract.compared import chance_of_at_least
from leanto.decision.unseen import Unseen


@pytest.mark.published("scipy", "library")
@pytest.mark.parametrize("share", [0.01, 0.1, 0.25, 0.5, 0.9])
@pytest.mark.parametrize(("p", "a", "b"), [(0.12, 1.4, 4.2), (0.53, 1.0, 3.0), (1.0, 2.0, 2.0)])
def test_so_much_or_more(p: float, a: float, b: float, share: float) -> None:
    decided = SimpleNamespace(unseen=Unseen(p, a, b))

    found = chance_of_at_least(decided, share)  # type: ignore[arg-type]

    # the program's slices are a four hundredth wide
    assert found == pytest.approx(p * float(beta.sf(share, a, b)), abs=0.006)
