"""`python3 inspect ...` sets itself up once, safely, and says plainly what stops it."""

from __future__ import annotations

import importlib.util
import os
import subprocess
import sys
import threading
import time
import tomllib
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).resolve().parent.parent
PYPROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))


def load() -> ModuleType:
    spec = importlib.util.spec_from_file_location("bootstrap", ROOT / "inspect" / "__main__.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


bootstrap = load()


class Filler:
    """Stands in for pip: remembers what was asked for, and may fail."""

    def __init__(self, failure: Exception | None = None, seconds: float = 0) -> None:
        self.asked: list[list[str]] = []
        self.failure = failure
        self.seconds = seconds

    def __call__(self, python: Path, wanted: list[str]) -> None:
        assert python.exists()
        self.asked.append(wanted)
        time.sleep(self.seconds)
        if self.failure:
            raise self.failure


@pytest.fixture
def pip_here(monkeypatch: pytest.MonkeyPatch) -> None:
    """As if this Python had a pip of its own, so that none is put into the environment."""
    monkeypatch.setattr(bootstrap, "pip_reaches_out", lambda: True)


RUN = PYPROJECT["project"]["dependencies"]
TEST = PYPROJECT["project"]["optional-dependencies"]["test"]


# What an environment is made from


def test_requirements_are_those_of_pyproject() -> None:
    assert bootstrap.requirements("run") == RUN
    assert bootstrap.requirements("test") == TEST


def test_extra_and_dependency_group_are_alike() -> None:
    assert PYPROJECT["dependency-groups"]["dev"] == TEST


def test_key_changes_with_the_file_and_with_python(monkeypatch: pytest.MonkeyPatch) -> None:
    key = bootstrap.environment_key(b"dependencies = []")

    assert bootstrap.environment_key(b"dependencies = []") == key
    assert bootstrap.environment_key(b"dependencies = ['x']") != key
    monkeypatch.setattr(sys, "platform", "another")
    assert bootstrap.environment_key(b"dependencies = []") != key


# Where it lies


@pytest.mark.parametrize(
    ("environ", "expected"),
    [
        ({"XDG_CACHE_HOME": "/cache"}, ["/shed/.venv", "/cache/leanto/*"]),
        ({"HOME": "/home/owner"}, ["/shed/.venv", "/home/owner/.cache/leanto/*"]),
        ({"LEANTO_VENV": "/elsewhere", "XDG_CACHE_HOME": "/cache"}, ["/elsewhere"]),
        ({"LEANTO_VENV": ""}, ["/shed/.venv", "/home/owner/.cache/leanto/*"]),
    ],
)
def test_checkout_is_tried_before_the_cache(
    environ: dict[str, str], expected: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setenv("HOME", "/home/owner")

    folders = bootstrap.candidates(Path("/shed"), environ)

    assert len(folders) == len(expected)
    assert all(folder.match(pattern) for folder, pattern in zip(folders, expected, strict=True))


def test_two_checkouts_share_no_cache_folder() -> None:
    environ = {"XDG_CACHE_HOME": "/cache"}

    one = bootstrap.candidates(Path("/shed"), environ)[-1]
    two = bootstrap.candidates(Path("/barn"), environ)[-1]

    assert one != two


def test_relative_folder_is_taken_from_where_one_stands(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)

    assert bootstrap.candidates(ROOT, {"LEANTO_VENV": "env"}) == [tmp_path / "env"]


def test_windows_keeps_its_own_places(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "platform", "win32")

    folders = bootstrap.candidates(Path("/shed"), {"LOCALAPPDATA": "/local"})

    assert folders[-1].parent == Path("/local/leanto")
    assert bootstrap.python_in(Path("env")) == Path("env/Scripts/python.exe")


@pytest.mark.usefixtures("pip_here")
def test_a_folder_that_cannot_be_written_is_passed_over(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "file").touch()  # nobody can make a folder below a file, not even root
    blocked, free = tmp_path / "file" / ".venv", tmp_path / "cache" / "deep"
    filler = Filler()
    monkeypatch.setattr(bootstrap, "candidates", lambda root, environ: [blocked, free])
    monkeypatch.setattr(bootstrap, "install", filler)

    assert bootstrap.environment("run") == bootstrap.python_in(free)
    assert filler.asked == [RUN]


def test_a_virtual_environment_of_somebody_else_is_left_alone(tmp_path: Path) -> None:
    foreign = tmp_path / ".venv"
    foreign.mkdir()
    (foreign / "pyvenv.cfg").touch()

    assert not bootstrap.usable(foreign)


def test_no_place_at_all_is_said_plainly(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "file").touch()
    monkeypatch.setenv("LEANTO_VENV", str(tmp_path / "file" / "env"))

    assert bootstrap.main(["demo"]) == 2
    said = capsys.readouterr().err
    assert str(tmp_path / "file" / "env") in said
    assert "Set LEANTO_VENV to a new folder" in said


# Making it


@pytest.mark.usefixtures("pip_here")
def test_made_once_and_then_ready(tmp_path: Path) -> None:
    folder, filler = tmp_path / "env", Filler()
    assert not bootstrap.ready(folder, "run", "key")

    bootstrap.prepare(folder, "run", "key", filler)
    bootstrap.prepare(folder, "run", "key", filler)

    assert filler.asked == [RUN]
    assert bootstrap.ready(folder, "run", "key")
    assert not bootstrap.ready(folder, "test", "key")


@pytest.mark.usefixtures("pip_here")
def test_tests_add_to_the_same_environment(tmp_path: Path) -> None:
    folder, filler = tmp_path / "env", Filler()
    bootstrap.prepare(folder, "run", "key", filler)
    (folder / "kept").touch()

    bootstrap.prepare(folder, "test", "key", filler)

    assert filler.asked == [RUN, TEST]
    assert (folder / "kept").exists()
    assert bootstrap.ready(folder, "run", "key")
    assert bootstrap.ready(folder, "test", "key")


@pytest.mark.usefixtures("pip_here")
def test_changed_requirements_are_set_up_anew(tmp_path: Path) -> None:
    folder, filler = tmp_path / "env", Filler()
    bootstrap.prepare(folder, "test", "old", filler)
    (folder / "left over").touch()

    bootstrap.prepare(folder, "run", "new", filler)

    assert filler.asked == [RUN, TEST, RUN]
    assert not (folder / "left over").exists()
    assert not bootstrap.ready(folder, "test", "new")


@pytest.mark.usefixtures("pip_here")
def test_set_up_that_was_cut_short_is_done_again(tmp_path: Path) -> None:
    folder, filler = tmp_path / "env", Filler()

    with pytest.raises(KeyboardInterrupt):
        bootstrap.prepare(folder, "run", "key", Filler(KeyboardInterrupt()))  # type: ignore[arg-type]

    assert not bootstrap.ready(folder, "run", "key")
    assert bootstrap.usable(folder)
    bootstrap.prepare(folder, "run", "key", filler)
    assert filler.asked == [RUN]
    assert bootstrap.ready(folder, "run", "key")


@pytest.mark.usefixtures("pip_here")
def test_environment_whose_python_went_away_is_not_ready(tmp_path: Path) -> None:
    folder = tmp_path / "env"
    bootstrap.prepare(folder, "run", "key", Filler())
    bootstrap.python_in(folder).unlink()

    assert not bootstrap.ready(folder, "run", "key")


@pytest.mark.usefixtures("pip_here")
def test_two_starts_at_once_set_up_once(tmp_path: Path) -> None:
    folder, filler = tmp_path / "env", Filler(seconds=0.3)
    starts = [
        threading.Thread(target=bootstrap.prepare, args=(folder, "run", "key", filler))
        for _ in range(2)
    ]

    for start in starts:
        start.start()
    for start in starts:
        start.join()

    assert filler.asked == [RUN]
    assert bootstrap.ready(folder, "run", "key")


def test_lock_of_a_killed_process_is_free(tmp_path: Path) -> None:
    folder = tmp_path / "env"
    code = (
        "import runpy, sys, pathlib, time\n"
        f"names = runpy.run_path({str(ROOT / 'inspect' / '__main__.py')!r}, run_name='bootstrap')\n"
        "with names['only_one'](pathlib.Path(sys.argv[1])):\n"
        "    print('held', flush=True)\n"
        "    time.sleep(600)\n"
    )
    holder = subprocess.Popen(
        [sys.executable, "-c", code, str(folder)], stdout=subprocess.PIPE, text=True
    )
    with holder:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        with bootstrap.lock_path(folder).open("a") as handle:
            assert not bootstrap.try_lock(handle)
        holder.kill()

    with bootstrap.lock_path(folder).open("a") as handle:
        assert bootstrap.try_lock(handle)


@pytest.mark.usefixtures("pip_here")
def test_full_disk_is_said_plainly(tmp_path: Path) -> None:
    full = Filler(OSError(28, "No space left on device"))

    with pytest.raises(bootstrap.SetupError, match=r"No space left on device\nMake room"):
        bootstrap.prepare(tmp_path / "env", "run", "key", full)


# What can be missing


def test_pip_missing_and_no_way_to_get_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("LEANTO_VENV", str(tmp_path / "env"))
    monkeypatch.setitem(sys.modules, "pip", None)
    monkeypatch.setattr(bootstrap, "find_spec", lambda name: None)  # no ensurepip either

    assert bootstrap.main(["demo"]) == 2
    said = capsys.readouterr().err
    assert "pip is missing" in said
    assert "sudo apt install python3-pip" in said
    assert "python3 -m ensurepip" in said


@pytest.mark.parametrize(
    ("version", "enough"),
    [
        ("20.3.4", False),
        ("22.2.2", False),
        ("22.3", True),
        ("23.0.1", True),
        ("26.1.dev0", True),
        ("unknown", False),
    ],
)
def test_pip_reaches_another_environment_from_22_3_on(
    version: str, enough: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    pip = ModuleType("pip")
    pip.__version__ = version  # type: ignore[attr-defined]
    monkeypatch.setitem(sys.modules, "pip", pip)

    assert bootstrap.pip_reaches_out() is enough


@pytest.mark.parametrize(
    ("output", "said"),
    [
        (
            "WARNING: Retrying (Retry(total=4)) after connection broken by "
            "'NewConnectionError(': Failed to establish a new connection: [Errno -3] "
            "Temporary failure in name resolution')'\n"
            "ERROR: No matching distribution found for textual>=8\n",
            "needs the internet",
        ),
        ("ERROR: Cannot connect to proxy. ProxyError('...')\n", "needs the internet"),
        ("ERROR: No matching distribution found for textual>=8\n", "No matching distribution"),
        ("ERROR: Could not install packages due to an OSError\n", "due to an OSError"),
        ("", "could not be installed"),
    ],
)
def test_failure_of_pip_is_explained(output: str, said: str) -> None:
    error = bootstrap.pip_failed(output)

    assert said in str(error)
    assert "run the same command again" in str(error)


def test_old_python_is_told_what_to_use(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "version_info", (3, 10, 13, "final", 0))

    assert bootstrap.main(["demo"]) == 2
    assert "needs Python 3.11 or newer; this is Python 3.10" in capsys.readouterr().err


# Starting


@pytest.mark.parametrize(
    ("args", "module", "rest"),
    [
        (["demo"], "leanto", ["demo"]),
        (["check", "--help"], "leanto", ["check", "--help"]),
        ([], "leanto", []),
        (["test"], "pytest", []),
        (["test", "-k", "layers"], "pytest", ["-k", "layers"]),
    ],
)
@pytest.mark.skipif(sys.platform == "win32", reason="Windows starts a child instead")
def test_arguments_reach_leanto_or_pytest(
    args: list[str],
    module: str,
    rest: list[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    started: list[tuple[Path, list[str], dict[str, str]]] = []
    python = tmp_path / "python"
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("PYTHONPATH", "theirs")
    monkeypatch.setattr(bootstrap, "environment", lambda kind: python)
    monkeypatch.setattr(os, "execve", lambda *call: started.append(call))

    bootstrap.main(args)

    assert len(started) == 1
    program, command, environ = started[0]
    assert program == python
    assert command == [str(python), "-P", "-m", module, *rest]
    assert environ["PYTHONPATH"] == os.pathsep.join([str(ROOT / "inspect"), "theirs"])
    assert Path.cwd() == (ROOT if module == "pytest" else tmp_path)
