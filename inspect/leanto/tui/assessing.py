"""Assesses the job after each entry without ever holding up the keys."""

from __future__ import annotations

import time
from dataclasses import dataclass

from textual.message import Message
from textual.screen import Screen
from textual.timer import Timer

from leanto.assessment import Assessment
from leanto.errors import LeantoError
from leanto.job import Job

INLINE_S = 0.04
"""An assessment that takes longer of the processor's time is done in a thread."""

AT_ONCE_S = 0.15
"""One that takes no longer starts at once: a key that comes meanwhile shares the processor with
it and is still painted in a tenth of a second."""

REST_S = 0.2
"""How long the keys must rest before a longer one."""


@dataclass
class Assessed(Message):
    """The job was assessed; the assessment, or why it could not be."""

    assessment: Assessment | None
    error: LeantoError | None = None


class Assessing:
    """One assessment at a time; entries that come meanwhile lead to one more after it."""

    def __init__(self, screen: Screen[None], job: Job) -> None:
        self._screen = screen
        self._job = job
        self._running = False
        self._again = False
        self._took_s = float("inf")
        self._last: Assessment | None = None
        self._rest: Timer | None = None

    def start(self) -> None:
        """Assess the job as it stands now; the screen gets ``Assessed``."""
        if self._running:
            self._again = True
        elif self._took_s <= INLINE_S:
            self._running = True
            # After the answer itself is on the screen.
            self._screen.call_after_refresh(self._assess)
        elif self._last is None or self._took_s <= AT_ONCE_S:
            self._start_thread()
        else:
            self._wait()

    def key_pressed(self) -> None:
        """Put off a long assessment: it would slow down what is being typed."""
        if self._rest is not None:
            self._wait()

    def finished(self) -> None:
        """To be called by the screen for each ``Assessed`` that it gets."""
        self._running = False
        if self._again:
            self._again = False
            self.start()

    def _wait(self) -> None:
        if self._rest is not None:
            self._rest.stop()
        self._rest = self._screen.set_timer(REST_S, self._start_thread)

    def _start_thread(self) -> None:
        self._rest = None
        self._running = True
        self._screen.run_worker(self._assess, name="assess", thread=True, exit_on_error=False)

    def _assess(self) -> None:
        began = time.thread_time()
        try:
            assessment = self._job.assess()
        except LeantoError as error:
            self._screen.post_message(Assessed(None, error))
            return
        if assessment is not self._last:  # else it was kept from before, and that took no time
            self._took_s = time.thread_time() - began
        self._last = assessment
        self._screen.post_message(Assessed(assessment))
