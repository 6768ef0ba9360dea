"""How the questions about the parts of a case are worded: see ``wording``."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from planner.intake.interview.words_of import PLANED, TIMBER, Wording

_WITHIN = {
    "between": Wording(
        label="between tiers",
        text="What lies between one drawer, or other tier, and the next?",
        tells="Rails are flat boards at the front. Frames reach to the back and carry drawers all the way.",
        choices={
            "rails": "flat, at the front",
            "web frames": "rails and runners, with or without dust panels",
            "shelves": "boards of the full depth",
            "nothing": "drawers hang on their sides",
        },
    ),
    "run": Wording(
        label="drawers run on",
        text="What do the drawers run on?",
        tells="Bought slides need room at each side; their maker's sheet has the last word.",
        choices={
            "wood on wood": "strips level with the rails",
            "side-hung": "strips in grooves of the drawers' sides",
            "slides": "bought",
            "what is below": "shelf, frame or bottom",
        },
    ),
    "slide_room": Wording(
        label="room for slides",
        text="How much room do the slides need at each side?",
        tells="It stands on their maker's sheet.",
    ),
    "within_as_listed": Wording(
        label="inside as listed",
        text="Are the boards inside right, as listed?",
        tells="No asks for each.",
    ),
    "partition": Wording(label="partitions, thickness", text="How thick are the partitions?", tells=PLANED),
    "rail": Wording(
        label="rails, thickness", text="How thick are the rails?", tells="The height that a rail takes of the front."
    ),
    "rail_width": Wording(
        label="rails, width", text="How wide are the rails?", tells="From the front edge to the back edge of a rail."
    ),
    "shelf": Wording(label="fixed shelves, thickness", text="How thick are the fixed shelves?", tells=PLANED),
    "shelf_joint": Wording(
        label="fixed shelves, joint",
        text="How are the fixed shelves held?",
        tells="A stopped housing doesn't show at the front.",
        choices={
            "housing": "a slot across the side",
            "stopped housing": "the slot ends before the front edge",
            "through tenons": "they show outside",
        },
    ),
    "frame_material": Wording(label="web frames", text="What are the web frames made of?", tells=TIMBER),
    "dust_panels": Wording(
        label="dust panels", text="Are there dust panels in the web frames?", tells="Thin panels in their grooves."
    ),
    "runner_material": Wording(label="runners", text="What are the runners made of?", tells=TIMBER),
    "loose_shelf": Wording(label="loose shelves, thickness", text="How thick are the loose shelves?", tells=PLANED),
}

_DRAWERS = {
    "front": Wording(
        label="drawer fronts",
        text="How are the fronts of the drawers joined?",
        tells="Half-blind dovetails are cut by hand; an applied front hides through dovetails.",
        choices={
            "through": "dovetails that show",
            "half-blind": "a lap hides them",
            "applied": "a front of its own hides them",
        },
    ),
    "drawers_as_listed": Wording(
        label="drawers as listed", text="Are the drawers right, as listed?", tells="No asks for each."
    ),
    "drawer_material": Wording(
        label="drawers, sides and backs", text="What are sides and backs of the drawers made of?", tells=TIMBER
    ),
    "side": Wording(label="drawers, thickness of sides", text="How thick are the sides of the drawers?", tells=PLANED),
    "drawer_back": Wording(
        label="drawers, thickness of backs", text="How thick are the backs of the drawers?", tells=PLANED
    ),
    "front_material": Wording(
        label="drawers, fronts", text="What are the fronts of the drawers made of?", tells=TIMBER
    ),
    "front_thickness": Wording(
        label="drawers, thickness of fronts", text="How thick are the fronts of the drawers?", tells=PLANED
    ),
    "lap": Wording(
        label="drawers, lap",
        text="How thick is the lap over the tails?",
        tells="What is left of the front before the ends of the sides.",
    ),
    "drawer_bottom": Wording(
        label="drawers, bottoms", text="What are the bottoms of the drawers made of?", tells=TIMBER
    ),
    "drawer_bottom_thickness": Wording(
        label="drawers, thickness of bottoms",
        text="How thick are the bottoms of the drawers?",
        tells="Their groove is as wide.",
    ),
    "goes": Wording(
        label="drawers, bottoms go in",
        text="How do the bottoms of the drawers go in?",
        tells="A solid bottom slides in, so that it can move; a screw in a slot holds it at the back.",
        choices={"all round": "shut in a groove on four sides", "slid in": "from behind, under a raised back"},
    ),
    "handles": Wording(
        label="drawers, handles",
        text="Which handles do the drawers get?",
        tells="Only where to drill is planned.",
        choices={"none": "", "knob": "one hole", "pull": "two holes"},
    ),
    "handle_count": Wording(
        label="drawers, handles on each",
        text="How many handles has each drawer?",
        tells="One in the middle, or a pair.",
    ),
}

_DOORS_MADE = {
    "doors_as_listed": Wording(
        label="doors as listed", text="Are the doors right, as listed?", tells="No asks for each."
    ),
    "door_made": Wording(
        label="doors",
        text="How are the doors made?",
        tells="A solid slab as wide as a door moves with the weather; a panel moves in its frame.",
        choices={"frame and panel": "stiles, rails and a panel between them", "slab": "one board"},
    ),
    "door_stands": Wording(
        label="doors stand",
        text="How do the doors stand to the carcase?",
        tells="Inset doors must be fitted to their openings; overlay doors hide the front edges.",
        choices={"inset": "within the front, flush with it", "overlay": "over the edges"},
    ),
    "door": Wording(label="doors, thickness", text="How thick are the doors?", tells=PLANED),
    "stile": Wording(
        label="stiles and rails", text="How wide are stiles and rails?", tells="The uprights and the cross-pieces."
    ),
    "panel_material": Wording(label="panels", text="What are the panels made of?", tells=TIMBER),
    "panel": Wording(
        label="panels, thickness", text="How thick are the panels?", tells="The groove for them is as wide."
    ),
}

_AROUND = {
    "back": Wording(
        label="back",
        text="Which back does it have?",
        tells="It lies in a rabbet on all four boards.",
        choices={
            "panel": "one piece",
            "boards": "upright, overlapping, with room to swell",
            "frame and panel": "flat, to be seen from behind",
            "none": "open",
        },
    ),
    "base": Wording(
        label="base",
        text="What does it stand on?",
        tells="A plinth is dovetailed like a box; bracket feet are a plinth cut away between its feet.",
        choices={
            "none": "its own bottom",
            "plinth": "a low box, set back",
            "bracket feet": "a plinth cut away",
            "stand": "four legs and aprons",
        },
    ),
    "top": Wording(
        label="separate top",
        text="Is there a separate top, laid on it?",
        tells="Screws in slots hold it from below, so that it can move.",
    ),
    "around_as_listed": Wording(
        label="back, base, top as listed", text="Are back, base and top right, as listed?", tells="No asks for each."
    ),
    "back_material": Wording(label="back, made of", text="What is the back made of?", tells=TIMBER),
    "back_thickness": Wording(
        label="back, thickness", text="How thick is the back?", tells="The rabbet is as deep from behind."
    ),
    "base_height": Wording(
        label="base, height", text="How high is the base?", tells="From the floor to the lowest board of the carcase."
    ),
    "setback": Wording(
        label="base, set back",
        text="How far does it stand back from the front and the sides?",
        tells="Less than nothing (-1/4 in) stands out.",
    ),
    "leg": Wording(label="legs, thickness", text="How thick are the legs, both ways?", tells=PLANED),
    "apron": Wording(label="aprons, width", text="How wide are the aprons?", tells="From edge to edge."),
    "foot": Wording(
        label="feet, length", text="How long are the feet at each end of a board?", tells="Along the board."
    ),
    "top_thickness": Wording(label="top, thickness", text="How thick is the top?", tells=PLANED),
    "top_over": Wording(
        label="top, overhang", text="How far does it stand over the front and the sides?", tells="It may be nothing."
    ),
}

CASE_WORDINGS: Mapping[str, Wording] = MappingProxyType(_WITHIN | _DRAWERS | _DOORS_MADE | _AROUND)
"""Key → words."""
