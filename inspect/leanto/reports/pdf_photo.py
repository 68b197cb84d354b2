"""Photos in the PDF: no more pixels than print shows, JPEG bytes passed through."""

from __future__ import annotations

import os
from collections.abc import Callable
from concurrent.futures import Future, ThreadPoolExecutor
from dataclasses import dataclass
from functools import cache, lru_cache
from io import BytesIO
from pathlib import Path

from PIL import Image, ImageOps, UnidentifiedImageError
from reportlab.lib.utils import ImageReader
from reportlab.platypus import Flowable

from leanto.record.observation import Photo
from leanto.reports.fonts import Typesetter
from leanto.reports.pdf_style import GRAY, LIGHT, PALE
from leanto.reports.pdf_text import draw_text

PhotoPath = Callable[[Photo], Path]
DPI = 200
_QUALITY = 82
_MISSING_SHAPE = (4, 3)
_ORIENTATION = 0x0112
_LYING = (5, 6, 7, 8)
"""Orientations in which width and height change places."""
_BROKEN = (OSError, UnidentifiedImageError, Image.DecompressionBombError, SyntaxError, ValueError)


class PhotoFrame(Flowable):
    """A photo scaled into a frame; an empty frame that says so when the file is not readable."""

    def __init__(self, path: Path, widest_pt: float, highest_pt: float, setter: Typesetter) -> None:
        super().__init__()
        self._setter = setter
        self._photo = _prepared(path, *_state(path), widest_pt, highest_pt)
        shape = self._photo.shape if self._photo else _MISSING_SHAPE
        scale = min(widest_pt / shape[0], highest_pt / shape[1])
        self.width, self.height = shape[0] * scale, shape[1] * scale

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        data = self._photo.data.result() if self._photo else None
        if data is not None:
            self.canv.drawImage(_Jpeg(BytesIO(data)), 0, 0, self.width, self.height)
            return
        self.canv.setFillColor(PALE)
        self.canv.setStrokeColor(LIGHT)
        self.canv.rect(0, 0, self.width, self.height, fill=1)
        draw_text(
            self.canv,
            self.width / 2,
            self.height / 2,
            "picture not found",
            self._setter,
            8,
            align="center",
            color=GRAY,
        )


class _Jpeg(ImageReader):
    """A JPEG that is named by its own bytes: reportlab unpacks every pixel for a name."""

    def getRGBData(self) -> bytes:
        self._dataA = None
        data: bytes = self.fp.getvalue()
        return data


@dataclass(frozen=True, slots=True)
class _Prepared:
    """A photo that is being scaled while the pages are laid out."""

    shape: tuple[int, int]
    """Pixels as they will be embedded."""
    data: Future[bytes | None]
    """The JPEG bytes; None where the file turns out not to be readable."""


@cache
def _workers() -> ThreadPoolExecutor:
    """Decoding and scaling leave Python alone, so that all cores work."""
    return ThreadPoolExecutor(os.cpu_count() or 2, thread_name_prefix="leanto-photo")


def _state(path: Path) -> tuple[int, int]:
    """Size and time of a file, by which a changed one is known; zeros for none."""
    try:
        found = path.stat()
    except OSError:
        return 0, 0
    return found.st_size, found.st_mtime_ns


@lru_cache(maxsize=2048)
def _prepared(
    path: Path, _size: int, _changed_ns: int, widest_pt: float, highest_pt: float
) -> _Prepared | None:
    """The photo for frames of this size, scaled once for all reports; None for no picture."""
    try:
        with Image.open(path) as image:
            scale = min(widest_pt / image.width, highest_pt / image.height) * DPI / 72
            fits = image.format == "JPEG" and image.mode in ("RGB", "L") and not image.getexif()
            if scale >= 1 and fits:
                shape = image.size
            else:
                shape = _scaled(image.width, scale), _scaled(image.height, scale)
                if image.getexif().get(_ORIENTATION, 1) in _LYING:
                    shape = shape[1], shape[0]
    except _BROKEN:
        return None
    as_stored = scale >= 1 and fits
    return _Prepared(shape, _workers().submit(_read, path, scale, as_stored))


def _scaled(length_px: int, scale: float) -> int:
    return max(1, round(length_px * scale))


def _read(path: Path, scale: float, as_stored: bool) -> bytes | None:
    """The JPEG bytes to embed: as stored, or scaled down when print would not show the rest."""
    try:
        stored = path.read_bytes()
        with Image.open(BytesIO(stored)) as image:
            if as_stored:
                return stored
            size = _scaled(image.width, scale), _scaled(image.height, scale)
            if scale < 1:
                image.draft("RGB", size)
                smaller = image.resize(size, Image.Resampling.LANCZOS)
            else:
                smaller = image.copy()
            written = BytesIO()
            ImageOps.exif_transpose(smaller).convert("RGB").save(written, "JPEG", quality=_QUALITY)
            return written.getvalue()
    except _BROKEN:
        return None
