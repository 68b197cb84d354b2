"""Makes the README's pictures again from the demo: ``python tests/make_pictures.py``.

The screen is saved by textual itself; the page of the report needs pdftoppm (poppler-utils).
"""

from __future__ import annotations

import asyncio
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT / "inspect"))

from leanto.demo.make import make_demo  # noqa: E402
from leanto.job import Job  # noqa: E402
from leanto.tui.app import LeantoApp  # noqa: E402

PICTURES = ROOT / ".pictures"


async def _screen(job: Job) -> None:
    app = LeantoApp(job)
    async with app.run_test(size=(112, 36)) as pilot:
        await pilot.pause(2.0)
        app.save_screenshot("walk.svg", path=str(PICTURES))


def main() -> None:
    PICTURES.mkdir(exist_ok=True)
    with tempfile.TemporaryDirectory() as folder:
        with make_demo(Path(folder) / "demo-job") as job:
            job.write_reports(Path(folder))
            asyncio.run(_screen(job))
        page = ["-f", "1", "-l", "1", "-r", "80", "-singlefile", "-png"]
        source, target = f"{folder}/condition-report.pdf", str(PICTURES / "report")
        subprocess.run(["pdftoppm", *page, source, target], check=True)


if __name__ == "__main__":
    main()
