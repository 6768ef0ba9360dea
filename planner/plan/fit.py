"""How a joint should go together, and what to do when it doesn't.

Common practice, no source, but for the last row of the practice joint's table; softwood gives, hardwood splits.
"""

from __future__ import annotations

from planner.domain.words import Hardness

HOW_IT_SHOULD_FIT = {
    Hardness.HARD: "Leave the line when sawing. It should go home with light mallet taps; forced, hardwood splits.",
    Hardness.SOFT: "Leave the line when sawing. It may need firm taps; softwood gives a little and closes up.",
}

WHEN_IT_DOES_NOT = (
    ("Won't start", "Find the shiny spots on the tails and pare there only, square across, a shaving at a time."),
    ("Starts, then binds", "Ease the inside edges of the tails; check that the sockets are square to the baseline."),
    ("Goes home by hand", "Good in softwood. In hardwood look for gaps before glue: it must not rattle."),
    ("Gap thinner than a sheet of paper", "About 0.1 mm, 1/256 in: glue and a tap on the pin's end close it."),
    ("Gap thicker than a card", "Over about 0.3 mm, 1/64 in: glue in a slip of the same wood, grain along the tail."),
    ("Gap at every joint of a setting", "Stop. The line-up is off; make the practice joint again."),
)
"""What is seen, and what to do."""

WHAT_ERRORS_MEAN = (
    ("Tails stand above the pin board's outside face", "Tail baseline set too deep: by as much as they stand out."),
    ("Pins stand more proud than planned", "Bit too high: lower it by the difference."),
    ("Pins end short of the tail board's face", "Bit too low: raise it by the difference, and cut again."),
    ("Every socket is off to one side by the same amount", "Line-up: shift the mark at one fence by that amount."),
    ("Sockets too wide by the same amount", "Half of it is each fence: set the mark that much towards the waste."),
    ("Wall not square to the baseline", "Board not upright, or fence not square to the floor: shim or reset it."),
    ("Pins slope more on one side than on the other", "The two fences lean unlike: check each with a sliding bevel."),
    ("Gap at one tail only", "Sawing, not set-up: that cut left its line. Trace again, saw on the waste side."),
    ("Baseline torn out", "Back the cut with scrap, scribe the baseline deeper, sharpen the bit."),
)
"""What is seen on the practice joint, and which adjustment it asks for. Common practice, no source."""
