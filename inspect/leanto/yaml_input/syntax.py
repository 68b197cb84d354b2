"""Plain words for what the YAML parser objects to."""

from __future__ import annotations

import re

import yaml

from leanto.errors import Problem

_QUOTE_IT = "Put the whole text in quotes."
_BRACKET = ("A bracket is opened but not closed.", "Close it, or put the text in quotes.")
_INDENT = (
    "This line does not fit the lines above it.",
    "Check its indent, and that quotes and lists above it are complete.",
)
_PLAIN: tuple[tuple[str, str, str], ...] = (
    (
        "mapping values are not allowed",
        "A colon stands where no key can be.",
        'Check the indent; put text that holds ": " in quotes.',
    ),
    (
        r"found character '\\t'",
        "A tab is used to indent.",
        "Indent with spaces.",
    ),
    (
        "cannot start any token",
        "A value starts with a character that YAML keeps for itself.",
        f"{_QUOTE_IT} Indent with spaces, not tabs.",
    ),
    (
        "scanning an alias|scanning an anchor",
        "A value starts with * or &, which YAML keeps for itself.",
        _QUOTE_IT,
    ),
    ("tag", "Tags (!) are not used here.", "Leave the tag out, or put the text in quotes."),
    (
        "(?:quoted scalar|double-quoted).*unexpected end of stream",
        "A quote is opened here but not closed.",
        "Close it.",
    ),
    (
        "quoted scalar.*(?:escape|expected)|double-quoted.*(?:escape|expected)",
        "A backslash in double quotes is not understood.",
        "Use single quotes, or write \\\\ for a backslash.",
    ),
    (r"expected ',' or|exceeded maximum nesting|parsing a flow|in flow", *_BRACKET),
    (
        "block scalar",
        "Text on the same line after | or > is not understood.",
        "Start the text on the next line, or put it in quotes.",
    ),
    (
        "block sequence entries|sequence entries are not allowed|expected '-' indicator",
        "A list entry and a key are mixed, or the indent is off.",
        'Start every entry of a list with "- " at the same indent.',
    ),
    ("could not find expected ':'", "A key here has no colon.", 'Write "key: value".'),
    ("document start|YAML document|directive", "Text stands outside the document.", "Remove it."),
    ("expected key|block end", *_INDENT),
    (
        "node content",
        "A value starts with a character that YAML keeps for itself.",
        _QUOTE_IT,
    ),
)


def syntax_problem(error: Exception, text: str, file: str) -> Problem:
    """The Problem for broken YAML, with the line the user should look at."""
    said = str(error)
    line = 1
    if isinstance(error, yaml.MarkedYAMLError):
        said = f"{error.context or ''} {error.problem or ''}"
        is_open = "unexpected end of stream" in said or "simple key" in said
        mark = (error.context_mark if is_open else None) or error.problem_mark
        line = mark.line + 1 if mark else 1
    lines = text.splitlines() or [""]
    line = min(line, len(lines))
    if lines[line - 1].lstrip(" ").startswith("\t"):
        return Problem(file, line, "", "A tab is used to indent.", "Indent with spaces.")
    for pattern, message, remedy in _PLAIN:
        if re.search(pattern, said):
            return Problem(file, line, "", message, remedy)
    return Problem(file, line, "", f"This is not valid YAML: {' '.join(said.split())}.", _QUOTE_IT)
