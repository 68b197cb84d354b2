"""The package for bidders: invitation, instructions, conditions, the scope and the bid form."""

from __future__ import annotations

from collections.abc import Sequence

from leanto.assessment import Assessment
from leanto.bids.bidding import Bidding
from leanto.bids.model import BidForm
from leanto.reports.blocks import (
    Block,
    Bullets,
    Caution,
    Facts,
    Heading,
    NewPage,
    Paragraph,
    Report,
)
from leanto.reports.contents.cautions import caution_blocks
from leanto.reports.contents.facts import block_table, site_facts
from leanto.reports.contents.numbering import Numbering, numbering
from leanto.reports.contents.package_changes import changes_between
from leanto.reports.contents.package_form import form_blocks
from leanto.reports.contents.package_photos import PackagePhoto, photo_blocks
from leanto.reports.contents.package_scope import (
    allowance_blocks,
    alternate_blocks,
    hidden_blocks,
    left_out_blocks,
    line_blocks,
)
from leanto.reports.contents.sketches import item_figures
from leanto.reports.contents.words import date_in_words
from leanto.reports.in_units import in_shown_units, typed_for

FOOTER = "Quantities are from a walk-through. Bidders verify them on site."
NOT_NAMED = "not named yet; ask"
ASKED = {
    "place": "Place",
    "access": "Access",
    "site_visits": "Looking at it",
    "contact": "Contact",
    "questions_until": "Questions until",
    "bids_due": "Bids due",
    "work_window": "Time for the work",
}
"""Labels of the invitation's fields, in the order in which they are read."""


def bid_package(
    assessment: Assessment,
    form: BidForm,
    bidding: Bidding,
    photos: Sequence[PackagePhoto] = (),
    before: BidForm | None = None,
) -> Report:
    """Everything that a bidder must know, and the form, in one report.

    ``before`` is the form that went out last, where this is an addendum. Holds no price,
    allowance or budget of ours, no note and no reason that the owner typed for himself, and no
    name but those in ``bidding``.
    """
    building, numbers = assessment.building, numbering(assessment)
    day = form.made_on or assessment.as_of
    kind = "Repair scope for bidders"
    report = Report(
        kind=f"{kind}, addendum {form.addendum}" if form.addendum else kind,
        title=building.name,
        subtitle=building.place,
        as_of=day,
        blocks=(
            *_changes(form, before),
            Heading(1, "Invitation to bid"),
            _invitation(assessment, form, bidding),
            Heading(1, "How to bid"),
            Bullets(bidding.instructions),
            *_conditions(bidding),
            Heading(1, "The building"),
            block_table(building),
            site_facts(building),
            *_cautions(assessment),
            *_tests(assessment),
            Heading(1, "Lines of work"),
            *line_blocks(assessment, numbers),
            *alternate_blocks(form.alternates),
            *allowance_blocks(form.allowances),
            *hidden_blocks(form),
            *left_out_blocks(assessment, numbers, bidding.exclusions),
            *_addenda(form),
            *_sketches(assessment, numbers),
            *_pictures(photos, numbers),
            *form_blocks(form),
        ),
        invented=building.invented,
        footer=FOOTER,
        keywords=("repair scope", "bid form", building.name),
    )
    return in_shown_units(report, *typed_for(assessment), bidding)


def _invitation(assessment: Assessment, form: BidForm, bidding: Bidding) -> Facts:
    answers = bidding.invitation.model_dump()
    place = answers["place"].strip() or assessment.building.place
    told = {**answers, "place": place}
    building = assessment.building
    heated = "to be heated" if building.to_be_heated else "not to be heated"
    addenda = f"form {form.form_id}, addendum {form.addendum}" if form.addendum else form.form_id
    return Facts(
        (
            *((label, told[name].strip() or NOT_NAMED) for name, label in ASKED.items()),
            ("Built", f"{building.year_built}; to become: {building.intended_use}, {heated}"),
            ("Walked", date_in_words(assessment.as_of)),
            ("Form", addenda),
        )
    )


def _conditions(bidding: Bidding) -> tuple[Block, ...]:
    blocks: list[Block] = [
        Heading(1, "General conditions"),
        Caution("No contract, no legal advice", bidding.caution),
    ]
    for condition in bidding.conditions:
        if used := condition.used:
            blocks += [Heading(3, condition.title), Bullets(used)]
    return tuple(blocks)


def _changes(form: BidForm, before: BidForm | None) -> tuple[Block, ...]:
    if not form.addendum:
        return ()
    changes = changes_between(before, form) if before else ()
    said = changes or ("No line, quantity or alternate is another one than before.",)
    return (
        Heading(1, f"Addendum {form.addendum}: what changed"),
        Bullets(said),
        Paragraph(
            "This file and its form take the place of the earlier ones. Send this form back; one "
            "of the earlier forms is read with a warning, and what is missing is asked about."
        ),
    )


def _addenda(form: BidForm) -> tuple[Block, ...]:
    if form.addendum:
        said = f"This is addendum {form.addendum}. Its number is part of the form."
    else:
        said = "None so far. A later one comes numbered, to all bidders alike, with a new form."
    return (Heading(1, "Addenda"), Paragraph(said))


def _cautions(assessment: Assessment) -> tuple[Block, ...]:
    cautions = caution_blocks(assessment)
    return (Heading(1, "Cautions"), *cautions) if cautions else ()


def _tests(assessment: Assessment) -> tuple[Block, ...]:
    """What must be tested before a lining is disturbed."""
    waiting = tuple(
        f"{one.surface_name}: {'; '.join(test.text for test in one.test_first)}"
        for one in assessment.decision.surfaces
        if one.test_first
    )
    if not waiting:
        return ()
    return (Heading(2, "Test before anything is disturbed"), Bullets(waiting))


def _sketches(assessment: Assessment, numbers: Numbering) -> tuple[Block, ...]:
    figures = item_figures(assessment, numbers)
    return (NewPage(), Heading(1, "Sketches"), *figures) if figures else ()


def _pictures(photos: Sequence[PackagePhoto], numbers: Numbering) -> tuple[Block, ...]:
    pictures = photo_blocks(photos, numbers)
    return (Heading(1, "Pictures"), *pictures) if pictures else ()
