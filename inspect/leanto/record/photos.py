"""A picture -> a photo of the job: upright, shrunk, freed of what the camera wrote into it."""

from __future__ import annotations

import hashlib
import io
import struct
import warnings
import zlib
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from leanto.errors import PhotoError
from leanto.record.kept_file import keep_file
from leanto.record.observation import Photo

if TYPE_CHECKING:
    from PIL.Image import Image

LONG_SIDE_PX = 1600
JPEG_QUALITY = 82
MOST_PIXELS = 170_000_000
"""Of an ordinary JPEG, which is unpacked line by line and at an eighth of its size."""
MOST_PIXELS_PROGRESSIVE = 65_000_000
"""Of a JPEG that comes into focus while it loads: all of it is held until the end."""
MOST_PIXELS_OTHERWISE = 20_000_000
"""Of a picture that is unpacked whole before it is shrunk. All three stay under 500 MB."""
_MOST_BYTES = 200_000_000
_MOST_SCANS = 100
"""Cameras write a dozen; thousands are a way to keep a decoder busy for minutes."""
_START_OF_SCAN = b"\xff\xda"

# Pillow knows many more; these need no outside program and come from cameras and scanners.
_FORMATS = ("JPEG", "PNG", "WEBP", "TIFF", "BMP", "GIF")
_HEIF_BRANDS = (b"heic", b"heix", b"hevc", b"heim", b"heis", b"mif1", b"msf1", b"avif")
_BROKEN = (
    OSError,
    SyntaxError,
    ValueError,
    EOFError,
    LookupError,
    TypeError,
    OverflowError,
    struct.error,
    zlib.error,
)
"""What decoders raise over a file that is broken in one of many ways."""

_EXIF_PART = 0x8769
_DATE_TIME_ORIGINAL = 0x9003
_ORIENTATION = 0x0112
_MAX_NAME = 255


def import_photo(source: Path, folder: Path) -> Photo:
    """The photo, copied into ``folder`` as ``<digest>.jpg``; the source is left as it is.

    The copy is a JPEG of at most 1600 pixels along its long side, without the camera's data, so
    that no place or owner is passed on with a report. The same picture gives the same digest.
    Raises PhotoError.
    """
    name = _plain(source.name)
    _check_file(source, name)
    content, taken_at = _converted(source, name)
    digest = hashlib.sha256(content).hexdigest()
    keep_photo(content, digest, folder)
    return Photo(digest, name[-_MAX_NAME:], taken_at)


def when_taken(source: Path) -> datetime | None:
    """When the camera says the picture was taken, by its own clock; None when it does not say."""
    from PIL import Image

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            with Image.open(source, formats=_FORMATS) as picture:
                return _taken_at(picture)
    except (*_BROKEN, Image.DecompressionBombError):
        return None


def small_picture(file: Path, wide_px: int, high_px: int) -> Image:
    """A kept photo, as large as fits into so many pixels; PhotoError when it is not whole."""
    from PIL import Image as image

    try:
        with image.open(file, formats=("JPEG",)) as picture:
            picture.thumbnail((max(1, wide_px), max(1, high_px)))
            return picture.convert("RGB")
    except _BROKEN:
        raise PhotoError(
            "The photo's file is missing or broken.", "Add the picture again."
        ) from None


def photo_file(folder: Path, digest: str) -> Path:
    """Where the photo with this digest lies."""
    return folder / f"{digest}.jpg"


def is_whole(folder: Path, digest: str) -> bool:
    """Whether the photo is in the folder and is what its name says."""
    try:
        content = photo_file(folder, digest).read_bytes()
    except OSError:
        return False
    return hashlib.sha256(content).hexdigest() == digest


def keep_photo(content: bytes, digest: str, folder: Path) -> None:
    """The stored JPEG's bytes in the folder, under its digest; PhotoError when refused."""
    if is_whole(folder, digest):
        return
    try:
        folder.mkdir(exist_ok=True)
        keep_file(photo_file(folder, digest), content)
    except OSError as error:
        reason = error.strerror or str(error)
        raise PhotoError(
            f"The photo was not kept: {reason}.", "Put that right, then add it again."
        ) from error


