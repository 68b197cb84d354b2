"""An awl does not sink deeper than the member: refused at entry, left out of an old record."""

from __future__ import annotations

import pytest

from leanto.building.kinds import Foundation
from leanto.building.model import Building
from leanto.checklist.condition import Condition
from leanto.errors import LeantoError
from leanto.job.acceptance import check_body
from leanto.job.fitting import fitted
from leanto.job.grounds import Grounds
from leanto.library import read_library
from leanto.places import checklists_dir
from leanto.record.entry import Measured
from leanto.record.observation import Observation, ObservationKey
from leanto.record.walk import Walk

INSIDE, OUTSIDE = "main.south.inside", "main.south.outside"


@pytest.fixture
def grounds(shed: Building) -> Grounds:
    """The shed, whose studs of 1938 measure 1-5/8 by 3-5/8 in., under the shipped checklists."""
    return Grounds.of(shed, read_library(shipped=checklists_dir()).checklist)


@pytest.fixture
def on_posts(shed: Building) -> Grounds:
    """The same shed on posts that stand in the ground."""
    posts = shed.model_copy(update={"foundation": Foundation.POSTS_IN_GROUND})
    return Grounds.of(posts, read_library(shipped=checklists_dir()).checklist)


def probe(station: str, item: str, depth_in: float) -> Measured:
    return Measured(station=station, item=item, measure="probe_depth_in", value=depth_in)


@pytest.mark.parametrize(
    ("station", "item", "depth_in"),
    [
        (INSIDE, "stud-feet", 3.625),
        (INSIDE, "stud-feet", 0.0),
        # No size is known of the wood that these are about.
        (OUTSIDE, "sill", 9.0),
    ],
)
def test_a_depth_that_can_be(grounds: Grounds, station: str, item: str, depth_in: float) -> None:
    check_body(probe(station, item, depth_in), grounds)


@pytest.mark.parametrize(
    ("station", "item", "depth_in", "said"),
    [
        (INSIDE, "stud-feet", 3.75, "The stud measures 3.625 in. here: an awl sinks 0 to 3.625"),
        ("main.floor", "floor-joists", 4.0, "The joist measures 3.625 in."),
        (INSIDE, "stud-feet", 13.0, "0 to 12 is possible"),
        (INSIDE, "stud-feet", -0.5, "0 to 12 is possible"),
    ],
)
def test_an_impossible_depth_is_refused_with_the_range(
    grounds: Grounds, station: str, item: str, depth_in: float, said: str
) -> None:
    with pytest.raises(LeantoError) as refused:
        check_body(probe(station, item, depth_in), grounds)
    assert said in str(refused.value)


def test_a_post_is_held_against_its_measured_width(on_posts: Grounds) -> None:
    key = ObservationKey(OUTSIDE, "post-feet")
    seen = Observation(key, Condition.FAILED, measures={"post_size_in": 5.5})
    walk = Walk(observations={key: seen})
    check_body(probe(OUTSIDE, "post-feet", 9.0), on_posts)
    check_body(probe(OUTSIDE, "post-feet", 5.5), on_posts, walk)
    with pytest.raises(LeantoError, match=r"The post measures 5\.5 in\."):
        check_body(probe(OUTSIDE, "post-feet", 6.0), on_posts, walk)


def test_a_width_is_held_against_the_depth_that_was_entered(on_posts: Grounds) -> None:
    key = ObservationKey(OUTSIDE, "post-feet")
    walk = Walk(observations={key: Observation(key, measures={"probe_depth_in": 3.0})})
    width = Measured(station=OUTSIDE, item="post-feet", measure="post_size_in", value=2.0)
    with pytest.raises(LeantoError, match=r"sinks 0 to 2 in\., not 3"):
        check_body(width, on_posts, walk)


def test_a_depth_of_an_old_record_is_left_out_with_a_word(grounds: Grounds) -> None:
    key = ObservationKey(INSIDE, "stud-feet")
    seen = Observation(key, Condition.FAILED, measures={"probe_depth_in": 5.0, "soft_count": 2.0})
    made = fitted(Walk(observations={key: seen}), grounds)
    assert made.walk.observations[key].measures == {"soft_count": 2.0}
    assert "The stud measures 3.625 in." in made.notices[0]
    assert made.notices[0].endswith("Left out.")
