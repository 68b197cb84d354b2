"""A library whose sentences say their amounts in the units that a job shows.

Only words change: limits, quantities, prices and expressions are kept as the files have them, so
what follows from a walk is the same in both.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TypeVar

from leanto.checklist.model import Answers, Checklist, Item
from leanto.library.model import Library
from leanto.quantities import Display
from leanto.rules.compiled import CompiledRule
from leanto.scope.work import Work
from leanto.strict import Strict

_Words = TypeVar("_Words", bound=Strict)


def library_in(display: Display, library: Library) -> Library:
    """The library with its words as the display says them; itself in feet and inches."""
    if not display.is_metric:
        return library
    return replace(
        library,
        checklist=_checklist(library.checklist, display),
        rules=tuple(_rule(rule, display) for rule in library.rules),
        works={id_: _work(work, display) for id_, work in library.works.items()},
    )


def _checklist(checklist: Checklist, display: Display) -> Checklist:
    return checklist.model_copy(
        update={
            "sections": tuple(
                section.model_copy(
                    update={"items": tuple(_item(item, display) for item in section.items)}
                )
                for section in checklist.sections
            ),
            "measures": tuple(_said(one, display, "label", "help") for one in checklist.measures),
            "cautions": tuple(
                _said(one, display, "title", "text", "who") for one in checklist.cautions
            ),
        }
    )


def _item(item: Item, display: Display) -> Item:
    answers = {
        name: _said(getattr(item.answers, name), display, "means") for name in Answers.model_fields
    }
    said = _said(item, display, "prompt", "look", "how", "tool", "why")
    return said.model_copy(update={"answers": item.answers.model_copy(update=answers)})


def _rule(compiled: CompiledRule, display: Display) -> CompiledRule:
    rule = _said(compiled.rule, display, "finding", "advice", "question", "ask", "watch")
    if rule.decides is not None:
        decides = _said(rule.decides, display, "reason")
        rule = rule.model_copy(update={"decides": decides})
    return replace(compiled, rule=rule)


def _work(work: Work, display: Display) -> Work:
    said = _said(work, display, "title", "description")
    if said.purchase is None:
        return said
    purchase = _said(said.purchase, display, "name")
    return said.model_copy(update={"purchase": purchase})


def _said(model: _Words, display: Display, *names: str) -> _Words:
    """The model with those of its texts as the display says them."""
    texts = {name: getattr(model, name) for name in names}
    return model.model_copy(update={name: display.words(text) for name, text in texts.items()})
