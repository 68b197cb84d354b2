"""Text wrapped to a width, and cut to a number of lines with a sign that there is more."""

from __future__ import annotations

from collections.abc import Iterable

from textual.content import Content

from leanto.tui.shown import visible

MORE = "…"


def paragraph(
    text: str | Content,
    width: int,
    *,
    label: str | Content = "",
    indent: int = 0,
    style: str = "",
    at_most: int | None = None,
) -> list[Content]:
    """The lines of a text, with a label that hangs at the left of the first one.

    Text is taken literally, never as markup. ``indent`` is the width of the label's column.
    """
    body = text if isinstance(text, Content) else Content.styled(visible(text), style)
    head = label if isinstance(label, Content) else Content(label)
    indent = max(indent, head.cell_length)
    first, *rest = body.wrap(max(width - indent, 8)) or [Content("")]
    return cut(
        [
            Content.assemble(head, " " * (indent - head.cell_length), first.rstrip()),
            *(Content.assemble(" " * indent, line.rstrip()) for line in rest),
        ],
        at_most,
        width,
    )


def cut(lines: list[Content], at_most: int | None, width: int) -> list[Content]:
    """The first lines of a paragraph; the last of them ends with a sign that there is more."""
    if at_most is None or len(lines) <= at_most:
        return lines
    if at_most == 0:
        return []
    last = lines[at_most - 1]
    kept = last.truncate(width - 1) if last.cell_length >= width else last
    return [*lines[: at_most - 1], Content.assemble(kept.rstrip(), MORE)]


def one_line(left: Content, right: Content, width: int) -> Content:
    """Both on one line, the right one at the end; the left one is cut when there is no room."""
    room = max(width - right.cell_length - 1, 0)
    kept = left.truncate(room, ellipsis=True)
    gap = max(width - kept.cell_length - right.cell_length, 0)
    return Content.assemble(kept, " " * gap, right)


def packed(pieces: Iterable[Content], width: int) -> list[Content]:
    """Pieces side by side, as many on a line as fit; none is broken that fits on a line."""
    lines: list[Content] = []
    for piece in pieces:
        if lines and lines[-1].cell_length + piece.rstrip().cell_length <= width:
            lines[-1] = Content.assemble(lines[-1], piece)
        else:
            lines.append(piece)
    return lines
