"""Rules for a building fed from another: supplies, shut-off, ground rod, neutral.

Facts come from the floor, from papers or from an electrician. None stands for "not known", and
the answer is then to ask; nobody opens a panel to find out.
"""

from __future__ import annotations

from leanto.trade.wiring.confirm import Check, Verdict, code
from leanto.trade.wiring.feed_need import Supply
from leanto.trade.wiring.feeder import Feeder

SUPPLY_SOURCE = code("225.30, one supply")
SHUT_OFF_SOURCE = code("225.31 and 225.32, disconnecting means")
SHUT_OFF_COUNT_SOURCE = code("225.33, not more than six disconnects", edition="2014")
SHUT_OFF_RATING_SOURCE = code("225.39, rating of the disconnect")
ELECTRODE_SOURCE = code("250.32(A), electrode at a separate building")
NEUTRAL_SOURCE = code("250.32(B), neutral and ground wire at a separate building", edition="2008")
MOST_SHUT_OFFS = 6
BRANCH_A = 20
"""One circuit of 120 V up to here is run without a panel. Common practice."""


def is_one_circuit(feeder: Feeder) -> bool:
    """True for one circuit of 120 V, which takes a shut-off and neither panel nor ground rod.

    Source: 250.32(A), exception.
    """
    return feeder.need.supply is Supply.V120 and feeder.rating_a <= BRANCH_A


def check_supplies(count: int | None) -> Check:
    """One feeder or branch circuit supplies a building; a multiwire circuit counts as one."""
    if count is None:
        return Check(Verdict.ASK, "The number of supplies is not known.", SUPPLY_SOURCE)
    if count > 1:
        words = f"{count} supplies arrive; one is the rule, with exceptions. Treat all as live."
        return Check(Verdict.DOES_NOT_PASS, words, SUPPLY_SOURCE)
    return Check(Verdict.PASSES, f"{count} supply.", SUPPLY_SOURCE)


def check_shut_off(count: int | None) -> Check:
    """A separate building has its own shut-off, at most six of them together."""
    if count is None:
        return Check(Verdict.ASK, "Whether there is a shut-off is not known.", SHUT_OFF_SOURCE)
    if count == 0:
        return Check(Verdict.DOES_NOT_PASS, "The building has no shut-off.", SHUT_OFF_SOURCE)
    if count > MOST_SHUT_OFFS:
        words = f"{count} shut-offs; at most {MOST_SHUT_OFFS}, in one place."
        return Check(Verdict.DOES_NOT_PASS, words, SHUT_OFF_COUNT_SOURCE)
    return Check(Verdict.PASSES, f"{count} within the limit.", SHUT_OFF_SOURCE)


def least_shut_off_a(two_wire_circuits: int, *, is_dwelling: bool = False) -> int:
    """Least rating of the building's disconnect, amps, by its number of two-wire circuits.

    It rates the disconnect; it is read as not asking for a feeder of that size. Source: 225.39.
    """
    if two_wire_circuits < 1:
        raise ValueError(f"a powered building has a circuit: {two_wire_circuits}")
    if is_dwelling:
        return 100
    return {1: 15, 2: 30}.get(two_wire_circuits, 60)


def check_electrode(
    has_rod: bool | None, *, is_single_branch: bool | None, has_ground_wire: bool | None
) -> Check:
    """A separate building has a ground electrode, save on one branch circuit with a ground wire."""
    if is_single_branch and has_ground_wire:
        words = "One branch circuit with a grounding conductor: no rod is asked for."
        return Check(Verdict.PASSES, words, ELECTRODE_SOURCE)
    if has_rod is None:
        return Check(Verdict.ASK, "No rod can be seen; it may be buried.", ELECTRODE_SOURCE)
    if has_rod:
        return Check(Verdict.PASSES, "A rod is there.", ELECTRODE_SOURCE)
    if is_single_branch is None or (is_single_branch and has_ground_wire is None):
        return Check(Verdict.ASK, "No rod, and the kind of feed is not known.", ELECTRODE_SOURCE)
    return Check(Verdict.DOES_NOT_PASS, "No ground rod at the building.", ELECTRODE_SOURCE)


def check_neutral(
    wires: int | None,
    *,
    is_bonded: bool | None,
    has_metal_path: bool | None,
    is_existing: bool = True,
) -> Check:
    """How the neutral of a 120/240 V feed stands at the far building.

    ``wires`` counts the grounding conductor; ``is_bonded``: neutral joined to the enclosure
    there; ``has_metal_path``: water line, metal conduit or the like joins the buildings.
    """
    if wires is None:
        return Check(Verdict.ASK, "The number of wires is not known.", NEUTRAL_SOURCE)
    if wires not in (3, 4):
        raise ValueError(f"a 120/240 V feed has three or four wires: {wires}")
    if wires == 3 and not is_existing:
        words = "A new feed carries a grounding conductor of its own: four wires."
        return Check(Verdict.DOES_NOT_PASS, words, NEUTRAL_SOURCE)
    if is_bonded is None:
        words = "Whether the neutral is bonded cannot be seen with the panel closed."
        return Check(Verdict.ASK, words, NEUTRAL_SOURCE)
    if wires == 4:
        if is_bonded:
            words = "Four wires with the neutral bonded: current returns on the ground wire."
            return Check(Verdict.DOES_NOT_PASS, words, NEUTRAL_SOURCE)
        return Check(Verdict.PASSES, "Four wires, neutral kept apart.", NEUTRAL_SOURCE)
    if not is_bonded:
        words = "Three wires and no bond: a fault has no path back."
        return Check(Verdict.DOES_NOT_PASS, words, NEUTRAL_SOURCE)
    if has_metal_path:
        words = "Three wires, neutral bonded, and metal between the buildings carries current too."
        return Check(Verdict.DOES_NOT_PASS, words, NEUTRAL_SOURCE)
    words = "An old three-wire feed may stay under narrow conditions. Ask the code office as well."
    return Check(Verdict.ASK, words, NEUTRAL_SOURCE)
