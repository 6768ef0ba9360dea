"""What the maker asked for, as far as it says where a part goes or how much play it has, and the rules of the trade.

Parts that no cut holds are glued or laid where the maker's word puts them: slips to a drawer's sides, boards of a back
over each other by their lap, rails of a frame flush with the ends of its stiles.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from planner.domain.bottom import BottomPanel
from planner.domain.box import SawnLid
from planner.domain.carcase import BoardedBack, Carcase, PanelledBack
from planner.domain.marks import board_mark, space_mark
from planner.domain.panelled import Made, Panelled
from planner.domain.project import Project
from planner.domain.space import Division, Space
from planner.domain.words import BottomGoes, FeatureKind, HeightRule, Role, Surface
from planner.lengths import Grid, Unit, on_grid, read_length
from tests.oracle.assembly_bench import Bench, Plank
from tests.oracle.assembly_fit import Puzzle
from tests.oracle.assembly_seats import Seat, frame_rows, number
from tests.oracle.assembly_space import BACK, RIGHT, UP, WAYS, against, reach, size

Play = tuple[int, int, int]
"""How far a part may be moved in its cuts, along each axis."""

TIGHT: Play = (0, 0, 0)

TILL_LID_PLAY = {Unit.INCH: read_length("1/32", Unit.INCH), Unit.MM: read_length("1", Unit.MM)}
"""Space before a till's lid and behind it: common practice, no source."""


def piece_of(project: Project) -> dict[str, str]:
    """Mark of the piece that each box, carcase, plinth or drawer belongs to."""
    found = {box.ring.mark: box.ring.mark for box in project.boxes}
    for carcase in project.carcases:
        mark = carcase.ring.mark
        found[mark] = mark
        found |= {drawer.ring.mark: mark for drawer in carcase.drawers()}
        base = carcase.base
        if base is not None and hasattr(base, "ring"):
            found[base.ring.mark] = mark
    return found


def plays(bench: Bench) -> dict[str, Play]:
    """Play asked for, by board; boards that aren't named fit tightly."""
    found: dict[str, Play] = {}
    for ring, bottom in bench.project.bottoms():
        found[board_mark(ring.mark, Role.BOTTOM_PANEL)] = _of_bottom(bottom)
    for box in bench.project.boxes:
        if box.till:
            play = 2 * TILL_LID_PLAY[bench.project.unit]
            found[board_mark(box.ring.mark, Role.TILL_LID)] = (0, play, 0)
        if isinstance(box.lid, SawnLid):
            found[board_mark(box.ring.mark, Role.TOP_PANEL)] = _of_bottom(box.lid.top)
        elif box.lid is not None:
            found |= _of_panels(bench, box.lid.made, board_mark(box.ring.mark, Role.LID), (RIGHT, BACK))
    for carcase in bench.project.carcases:
        found |= _in_carcase(bench, carcase)
    return found


def _of_bottom(bottom: BottomPanel) -> Play:
    behind = 0 if bottom.goes is BottomGoes.SLID_IN else bottom.play_nm
    return (bottom.play_nm, behind, 0)


def _in_carcase(bench: Bench, carcase: Carcase) -> Iterator[tuple[str, Play]]:
    mark, back = carcase.ring.mark, carcase.back
    kin = [plank for plank in bench.planks.values() if plank.box == mark]
    if carcase.frames and carcase.frames.dust_panel:
        play = carcase.frames.play_nm
        yield from ((plank.mark, (play, play, 0)) for plank in kin if plank.role is Role.DUST_PANEL)
    if back:
        play, whole = back.play_nm, board_mark(mark, Role.BACK_PANEL)
        boards = [p for p in kin if p.role is Role.BACK_BOARD or p.mark == whole or p.mark.startswith(f"{whole}-")]
        yield from ((plank.mark, (play, 0, play)) for plank in boards)
        if isinstance(back, PanelledBack):
            yield from _of_panels(bench, back.made, whole, (RIGHT, UP), beyond=play)
    for path, space in spaces(carcase.inside):
        if space.doors:
            yield from _of_panels(bench, space.doors.made, f"{space_mark(mark, path)}-door", (RIGHT, UP))


