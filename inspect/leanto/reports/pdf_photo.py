"""Photos in the PDF: no more pixels than print shows, JPEG bytes passed through."""

from __future__ import annotations

from collections.abc import Callable
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


class PhotoFrame(Flowable):
    """A photo scaled into a frame; an empty frame that says so when the file is not readable."""

    def __init__(self, path: Path, widest_pt: float, highest_pt: float, setter: Typesetter) -> None:
        super().__init__()
        self._setter = setter
        data = _read(path, widest_pt, highest_pt)
        self._image = None if data is None else ImageReader(BytesIO(data))
        shape = self._image.getSize() if self._image else _MISSING_SHAPE
        scale = min(widest_pt / shape[0], highest_pt / shape[1])
        self.width, self.height = shape[0] * scale, shape[1] * scale

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.width, self.height

    def draw(self) -> None:
        if self._image is not None:
            self.canv.drawImage(self._image, 0, 0, self.width, self.height)
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


def _read(path: Path, widest_pt: float, highest_pt: float) -> bytes | None:
    """The JPEG bytes to embed: as stored, or scaled down when print would not show the rest."""
    try:
        stored = path.read_bytes()
        with Image.open(BytesIO(stored)) as image:
            scale = min(widest_pt / image.width, highest_pt / image.height) * DPI / 72
            fits = image.format == "JPEG" and image.mode in ("RGB", "L") and not image.getexif()
            if scale >= 1 and fits:
                return stored
            size = (max(1, round(image.width * scale)), max(1, round(image.height * scale)))
            if scale < 1:
                image.draft("RGB", size)
                smaller = image.resize(size, Image.Resampling.LANCZOS)
            else:
                smaller = image.copy()
            written = BytesIO()
            ImageOps.exif_transpose(smaller).convert("RGB").save(written, "JPEG", quality=_QUALITY)
            return written.getvalue()
    except (OSError, UnidentifiedImageError, Image.DecompressionBombError):
        return None
