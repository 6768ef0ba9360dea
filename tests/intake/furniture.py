"""A sound file that says something of everything a piece can have, and edits of it with one mistake each.

One mistake a line, so lines are long.
"""

# ruff: noqa: E501 - a table of data, one mistake a line

from __future__ import annotations

from functools import partial

from tests.intake.bad_files import BadFile

FURNITURE = """\
format = 1

[project]
name = "Hollin Shed furniture"
units = "mm"

[material.elm]

[material.pine]
hardness = "soft"

[material.ply]
kind = "sheet"

[sled.bench]
slope = "1:7"
bit = 9.96
greatest_bit_height = 32
greatest_width = 600
greatest_upright = 1200

[[box]]
mark = "L"
title = "Blanket chest"
length = 1100
width = 500
height = 450
material = "elm"
thickness = 20

[box.bottom]
material = "ply"
thickness = 9

[box.lid]
kind = "hinged"
made = "frame and panel"
thickness = 22
stile = 70
rail = 80
groove_depth = 12
tenon = 40
wide = 3
high = 1
front = 15
sides = 15
back = 0

[box.lid.panel]
material = "pine"
thickness = 9
play = 2

[box.till]
width = 120
depth = 110
material = "pine"
thickness = 8
housing_depth = 5

[box.till.lid]
thickness = 7

[[box]]
mark = "N"
length = 300
width = 220
height = 180
material = "pine"
thickness = 10

[box.bottom]
material = "ply"
thickness = 4
up = 8

[box.lid]
kind = "sawn"
height = 40
kerf = 3

[box.lid.top]
material = "ply"
thickness = 4
groove_depth = 5
down = 6
play = 1

[box.nest]
count = 4
gap = 2

[[carcase]]
mark = "C"
title = "Cabinet"
sizes = "inside"
width = 1000
height = 1400
depth = 400
material = "elm"
thickness = 20
pins_on = "sides"

[carcase.back]
made = "boards"
material = "pine"
thickness = 12
board = 90
lap = 9
gap = 2

[carcase.rails]
thickness = 18
width = 60

[carcase.partitions]
joint = "through tenons"
tenons = 4

[carcase.shelves]
thickness = 19
joint = "stopped housing"
housing_depth = 6
stop = 15

[carcase.frames]
material = "pine"
rail = 55
runner = 45
groove_depth = 9
tenon = 7
play = 2

[carcase.frames.dust_panel]
material = "ply"
thickness = 5

[carcase.runners]
kind = "wood on wood"
width = 22
kickers = false

[carcase.base]
kind = "bracket feet"
height = 120
front = -12
sides = "-12 mm"
back = 0
thickness = 24
mark = "F"
foot = 140
rise = 70
pins_on = "sides"

[carcase.top]
front = 25
sides = 25
back = 5

[carcase.doors]
stands = "overlay"
overlay = 14
leaves = 2

[[carcase.column]]
width = 400
divided_by = "frame"

[[carcase.column.tier]]
height = 120

[[carcase.column.tier]]
share = 2.5
mark = "G"

[[carcase.column.tier]]
holds = "shelves"

[carcase.column.tier.shelves]
count = 3
material = "pine"
thickness = 16
play = 2
setback = 10

[carcase.column.tier.doors]
hinged = "right"
gap = 2
made = "slab"
thickness = 18

[[carcase.column]]
share = 2
divided_by = "shelf"
heights = "graduated"
ratio = 1.2

[[carcase.column.tier]]

[[carcase.column.tier.column]]
drawers = 2
divided_by = "rail"

[[carcase.column.tier.column]]
divided_by = "rail"

[[carcase.column.tier.column.tier]]

[[carcase.column.tier]]
holds = "nothing"

[carcase.drawer]
material = "pine"
front_thickness = 20
side_thickness = 8
back_thickness = 10
back_lower = 6

[carcase.drawer.bottom]
material = "pine"
thickness = 8
goes = "slid in"

[carcase.drawer.bottom.slips]
thickness = 11
height = 18

[carcase.drawer.handles]
count = 2
holes = 2
apart = 64
hole = 4.5

[carcase.except.D203.applied_front]
material = "elm"
thickness = 18
stands = "overlay"
overlay = 9

[[carcase]]
mark = "S"
width = 700
height = 800
depth = 350
material = "pine"
thickness = 18
corners = "rabbet"
lap = 7
rabbets_on = "top and bottom"

[carcase.back]
made = "frame and panel"
material = "elm"
thickness = 15
high = 2

[carcase.runners]
kind = "slides"

[carcase.base]
kind = "stand"
height = 300
leg = 40
leg_material = "elm"
apron = 80
tenon = 20
setback = 4

[carcase.use]
fixed_to = "wall"
floor = "hard"
open_at_once = 2
shelves = "25 lb/ft"
drawers = "tools"
top = "70.5 kg/m2"
sag = 300

[[carcase.column]]

[[carcase.column.tier]]

[carcase.drawer]
material = "pine"
front_thickness = 18
side_thickness = 12
back_thickness = 12
"""

