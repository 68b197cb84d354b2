"""The JOB argument that most commands take."""

from __future__ import annotations

import argparse
from pathlib import Path


def add_job(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("job", type=Path, metavar="JOB", help="the job's folder")
