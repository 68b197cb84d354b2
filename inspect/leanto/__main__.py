"""``python -m leanto`` is the ``leanto`` command."""

from __future__ import annotations

from leanto.cli.main import main

raise SystemExit(main())
