"""What a bug report needs to know: versions, terminal, fonts, and whether files can be written."""

from __future__ import annotations

import argparse
import os
import shutil
import sys
from collections.abc import Iterator
from pathlib import Path

from leanto import __version__
from leanto.errors import EXIT_USER_ERROR

HELP = "print versions, terminal, fonts and write access, for a bug report"
LIBRARIES = ("textual", "pydantic", "PyYAML", "reportlab", "Pint", "pillow", "pymupdf-fonts")
_DRAWN = "Aé′″×½ Ω я"
NEEDS_COLUMNS, NEEDS_LINES = 80, 24


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument(
        "folder",
        nargs="?",
        type=Path,
        default=Path(),
        metavar="FOLDER",
        help="where jobs are to be kept; default: this folder",
    )


def run(arguments: argparse.Namespace) -> int:
    faults = 0
    for name, value, fault in (*_versions(), *_terminal(), *_data(), *_files(arguments.folder)):
        faults += bool(fault)
        print(f"{name:14} {value}{f'  <-- {fault}' if fault else ''}")
    print("Nothing is wrong." if not faults else f"To put right: {faults}.")
    return EXIT_USER_ERROR if faults else 0


Line = tuple[str, str, str]
"""What was looked at, what was found, and what is wrong with it; empty when nothing is."""


def _versions() -> Iterator[Line]:
    import platform
    from importlib import metadata

    yield "leanto", __version__, ""
    yield "python", f"{platform.python_version()} ({platform.system()} {platform.machine()})", ""
    for name in LIBRARIES:
        try:
            yield name, metadata.version(name), ""
        except metadata.PackageNotFoundError:
            yield name, "not installed", "install leanto again"


def _terminal() -> Iterator[Line]:
    columns, lines = shutil.get_terminal_size((0, 0))
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        yield "terminal", "none: input or output is a file", ""
    else:
        small = columns < NEEDS_COLUMNS or lines < NEEDS_LINES
        need = f"the walk needs {NEEDS_COLUMNS} x {NEEDS_LINES}: make the window larger"
        yield (
            "terminal",
            f"{columns} x {lines}, {os.environ.get('TERM', 'TERM is not set')}",
            (need if small else ""),
        )
    yield "colors", _colors(), ""
    encoding = sys.stdout.encoding or "unknown"
    speaks = encoding.lower().replace("-", "") == "utf8"
    yield "encoding", encoding, "" if speaks else "set the terminal and LANG to UTF-8"


def _colors() -> str:
    if "NO_COLOR" in os.environ:
        return "none, as NO_COLOR is set"
    if os.environ.get("COLORTERM", "") in ("truecolor", "24bit"):
        return "16 million"
    return "256" if "256" in os.environ.get("TERM", "") else "16 or fewer"


def _data() -> Iterator[Line]:
    from leanto.errors import InputProblems
    from leanto.library import read_library

    try:
        library = read_library()
    except InputProblems as refused:
        count = len(refused.problems)
        yield "checklists", f"{count} problems", "run leanto check"
    else:
        yield (
            "checklists",
            f"{len(library.checklist.items())} items, {len(library.rules)} rules",
            "",
        )
    yield _fonts()


def _fonts() -> Line:
    from leanto.reports.fonts import Typesetter

    setter = Typesetter()
    setter.line(_DRAWN)
    missing = setter.not_drawn
    return "fonts", "embedded", f"cannot draw {missing}: install leanto again" if missing else ""


def _files(folder: Path) -> Iterator[Line]:
    import tempfile

    from leanto.record.trial import sqlite_fault, sqlite_version

    where = folder.resolve()
    try:
        free = shutil.disk_usage(where).free / 1e6
        with tempfile.NamedTemporaryFile(dir=where, prefix=".leanto-trial-"):
            pass
    except OSError as error:
        yield "folder", str(where), f"nothing can be written here ({error.strerror or error})"
    else:
        low = free < 100
        yield "folder", f"{where}, {free:,.0f} MB free", "free some space" if low else ""
        yield "record", sqlite_version(), sqlite_fault(where)
