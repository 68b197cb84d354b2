"""Text split into runs that one font each can draw."""

from __future__ import annotations

import pytest

from leanto.reports.fonts import Face, Typesetter, width_pt


@pytest.mark.parametrize("face", list(Face))
@pytest.mark.parametrize(
    "text",
    [
        "Zoë Ångström, Łódź, İstanbul",
        "Nguyễn Thị Ánh",
        "Δημήτρης Παπαδόπουλος",
        "Ольга Иванова, Їжак",
        "שלום",
        "→ ≤ ≥ ✓ □ ½ × ′ ″ “quoted” – — · …",
    ],
)
def test_names_of_these_scripts_are_drawn(text: str, face: Face) -> None:
    setter = Typesetter()

    runs = setter.line(text, face)

    assert setter.not_drawn == ""
    assert sorted("".join(run.text for run in runs)) == sorted(text)


def test_a_character_without_a_glyph_is_printed_as_its_code_and_named_once() -> None:
    setter = Typesetter()

    runs = setter.line("台 and 田 and 台 \U0001f3da")

    assert "".join(run.text for run in runs) == "[U+53F0] and [U+7530] and [U+53F0] [U+1F3DA]"
    assert setter.not_drawn == "台田\U0001f3da"


def test_a_run_changes_font_only_where_it_must() -> None:
    runs = Typesetter().line("a → b ✓")

    assert [(run.font, run.text) for run in runs] == [
        ("NotoSans_Regular", "a "),
        ("FiraGO_Regular", "→"),
        ("NotoSans_Regular", " b "),
        ("CascadiaMono_Regular", "✓"),
    ]


def test_line_feeds_make_lines_and_one_line_joins_them() -> None:
    setter = Typesetter()

    assert len(setter.lines("one\ntwo\n\nfour")) == 4
    assert "".join(run.text for run in setter.line("one\ntwo")) == "one two"


def test_bold_is_wider_and_size_scales_the_width() -> None:
    setter = Typesetter()
    regular, bold = setter.line("Sill"), setter.line("Sill", Face.BOLD)

    assert width_pt(bold, 10) > width_pt(regular, 10) > 0
    assert width_pt(regular, 20) == pytest.approx(2 * width_pt(regular, 10))
