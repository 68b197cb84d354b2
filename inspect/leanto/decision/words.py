"""The answer for a lined surface, as the owner reads it."""

from __future__ import annotations

from leanto.decision.model import Course, Decision, SurfaceDecision
from leanto.money import format_usd, round_to


def headline(one: SurfaceDecision) -> str:
    """The answer in a few words, such as ``Keep`` or ``Test first, then gut``."""
    if one.overruled:
        return f"{one.chosen.capitalize()} (your choice)"
    if one.test_first and one.chosen is Course.GUT:
        return "Test first, then gut"
    if one.unknown:
        return f"{one.chosen.capitalize()}, but {one.unknown}"
    if one.is_close:
        return f"Close: {one.chosen} by a little"
    return one.chosen.capitalize()


def in_words(one: SurfaceDecision) -> str:
    """The answer with its costs, its reasons and what would change it."""
    keep, gut = _about(one.keep.expected), _about(one.gut.expected)
    said = [f"{headline(one)}: about {keep} to keep against {gut} to gut."]
    if one.overruled:
        said.append(f"The figures say {one.computed}; your reason: {one.overruled.rstrip('.')}.")
    if one.decisive:
        said.append(f"Decides whatever the cost: {_listed(one.decisive)}.")
    if one.test_first:
        said.append(f"Test before anything is disturbed: {_listed(one.test_first)}.")
    said.append(_break_even(one))
    said.append(_unseen(one))
    said.append(_hole(one))
    if one.alone is not one.computed:
        said.append(
            f"On its own it would be cheaper to {one.alone} it; set-up and minimum charges shared "
            "with the other surfaces turn the answer."
        )
    if one.unknown:
        said.append("Nobody looked at this surface, so the answer stands on an assumption.")
    if one.is_close:
        said.append(
            "The two are within a tenth of each other. Gutting shows everything and lets the wall "
            "be insulated well; keeping saves dust, hauling and the old finish."
        )
    return " ".join(sentence for sentence in said if sentence)


def interior_in_words(decision: Decision) -> str:
    """The answer for the interior as a whole."""
    if not decision.surfaces:
        return "No surface is lined, so there is nothing to gut: the framing is open to view."
    count = len(decision.surfaces)
    gutted = sum(one.chosen is Course.GUT for one in decision.surfaces)
    if gutted == count:
        answer = "Gut the interior"
    elif gutted == 0:
        answer = "Keep the interior and patch it"
    else:
        answer = f"Gut {gutted} of {count} lined surfaces and keep the rest"
    return (
        f"{answer}: about {_about(decision.chosen)} for this choice, "
        f"{_about(decision.keep_all)} to keep everything, {_about(decision.gut_all)} to gut "
        "everything; likely damage that nobody has seen is in it."
    )


def _listed(reasons: tuple[str, ...]) -> str:
    return "; ".join(reason.rstrip(".") for reason in reasons)


def _about(amount: float) -> str:
    return format_usd(round_to(amount, 10))


def _break_even(one: SurfaceDecision) -> str:
    if one.break_even_share is None:
        cheaper = "Gutting" if one.gut.expected < one.keep.expected else "Keeping"
        return f"{cheaper} costs less whatever is found behind the lining."
    share = round(100 * one.break_even_share)
    return f"Gutting pays as soon as more than {share} % of what cannot be seen is bad."


def _unseen(one: SurfaceDecision) -> str:
    """What is thought of the part that cannot be seen, and why."""
    if one.keep.all_bad_usd <= 0:
        return "All of it was seen to be bad."
    because = "; ".join(piece.text for piece in one.evidence) or "nothing points to damage"
    if one.unseen.p >= 1:
        return f"Damage was seen behind it ({because})."
    return (
        f"Damage that nobody has seen: {_chance(one.unseen.p)} ({because}); before anything was "
        f"seen it was {_chance(one.prior)}."
    )


def _hole(one: SurfaceDecision) -> str:
    """Whether to open a test hole first."""
    hole = one.hole
    if hole is None:
        return ""
    if not hole.pays:
        return "A test hole would not pay: its answer would hardly change the choice."
    where = "where the signs are" if hole.place else "low in a corner"
    settles = (
        f"if it shows damage, {hole.if_bad}; if not, {hole.if_clean}"
        if hole.if_bad is not hole.if_clean
        else "it would show how much to expect"
    )
    first = " After the lead and asbestos tests." if one.test_first else ""
    return (
        f"Open one test hole first, {where}: about {_about(hole.cost_usd)}, worth about "
        f"{_about(hole.worth_usd)}; {settles}.{first}"
    )


def _chance(p: float) -> str:
    """A chance as people say it: ``one chance in five``."""
    if p < 0.015:
        return "hardly a chance"
    if p < 0.4:
        return f"one chance in {round(1 / p)}"
    if p < 0.6:
        return "an even chance"
    return f"{_TENTHS[min(9, round(10 * p))]} chances in ten"


_TENTHS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
