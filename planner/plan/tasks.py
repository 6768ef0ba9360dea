"""The tasks of a build, in the order in which they must be done to one and the same board.

This order is the only place that says what comes before what: an operation waits for every operation of an earlier
level on the boards that it touches. So a groove, cut at its level, can't come after the glue-up of its board.

Times are rough: common practice, no source. Time for glue and finish to dry is not in them.
"""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.operation import Machine
from planner.domain.words import FeatureKind


@dataclass(frozen=True, slots=True)
class Task:
    """A kind of operation.

    Attributes:
        word: begins its mark.
        does: what is done.
        setup_s: seconds to set the machine for it, or to make ready.
        each_s: seconds for each cut, joint, pin or piece.
    """

    word: str
    does: str
    machine: Machine
    setup_s: int
    each_s: int


# --- boards ------------------------------------------------------------------------------------------------

GLUE_PANEL = Task(
    "panel", "Joint the edges of its staves, match grain and colour, glue up the panel", Machine.CLAMPS, 0, 1200
)
PLANE = Task("plane", "Plane to thickness", Machine.PLANER, 180, 90)
RIP = Task("rip", "Rip to width", Machine.TABLE_SAW_RIP, 120, 60)
CROSSCUT = Task("length", "Cut to length", Machine.TABLE_SAW_CROSSCUT, 90, 45)
LABEL = Task("label", "Write the labels on all surfaces", Machine.BENCH, 0, 60)

# --- corner joints -----------------------------------------------------------------------------------------

GAUGE = Task("gauge", "Gauge the baseline all round the end", Machine.GAUGE, 60, 60)
LAP = Task("lap", "Gauge the lap on the end, from the inside face", Machine.GAUGE, 30, 30)
LAY_OUT = Task("layout", "Lay out the pins on the outside face", Machine.BENCH, 0, 30)
LAY_OUT_BLIND = Task("layout", "Lay out the pins on the end, narrow at the lap", Machine.BENCH, 0, 30)
PRACTICE = Task(
    "try", "Make the practice joint on offcuts, set right what it shows", Machine.ROUTER_TABLE_SLED, 0, 1500
)
PINS = Task("pins", "Cut the pin sockets", Machine.ROUTER_TABLE_SLED, 0, 0)
"""Its times are the maker's own: ``domain.rates``."""
CHISEL = Task("chisel", "Chisel out the wedges that the bit left", Machine.BENCH, 0, 60)
CHOP = Task("chop", "Saw and chop the blind sockets by hand", Machine.BENCH, 0, 300)
TRACE = Task("trace", "Trace the tails from their own pins", Machine.BENCH, 0, 180)
SAW = Task("tails", "Saw the tails on the waste side of the line, inside face up", Machine.BANDSAW, 180, 20)
SHOULDERS = Task("shoulders", "Saw the shoulders for the half-pins, square to the edge", Machine.BANDSAW, 60, 30)
FIT = Task("fit", "Pare to the line and try the joint", Machine.BENCH, 0, 60)

# --- cuts in single boards ---------------------------------------------------------------------------------

GROOVE = Task("groove", "Cut the groove", Machine.ROUTER_TABLE_FENCE, 300, 90)
RABBET = Task("rabbet", "Cut the rabbet", Machine.ROUTER_TABLE_FENCE, 300, 90)
HOUSING = Task("housing", "Cut the housing", Machine.ROUTER_GUIDE, 120, 180)
MORTISE = Task("mortise", "Cut the mortise", Machine.MORTISER, 240, 180)
NOTCH = Task("notch", "Cut the notch", Machine.BANDSAW, 60, 120)
DRILL = Task("drill", "Drill the hole", Machine.DRILL, 60, 30)
TENON = Task("tenon", "Cut the tenon, and fit it to its mortise", Machine.ROUTER_TABLE_FENCE, 300, 180)
TENONS_SAWN = Task("tenon", "Saw out the waste between the tenons, and fit them", Machine.BANDSAW, 60, 240)
"""Tenons as thick as their board."""

# --- frames and stands -------------------------------------------------------------------------------------

DRY_FRAME = Task("dry", "Put the frame together dry, check that it is square and flat", Machine.BENCH, 0, 60)
SAND_FRAME = Task("sand", "Sand panels and inner edges, and finish the panels now", Machine.BENCH, 0, 120)
ENDS = Task("ends", "Glue up each end of the stand: two legs and an apron", Machine.CLAMPS, 0, 900)
GLUE_STAND = Task("glue", "Glue the two ends to the other aprons", Machine.CLAMPS, 0, 1200)
GLUE_FRAME = Task("glue", "Glue up the frame; panels stay dry", Machine.CLAMPS, 0, 900)
FLUSH_FRAME = Task("flush", "Plane the joints of the frame flush", Machine.BENCH, 0, 600)
HOUSE_FRAME = Task("housing", "Cut the housing across the glued-up frame", Machine.ROUTER_GUIDE, 120, 120)

# --- rings -------------------------------------------------------------------------------------------------

SLIPS_FIRST = Task("slips", "Glue the slips to the sides, before the bottom is caught", Machine.CLAMPS, 0, 300)
DRY = Task("dry", "Put together dry with all that is caught in it, check square", Machine.BENCH, 0, 120)
SAND = Task("sand", "Sand the inside", Machine.BENCH, 0, 300)
GLUE = Task("glue", "Glue up with all that is caught in it; what must move stays dry", Machine.CLAMPS, 0, 1200)
FLUSH = Task("flush", "Plane pins and tails flush", Machine.BENCH, 0, 300)
GROOVE_RING = Task("groove", "Cut the groove in side and back together", Machine.ROUTER_TABLE_FENCE, 300, 120)
OPEN = Task("open", "Saw the closed box open", Machine.TABLE_SAW_RIP, 300, 120)
EDGES = Task("edges", "Plane the sawn edges to the line", Machine.BENCH, 0, 900)