def _check_file(source: Path, name: str) -> None:
    try:
        if source.is_dir():
            raise PhotoError(f"{name} is a folder.", "Name one picture in it.")
        if source.exists() and not source.is_file():
            raise PhotoError(f"{name} is no ordinary file.", "Name a picture.")
        with source.open("rb") as file:
            head = file.read(12)
    except FileNotFoundError:
        raise PhotoError(f"There is no file {_plain(str(source))}.", "Check its name.") from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is not valid"
        raise PhotoError(f"{name} cannot be read: {reason}.", "Check the file.") from None
    if head[4:8] == b"ftyp" and head[8:12] in _HEIF_BRANDS:
        raise PhotoError(
            f"{name} is a HEIC or AVIF picture, which cannot be read here.",
            "Save it as JPEG, or set the phone's camera to its most compatible format.",
        )


def _converted(source: Path, name: str) -> tuple[bytes, datetime | None]:
    """The bytes of the JPEG to keep, and when the camera says the picture was taken."""
    # Loaded only now: most commands never see a photo.
    from PIL import Image, UnidentifiedImageError

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # Pillow's own words on large or odd pictures
            with Image.open(source, formats=_FORMATS) as picture:
                _check_size(picture, source, name)
                taken_at = _taken_at(picture)
                upright = _upright(_shrunk(picture), _orientation(picture))
                out = io.BytesIO()
                upright.save(out, "JPEG", quality=JPEG_QUALITY)
    except UnidentifiedImageError:
        raise PhotoError(
            f"{name} is no picture that can be read here.", "Use a JPEG, PNG, WebP or TIFF file."
        ) from None
    except Image.DecompressionBombError:
        raise _too_large(name, MOST_PIXELS_OTHERWISE) from None
    except MemoryError:
        raise PhotoError(f"{name} does not fit into memory.", "Make it smaller.") from None
    except _BROKEN:
        raise PhotoError(
            f"{name} is broken or cut short.", "Copy it from the camera again."
        ) from None
    return out.getvalue(), taken_at


def _check_size(picture: Image, source: Path, name: str) -> None:
    """Nothing for a picture that can be decoded in bounded time and memory; else PhotoError."""
    most = MOST_PIXELS_OTHERWISE
    if picture.format == "JPEG":
        most = MOST_PIXELS_PROGRESSIVE if "progressive" in picture.info else MOST_PIXELS
    if picture.width * picture.height > most:
        raise _too_large(name, most)
    if source.stat().st_size > _MOST_BYTES:
        raise PhotoError(f"{name} is larger than 200 MB.", "Save it as an ordinary JPEG.")
    if picture.format == "JPEG" and source.read_bytes().count(_START_OF_SCAN) > _MOST_SCANS:
        raise PhotoError(f"{name} is packed in an odd way.", "Save it as an ordinary JPEG.")


def _too_large(name: str, most: int) -> PhotoError:
    return PhotoError(
        f"{name} has too many pixels.",
        f"Make it smaller, below {most // 1_000_000} million pixels.",
    )


def _shrunk(picture: Image) -> Image:
    """The picture in RGB on white, its long side at most 1600 pixels, with nothing beside it."""
    from PIL import Image as image

    width, height = picture.size
    scale = LONG_SIDE_PX / max(width, height)
    size = (max(1, round(width * scale)), max(1, round(height * scale)))
    if scale < 1:
        # JPEG decoders can skip detail; only exactly this size makes it skip enough.
        picture.draft("RGB", size)
    if picture.mode in ("RGBA", "LA", "PA") or "transparency" in picture.info:
        layered = picture.convert("RGBA")
        plain = image.new("RGB", layered.size, "white")
        plain.paste(layered, mask=layered.getchannel("A"))
    else:
        plain = picture.convert("RGB")
    if scale < 1:
        plain = plain.resize(size, image.Resampling.LANCZOS)
    plain.info.clear()
    return plain


def _upright(picture: Image, orientation: object) -> Image:
    from PIL import ImageOps

    picture.getexif()[_ORIENTATION] = orientation
    turned = ImageOps.exif_transpose(picture)
    turned.info.clear()
    return turned


def _orientation(picture: Image) -> object:
    try:
        return picture.getexif().get(_ORIENTATION, 1)
    except _BROKEN:
        return 1


def _taken_at(picture: Image) -> datetime | None:
    """The camera's own clock, which knows no time zone; None when it is not told."""
    try:
        said = picture.getexif().get_ifd(_EXIF_PART).get(_DATE_TIME_ORIGINAL)
        return datetime.strptime(str(said).strip("\0 "), "%Y:%m:%d %H:%M:%S")
    except _BROKEN:
        return None


def _plain(text: str) -> str:
    """The text without characters that can't be shown or stored, such as half ones."""
    return "".join(char if char.isprintable() else "\ufffd" for char in text)
