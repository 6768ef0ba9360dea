"""Stable marks: the short names that stand on the wood.

A mark never changes when a plan is made again; measurements and ticks hang on it. The scheme can be read aloud:

- a box, carcase or drawer: a letter, then letters or digits: ``C``, ``K3``, ``D104``;
- a board: its box and its role: ``D3-front`` ("D three front");
- a space of a carcase: its columns and tiers from the outside in: ``C-2.1`` ("C two point one"); what belongs to a
  space is named after the drawer in it, else after the space: ``D3-rail``, ``C-2.1-shelf``;
- a corner joint: its box and J1 to J4, counted round the ring from the first board's end B: ``D3-J1``;
- a board end: the board and A or B: ``D3-front-A``.

Drawers of the only column in a project are D1, D2 … from the top. With more columns the number is the column
and two digits, as rooms are numbered: D101, D102 …, D201; so a drawer added to one column renames none in another.
"""

from __future__ import annotations

import re

from planner.domain.words import End, Role

BOX_MARK = re.compile(r"[A-Z][A-Z0-9]{0,7}")
"""What a mark of a box, carcase or drawer may look like."""

_SUFFIX = {
    Role.BACK_PANEL: "back",
    Role.BOTTOM_PANEL: "bottom",
    Role.APPLIED_FRONT: "face",
    Role.LOOSE_SHELF: "loose",
    Role.BACK_RAIL: "backrail",
    Role.DUST_PANEL: "dust",
    Role.BACK_BOARD: "backboard",
    Role.SEPARATE_TOP: "topboard",
    Role.FRAME_RAIL: "crossrail",
    Role.TOP_PANEL: "toppanel",
    Role.TILL_SIDE: "tillside",
    Role.TILL_BOTTOM: "tillbottom",
    Role.TILL_LID: "tilllid",
    Role.DRAWER_STOP: "stop",
    Role.DOOR_STOP: "doorstop",
    Role.HANGING_RAIL: "hangingrail",
}


def board_mark(box: str, role: Role, number: int | None = None) -> str:
    """Mark of a board: ``board_mark("D3", Role.FRONT)`` is ``D3-front``; a number tells like boards apart."""
    return f"{box}-{_SUFFIX.get(role, role.value)}{'' if number is None else number}"


def joint_mark(box: str, corner: int) -> str:
    """Mark of the corner joint between board ``corner`` and the next one of a ring; corners count from 1."""
    return f"{box}-J{corner}"


def end_mark(board: str, end: End) -> str:
    """Mark of one end of a board."""
    return f"{board}-{end.value}"


def space_mark(carcase: str, path: tuple[int, ...]) -> str:
    """Mark of a space: ``space_mark("C", (2, 1))`` is ``C-2.1``; the whole inside is the carcase itself."""
    return f"{carcase}-{'.'.join(map(str, path))}" if path else carcase


def plinth_mark(carcase: str) -> str:
    """Usual mark of the plinth of a carcase: ``CP``; it may be too long for a mark."""
    return f"{carcase}P"


def drawer_mark(column: int, tier: int, *, only_column: bool) -> str:
    """Usual mark of the drawer ``tier`` from the top (from 1) in ``column`` (from 1, over the whole project)."""
    return f"D{tier}" if only_column else f"D{column}{tier:02d}"


def reading_order(mark: str) -> tuple[tuple[str, int], ...]:
    """Sort key that puts D2 before D10, as a person would."""
    return tuple((text, int(digits or 0)) for text, digits in re.findall(r"([^0-9]+)([0-9]*)", mark))
