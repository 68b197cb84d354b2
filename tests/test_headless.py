"""The computation runs without screens, PDF or pictures, and `inspect/` hides nothing."""

from __future__ import annotations

import os
import subprocess
import sys
import sysconfig
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent


def fresh_process(code: str, **environ: str) -> str:
    """What a new Python prints that starts at the root of the checkout."""
    inherited = {k: v for k, v in os.environ.items() if k not in ("PYTHONPATH", "PYTHONSAFEPATH")}
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=ROOT,
        env={**inherited, **environ},
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    return done.stdout.strip()


def test_assessing_loads_no_front_end_and_no_ink() -> None:
    code = (
        "import leanto.assessment, sys\n"
        "print([name for name in ('textual', 'reportlab', 'PIL', 'pint') if name in sys.modules])"
    )

    assert fresh_process(code, PYTHONPATH=str(ROOT / "inspect")) == "[]"


def test_inspect_at_the_root_is_the_standard_library() -> None:
    printed = fresh_process("import inspect; print(inspect.__file__)")

    assert Path(printed) == Path(sysconfig.get_path("stdlib"), "inspect.py")


def test_the_source_root_is_no_package() -> None:
    assert (ROOT / "inspect" / "leanto" / "__init__.py").is_file()
    assert not (ROOT / "inspect" / "__init__.py").exists()


def test_help_loads_neither_screens_nor_ink_nor_data() -> None:
    heavy = ("textual", "reportlab", "PIL", "pint", "numpy", "pydantic", "yaml", "sqlite3")
    code = (
        "import contextlib, sys\n"
        "from leanto.cli.main import main\n"
        "with contextlib.suppress(SystemExit):\n"
        "    main(['--help'])\n"
        f"print([name for name in {heavy!r} if name in sys.modules])"
    )

    assert fresh_process(code, PYTHONPATH=str(ROOT / "inspect")).splitlines()[-1] == "[]"


def test_printing_commands_load_no_screens_and_no_ink() -> None:
    code = (
        "import sys\n"
        "from leanto.cli.main import main\n"
        "main(['list', 'tests/jobs'])\n"
        "main(['reckon', 'emc', '--temp', '70', '--humidity', '50'])\n"
        "print([name for name in ('textual', 'reportlab', 'PIL') if name in sys.modules])"
    )

    assert fresh_process(code, PYTHONPATH=str(ROOT / "inspect")).splitlines()[-1] == "[]"
