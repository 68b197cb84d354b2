"""Another program that opens workbooks, reckons them anew and saves them."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

OFFICE = shutil.which("soffice") or shutil.which("libreoffice")
needs_office = pytest.mark.skipif(OFFICE is None, reason="LibreOffice is not here")


def saved_by_office(content: bytes, folder: Path) -> bytes:
    """The workbook as LibreOffice saves it; files of its own lie in ``folder``."""
    source, out = folder / "book.xlsx", folder / "out"
    source.write_bytes(content)
    command = [str(OFFICE), "--headless"]
    command += [f"-env:UserInstallation={(folder / 'profile').as_uri()}"]
    command += ["--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", str(out), str(source)]
    subprocess.run(command, check=True, capture_output=True, timeout=180)
    return (out / "book.xlsx").read_bytes()
