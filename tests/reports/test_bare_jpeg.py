"""JPEG files freed of everything that is no picture."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pytest
from PIL import Image

from leanto.reports.bare_jpeg import bare_jpeg

SECRET = b"SECRET-PLACE"


def a_picture(mode: str = "RGB", size: tuple[int, int] = (61, 43)) -> Image.Image:
    gray = Image.linear_gradient("L").resize(size)
    return gray.convert(mode)


def saved(picture: Image.Image, **options: object) -> bytes:
    """As a camera would write it: place, thumbnail, remarks."""
    exif = Image.Exif()
    exif[0x010E] = SECRET.decode()
    exif.get_ifd(0x8825)[1] = "N"
    exif.get_ifd(0x8825)[2] = (48.0, 12.0, 3.0)
    out = BytesIO()
    picture.save(
        out, "JPEG", exif=exif, comment=SECRET, icc_profile=SECRET * 20, dpi=(72, 72), **options
    )
    return out.getvalue()


@pytest.mark.parametrize("mode", ["RGB", "L", "CMYK"])
@pytest.mark.parametrize("options", [{}, {"progressive": True}, {"restart_marker_rows": 1}])
def test_the_picture_stays_and_what_is_said_about_it_goes(
    mode: str, options: dict[str, object]
) -> None:
    before = saved(a_picture(mode), **options)
    assert SECRET in before

    bare = bare_jpeg(before)

    assert SECRET not in bare
    assert b"Exif" not in bare
    with Image.open(BytesIO(before)) as old, Image.open(BytesIO(bare)) as new:
        assert new.tobytes() == old.tobytes()
        assert not new.getexif()
        assert "comment" not in new.info
        assert "icc_profile" not in new.info


def test_what_follows_the_picture_is_cut_off() -> None:
    assert SECRET not in bare_jpeg(saved(a_picture()) + SECRET)


def test_a_thumbnail_in_the_first_segment_goes() -> None:
    plain = saved(a_picture())
    thumbnail = b"\xff\xe0\x00\x13JFIF\0\x01\x01\0\0\x01\0\x01\x01\x01abc"
    at = 4 + int.from_bytes(plain[4:6], "big")
    with_one = plain[:2] + thumbnail + plain[at:]
    assert b"abc" in with_one

    bare = bare_jpeg(with_one)

    assert b"abc" not in bare
    with Image.open(BytesIO(bare)) as picture:
        picture.load()


def test_bare_pictures_stay_as_they_are() -> None:
    bare = bare_jpeg(saved(a_picture()))

    assert bare_jpeg(bare) == bare


@pytest.mark.parametrize("length", [0, 1, 2, 3, 4, 20, 200, -2])
def test_a_file_cut_short_is_refused(length: int) -> None:
    with pytest.raises(ValueError, match=r"no JPEG|cut short"):
        bare_jpeg(saved(a_picture())[:length])


def test_another_kind_of_picture_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "a.png"
    a_picture().save(path)

    with pytest.raises(ValueError, match="no JPEG"):
        bare_jpeg(path.read_bytes())
