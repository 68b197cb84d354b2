"""The data files read together: what is laid over what, and every problem of every file."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from leanto.building.kinds import Lining
from leanto.errors import InputProblems
from leanto.library import Library, library_problems, read_library
from leanto.scope.work import Trade

WALK = """
id: framing
title: Framing
order: 2
items:
  - id: sill
    at: [wall outside]
    prompt: Sill
    look: The lowest timber.
    how: Push an awl in.
    caution: [dust]
    answers:
      sound: {means: Hard.}
      worn: {means: Soft skin., measures: [probe_depth_in]}
      failed: {means: Soft inside., measures: [probe_depth_in, run_ft, kind], zone: true}
    why: It carries the wall above it.
    source: Invented for a test
"""
SITE = """
id: site
title: Site
order: 1
items:
  - id: grade
    at: [site]
    only_if: to_be_heated
    prompt: Ground
    look: The slope of the ground.
    how: By eye.
    answers:
      sound: {means: Falls away.}
      worn: {means: Level.}
      failed: {means: Falls to the wall.}
    why: Water runs to the sill otherwise.
    source: Invented for a test
"""
MEASURES = """
measures:
  - {id: probe_depth_in, label: Awl sinks in, unit: in, low: 0, high: 12}
  - {id: run_ft, label: Length, unit: ft, low: 0, high: 400}
  - {id: kind, label: Kind of wood, unit: choice, choices: [oak, pine]}
"""
CAUTIONS = """
cautions:
  - {id: dust, title: Dust, text: Wear a mask., source: Invented for a test}
"""
RULES = """
rules:
  - id: sill-rotted
    items: [sill]
    when: failed or worn and probe_depth_in >= 0.5
    finding: The sill is rotten.
    urgency: now
    needs_cause: true
    causes:
      - {rules: [grade-wrong], where: anywhere}
    question: What wets it?
    hidden: soft-wood
    caution: [dust]
    work:
      - {work: replace-sill, take: width}
      - {work: shore, quantity: ceil(number(run_ft) / 8)}
    source: Invented for a test
  - id: grade-wrong
    items: [grade]
    when: worn or failed
    finding: The ground does not fall away.
    urgency: with the work
    watch: After rain.
    source: Invented for a test
"""
WORKS = ("replace-sill lf", "shore each", "strip sf", "patch sf", "line sf", "wire lf")
FILES = {
    "walk/framing.yaml": WALK,
    "walk/site.yaml": SITE,
    "measures/common.yaml": MEASURES,
    "cautions.yaml": CAUTIONS,
    "rules/framing.yaml": RULES,
    "work/common.yaml": "work:\n"
    + "".join(
        f"""  - id: {work.split()[0]}
    title: The work {work}
    description: What a bidder is to do.
    trade: carpenter
    phase: structure
    unit: {work.split()[1]}
    element: B1010
"""
        for work in WORKS
    ),
    "prices/common.yaml": "prices:\n"
    + "".join(
        f"""  - work: {work.split()[0]}
    hours: {{low: 1, likely: 2, high: 3}}
    materials_usd: {{low: 1, likely: 2, high: 3}}
    source: planning figure, no source
    dated: 2026-06-01
"""
        for work in WORKS
    ),
    "prices/factors.yaml": "wages:\n"
    + "".join(
        f"  - {{trade: {trade}, hourly_usd: {{low: 20, likely: 25, high: 30}},"
        " source: planning figure, dated: 2026-06-01}\n"
        for trade in Trade
    )
    + """
burden: 1.4
burden_source: planning figure
region_source: planning figure
overhead_pct: 10
profit_pct: 10
markup_source: planning figure
poor_access: {low: 1, likely: 1.4, high: 2}
poor_access_source: planning figure
change_order_pct: {low: 10, likely: 20, high: 40}
change_order_source: planning figure
haul_usd_per_lb: {low: 0.1, likely: 0.1, high: 0.2}
haul_source: planning figure
crew: {low: 0.9, likely: 1, high: 1.2}
prices: {low: 0.9, likely: 1, high: 1.2}
shared_source: planning figure
""",
    "hidden.yaml": """
prior: {chance: 0.1, ages: [{up_to_years: 100, ratio: 1}], source: planning}
extent: {a: 1.5, b: 4.5, source: planning}
not_reached: blind
kinds:
  - {id: soft-wood, group: rot, text: soft, ratio: 5, source: planning}
  - {id: blind, group: access, text: unseen, ratio: 2, source: planning}
