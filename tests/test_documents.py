"""README, METHOD.md and DEVELOPERS.md say what the code says.

Run this file as a script to write the generated parts of them again.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Callable
from pathlib import Path

import pytest
from sources import in_code, in_tables, source_list

from leanto.building.model import Building
from leanto.checklist.model import Item, Measure
from leanto.cli.main import COMMANDS
from leanto.library import read_library
from leanto.record.entry import Body
from leanto.rules.facts import STATIC_FACTS
from leanto.rules.model import Rule, WorkCall
from leanto.scope.work import Work

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "inspect" / "leanto"
README = ROOT / "README.md"
DEVELOPERS = ROOT / "DEVELOPERS.md"
METHOD = ROOT / "checklists" / "METHOD.md"


def fact_table() -> str:
    """Every fact that does not depend on the checklist, as a table."""
    rows = ["| fact | kind | unit | meaning |", "|---|---|---|---|"]
    for fact in STATIC_FACTS:
        choices = f" One of: {', '.join(fact.choices)}." if fact.choices else ""
        rows.append(f"| `{fact.name}` | {fact.kind} | {fact.unit} | {fact.doc}{choices} |")
    return "\n".join(rows) + "\n"


def file_map() -> str:
    """One line a file: its path and the first line of its docstring."""
    lines = []
    for path in sorted(PACKAGE.rglob("*.py"), key=lambda p: (p.parent.as_posix(), p.name)):
        doc = ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))
        assert doc, f"{path} has no docstring"
        name = path.relative_to(PACKAGE).as_posix()
        lines.append(f"{name:34} {doc.splitlines()[0]}")
    return "```\n" + "\n".join(lines) + "\n```\n"


GENERATED: dict[str, tuple[Path, Callable[[], str]]] = {
    "facts": (DEVELOPERS, fact_table),
    "map": (DEVELOPERS, file_map),
    "sources": (METHOD, source_list),
}


def _part(text: str, name: str) -> tuple[int, int]:
    """Where a generated part begins and ends."""
    begin, end = f"<!-- {name}: begin -->\n", f"<!-- {name}: end -->"
    return text.index(begin) + len(begin), text.index(end)


@pytest.mark.parametrize("name", GENERATED)
def test_the_generated_parts_are_up_to_date(name: str) -> None:
    document, generate = GENERATED[name]
    text = document.read_text(encoding="utf-8")
    begin, end = _part(text, name)
    assert text[begin:end] == generate(), "run: python tests/test_documents.py"


def test_the_page_on_the_method_names_the_sources_of_code_and_tables() -> None:
    assert len(set(in_code())) > 20
    assert len(set(in_tables())) > 50


@pytest.mark.parametrize("module", COMMANDS, ids=lambda module: module.__name__)
def test_every_command_is_in_the_readme(module: object) -> None:
    name = module.__name__.rpartition(".")[2].replace("_", "-")  # type: ignore[attr-defined]
    assert re.search(rf"leanto {name}\b", README.read_text(encoding="utf-8"))


@pytest.mark.parametrize("model", [Building, Item, Measure, Rule, WorkCall, Work])
def test_every_key_of_a_file_is_in_the_guide(model: type) -> None:
    text = DEVELOPERS.read_text(encoding="utf-8")
    fields = model.model_fields  # type: ignore[attr-defined]
    assert [name for name in fields if f"`{name}`" not in text] == []


def test_every_kind_of_entry_is_in_the_guide() -> None:
    text = DEVELOPERS.read_text(encoding="utf-8")
    kinds = [kind.model_fields["kind"].default for kind in Body.__args__[0].__args__]  # type: ignore[attr-defined]
    assert len(kinds) > 10
    assert [kind for kind in kinds if f"`{kind}`" not in text] == []


def _examples() -> list[tuple[str, str]]:
    """The YAML examples of the guide that name a file: ``# checklists/rules/mine.yaml``."""
    text = DEVELOPERS.read_text(encoding="utf-8")
    return re.findall(r"```yaml\n# (checklists/\S+\.yaml)\n(.*?)```", text, re.DOTALL)


def test_the_examples_of_the_guide_extend_the_library(tmp_path: Path) -> None:
    examples = _examples()
    assert len(examples) >= 4
    for name, body in examples:
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(body, encoding="utf-8")
    library = read_library((tmp_path / "checklists",))
    assert "loft-ladder" in {item.id for item in library.checklist.items()}
    assert "loft-ladder-unsound" in {compiled.rule.id for compiled in library.rules}
    assert "replace-loft-ladder" in library.works
    assert "replace-loft-ladder" in library.prices


if __name__ == "__main__":
    for name, (document, generate) in GENERATED.items():
        text = document.read_text(encoding="utf-8")
        begin, end = _part(text, name)
        document.write_text(text[:begin] + generate() + text[end:], encoding="utf-8")