def _of_panels(
    bench: Bench, made: Made, whole: str, axes: tuple[int, int], *, beyond: int = 0
) -> Iterator[tuple[str, Play]]:
    if not isinstance(made, Panelled):
        return
    play = tuple(made.play_nm + beyond if axis in axes else 0 for axis in (RIGHT, BACK, UP))
    for plank in bench.planks.values():
        if plank.role is Role.PANEL and plank.mark.startswith(whole):
            yield plank.mark, (play[0], play[1], play[2])


def spaces(space: Space, path: tuple[int, ...] = ()) -> Iterator[tuple[tuple[int, ...], Space]]:
    """Every space of a carcase with its path."""
    yield path, space
    if isinstance(space.holds, Division):
        for count, inner in enumerate(space.holds.spaces, 1):
            yield from spaces(inner, (*path, count))


def bound_by_trade(bench: Bench, seats: Sequence[Seat], puzzles: Sequence[Puzzle]) -> None:
    """Add what the trade says of parts that no cut holds."""
    families = defaultdict[str, list[Plank]](list)
    for plank in bench.planks.values():
        if plank.role is Role.SLIP:
            _slip(bench, plank, puzzles)
        elif plank.role is Role.TILL_LID:
            _on_pins(bench, plank, puzzles)
        elif plank.role in {Role.BACK_BOARD, Role.STILE, Role.FRAME_RAIL, Role.MUNTIN, Role.PANEL}:
            families[plank.owner].append(plank)
    _slid_in(bench, puzzles[BACK])
    laps = {c.ring.mark: c.back.lap_nm for c in bench.project.carcases if isinstance(c.back, BoardedBack)}
    for owner, kin in families.items():
        if kin[0].role is Role.BACK_BOARD:
            _overlapping(sorted(kin, key=number), laps[owner], puzzles[RIGHT])
        else:
            _framed(kin, puzzles)
            _spread(kin, bench, seats, puzzles)


def _slid_in(bench: Bench, puzzle: Puzzle) -> None:
    """A bottom slid in from behind ends flush with the outside of the back, under which it is screwed."""
    for ring, bottom in bench.project.bottoms():
        if bottom.goes is BottomGoes.SLID_IN:
            back, panel = (bench.planks[board_mark(ring.mark, role)] for role in (Role.BACK, Role.BOTTOM_PANEL))
            offset = size(back.blank(), BACK) - size(panel.blank(), BACK)
            puzzle.exactly(back.mark, panel.mark, offset, "slid-in bottom flush with the back")


def _slip(bench: Bench, slip: Plank, puzzles: Sequence[Puzzle]) -> None:
    """Glued to the inside of the side that it looks to, down to its bottom edge, close up to the front."""
    ring = {p.role: p for p in bench.planks.values() if p.box == slip.box}
    out = against(slip.turn.y)
    side = ring[Role.RIGHT if out == WAYS["right"] else Role.LEFT]
    inside = reach(side.blank(), against(out)) if side.turn.y == against(out) else None
    assert inside is not None, "a slip lies on the inside of its side"
    puzzles[RIGHT].exactly(side.mark, slip.mark, inside - reach(slip.blank(), out), "slip on its side")
    puzzles[UP].exactly(side.mark, slip.mark, 0, "slip at the bottom edge")
    puzzles[BACK].exactly(ring[Role.FRONT].mark, slip.mark, size(ring[Role.FRONT].blank(), BACK), "slip at the front")


def _on_pins(bench: Bench, lid: Plank, puzzles: Sequence[Puzzle]) -> None:
    """A till's lid swings on pins in line with the holes of front and back, as far from the one as from the other."""
    holes = [(host, cut) for host in bench.planks.values() for cut in host.cuts if cut.takes == lid.mark]
    own = {cut.face: cut for cut in lid.cuts if cut.kind is FeatureKind.HOLE}
    for host, cut in holes:
        block = host.in_piece((cut.x, cut.u, cut.y))
        mine = own[Surface.END_A if host.role is Role.FRONT else Surface.END_B]
        pin = lid.in_piece((mine.x, mine.u, mine.y))
        for axis in (RIGHT, UP):
            for side in (0, 1):
                puzzles[axis].exactly(host.mark, lid.mark, block[axis][side] - pin[axis][side], f"pin of {lid.mark}")
    front, back = (next(host for host, _ in holes if host.role is role) for role in (Role.FRONT, Role.BACK))
    room = (size(front.blank(), BACK), None)
    puzzles[BACK].within(front.mark, lid.mark, room, f"{lid.mark} behind {front.mark}")
    puzzles[BACK].within(back.mark, lid.mark, (None, -size(lid.blank(), BACK)), f"{lid.mark} before {back.mark}")


