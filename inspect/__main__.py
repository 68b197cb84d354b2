"""Runs leanto from a checkout, with nothing installed before.

    python3 inspect demo             the demonstration
    python3 inspect test [...]       the tests; arguments go to pytest
    python3 inspect <command> [...]  any other leanto command

The first run makes a virtual environment with the libraries that leanto needs. Every later
run finds it finished and starts in it at once. Only the standard library is used here.
"""

from __future__ import annotations

import hashlib
import os
import sys
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path
from typing import IO

ROOT = Path(__file__).resolve().parent.parent
OLDEST_PYTHON = (3, 11)
OLDEST_PIP = (22, 3)
"""The first pip that can install into another environment (``--python``)."""

NO_NETWORK_SIGNS = (
    "NewConnectionError",
    "NameResolutionError",
    "ConnectTimeoutError",
    "ReadTimeoutError",
    "ProxyError",
    "Failed to establish a new connection",
    "Temporary failure in name resolution",
    "Network is unreachable",
    "Connection refused",
    "timed out",
)


class SetupError(Exception):
    """The environment could not be made: what is wrong, and what to do."""

    def __init__(self, what: str, remedy: str) -> None:
        super().__init__(f"{what}\n{remedy}")


def main(args: Sequence[str]) -> int:
    """The exit code; on POSIX the process is replaced and nothing returns on success."""
    if sys.version_info < OLDEST_PYTHON:
        major, minor = sys.version_info[:2]
        say(
            f"leanto needs Python 3.11 or newer; this is Python {major}.{minor}.\n"
            "Start it with a newer one, such as: python3.11 inspect demo"
        )
        return 2
    testing = args[:1] == ["test"]
    try:
        python = environment("test" if testing else "run")
    except SetupError as error:
        say(str(error))
        return 2
    except KeyboardInterrupt:
        say("Stopped. Run the same command again to finish the set-up.")
        return 130
    if testing:
        os.chdir(ROOT)
        return hand_over(python, "pytest", args[1:])
    return hand_over(python, "leanto", args)


def say(text: str) -> None:
    """Tells the user, apart from the output of leanto itself."""
    print(text, file=sys.stderr, flush=True)


# Where the environment lies


def environment(kind: str) -> Path:
    """The Python of an environment that is ready for ``kind``: "run" or "test"."""
    key = environment_key((ROOT / "pyproject.toml").read_bytes())
    folders = candidates(ROOT, os.environ)
    for folder in folders:
        if ready(folder, kind, key):
            return python_in(folder)
    for folder in folders:
        if usable(folder):
            prepare(folder, kind, key, install)
            return python_in(folder)
    raise SetupError(
        "There is no folder to put leanto's libraries in. Tried:\n"
        + "\n".join(f"  {folder}" for folder in folders),
        "Set LEANTO_VENV to a new folder that you may write in, and run the command again.",
    )


def candidates(root: Path, environ: Mapping[str, str]) -> list[Path]:
    """The folders to try in turn: the checkout first, then the user's cache."""
    if environ.get("LEANTO_VENV"):
        return [Path(environ["LEANTO_VENV"]).absolute()]
    folders = [root / ".venv"]
    cache = environ.get("LOCALAPPDATA" if sys.platform == "win32" else "XDG_CACHE_HOME")
    try:
        base = Path(cache) if cache else Path.home() / ".cache"
    except RuntimeError:  # no home folder
        return folders
    checkout = hashlib.sha256(str(root).encode("utf-8", "surrogateescape")).hexdigest()[:12]
    return [*folders, base / "leanto" / checkout]


def python_in(folder: Path) -> Path:
    """The interpreter of the virtual environment in ``folder``."""
    return folder / ("Scripts/python.exe" if sys.platform == "win32" else "bin/python")


def usable(folder: Path) -> bool:
    """Whether an environment may be made here: writable, and nobody else's files in it."""
    try:
        lock_path(folder).parent.mkdir(parents=True, exist_ok=True)
        with lock_path(folder).open("a"):
            pass
        if not folder.exists():
            return True
        ours = stamp(folder, "run").exists() or not any(folder.iterdir())
    except OSError:
        return False
    return ours and os.access(folder, os.W_OK)


# When it is ready


def environment_key(pyproject: bytes) -> str:
    """What an environment was made from: another key means that it is out of date."""
    python = f"{sys.implementation.cache_tag} {sys.platform}"
    return hashlib.sha256(pyproject + python.encode()).hexdigest()


def stamp(folder: Path, kind: str) -> Path:
    """The file that says what the environment in ``folder`` is ready for."""
    return folder / f"leanto-{kind}.stamp"


def ready(folder: Path, kind: str, key: str) -> bool:
    """Whether everything for ``kind`` was installed to the end, from this pyproject.toml."""
    try:
        return stamp(folder, kind).read_text("utf-8") == key and python_in(folder).exists()
    except (OSError, UnicodeDecodeError):
        return False


# Making it


