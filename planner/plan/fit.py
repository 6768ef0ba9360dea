"""How a joint should go together, and what to do when it doesn't.

Common practice, no source; softwood gives, hardwood splits.
"""

from __future__ import annotations

from planner.domain.words import Hardness

HOW_IT_SHOULD_FIT = {
    Hardness.HARD: "Leave the line when sawing. It should go home with light mallet taps; forced, hardwood splits.",
    Hardness.SOFT: "Leave the line when sawing. It may need firm taps; softwood gives a little and closes up.",
}

WHEN_IT_DOES_NOT = (
    ("Too tight, won't start", "Find the shiny spots on the tails and pare there only, square across, a shaving each."),
    ("Too tight, starts, then binds", "Ease the tails' inside edges; see that their walls are square to the face."),
    ("Too loose, goes home by hand", "Measure the gaps below. Saw the next ones a little fuller, softwood above all."),
    ("Gap up to 0.1 mm, 0.004 in (a sheet of paper)", "Glue and a tap on the pin's end close it."),
    ("Gap of 0.1 to 0.4 mm, 0.004 in to 1/64 in (a card)", "Glue in a shaving of the same wood, grain along the tail."),
    ("Gap over 0.4 mm, 1/64 in", "Glue in a slip sawn from the same wood; several such gaps: make that board anew."),
    ("The same gap at every tail", "Stop. The lines are traced or sawn off their pins: make a practice joint again."),
)
"""What is seen, and what to do."""

WHAT_ERRORS_MEAN = (
    ("Pins stand more proud than planned", "Bit height: lower it by the difference."),
    ("Pins stand less proud than planned", "Bit height: raise it by the difference, and cut again."),
    ("Tails stand more proud than planned", "Tail gauge: set it less by the difference."),
    ("Tails stand less proud than planned", "Tail gauge: set it more by the difference."),
    (
        "Right-hand walls all off their lines by the same amount",
        "Line-up, RIGHT fence: bring the mark that much past the slot's edge, or short of it.",
    ),
    ("Left-hand walls all off their lines by the same amount", "Line-up, LEFT fence: the same there."),
    ("All walls off to the same side", "Layout: lay out and measure from one and the same edge."),
    ("Walls lean unlike the slope, or unlike each other", "Fences: check the angle of each with a sliding bevel."),
    ("Walls not square to the baseline", "Board not upright, or fence not square to the floor: shim or reset it."),
    (
        "A ridge left in a socket, or a pin nicked by a further pass",
        "Bit or slot is not as it was given: measure both again, and plan again.",
    ),
    ("Gap at one tail only", "Sawing: that cut left its line. Trace again, saw on the waste side."),
    ("Gap at every tail", "Tracing: knife close against the pins, boards clamped so that neither creeps."),
    ("Baseline torn out", "Scribe it deeper, back the cut with scrap, sharpen the bit."),
)
"""What is seen on the practice joint, and which adjustment it asks for.

A socket's right-hand wall is cut at the right fence only, its left-hand wall at the left one; and tails are traced from
the pins as they came out, so an error of the line-up makes no gap.
"""
