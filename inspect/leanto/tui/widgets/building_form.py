"""One page of the building form: the fields of the building, of a block or of an opening."""

from __future__ import annotations

from collections.abc import Mapping

from textual.app import ComposeResult
from textual.containers import VerticalScroll

from leanto.tui.widgets.building_draft import Draft, is_asked
from leanto.tui.widgets.building_pages import Shown
from leanto.tui.widgets.building_reading import choices_of
from leanto.tui.widgets.building_row import FieldRow


class BuildingForm(VerticalScroll, can_focus=False, inherit_bindings=False):
    """Fields below each other; what stands in them goes into ``texts``."""

    DEFAULT_CSS = """
    BuildingForm { height: 1fr; scrollbar-size-vertical: 1; }
    """

    def __init__(self, draft: Draft, shown: Shown) -> None:
        super().__init__()
        self.draft, self.fields, self.texts = draft, shown.fields, shown.texts
        self._all_rows = [
            FieldRow(
                shown.prefix + one.path,
                one,
                self.texts[one.path],
                choices_of(one, self.texts, draft),
            )
            for one in self.fields
        ]

    def compose(self) -> ComposeResult:
        yield from self._all_rows

    def on_mount(self) -> None:
        self.show_asked()

    @property
    def rows(self) -> list[FieldRow]:
        """The rows that are asked now."""
        return [row for row in self._all_rows if row.display]

    def turn_to(self, shown: Shown) -> None:
        """Show another part with the same fields, such as the next opening.

        What stands in the fields is to be collected before.
        """
        self.texts = shown.texts
        for row in self._all_rows:
            row.path = shown.prefix + row.field.path
            row.hold(shown.texts[row.field.path])
        self.show_asked()

    def collect(self) -> None:
        """Put what stands in the fields at this moment into the draft."""
        for row in self._all_rows:
            self.texts[row.field.path] = row.text

    def show_asked(self) -> None:
        """Hide what does not matter now, and offer the words that can be chosen now."""
        for row in self._all_rows:
            row.display = is_asked(row.field, self.texts)
            row.offer(choices_of(row.field, self.texts, self.draft))

    def show_faults(self, faults: Mapping[str, str]) -> None:
        for row in self._all_rows:
            row.remark(faults.get(row.path, ""))

    def focus_field(self, path: str = "") -> None:
        """Go to a field, or to the first one."""
        rows = self.rows
        row = next((row for row in rows if row.path == path), rows[0])
        self.screen.set_focus(row.box)

    def step(self, by: int) -> bool:
        """Go to the field after or before; False from the last or the first one."""
        rows = self.rows
        at = next((i for i, row in enumerate(rows) if row.box.has_focus), -by)
        if not 0 <= at + by < len(rows):
            return False
        self.screen.set_focus(rows[at + by].box)
        return True

    def on_field_row_changed(self, event: FieldRow.Changed) -> None:
        self.collect()
        self.show_asked()
