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
        said.append(f"The figures say {one.computed}; your reason: {one.overruled}.")
    if one.decisive:
        said.append("Decides whatever the cost: " + "; ".join(one.decisive) + ".")
    if one.test_first:
        said.append("Test before anything is disturbed: " + "; ".join(one.test_first) + ".")
    said.append(_break_even(one))
    said.append(_unseen(one))
    if one.unknown:
        said.append("Nobody looked at this surface, so the answer stands on an assumption.")
    if one.is_close:
        said.append(
            "The two are within a tenth of each other. Gutting shows everything and lets the wall "
            "be insulated well; keeping saves dust, hauling and the old finish."
        )
    return " ".join(said)


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
        "everything. Expected costs, with the damage that is likely but not seen yet."
    )


def _about(amount: float) -> str:
    return format_usd(round_to(amount, 10))


def _break_even(one: SurfaceDecision) -> str:
    if one.break_even_share is None:
        cheaper = "Gutting" if one.gut.expected < one.keep.expected else "Keeping"
        return f"{cheaper} costs less whatever is found behind the lining."
    share = round(100 * one.break_even_share)
    return f"Gutting pays as soon as more than {share} % of what cannot be seen is bad."


def _unseen(one: SurfaceDecision) -> str:
    share = one.hidden_share
    because = "; ".join(piece.text for piece in one.evidence)
    return (
        f"We assume {_percent(share.likely)} (from {_percent(share.low)} to "
        f"{_percent(share.high)}) of it is, because: {because}."
    )


def _percent(share: object) -> str:
    return f"{float(str(share)):.0%}".replace("%", " %")
