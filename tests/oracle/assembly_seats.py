"""Where each cut says that its guest lies: a seat in the host, and what of the guest goes into it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from planner.domain.plan import Feature
from planner.domain.words import End, FeatureKind, Role, Surface
from tests.oracle.assembly_bench import Bench, Chunk, Plank
from tests.oracle.assembly_fit import Puzzle
from tests.oracle.assembly_space import (
    AXIS_NAMES,
    UP,
    Block,
    Way,
    against,
    hull,
    meet,
    reach,
    size,
    slab,
    spanned,
)

Woods = Mapping[str, Sequence[Chunk]]
"""What each board is made of, its blank beginning at nothing."""


@dataclass(frozen=True, slots=True)
class Seat:
    """A cut with its guest.

    Attributes:
        block: what is cleared in the host's turned blank.
        way: where the guest's leading side looks: into the host.
        floor: whether host wood ends it there.
        part: what of the guest's turned blank goes in, perhaps one of several tenons; None when nothing does.
    """

    host: Plank
    guest: Plank
    cut: Feature
    block: Block
    way: Way
    floor: bool
    part: Block | None

    @property
    def why(self) -> str:
        """The cut, as a finding names it."""
        return f"{self.cut.kind} in {self.host.mark} for {self.guest.mark}"

    def fills(self, axis: int) -> bool:
        """Whether all that goes in finds place along an axis across the way in."""
        return self.part is not None and size(self.part, axis) <= size(self.block, axis)


def normal(plank: Plank, surface: Surface) -> Way:
    """The way a surface looks."""
    turn = plank.turn
    return {
        Surface.OUTSIDE: against(turn.y),
        Surface.INSIDE: turn.y,
        Surface.REFERENCE_EDGE: against(turn.u),
        Surface.FAR_EDGE: turn.u,
        Surface.END_A: against(turn.x),
        Surface.END_B: turn.x,
    }[surface]


def seats(bench: Bench, woods: Woods) -> list[Seat]:
    """Every cut with each board that goes into it; cuts for boards of another box are no part of a glue-up."""
    found: list[Seat] = []
    for host in bench.planks.values():
        for cut in host.cuts:
            if cut.kind not in {FeatureKind.TENON, FeatureKind.NOTCH, FeatureKind.HOLE}:
                each = [_seat(host, guest, cut, woods) for guest in guests(bench, host, cut)]
                found += [seat for seat in each if seat is not None]
    return list(_tenon_by_tenon(found))


def guests(bench: Bench, host: Plank, cut: Feature) -> list[Plank]:
    """The boards that go into a cut; a groove or rabbet that several share is named after the first of them.

    Boards of a back overlap each other, and neither goes into the other: their lap says where they are.
    """
    first = bench.planks.get(cut.takes)
    if first is None or first.box != host.box or {first.role, host.role} == {Role.BACK_BOARD}:
        return []
    kin = [plank for plank in bench.planks.values() if plank.owner == first.owner and plank.box == host.box]
    if cut.kind is FeatureKind.GROOVE and host.owner == first.owner:
        if host.role in {Role.RAIL, Role.BACK_RAIL}:
            return [plank for plank in kin if plank.role in {Role.RUNNER, Role.DUST_PANEL}]
        if host.role in {Role.STILE, Role.FRAME_RAIL} and first.role is Role.PANEL:
            return _in_frame_groove(host, first, kin)
    if cut.kind is FeatureKind.RABBET and normal(host, cut.face)[0] == UP:
        if first.role is Role.BACK_BOARD:
            return [plank for plank in kin if plank.role is Role.BACK_BOARD]
        if first.role is Role.STILE:
            return [plank for plank in kin if plank.role is Role.STILE]
    return [first]


def number(plank: Plank) -> int:
    """The number in a mark, from 1."""
    digits = plank.mark[len(plank.mark.rstrip("0123456789")) :]
    return int(digits or 1)


def frame_rows(kin: Sequence[Plank]) -> int:
    """How many rows of panels a frame has: one less than rails."""
    return sum(plank.role is Role.FRAME_RAIL for plank in kin) - 1


def _in_frame_groove(host: Plank, first: Plank, kin: Sequence[Plank]) -> list[Plank]:
    """Panels are numbered across from stile 1, then along from the first rail; muntins likewise."""
    rows = frame_rows(kin)
    panels = sum(plank.role is Role.PANEL for plank in kin)
    wide = panels // rows
    row, column = divmod(number(first) - 1, wide)
    if host.role is Role.STILE:
        mortised = {cut.takes for cut in host.cuts if cut.kind is FeatureKind.MORTISE}
        rails = [p for p in kin if p.role is Role.FRAME_RAIL and p.mark not in mortised]
        return [*rails, *(p for p in kin if p.role is Role.PANEL and (number(p) - 1) % wide == column)]
    muntins = [p for p in kin if p.role is Role.MUNTIN and (number(p) - 1) // (wide - 1) == row]
    return [*muntins, *(p for p in kin if p.role is Role.PANEL and (number(p) - 1) // wide == row)]


RING = frozenset({Role.FRONT, Role.RIGHT, Role.BACK, Role.LEFT, Role.TOP, Role.BOTTOM})
"""Boards of a ring."""


def _way_in(host: Plank, guest: Plank, cut: Feature) -> Way:
    """Into the face that is cut. A cut right through may be made from either face: then the guest tells.

    What goes into a board of a ring comes from within it; into others goes the end whose label says so.
    """
    way = against(normal(host, cut.face))
    if cut.y != host.spans()[2] or cut.kind not in {FeatureKind.HOUSING, FeatureKind.MORTISE}:
        return way
    if host.role in RING:
        return against(host.turn.y)
    ends = [end for end, hosts in guest.goes_into.items() if host.mark in hosts]
    if len(ends) != 1:
        return way
    return guest.turn.x if ends[0] is End.B else against(guest.turn.x)


def _seat(host: Plank, guest: Plank, cut: Feature, woods: Woods) -> Seat | None:
    """None where nothing is left of the cut once the host is planed."""
    block = meet(host.in_piece((cut.x, cut.u, cut.y)), hull(chunk for chunk, _ in woods[host.mark]))
    if block is None:
        return None
    way = _way_in(host, guest, cut)
    beyond = slab(block, way, 1)
    floor = any(meet(chunk, beyond) for chunk, _ in woods[host.mark])
    return Seat(host, guest, cut, block, way, floor, _going_in(woods[guest.mark], way, size(block, way[0])))


def _going_in(wood: Sequence[Chunk], way: Way, depth: int) -> Block | None:
    """The hull of what of a board is within a depth behind its leading side."""
    whole = hull(chunk for chunk, _ in wood)
    tip = reach(whole, way)
    zone = spanned(whole, way[0], (tip - depth, tip) if way[1] > 0 else (tip, tip + depth))
    parts = [part for chunk, _ in wood if (part := meet(chunk, zone))]
    return hull(parts) if parts else None


def _tenon_by_tenon(found: Sequence[Seat]) -> Iterator[Seat]:
    """Where a host has a mortise for each of several tenons, each gets its own, in order."""
    groups = defaultdict[tuple[str, str, Way], list[Seat]](list)
    for seat in found:
        groups[seat.host.mark, seat.guest.mark, seat.way].append(seat)
    for group in groups.values():
        tenons = _tenon_blocks(group[0])
        mortises = [seat for seat in group if seat.cut.kind is FeatureKind.MORTISE]
        if len(tenons) > 1 and len(tenons) == len(mortises) == len(group):
            for seat, tenon in zip(sorted(group, key=lambda each: each.block), sorted(tenons), strict=True):
                part = _going_in([(tenon, None)], seat.way, size(seat.block, seat.way[0]))
                yield Seat(seat.host, seat.guest, seat.cut, seat.block, seat.way, seat.floor, part)
        else:
            yield from group


def leading_end(seat: Seat) -> End | None:
    """The guest's end that goes in first; None when an edge or a face does."""
    return {seat.guest.turn.x: End.B, against(seat.guest.turn.x): End.A}.get(seat.way)


