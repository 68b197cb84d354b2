"""The answer for a lined surface, as the owner reads it."""

from __future__ import annotations

from leanto.decision.model import Course, Decision, HoleValue, Reason, SurfaceDecision
from leanto.money import format_usd, round_to


def headline(one: SurfaceDecision) -> str:
    """The answer in a few words, such as ``Keep`` or ``Test first, then gut``.

    What nobody saw is unknown, never sound; a condition known from elsewhere still decides.
    """
    if one.overruled:
        return f"{one.chosen.capitalize()} (your choice)"
    if one.test_first and one.chosen is Course.GUT:
        return "Test first, then gut"
    if one.unknown and not one.decisive:
        return f"Unknown, {one.unknown}"
    if one.is_close:
        return f"Close: {one.chosen} by a little"
    return one.chosen.capitalize()


def in_words(one: SurfaceDecision, *, conditions: bool = True) -> str:
    """The answer with its costs, its reasons and what would change it.

    ``conditions`` is False where what goes before the cost stands beside it with its sources.
    """
    keep, gut = _about(one.keep.expected), _about(one.gut.expected)
    said = [f"{headline(one)}: about {keep} to keep against {gut} to gut."]
    if one.unknown:
        looked = "looked at" if one.unknown == "not walked" else "could see anything of"
        said.append(
            f"Nobody {looked} this surface, so these figures stand on assumptions; by them "
            f"{one.chosen} it for now."
        )
    if one.overruled:
        said.append(_overruled(one))
    if one.decisive and conditions:
        said.append(f"Decides whatever the cost: {_listed(one.decisive)}.")
    if one.test_first and conditions:
        said.append(f"Test before anything is disturbed: {_listed(one.test_first)}.")
    said.append(_break_even(one))
    said.append(_unseen(one))
    said.append(_hole(one))
    if one.alone is not one.computed:
        said.append(
            f"On its own it would be cheaper to {one.alone} it; set-up and minimum charges shared "
            "with the other surfaces turn the answer."
        )
    if one.chosen is not one.computed and not one.overruled:
        said.append(
            f"The figures alone say {one.computed}; with your own choice elsewhere set-up and "
            f"minimum charges are shared otherwise, and it is cheaper to {one.chosen} it."
        )
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
    unseen = sum(bool(one.unknown) for one in decision.surfaces)
    gutted = sum(one.chosen is Course.GUT for one in decision.surfaces)
    if gutted == count:
        answer = "Gut the interior"
    elif gutted == 0:
        answer = "Keep the interior and patch it"
    else:
        answer = f"Gut {gutted} of {count} lined surfaces and keep the rest"
    if unseen == count:
        answer = "Unknown: nobody has looked at a lined surface yet. By assumption, " + (
            answer[:1].lower() + answer[1:]
        )
    return (
        f"{answer}: about {_about(decision.chosen)} for this choice, "
        f"{_about(decision.keep_all)} to keep everything, {_about(decision.gut_all)} to gut "
        f"everything; likely damage that nobody has seen is in it.{_unknowns(unseen, count)}"
    )


def _unknowns(unseen: int, count: int) -> str:
    if unseen in (0, count):
        return ""
    return f" Unknown, as nobody could look: {unseen} of them."


def differs(decision: Decision) -> tuple[SurfaceDecision, ...]:
    """The surfaces whose answer is another one alone than together with all the others."""
    return tuple(one for one in decision.surfaces if one.alone is not one.computed)


def what_turns(hole: HoleValue) -> str:
    """Which answer of a hole would change the choice, such as ``damage: gut it instead``."""
    if hole.if_bad is not hole.now:
        return f"damage: then {hole.if_bad} it"
    if hole.if_clean is not hole.now:
        return f"sound wood: then {hole.if_clean} it"
    return "neither answer"


def place_in_words(hole: HoleValue) -> str:
    """Where to make it."""
    if hole.place:
        return "where the signs are"
    return "away from the signs, to see how far it goes" if hole.away else "low in a corner"


