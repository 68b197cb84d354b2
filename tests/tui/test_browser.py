"""The walk in a browser: served on loopback, to its own pages only."""

from __future__ import annotations

import builtins
import os
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from leanto.building.model import Building
from leanto.errors import LeantoError
from leanto.job import Job
from leanto.tui import browser

SOURCE = Path(__file__).resolve().parents[2] / "inspect"


@pytest.mark.parametrize(
    ("host", "loopback"),
    [
        ("127.0.0.1", True),
        ("127.8.9.10", True),  # the whole block is loopback: RFC 1122, 3.2.1.3
        ("::1", True),  # RFC 4291, 2.5.3
        ("localhost", True),
        ("0.0.0.0", False),
        ("192.0.2.7", False),
        ("shed.example", False),
    ],
)
def test_only_an_address_that_others_reach_gets_a_warning(host: str, loopback: bool) -> None:
    assert browser.is_loopback(host) is loopback
    lines = browser.warning(host)
    assert len(lines) == (0 if loopback else 1)
    assert all("no password" in line for line in lines)


def test_pages_of_this_machine_are_known_by_each_of_its_names() -> None:
    assert browser.origins("127.0.0.1", 8123) == {"http://127.0.0.1:8123", "http://localhost:8123"}
    assert browser.origins("::1", 8123) > {"http://[::1]:8123"}
    assert browser.origins("192.0.2.7", 8123) == {"http://192.0.2.7:8123"}


def test_an_address_that_no_browser_can_open_is_refused(tmp_path: Path) -> None:
    with pytest.raises(LeantoError, match="no address"):
        browser.serve(tmp_path, "0.0.0.0", 8123)


def test_without_the_library_it_says_how_to_get_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    real = builtins.__import__

    def without(name: str, *rest: Any) -> Any:
        if name.startswith(("aiohttp", "textual_serve")):
            raise ImportError(name)
        return real(name, *rest)

    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(LeantoError) as refused:
        browser.serve(tmp_path, "127.0.0.1", 8123)
    assert f'-m pip install "{browser.PACKAGE}"' in refused.value.remedy


def test_a_path_with_spaces_and_signs_stays_one_word() -> None:
    command = browser.command_line(Path("my shed; rm -r"))
    assert command.endswith("walk 'my shed; rm -r'") or os.name == "nt"


@pytest.fixture
def port() -> int:
    with socket.socket() as held:
        held.bind(("127.0.0.1", 0))
        return int(held.getsockname()[1])


@pytest.fixture
def server(tmp_path: Path, shed: Building, port: int) -> Iterator[subprocess.Popen[str]]:
    pytest.importorskip("textual_serve")
    Job.create(tmp_path / "job", shed).close()
    command = [sys.executable, "-P", "-m", "leanto", "walk", str(tmp_path / "job")]
    process = subprocess.Popen(
        [*command, "--browser", "--port", str(port)],
        env={**os.environ, "PYTHONPATH": str(SOURCE)},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    try:
        assert process.stdout is not None
        assert (
            process.stdout.readline()
            == f"The walk is at http://127.0.0.1:{port}. Ctrl+C ends it.\n"
        )
        yield process
    finally:
        process.kill()
        process.wait()
        process.stdout.close()
        process.stdout.close()


def fetched(url: str, **headers: str) -> str:
    """The page, asked for again while the server is still opening its door."""
    end = time.monotonic() + 30
    while True:
        try:
            request = urllib.request.Request(url, headers=headers)
            with urllib.request.urlopen(request, timeout=30) as answer:
                return str(answer.read().decode("utf-8"))
        except urllib.error.HTTPError:
            raise
        except urllib.error.URLError:
            assert time.monotonic() < end
            time.sleep(0.1)


@pytest.mark.skipif(os.name == "nt", reason="signals as POSIX has them")
def test_a_page_is_served_and_the_walk_runs_behind_it(
    server: subprocess.Popen[str], port: int, tmp_path: Path
) -> None:
    page = fetched(f"http://127.0.0.1:{port}/")
    assert f"ws://127.0.0.1:{port}/ws" in page
    assert "fonts.googleapis" not in page
    for headers in ({"Host": "evil.example"}, {"Origin": "http://evil.example"}):
        with pytest.raises(urllib.error.HTTPError) as refused:
            fetched(f"http://127.0.0.1:{port}/", **headers)
        assert refused.value.code == 403
        refused.value.close()
    _walk_by_socket(port)
    with Job.open(tmp_path / "job") as job:
        assert [str(seen.condition) for seen in job.walk.observations.values()] == ["sound"]
    server.send_signal(signal.SIGINT)
    server.wait(30)


def _walk_by_socket(port: int) -> None:
    """What the page does: open the socket, wait for the screen, press 1 and leave."""
    import asyncio

    import aiohttp

    async def visit() -> None:
        url = f"ws://127.0.0.1:{port}/ws?width=80&height=24"
        async with aiohttp.ClientSession() as session:
            with pytest.raises(aiohttp.WSServerHandshakeError):
                await session.ws_connect(url, origin="http://evil.example")
            async with session.ws_connect(url, origin=f"http://127.0.0.1:{port}") as socket:
                await _seen(socket, b"no access 0", b"skip 0", b"skipped 0")
                await socket.send_json(["stdin", "1"])
                await _seen(socket, b"SOUND")

    async def _seen(socket: aiohttp.ClientWebSocketResponse, *words: bytes) -> None:
        shown, end = b"", time.monotonic() + 60
        while not any(word in shown for word in words):
            assert time.monotonic() < end, shown[-2000:]
            message = await socket.receive(timeout=60)
            if isinstance(message.data, bytes):
                shown += message.data

    asyncio.run(visit())


@pytest.mark.skipif(os.name == "nt", reason="pipes as POSIX has them")
def test_a_walk_whose_server_is_gone_ends_by_itself(tmp_path: Path, shed: Building) -> None:
    Job.create(tmp_path / "job", shed).close()
    process = subprocess.Popen(
        [sys.executable, "-P", "-m", "leanto", "walk", str(tmp_path / "job")],
        env={
            **os.environ,
            "PYTHONPATH": str(SOURCE),
            "TEXTUAL_DRIVER": "textual.drivers.web_driver:WebDriver",
            "COLUMNS": "80",
            "ROWS": "24",
        },
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
    )
    assert process.stdin is not None
    assert process.stdout is not None
    try:
        assert process.stdout.read(1)  # it draws
        process.stdin.close()
        while process.stdout.read(4_096):
            pass
        assert process.wait(60) == 128 + signal.SIGHUP
    finally:
        process.kill()
        process.wait()
        process.stdout.close()
