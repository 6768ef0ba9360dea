"""Project files with one mistake each: a sound file, and edits of it.

One mistake a line, so lines are long. Others may import ``BAD_FILES`` to see what a whole command does with them.
"""

# ruff: noqa: E501 - a table of data, one mistake a line

from __future__ import annotations

from dataclasses import dataclass

GOOD = """\
format = 1

[project]
name = "Tool store"
units = "in"
show = "1/32 in"
proud = "1/64 in"
height_tolerance = 0.004
sled = "bench"

[material.cherry]
kind = "solid"
hardness = "hard"

[material."fir plywood"]
kind = "sheet"

[sled.bench]
slope = "1:8"
bit = "1/2 in"
greatest_bit_height = "1 1/4 in"
greatest_width = "20 in"
greatest_upright = "30 in"
slot = "12.75 mm"
greatest_depth_soft = "1 in"
greatest_depth_hard = "7/8 in"

[sled.small]
slope = "7 deg"
bit = "1/4 in"
greatest_bit_height = "1 in"
greatest_width = "12 in"
greatest_upright = "20 in"

[pins]
half_pin = "1/4 in"
tails = "choose"
alike = true

[rates]
sled_change = 240
pass = 8

[[box]]
mark = "T"
title = "Tray"
count = 3
sizes = "outside"
length = "14 in"
width = 9
height = "3 1/2 in"
material = "cherry"
thickness = "3/8 in"
sled = "small"
pins_on = "sides"

[box.pins]
pin = "1/8 in"
tails = 4

[box.joint.J1]
places = [["7/8 in", "1 1/8 in"], ["2 in", "2 1/2 in"]]
measured_from = "far edge"

[box.bottom]
material = "fir plywood"
thickness = "1/4 in"
play = 0

[[carcase]]
mark = "C"
title = "Tool store"
width = "40 in"
height = "28 in"
depth = "14 in"
material = "cherry"
thickness = "3/4 in"
pins_on = "sides"

[carcase.pins]
spread = "middle"
ratio = 1.5

[carcase.joint.J2]
tails = 7

[carcase.back]
material = "fir plywood"
thickness = "1/4 in"

[carcase.rails]
thickness = "3/4 in"
width = "2 in"

[carcase.partitions]
thickness = "5/8 in"

[[carcase.column]]
width = "18 in"
drawers = 3
heights = ["5 in", "6 in", "rest"]
marks = ["E1", "E2", "E3"]

[[carcase.column]]
drawers = 4
heights = "graduated"
step = "3/4 in"

[carcase.drawer]
material = "cherry"
front_thickness = "3/4 in"
side_thickness = "1/2 in"
back_thickness = "1/2 in"

[carcase.drawer.bottom]
material = "fir plywood"
thickness = "1/4 in"

[carcase.drawer.joint.J2]
pin = "3/16 in"

[carcase.except.D204]
front_joint = "half-blind"
lap = "5/16 in"

[carcase.except.D204.joint.J4]
spread = "edge"
ratio = 2

[carcase.except.E2.applied_front]
material = "cherry"
thickness = "7/16 in"
gap = 0

[carcase.except.E3]
side_thickness = "5/8 in"

[carcase.except.E3.bottom]
thickness = "3/8 in"
"""


@dataclass(frozen=True)
class BadFile:
    """A sound file with one edit, and what must be said about it.

    Attributes:
        name: what is wrong, for the name of the test.
        old: text of the sound file, met there once.
        new: what stands there instead.
        where: path, or end of the place, that the message must name.
        what: part of what is wrong.
        remedy: part of what would be right.
        whole: the sound file.
    """

    name: str
    old: str
    new: str
    where: str
    what: str
    remedy: str
    whole: str = GOOD

    @property
    def text(self) -> str:
        """The whole bad file."""
        assert self.whole.count(self.old) == 1, f"{self.old!r} must stand once in the sound file"
        return self.whole.replace(self.old, self.new)


_PINS = '[["7/8 in", "1 1/8 in"], ["2 in", "2 1/2 in"]]'
_FAR = 'measured_from = "far edge"'
_SLED = 'bit = "1/2 in"\ngreatest_bit_height = "1 1/4 in"'
_LIST = 'heights = ["5 in", "6 in", "rest"]'
_GRADUATED = 'heights = "graduated"\nstep = "3/4 in"'
_HALF_BLIND = 'front_joint = "half-blind"\nlap = "5/16 in"\n'
_CHERRY = "[material.cherry]\n"


