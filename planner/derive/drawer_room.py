"""The room in drawers: from the bottom to what is above the drawer, within its four boards."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from planner.domain.drawer import Drawer
from planner.domain.marks import board_mark
from planner.domain.plan import BoardSize, OpeningSize
from planner.domain.solid import Solid
from planner.domain.words import Role
from planner.lengths import Nm


def drawer_rooms(boards: Mapping[str, BoardSize], openings: Sequence[OpeningSize]) -> dict[str, Solid]:
    """What each drawer with a bottom can hold, shut, up to the lowest thing above it; by the drawers' marks."""
    return {
        opening.drawer: _room(boards, opening, opening.space.holds)
        for opening in openings
        if opening.drawer and isinstance(opening.space.holds, Drawer) and opening.space.holds.bottom
    }


def _room(boards: Mapping[str, BoardSize], opening: OpeningSize, drawer: Drawer) -> Solid:
    front, right, back, left = (boards[board.mark].place for board in drawer.ring.boards)
    bottom = boards[board_mark(drawer.ring.mark, Role.BOTTOM_PANEL)].place
    return Solid(
        right=(left.right[1], right.right[0]),
        back=(front.back[1], back.back[0]),
        up=(bottom.up[1], Nm(max(opening.place.up[1], bottom.up[1]))),
    )