_Bad = partial(BadFile, whole=FURNITURE)
_LID_FRAME = 'made = "frame and panel"\nthickness = 22\nstile = 70\nrail = 80\ngroove_depth = 12\ntenon = 40\nwide = 3\nhigh = 1\n'
_TENONS = 'joint = "through tenons"\ntenons = 4\n'
_PULLS = "count = 2\nholes = 2\napart = 64\n"
_FACE = 'thickness = 18\nstands = "overlay"\noverlay = 9'
_BOARDS = 'made = "boards"\nmaterial = "pine"\nthickness = 12\nboard = 90\nlap = 9\n'
_FRAME_BACK = 'made = "frame and panel"\nmaterial = "elm"'
_WOOD = 'kind = "wood on wood"\nwidth = 22\nkickers = false\n'
_FEET = 'kind = "bracket feet"\nheight = 120'
_FEET_WHOLE = f'{_FEET}\nfront = -12\nsides = "-12 mm"\nback = 0\nthickness = 24\nmark = "F"\nfoot = 140\n'
_STAND = 'kind = "stand"\nheight = 300'
_BY_FRAME = 'width = 400\ndivided_by = "frame"\n'
_GRADUATED = 'heights = "graduated"\nratio = 1.2\n'
_FIRST = "[[carcase.column.tier]]\nheight = 120\n"

