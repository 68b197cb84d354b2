"""Imports inside leanto point down only, and each library has one home."""

from __future__ import annotations

import ast
import sys
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from fnmatch import fnmatch
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent

# From top to bottom. Names beside each other on a line are strangers: neither may import the other.
# import-linter reads the same list; these tests add the homes of libraries, and say it in one line.
CONTRACT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["importlinter"][
    "contracts"
][0]
DEPTH = {
    name.strip(): depth
    for depth, line in enumerate([*CONTRACT["layers"], "__init__"])
    for name in line.split("|")
}

# The command line starts the screens, and loads them only when they are asked for.
LATE_ONLY = {("cli", "tui")}

# Libraries and the modules that may know them; pydantic checks data at more than one border.
HOMES = {
    "openpyxl": [
        "bids/reading/*",
        "reports/spreadsheet.py",
        "reports/sheet_rows.py",
        "reports/levelled_sheet.py",
        "reports/saved_workbook.py",
        "demo/filled.py",
    ],
    "pint": ["rules/units.py"],
    "PIL": ["record/photos.py", "job/job.py", "reports/*", "demo/*"],
    "pydantic": ["*"],
    "pymupdf_fonts": ["reports/fonts.py"],
    "pypdf": ["bids/reading/*", "demo/filled.py"],
    "reportlab": ["reports/pdf*", "reports/fonts.py", "reports/sketch_pdf.py"],
    "rich_pixels": ["tui/widgets/photo_view.py"],
    "sqlite3": ["record/*"],
    "aiohttp": ["tui/browser.py"],
    "textual": ["tui/*"],
    "textual_serve": ["tui/browser.py"],
    "textual_plotext": ["tui/widgets/*_plot.py"],
    "yaml": ["yaml_input*", "yaml_output*"],
}


@dataclass(frozen=True, slots=True)
class Import:
    """One imported module, with the line it stands on."""

    module: str
    line: int
    late: bool
    """Inside a function, so that it runs only when called."""


def imports_of(path: Path, package: Path) -> Iterator[Import]:
    """Every import of the file at ``path``, with relative names made absolute."""
    here = [package.name, *path.relative_to(package).with_suffix("").parts]
    tree = ast.parse(path.read_text("utf-8"), str(path))
    late = {
        id(inner)
        for outer in ast.walk(tree)
        if isinstance(outer, ast.FunctionDef | ast.AsyncFunctionDef)
        for inner in ast.walk(outer)
    }
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            above = here[: -node.level] if node.level else []
            base = ".".join([*above, *([node.module] if node.module else [])])
            # `from leanto import job` names a module only in its last part.
            names = [f"{base}.{alias.name}" for alias in node.names]
        else:
            continue
        for name in names:
            yield Import(name, node.lineno, id(node) in late)


def top_names(package: Path) -> set[str]:
    """The first names below the package: its modules and its folders of modules."""
    return {path.relative_to(package).with_suffix("").parts[0] for path in package.rglob("*.py")}


def faults(package: Path) -> list[str]:
    """What is wrong with the imports of ``package``, one readable line each."""
    known = top_names(package)
    found = [f"{name}: give it a layer in pyproject.toml" for name in sorted(known - DEPTH.keys())]
    for path in sorted(package.rglob("*.py")):
        inside = path.relative_to(package)
        own = inside.with_suffix("").parts[0]
        for imported in imports_of(path, package):
            first, *rest = imported.module.split(".")
            where = f"{inside.as_posix()}:{imported.line}"
            if first == package.name:
                target = rest[0] if rest and rest[0] in known else "__init__"
                fault = layer_fault(own, target, imported.late)
            else:
                fault = home_fault(inside.as_posix(), first)
            if fault:
                found.append(f"{where}: {fault}")
    return list(dict.fromkeys(found))  # a line that takes six names has one fault


def layer_fault(own: str, target: str, late: bool) -> str:
    """Why ``own`` may not import ``target``, or nothing."""
    if own == target or own not in DEPTH or target not in DEPTH:
        return ""
    if (own, target) in LATE_ONLY:
        return "" if late else f"{own} may import {target} only inside a function"
    if DEPTH[target] > DEPTH[own]:
        return ""
    relation = "stands beside" if DEPTH[target] == DEPTH[own] else "stands above"
    return f"{own} may not import {target}, which {relation} it"


