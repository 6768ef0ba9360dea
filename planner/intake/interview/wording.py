"""How every question is worded. Keys are those of the questions, without the part that says of which column or tier."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from planner.intake.interview.wording_case import CASE_WORDINGS
from planner.intake.interview.words_of import DOORS, PLANED, TIMBER, Wording

_BEGINNING = {
    "kind": Wording(
        label="piece",
        text="What do you want to make?",
        tells="Take what comes nearest. It only sets what is usual; everything can be answered otherwise.",
    ),
    "name": Wording(
        label="name",
        text="What do you call it?",
        tells="The name of the project: it heads every sheet, and the store finds it by this name.",
    ),
    "units": Wording(
        label="sizes in",
        text="Do you measure in inches or in millimetres?",
        tells="A bare number counts in these, and all sizes are shown in them. You can still write 19 mm or 3/4 in.",
        choices={"inches": "", "millimetres": ""},
    ),
    "timber": Wording(
        label="timber",
        text="Which timber is it made of?",
        tells="What shows: the dovetailed boards, and the fronts of drawers. Any name you like.",
    ),
    "second": Wording(
        label="second timber",
        text="Is there a second timber, for what is hidden? (Its name, or none.)",
        tells="Sides and backs of drawers, runners, web frames, the bottom of a chest. Any name you like.",
    ),
    "sheet": Wording(
        label="sheet goods",
        text="Which sheet goods, for bottoms and backs? (A name, or none.)",
        tells="Plywood and the like doesn't move with the weather. Without it, bottoms and backs are solid.",
    ),
    "hardness": Wording(
        label="how it cuts",
        text="Does {place} cut like a hard or like a soft wood?",
        tells="A joint in soft wood closes up with firm taps; forced, hard wood splits.",
        choices={"hard": "", "soft": ""},
    ),
    "thickness": Wording(
        label="thickness",
        text="How thick are its boards, planed?",
        tells="As they come out of the planer: 3/4 in or 20 mm for a carcase, 1/2 in or 12 mm for a small box.",
    ),
}

_SIZES = {
    "over": Wording(
        label="sizes over",
        text="Will you give the sizes over the outside or over the inside?",
        tells="Inside, when something must go in. The depth of a carcase inside goes to its back.",
        choices={"outside": "", "inside": ""},
    ),
    "width": Wording(label="width", text="How wide is it?", tells="From side to side, seen from its front."),
    "height": Wording(
        label="height",
        text="How high is it, without a base and a separate top?",
        tells="Its four dovetailed boards only: what it stands on and what lies on it come later.",
    ),
    "depth": Wording(label="depth", text="How deep is it?", tells="From the front edge to the back edge."),
    "box_length": Wording(label="length", text="How long is it?", tells="Along its front."),
    "box_width": Wording(label="width", text="How wide is it?", tells="From front to back."),
    "box_height": Wording(
        label="height",
        text="How high is it?",
        tells="Its four boards, without a lid that lies on them; with a lid that is sawn off, the closed box.",
    ),
}

_INSIDE = {
    "columns": Wording(
        label="columns",
        text="Into how many columns is {place} divided, side by side?",
        tells="1 when nothing stands upright between the sides. Partitions part them; column 1 is at the left.",
    ),
    "equal_widths": Wording(label="equally wide", text="Are they equally wide?", tells="If not, you list the widths."),
    "widths": Wording(
        label="widths",
        text="How wide is each, clear, from the left?",
        tells="Clear widths with commas between: 400, rest. Rest takes what the others leave.",
    ),
    "whole_doors": Wording(
        label="doors before the whole",
        text="Do doors close the whole front?",
        tells="Doors before a part of the front come later.",
        choices=DOORS,
    ),
    "holds": Wording(
        label="holds",
        text="What does {place} hold?",
        tells="Drawers alone, shelves alone, nothing, or several of these above each other.",
        choices={
            "drawers": "one above the other, and nothing else",
            "loose shelves": "on pegs",
            "fixed shelves": "let into the sides",
            "nothing": "open, or behind a door",
            "several": "different things above each other",
        },
    ),
    "tier_holds": Wording(
        label="holds",
        text="What does {place} hold?",
        tells="Side by side: it is divided again, into columns.",
        choices={"drawer": "", "side by side": "columns in it", "loose shelves": "on pegs", "nothing": ""},
    ),
    "drawers": Wording(label="drawers", text="How many drawers does {place} hold?", tells="One above the other."),
    "shelves": Wording(label="shelves", text="How many shelves?", tells="Not counting the bottom of the carcase."),
    "tiers": Wording(
        label="tiers",
        text="Into how many tiers is {place} divided, one above the other?",
        tells="Each drawer, set of shelves, door or open space is a tier; tier 1 is at the top.",
    ),
    "heights": Wording(
        label="heights",
        text="How is the height shared out?",
        tells="Drawers that grow downwards by a step or a ratio look steady; the heights are clear, in the opening.",
        choices={
            "equal": "all alike",
            "step": "each taller than the one above it by a length",
            "ratio": "each so many times as tall as the one above it",
            "listed": "you give each height",
        },
    ),
    "step": Wording(
        label="step",
        text="By how much is each taller than the one above it?",
        tells="A small step, such as 1/2 in or 12 mm, shows well enough.",
    ),
    "ratio": Wording(
        label="ratio", text="How many times as tall as the one above it?", tells="Such as 1.15: 15 hundredths taller."
    ),
    "list": Wording(
        label="clear heights",
        text="How high is each, clear, from the top?",
        tells="Clear heights with commas between: 4, 6, rest. Rest takes what the others leave.",
    ),
    "doors": Wording(
        label="doors", text="Does a door stand before {place}?", tells="A single door, or a pair.", choices=DOORS
    ),
}

_BOX = {
    "count": Wording(label="how many", text="How many, all alike?", tells="They are numbered: K1, K2 and so on."),
    "nest": Wording(
        label="boxes in the nest", text="How many boxes stand in each other?", tells="The outermost one included."
    ),
    "nest_gap": Wording(
        label="gap",
        text="How much space is between one and the next?",
        tells="All round, and in height.",
    ),
    "box_bottom": Wording(label="bottom", text="What is the bottom made of? (Or none.)", tells=TIMBER),
    "box_bottom_thickness": Wording(
        label="bottom, thickness", text="How thick is the bottom?", tells="Its groove is as wide."
    ),
    "lid": Wording(
        label="lid",
        text="Which lid does it have?",
        tells="A lid that is sawn off comes from the closed box, so its joints match; a pin is laid on the saw line.",
        choices={
            "none": "",
            "flat": "one board, hinged",
            "frame and panel": "hinged",
            "sawn off": "from the closed box",
        },
    ),
    "till": Wording(
        label="till", text="Is there a till, a small tray at the left end?", tells="Its boards stand in housings."
    ),
    "box_as_listed": Wording(
        label="parts as listed", text="Are the parts of it right, as listed?", tells="No asks for each."
    ),
    "lid_thickness": Wording(label="lid, thickness", text="How thick is the lid?", tells=PLANED),
    "lid_over": Wording(
        label="lid, overhang", text="How far does it stand over the front and the sides?", tells="It may be nothing."
    ),
    "lid_height": Wording(
        label="lid, height", text="How high is the lid that is sawn off?", tells="Measured on the outside."
    ),
    "lid_top": Wording(label="lid's panel", text="What is the panel made of that closes it at the top?", tells=TIMBER),
    "lid_top_thickness": Wording(
        label="lid's panel, thickness", text="How thick is that panel?", tells="Its groove is as wide."
    ),
    "kerf": Wording(
        label="kerf", text="How much do saw and plane take at the saw line?", tells="The saw's kerf, and planing after."
    ),
    "till_material": Wording(label="till, made of", text="What is the till made of?", tells=TIMBER),
    "till_thickness": Wording(label="till, thickness", text="How thick are its boards?", tells=PLANED),
    "till_width": Wording(label="till, width", text="How wide is the till, clear?", tells="Along the chest's length."),
    "till_depth": Wording(label="till, depth", text="How deep is it, clear?", tells="From the chest's top edge down."),
    "till_lid": Wording(label="till's lid", text="Does the till have a lid of its own?", tells="Flat, on pivots."),
}

_PINS = {
    "pins_as_listed": Wording(
        label="pins as listed",
        text="Are the pins right, as listed?",
        tells="How many there are is worked out for each corner, so that the bit can cut them.",
    ),
    "pins_on": Wording(
        label="pins on",
        text="Which boards carry the pins?",
        tells="A board with pins stands upright at the sled, so the shorter pair is easier.",
    ),
    "half_pin": Wording(
        label="half-pins", text="How wide is a half-pin, at the edges?", tells="On the outside face of the pin board."
    ),
    "pin": Wording(label="pins", text="How wide is a pin?", tells="On the outside face of the pin board."),
    "tail": Wording(
        label="tails",
        text="How wide should a tail be, about?",
        tells="The nearest that shares out evenly and that the bit can cut is taken.",
    ),
}

_SLED = {
    "sled": Wording(
        label="sled",
        text="Which sled will you cut the pins on?",
        tells="One that the store keeps for all projects, or another.",
    ),
    "sled_as_listed": Wording(
        label="sled as listed",
        text="Is this your sled, as listed?",
        tells="Measure yours before you cut: these figures decide what can be made on it. planner new-sled works out "
        "one to build.",
    ),
    "sled_name": Wording(label="sled's name", text="What do you call the sled?", tells="Any name you like."),
    "slope": Wording(
        label="slope", text="Which slope do its fences have?", tells="1:8 for hard wood, 1:6 for soft; or 7 deg."
    ),
    "bit": Wording(
        label="bit", text="How thick is its straight bit, as measured?", tells="Not as printed on the shank."
    ),
    "bit_height": Wording(
        label="greatest bit height", text="How high can the bit stand above its floor, at most?", tells="Measured."
    ),
    "sled_width": Wording(
        label="widest board", text="How wide a board does it take, at either fence?", tells="Measured from the slot."
    ),
    "sled_upright": Wording(
        label="longest board upright",
        text="How long a board can stand on end at it?",
        tells="The ceiling counts, and what you can hold safely.",
    ),
}

_CLOSING = {
    "keep": Wording(
        label="store it",
        text="Shall it go into the store?",
        tells="From there every list is shown: planner cut-list, planner order and the others.",
    ),
    "replace": Wording(
        label="replace the stored one",
        text="The store has a project of this name. Shall this take its place?",
        tells="To keep both, go back to the name.",
    ),
    "file": Wording(
        label="project file",
        text="Name of a project file to write? (Or no.)",
        tells="A text that can be changed and read again with planner read.",
    ),
    "workbook": Wording(
        label="workbook",
        text="Name of a workbook to write? (Or no.)",
        tells="A spreadsheet with all lists, to buy and build from; its name ends in .xlsx.",
    ),
}

WORDINGS: Mapping[str, Wording] = MappingProxyType(
    _BEGINNING | _SIZES | _INSIDE | dict(CASE_WORDINGS) | _BOX | _PINS | _SLED | _CLOSING
)
"""Key → words."""