def chance_in_words(p: float) -> str:
    """A chance as people say it: ``one chance in five``."""
    if p < 0.015:
        return "hardly a chance"
    if p < 0.4:
        number = round(1 / p)
        return f"one chance in {_NUMBERS[number] if number < len(_NUMBERS) else number}"
    if p < 0.6:
        return "an even chance"
    if p < 0.96:
        return f"{_NUMBERS[min(9, round(10 * p))]} chances in ten"
    return "as good as certain"


def share_in_words(share: float) -> str:
    """The plainest fraction near a share: ``a third``; ``hardly any`` and ``nearly all``."""
    return min(_FRACTIONS, key=lambda one: abs(one[0] - share))[1]


def _overruled(one: SurfaceDecision) -> str:
    """Both answers with their costs, and why the owner's stands."""
    chosen, computed = (
        f"{course}, about {_about(one.cost_of(course).expected)}"
        for course in (one.chosen, one.computed)
    )
    reason = one.overruled.rstrip(".")
    if one.chosen is one.computed:
        return f"You chose to {one.chosen} it, as the figures do. Your reason: {reason}."
    return f"The figures say {computed}; you chose {chosen}. Your reason: {reason}."


def _listed(reasons: tuple[Reason, ...]) -> str:
    return "; ".join(reason.text.rstrip(".") for reason in reasons)


def _about(amount: float) -> str:
    return format_usd(round_to(amount, 10))


def _break_even(one: SurfaceDecision) -> str:
    if one.break_even_share is None:
        cheaper = "Gutting" if one.gut.expected < one.keep.expected else "Keeping"
        return f"{cheaper} costs less whatever is found behind the lining."
    percent = round(100 * one.break_even_share)
    return (
        f"Gutting pays as soon as {share_in_words(one.break_even_share)} of what cannot be seen "
        f"is bad (more than {percent} %)."
    )


def _unseen(one: SurfaceDecision) -> str:
    """What is thought of the part that cannot be seen, and why."""
    if one.keep.all_bad_usd <= 0:
        return "All of it was seen to be bad."
    because = "; ".join(piece.text for piece in one.evidence) or "nothing points to damage"
    share = f"that is {100 * one.unseen.mean:.0f} % of it on average"
    if one.unseen.p >= 1:
        return f"Damage was seen behind it ({because}); {share}."
    return (
        f"Damage that nobody has seen: {chance_in_words(one.unseen.p)} ({because}); before "
        f"anything was seen it was {chance_in_words(one.prior)}; {share}."
    )


def _hole(one: SurfaceDecision) -> str:
    """Whether to open a test hole first."""
    hole = one.hole
    if hole is None:
        return ""
    worth, cost = _about(hole.worth_usd), _about(hole.cost_usd)
    if not hole.turns:
        return f"A test hole would not pay: neither answer would change the choice to {hole.now}."
    if not hole.pays:
        return f"A test hole would not pay: about {cost}, worth about {worth}."
    where = place_in_words(hole)
    first = " After the lead and asbestos tests." if one.test_first else ""
    return (
        f"Open one test hole first, {where}: about {cost}, worth about {worth}; if it shows "
        f"damage, {hole.if_bad}; if not, {hole.if_clean}.{first}"
    )


_NUMBERS = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
)  # fmt: skip
_FRACTIONS = (
    (0.0, "hardly any"),
    (0.05, "a twentieth"),
    (0.1, "a tenth"),
    (0.125, "an eighth"),
    (1 / 6, "a sixth"),
    (0.2, "a fifth"),
    (0.25, "a quarter"),
    (1 / 3, "a third"),
    (0.4, "two fifths"),
    (0.5, "half"),
    (0.6, "three fifths"),
    (2 / 3, "two thirds"),
    (0.75, "three quarters"),
    (0.9, "nine tenths"),
    (1.0, "nearly all"),
)
