"""From rows to what several pieces have: rings with their pins, bottoms, doors and lids by the way they are made."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from planner.domain.bottom import BottomPanel, Slips
from planner.domain.panelled import Made, Panelled, Slab
from planner.domain.ring import Board, Corner, Ring
from planner.domain.spacing import Spacing
from planner.domain.words import Role
from planner.store.carcase_tables import MadeRow
from planner.store.kinds import BoxKind, MadeAs
from planner.store.part_tables import BottomPanelRow, SlipsRow
from planner.store.rows import Rows, gap
from planner.store.tables import BoardRow, BoxRow, CornerJointRow, PinPlaceRow, SpacingRow

_Part = TypeVar("_Part", Board, Corner)
_RING = 4


def ring(rows: Rows, box: BoxRow) -> Ring:
    """A ring with its boards, corners and pins.

    Raises:
        StoreError: something of it is missing.
    """
    rows.maybe(BoxRow, box.id)  # it has its place now
    where = f"box {box.mark!r} (row {box.id})"
    round_it = rows.several(BoardRow, box.id)
    if len(round_it) != _RING:
        raise gap(where, f"has {len(round_it)} boards in the store; a ring has {_RING}.")
    marks = {row.id: row.mark for row in round_it}
    spacing = rows.one(SpacingRow, box.id, None, where=where, what="spacing")
    if box.sled_id not in rows.sleds:
        raise gap(where, f"its sled (row {box.sled_id}) is missing.")
    return rows.value(
        Ring,
        box,
        where,
        kind=BoxKind(box.kind).ring_kind,
        boards=_four(rows.value(Board, row, f"board {row.mark!r}") for row in round_it),
        corners=_four(_corner(rows, row, marks) for row in round_it),
        spacing=_spacing(rows, spacing),
        sled=rows.sleds[box.sled_id].name,
    )


def _corner(rows: Rows, board: BoardRow, marks: dict[int, str]) -> Corner:
    """The corner in which end B of a board is joined; ``marks`` are those of the boards of its ring, by id."""
    where = f"board {board.mark!r}"
    joint = rows.one(CornerJointRow, board.id, where=where, what="joint at end B")
    own = rows.maybe(SpacingRow, board.box_id, joint.id)
    return rows.value(
        Corner,
        joint,
        where,
        board_at_b=board.mark,
        board_at_a=marks.get(joint.board_at_a_id, f"row {joint.board_at_a_id}"),
        spacing=own and _spacing(rows, own),
    )


def _spacing(rows: Rows, row: SpacingRow) -> Spacing:
    places = tuple((place.from_nm, place.to_nm) for place in rows.several(PinPlaceRow, row.id))
    return rows.value(Spacing, row, f"spacing {row.id}", places=places)


def _four(parts_of_ring: Iterable[_Part]) -> tuple[_Part, _Part, _Part, _Part]:
    first, second, third, fourth = parts_of_ring
    return first, second, third, fourth


def bottom(rows: Rows, box: BoxRow, role: Role) -> BottomPanel | None:
    """The bottom of a box or drawer, or the panel that closes a box above."""
    where = f"{role} of {box.mark!r}"
    row = rows.maybe(BottomPanelRow, box.id, role.value)
    if row is None:
        return None
    slips = rows.maybe(SlipsRow, box.id, role.value)
    return rows.value(BottomPanel, row, where, slips=slips and rows.value(Slips, slips, f"slips of {box.mark!r}"))


def made(
    rows: Rows, where: str, *, space_id: int | None = None, box_id: int | None = None, carcase_id: int | None = None
) -> Made:
    """How the doors before a space, the lid of a box or the back of a carcase are made.

    Raises:
        StoreError: nothing says it.
    """
    row = rows.one(MadeRow, space_id, box_id, carcase_id, where=where, what="making")
    if MadeAs(row.kind) is MadeAs.SLAB:
        return rows.value(Slab, row, where)
    return rows.value(Panelled, row, where)
