"""Every published check names its source and how the source was read; one without is refused."""

from __future__ import annotations

import pytest

MARKS = ("seen", "from memory", "by hand", "library", "own")
BY_ROW = "by row"
LISTS = "test_coverage.py"
"""Compares lists of things to look at, and marks every entry in its own files."""


def pytest_configure(config: pytest.Config) -> None:
    config.addinivalue_line(
        "markers",
        "published(source, mark): what a check compares with, and how that was read: "
        f"{', '.join(MARKS)}, or {BY_ROW} where each row says it. 'own' compares with nothing "
        "outside.",
    )
    config.addinivalue_line("markers", "row(mark): how this one row was read, if not as the rest")


def pytest_runtest_setup(item: pytest.Item) -> None:
    if item.path.name != LISTS:
        source_and_mark(item)


def source_and_mark(item: pytest.Item) -> tuple[str, str]:
    """The source that an item compares with, and one of the marks; the test fails without them."""
    published = item.get_closest_marker("published")
    if published is None:
        pytest.fail("This check names no source: mark it as published(...).", pytrace=False)
    source, mark = published.args
    row = item.get_closest_marker("row")
    if row is not None:
        mark = row.args[0]
    elif mark == BY_ROW:
        mark = _said_by(item)
    if mark not in MARKS:
        pytest.fail(f"It is marked {mark!r}, which is not one of {MARKS}.", pytrace=False)
    return source, mark


def _said_by(item: pytest.Item) -> str:
    """The mark that stands in the words of the row; the weakest where it names several."""
    said = item.name
    spec = getattr(item, "callspec", None)
    if spec is not None:
        said += " ".join(str(value) for value in spec.params.values())
    for mark in ("from memory", "by hand", "seen"):
        if mark in said:
            return mark
    pytest.fail("This row does not say how it was read.", pytrace=False)
