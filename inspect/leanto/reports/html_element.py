"""Elements of an HTML page; text is always text, never markup."""

from __future__ import annotations

from xml.etree.ElementTree import Element, SubElement

from leanto.reports.characters import printable


def add(parent: Element, tag: str, text: str, kind: str = "") -> Element:
    """A new child with a text; lines of it after the first are set small."""
    made = SubElement(parent, tag, {"class": kind} if kind else {})
    text_in(made, text)
    return made


def text_in(element: Element, text: str) -> None:
    """Puts the text into the element, each further line into a small one of its own."""
    first, *more = printable(text).split("\n")
    element.text = first
    for line in more:
        SubElement(element, "br")
        SubElement(element, "small").text = line
