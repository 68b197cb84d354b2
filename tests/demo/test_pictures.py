"""The drawn pictures."""

from __future__ import annotations

from pathlib import Path

import pytest
from PIL import Image, ImageStat

from leanto.demo.make import read_walk
from leanto.demo.pictures import PICTURES, draw_picture
from leanto.demo.pictures.canvas import HEIGHT_PX, WIDTH_PX


def test_every_picture_is_used_and_every_used_one_can_be_drawn() -> None:
    used = [name for stop in read_walk().stops for seen in stop.seen for name in seen.pictures]

    assert sorted(used) == sorted(PICTURES)
    assert len(used) >= 20


@pytest.mark.parametrize("name", PICTURES)
def test_a_picture_is_a_jpeg_with_something_on_it(name: str, tmp_path: Path) -> None:
    path = draw_picture(name, tmp_path)

    with Image.open(path) as picture:
        picture.load()
        assert (picture.format, picture.size) == ("JPEG", (WIDTH_PX, HEIGHT_PX))
        assert max(ImageStat.Stat(picture.convert("L")).stddev) > 15


def test_the_same_name_gives_the_same_bytes(tmp_path: Path) -> None:
    (tmp_path / "again").mkdir()

    first = draw_picture("rotten-sill", tmp_path)
    second = draw_picture("rotten-sill", tmp_path / "again")

    assert first.read_bytes() == second.read_bytes()


def test_the_plate_that_says_invented_is_on_every_picture(tmp_path: Path) -> None:
    for name in ("rusty-steel", "soft-floor"):
        with Image.open(draw_picture(name, tmp_path)) as picture:
            plate = picture.convert("L").crop((WIDTH_PX - 300, HEIGHT_PX - 42, WIDTH_PX, HEIGHT_PX))
            dark, light = plate.getextrema()
            assert dark < 60
            assert light > 200


def test_an_unknown_name_is_refused(tmp_path: Path) -> None:
    with pytest.raises(KeyError):
        draw_picture("no-such-thing", tmp_path)