def _tenon_blocks(seat: Seat) -> list[Block]:
    end = leading_end(seat)
    if end is None:
        return []
    return [seat.guest.in_piece((cut.x, cut.u, cut.y)) for cut in seat.guest.tenons(end)]


def bound_by(seat: Seat, puzzles: Sequence[Puzzle], woods: Woods) -> None:
    """Add what a seat says: across the way in, the guest's part lies within; along it, it stops at the floor."""
    host, guest = seat.host.mark, seat.guest.mark
    axis = seat.way[0]
    tip = reach(hull(chunk for chunk, _ in woods[guest]), seat.way)
    if seat.floor:
        home = reach(seat.block, seat.way) - tip
        _stop(puzzles[axis], seat, home, f"floor of the {seat.why}", tight=driven_home(seat))
    tenons = _tenon_blocks(seat)
    if tenons:
        shoulder = reach(hull(tenons), against(seat.way))
        face = reach(seat.host.blank(), against(seat.way))
        _stop(puzzles[axis], seat, face - shoulder, f"shoulder of {guest} at the {seat.why}", tight=True)
    for across in {0, 1, 2} - {axis}:
        if seat.part is not None and seat.fills(across):
            low, high = (seat.block[across][end] - seat.part[across][end] for end in (0, 1))
            puzzles[across].within(host, guest, (low, high), f"{seat.why}, {AXIS_NAMES[across]}")