def _bog_oak(right: str, wrong: str) -> str:
    """A timber of the maker's own, with one mistake."""
    table = (
        "[timber.'bog oak']\ntangential = 0.0037\nradial = 0.0018\nspecific_gravity = 0.7\nstiffness = '10.3 GPa'\n"
        "strength = '85 MPa'\n"
    )
    assert right in table
    return table.replace(right, wrong)


_APPLIED = '[carcase.except.E2.applied_front]\nmaterial = "cherry"\nthickness = "7/16 in"\ngap = 0\n'
_DRAWER = '[carcase.drawer]\nmaterial = "cherry"\n'
_RAILS = '[carcase.rails]\nthickness = "3/4 in"\nwidth = "2 in"\n'

BAD_FILES = (
    # what is no TOML
    BadFile("text without quotes", 'name = "Tool store"', "name = Tool store", "line 4", "name = Tool", "quotes"),
    BadFile("fraction without quotes", 'bit = "1/2 in"', "bit = 1/2", "line 20", "bit = 1/2", "quotes"),
    BadFile("quote not closed", 'title = "Tray"', 'title = "Tray', "line 46", "Tray", "Close the quotes"),
    BadFile("heading not closed", "[project]", "[project", "line 3", "[project", "Close the heading"),
    BadFile("list not closed", '"rest"]', '"rest"', "line 102", "not in order", "Close the list"),
    BadFile("key twice", "count = 3", "count = 3\ncount = 3", "line 48", "count = 3", "keep one"),
    BadFile("table twice", "[pins]", "[project]", "line 35", "[project]", "headed twice"),
    BadFile("no equals sign", "width = 9", "width 9", "line 50", "width 9", "key = value"),
    BadFile("backslash in a text", 'title = "Tray"', 'title = "Tr\\ay"', "line 46", "Tr", "doubled"),
    BadFile("control character in a text", "Tray", "Tr\x07ay", "line 46", "\\x07", "can't be seen"),
    BadFile("no such day", "width = 9", "width = 2024-02-30", "line 50", "2024-02-30", "dates"),
    BadFile("unclosed inline table", "count = 3", "count = { a = 1", "line 47", "count", "Close the table"),
    # version
    BadFile("no format", "format = 1\n", "", "format", "missing", "Version of this format"),
    BadFile("newer format", "format = 1", "format = 2", "format", "newer", "newer planner"),
    BadFile("format nought", "format = 1", "format = 0", "format", "0 is no version", "format = 1"),
    BadFile("format as text", "format = 1", 'format = "1"', "format", "'1'", "format = 1"),
    BadFile("format as truth", "format = 1", "format = true", "format", "true", "format = 1"),
    # project
    BadFile("no name", 'name = "Tool store"\n', "", "project.name", "missing", "What the project is called"),
    BadFile("empty name", 'name = "Tool store"', 'name = ""', "project.name", "empty", "one character"),
    BadFile("blank before a name", '"Tool store"\nunits', '" Tool store"\nunits', "project.name", "' Tool", "Leave"),
    BadFile("long name", '"Tool store"\nunits', f'"{"x" * 81}"\nunits', "project.name", "too long", "80"),
    BadFile("name as number", 'name = "Tool store"', "name = 7", "project.name", "7 is not a text", "quotes"),
    BadFile("escape code", '"Tool store"\nunits', '"\\u001b[31mred"\nunits', "project.name", "\\x1b[31m", "plain blanks"),
    BadFile("bidi override", '"Tool store"\nunits', '"ab\u202egnp"\nunits', "project.name", "\\u202e", "plain blanks"),
    BadFile("nul in a name", '"Tool store"\nunits', '"ab\\u0000c"\nunits', "project.name", "\\x00", "plain blanks"),
    BadFile("unknown unit", 'units = "in"', 'units = "cm"', "project.units", "'cm'", "'in' or 'mm'"),
    BadFile("step of the other unit", 'show = "1/32 in"', 'show = "0.1 mm"', "project.show", "'0.1 mm'", "'1/16 in'"),
    BadFile("unknown step", 'show = "1/32 in"', 'show = "1/8 in"', "project.show", "'1/8 in'", "'1/64 in'"),
    BadFile("negative proud", 'proud = "1/64 in"', "proud = -1", "project.proud", "-1 is negative", "more than nothing"),
    BadFile("unknown key", "height_tolerance", "height_tolerence", "project.height_tolerence", "not known", "height_tol"),
    BadFile("project as list", "[project]", "[[project]]", "project", "a list", "[project]"),
    BadFile("mistyped sled for all", 'sled = "bench"', 'sled = "bensh"', "project.sled", "'bensh'", "mean bench?"),
    # materials
    BadFile("unknown kind", 'kind = "solid"', 'kind = "timber"', "material.cherry.kind", "'timber'", "'solid' or 'sheet'"),
    BadFile("unknown hardness", 'hardness = "hard"', "hardness = 3", "material.cherry.hardness", "3", "'soft' or 'hard'"),
    BadFile("unknown key of a material", "hardness", "hardnes", "material.cherry.hardnes", "'hardnes'", "hardness?"),
    BadFile(
        "material with a blank at its end",
        "[material.cherry]",
        "[material.cherry]\n[material.'oak ']",
        "material.'oak '",
        "'oak '",
        "Leave them out",
    ),
    BadFile(
        "material as text",
        '[material.cherry]\nkind = "solid"\nhardness = "hard"',
        '[material]\ncherry = "hard"',
        "material.cherry",
        "'hard' stands where a table is wanted",
        "[material.cherry]",
    ),
    BadFile("species that is two", _CHERRY, f"{_CHERRY}species = 'oak'\n", "material.cherry.species", "'oak' is no known timber", "Oak, northern red or Oak, white"),
    BadFile("mistyped species", _CHERRY, f"{_CHERRY}species = 'blck chery'\n", "material.cherry.species", "'blck chery'", "Cherry, black"),
    BadFile("species that nobody knows", _CHERRY, f"{_CHERRY}species = 'xyzzy'\n", "material.cherry.species", "'xyzzy'", "[timber.NAME]"),
    BadFile("species as number", _CHERRY, f"{_CHERRY}species = 3\n", "material.cherry.species", "3 is not a text", "quotes"),
    BadFile("sheet of a solid species", 'kind = "sheet"', "kind = 'sheet'\nspecies = 'teak'", "material.'fir plywood'.kind", "'Teak' is \"solid\"", "another species"),
    BadFile("sawn somehow", _CHERRY, f"{_CHERRY}sawn = 'plain'\n", "material.cherry.sawn", "'plain'", "'flat', 'quarter' or 'rift'"),
    # timbers, and the air
    BadFile("whole shrinkage for a coefficient", _CHERRY, _bog_oak("tangential = 0.0037", "tangential = 10.4") + _CHERRY, "timber.'bog oak'.tangential", "10.4", "0.00248"),
    BadFile("timber without weight", _CHERRY, _bog_oak("specific_gravity = 0.7\n", "") + _CHERRY, "timber.'bog oak'.specific_gravity", "missing", "12 %"),
    BadFile("timber of lead", _CHERRY, _bog_oak("0.7", "11.3") + _CHERRY, "timber.'bog oak'.specific_gravity", "11.3", "up to 1.5"),
    BadFile("strength without unit", _CHERRY, _bog_oak("'85 MPa'", "85") + _CHERRY, "timber.'bog oak'.strength", "85 has no unit", "85 MPa"),
    BadFile("stiffness of steel", _CHERRY, _bog_oak("'10.3 GPa'", "'210 GPa'") + _CHERRY, "timber.'bog oak'.stiffness", "'210 GPa'", "40 GPa"),
    BadFile("nameless timber", _CHERRY, _bog_oak("'bog oak'", "''") + _CHERRY, "timber.''", "is empty", "one character"),
    BadFile("room of one season", _CHERRY, "[room]\ndry = { moisture = 6 }\n" + _CHERRY, "room.damp", "missing", "dampest"),
    BadFile("seasons changed about", _CHERRY, "[room]\ndry = { moisture = 11 }\ndamp = { moisture = 6 }\n" + _CHERRY, "room.dry", "11 %", "Change dry and damp about"),
    BadFile("air without temperature", _CHERRY, "[shop]\nhumidity = 45\n" + _CHERRY, "shop", "too little", "humidity and temperature"),
    BadFile("shop that says nothing", _CHERRY, "[shop]\n" + _CHERRY, "shop", "too little", "moisture"),
    BadFile("humidity over all", _CHERRY, "[shop]\nhumidity = '145 %'\ntemperature = 70\n" + _CHERRY, "shop.humidity", "'145 %'", "from 0 to 100"),
    BadFile("heat of the other unit", _CHERRY, "[shop]\nhumidity = 45\ntemperature = '70 C'\n" + _CHERRY, "shop.temperature", "'70 C'", "140 °F"),
    BadFile("moisture in words", _CHERRY, "[shop]\nmoisture = 'dry'\n" + _CHERRY, "shop.moisture", "'dry'", "8.5 %"),
    BadFile("moisture as truth", _CHERRY, "[shop]\nmoisture = true\n" + _CHERRY, "shop.moisture", "true", "8.5"),
    # sleds
    BadFile("no slope", 'slope = "1:8"\n', "", "sled.bench.slope", "missing", "Slope of its two fences"),
    BadFile("slope as number", 'slope = "1:8"', "slope = 8", "sled.bench.slope", "8 is not a slope", "1:8"),
    BadFile("too steep", 'slope = "1:8"', 'slope = "1:0.5"', "sled.bench.slope", "too steep", "1:20"),
    BadFile("too flat", 'slope = "1:8"', 'slope = "1:30"', "sled.bench.slope", "too flat", "1:20"),
    BadFile("slope the wrong way round", 'slope = "1:8"', 'slope = "8:1"', "sled.bench.slope", "'8:1'", "1:8"),
    BadFile("bit of a 128th", _SLED, _SLED.replace("1/2", "63/128"), "sled.bench.bit", "'63/128 in'", "down to 1/64"),
    BadFile("bit of no size", _SLED, _SLED.replace('"1/2 in"', "0"), "sled.bench.bit", "0 is no length", "more than 0"),
    BadFile("bit as truth", _SLED, _SLED.replace('"1/2 in"', "true"), "sled.bench.bit", "true is not a", "3/4 in"),
    BadFile("bit in no number", _SLED, _SLED.replace('"1/2 in"', "nan"), "sled.bench.bit", "NaN is not a", "Write it like"),
    BadFile("endless board", '"20 in"\ngreatest_upright = "30', '"20 in"\ngreatest_upright = "400', "upright", "10 m", "unit"),
    BadFile("slot of no width", 'slot = "12.75 mm"', "slot = 0", "sled.bench.slot", "0 is no length", "more than 0"),
    BadFile("mistyped slot", 'slot = "12.75 mm"', 'slit = "12.75 mm"', "sled.bench.slit", "'slit'", "slot?"),
    BadFile("depth in words", 'soft = "1 in"', 'soft = "deep"', "sled.bench.greatest_depth_soft", "'deep' is not a length", "23 1/2"),
    BadFile("no depth at once", 'hard = "7/8 in"', "hard = 0", "sled.bench.greatest_depth_hard", "0 is no length", "more than 0"),
    BadFile("kept sled with some values", 'slope = "7 deg"', "kept = true", "sled.small", "but not slope", "or none to take"),
    BadFile("kept in words", 'slope = "7 deg"', 'slope = "7 deg"\nkept = "yes"', "sled.small.kept", "'yes' is neither", "true or false"),
    BadFile("sleds as list", "[sled.bench]", "[[sled.bench]]", "sled.bench", "a list", "[sled.bench]"),
    # pins
    BadFile("unknown key of pins", '[pins]\nhalf_pin = "1/4 in"', "[pins]\nhalfpin = 1", "pins.halfpin", "'halfpin'", "half_pin?"),
    BadFile("no tails", "tails = 4", "tails = 0", "box[1].pins.tails", "0 is no count", '"choose"'),
    BadFile("far too many tails", "tails = 4", "tails = 61", "box[1].pins.tails", "61", "60"),
    BadFile("tails as truth", "tails = 4", "tails = true", "box[1].pins.tails", "true", "1 to 60"),
    BadFile("half a tail", "tails = 4", "tails = 4.5", "box[1].pins.tails", "4.5", "1 to 60"),
    BadFile("pins growing to one side", 'spread = "middle"', 'spread = "left"', "carcase[1].pins.spread", "'left'", "'even', 'middle' or 'edge'"),
    BadFile("graduated without ratio", "ratio = 1.5\n", "", "carcase[1].pins.ratio", "missing: spread = 'middle' needs it", "ratio = 1.5"),
    BadFile("ratio of even tails", 'spread = "middle"', 'spread = "even"', "carcase[1].pins.ratio", "graduated tails only", 'spread = "middle"'),
    BadFile("ratio alone", 'spread = "middle"\n', "", "carcase[1].pins.ratio", "graduated tails only", 'spread = "middle"'),
    BadFile("tails all alike by ratio", "ratio = 1.5", "ratio = 1.0", "carcase[1].pins.ratio", "1.0 is no ratio", "over 1"),
    BadFile("tails too unlike", "ratio = 1.5", "ratio = 4.000001", "carcase[1].pins.ratio", "4.000001", "up to 4"),
    BadFile("ratio of tails too fine", "ratio = 1.5", "ratio = 1.5000001", "carcase[1].pins.ratio", "1.5000001", "6 decimals"),
    BadFile("ratio of tails in words", "ratio = 1.5", 'ratio = "half more"', "carcase[1].pins.ratio", "'half more'", "1.15"),
    BadFile("alike in words", "alike = true", 'alike = "yes"', "pins.alike", "'yes' is neither true nor false", "without quotes"),
    BadFile("alike as number", "alike = true", "alike = 1", "pins.alike", "1 is neither true nor false", "true or false"),
    BadFile("unknown edge", '"far edge"', '"top edge"', "box[1].joint.J1.measured_from", "'top edge'", "'far edge'"),
    BadFile("places and tails", _FAR, f"{_FAR}\ntails = 3", "box[1].joint.J1.places", "places and tails are both given", "one of them"),
    BadFile("places and spread", _FAR, f'{_FAR}\nspread = "even"', "box[1].joint.J1.places", "places and spread", "one of them"),
    BadFile("places and ratio", _FAR, f"{_FAR}\nratio = 2", "box[1].joint.J1.ratio", "graduated tails only", "leave this out"),
    BadFile("no pin listed", _PINS, "[]", "box[1].joint.J1.places", "is empty", "at least one"),
    BadFile("places as text", _PINS, '"1 in to 2 in"', "box[1].joint.J1.places", "'1 in to 2 in' stands where a list", "[ ... ]"),
    BadFile("too many places", _PINS, f"[{', '.join(f'[{n}, {n}.5]' for n in range(1, 61))}]", "box[1].joint.J1.places", "60 are listed", "at most 59"),
    BadFile("place without an end", '["7/8 in", "1 1/8 in"]', '["7/8 in"]', "box[1].joint.J1.places[1]", "a list is no place", "from and to"),
    BadFile("place as one length", '["7/8 in", "1 1/8 in"]', '"7/8 in"', "box[1].joint.J1.places[1]", "'7/8 in' is no place", "from and to"),
    BadFile("place in unknown unit", '"2 in", "2', '"2 yd", "2', "box[1].joint.J1.places[2]", "'2 yd'", "19 mm"),
    BadFile("place at the very edge", '["7/8 in", ', "[0, ", "box[1].joint.J1.places[1]", "0 is no length", "more than 0"),
    BadFile("place backwards", '"2 in", "2 1/2 in"', '"2 1/2 in", "2 in"', "box[1].joint.J1.places[2]", "from '2 1/2 in' to '2 in' has no width", "Write from, then to"),
    BadFile("places out of order", '["7/8 in", "1 1/8 in"], ', '["2 5/8 in", 3], ', "box[1].joint.J1.places", "pin 2 starts at 2 in, but pin 1 ends at 3 in", "in order"),
    BadFile("places that overlap", '["2 in"', '["1 in"', "box[1].joint.J1.places", "pin 2 starts at 1 in, but pin 1 ends at 1 1/8 in", "room for a tail"),
    BadFile("places that touch", '["2 in"', '["1 1/8 in"', "box[1].joint.J1.places", "pin 2 starts at 1 1/8 in, but", "room for a tail"),
    BadFile("fifth joint", "[carcase.joint.J2]", "[carcase.joint.J5]", "carcase[1].joint.J5", "'J5' is not known", "Known here: J1, J2, J3, J4"),
    BadFile("joint with its whole mark", "[carcase.joint.J2]", "[carcase.joint.C-J2]", "carcase[1].joint.C-J2", "'C-J2'", "mean J2?"),
    BadFile("joint of one drawer mistyped", "E3]\nside", "E3.joint.J1]\ntials = 3\n[carcase.except.E3]\nside", "except.E3.joint.J1.tials", "'tials'", "tails?"),
    BadFile("joint as a number", "[carcase.joint.J2]\ntails = 7", "[carcase.joint]\nJ2 = 7", "carcase[1].joint.J2", "7 stands where a table", "[carcase.joint.J2]"),
    # rates
    BadFile("rate below nothing", "pass = 8", "pass = -1", "rates.pass", "-1", "from 0 to 86400"),
    BadFile("rate over a day", "pass = 8", "pass = 86401", "rates.pass", "86401", "from 0 to 86400"),
    BadFile("half a second", "pass = 8", "pass = 7.5", "rates.pass", "7.5", "whole number"),
    BadFile("rate with a unit", "sled_change = 240", 'sled_change = "4 min"', "rates.sled_change", "'4 min'", "whole number"),
    BadFile("unknown rate", "sled_change = 240", "coffee = 240", "rates.coffee", "'coffee'", "Known here: sled_change"),
    # boxes
    BadFile("small letter for a mark", 'mark = "T"', 'mark = "t"', "box[1].mark", "'t' is no mark", "capital letter"),
    BadFile("mark with a dash", 'mark = "T"', 'mark = "T-1"', "box[1].mark", "'T-1'", "capitals or digits"),
    BadFile("mark too long to number", 'mark = "T"', 'mark = "TRAYTRAY"', "box[1].mark", "up to 3", "at most 8"),
    BadFile("none at all", "count = 3", "count = 0", "box[1].count", "0", "from 1 to 500"),
    BadFile("too many", "count = 3", "count = 501", "box[1].count", "501", "from 1 to 500"),
    BadFile("count as text", "count = 3", 'count = "3"', "box[1].count", "'3'", "whole number"),
    BadFile("count as truth", "count = 3", "count = true", "box[1].count", "true", "whole number"),
    BadFile("count with a fraction", "count = 3", "count = 3.0", "box[1].count", "3.0", "whole number"),
    BadFile("unknown way of measuring", '"outside"', '"outer"', "box[1].sizes", "'outer'", "'outside' or 'inside'"),
    BadFile("no length", 'length = "14 in"\n', "", "box[1].length", "missing", "along the front"),
    BadFile("length in words", '"14 in"\nwidth = 9', '"fourteen"\nwidth = 9', "box[1].length", "'fourteen'", "23 1/2"),
    BadFile("length in unknown unit", '"14 in"\nwidth = 9', '"14 yd"\nwidth = 9', "box[1].length", "'14 yd'", "19 mm"),
    BadFile("length in foreign digits", '"14 in"\nwidth = 9', '"١٤ in"\nwidth = 9', "box[1].length", "'١٤ in'", "23 1/2"),
    BadFile("length as list", "width = 9", "width = [9]", "box[1].width", "a list is not a length", "3/4 in"),
    BadFile("length as table", "width = 9", "width = { in = 9 }", "box[1].width", "a table is not", "3/4 in"),
    BadFile("length as day", "width = 9", "width = 2024-02-29", "box[1].width", "2024-02-29 is not", "3/4 in"),
    BadFile("endless width", "width = 9", "width = inf", "box[1].width", "Infinity", "Write it like"),
    BadFile("enormous width", "width = 9", "width = 1e400", "box[1].width", "1E+400", "Write it like"),
    BadFile("enormous power of ten", "width = 9", "width = 1e999999999999999", "box[1].width", "too long", "Write it like"),
    BadFile("tiny power of ten", "width = 9", "width = 1e-999999999999999", "box[1].width", "too long", "Write it like"),
    BadFile("width of 40 digits", "width = 9", f"width = {'9' * 45}", "box[1].width", "over 40 digits", "Write it like"),
    BadFile("unit slipped", "width = 9", 'width = "9000 in"', "box[1].width", "over 10 m", "unit"),
    BadFile("unknown material", '"cherry"\nthickness = "3/8 in"', '"chery"\nthickness = "3/8 in"', "box[1].material", "'chery'", "cherry?"),
    BadFile("unknown sled", 'sled = "small"', 'sled = "tiny"', "box[1].sled", "'tiny'", "bench, small"),
    BadFile("pins on wrong boards", '"sides"\n\n[box', '"top and bottom"\n\n[box', "box[1].pins_on", "'top and", "'sides'"),
    BadFile("unknown key of a box", "count = 3", "quantity = 3", "box[1].quantity", "'quantity'", "Known here: mark"),
    BadFile("one box without double brackets", "[[box]]", "[box]", "box", "a table stands where a list", "[[box]]"),
    BadFile("bottom without thickness", 'thickness = "1/4 in"\nplay = 0', "play = 0", "box[1].bottom.thickness", "missing", "groove"),
    # carcases
    BadFile("mark given twice", 'mark = "C"', 'mark = "T2"', "carcase[1].mark", "'T2' is already taken, by box[1].mark", "its own"),
    BadFile("mark of a batch given again", 'mark = "C"', 'mark = "T"', "carcase[1].mark", "'T' is already", "its own"),
    BadFile("usual drawer mark taken", 'mark = "C"', 'mark = "D203"', "column[2].drawers", "'D203' is already", "marks ="),
    BadFile("no depth", 'depth = "14 in"\n', "", "carcase[1].depth", "missing", "from front edge to back edge"),
    BadFile("unknown key of a carcase", 'depth = "14 in"', 'deep = "14 in"\ndepth = "14 in"', "carcase[1].deep", "'deep'", "depth?"),
    BadFile("no rails", _RAILS, "", "carcase[1].rails", "need a rail", "[carcase.rails]"),
    BadFile("rails without width", 'width = "2 in"\n', "", "carcase[1].rails.width", "missing", "from front to back"),
    BadFile("no partition", '[carcase.partitions]\nthickness = "5/8 in"\n', "", "carcase[1].partitions", "2 columns", "[carcase.part"),
    BadFile("back without material", '[carcase.back]\nmaterial = "fir plywood"\n', "[carcase.back]\n", "back.material", "missing", "Material of the back"),
    # columns
    BadFile("no drawers", "drawers = 3", "drawers = 0", "column[1].drawers", "0", "from 1 to 50"),
    BadFile("drawers as text", "drawers = 4", 'drawers = "four"', "column[2].drawers", "'four'", "from 1 to 50"),
    BadFile("a height short", _LIST, 'heights = ["5 in", "rest"]', "column[1].heights", "2 are listed for 3", "one for each"),
    BadFile("a height too many", _LIST, "heights = [5, 6, 7, 8]", "column[1].heights", "4 are listed for 3", "one for each"),
    BadFile("mistyped rest", _LIST, 'heights = [5, 6, "rset"]', "column[1].heights[3]", "'rset'", "23 1/2"),
    BadFile("unknown rule", '"graduated"\nstep', '"graded"\nstep', "column[2].heights", "'graded'", "'equal' or 'graduated'"),
    BadFile("neither step nor ratio", 'step = "3/4 in"\n', "", "column[2].step", "need a step or a ratio", "ratio = 1.15"),
    BadFile("step and ratio", 'step = "3/4 in"', 'step = "3/4 in"\nratio = 1.1', "column[2].step", "both", "one of them"),
    BadFile("step for equal heights", _GRADUATED, 'step = "3/4 in"', "column[2].step", "graduated heights only", "graduated"),
    BadFile("ratio for listed heights", _LIST, _LIST + "\nratio = 1.1", "column[1].ratio", "graduated", "leave this out"),
    BadFile("ratio of one", 'step = "3/4 in"', "ratio = 1", "column[2].ratio", "1 is no ratio", "over 1"),
    BadFile("ratio over four", 'step = "3/4 in"', "ratio = 4.01", "column[2].ratio", "4.01", "up to 4"),
    BadFile("ratio as text", 'step = "3/4 in"', 'ratio = "1.1"', "column[2].ratio", "'1.1'", "1.15"),
    BadFile("ratio too fine", 'step = "3/4 in"', "ratio = 1.12345678", "column[2].ratio", "1.12345678", "6 decimals"),
    BadFile("ratio without end", 'step = "3/4 in"', "ratio = inf", "column[2].ratio", "Infinity", "up to 4"),
    BadFile("a mark short", '["E1", ', "[", "column[1].marks", "2 are listed for 3", "one for each"),
    BadFile("drawer mark twice", '"E2", ', '"E1", ', "column[1].marks[2]", "'E1' is already", "its own"),
    BadFile("drawer mark in small letters", '"E2", ', '"e2", ', "column[1].marks[2]", "'e2' is no mark", "capital"),
    BadFile("columns as one table", '[[carcase.column]]\nwidth = "18 in"', '[carcase.column.left]\nwidth = "18 in"', "line 104", "[[carcase.column]]", "keep one"),
    # drawers
    BadFile("no front thickness", 'front_thickness = "3/4 in"\n', "", "drawer.front_thickness", "missing", "front"),
    BadFile("mistyped key of a drawer", _DRAWER, _DRAWER + "top_clearence = 4\n", "drawer.top_clearence", "'top_clearence'", "top_clearance?"),
    BadFile("no side clearance", _DRAWER, _DRAWER + "side_clearance = 0\n", "drawer.side_clearance", "0 is no length", "more than 0"),
    BadFile("unknown front joint", 'front_joint = "half-blind"', 'front_joint = "lapped"', "except.D204.front_joint", "'lapped'", "'through' or 'half-blind'"),
    BadFile("lap of a through front", 'front_joint = "half-blind"\n', "", "except.D204.lap", "goes with front_joint = 'half-blind' only", "leave this out"),
    BadFile("lap of all through fronts", _DRAWER, _DRAWER + 'lap = "1/4 in"\n', "drawer.lap", "goes with front_joint = 'half-blind' only", 'front_joint = "half-blind"'),
    BadFile("lap as thick as the front", 'lap = "5/16 in"', 'lap = "3/4 in"', "except.D204.lap", "a lap of '3/4 in' leaves no room for tails in a front of '3/4 in'", "thinner"),
    BadFile("front as thin as the lap", _HALF_BLIND, _HALF_BLIND + "front_thickness = 0.25\n", "except.D204.lap", "front of 0.25", "1/4 in or 6 mm"),
    BadFile("front as thin as the usual lap", _HALF_BLIND, 'front_joint = "half-blind"\nfront_thickness = "1/4 in"\n', "except.D204.front_joint", "a lap of '1/4 in'", "thinner"),
    BadFile("no lap", 'lap = "5/16 in"', "lap = 0", "except.D204.lap", "0 is no length", "more than 0"),
    BadFile("half-blind with pins on the sides", _HALF_BLIND, _HALF_BLIND + 'pins_on = "sides"\n', "except.D204.pins_on", "'half-blind' doesn't go with pins_on = 'sides'", "front and back"),
    BadFile("half-blind where all pins are on the sides", _DRAWER, _DRAWER + 'pins_on = "sides"\n', "except.D204.front_joint", "'half-blind' doesn't go with", "front and back"),
    BadFile("half-blind behind an applied front", "E2.applied_front]", "D204.applied_front]", "except.D204.applied_front", "both asked for", "Leave one of them out"),
    BadFile("applied front over half-blind joints", _DRAWER, _DRAWER + "applied_front = { material = 'cherry', thickness = 1 }\n", "except.D204.front_joint", "both asked for", "Leave one of them out"),
    BadFile("applied front by halves", '[carcase.except.E2.applied_front]\nmaterial = "cherry"\n', "[carcase.except.E2.applied_front]\n", "except.E2.applied_front.material", "no applied front to take it from", "material and the thickness"),
    BadFile("applied front of unknown material", 'front]\nmaterial = "cherry"', 'front]\nmaterial = "elm"', "except.E2.applied_front.material", "'elm'", "cherry"),
    BadFile("applied front with a negative gap", "gap = 0", "gap = -1", "except.E2.applied_front.gap", "-1 is negative", "more than nothing"),
    BadFile("applied front as text", _APPLIED, '[carcase.except.E2]\napplied_front = "cherry"\n', "except.E2.applied_front", "'cherry' stands where a table", "[carcase.except.E2.applied_front]"),
    BadFile("unknown front material", _DRAWER, _DRAWER + 'front_material = "elm"\n', "drawer.front_material", "'elm'", "cherry"),
    BadFile("other carcase's drawer", "[carcase.except.E3]", "[carcase.except.F3]", "except.F3", "'F3'", "E1, E2, E3"),
    BadFile("bottom of one drawer by halves", '[carcase.drawer.bottom]\nmaterial = "fir plywood"\nthickness = "1/4 in"\n', "", "except.E3.bottom.material", "no bottom to take it from", "material and the thickness"),
    BadFile("unknown key of one drawer", "E3]\nside_thickness", "E3]\nsides", "except.E3.sides", "'sides'", "side_"),
    BadFile("exception as text", '[carcase.except.E3]\nside_thickness = "5/8 in"\n', '[carcase.except]\nE1 = "thin"\n', "except.E1", "'thin'", "[carcase.except.E1]"),
)  # fmt: skip
