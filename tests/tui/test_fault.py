"""A fault of the program itself ends it at once, in a few lines, with the screen put back."""

from __future__ import annotations

import pytest

from leanto.cli.walk import walk
from leanto.job import Job
from leanto.tui.app import LeantoApp
from leanto.tui.screens.scope import ScopeScreen


async def test_a_fault_is_kept_without_the_values_of_the_program(
    job: Job, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(screen: ScopeScreen, assessment: object) -> str:
        raise RuntimeError("planted")

    monkeypatch.setattr(ScopeScreen, "answer_of", broken)
    app = LeantoApp(job)
    with pytest.raises(RuntimeError, match="planted"):
        async with app.run_test(size=(80, 24)) as pilot:
            await pilot.press("f5")
            await pilot.pause()
    assert app.fault.endswith("RuntimeError: planted\n")
    assert "walker" not in app.fault  # no value of the record
    assert app.return_code == 1


def test_a_fault_is_printed_after_the_screen_is_gone(
    job: Job, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def run(app: LeantoApp) -> None:
        app.fault = "RuntimeError: planted\n"
        app.exit(return_code=1)

    monkeypatch.setattr(LeantoApp, "run", run)
    assert walk(job) == 1
    assert "RuntimeError: planted" in capsys.readouterr().err
