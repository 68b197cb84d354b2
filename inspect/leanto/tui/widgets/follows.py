"""What follows from the present answer: findings, repair items, gut or keep, the running range."""

from __future__ import annotations

from dataclasses import dataclass

from textual.content import Content
from textual.geometry import Size
from textual.reactive import reactive
from textual.widget import Widget

from leanto.rules.model import Urgency
from leanto.tui.marks import FAINT, urgency_style
from leanto.tui.paragraphs import paragraph
from leanto.tui.shown import on_one_line

_UNANSWERED_LINES = 2


@dataclass(frozen=True, slots=True)
class FollowingFinding:
    """A finding of the present observation with what it brings."""

    urgency: Urgency
    text: str
    because: str
    """The finding it follows from; empty when it stands for itself."""
    repairs: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Following:
    """Everything that follows from one answer, in words."""

    findings: tuple[FollowingFinding, ...] = ()
    questions: tuple[str, ...] = ()
    undecided: tuple[str, ...] = ()
    """What is missing before a rule can be judged."""
    checks: tuple[str, ...] = ()
    """Computations on this answer and this station, with their verdicts."""
    nothing: str = ""
    """What is said when nothing follows."""
    lining: str = ""
    """Gut or keep of this surface; empty when it has no lining."""
    feed: str = ""
    """The feed that costs least, at its station."""
    total: str = ""
    """The running range of the whole, and how it moved."""


class Follows(Widget):
    """Grows to a number of lines and no further; the totals are always there."""

    following: reactive[Following] = reactive(Following(), layout=True)
    at_most: reactive[int] = reactive(7, layout=True)

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return len(follow_lines(self.following, width, self.at_most))

    def render(self) -> Content:
        return Content("\n").join(follow_lines(self.following, self.size.width, self.at_most))


def follow_lines(following: Following, width: int, at_most: int) -> list[Content]:
    """The lines of what follows; findings give way to the totals when there is little room."""
    totals: list[Content] = []
    if following.lining:
        totals += paragraph(following.lining, width, label=_label("Lining"), indent=7, at_most=2)
    if following.feed:
        totals += paragraph(following.feed, width, label=_label("Feed"), indent=7, at_most=2)
    if following.total:
        totals += paragraph(following.total, width, label=_label("Total"), indent=7, at_most=2)
    is_answered = bool(following.findings or following.nothing)
    # Before the answer the room belongs to the question.
    room = max(at_most - len(totals), 1) if is_answered else min(at_most, _UNANSWERED_LINES)
    findings = _finding_lines(following, width)
    if len(findings) > room:
        left = len(findings) - room + 1
        more = "more line" if left == 1 else "more lines"
        findings = [*findings[: room - 1], Content.styled(f"{left} {more}: F3", FAINT)]
    return [*findings, *totals]


def _finding_lines(following: Following, width: int) -> list[Content]:
    lines: list[Content] = []
    for finding in following.findings:
        label = Content.styled(f"{finding.urgency}:", urgency_style(finding.urgency))
        because = f" (from: {on_one_line(finding.because)})" if finding.because else ""
        text = Content.assemble(label, " ", on_one_line(finding.text) + because)
        lines += paragraph(text, width, label="> ")
        for repair in finding.repairs:
            lines += paragraph(on_one_line(repair), width, label="  + ", at_most=1)
    for question in following.questions:
        lines += paragraph(on_one_line(question), width, label=_label("Ask"), indent=7)
    for missing in following.undecided:
        lines += paragraph(on_one_line(missing), width, label=_label("Unsure"), indent=7)
    if not lines and following.nothing:
        lines = paragraph(following.nothing, width, style=FAINT)
    for check in following.checks:
        lines += paragraph(on_one_line(check), width, label=_label("Check"), indent=7, at_most=1)
    return lines


def _label(text: str) -> Content:
    return Content.styled(text, FAINT)
