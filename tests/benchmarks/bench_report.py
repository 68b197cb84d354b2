"""Reports with many photos, and photos taken in, against bare reportlab and Pillow.

Run it by hand: ``python tests/benchmarks/bench_report.py [PHOTOS]``, 500 unless told. Wanted: 1.3
times the bare work for the same pages and pictures, under 400 MiB and 40 MB. Nothing is asserted.
"""

from __future__ import annotations

import io
import os
import random
import re
import sys
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from itertools import cycle, islice
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "inspect"), str(ROOT / "tests")]

from invented import invented  # noqa: E402
from PIL import Image, ImageOps  # noqa: E402
from pymupdf_fonts import NotoSans_Regular  # noqa: E402
from reportlab import rl_config  # noqa: E402
from reportlab.lib.pagesizes import letter  # noqa: E402
from reportlab.lib.utils import ImageReader  # noqa: E402
from reportlab.pdfbase import pdfmetrics  # noqa: E402
from reportlab.pdfbase.ttfonts import TTFont  # noqa: E402
from reportlab.pdfgen.canvas import Canvas  # noqa: E402

from leanto.assessment import with_money  # noqa: E402
from leanto.job import Job  # noqa: E402
from leanto.record.entry import Answered  # noqa: E402
from leanto.record.observation import ObservationKey  # noqa: E402
from leanto.record.photos import JPEG_QUALITY, LONG_SIDE_PX  # noqa: E402
from leanto.reports.contents import condition_report, repair_scope  # noqa: E402
from leanto.reports.pdf import write_pdf  # noqa: E402

CAMERA_PX = (4000, 3000)
REPORTS = {"condition-report.pdf": condition_report, "repair-scope.pdf": repair_scope}
DIFFERENT = 4
"""Pictures that are drawn; the others are these with another corner."""


def draw(folder: Path, count: int) -> list[Path]:
    """Camera pictures of 12 megapixels with some grain, each another file."""
    folder.mkdir()
    grain = [Image.effect_noise((1000, 750), 40).convert("RGB") for _ in range(DIFFERENT)]
    large = [image.resize(CAMERA_PX, Image.Resampling.BICUBIC) for image in grain]
    luck = random.Random(1)
    paths = []
    for number, image in enumerate(islice(cycle(large), count)):
        image.paste((luck.randrange(256), luck.randrange(256), number % 256), (0, 0, 900, 900))
        paths.append(folder / f"{number}.jpg")
        image.save(paths[-1], quality=85)
    return paths


def bare_copy(source: Path, target: Path) -> None:
    with Image.open(source) as image:
        scale = LONG_SIDE_PX / max(image.size)
        size = (round(image.width * scale), round(image.height * scale))
        image.draft("RGB", size)
        small = ImageOps.exif_transpose(image.resize(size, Image.Resampling.LANCZOS))
        small.convert("RGB").save(target, "JPEG", quality=JPEG_QUALITY)


@dataclass(frozen=True)
class Page:
    """What stands on a page of a report: the least that anybody would have to draw."""

    lines: tuple[str, ...]
    photos_px: tuple[tuple[int, int], ...]


def pages_of(report: Path) -> list[Page]:
    from pypdf import PdfReader

    pages = []
    for page in PdfReader(report).pages:
        resources = page["/Resources"].get("/XObject", {})
        images = [resources[name] for name in resources]
        sizes = tuple((one["/Width"], one["/Height"]) for one in images if "/Width" in one)
        pages.append(Page(tuple(page.extract_text().splitlines()), sizes))
    return pages


def bare_reports(documents: list[list[Page]], photos: list[Path], folder: Path) -> None:
    """The same lines of text in the same font, and each photo scaled to the same pixels once."""
    pdfmetrics.registerFont(TTFont("plain", io.BytesIO(NotoSans_Regular.fontbuffer)))
    scaled: dict[tuple[Path, tuple[int, int]], bytes] = {}
    for number, pages in enumerate(documents):
        canvas = Canvas(str(folder / f"bare-{number}.pdf"), pagesize=letter)
        left = cycle(photos)
        for page in pages:
            canvas.setFont("plain", 9)
            for row, line in enumerate(page.lines):
                canvas.drawString(72, 760 - 9 * row, line)
            for size, photo in zip(page.photos_px, left, strict=False):
                if (photo, size) not in scaled:
                    with Image.open(photo) as image:
                        image.draft("RGB", size)
                        out = io.BytesIO()
                        small = image.resize(size, Image.Resampling.LANCZOS)
                        small.save(out, "JPEG", quality=82)
                    scaled[photo, size] = out.getvalue()
                canvas.drawImage(ImageReader(io.BytesIO(scaled[photo, size])), 72, 72, 200, 150)
            canvas.showPage()
        canvas.save()


def most_mib() -> float:
    status = Path("/proc/self/status")
    found = re.search(r"VmHWM:\s+(\d+)", status.read_text()) if status.exists() else None
    return int(found[1]) / 1024 if found else 0.0


def in_a_child(work: Callable[[], object]) -> tuple[float, float]:
    """Seconds and the peak of memory of the work alone."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        Path("/proc/self/clear_refs").write_text("5")
        began = time.perf_counter()
        work()
        os.write(writing, f"{time.perf_counter() - began} {most_mib()}".encode())
        os._exit(0)
    os.close(writing)
    with os.fdopen(reading) as pipe:
        said = pipe.read().split()
    os.waitpid(child, 0)
    return float(said[0]), float(said[1])


def main(count: int) -> None:
    rl_config.useA85 = 0
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        pictures = draw(folder / "camera", count)
        with Job.create(folder / "job", invented("demo").building) as job:
            asked = [(s.id, item.id) for s in job.stations for item in job.items_at(s.id)]
            keys = [ObservationKey(*about, n) for n in range(1, 99) for about in asked][:count]
            for key in keys:
                about = {"station": key.station, "item": key.item, "number": key.number}
                job.record(Answered(**about, condition="failed"))
            began = time.perf_counter()
            for key, picture in zip(keys, pictures, strict=True):
                job.add_photo(key, picture)
            copied_s = time.perf_counter() - began
            began = time.perf_counter()
            for picture in pictures:
                bare_copy(picture, folder / "bare.jpg")
            bare_s = time.perf_counter() - began
            print(
                f"{count} photos taken in: {copied_s:.1f} s, bare {bare_s:.1f} s, "
                f"ratio {copied_s / bare_s:.2f}"
            )
            assessment = with_money(job.assess())

            def ours() -> None:
                for name, make in REPORTS.items():
                    write_pdf(make(assessment), folder / name, job.photo_path)

            ours_s, ours_mib = in_a_child(ours)
            documents = [pages_of(folder / name) for name in REPORTS]
            stored = [job.photo_path(photo) for photo in job.photos]
            bare_s, bare_mib = in_a_child(lambda: bare_reports(documents, stored, folder))
        for name, pages in zip(REPORTS, documents, strict=True):
            shown = sum(len(page.photos_px) for page in pages)
            size_mb = (folder / name).stat().st_size / 1e6
            print(f"{name}: {len(pages)} pages, {shown} photos, {size_mb:.1f} MB")
        print(f"both: {ours_s:.1f} s, {ours_mib:.0f} MiB")
        print(f"bare: {bare_s:.1f} s, {bare_mib:.0f} MiB; ratio {ours_s / bare_s:.2f}")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else 500)