def _overlapping(boards: Sequence[Plank], lap: int, puzzle: Puzzle) -> None:
    """Numbered from the left as seen from behind; each overlaps the next by the lap."""
    for one, other in pairwise(boards):
        puzzle.exactly(one.mark, other.mark, lap - size(other.blank(), RIGHT), "lap of the back")


def _framed(kin: Sequence[Plank], puzzles: Sequence[Puzzle]) -> None:
    """The outer rails are flush with the ends of the stiles; rail 1 is at end A."""
    stiles = [plank for plank in kin if plank.role is Role.STILE]
    rails = sorted((plank for plank in kin if plank.role is Role.FRAME_RAIL), key=number)
    assert len(rails) == frame_rows(kin) + 1
    for stile in stiles:
        for rail, way in ((rails[0], against(stile.turn.x)), (rails[-1], stile.turn.x)):
            offset = reach(stile.blank(), way) - reach(rail.blank(), way)
            puzzles[way[0]].exactly(stile.mark, rail.mark, offset, f"{rail.mark} flush with {stile.mark}")


def _spread(kin: Sequence[Plank], bench: Bench, seats: Sequence[Seat], puzzles: Sequence[Puzzle]) -> None:
    """What holds a panel on two sides is as far apart as the panel and its play: it serves as the measure."""
    owner, play = kin[0].owner, _panel_play(bench, kin[0].owner)
    for panel in (plank for plank in kin if plank.role is Role.PANEL):
        held = [seat for seat in seats if seat.guest.mark == panel.mark and seat.host.owner == owner and seat.floor]
        for axis in range(3):
            sides = {seat.way[1]: seat for seat in held if seat.way[0] == axis}
            if len(sides) == 2:
                low, high = sides[-1], sides[1]
                apart = size(panel.blank(), axis) + play
                offset = apart + reach(low.block, low.way) - reach(high.block, high.way)
                puzzles[axis].exactly(low.host.mark, high.host.mark, offset, f"{panel.mark} and its play between")


def _panel_play(bench: Bench, owner: str) -> int:
    """Play of the panels of one door, back or lid."""
    mades: dict[str, Made] = {}
    for box in bench.project.boxes:
        if box.lid is not None and not isinstance(box.lid, SawnLid):
            mades[board_mark(box.ring.mark, Role.LID)] = box.lid.made
    for carcase in bench.project.carcases:
        mark = carcase.ring.mark
        if isinstance(carcase.back, PanelledBack):
            mades[board_mark(mark, Role.BACK_PANEL)] = carcase.back.made
        for path, space in spaces(carcase.inside):
            if space.doors:
                mades |= {f"{space_mark(mark, path)}-door{leaf}": space.doors.made for leaf in ("", "1", "2")}
    made = mades[owner]
    assert isinstance(made, Panelled)
    return made.play_nm


def shares(division: Division, clear: int, grid: Grid) -> list[tuple[int, bool]]:
    """What each space should measure, and whether it takes what rounding to the rule's step leaves.

    Sizes said stand as said; the others share the rest by their weights, or grow by the step or the ratio.
    """
    count, step = len(division.spaces), division.step_nm or 0
    if division.rule is HeightRule.STEP:
        first = Fraction(2 * clear - step * count * (count - 1), 2 * count)
        return _to_the_grid([first + step * n for n in range(count)], grid)
    if division.rule is HeightRule.RATIO:
        weights = [Fraction(division.ratio or 1) ** n for n in range(count)]
        return _to_the_grid([clear * weight / sum(weights) for weight in weights], grid)
    open_ones = [space for space in division.spaces if space.size_nm is None]
    rest = clear - sum(space.size_nm or 0 for space in division.spaces)
    shared = _to_the_grid([rest * each.share / sum(s.share for s in open_ones) for each in open_ones], grid)
    waiting = iter(shared)
    return [next(waiting) if space.size_nm is None else (space.size_nm, False) for space in division.spaces]


def _to_the_grid(ideal: Sequence[Fraction], grid: Grid) -> list[tuple[int, bool]]:
    if not ideal:
        return []
    rounded = [int(on_grid(round(each), grid)) for each in ideal[:-1]]
    return [*((each, False) for each in rounded), (int(sum(ideal)) - sum(rounded), True)]