# --- what is put in later ----------------------------------------------------------------------------------

DIVIDE = Task("put in", "Put in partitions, shelves and frames; frames glued in front only", Machine.CLAMPS, 0, 600)
RAIL = Task("put in", "Glue in the rails", Machine.CLAMPS, 0, 300)
RUNNER = Task(
    "put in", "Put in runners and kickers: glued in front only, screwed in a slot behind", Machine.CLAMPS, 0, 300
)
TILL = Task("put in", "Put in the till", Machine.CLAMPS, 0, 600)
SLIPS = Task("slips", "Glue the slips to the sides", Machine.CLAMPS, 0, 300)
BOTTOM = Task(
    "put in",
    "Slide in the bottom, glue in the front groove only, screw it to the back in a slot",
    Machine.BENCH,
    0,
    300,
)
PUT_IN = Task("put in", "Put it in its place and glue it", Machine.CLAMPS, 0, 600)
CHECK = Task("check", "Check that the carcase is square and out of wind, take off all glue", Machine.BENCH, 0, 600)
STRIPS = Task("strips", "Screw on the side-hung strips, tight in front, in a slot behind", Machine.BENCH, 0, 300)
HANGING_RAIL = Task("rail", "Glue the hanging rail below the top, flush with the back's seat", Machine.CLAMPS, 0, 600)
BASE = Task("base", "Fix the base with screws in slots", Machine.BENCH, 0, 1800)
TOP = Task("top", "Fix the separate top from below with screws in slots", Machine.BENCH, 0, 1200)

# --- fitting and finishing ---------------------------------------------------------------------------------

MEASURE = Task(
    "measure", "Measure the opening front and back, write it down, compare it with the plan", Machine.BENCH, 0, 180
)
DRAWER = Task("drawer", "Fit the drawer to its opening", Machine.BENCH, 0, 1500)
DRAWER_STOPS = Task(
    "stop", "Push the drawer home, flush in front; glue the stop against the back of its front", Machine.BENCH, 0, 300
)
FRONT = Task("face", "Fix the applied front, even gaps all round", Machine.BENCH, 0, 900)
DRILL_FRONTS = Task("drill", "Drill for the handles through both fronts at once", Machine.DRILL, 60, 60)
DOOR = Task("hinge", "Hang the door on its hinges, even gaps all round", Machine.BENCH, 0, 2400)
DOOR_STOPS = Task("stop", "Shut the door flush; fix the stop behind it", Machine.BENCH, 0, 600)
LID = Task("hinge", "Hang the lid on its hinges", Machine.BENCH, 0, 2400)
LOOSE = Task("shelf", "Drill for the pegs, try the loose shelf", Machine.BENCH, 0, 600)
ON_PINS = Task("shelf", "Put in the shelf pins, try the loose shelf on them", Machine.BENCH, 0, 180)
BACK = Task("back", "Fix the back, free to move in its rabbets", Machine.BENCH, 0, 900)
FINISH = Task("finish", "Take out what comes out, sand, finish", Machine.BENCH, 0, 300)
HANG = Task("hang", "Put everything back, hang it for good, fix the handles", Machine.BENCH, 0, 300)

LEVELS: tuple[tuple[Task, ...], ...] = (
    (GLUE_PANEL,), (PLANE,), (RIP,), (CROSSCUT,), (LABEL,),
    (GAUGE, LAP), (LAY_OUT, LAY_OUT_BLIND), (PRACTICE,), (PINS, CHOP), (CHISEL,),
    (TRACE,), (SAW,), (SHOULDERS,), (FIT,),
    (GROOVE, RABBET, HOUSING, MORTISE, NOTCH, DRILL), (TENON, TENONS_SAWN),
    (DRY_FRAME,), (SAND_FRAME,), (ENDS,), (GLUE_STAND, GLUE_FRAME), (FLUSH_FRAME,), (HOUSE_FRAME,),
    (SLIPS_FIRST,), (DRY,), (SAND,), (GLUE,), (FLUSH,), (GROOVE_RING,), (OPEN,), (EDGES,),
    (DIVIDE, RAIL, RUNNER, TILL, SLIPS, BOTTOM, PUT_IN), (CHECK,), (STRIPS, HANGING_RAIL), (BASE,), (TOP,),
    (MEASURE,), (DRAWER,), (FRONT,), (DRILL_FRONTS,), (DRAWER_STOPS,), (LOOSE, ON_PINS), (DOOR,), (DOOR_STOPS,),
    (BACK,), (LID,), (FINISH,), (HANG,),
)  # fmt: skip
"""Levels in the order of the work; tasks of one level don't wait for each other. Common practice, no source."""

LEVEL = {task: level for level, tasks in enumerate(LEVELS) for task in tasks}

STAGE = {task.does: place for place, task in enumerate(task for tasks in LEVELS for task in tasks)}
"""Which task a maker takes up first where nothing else decides."""

BY_NAME = {task.does: task for task in LEVEL}

TAKEN_UP_WITH = {PRACTICE.does: PINS.does}
"""A task that is done setting by setting along with another: a practice joint once its height is set for the pins."""

CUTS = {
    FeatureKind.GROOVE: GROOVE,
    FeatureKind.RABBET: RABBET,
    FeatureKind.HOUSING: HOUSING,
    FeatureKind.MORTISE: MORTISE,
    FeatureKind.TENON: TENON,
    FeatureKind.NOTCH: NOTCH,
    FeatureKind.HOLE: DRILL,
    FeatureKind.SAW_LINE: OPEN,
}
"""The task that makes each kind of cut in a single board (a saw line: in the glued-up box)."""
