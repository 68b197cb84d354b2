"""A surface drawn to scale as SVG, with its openings, framing and numbered zones."""

from __future__ import annotations

from xml.etree.ElementTree import Element, SubElement

from leanto.building.rectangle import Rectangle
from leanto.building.sketch import Sketch
from leanto.quantities import format_ft_in
from leanto.reports.characters import printable
from leanto.reports.strokes import STROKES

_PX_PER_FT = 32.0
_WIDEST_PX = 900.0
_MARGIN_PX = 6.0
_TILE = {"/": "M0 8L8 0", "\\": "M0 0L8 8", "-": "M0 4L8 4"}
"""Each stroke in a tile of 8 by 8 pixels."""
_INK, _GRAY, _LIGHT, _PALE, _ACCENT = "#1c1c1c", "#5c5c5c", "#b9b9b9", "#efefec", "#24555c"


def sketch_svg(sketch: Sketch) -> Element:
    """The drawing; its label says what it shows, and the caption beside it lists the zones."""
    return _Drawing(sketch).drawn()


class _Drawing:
    def __init__(self, sketch: Sketch) -> None:
        self._sketch = sketch
        self._scale = min(_PX_PER_FT, _WIDEST_PX / sketch.width_ft)
        self._width = sketch.width_ft * self._scale + 2 * _MARGIN_PX
        self._height = sketch.height_ft * self._scale + 2 * _MARGIN_PX

    def drawn(self) -> Element:
        sketch = self._sketch
        size = f"{format_ft_in(sketch.width_ft)} by {format_ft_in(sketch.height_ft)}"
        svg = Element(
            "svg",
            {
                "role": "img",
                "aria-label": printable(f"Sketch of {sketch.title}, {size}"),
                "width": _px(self._width),
                "height": _px(self._height),
                "viewBox": f"0 0 {_px(self._width)} {_px(self._height)}",
                "font-family": "sans-serif",
                "font-size": "12",
            },
        )
        self._hatches(svg)
        points = " ".join(f"{_px(self._x(x))},{_px(self._y(y))}" for x, y in sketch.outline)
        _shape(svg, "polygon", points=points, fill="white", stroke=_INK, width="2")
        for (x1, y1), (x2, y2) in sketch.member_lines:
            ends = {
                "x1": _px(self._x(x1)),
                "y1": _px(self._y(y1)),
                "x2": _px(self._x(x2)),
                "y2": _px(self._y(y2)),
            }
            _shape(svg, "line", **ends, stroke=_LIGHT)
        for covered in sketch.covered:
            self._box(svg, covered, fill=_PALE, stroke=_GRAY).set("stroke-dasharray", "4 4")
        for opening in sketch.openings:
            self._box(svg, opening.rectangle, fill="white", stroke=_GRAY)
            self._label(svg, opening.rectangle, f"{opening.id} {opening.kind}", _GRAY)
        for zone in sketch.zones:
            hatch = f"url(#{self._hatch_id(zone.mark)})" if zone.mark in STROKES else "none"
            self._box(svg, zone.rectangle, fill=hatch, stroke=_ACCENT, width="2")
        for at, zone in enumerate(sketch.zones, start=1):
            # Each at another share of its zone, so that zones on each other stay readable.
            share = at / (len(sketch.zones) + 1)
            self._label(svg, zone.rectangle, zone.label, _INK, share, bold=True)
        return svg

    def _hatches(self, svg: Element) -> None:
        defined = SubElement(svg, "defs")
        for mark in dict.fromkeys(zone.mark for zone in self._sketch.zones):
            if mark in STROKES:
                pattern = SubElement(
                    defined,
                    "pattern",
                    id=self._hatch_id(mark),
                    width="8",
                    height="8",
                    patternUnits="userSpaceOnUse",
                )
                _shape(
                    pattern,
                    "path",
                    d="".join(map(_TILE.__getitem__, STROKES[mark])),
                    stroke=_ACCENT,
                    width="0.7",
                )

    def _hatch_id(self, mark: str) -> str:
        return f"{self._sketch.surface}-{mark}".replace(" ", "-")

    def _box(
        self, svg: Element, rectangle: Rectangle, fill: str, stroke: str, width: str = "1"
    ) -> Element:
        return _shape(
            svg,
            "rect",
            x=_px(self._x(rectangle.left_ft)),
            y=_px(self._y(rectangle.top_ft)),
            height=_px(rectangle.height_ft * self._scale),
            fill=fill,
            stroke=stroke,
            width=width,
            wide=_px(rectangle.width_ft * self._scale),
        )

    def _label(
        self,
        svg: Element,
        rectangle: Rectangle,
        text: str,
        color: str,
        share: float = 0.5,
        bold: bool = False,
    ) -> None:
        label = SubElement(
            svg,
            "text",
            {
                "x": _px(self._x(rectangle.left_ft + rectangle.width_ft * share)),
                "y": _px(self._y(rectangle.bottom_ft + rectangle.height_ft / 2) + 4),
                "text-anchor": "middle",
                "fill": color,
                # A white edge keeps the number readable on the hatching.
                "stroke": "white",
                "stroke-width": "3",
                "paint-order": "stroke",
            },
        )
        if bold:
            label.set("font-weight", "bold")
        label.text = printable(text)

    def _x(self, feet: float) -> float:
        return _MARGIN_PX + feet * self._scale

    def _y(self, feet: float) -> float:
        """Upside down: a page counts from its top, a wall from the ground."""
        return self._height - _MARGIN_PX - feet * self._scale


def _shape(
    parent: Element,
    tag: str,
    *,
    stroke: str,
    fill: str = "none",
    width: str = "1",
    wide: str = "",
    **places: str,
) -> Element:
    """``width`` is that of the line, ``wide`` that of a rectangle."""
    attributes = {**places, "fill": fill, "stroke": stroke, "stroke-width": width}
    if wide:
        attributes["width"] = wide
    return SubElement(parent, tag, attributes)


def _px(length: float) -> str:
    return f"{length:.1f}".removesuffix(".0")
