"""The tasks of a build, in the order in which a maker would take them up where nothing else decides."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.operation import Machine


@dataclass(frozen=True, slots=True)
class Task:
    """A kind of operation: the word that begins its mark, what is done, and where."""

    word: str
    does: str
    machine: Machine


PLANE = Task("plane", "Plane to thickness", Machine.PLANER)
RIP = Task("rip", "Rip to width", Machine.TABLE_SAW_RIP)
CROSSCUT = Task("length", "Cut to length", Machine.TABLE_SAW_CROSSCUT)
LABEL = Task("label", "Write the labels on all surfaces", Machine.BENCH)
GAUGE = Task("gauge", "Gauge the baseline all round the end", Machine.GAUGE)
LAP = Task("lap", "Gauge the lap on the end, from the inside face", Machine.GAUGE)
LAY_OUT = Task("layout", "Lay out the pins on the outside face", Machine.BENCH)
LAY_OUT_BLIND = Task("layout", "Lay out the pins on the end, narrow at the lap", Machine.BENCH)
PRACTICE = Task("try", "Make the practice joint on offcuts, set right what it shows", Machine.ROUTER_TABLE_SLED)
PINS = Task("pins", "Cut the pin sockets", Machine.ROUTER_TABLE_SLED)
CHISEL = Task("chisel", "Chisel out the wedges that the bit left", Machine.BENCH)
CHOP = Task("chop", "Saw and chop the blind sockets by hand", Machine.BENCH)
TRACE = Task("trace", "Trace the tails from their own pins", Machine.BENCH)
SAW = Task("tails", "Saw the tails on the waste side of the line, inside face up", Machine.BANDSAW)
SHOULDERS = Task("shoulders", "Saw the shoulders for the half-pins, square to the edge", Machine.BANDSAW)
FIT = Task("fit", "Pare to the line and try the joint", Machine.BENCH)
GROOVE = Task("groove", "Cut the groove", Machine.ROUTER_TABLE_FENCE)
RABBET = Task("rabbet", "Cut the rabbet", Machine.ROUTER_TABLE_FENCE)
HOUSING = Task("housing", "Cut the housing", Machine.ROUTER_GUIDE)
DRY = Task("dry", "Put together dry, check square", Machine.BENCH)
SAND = Task("sand", "Sand the inside", Machine.BENCH)
GLUE = Task("glue", "Glue up", Machine.CLAMPS)
FLUSH = Task("flush", "Plane pins and tails flush", Machine.BENCH)
RAILS = Task("rails", "Glue the rails into their housings", Machine.CLAMPS)
HANG = Task("drawer", "Fit the drawer to its opening", Machine.BENCH)
FACE = Task("face", "Fix the applied front, even gaps all round", Machine.BENCH)
BACK = Task("back", "Fix the back", Machine.BENCH)
FINISH = Task("finish", "Finish", Machine.BENCH)

TASKS = (
    PLANE, RIP, CROSSCUT, LABEL, GAUGE, LAP, LAY_OUT, LAY_OUT_BLIND, PRACTICE, PINS, CHISEL, CHOP, TRACE, SAW,
    SHOULDERS, FIT, GROOVE, RABBET, HOUSING, DRY, SAND, GLUE, FLUSH, RAILS, HANG, FACE, BACK, FINISH,
)  # fmt: skip
"""In usual order; common practice, no source."""

STAGE = {task.does: place for place, task in enumerate(TASKS)}

TAKEN_UP_WITH = {PRACTICE.does: PINS.does}
"""A task that is done setting by setting along with another: a practice joint once its height is set for the pins."""
