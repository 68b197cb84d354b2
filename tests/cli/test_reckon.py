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
        (
            "emc --temp 70 --humidity 50 --reading 9 --species hem-fir",
            "figures for hemlock or true",
        ),
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
        ("feed --length 140 --amps 60", "Least by these figures: aluminum conductors"),
        ("feed --length 140 --amps 60", "smaller feed of 40 A"),
        ("feed --length 140 --amps 60", "stepped up to 480 V"),
        ("feed --length 140 --amps 60", "Beyond 100 ft"),
        ("feed --length 140 --amps 16 --volts 120", "the same load at 120/240 V"),
        ("feed --length 42.7m --amps 60", "60 A over 140"),
        ("feed --length 900 --amps 200", "Past the tables: an electrician or engineer sizes it"),
        # A 140 ft feed of 60 A: 225.39 asks for 60 A, Table 250.66 for 8 AWG. Seen.
        ("feed --length 140 --amps 60", "Shut-off at the building 60 A"),
        ("feed --length 140 --amps 60", "Ground rod 8 AWG copper"),
        ("feed --length 140 --amps 16 --volts 120", "Ground rod none asked for"),
        # 1 in. of 1.5 and 0.5 in. of 7.25 are left of a dressed 2x8: 6.75 sq in. of 10.88.
        ("section --size 2x8 --probe 0.5 --face top,left", "Area 10.88 sq in., then 6.75, 62%"),
        ("section --size 2x8 --probe 0.5 --face top", "Moment of inertia 47.63 in. to the fourth"),
        # International Residential Code 2018, R502.8.1: a sixth of 9.25 in. is 1.54 in. Seen.
        ("notch joist --size 2x10 --notch 1.5", "Within the limits"),
        ("notch joist --size 2x10 --notch 1.6", "Over the limit 0.0583 in."),
        ("notch joist --size 2x10 --notch 0.5 --place middle", "No notch is allowed in the middle"),
        ("notch joist --size 2x10 --notch 2.3 --place end", "Within the limits"),
        ("notch rafter --size 2x6 --notch 5.5", "Ask an engineer"),
        ("notch ceiling~joist --size 2x6 --notch 0.5 --cracked", "Ask an engineer"),
        ("notch joist --size 2x10 --hole 3 --clear 2", "Within the limits"),
        ("notch joist --size 2x10 --hole 3 --clear 1.9", "1.9 in. to the top, 2 in. needed"),
        # R602.6: 40 percent of 3.5 in. is 1.4 in., in a partition 2.1 in. Seen.
        ("notch stud --size 2x4 --hole 1.5", "Over the limit"),
        ("notch partition~stud --size 2x4 --hole 1.5", "Within the limits"),
        # NFPA 70, 240.4(D), seen: 12 AWG copper may have 20 A.
        ("breaker --size 12 --amps 20", "Passes by the table"),
        ("breaker --size 12 --amps 30", "Does not pass"),
        ("breaker --size 6 --amps 60 --feeder", "Passes by the table"),
        ("breaker --size 6 --amps 60", "Does not pass"),
        # NFPA 70, 314.16: three 14-2 cables and a receptacle take 18 cubic inches. Seen.
        ("box --wires 14:6 --devices 14 --grounds 14:3 --box 18", "Passes by the table"),
        ("box --wires 14:7 --devices 14 --grounds 14:3 --box 18", "Does not pass"),
        ("box --wires 12:9", "square 4 x 1-1/2 in., 21 cu in."),
        ("box --wires 14:6 --box square~4~x~1-1/4", "The box 18 cu in."),
        # 12 ft 3 in. for the sound joist; less with 3/4 in. of it soft.
        (f"{STAMPED} --probe 0.75", "Allowed span 11 ft 0 in."),
        ("section --size 2x8 --probe 0.75", "Bending strength left 80%"),
        ("section --size 2x8 --probe 7/8 --role beam", "Ask an engineer"),
        ("section --size 2x8 --probe 0 --soft 12", "Strength lost 0%"),
        # 24 x 12 ft at 6 in 12: 288 x 1.1180 = 322 sq ft.
        ("roof --length 24 --width 12 --pitch 6", "Area 322 sq ft"),
        ("roof --length 24 --width 12 --pitch 1 --form shed", "does not pass"),
        # 12 ft of wall in courses of 5 in.: 28.8, 29 pieces.
        ("roof --length 24 --width 12 --pitch 6 --wall 12", "Step flashing 29 pieces"),
        ("roof --length 24 --width 12 --pitch 6 --wall 12 --exposure 6", "24 pieces"),
        ("roof --length 24 --width 12 --pitch 6 --valley 34", "2 rolls of metal"),
        ("roof --length 24 --width 12 --pitch 6 --flue 31x24", "wider than 30 in."),
        ("roof --length 24 --width 12 --pitch 6 --skylight 24x48", "12' 0\" of curb"),
        ("roof --length 24 --width 12 --pitch 6 --layers 2", "There are 2 layers already"),
        ("roof --length 24 --width 12 --pitch 3 --covering slate", "does not pass"),
        # International Energy Conservation Code 2018, Table R402.1.2: walls of zone 5. Seen.
        ("insulation --depth 3.5 --zone 5", "Wanted R 20, by the code in zone 5"),
        ("insulation --depth 3.5 --zone 5", "Does not pass"),
        ("insulation --depth 3.5 --target 13", "Passes by the table"),
        ("insulation --depth 3.5", "Undecided"),
        ("life --covering metal-lapped --age 45 --seen worn", "Years left 0 to 35"),
        ("life --covering slate", "Its age is not known"),
        ("mold --area 9 2", "Medium area of mold"),
        ("cut --wet 13", "Cut at 48 in."),
        # EPA 402-K-01-001, Table 1, from memory: gypsum board is dried within 48 hours.
        ("wet --material gypsum-board --water supply-pipe --hours 12", "Dry in place"),
        ("wet --material gypsum-board --water supply-pipe --hours 48", "Take out"),
        ("wet --material gypsum-board --water sewage --hours 1", "Foul water: gloves"),
        ("wet --material wood-boards --water rain", "Wet for not known"),
        # Wood Handbook, Table 14-2, seen: 1/16 to 1/8 in. and gritty dust.
        ("pest --signs gritty-dust --hole 0.1 --shape round", "2 signs for it, none against"),
        ("pest --hole 1/16 --shape round", "Kind not certain"),
        ("pest --signs soil-tubes --damaged --carries", "Treat:"),
        ("paint --year 1938 --inside 7", "over its limits"),
        ("paint --year 1990 --inside 700", "Not suspect by its year"),
        ("debris --material plaster --amount 300", "3,000 lb"),
        ("debris --material boards --amount 9 --year 1977", "Not with it: Wood, plaster and board"),
        ("debris --material boards --amount 9 --year 1978", "If there: wood, plaster and board"),
        ("debris --material boards --amount 9 --suspect", "Not with it: Anything that may hold"),
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
        ("debris --material plaster --amount -3", "Amount: 0 to 1e+06 sq ft is possible, not -3."),
        ("emc --temp 70 --humidity 50 --reading 9 --species ebony", "Known are douglas_fir"),
        ("notch joist --size 2x10 --notch 10", "Notch: 0 to 9.25 in. is possible, not 10."),
        ("notch joist --size 2x10 --hole 3 --clear 9", "Clear: 0 to 3.12 in. is possible"),
        ("notch purlin --size 2x10 --hole 3", "Member: 'purlin' is not known."),
        ("pest --signs wings-off", "Sign: 'wings-off' is not known."),
        ("pest --hole -1", "Hole: "),
        ("wet --material felt --water rain", "Material: 'felt' is not known."),
        ("wet --material plaster --water rain --hours -1", "Hours: 0 to 8760 is possible, not -1."),
        ("breaker --size 12 --amps 0", "Amps: 1 to 600 A is possible, not 0."),
        ("breaker --size 14 --amps 15 --metal aluminum", "Size: '14' is not known."),
        ("box --wires 13:4", "Wires: '13' is not known."),
        ("box --wires 12:-4", "Wires: 0 to 60 is possible, not -4."),
        ("box --wires 12:1.5", "no whole number of wires"),
        ("insulation --depth 3.5 --zone 9", "Zone: 1 to 8 is possible, not 9."),
        ("insulation --depth 3.5 --zone 4.5", "Zone: climate zones are whole numbers"),
        ("roof --length 24 --width 12 --pitch 6 --flue 24", "Write it like 24x48."),
        ("roof --length 24 --width 12 --pitch 6 --layers 0", "Layers: 1 to 10 is possible, not 0."),
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
