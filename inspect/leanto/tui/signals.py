"""An orderly end when the terminal is closed or the process is told to stop."""

from __future__ import annotations

import asyncio
import contextlib
import os
import select
import signal
import stat
import sys
import threading
from typing import Protocol

PATIENCE_S = 2.0


class Leaves(Protocol):
    def exit(self, *, return_code: int) -> None: ...


def leave_on_signals(app: Leaves) -> None:
    """Make SIGTERM and SIGHUP end the app with 128 + the signal, its screen put back.

    Nothing has to be saved: every entry was on the disk before. Call it from the running loop.
    """
    if os.name == "nt":
        return
    loop = asyncio.get_running_loop()
    for number in (signal.SIGTERM, signal.SIGHUP):
        loop.add_signal_handler(number, _leave, app, 128 + number)
    descriptor = _input()
    if descriptor is not None:
        threading.Thread(
            target=_leave_when_hung_up, args=(app, loop, descriptor), daemon=True
        ).start()


def _input() -> int | None:
    """The terminal that is typed at, or the pipe that a browser's keys come through."""
    if sys.__stdin__ is None or sys.__stdin__.closed:
        return None
    try:
        descriptor = sys.__stdin__.fileno()
        is_pipe = stat.S_ISFIFO(os.fstat(descriptor).st_mode)
    except OSError:
        return None
    return descriptor if is_pipe or os.isatty(descriptor) else None


def _leave_when_hung_up(app: Leaves, loop: asyncio.AbstractEventLoop, terminal: int) -> None:
    """Waits for the input to go away; unless it is the process's own, that sends no signal.

    The framework would read its end again and again, and never stop.
    """
    watch = select.poll()
    watch.register(terminal, 0)  # a hang-up is told without being asked for
    watch.poll()
    with contextlib.suppress(RuntimeError):  # the loop has ended by itself
        loop.call_soon_threadsafe(_leave, app, 128 + signal.SIGHUP)


def _leave(app: Leaves, return_code: int) -> None:
    # With its terminal gone the app may sleep for ever in a write; then this ends it.
    watchdog = threading.Timer(PATIENCE_S, os._exit, (return_code,))
    watchdog.daemon = True
    watchdog.start()
    app.exit(return_code=return_code)