def driven_home(seat: Seat) -> bool:
    """Whether the guest is pushed to the floor at glue-up: in housings, and in the rabbets of a ring's corners.

    What a partition stands in goes along the grain of a frame's runner, and is called a groove there.
    """
    kind = seat.cut.kind
    if kind is FeatureKind.GROOVE:
        return seat.guest.role is Role.PARTITION
    return kind is FeatureKind.HOUSING or (kind is FeatureKind.RABBET and seat.guest.role in RING)


def _stop(puzzle: Puzzle, seat: Seat, offset: int, why: str, *, tight: bool) -> None:
    room = (offset, offset) if tight else (None, offset) if seat.way[1] > 0 else (offset, None)
    puzzle.within(seat.host.mark, seat.guest.mark, room, why)


def bound_together(
    found: Iterable[Seat], puzzles: Sequence[Puzzle], places: Mapping[str, Sequence[int | None]]
) -> bool:
    """Where several hosts take one side of a guest, their cuts together bound it; True when that said anything.

    Args:
        found: all seats.
        puzzles: bounds for each axis.
        places: of each board, on each axis, where it is, or None where that is not yet exact.
    """
    groups = defaultdict[tuple[str, Way], list[Seat]](list)
    for seat in found:
        if driven_home(seat) or seat.cut.kind is FeatureKind.MORTISE:
            groups[seat.guest.mark, seat.way].append(seat)
    said = False
    for (guest, way), group in groups.items():
        for axis in {0, 1, 2} - {way[0]}:
            known = [(places[seat.host.mark][axis], seat) for seat in group]
            if len(group) < 2 or any(seat.fills(axis) for seat in group) or places[guest][axis] is not None:
                continue
            blocks = [
                (at + seat.block[axis][0], at + seat.block[axis][1], seat) for at, seat in known if at is not None
            ]
            part = group[0].part
            if len(blocks) < len(group) or part is None:
                continue
            first, last = min(blocks, key=lambda each: each[0]), max(blocks, key=lambda each: each[1])
            if last[1] - first[0] < size(part, axis):
                continue
            why = f"housings for {guest}, {AXIS_NAMES[axis]}"
            puzzles[axis].within(first[2].host.mark, guest, (first[2].block[axis][0] - part[axis][0], None), why)
            puzzles[axis].within(last[2].host.mark, guest, (None, last[2].block[axis][1] - part[axis][1]), why)
            said = True
    return said
