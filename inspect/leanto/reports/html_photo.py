"""Photos inside an HTML page: upright, small, freed of camera data."""

from __future__ import annotations

from base64 import b64encode
from io import BytesIO
from pathlib import Path

from PIL import Image, ImageOps

_LONGEST_PX = 1000
_QUALITY = 80
_BROKEN = (OSError, Image.DecompressionBombError, SyntaxError, ValueError)


def picture_source(path: Path) -> str:
    """The picture as a ``data:`` address; nothing where the file is no readable picture."""
    try:
        with Image.open(path) as image:
            image.draft("RGB", (_LONGEST_PX, _LONGEST_PX))
            small = ImageOps.exif_transpose(image)
            small.thumbnail((_LONGEST_PX, _LONGEST_PX))
            bare = Image.new("RGB", small.size, "white")
            bare.paste(small.convert("RGB"))
            written = BytesIO()
            bare.save(written, "JPEG", quality=_QUALITY)
    except _BROKEN:
        return ""
    return "data:image/jpeg;base64," + b64encode(written.getvalue()).decode("ascii")
