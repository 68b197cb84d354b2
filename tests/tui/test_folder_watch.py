"""A watched folder tells each picture once, when it is whole."""

from __future__ import annotations

from pathlib import Path

import pytest

from leanto.tui.folder_watch import FolderWatch
from leanto.tui.pictures import dropped_pictures


def names(paths: tuple[Path, ...]) -> list[str]:
    return [path.name for path in paths]


def test_what_was_there_is_left_alone_and_what_comes_is_told_once(tmp_path: Path) -> None:
    (tmp_path / "old.jpg").write_bytes(b"old")
    watch = FolderWatch(tmp_path)
    assert watch.already_there == 1
    (tmp_path / "b.JPG").write_bytes(b"new")
    (tmp_path / "a.png").write_bytes(b"new")
    (tmp_path / "list.txt").write_bytes(b"no picture")

    assert watch.look() == ()  # it may be growing still
    assert names(watch.look()) == ["a.png", "b.JPG"]
    assert watch.look() == ()


def test_a_picture_that_grows_is_told_when_it_has_stopped(tmp_path: Path) -> None:
    watch = FolderWatch(tmp_path)
    for content in (b"1", b"12", b"123"):
        (tmp_path / "a.jpg").write_bytes(content)
        assert watch.look() == ()
    assert names(watch.look()) == ["a.jpg"]


def test_half_a_file_that_is_being_synced_is_no_picture(tmp_path: Path) -> None:
    watch = FolderWatch(tmp_path)
    (tmp_path / ".syncing.a.jpg").write_bytes(b"half")
    (tmp_path / "a.jpg.part").write_bytes(b"half")

    assert (watch.look(), watch.look()) == ((), ())


def test_a_folder_that_goes_and_comes_back_is_watched_on(tmp_path: Path) -> None:
    folder = tmp_path / "phone"
    folder.mkdir()
    watch = FolderWatch(folder)
    folder.rmdir()
    assert watch.look() == ()
    folder.mkdir()
    (folder / "a.jpg").write_bytes(b"new")
    watch.look()

    assert names(watch.look()) == ["a.jpg"]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("{}/my shed.jpg", ["my shed.jpg"]),
        ("'{}/my shed.jpg' ", ["my shed.jpg"]),
        ('"{}/my shed.jpg"\n', ["my shed.jpg"]),
        ("{}/my\\ shed.jpg", ["my shed.jpg"]),
        ("file://{}/my%20shed.jpg\r\n", ["my shed.jpg"]),
        ("{0}/b.png {0}/my\\ shed.jpg", ["b.png", "my shed.jpg"]),
        ("{}/note.txt", []),
        ("{0}/b.png {0}/note.txt", []),
        ("{}/gone.jpg", []),
        ("a soft sill, see b.png", []),
        ("", []),
    ],
)
def test_dropped_text_is_pictures_or_nothing(
    tmp_path: Path, text: str, expected: list[str]
) -> None:
    for name in ("my shed.jpg", "b.png", "note.txt"):
        (tmp_path / name).write_bytes(b"x")

    assert names(dropped_pictures(text.format(tmp_path))) == expected
