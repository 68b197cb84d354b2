"""The command line: one subcommand a file, and the single place where errors are caught."""

from __future__ import annotations

import argparse
import gc
import os
import sys
from collections.abc import Sequence

from leanto import __version__
from leanto.cli import (
    bids,
    check,
    decide,
    demo,
    doctor,
    export,
    findings,
    merge,
    money,
    new,
    open_up,
    reckon,
    recover,
    report,
    scope,
    units,
    walk,
)
from leanto.cli import list as list_jobs
from leanto.cli.plain import PlainOutput
from leanto.errors import EXIT_INTERRUPTED, EXIT_USER_ERROR, InputProblems, LeantoError

COMMANDS = (
    demo,
    new,
    walk,
    findings,
    decide,
    scope,
    money,
    report,
    bids,
    open_up,
    export,
    list_jobs,
    merge,
    units,
    recover,
    reckon,
    check,
    doctor,
)
"""Each module has HELP, add_arguments(parser) and run(arguments) -> exit code."""


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; returns the exit code: 0 done, 2 something to put right."""
    # Reading the data files makes a million objects and no garbage; looking for it takes a fifth.
    gc.set_threshold(50_000, 20, 20)
    out, err = sys.stdout, sys.stderr
    sys.stdout, sys.stderr = PlainOutput(out), PlainOutput(err)
    try:
        return _run(sys.argv[1:] if argv is None else argv)
    finally:
        sys.stdout, sys.stderr = out, err


def _run(argv: Sequence[str]) -> int:
    arguments = _parser(argv).parse_args(argv)
    try:
        code: int = arguments.run(arguments)
        sys.stdout.flush()
        return code
    except BrokenPipeError:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return EXIT_USER_ERROR
    except KeyboardInterrupt:
        print("Stopped. Everything entered so far is kept.", file=sys.stderr)
        return EXIT_INTERRUPTED
    except LeantoError as error:
        _say(error)
        return error.exit_code
    except OSError as error:
        _say(_from_system(error))
        return EXIT_USER_ERROR


def _parser(argv: Sequence[str]) -> argparse.ArgumentParser:
    """The parser, its commands complete where they are named: some load much for that."""
    parser = argparse.ArgumentParser(
        prog="leanto",
        description="Walk an old outbuilding once; leave with a condition report, a gut-or-keep "
        "decision, a range to budget on, and one repair scope for all bidders.",
        epilog="leanto is no engineer, no license and no code official.",
    )
    parser.add_argument("--version", action="version", version=f"leanto {__version__}")
    commands = parser.add_subparsers(title="commands", required=True, metavar="COMMAND")
    for module in COMMANDS:
        name = module.__name__.rpartition(".")[2].replace("_", "-")
        command = commands.add_parser(name, help=module.HELP, description=module.HELP)
        if name in argv:
            module.add_arguments(command)
        command.set_defaults(run=module.run)
    return parser


def _say(error: LeantoError) -> None:
    if isinstance(error, InputProblems):
        for problem in error.problems:
            print(problem, file=sys.stderr)
    else:
        print(f"leanto: {error}", file=sys.stderr)


def _from_system(error: OSError) -> LeantoError:
    """A disk that is full, a folder without permission: said in one line."""
    where = f" {error.filename}" if error.filename else ""
    return LeantoError(
        f"The system refused{where}: {error.strerror or error}.",
        "Free some space or check the permissions, then run the command again.",
    )
