"""Adds a line to the scope by hand: the work, the place, the quantity, asked one after another."""

from __future__ import annotations

from typing import Protocol

from textual.app import App

from leanto.assessment import Assessment
from leanto.building.surface import Surface
from leanto.quantities import shown
from leanto.record.entry import ScopeAdded
from leanto.scope.work import Work
from leanto.tui.screens.ask_quantity import AskQuantity
from leanto.tui.screens.pick import Pick
from leanto.tui.typed_quantity import typed_quantity

WHOLE = "Whole building"


class Adds(Protocol):
    """The screen that the line is added to."""

    @property
    def app(self) -> App[object]: ...

    def add(self, line: ScopeAdded) -> None: ...

    def after(self, recorded: bool | None) -> None: ...


class AddsLine:
    """Escape at any question adds nothing."""

    def __init__(self, screen: Adds) -> None:
        self._screen = screen

    def start(self, assessment: Assessment) -> None:
        """Ask for the work; every one of the catalog can be added."""
        works = sorted(assessment.library.works.values(), key=lambda work: work.title.casefold())
        surfaces = tuple(assessment.surfaces.values())

        def picked(at: str | int | None) -> None:
            if isinstance(at, int):
                self._ask_place(works[at], surfaces)

        names = [
            f"{work.title} ({work.trade}, by the {shown().label(work.unit)})" for work in works
        ]
        self._screen.app.push_screen(Pick("Add which work?", names), picked)

    def _ask_place(self, work: Work, surfaces: tuple[Surface, ...]) -> None:
        def picked(at: str | int | None) -> None:
            if isinstance(at, str):
                self._ask_quantity(work, None, at)
            elif at is not None:
                surface = surfaces[at - 1] if at else None
                self._ask_quantity(work, surface, "")

        names = [WHOLE, *(surface.name for surface in surfaces)]
        question = f"{work.title}: where?"
        self._screen.app.push_screen(Pick(question, names, own_words=True), picked)

    def _ask_quantity(self, work: Work, surface: Surface | None, place: str) -> None:
        where = place or (surface.name if surface else WHOLE)

        def take(quantity: str, note: str) -> None:
            self._screen.add(
                ScopeAdded(
                    work=work.id,
                    surface_id=surface.id if surface else None,
                    place=place,
                    quantity=typed_quantity(quantity, work.unit),
                    note=note,
                )
            )

        question = f"{work.title}, {where}: how much, in {shown().plural(work.unit)}?"
        asked = AskQuantity(question, "Note to bidders, or nothing", take)
        self._screen.app.push_screen(asked, self._screen.after)
