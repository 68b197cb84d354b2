"""Computations by hand: printed with verdict and source, impossible input refused in one line."""

from __future__ import annotations

import pytest

from leanto.cli.by_hand import BY_HAND
from leanto.cli.main import main

JOIST = "span joist --size 2x8 --spacing 16 --species spruce-pine-fir"
STAMPED = f"{JOIST} --grade no.2 --use workshop"


def printed(capsys: pytest.CaptureFixture[str], line: str) -> str:
    assert main(["reckon", *_words(line)]) == 0
    return " ".join(capsys.readouterr().out.split())


def _words(line: str) -> list[str]:
    """The arguments of a line; ``~`` stands for a space within one."""
    return [word.replace("~", " ") for word in line.split()]


@pytest.mark.parametrize(
    ("line", "said"),
    [
        # Wood Handbook, Table 4-2: 9.2 % at 70 F and 50 %. Seen.
        ("emc --temp 70 --humidity 50", "Wood settles at 9.2 %"),
        ("emc --temp 21~C --humidity 50%", "69.8 F, 50 %"),
        ("emc --temp 70 --humidity 50 --reading 14", "Wetter than the air explains"),
        ("emc --temp 20 --humidity 99", "Outside the published table"),
        # International Residential Code 2018, Table R502.3.1(2): 12 ft 3 in. Seen.
        (f"{STAMPED}", "Allowed span 12 ft 3 in."),
        (f"{STAMPED} --span 12-3", "Passes by the table"),
        (f"{STAMPED} --span 12-4", "Does not pass"),
        (f"{STAMPED} --unstamped --span 8", "Ask an engineer"),
        (f"{JOIST} --use storage --span 8", "No joist table covers storage"),
        ("span ceiling --size 2x6 --spacing 24 --span 10 --storage", "20 psf live"),
        ("span rafter --size 2x6 --spacing 24 --span 8 --snow 30", "Ground snow 30 psf"),
        ("span rafter --size 1.75x5.75 --spacing 24 --span 8", "snow load of this place is not"),
        # Chapter 9 Table 8: 12 AWG copper 1.98 ohm; 2 x 16 x 140 x 1.98 / 1000 = 8.87 V.
        ("drop --length 140 --amps 16 --size 12 --volts 120", "8.87 V, 7.39 % of 120 V"),
        ("drop --length 10 --amps 16 --size 1/0 --metal aluminum", "Passes by the table"),
        ("feed --length 140 --amps 60", "Aluminum in PVC conduit"),
        ("feed --length 42.7m --amps 60", "60 A over 140"),
        ("feed --length 900 --amps 200", "Past the tables: an electrician or engineer sizes it"),
        ("section --size 2x8 --probe 0.75", "Bending strength left 80%"),
        ("section --size 2x8 --probe 7/8 --role beam", "Ask an engineer"),
        ("section --size 2x8 --probe 0 --soft 12", "Strength lost 0%"),
        # 24 x 12 ft at 6 in 12: 288 x 1.1180 = 322 sq ft.
        ("roof --length 24 --width 12 --pitch 6", "Area 322 sq ft"),
        ("roof --length 24 --width 12 --pitch 1 --form shed", "does not pass"),
        ("life --covering metal-lapped --age 45 --seen worn", "Years left 0 to 35"),
        ("life --covering slate", "Its age is not known"),
        ("mold --area 9 2", "Medium area of mold"),
        ("cut --wet 13", "Cut at 48 in."),
        ("paint --year 1938 --inside 7", "over its limits"),
        ("paint --year 1990 --inside 700", "Not suspect by its year"),
        ("debris --material plaster --amount 300", "3,000 lb"),
        ("heat --area 288 --r 39.44 --inside 70 --outside 10", "438 Btu/h"),
    ],
)
def test_a_computation_is_printed_with_source_and_who_confirms(
    capsys: pytest.CaptureFixture[str], line: str, said: str
) -> None:
    out = printed(capsys, line)
    assert said in out
    assert "Sources: " in out
    assert " to confirm" in out
    assert "safe" not in out.lower()


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("emc --temp 70 --humidity 130", "Humidity: 0 to 100 % is possible, not 130."),
        ("emc --temp 70 --humidity -1", "Humidity: 0 to 100 % is possible, not -1."),
        ("emc --temp 900 --humidity 50", "Temperature: -40 to 160 F is possible, not 900."),
        ("emc --temp warm --humidity 50", "Temperature: "),
        ("section --size 2x8 --probe 8", "Probe: 0 to 7.25 in. is possible, not 8."),
        ("section --size 2x8 --probe 2 --face left", "Probe: 0 to 1.5 in. is possible, not 2."),
        ("section --size 2x8 --probe 1 --face all", "Probe: 0 to 0.75 in. is possible, not 1."),
        ("section --size 2x9 --probe 1", "Did you mean 2x8?"),
        ("section --size 3x8 --probe 1 --old", "as measured"),
        (f"{JOIST} --span 12 --dead -3", "Own weight: 0 to 200 psf is possible, not -3."),
        (f"{JOIST} --use workshp", "Did you mean workshop?"),
        ("span joist --size 2x8 --spacing 16 --species oak", "Known are douglas fir, hem-fir"),
        ("span joist --size 2x8 --spacing 16 --species douglas", "Did you mean douglas fir?"),
        ("span beam --size 2x8 --spacing 16", "Known are joist, ceiling, rafter."),
        ("span joist --size 2x8 --spacing 2", "Spacing: 4 to 240 in. is possible, not 2."),
        ("feed --length 140 --amps -5", "Amps: 0 to 400 A is possible, not -5."),
        ("feed --length 140 --amps 0", "a feed carries more than 0 A"),
        ("feed --length 140 --amps 60 --breaker 30", "below 60 A of load"),
        ("feed --length 140 --amps 60 --ground sea", "Known are yard"),
        ("drop --length 140 --amps 16 --size 13", "Size: '13' is not known."),
        ("roof --length 24 --width 12 --pitch 99", "steeper than 20:12"),
        ("roof --length 12 --width 24 --pitch 6 --form hip", "Swap the two."),
        ("life --covering tin", "Covering: 'tin' is not known."),
        ("cut --wet 200 --wall 8", "Wet up to: 0 to 96 in. is possible, not 200."),
        ("heat --area 100 --r 13 --inside 60 --outside 80", "Outside: up to 60 F is possible"),
        ("debris --material plaster --amount many", "Amount: "),
    ],
)
def test_the_impossible_is_refused_in_one_line(
    capsys: pytest.CaptureFixture[str], line: str, said: str
) -> None:
    assert main(["reckon", *_words(line)]) == 2
    caught = capsys.readouterr()
    assert caught.out == ""
    assert said in caught.err
    assert caught.err.startswith("leanto: ")
    assert caught.err.count("\n") == 1


@pytest.mark.parametrize("module", BY_HAND, ids=lambda module: module.__name__.rpartition(".")[2])
def test_every_computation_explains_its_arguments(
    capsys: pytest.CaptureFixture[str], module: object
) -> None:
    name = module.__name__.rpartition(".")[2]  # type: ignore[attr-defined]
    with pytest.raises(SystemExit) as left:
        main(["reckon", name, "--help"])
    assert left.value.code == 0
    assert module.HELP.split(",")[0] in " ".join(capsys.readouterr().out.split())  # type: ignore[attr-defined]