def home_fault(file: str, library: str) -> str:
    """Why ``file`` may not import ``library``, or nothing."""
    homes = HOMES.get(library)
    if homes is None:
        known = library in sys.stdlib_module_names
        return "" if known else f"{library} is no library of leanto: give it a home in {__name__}"
    if any(fnmatch(file, home) for home in homes):
        return ""
    return f"{library} may be imported only in {', '.join(homes)}"


def test_imports_of_leanto_point_down_and_libraries_stay_at_home() -> None:
    package = ROOT / "inspect" / "leanto"

    found = faults(package)

    assert len(top_names(package)) > 1
    assert not found, "\n".join(found)


@pytest.mark.parametrize(
    ("file", "line", "fault"),
    [
        # upward, in every spelling
        ("errors.py", "import leanto.job", "errors may not import job, which stands above it"),
        ("errors.py", "from leanto.job import open_job", "errors may not import job"),
        ("errors.py", "from leanto import job", "errors may not import job"),
        ("rules/model.py", "from ..cost import price", "rules may not import cost"),
        ("rules/model.py", "from .. import cost", "rules may not import cost"),
        ("rules/model.py", "def f():\n    import leanto.cost", "rules may not import cost"),
        (
            "rules/model.py",
            "if TYPE_CHECKING:\n    import leanto.cost",
            "rules may not import cost",
        ),
        # sideways
        ("bids.py", "import leanto.decision", "decision, which stands beside it"),
        ("tui/app.py", "import leanto.cli", "cli, which stands beside it"),
        ("cli/main.py", "import leanto.tui.app", "cli may import tui only inside a function"),
        # names without a place
        ("utils.py", "", "utils: give it a layer"),
        ("errors.py", "import requests", "requests is no library of leanto: give it a home"),
        # libraries away from home
        ("job.py", "import sqlite3", "sqlite3 may be imported only in record/*"),
        ("library.py", "import yaml", "yaml may be imported only in yaml_input*"),
        ("reports/text.py", "import reportlab.lib", "reportlab may be imported only in"),
        ("cli/main.py", "from textual.app import App", "textual may be imported only in tui/*"),
        ("rules/model.py", "import pint", "pint may be imported only in rules/units.py"),
        ("tui/photo.py", "from PIL import Image", "PIL may be imported only in"),
        ("reports/pdf.py", "import pypdf", "pypdf may be imported only in bids/reading/*"),
    ],
)
def test_a_planted_import_is_caught(tmp_path: Path, file: str, line: str, fault: str) -> None:
    package = small_package(tmp_path)
    planted = package / file
    planted.write_text(line + "\n")

    found = faults(package)

    assert len(found) == 1
    assert fault in found[0]
    if line:
        assert found[0].startswith(f"{file}:")


@pytest.mark.parametrize(
    ("file", "line"),
    [
        ("job.py", "from leanto.errors import LeantoError"),
        ("job.py", "from leanto import __version__"),
        ("job.py", "import sys, os.path, inspect"),
        ("cost/book.py", "from .item import Item"),
        ("cost/book.py", "from ..scope import Scope"),
        ("cli/main.py", "def walk():\n    from leanto.tui.app import run"),
        ("__main__.py", "from leanto.cli.main import main"),
        ("record/store.py", "import sqlite3"),
        ("reports/pdf.py", "import reportlab"),
        ("reports/pdf_forms.py", "from reportlab.lib import colors"),
        ("yaml_output.py", "import yaml"),
        ("tui/app.py", "from textual.app import App"),
    ],
)
def test_an_allowed_import_is_let_through(tmp_path: Path, file: str, line: str) -> None:
    package = small_package(tmp_path)
    (package / file).write_text(line + "\n")

    assert faults(package) == []


def small_package(tmp_path: Path) -> Path:
    """A package of empty modules with leanto's names."""
    package = tmp_path / "leanto"
    for folder in ("cli", "cost", "record", "reports", "rules", "scope", "tui"):
        (package / folder).mkdir(parents=True)
        (package / folder / "__init__.py").touch()
    for name in ("__init__", "__main__", "bids", "decision", "errors", "job", "library"):
        (package / f"{name}.py").touch()
    return package