def prepare(folder: Path, kind: str, key: str, fill: Callable[[Path, list[str]], None]) -> None:
    """Makes ``folder`` ready for ``kind``; ``fill`` installs requirements for a Python.

    The stamp is written last, so a set-up that was cut short is done again from the start.
    """
    with only_one(folder):
        if ready(folder, kind, key):
            return
        say(f"Setting up leanto's libraries in {folder} (only once, about a minute) ...")
        try:
            if not ready(folder, "run", key):
                make_empty(folder)
                fill(python_in(folder), requirements("run"))
                stamp(folder, "run").write_text(key, "utf-8")
            if kind == "test":
                fill(python_in(folder), requirements("test"))
                stamp(folder, "test").write_text(key, "utf-8")
        except OSError as error:
            raise SetupError(
                f"leanto's libraries could not be set up: {error}",
                "Make room or give yourself the right to write there, or set LEANTO_VENV"
                " to another folder.",
            ) from error


def requirements(kind: str) -> list[str]:
    """What pyproject.toml asks for."""
    import tomllib  # missing before 3.11, where main() has still to say so

    project = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
    listed = project["dependencies"] if kind == "run" else project["optional-dependencies"][kind]
    return [str(requirement) for requirement in listed]


def make_empty(folder: Path) -> None:
    """A virtual environment without libraries, in place of what was there."""
    import shutil
    import subprocess
    import venv

    with_pip = not pip_reaches_out()
    if with_pip and find_spec("ensurepip") is None:
        raise SetupError(
            "Python's installer pip is missing or too old, and leanto needs it once.",
            "On Debian or Ubuntu: sudo apt install python3-pip\n"
            "Elsewhere: python3 -m ensurepip --upgrade\n"
            "Then run the same command again.",
        )
    if folder.exists():
        shutil.rmtree(folder)
    folder.mkdir()
    stamp(folder, "run").write_text("unfinished", "utf-8")  # marks the folder as ours
    try:
        venv.EnvBuilder(symlinks=sys.platform != "win32", with_pip=with_pip).create(folder)
    except subprocess.CalledProcessError as error:
        raise SetupError(
            f"Python could not make a virtual environment: {error}",
            "On Debian or Ubuntu: sudo apt install python3-venv python3-pip",
        ) from error


def pip_reaches_out() -> bool:
    """Whether this Python's own pip can install into another environment.

    Debian parts ensurepip from Python, so an environment there often cannot get its own pip.
    """
    try:
        version = import_module("pip").__version__
    except (ImportError, AttributeError):
        return False
    numbers = version.split(".")[:2]
    return all(n.isdigit() for n in numbers) and tuple(map(int, numbers)) >= OLDEST_PIP


def install(python: Path, wanted: list[str]) -> None:
    """Installs ``wanted`` for ``python``, quietly unless it fails."""
    import subprocess

    outer = [sys.executable, "-m", "pip", "--python", str(python)]
    pip = outer if pip_reaches_out() else [str(python), "-m", "pip"]
    done = subprocess.run(
        [*pip, "install", "--quiet", "--disable-pip-version-check", "--no-input", *wanted],
        env={**os.environ, "PIP_USER": "0"},  # a user's "user = true" makes no sense in here
        stdin=subprocess.DEVNULL,
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
        errors="replace",
    )
    if done.returncode:
        raise pip_failed(done.stdout)


def pip_failed(output: str) -> SetupError:
    """What pip's last words mean for the user."""
    if any(sign in output for sign in NO_NETWORK_SIGNS):
        return SetupError(
            "leanto's libraries could not be fetched: no connection to the package index.",
            "The first run needs the internet; later runs do not."
            " Connect and run the same command again.",
        )
    last_lines = "\n".join(output.strip().splitlines()[-8:])
    return SetupError(
        f"leanto's libraries could not be installed. pip said:\n{last_lines}",
        "Put this right and run the same command again.",
    )


# One at a time


def lock_path(folder: Path) -> Path:
    """Beside the folder, as the folder itself is removed and made anew."""
    return folder.with_name(folder.name + ".lock")


@contextmanager
def only_one(folder: Path) -> Iterator[None]:
    """Holds the lock of ``folder``. The system frees it when the process ends, however it ends."""
    import time

    with lock_path(folder).open("a") as handle:
        told = False
        while not try_lock(handle):
            if not told:
                say("Another leanto is setting up the libraries; waiting for it ...")
                told = True
            time.sleep(0.2)
        yield


def try_lock(handle: IO[str]) -> bool:
    """Whether the lock was free; it is held until ``handle`` is closed."""
    import errno

    try:
        if sys.platform == "win32":
            import msvcrt

            msvcrt.locking(handle.fileno(), msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        # Any other error means a file system without locks, where waiting would never end.
        return error.errno not in (errno.EAGAIN, errno.EACCES, errno.EDEADLK)
    return True


# Starting


def hand_over(python: Path, module: str, args: Sequence[str]) -> int:
    """Runs ``module`` in the environment; on POSIX in place of this process."""
    # -P keeps the folder one stands in off the search path.
    command = [str(python), "-P", "-m", module, *args]
    search = [str(ROOT / "inspect"), os.environ.get("PYTHONPATH", "")]
    environ = {**os.environ, "PYTHONPATH": os.pathsep.join(filter(None, search))}
    if sys.platform == "win32":
        # exec there would give the prompt back while leanto still runs.
        import signal
        import subprocess

        signal.signal(signal.SIGINT, signal.SIG_IGN)
        return subprocess.run(command, env=environ).returncode
    os.execve(python, command, environ)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
