"""Whether the budget holds, what may wait, what the owner may do, and the other courses."""

from __future__ import annotations

from leanto.decision.fit import Fit, Step, StepKind, TakenStep
from leanto.decision.model import Course
from leanto.money import format_usd
from leanto.reports.blocks import Block, Bullets, Column, Heading, Paragraph, Row, Table
from leanto.reports.contents.numbering import Numbering
from leanto.reports.contents.words import about, capitalized, date_in_words, joined
from leanto.scope.item import RepairItem

MOST_ALTERNATES = 5
STEP_COLUMNS = (
    Column("Step", 0.5),
    Column("Saves", 0.12, "right"),
    Column("Regret a dollar", 0.12, "right"),
    Column("Half under", 0.13, "right"),
    Column("Four in five under", 0.13, "right"),
)
REGRET = (
    "Regret is what a step is expected to cost later, or in your own time, for each dollar it "
    "saves now: work that waits grows, hours of your own are worth something, a kept wall loses "
    "heat. What waits must still be paid for one day."
)
NEVER = (
    "Dangers, what is urgent now, set-up, licensed trades and work near wiring never wait here. "
    "Licensed trades and work with a caution that names who must act are never offered to you."
)


def fit_blocks(fit: Fit, numbers: Numbering) -> tuple[Block, ...]:
    """The answer, the steps into the budget, then everything else that could be done."""
    blocks: list[Block] = [Paragraph(fit_in_words(fit))]
    if fit.taken:
        blocks.append(Table(STEP_COLUMNS, step_rows(fit, numbers), (_foot(fit),)))
        blocks.append(Paragraph(REGRET, "note"))
    waits, alone = fit.offered(StepKind.WAIT), fit.offered(StepKind.ALONE)
    if waits:
        blocks += [
            Heading(3, "What may wait"),
            Bullets(tuple(_wait(one, numbers) for one in waits)),
        ]
    if alone:
        lines = tuple(_alone(one, numbers) for one in alone)
        blocks += [Heading(3, "What you may do alone"), Bullets(lines)]
    if waits or alone:
        blocks.append(Paragraph(NEVER, "note"))
    if fit.alternates:
        blocks += [
            Heading(3, "Alternates that save most"),
            Paragraph(
                "Mark them as alternates in the scope: bidders then price them apart, and you "
                "decide with the bids on the table."
            ),
            Bullets(alternate_lines(fit, numbers)),
        ]
    if fit.turns:
        blocks += [Heading(3, "Where the other course is close"), Bullets(turn_lines(fit))]
    return tuple(blocks)


def fit_in_words(fit: Fit) -> str:
    """Whether the budget holds, and whether the steps would make it hold."""
    if fit.budget_usd is None:
        return "No budget was given. Enter one to see which steps would bring the job inside it."
    budget = format_usd(fit.budget_usd)
    if fit.holds:
        return f"Four in five of such jobs stay inside {budget}: nothing has to be put off."
    if not fit.taken:
        return f"It does not stay inside {budget}, and nothing in the scope may be put off."
    chance = "" if fit.chance_after is None else f"{fit.chance_after:.0%}"
    if fit.can_hold:
        return (
            f"As it stands it does not stay inside {budget}. With the steps below, in the order of "
            f"least regret, it does: then {chance} of the draws stay inside."
        )
    return (
        f"It does not stay inside {budget}, even with every step below: then {chance} of the draws "
        "stay inside. What is left is a smaller use, a larger budget, or another building."
    )


def step_rows(fit: Fit, numbers: Numbering) -> tuple[Row, ...]:
    return tuple(_row(taken, numbers) for taken in fit.taken)


def step_in_words(step: Step, numbers: Numbering) -> str:
    """``Wait with: strip roof covering, new shingle roof (lines 3, 9)``."""
    if step.turn is not None:
        verb = "Gut" if step.turn.course is Course.GUT else "Keep"
        return f"{verb} it instead: {step.turn.surface_name}"
    return f"{capitalized(step.kind)}: {_lines(step.items, numbers)}"


def alternate_lines(fit: Fit, numbers: Numbering) -> tuple[str, ...]:
    """The few that save most, to be priced apart in the bids."""
    return tuple(
        f"{_alternate(one, numbers)}: saves about {about(one.saves_usd)}."
        for one in fit.alternates[:MOST_ALTERNATES]
    )


def _alternate(step: Step, numbers: Numbering) -> str:
    if step.turn is not None:
        return f"{capitalized(step.turn.course)} {step.turn.surface_name} instead"
    return f"Leave out: {_lines(step.items, numbers)}"


def turn_lines(fit: Fit) -> tuple[str, ...]:
    """What the other course of each close surface would change."""
    said = []
    for turn in fit.turns:
        verb = "Gut" if turn.course is Course.GUT else "Keep"
        later = _change(turn.later_usd)
        heat = f", heat {_change(turn.heat_usd)}" if abs(turn.heat_usd) >= 5 else ""
        said.append(
            f"{verb} instead, {turn.surface_name}: {_change(turn.now_usd)} in the scope, {later} "
            f"for damage that may come up{heat}. {turn.because}"
        )
    return tuple(said)


def _row(taken: TakenStep, numbers: Numbering) -> Row:
    step = taken.step
    return (
        f"{step_in_words(step, numbers)}\n{step.because}",
        about(taken.saves_usd),
        format_usd(step.regret_share, cents=True),
        about(taken.p50),
        about(taken.p80),
    )


def _foot(fit: Fit) -> Row:
    saved = sum(taken.saves_usd for taken in fit.taken)
    last = fit.taken[-1]
    return ("After all steps", about(saved), "", about(last.p50), about(last.p80))


def _wait(step: Step, numbers: Numbering) -> str:
    when = f" Look again by {date_in_words(step.look_again)}." if step.look_again else ""
    return (
        f"{capitalized(_lines(step.items, numbers))}: about {about(step.saves_usd)}. "
        f"{step.because}{when} {step.watch}".rstrip()
    )


def _alone(step: Step, numbers: Numbering) -> str:
    return (
        f"{capitalized(_lines(step.items, numbers))}: saves about {about(step.saves_usd)}. "
        f"{step.because}"
    )


def _lines(items: tuple[RepairItem, ...], numbers: Numbering) -> str:
    titles = list(
        dict.fromkeys(item.work.title[:1].lower() + item.work.title[1:] for item in items)
    )
    places = list(dict.fromkeys(item.place for item in items))
    where = f", {places[0]}" if len(places) == 1 else ""
    word = "line" if len(items) == 1 else "lines"
    return f"{joined(list(dict.fromkeys(titles)))}{where} ({word} {numbers.of_items(items)})"


def _change(usd: float) -> str:
    return f"{about(usd)} more" if usd >= 0 else f"{about(-usd)} less"
