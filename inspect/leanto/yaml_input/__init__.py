"""The one YAML reader: a file becomes a model, or every Problem with its line."""

from __future__ import annotations

from leanto.yaml_input.lines import Lines
from leanto.yaml_input.reader import (
    parse_model,
    parse_model_with_lines,
    read_model,
    read_model_with_lines,
    try_read_model,
)

__all__ = [
    "Lines",
    "parse_model",
    "parse_model_with_lines",
    "read_model",
    "read_model_with_lines",
    "try_read_model",
]
