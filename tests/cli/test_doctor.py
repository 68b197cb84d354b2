"""``leanto doctor``: what a bug report needs, and what is wrong."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from leanto import __version__
from leanto.cli.main import main


def test_versions_and_places_are_printed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLORTERM", "truecolor")
    monkeypatch.delenv("NO_COLOR", raising=False)

    assert main(["doctor", str(tmp_path)]) == 0
    said = capsys.readouterr().out

    rows = {line.split()[0]: line for line in said.splitlines()}
    assert __version__ in rows["leanto"]
    for name in ("python", "textual", "pydantic", "reportlab", "checklists", "fonts", "record"):
        assert name in rows
    assert "16 million" in rows["colors"]
    assert str(tmp_path) in rows["folder"]
    assert said.splitlines()[-1] == "Nothing is wrong."
    assert list(tmp_path.iterdir()) == []


def test_a_folder_that_cannot_be_written_is_wrong(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "file").write_text("x")

    assert main(["doctor", str(tmp_path / "file")]) == 2

    said = capsys.readouterr().out
    assert "nothing can be written here" in said
    assert said.splitlines()[-1] == "To put right: 1."


def test_a_terminal_that_is_too_small_is_wrong(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("sys.stdin.isatty", lambda: True, raising=False)
    monkeypatch.setattr("leanto.cli.plain.PlainOutput.isatty", lambda self: True)
    monkeypatch.setattr("shutil.get_terminal_size", lambda *_: os.terminal_size((60, 20)))

    assert main(["doctor", str(tmp_path)]) == 2

    assert "60 x 20" in (said := capsys.readouterr().out)
    assert "the walk needs 80 x 24" in said