test_hole: {work: patch, shows_at_evidence: 0.8, source: planning}
linings:
"""
    + "".join(
        f"  - {{lining: {lining}, strip: strip, patch: patch, line: line, finish: line}}\n"
        for lining in Lining
        if lining is not Lining.NONE
    )
    + """
repair_open: patch
insulate_open: line
insulate_closed: line
wire_open: wire
wire_closed: wire
wire_ft_per_sqft: 0.3
wire_source: planning figure
protect: shore
""",
}

Shelf = Callable[..., Path]


def write(folder: Path, files: dict[str, str]) -> Path:
    for name, text in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


@pytest.fixture
def shipped(tmp_path: Path) -> Path:
    """A small library without problems."""
    return write(tmp_path / "shipped", FILES)


@pytest.fixture
def own(tmp_path: Path) -> Shelf:
    """A folder that is laid over the shipped one."""
    return lambda **files: write(
        tmp_path / "own", {name.replace("__", "/") + ".yaml": text for name, text in files.items()}
    )


def change(folder: Path, name: str, old: str, new: str) -> int:
    """Replaces a piece of a file and returns the line of the change."""
    text = (folder / name).read_text("utf-8")
    assert text.count(old) >= 1, old
    (folder / name).write_text(text.replace(old, new, 1), encoding="utf-8")
    return text[: text.index(old)].count("\n") + 1


def told(folder: Path, *folders: Path) -> list[str]:
    return [str(problem) for problem in library_problems(folders, shipped=folder)]


def test_the_shipped_library_has_no_problems() -> None:
    assert [str(problem) for problem in library_problems()] == []


def test_a_library_holds_everything_by_id(shipped: Path) -> None:
    library = read_library(shipped=shipped)
    assert isinstance(library, Library)
    assert [section.id for section in library.checklist.sections] == ["site", "framing"]
    assert [item.id for item in library.checklist.items()] == ["grade", "sill"]
    measures = {measure.id for measure in library.checklist.measures}
    assert measures == {"probe_depth_in", "run_ft", "kind"}
    assert [caution.id for caution in library.checklist.cautions] == ["dust"]
    assert {rule.id for rule in library.rules} == {"sill-rotted", "grade-wrong"}
    assert set(library.works) == set(library.prices) == {work.split()[0] for work in WORKS}
    assert library.hidden.protect == "shore"
    assert library.factors.burden > 1


FAULTS = [
    # file, what stands there, what is written instead, what is said
    ("rules/framing.yaml", "failed or worn", "faild or worn", "did you mean 'failed'?"),
    ("rules/framing.yaml", "failed or worn and", "worn and", "when sill is failed"),
    ("rules/framing.yaml", "items: [sill]", "items: [sil]", "There is no item 'sil'."),
    ("rules/framing.yaml", "caution: [dust]", "caution: [dusk]", "There is no caution 'dusk'."),
    ("rules/framing.yaml", "hidden: soft-wood", "hidden: softwood", "Did you mean 'soft-wood'?"),
    ("rules/framing.yaml", "[grade-wrong]", "[grade-wring]", "There is no rule 'grade-wring'."),
    (
        "rules/framing.yaml",
        "question: What",
        "replaces: [{rules: [grade-wring]}]\n    question: What",
        "There is no rule 'grade-wring'.",
    ),
    ("rules/framing.yaml", "{work: shore", "{work: shores", "There is no work 'shores'."),
    ("rules/framing.yaml", "take: width", "take: area", "'area' gives sf, but replace-sill"),
    ("rules/framing.yaml", "take: width", "take: members", "'members' gives each, but"),
    ("rules/framing.yaml", "when: worn or", "when: found_here('x') or", "which is no rule."),
    ("rules/framing.yaml", "when: worn or", "when: found_here('grade-wrong') or", "ask for each"),
    ("rules/framing.yaml", "id: grade-wrong", "id: sill-rotted", "two rules called sill-rotted"),
    ("rules/framing.yaml", "probe_depth_in >= 0.5", "probe_depth_in > run_ft", "in inches, but"),
    ("rules/framing.yaml", "ceil(number(run_ft) / 8)", "run_ft / 8", "shore is counted in each."),
    ("walk/framing.yaml", "caution: [dust]", "caution: [smoke]", "There is no caution 'smoke'."),
    ("walk/framing.yaml", "[probe_depth_in]", "[probe_in]", "There is no measure 'probe_in'."),
    ("walk/site.yaml", "to_be_heated", "failed", "failed is known only once something was obs"),
    ("walk/site.yaml", "to_be_heated", "overhang_in > eave_height_ft", "inches(eave_height_ft)"),
    ("walk/site.yaml", "id: grade", "id: sill", "two items called sill"),
    ("walk/site.yaml", "id: site", "id: framing", "two sections called framing"),
    (
        "walk/framing.yaml",
        "prompt: Sill",
        "pointless_after: [{item: grad, answers: [sound], where: anywhere}]\n    prompt: Sill",
        "There is no item 'grad'. Did you mean 'grade'?",
    ),
    (
        "walk/framing.yaml",
        "prompt: Sill",
        "pointless_after: [{item: grade, answers: [sound]}]\n    prompt: Sill",
        "'grade' is never asked where sill is. Write where: anywhere",
    ),
    (
        "walk/framing.yaml",
        "prompt: Sill",
        "pointless_after: [{item: grade, answers: [soft]}]\n    prompt: Sill",
        "answers.0: ",
    ),
    (
        "walk/framing.yaml",
        "prompt: Sill",
        "pointless_after: [{item: sill, answers: [not there]}]\n    prompt: Sill",
        "These items make each other pointless: sill -> sill.",
    ),
    (
        "walk/site.yaml",
        "prompt: Ground",
        "pointless_after: [{item: sill, answers: [worn, failed], where: everywhere, "
        "measure: run_ft, choices: [far]}]\n    prompt: Ground",
        "'sill' does not ask for run_ft when it is worn. Take that answer out.",
    ),
    (
        "walk/site.yaml",
        "prompt: Ground",
        "pointless_after: [{item: sill, answers: [failed], where: everywhere, "
        "measure: run_ft, choices: [far]}]\n    prompt: Ground",
        "'run_ft' is entered in ft; only a choice can be named here.",
    ),
    (
        "walk/site.yaml",
        "prompt: Ground",
        "pointless_after: [{item: sill, answers: [failed], where: everywhere, "
        "measure: kind, choices: [fir]}]\n    prompt: Ground",
        "'kind' is never 'fir'. One of: oak, pine.",
    ),
    (
        "walk/site.yaml",
        "prompt: Ground",
        "pointless_after: [{item: sill, answers: [failed], measure: kind}]\n    prompt: Ground",
        "measure and choices stand together",
    ),
    ("measures/common.yaml", "id: run_ft", "id: layers", "a name that expressions use already"),
    ("measures/common.yaml", "unit: ft", "unit: in", "its name must end with _in"),
    ("measures/common.yaml", "id: run_ft", "id: ceil", "a name that expressions use already"),
    ("measures/common.yaml", "id: run_ft", "id: not", "a name that expressions use already"),
    ("work/common.yaml", "id: strip", "id: strip-it", "'strip-it' has no price."),
    ("work/common.yaml", "id: strip", "id: open-lining", "'open-lining' is kept for gut or keep."),
    ("work/common.yaml", "element: B1010", "caution: [x1]\n    element: B1010", "no caution 'x1'"),
    ("prices/common.yaml", "work: shore", "work: shoring", "There is no work 'shoring'."),
    ("prices/common.yaml", "work: strip", "work: shore", "two prices called shore"),
    ("prices/factors.yaml", "{trade: mason", "{trade: roofer", "no wage for mason"),
    ("hidden.yaml", "protect: shore", "protect: tent", "There is no work 'tent'."),
    ("hidden.yaml", "patch: patch", "patch: mend", "There is no work 'mend'."),
    ("hidden.yaml", "lining: plywood", "lining: board", "There is no entry for 'plywood'."),
    ("hidden.yaml", "lining: plywood", "lining: board", "'board' stands here twice."),
    ("hidden.yaml", "lining: plywood", "lining: none", "'none' is no lining."),
]


@pytest.mark.parametrize(("name", "old", "new", "message"), FAULTS)
def test_what_is_wrong_is_told_with_its_file_and_line(
    shipped: Path, name: str, old: str, new: str, message: str
) -> None:
    line = change(shipped, name, old, new)
    found = [text for text in told(shipped) if message in text]
    assert len(found) == 1
    with pytest.raises(InputProblems) as refused:
        read_library(shipped=shipped)
    assert message in str(refused.value)
    # Some faults show at another place than the one that was changed.
    elsewhere = ("has no price", "no entry", "no wage", "when sill is", "two items", "two sect")
    if not any(part in message for part in elsewhere):
        assert found[0].startswith(f"checklists/{name}:{line}:")


def test_a_rule_may_name_what_was_not_reached_as_evidence(shipped: Path) -> None:
    change(shipped, "rules/framing.yaml", "hidden: soft-wood", "hidden: blind")
    assert told(shipped) == []


@pytest.mark.parametrize("name", ["hidden.yaml", "prices/factors.yaml"])
def test_a_missing_file_is_told(shipped: Path, name: str) -> None:
    (shipped / name).unlink()
    assert told(shipped) == [
        f"checklists/{name}: The file is missing. Put it back, or install leanto again."
    ]


def test_a_broken_file_hides_no_problem_of_another_and_makes_none(shipped: Path) -> None:
    (shipped / "measures/common.yaml").write_text("measures: [", encoding="utf-8")
    assert len(told(shipped)) == 1
    change(shipped, "rules/framing.yaml", "hidden: soft-wood", "hidden: softwood")
    change(shipped, "rules/framing.yaml", "when: worn or failed", "when: worn = failed")
    change(shipped, "walk/site.yaml", "prompt: Ground", "promt: Ground")
    found = told(shipped)
    assert [text.partition(":")[0] for text in found] == [
        "checklists/measures/common.yaml",
        "checklists/rules/framing.yaml",
        "checklists/rules/framing.yaml",
        "checklists/walk/site.yaml",
        "checklists/walk/site.yaml",
    ]


@pytest.mark.parametrize("name", sorted(FILES))
def test_one_unreadable_file_is_the_only_problem(shipped: Path, name: str) -> None:
    (shipped / name).write_text("{", encoding="utf-8")
    assert {text.partition(":")[0] for text in told(shipped)} == {f"checklists/{name}"}


def test_items_that_make_each_other_pointless_are_named(shipped: Path) -> None:
    once = "pointless_after: [{item: %s, answers: [not there], where: anywhere}]\n    prompt: %s"
    line = change(shipped, "walk/framing.yaml", "prompt: Sill", once % ("grade", "Sill"))
    change(shipped, "walk/site.yaml", "prompt: Ground", once % ("sill", "Ground"))
    (found,) = told(shipped)
    assert "These items make each other pointless: " in found
    assert found.endswith(" Take one out.")
    assert f":{line}: items.0.pointless_after:" in found or "walk/site.yaml:" in found


def test_rules_that_cause_each_other_are_named(shipped: Path) -> None:
    cause = "causes: [{rules: [sill-rotted], where: anywhere}]\n    watch: After"
    change(shipped, "rules/framing.yaml", "watch: After", cause)
    (found,) = told(shipped)
    assert found.startswith("checklists/rules/framing.yaml:")
    assert "causes: These rules cause each other: " in found
    assert found.endswith("Take one out.")


def test_rules_that_replace_each_other_are_named(shipped: Path) -> None:
    circle = [
        ("question: What", "replaces: [{rules: [grade-wrong]}]\n    question: What"),
        ("watch: After", "replaces: [{rules: [sill-rotted]}]\n    watch: After"),
    ]
    for old, new in circle:
        change(shipped, "rules/framing.yaml", old, new)
    (found,) = told(shipped)
    assert "These rules replace each other: " in found


def test_a_rule_may_replace_itself(shipped: Path) -> None:
    once = "replaces: [{rules: [grade-wrong], where: place}]\n    watch: After"
    change(shipped, "rules/framing.yaml", "watch: After", once)
    assert told(shipped) == []


def test_a_folder_that_is_not_there_lays_nothing_over(shipped: Path, tmp_path: Path) -> None:
    plain = read_library(shipped=shipped)
    assert read_library([tmp_path / "nothing"], shipped=shipped) == plain


def test_an_own_item_replaces_the_shipped_one_where_it_stood(shipped: Path, own: Shelf) -> None:
    text = WALK.replace("prompt: Sill", "prompt: My sill").replace("id: framing", "id: mine")
    library = read_library([own(walk__mine=text)], shipped=shipped)
    assert [section.id for section in library.checklist.sections] == ["site", "framing"]
    assert [item.prompt for item in library.checklist.items()] == ["Ground", "My sill"]


def test_an_own_item_with_a_new_id_is_added_to_its_section(shipped: Path, own: Shelf) -> None:
    text = WALK.replace("id: sill", "id: post").replace("title: Framing", "title: My framing")
    rule = RULES.partition("  - id: grade-wrong")[0].replace("sill", "post", 2)
    folder = own(walk__mine=text, rules__mine=rule.replace("replace-post", "replace-sill"))
    library = read_library([folder], shipped=shipped)
    framing = library.checklist.sections[1]
    assert (framing.id, framing.title) == ("framing", "My framing")
    assert [item.id for item in framing.items] == ["sill", "post"]


def test_own_rules_works_prices_measures_and_cautions_replace_and_add(
    shipped: Path, own: Shelf
) -> None:
    work = FILES["work/common.yaml"].partition("  - id: strip\n")[0]
    price = FILES["prices/common.yaml"].partition("  - work: shore\n")[0]
    folder = own(
        rules__mine=RULES.replace("The sill is rotten.", "My sill is rotten."),
        work__mine=work.replace("The work shore each", "My shoring"),
        prices__mine=price.replace("likely: 2", "likely: 2.5"),
        measures__mine=MEASURES.replace("Length", "My length"),
        cautions=CAUTIONS.replace("Wear a mask.", "Wear my mask."),
        hidden=FILES["hidden.yaml"].replace("wire_ft_per_sqft: 0.3", "wire_ft_per_sqft: 0.4"),
        prices__factors=FILES["prices/factors.yaml"].replace("burden: 1.4", "burden: 1.5"),
    )
    library = read_library([folder], shipped=shipped)
    findings = {rule.id: rule.rule.finding for rule in library.rules}
    assert findings["sill-rotted"] == "My sill is rotten."
    assert library.works["shore"].title == "My shoring"
    assert library.works["strip"].title == "The work strip sf"
    assert library.prices["replace-sill"].hours.likely == pytest.approx(2.5)
    assert library.prices["shore"].hours.likely == 2
    labels = {measure.label for measure in library.checklist.measures}
    assert labels == {"Awl sinks in", "My length", "Kind of wood"}
    assert library.checklist.cautions[0].text == "Wear my mask."
    assert library.hidden.wire_ft_per_sqft == pytest.approx(0.4)
    assert float(library.factors.burden) == pytest.approx(1.5)


def test_problems_of_an_own_file_name_its_path(shipped: Path, own: Shelf) -> None:
    folder = own(rules__mine=RULES.replace("hidden: soft-wood", "hidden: hard-wood"))
    (problem,) = told(shipped, folder)
    assert problem.startswith(f"{folder}/rules/mine.yaml:")
    assert "There is no hidden kind 'hard-wood'." in problem


@pytest.mark.parametrize(
    "name", ["rules.yaml", "rules/mine.yml", "rule/mine.yaml", "tables/x.yaml"]
)
def test_an_own_file_that_nothing_reads_is_told(shipped: Path, own: Shelf, name: str) -> None:
    folder = own()
    write(folder, {name: RULES})
    (problem,) = told(shipped, folder)
    assert problem.startswith(f"{folder}/{name}: Nothing reads this file.")


@pytest.mark.parametrize(
    ("name", "kind"),
    [
        ("walk/site.yaml", "checklists"),
        ("measures/common.yaml", "checklists"),
        ("cautions.yaml", "checklists"),
        ("rules/framing.yaml", "rules"),
        ("work/common.yaml", "work"),
        ("prices/common.yaml", "prices"),
        ("prices/factors.yaml", "prices"),
        ("hidden.yaml", "hidden"),
    ],
)
def test_each_kind_has_a_version_that_follows_its_content(
    shipped: Path, name: str, kind: str
) -> None:
    before = read_library(shipped=shipped).versions
    assert set(before) == {"checklists", "rules", "work", "prices", "hidden", "tables"}
    assert all(len(version) == 12 for version in before.values())
    assert read_library(shipped=shipped).versions == before
    with (shipped / name).open("a", encoding="utf-8") as file:
        file.write("# changed\n")
    after = read_library(shipped=shipped).versions
    assert {one for one in before if before[one] != after[one]} == {kind}


def test_an_own_file_changes_the_version_of_its_kind(shipped: Path, own: Shelf) -> None:
    before = read_library(shipped=shipped).versions
    after = read_library([own(rules__mine=RULES)], shipped=shipped).versions
    assert {one for one in before if before[one] != after[one]} == {"rules"}
