"""A picture of any content is kept as a small JPEG or refused in words; nothing else happens."""

from __future__ import annotations

import io
import os
import random
import struct
import subprocess
import sys
import zlib
from collections.abc import Callable
from pathlib import Path

import pytest
from PIL import Image

from leanto.errors import PhotoError
from leanto.record.photos import LONG_SIDE_PX, import_photo

INSPECT = Path(__file__).resolve().parents[2] / "inspect"
ROUNDS = 400 if os.environ.get("LEANTO_NIGHTLY") else 60


def picture(kind: str) -> bytes:
    """A small one with all the data beside the pixels that its format can hold."""
    out = io.BytesIO()
    image = Image.effect_noise((300, 200), 50).convert("P" if kind == "GIF" else "RGB")
    exif = Image.Exif()
    exif[0x0112] = 6
    exif[0x010F] = "maker"
    exif.get_ifd(0x8769)[0x9003] = "2026:11:25 10:00:00"
    exif.get_ifd(0x8825)[2] = (40.0, 26.0, 46.0)
    options: dict[str, object] = {"exif": exif} if kind not in ("GIF", "BMP") else {}
    if kind == "JPEG":
        options["progressive"] = True
    image.save(out, kind, **options)
    return out.getvalue()


KINDS = ("JPEG", "PNG", "WEBP", "TIFF", "BMP", "GIF")


def keep(content: bytes, folder: Path) -> bool:
    """Whether it was kept; the folder then holds one more whole JPEG, else nothing new."""
    source = folder / "source"
    source.write_bytes(content)
    before = set((folder / "photos").iterdir()) if (folder / "photos").exists() else set()
    try:
        photo = import_photo(source, folder / "photos")
    except PhotoError as refused:
        assert refused.remedy
        after = set((folder / "photos").iterdir()) if (folder / "photos").exists() else set()
        assert after == before
        return False
    with Image.open(folder / "photos" / f"{photo.digest}.jpg") as kept:
        kept.load()
        assert kept.format == "JPEG"
        assert max(kept.size) <= LONG_SIDE_PX
        assert not kept.getexif()
    return True


@pytest.mark.parametrize("kind", KINDS)
def test_a_picture_with_changed_bytes(kind: str, tmp_path: Path) -> None:
    luck = random.Random(kind)
    whole = picture(kind)
    kept = [keep(whole, tmp_path)]
    for _ in range(ROUNDS):
        content = bytearray(whole)
        # Mostly where the headers are.
        reach = len(content) if luck.random() < 0.3 else min(len(content), 600)
        for _ in range(luck.randint(1, 6)):
            content[luck.randrange(reach)] = luck.choice(
                [0, 1, 0x7F, 0x80, 0xFF, luck.randrange(256)]
            )
        kept.append(keep(bytes(content), tmp_path))
    assert kept[0]
    assert not all(kept)


@pytest.mark.parametrize("kind", KINDS)
def test_a_picture_that_is_cut_short(kind: str, tmp_path: Path) -> None:
    whole = picture(kind)
    for end in range(0, len(whole), max(1, len(whole) // 25)):
        keep(whole[:end], tmp_path)
    assert not keep(whole[: len(whole) // 3], tmp_path)


def png(width: int, height: int, *chunks: tuple[bytes, bytes]) -> bytes:
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    parts = [(b"IHDR", head), *chunks, (b"IDAT", zlib.compress(b"\0" * 1000)), (b"IEND", b"")]
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in parts
    )


def many_scans() -> bytes:
    whole = picture("JPEG")
    start = whole.rindex(b"\xff\xda")
    return whole[:start] + whole[start:-2] * 150 + b"\xff\xd9"


def large(mode: str, size: tuple[int, int], kind: str, **options: object) -> Callable[[], bytes]:
    def made() -> bytes:
        out = io.BytesIO()
        Image.new(mode, size).save(out, kind, **options)
        return out.getvalue()

    return made


REFUSED: dict[str, Callable[[], bytes]] = {
    "PNG said to be vast": lambda: png(60_000, 60_000),
    "PNG said to be beyond all bounds": lambda: png(2**31 - 1, 2**31 - 1),
    "PNG of no width": lambda: png(0, 10),
    "PNG with a packed text of 200 MB": lambda: png(
        10, 10, (b"zTXt", b"a\0\0" + zlib.compress(b"x" * 200_000_000, 9))
    ),
    "PNG with a packed profile of 200 MB": lambda: png(
        10, 10, (b"iCCP", b"a\0\0" + zlib.compress(b"x" * 200_000_000, 9))
    ),
    "JPEG of many scans": many_scans,
    "JPEG of 180 megapixels": large("L", (18_000, 10_000), "JPEG", quality=1),
    "progressive JPEG of 70 megapixels": large(
        "L", (10_000, 7_000), "JPEG", quality=1, progressive=True
    ),
    "PNG of 30 megapixels": large("1", (6_000, 5_000), "PNG"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_a_bomb_is_refused(name: str, tmp_path: Path) -> None:
    assert not keep(REFUSED[name](), tmp_path)


@pytest.mark.parametrize(
    "made",
    [
        large("RGBA", (5_000, 4_000), "PNG"),
        large("RGBA", (5_000, 4_000), "WEBP"),
        large("RGB", (8_000, 8_100), "JPEG", progressive=True, subsampling=0),
        large("L", (16_900, 10_000), "JPEG"),
    ],
    ids=["PNG", "WebP", "progressive JPEG", "JPEG"],
)
def test_the_largest_that_are_taken_stay_under_500_mib(
    made: Callable[[], bytes], tmp_path: Path
) -> None:
    if not Path("/proc/self/status").exists():
        pytest.skip("no way to see a process's peak here")
    (tmp_path / "large").write_bytes(made())
    code = (
        "import re, sys; from pathlib import Path\n"
        "from leanto.record.photos import import_photo\n"
        "import_photo(Path(sys.argv[1]), Path(sys.argv[2]))\n"
        "print(re.search(r'VmHWM:\\s+(\\d+) kB', Path('/proc/self/status').read_text())[1])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path / "large"), str(tmp_path / "photos")],
        env={**os.environ, "PYTHONPATH": str(INSPECT)},
        capture_output=True,
        text=True,
        check=True,
    )
    assert int(done.stdout) < 500 * 1024
