"""Coverage-guided fuzzing with atheris: ``python tests/fuzz/run.py TARGET [SECONDS]``.

TARGET is one of ``targets.py``. It stops at the first input that is answered with anything but a
result or leanto's own words, that takes more than 2 seconds of the processor, or more than 500 MiB;
that input is left in this folder as ``crash-*``, ``timeout-*`` or ``oom-*``.
"""

from __future__ import annotations

import contextlib
import sys
import tempfile
import time
from pathlib import Path

import atheris

ROOT = Path(__file__).resolve().parents[2]
sys.path[:0] = [str(ROOT / "inspect"), str(ROOT / "tests")]
SECONDS = "60"
MOST_S = 2.0
"""Of the processor, for one input."""

with atheris.instrument_imports(include=["leanto"]):
    from fuzz.targets import LIBRARIES, REFUSED, TARGETS, samples


def main() -> None:
    target, seconds = sys.argv[1], sys.argv[2] if len(sys.argv) > 2 else SECONDS
    run = TARGETS[target]
    # Watching a library takes long to set up; it pays where there is time to go deep.
    watched = LIBRARIES.get(target, ()) if float(seconds) >= float(SECONDS) else ()
    # Without a name it would watch every library.
    with atheris.instrument_imports(include=list(watched)) if watched else contextlib.nullcontext():
        first = list(samples(target))  # loads the libraries

    def one(data: bytes) -> None:
        began = time.process_time()
        with contextlib.suppress(*REFUSED):
            run(data)
        took_s = time.process_time() - began
        assert took_s < MOST_S, f"took {took_s:.1f} s"

    with tempfile.TemporaryDirectory() as start:
        for number, sample in enumerate(first):
            Path(start, str(number)).write_bytes(sample)
        # The timeout is by the clock, which a busy machine makes run ahead.
        limits = ["-timeout=20", "-rss_limit_mb=500", "-max_len=60000", "-print_final_stats=1"]
        atheris.Setup([sys.argv[0], f"-max_total_time={seconds}", *limits, start], one)
        atheris.Fuzz()


if __name__ == "__main__":
    main()
