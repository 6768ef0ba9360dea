"""The pieces that an interview can begin with: what is usual for each, as a maker would type it.

Sizes are pairs, in inches and in millimetres. All of it is common practice, no source; a kind only sets what is usual,
and every question can be answered otherwise.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from planner.intake.interview.asking import Usual


@dataclass(frozen=True, slots=True, kw_only=True)
class Start:
    """A kind of piece.

    Attributes:
        tells: what is meant.
        title: what the piece is called when nothing else is said.
        mark: of its case or box.
        is_case: whether it is a case with spaces, or a box that opens upwards.
        usual: answers by the keys of the questions.
    """

    tells: str
    title: str
    mark: str
    is_case: bool
    usual: Usual


def _case(tells: str, title: str, mark: str, usual: Usual) -> Start:
    return Start(tells=tells, title=title, mark=mark, is_case=True, usual=_CASE | dict(usual))


def _box(tells: str, title: str, mark: str, usual: Usual) -> Start:
    return Start(tells=tells, title=title, mark=mark, is_case=False, usual=_BOX | dict(usual))


_CASE: dict[str, str | tuple[str, str]] = {
    "timber": "ash", "second": "poplar", "sheet": "birch plywood", "thickness": ("3/4 in", "20 mm"),
}  # fmt: skip
_BOX: dict[str, str | tuple[str, str]] = {
    "timber": "walnut", "second": "none", "sheet": "birch plywood", "thickness": ("1/2 in", "12 mm"),
}  # fmt: skip

KINDS: Mapping[str, Start] = MappingProxyType({
    "chest of drawers": _case("one column of drawers on bracket feet", "Chest of drawers", "C", {
        "width": ("32 in", "800 mm"), "height": ("34 in", "850 mm"), "depth": ("18 in", "450 mm"),
        "c1.holds": "drawers", "c1.heights": "step", "handles": "knob",
        "base": "bracket feet", "base_height": ("4 in", "100 mm"),
    }),
    "chest on a stand": _case("small drawers over wide ones, on four legs", "Chest on a stand", "C", {
        "timber": "cherry",
        "width": ("32 in", "800 mm"), "height": ("22 in", "560 mm"), "depth": ("16 in", "400 mm"),
        "c1.holds": "several", "c1.tiers": "3", "c1.heights": "listed",
        "c1.list": ("4 1/2 in, 6 1/4 in, rest", "115 mm, 160 mm, rest"),
        "c1.t1.tier_holds": "side by side", "c1.t1.columns": "2",
        "between": "web frames", "dust_panels": "yes", "front": "half-blind", "handles": "knob",
        "back": "frame and panel", "top": "yes",
        "base": "stand", "base_height": ("16 in", "400 mm"), "setback": ("-1/4 in", "-6 mm"),
    }),
    "bench cabinet": _case("two columns of drawers, to stand under a bench", "Bench cabinet", "B", {
        "timber": "beech",
        "width": ("38 in", "960 mm"), "height": ("30 in", "760 mm"), "depth": ("20 in", "520 mm"),
        "columns": "2", "c1.holds": "drawers", "c1.drawers": "3", "c1.heights": "ratio", "c1.ratio": "1.25",
        "c2.holds": "drawers", "c2.drawers": "4", "handles": "pull",
    }),
    "cabinet with doors": _case("a pair of doors before shelves, on a plinth", "Cabinet", "C", {
        "timber": "oak",
        "width": ("36 in", "900 mm"), "height": ("32 in", "800 mm"), "depth": ("16 in", "400 mm"),
        "whole_doors": "pair", "c1.holds": "loose shelves", "c1.shelves": "2", "base": "plinth",
    }),
    "wall cabinet": _case("a pair of doors before shelves, two small drawers below", "Wall cabinet", "W", {
        "timber": "oak", "thickness": ("3/4 in", "18 mm"),
        "width": ("24 in", "620 mm"), "height": ("28 in", "700 mm"), "depth": ("9 in", "220 mm"),
        "c1.holds": "several", "c1.tiers": "2", "c1.heights": "listed", "c1.list": ("rest, 4 1/2 in", "rest, 110 mm"),
        "c1.t1.tier_holds": "loose shelves", "c1.t1.shelves": "2", "c1.t1.doors": "pair",
        "c1.t2.tier_holds": "side by side", "c1.t2.columns": "2",
        "between": "shelves", "shelf_joint": "housing", "handles": "knob", "pins_on": "top and bottom",
    }),
    "bookcase": _case("open, with fixed shelves, on a plinth", "Bookcase", "B", {
        "width": ("34 in", "850 mm"), "height": ("48 in", "1200 mm"), "depth": ("11 in", "280 mm"),
        "c1.holds": "fixed shelves", "c1.shelves": "3", "c1.heights": "step", "c1.step": ("1 in", "25 mm"),
        "shelf_joint": "stopped housing", "back": "boards", "base": "plinth",
    }),
    "sideboard": _case("drawers in the middle, a drawer over a door at each end", "Sideboard", "S", {
        "timber": "oak",
        "width": ("60 in", "1500 mm"), "height": ("31 in", "780 mm"), "depth": ("18 in", "450 mm"),
        "columns": "3", "equal_widths": "no", "widths": ("17 in, rest, 17 in", "420 mm, rest, 420 mm"),
        "c1.holds": "several", "c1.tiers": "2", "c1.heights": "listed", "c1.list": ("6 in, rest", "150 mm, rest"),
        "c1.t1.tier_holds": "drawer", "c1.t2.tier_holds": "loose shelves", "c1.t2.doors": "left",
        "c2.holds": "drawers", "c2.drawers": "4", "c2.heights": "step",
        "c3.holds": "several", "c3.tiers": "2", "c3.heights": "listed", "c3.list": ("6 in, rest", "150 mm, rest"),
        "c3.t1.tier_holds": "drawer", "c3.t2.tier_holds": "loose shelves", "c3.t2.doors": "right",
        "front": "applied", "handles": "pull", "base": "bracket feet",
    }),
    "tool chest": _case("shallow drawers that hang on their sides", "Tool chest", "T", {
        "timber": "maple",
        "width": ("24 in", "600 mm"), "height": ("26 in", "660 mm"), "depth": ("13 in", "330 mm"),
        "c1.holds": "drawers", "c1.drawers": "7", "c1.heights": "ratio", "c1.ratio": "1.12", "between": "nothing",
        "second": "none", "handles": "knob",
    }),
    "cabinet of small drawers": _case("columns of small drawers, all alike", "Cabinet of drawers", "C", {
        "width": ("40 in", "1000 mm"), "height": ("30 in", "760 mm"), "depth": ("12 in", "300 mm"),
        "columns": "4", "c1.holds": "drawers", "c1.drawers": "6", "c1.heights": "equal", "handles": "knob",
        "base": "plinth",
    }),
    "blanket chest": _box("a long chest with a till and a framed lid", "Blanket chest", "K", {
        "timber": "pine", "second": "cedar", "sheet": "none", "thickness": ("7/8 in", "22 mm"),
        "box_length": ("40 in", "1000 mm"), "box_width": ("19 in", "480 mm"), "box_height": ("18 in", "450 mm"),
        "lid": "frame and panel", "till": "yes", "till_lid": "yes",
    }),
    "box with a lid": _box("its lid is sawn off the closed box", "Box", "B", {
        "box_length": ("12 in", "300 mm"), "box_width": ("9 in", "220 mm"), "box_height": ("6 in", "150 mm"),
        "lid": "sawn off",
    }),
    "boxes all alike": _box("any number of open boxes or trays", "Boxes", "K", {
        "over": "inside", "count": "6",
        "box_length": ("9 in", "230 mm"), "box_width": ("6 1/2 in", "160 mm"), "box_height": ("3 in", "75 mm"),
    }),
    "nest of boxes": _box("boxes that stand in each other", "Nest of boxes", "N", {
        "thickness": ("3/8 in", "10 mm"),
        "box_length": ("16 in", "420 mm"), "box_width": ("12 in", "300 mm"), "box_height": ("7 in", "180 mm"),
        "nest": "4",
    }),
})  # fmt: skip
"""What a maker may want to make → how it begins."""

FIRST = "chest of drawers"
"""The one that is usual when nothing is said."""
