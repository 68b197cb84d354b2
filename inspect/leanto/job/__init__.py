"""The one door of both front ends: open, record, undo, assess, report."""

from __future__ import annotations

from leanto.job.folder import is_job
from leanto.job.job import Job

__all__ = ["Job", "is_job"]
