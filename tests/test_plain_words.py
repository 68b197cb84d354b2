"""Every text that a user reads is whole, plain US English: no ids, no placeholders, no slips."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

import pytest
from invented import FOLDERS, assessed

from leanto.decision.words import in_words, interior_in_words
from leanto.library import read_library
from leanto.quantities import Unit
from leanto.reports.blocks import Band, Table
from leanto.reports.contents import repair_scope
from leanto.reports.contents.placed import where_in_words
from leanto.reports.contents.there import there_in_words

LIBRARY = read_library()
NAMES = sorted(FOLDERS)

BRITISH = re.compile(
    r"\b(labour\w*|mould\w*|colour\w*|grey\w*|(?:kilo|centi|milli)?metres?|centres?|centred|fibres?"
    r"|aluminium|vapour\w*|neighbour\w*|odour\w*|harbour\w*|storeys?|tyres?|kerbs?|litres?|plough\w*"
    r"|programmes?|licence|skirting|whilst|towards|rubbish"
    r"|recognise\w*|organise\w*|realise\w*|stabilise\w*|neutralise\w*)\b",
    re.IGNORECASE,
)
DOUBLED = re.compile(r"\b([A-Za-z]+) \1\b", re.IGNORECASE)
SNAKE = re.compile(r"\b[a-z]+(?:_[a-z0-9]+)+\b")
ENDS = (".", "?", "!")
NUMBER = re.compile(
    r"(?<![\w.:/$\-])\d[\d,]*(?:\.\d+)?(?:[-/]\d+(?:/\d+)?)?(?![\w:'\"])(?P<after>.{0,30})"
)
COUNTED = re.compile(
    r"\s*(?:(?:in|ft|sq|lin|percent|a|gauge|minutes?|days?|hours?|weeks?|years?|awg|points|times|holes"
    r"|lb|ma|mil|mm|m|v|volts|squares|gallons|parts?|spaces|of|coats|each|cu|psi|psf|observations"
    r"|layers|more|square)\b|(?:to|and|or|by|x|,|×)\s*-?\d|°)",
    re.IGNORECASE,
)
NO_MEASURE = re.compile(r"(?:\b(?:from|before|after|since|until) (?:1[789]|20)\d\d|category [123])")
LISTS_OF_NUMBERS = ("roof-pitch.look", "roof-layers.look", "wall-base.how", "run_ft.help")
"""These name the unit once, before or behind several numbers."""

IDS = {
    id_
    for id_ in (
        *(item.id for item in LIBRARY.checklist.items()),
        *(rule.id for rule in LIBRARY.rules),
        *LIBRARY.works,
        *(caution.id for caution in LIBRARY.checklist.cautions),
        *(kind.id for kind in LIBRARY.hidden.kinds),
    )
    if "-" in id_
}

Text = tuple[str, str, bool]
"""Where it stands, what it says, and whether it is one or more whole sentences."""


def of_the_checklist() -> Iterator[Text]:
    for item in LIBRARY.checklist.items():
        yield f"{item.id}.prompt", item.prompt, False
        yield f"{item.id}.tool", item.tool, False
        for name in ("look", "how", "why"):
            yield f"{item.id}.{name}", getattr(item, name), True
        for name in ("sound", "worn", "failed"):
            yield f"{item.id}.{name}", getattr(item.answers, name).means, True
    for measure in LIBRARY.checklist.measures:
        yield f"{measure.id}.label", measure.label, False
        yield f"{measure.id}.help", measure.help, bool(measure.help)
        for choice in measure.choices:
            yield f"{measure.id}.choices", choice, False
    for caution in LIBRARY.checklist.cautions:
        yield f"{caution.id}.title", caution.title, False
        yield f"{caution.id}.text", caution.text, True
        yield f"{caution.id}.who", caution.who, False


def of_the_rules() -> Iterator[Text]:
    for compiled in LIBRARY.rules:
        rule = compiled.rule
        for name in ("finding", "advice", "question", "watch"):
            text = getattr(rule, name)
            yield f"{rule.id}.{name}", text, bool(text)
        yield f"{rule.id}.ask", rule.ask, False
        if rule.decides is not None:
            yield f"{rule.id}.decides", rule.decides.reason, True


def of_the_works() -> Iterator[Text]:
    for work in LIBRARY.works.values():
        yield f"{work.id}.title", work.title, False
        yield f"{work.id}.description", work.description, True
        if work.purchase is not None:
            yield f"{work.id}.purchase", work.purchase.name, False
    for kind in LIBRARY.hidden.kinds:
        yield f"{kind.id}.text", kind.text, False


def of_a_building(name: str) -> Iterator[Text]:
    made = assessed(name)
    for finding in (part for told in made.judged.findings for part in told.parts):
        yield finding.id, finding.text, True
        yield finding.id, finding.advice, bool(finding.advice)
        yield finding.id, finding.watch, bool(finding.watch)
    for question in made.judged.questions:
        yield str(question.observation), question.text, True
        yield str(question.observation), question.ask, False
    for one in made.decision.surfaces:
        yield one.surface_id, in_words(one), True
    yield "interior", interior_in_words(made.decision), True
    for item in made.scope.items:
        yield item.id, item.place, False
        yield item.id, item.reason, False
    for gap in made.not_reached:
        yield gap.place, gap.why, False
    for reckoning in made.reckonings:
        yield reckoning.id, reckoning.title, False
        yield reckoning.id, reckoning.verdict, False
        for text in (*reckoning.reasons, *reckoning.asks):
            yield reckoning.id, text, False
        for figure in reckoning.figures:
            yield reckoning.id, f"{figure.label}: {figure.text}", False


def of_the_scope_lines(name: str) -> Iterator[Text]:
    """What a bidder reads of each line beside its quantity."""
    made = assessed(name)
    for item in made.scope.items:
        yield item.id, f"{item.work.title}: {item.place}", False
        yield item.id, item.work.description, True
        for said in (where_in_words(item, made), there_in_words(item, made)):
            yield item.id, said, bool(said)


def bare_number(text: str) -> bool:
    """Whether a number stands there without saying of what; dates and such are none."""
    measured = NO_MEASURE.sub("", text).replace("811", "").replace("in 12", "in.")
    return any(not COUNTED.match(found["after"]) for found in NUMBER.finditer(measured))


def faults(texts: Iterator[Text], *, numbers: bool = True) -> list[str]:
    """Every slip; computed figures are left alone where they stand with their own units."""
    found = []
    for where, text, is_sentence in texts:
        said = [
            ("an unfilled placeholder", bool(re.search(r"[{}]", text))),
            ("a doubled word", bool(DOUBLED.search(text))),
            ("a fact's name", bool(SNAKE.search(text))),
            ("an id", bool(ids_in(text))),
            (
                "a number without its unit",
                numbers and bare_number(text) and where not in LISTS_OF_NUMBERS,
            ),
            ("two spaces", "  " in text or text != text.strip()),
            ("British spelling", bool(BRITISH.search(text))),
            ("no end of the sentence", is_sentence and not text.endswith(ENDS)),
            ("a period before a period", bool(re.search(r"(?<!\.)\.\.(?!\.)|[?!]\.", text))),
            ("a space before a comma or period", bool(re.search(r"\s[,.;:?!](?:\s|$)", text))),
        ]
        found += [f"{where}: {what}: {text}" for what, is_there in said if is_there]
    return found


def ids_in(text: str) -> set[str]:
    """Ids that stand in the text as a word, less those that are common words as well."""
    words = set(re.findall(r"[a-z]+(?:-[a-z0-9]+)+", text))
    return IDS & words - {"shut-off"}


@pytest.mark.parametrize("texts", [of_the_checklist, of_the_rules, of_the_works])
def test_the_texts_of_the_data_files_are_whole_and_plain(
    texts: Callable[[], Iterator[Text]],
) -> None:
    assert sum(1 for _ in texts()) > 400
    assert faults(texts()) == []


@pytest.mark.parametrize("name", NAMES)
def test_what_is_said_about_a_building_is_whole_and_plain(name: str) -> None:
    assert sum(1 for _ in of_a_building(name)) > 100
    assert faults(of_a_building(name), numbers=False) == []


@pytest.mark.parametrize("name", NAMES)
def test_what_a_bidder_reads_is_whole_and_plain(name: str) -> None:
    assert sum(1 for _ in of_the_scope_lines(name)) > 100
    assert faults(of_the_scope_lines(name)) == []


@pytest.mark.parametrize("name", NAMES)
def test_every_quantity_of_the_scope_is_printed_with_its_unit(name: str) -> None:
    units = "|".join(
        sorted({re.escape(word) for unit in Unit for word in (unit.label, unit.plural)})
    )
    tables = [block for block in repair_scope(assessed(name)).blocks if isinstance(block, Table)]
    rows = [
        row
        for table in tables
        if [column.title for column in table.columns][:3] == ["Line", "Work and place", "Quantity"]
        for row in table.rows
        if not isinstance(row, Band)
    ]
    assert len(rows) > 15
    bare = [row[2] for row in rows if not re.fullmatch(rf"(under )?[\d,.]+ ({units})", row[2])]
    assert bare == []


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("The {sill} is soft.", "placeholder"),
        ("The the sill is soft.", "doubled"),
        ("See moisture_pct here.", "fact's name"),
        ("After roof-covering-failed.", "an id"),
        ("The sill is 6 below grade.", "without its unit"),
        ("Lap it 2 or more.", "without its unit"),
        ("Two  spaces.", "two spaces"),
        ("The mould is grey.", "British"),
        ("No end", "no end"),
        ("Two ends..", "before a period"),
        ("A gap , here.", "space before"),
    ],
)
def test_a_planted_slip_is_caught(text: str, what: str) -> None:
    found = faults(iter([("planted", text, True)]))
    assert len(found) == 1
    assert what in found[0]
