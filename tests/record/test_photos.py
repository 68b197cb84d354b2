from __future__ import annotations

import hashlib
import io
from datetime import datetime
from pathlib import Path

import pytest
from PIL import Image, ImageDraw

from leanto.errors import PhotoError
from leanto.record.photos import import_photo, is_whole, photo_file

RED, BLUE = (200, 30, 30), (30, 30, 200)
MAKE, GPS, EXIF, ORIENTATION, TAKEN = 0x010F, 0x8825, 0x8769, 0x0112, 0x9003


def picture(width: int = 400, height: int = 300) -> Image.Image:
    """Blue, with a red mark in the upper left corner."""
    made = Image.new("RGB", (width, height), BLUE)
    ImageDraw.Draw(made).rectangle((0, 0, width // 4, height // 4), fill=RED)
    return made


def camera_data(orientation: int = 1, taken: str = "2026:11:20 14:03:09") -> Image.Exif:
    data = Image.Exif()
    data[MAKE] = "A camera"
    data[ORIENTATION] = orientation
    data.get_ifd(EXIF)[TAKEN] = taken
    data.get_ifd(GPS).update({1: "N", 2: (47.0, 30.0, 0.0), 3: "E", 4: (8.0, 0.0, 0.0)})
    return data


def is_near(pixel: object, color: tuple[int, int, int]) -> bool:
    assert isinstance(pixel, tuple)
    return all(abs(int(a) - b) < 40 for a, b in zip(pixel, color, strict=True))


@pytest.mark.parametrize(
    ("size", "stored"),
    [
        ((1600, 1200), (1600, 1200)),
        ((1601, 1200), (1600, 1199)),
        ((4000, 3000), (1600, 1200)),
        ((3000, 4000), (1200, 1600)),
        ((20_000, 10), (1600, 1)),
        ((400, 300), (400, 300)),
        ((1, 1), (1, 1)),
    ],
)
def test_the_long_side_is_at_most_1600_pixels_and_nothing_is_enlarged(
    tmp_path: Path, size: tuple[int, int], stored: tuple[int, int]
) -> None:
    Image.new("RGB", size, BLUE).save(tmp_path / "a.jpg")

    photo = import_photo(tmp_path / "a.jpg", tmp_path / "photos")

    with Image.open(photo_file(tmp_path / "photos", photo.digest)) as kept:
        assert (kept.format, kept.mode, kept.size) == ("JPEG", "RGB", stored)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "TIFF", "WEBP"])
@pytest.mark.parametrize(
    ("orientation", "corner"),
    [(1, (5, 5)), (3, (-5, -5)), (6, (-5, 5)), (8, (5, -5))],
)
def test_the_photo_stands_upright(
    tmp_path: Path, kind: str, orientation: int, corner: tuple[int, int]
) -> None:
    source = tmp_path / "a.picture"
    picture(2400, 1800).save(source, kind, exif=camera_data(orientation))

    photo = import_photo(source, tmp_path / "photos")

    with Image.open(photo_file(tmp_path / "photos", photo.digest)) as kept:
        assert kept.size == ((1200, 1600) if orientation in (6, 8) else (1600, 1200))
        x, y = (at % side for at, side in zip(corner, kept.size, strict=True))
        assert is_near(kept.getpixel((x, y)), RED)
        others = {(5, 5), (-5, 5), (5, -5), (-5, -5)} - {corner}
        for x, y in others:
            assert is_near(kept.getpixel((x % kept.width, y % kept.height)), BLUE)


@pytest.mark.parametrize("size", [(400, 300), (2000, 1500)])
def test_the_cameras_data_stays_behind_and_the_time_is_kept(
    tmp_path: Path, size: tuple[int, int]
) -> None:
    source = tmp_path / "IMG_2041.JPG"
    picture(*size).save(source, exif=camera_data(), comment=b"call the owner", dpi=(72, 72))
    assert b"A camera" in source.read_bytes() and b"call the owner" in source.read_bytes()

    photo = import_photo(source, tmp_path / "photos")

    assert photo.original_name == "IMG_2041.JPG"
    assert photo.taken_at == datetime(2026, 11, 20, 14, 3, 9)
    kept = photo_file(tmp_path / "photos", photo.digest)
    for trace in (b"A camera", b"call the owner", b"Exif", b"2026:11:20"):
        assert trace not in kept.read_bytes()
    with Image.open(kept) as opened:
        assert not opened.getexif() and not opened.getexif().get_ifd(GPS)


@pytest.mark.parametrize("taken", ["", "    :  :     :  :  ", "2026:13:45 99:00:00", "yesterday"])
def test_a_time_that_is_none_is_left_out(tmp_path: Path, taken: str) -> None:
    picture().save(tmp_path / "a.jpg", exif=camera_data(taken=taken))

    assert import_photo(tmp_path / "a.jpg", tmp_path / "photos").taken_at is None


