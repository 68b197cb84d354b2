"""The walk in a browser: a small server that runs it once for each page that is opened."""

from __future__ import annotations

import ipaddress
import os
import re
import shlex
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from leanto.errors import LeantoError

HOST = "127.0.0.1"
PORT = 8000
PACKAGE = "textual-serve>=1.1.3"
_ELSEWHERE = re.compile(r"<link[^>]*https?://fonts\.[^>]*>")


def is_loopback(host: str) -> bool:
    """True for an address that only this machine reaches."""
    if host == "localhost":
        return True
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return False


def origins(host: str, port: int) -> frozenset[str]:
    """What a browser calls the pages of this server: ``http://127.0.0.1:8000``."""
    names = {host, "localhost", HOST} if is_loopback(host) else {host}
    return frozenset(f"http://{_in_url(name)}:{port}" for name in names)


def command_line(job: Path) -> str:
    """What runs the walk, for a shell."""
    words = [sys.executable, "-P", "-m", "leanto", "walk", str(job)]
    return subprocess.list2cmdline(words) if os.name == "nt" else shlex.join(words)


def serve(job: Path, host: str, port: int) -> None:
    """Serve the walk until Ctrl+C. LeantoError without the library, and for a taken port."""
    if host in ("0.0.0.0", "::"):
        raise LeantoError(
            f"{host} is no address that a browser can open.",
            "Name the address of this machine, such as --host 192.0.2.7.",
        )
    server = _server(job, host, port)
    # The walk is started in a shell of its own, from wherever leanto is now.
    here = str(Path(__file__).resolve().parents[2])
    os.environ["PYTHONPATH"] = os.pathsep.join(
        dict.fromkeys([here, *filter(None, [os.environ.get("PYTHONPATH")])])
    )
    try:
        server.serve()
    except OSError as error:
        raise LeantoError(
            f"Nothing can be served at {host}, port {port}: {error.strerror or error}.",
            f"Choose another port: --port {port + 1}.",
        ) from error


def _server(job: Path, host: str, port: int) -> Any:
    try:
        from aiohttp import web
        from textual_serve.server import Server
    except ImportError as error:
        raise LeantoError(
            "The walk in a browser needs the library textual-serve, which is not here.",
            f'Get it with: {sys.executable} -m pip install "{PACKAGE}"',
        ) from error

    class WalkServer(Server):
        """Takes keys only from its own pages: another page in the same browser could send some."""

        known = origins(host, port)

        def refuse_strangers(self, request: web.Request) -> None:
            if f"http://{request.host}" not in self.known:
                raise web.HTTPForbidden(text="Open the address that leanto has printed.")
            if request.headers.get("Origin", next(iter(self.known))) not in self.known:
                raise web.HTTPForbidden(text="Another page may not use the walk.")

        async def handle_index(self, request: web.Request) -> Any:
            self.refuse_strangers(request)
            page: Any = await super().handle_index(request)
            page.text = _ELSEWHERE.sub("", page.text)  # no font from elsewhere
            return page

        async def handle_websocket(self, request: web.Request) -> web.WebSocketResponse:
            self.refuse_strangers(request)
            return await super().handle_websocket(request)

        async def on_startup(self, app: web.Application) -> None:
            print(f"The walk is at {self.public_url}. Ctrl+C ends it.", flush=True)

    return WalkServer(
        command_line(job),
        host=host,
        port=port,
        title="leanto",
        public_url=f"http://{_in_url(host)}:{port}",
    )


def warning(host: str) -> Sequence[str]:
    """One line for an address that others reach; nothing for loopback."""
    if is_loopback(host):
        return ()
    return (f"Careful: whoever reaches {host} can read and change this job; there is no password.",)


def _in_url(host: str) -> str:
    return f"[{host}]" if ":" in host else host