BAD_FURNITURE = (
    # lids
    _Bad("lid of no kind", 'kind = "hinged"\n', "", "box[1].lid.kind", "missing", "sawn"),
    _Bad("lid of another kind", 'kind = "hinged"', 'kind = "lift-off"', "box[1].lid.kind", "'lift-off'", "'hinged' or 'sawn'"),
    _Bad("hinged lid with a kerf", "wide = 3\n", "wide = 3\nkerf = 3\n", "box[1].lid.kerf", "goes with kind = 'sawn' only", "leave this out"),
    _Bad("sawn lid of a thickness", "kerf = 3\n", "kerf = 3\nthickness = 9\n", "box[2].lid.thickness", "goes with kind = 'hinged' only", 'kind = "hinged"'),
    _Bad("sawn lid of no height", "height = 40\n", "", "box[2].lid.height", "missing: kind = 'sawn' needs it", "Add height"),
    _Bad("sawn lid of the whole box", "height = 40", "height = 177", "box[2].lid", "leave nothing of the box", "lower lid"),
    _Bad("frame keys of a slab", _LID_FRAME, "thickness = 22\n", "box[1].lid.panel", "goes with made = 'frame and panel' only", 'made = "frame and panel"'),
    _Bad("too many panels", "wide = 3", "wide = 21", "box[1].lid.wide", "21", "from 1 to 20"),
    _Bad("tenon shorter than its groove", "tenon = 40", "tenon = 11", "box[1].lid.tenon", "a tenon of 11 mm doesn't fit a groove of 12 mm", "at least as long"),
    _Bad("tenon through the stile", "tenon = 40", "tenon = 70", "box[1].lid.tenon", "in a stile of 70 mm", "shorter than the stile"),
    _Bad("groove through the stile", "groove_depth = 12\ntenon = 40", "groove_depth = 75", "box[1].lid.stile", "a groove of 75 mm leaves no wood in a stile of 70 mm", "wider stiles"),
    _Bad("usual groove in a thin stile", "stile = 70\nrail = 80\ngroove_depth = 12\ntenon = 40", "stile = 9", "box[1].lid.stile", "a groove of 10 mm leaves no wood in a stile of 9 mm", "shallower"),
    # tills and nests
    _Bad("till of no depth", "depth = 110\n", "", "box[1].till.depth", "missing", "Clear depth"),
    _Bad("till below a sawn lid", "[box.nest]\ncount = 4\ngap = 2", "[box.till]\nwidth = 50\ndepth = 50", "box[2].till", "doesn't go with a lid that is sawn off", "hinged"),
    _Bad("nest with a till", "[box.till.lid]\nthickness = 7", "[box.nest]\ncount = 2\ngap = 2", "box[1].nest", "a till leaves no room", "one of them"),
    _Bad("nest of a batch", 'mark = "N"\n', 'mark = "N"\ncount = 3\n', "box[2].nest", "a nest and a count", "one of them"),
    _Bad("nest of one", "count = 4\ngap", "count = 1\ngap", "box[2].nest.count", "1", "from 2 to 20"),
    _Bad("nest without end", "count = 4\ngap", "count = 21\ngap", "box[2].nest.count", "21", "from 2 to 20"),
    _Bad("nest that comes to nothing", "count = 4\ngap", "count = 9\ngap", "box[2].nest.count", "box 7 of the nest", "fewer"),
    _Bad("nest without place of the bottom", "up = 8\n", "", "box[2].nest", "height of the bottom's groove is not known", "up ="),
    _Bad("nest without place of the top", "down = 6\n", "", "box[2].nest", "place of the top panel is not known", "down ="),
    _Bad("boxes of a nest marked as another", 'mark = "C"', 'mark = "N3"', "carcase[1].mark", "'N3' is already taken, by box[2].mark", "its own"),
    # backs
    _Bad("boards of a panel", _BOARDS, 'material = "pine"\nthickness = 12\n', "carcase[1].back.gap", "goes with made = 'boards' only", 'made = "boards"'),
    _Bad("panels of a boarded back", "board = 90", "board = 90\nwide = 2", "carcase[1].back.wide", "goes with made = 'frame and panel' only", "leave this out"),
    _Bad("boards of a framed back", _FRAME_BACK, _FRAME_BACK + "\nlap = 4", "carcase[2].back.lap", "goes with made = 'boards' only", "leave this out"),
    _Bad("boards like lathes", "board = 90", "board = 9", "carcase[1].back.board", "9 is too narrow", "at least 10 mm"),
    _Bad("boards of nothing but laps", "board = 90", "board = 18", "carcase[1].back.board", "no face between two laps of 9 mm", "smaller laps"),
    # what divides
    _Bad("tenons and housings", _TENONS, _TENONS + "housing_depth = 6\n", "carcase[1].partitions.housing_depth", "goes with joint = 'housing' or 'stopped housing' only", "leave this out"),
    _Bad("tenons in a housing", _TENONS, "tenons = 4\n", "carcase[1].partitions.tenons", "goes with joint = 'through tenons' only", 'joint = "through tenons"'),
    _Bad("stop of a through joint", _TENONS, _TENONS + "stop = 9\n", "carcase[1].partitions.stop", "goes with joint = 'stopped housing' only", "leave this out"),
    _Bad("unknown joint", "stopped housing", "stop housing", "carcase[1].shelves.joint", "'stop housing'", "'stopped housing'"),
    _Bad("far too many tenons", "tenons = 4", "tenons = 21", "carcase[1].partitions.tenons", "21", "from 1 to 20"),
    _Bad("dust panel without material", 'dust_panel]\nmaterial = "ply"', "dust_panel]", "frames.dust_panel.material", "missing", "Material of the dust panels"),
    _Bad("no frames", '[carcase.frames]\nmaterial = "pine"\nrail = 55\nrunner = 45\ngroove_depth = 9\ntenon = 7\nplay = 2\n\n[carcase.frames.dust_panel]\nmaterial = "ply"\nthickness = 5\n', "", "carcase[1].frames", "carcase[1].column[1] is divided by frames", "[carcase.frames]"),
    _Bad("no shelves", '[carcase.shelves]\nthickness = 19\njoint = "stopped housing"\nhousing_depth = 6\nstop = 15\n', "", "carcase[1].shelves", "carcase[1].column[2] is divided by shelves", "may be empty"),
    _Bad("no rails within", "[carcase.rails]\nthickness = 18\nwidth = 60\n", "", "carcase[1].rails", "carcase[1].column[2].tier[1].column[1] is divided by rails", "thickness and width"),
    _Bad("slides of wood", 'kind = "slides"', 'kind = "slides"\nthickness = 12', "carcase[2].runners.thickness", "goes with kind = 'wood on wood' or 'side-hung' only", "leave this out"),
    _Bad("kickers of side-hung drawers", _WOOD, 'kind = "side-hung"\nkickers = true\n', "carcase[1].runners.kickers", "goes with kind = 'wood on wood' only", "leave this out"),
    _Bad("kickers in words", "kickers = false", 'kickers = "none"', "carcase[1].runners.kickers", "'none' is neither true nor false", "without quotes"),
    # base and corners
    _Bad("base of no kind", 'kind = "stand"\n', "", "carcase[2].base.kind", "missing", '"plinth"'),
    _Bad("base of no height", _STAND, 'kind = "stand"', "carcase[2].base.height", "missing", "from the floor"),
    _Bad("feet of a plinth", _FEET_WHOLE, _FEET_WHOLE.replace("bracket feet", "plinth").replace("foot = 140\n", ""), "carcase[1].base.rise", "goes with kind = 'bracket feet' only", "bracket feet"),
    _Bad("legs of a plinth", _FEET, _FEET + "\nleg = 40", "carcase[1].base.leg", "goes with kind = 'stand' only", "leave this out"),
    _Bad("pins of a stand", _STAND, _STAND + '\npins_on = "sides"', "carcase[2].base.pins_on", "goes with kind = 'plinth' or 'bracket feet' only", "leave this out"),
    _Bad("feet cut off", "rise = 70", "rise = 120", "carcase[1].base.rise", "leaves no wood above the feet", "less than the height"),
    _Bad("aprons to the floor", "apron = 80", "apron = 301", "carcase[2].base.apron", "aprons of 301 mm are wider than the legs are long", "narrower"),
    _Bad("tenon through the leg", "tenon = 20", "tenon = 40", "carcase[2].base.tenon", "as long as a leg of 40 mm is thick", "shorter"),
    _Bad("base that stands out without sense", "front = -12", "front = -20000", "carcase[1].base.front", "over 10 m", "unit"),
    _Bad("base that stands out in words", "front = -12", 'front = "-a bit"', "carcase[1].base.front", "'a bit' is not a length", "19 mm"),
    _Bad("mark of the plinth in small letters", 'mark = "F"', 'mark = "f"', "carcase[1].base.mark", "'f' is no mark", "capital letter"),
    _Bad("lap of dovetails", 'corners = "rabbet"\nlap = 7\nrabbets_on = "top and bottom"', "lap = 7", "carcase[2].lap", "goes with corners = 'rabbet' only", 'corners = "rabbet"'),
    _Bad("lap as thick as the board", "lap = 7", "lap = 18", "carcase[2].lap", "as thick as the board", "thinner lap"),
    _Bad("pins of rabbets", 'corners = "rabbet"', 'corners = "rabbet"\npins_on = "sides"', "carcase[2].pins_on", "goes with corners = 'dovetail' only", 'corners = "dovetail"'),
    _Bad("top that stands back", "front = 25", "front = -25", "carcase[1].top.front", "-25 is negative", "more than nothing"),
    # use
    _Bad("fixed to the ceiling", '"wall"', '"ceiling"', "carcase[2].use.fixed_to", "'ceiling'", "'nothing' or 'wall'"),
    _Bad("floor of stone", '"hard"', '"stone"', "carcase[2].use.floor", "'stone'", "'carpet' or 'hard'"),
    _Bad("no drawer open", "open_at_once = 2", "open_at_once = 0", "carcase[2].use.open_at_once", "0", "from 1 to 50"),
    _Bad("load of no name", '"tools"', '"bricks"', "carcase[2].use.drawers", "'bricks' is not a load", "books"),
    _Bad("load of no unit", '"25 lb/ft"', "25", "carcase[2].use.shelves", "25 is not a load", '"25 lb/ft"'),
    _Bad("load of a length alone", '"25 lb/ft"', '"25 lb"', "carcase[2].use.shelves", "'25 lb' is not a load", "kg/m"),
    _Bad("load of nothing", "70.5 kg/m2", "0.0 kg/m2", "carcase[2].use.top", "no load at all", "Leave it out"),
    _Bad("load too fine", "70.5 kg/m2", "70.5001 kg/m2", "carcase[2].use.top", "is not a load", "kg/m2"),
    _Bad("sag of all the span", "sag = 300", "sag = 1", "carcase[2].use.sag", "1", "from 100 to 2000"),
    # doors
    _Bad("overlay of inset doors", 'stands = "overlay"\noverlay = 14', "overlay = 14", "carcase[1].doors.overlay", "goes with stands = 'overlay' only", 'stands = "overlay"'),
    _Bad("a pair hinged on one side", "overlay = 14\nleaves = 2", 'overlay = 14\nleaves = 2\nhinged = "left"', "carcase[1].doors.hinged", "goes with leaves = 1 only", "leaves = 1"),
    _Bad("three leaves", "leaves = 2", "leaves = 3", "carcase[1].doors.leaves", "3", "from 1 to 2"),
    _Bad("door hinged at the top", 'hinged = "right"', 'hinged = "top"', "tier[3].doors.hinged", "'top'", "'left' or 'right'"),
    _Bad("rails of a slab", 'made = "slab"', 'made = "slab"\nrail = 60', "tier[3].doors.rail", "goes with made = 'frame and panel' only", "leave this out"),
    # columns and tiers
    _Bad("width and share", _BY_FRAME, _BY_FRAME + "share = 2\n", "column[1].share", "a width and a share are both given", "one of them"),
    _Bad("height and share", "height = 120\n\n[[carcase.column.tier]]\nshare", "height = 120\nshare = 1\n\n[[carcase.column.tier]]\nshare", "tier[1].share", "a height and a share", "one of them"),
    _Bad("share of nothing", "share = 2.5", "share = 0", "tier[2].share", "0 is no share", "over 0"),
    _Bad("share too large", "share = 2.5", "share = 100.5", "tier[2].share", "100.5 is no share", "up to 100"),
    _Bad("share too fine", "share = 2.5", "share = 2.0000001", "tier[2].share", "2.0000001", "6 decimals"),
    _Bad("share as truth", "share = 2.5", "share = true", "tier[2].share", "true is no share", "such as 2"),
    _Bad("share as text", "share = 2.5", 'share = "half"', "tier[2].share", "'half' is no share", "such as 2"),
    _Bad("drawers both ways", _BY_FRAME, _BY_FRAME + "drawers = 3\n", "column[1].drawers", "drawers and tiers are both given", "may hold a drawer"),
    _Bad("column of nothing", 'drawers = 2\ndivided_by = "rail"\n', "", "column[2].tier[1].column[1].drawers", "missing: the column is empty", "its tiers"),
    _Bad("heights listed beside tiers", _BY_FRAME, _BY_FRAME + 'heights = [1, 2, "rest"]\n', "column[1].heights", "a list goes with drawers", "each tier"),
    _Bad("marks beside tiers", _BY_FRAME, _BY_FRAME + 'marks = ["X"]\n', "column[1].marks", "a list goes with drawers", "each tier"),
    _Bad("graduated tiers with a height", _BY_FRAME, _BY_FRAME + 'heights = "graduated"\nstep = 9\n', "column[1].heights", "height or a share of its own", "one or the other"),
    _Bad("tiers graduated by nothing", _GRADUATED, 'heights = "graduated"\n', "column[2].step", "need a step or a ratio", "ratio = 1.15"),
    _Bad("ratio of tiers that are equal", _GRADUATED, "ratio = 1.2\n", "column[2].ratio", "graduated heights only", "leave this out"),
    _Bad("divided by a wall", 'divided_by = "frame"', 'divided_by = "wall"', "column[1].divided_by", "'wall'", "'rail', 'frame', 'shelf' or 'nothing'"),
    _Bad("tier of another thing", 'holds = "nothing"', 'holds = "door"', "column[2].tier[2].holds", "'door'", "'drawer', 'shelves' or 'nothing'"),
    _Bad("mark of no drawer", 'holds = "nothing"', 'holds = "nothing"\nmark = "X"', "column[2].tier[2].mark", "goes with holds = 'drawer' only", "leave this out"),
    _Bad("shelves beside a drawer", 'holds = "shelves"\n', "", "tier[3].shelves", "goes with holds = 'shelves' only", 'holds = "shelves"'),
    _Bad("columns and a drawer", "[[carcase.column.tier]]\n\n[[carcase.column.tier.column]]\ndrawers", '[[carcase.column.tier]]\nholds = "drawer"\n\n[[carcase.column.tier.column]]\ndrawers', "column[2].tier[1].holds", "divided into columns holds nothing else", "of a tier of these columns"),
    _Bad("far too many loose shelves", "count = 3\n", "count = 51\n", "tier[3].shelves.count", "51", "from 1 to 50"),
    _Bad("tiers as one table", _FIRST, "[carcase.column.tier]\nheight = 120\n", "line 172", "[[carcase.column.tier]]", "keep one"),
    _Bad("unknown key of a tier", _FIRST, _FIRST + "depth = 4\n", "tier[1].depth", "'depth'", "Known here"),
    _Bad("unknown key deep within", 'drawers = 2\ndivided_by = "rail"', 'drawer = 2\ndrawers = 2\ndivided_by = "rail"', "column[2].tier[1].column[1].drawer", "'drawer'", "drawers?"),
    _Bad("drawer counted but not there", "D203", "D205", "except.D205", "no drawer of this carcase is marked 'D205'", "D203"),
    # drawers
    _Bad("bottom that goes in from below", 'goes = "slid in"', 'goes = "from below"', "drawer.bottom.goes", "'from below'", "'all round' or 'slid in'"),
    _Bad("slot of a bottom shut in", 'goes = "slid in"', "screw_slot = 5", "drawer.bottom.screw_slot", "goes with goes = 'slid in' only", 'goes = "slid in"'),
    _Bad("screw slot of no width", 'goes = "slid in"', 'goes = "slid in"\nscrew_slot = 0', "drawer.bottom.screw_slot", "0 is no length", "more than 0"),
    _Bad("even holes for pins", "count = 3\n", "count = 3\npins = { holes = 4 }\n", "tier[3].shelves.pins.holes", "4 holes have none in the middle", "3 or 5"),
    _Bad("stops of overlay doors", "overlay = 14\n", "overlay = 14\nstops = {}\n", "carcase[1].doors.stops", "goes with stands = 'inset' only", 'stands = "inset"'),
    _Bad("hanging rail of no width", "[carcase.top]", "[carcase.hanging_rail]\nwidth = 0\n\n[carcase.top]", "hanging_rail.width", "0 is no length", "more than 0"),
    _Bad("slips of no height", "height = 18\n", "height = 0\n", "drawer.bottom.slips.height", "0 is no length", "more than 0"),
    _Bad("back higher than the sides", "back_lower = 6", "back_lower = -6", "drawer.back_lower", "-6 is negative", "more than nothing"),
    _Bad("knobs apart", _PULLS, "count = 2\nholes = 1\napart = 64\n", "drawer.handles.apart", "goes with holes = 2 only", "holes = 2"),
    _Bad("usual knobs apart", _PULLS, "apart = 64\n", "drawer.handles.apart", "goes with holes = 2 only", "holes = 2"),
    _Bad("three handles", _PULLS, "count = 3\nholes = 2\napart = 64\n", "drawer.handles.count", "3", "from 1 to 2"),
    _Bad("handles without holes", "holes = 2\n", "holes = 0\n", "drawer.handles.holes", "0", "from 1 to 2"),
    _Bad("overlay of an inset front", _FACE, "thickness = 18\noverlay = 9", "except.D203.applied_front.overlay", "goes with stands = 'overlay' only", 'stands = "overlay"'),
    _Bad("gap of an overlay front", _FACE, _FACE + "\ngap = 2", "except.D203.applied_front.gap", "goes with stands = 'inset' only", "leave this out"),
    _Bad("front that stands elsewhere", _FACE, _FACE.replace('"overlay"', '"proud"'), "except.D203.applied_front.stands", "'proud'", "'inset' or 'overlay'"),
)  # fmt: skip