def test_the_digest_is_that_of_the_stored_file_and_the_same_each_time(tmp_path: Path) -> None:
    picture().save(tmp_path / "a.jpg", exif=camera_data())
    (tmp_path / "b.jpg").write_bytes((tmp_path / "a.jpg").read_bytes())
    folder = tmp_path / "photos"

    first = import_photo(tmp_path / "a.jpg", folder)
    second = import_photo(tmp_path / "b.jpg", folder)

    assert first.digest == second.digest
    assert [path.name for path in folder.iterdir()] == [f"{first.digest}.jpg"]
    content = photo_file(folder, first.digest).read_bytes()
    assert hashlib.sha256(content).hexdigest() == first.digest


def test_a_stored_photo_that_was_damaged_is_put_right(tmp_path: Path) -> None:
    picture().save(tmp_path / "a.jpg")
    folder = tmp_path / "photos"
    photo = import_photo(tmp_path / "a.jpg", folder)
    photo_file(folder, photo.digest).write_bytes(b"half")
    assert not is_whole(folder, photo.digest)

    import_photo(tmp_path / "a.jpg", folder)

    assert is_whole(folder, photo.digest)


def test_what_can_be_seen_through_stands_on_white(tmp_path: Path) -> None:
    Image.new("RGBA", (50, 50), (0, 0, 0, 0)).save(tmp_path / "a.png")
    palette = Image.new("P", (50, 50), 0)
    palette.save(tmp_path / "b.gif", transparency=0)

    for name in ("a.png", "b.gif"):
        photo = import_photo(tmp_path / name, tmp_path / "photos")
        with Image.open(photo_file(tmp_path / "photos", photo.digest)) as kept:
            assert is_near(kept.getpixel((20, 20)), (255, 255, 255))


@pytest.mark.parametrize("mode", ["L", "1", "CMYK", "I;16"])
def test_other_color_modes_are_read(tmp_path: Path, mode: str) -> None:
    Image.new(mode, (40, 30)).save(tmp_path / "a.tif")

    photo = import_photo(tmp_path / "a.tif", tmp_path / "photos")

    assert is_whole(tmp_path / "photos", photo.digest)


def test_names_that_cannot_be_shown_or_are_long_are_kept_as_far_as_they_can(
    tmp_path: Path,
) -> None:
    try:
        picture().save(tmp_path / "wall\n\udcff.jpg", "JPEG")
    except (OSError, UnicodeError):
        pytest.skip("this system has no such names")

    photo = import_photo(tmp_path / "wall\n\udcff.jpg", tmp_path / "photos")

    assert photo.original_name == "wall\ufffd\ufffd.jpg"


def jpeg() -> bytes:
    out = io.BytesIO()
    Image.effect_noise((400, 300), 90).save(out, "JPEG")
    return out.getvalue()


def png(size: tuple[int, int]) -> bytes:
    """A picture of one color, small as a file whatever its size."""
    out = io.BytesIO()
    Image.new("1", size).save(out, "PNG")
    return out.getvalue()


@pytest.mark.parametrize(
    ("content", "said"),
    [
        (b"", "no picture"),
        (b"just some text, not a picture at all", "no picture"),
        (b"%!PS-Adobe-3.0 EPSF-3.0\n%%BoundingBox: 0 0 9 9\n", "no picture"),
        (jpeg()[:3000], "broken or cut short"),
        (png((900, 900))[:100], "broken or cut short"),
        (png((60_000, 4_000)), "too many pixels"),
        (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", "HEIC"),
    ],
)
def test_what_is_no_picture_is_refused_in_one_line(
    tmp_path: Path, content: bytes, said: str
) -> None:
    (tmp_path / "a.jpg").write_bytes(content)

    with pytest.raises(PhotoError, match=said) as refused:
        import_photo(tmp_path / "a.jpg", tmp_path / "photos")

    assert "\n" not in str(refused.value)
    assert refused.value.remedy
    assert not (tmp_path / "photos").exists()


def test_a_file_that_is_not_there_and_a_folder_are_refused(tmp_path: Path) -> None:
    with pytest.raises(PhotoError, match=r"There is no file .*missing\.jpg"):
        import_photo(tmp_path / "missing.jpg", tmp_path / "photos")
    with pytest.raises(PhotoError, match="is a folder"):
        import_photo(tmp_path, tmp_path / "photos")
    with pytest.raises(PhotoError):
        import_photo(Path("a\0b.jpg"), tmp_path / "photos")


def test_a_photo_that_cannot_be_kept_leaves_nothing_behind(tmp_path: Path) -> None:
    picture().save(tmp_path / "a.jpg")
    (tmp_path / "photos").write_text("a file stands where the folder should be")

    with pytest.raises(PhotoError, match="was not kept"):
        import_photo(tmp_path / "a.jpg", tmp_path / "photos")

    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.jpg", "photos"]
