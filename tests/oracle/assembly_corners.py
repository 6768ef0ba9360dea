"""Dovetailed corners as they close at the bench: where the baselines bring the boards, and whose wood is where.

Pins are narrow on the outside face of the pin board (in a half-blind joint, at the lap) and gain 1/slope on each side
for each unit of depth. All of it is exact: whole numbers and fractions.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from planner.domain.plan import Joint
from planner.domain.words import End
from tests.oracle.assembly_bench import Bench, Plank, Shared
from tests.oracle.assembly_fit import Puzzle
from tests.oracle.assembly_space import AXIS_NAMES, Block, Place, Way, against, meet

Strip = tuple[Fraction, Fraction]


def bound_by_joint(bench: Bench, joint: Joint, puzzles: Sequence[Puzzle]) -> Iterator[str]:
    """Bring two boards together at a corner; yields what their labels or marks don't let come together.

    The tail board's inside face comes to the pins' baseline, the pin board's inside face to the tails', and the
    reference edges into one plane, or as far apart as the tail board is marked.
    """
    pin, tail = bench.planks[joint.pin_board], bench.planks[joint.tail_board]
    pin_way = pin.turn.x if joint.pin_end is End.B else against(pin.turn.x)
    tail_way = tail.turn.x if joint.tail_end is End.B else against(tail.turn.x)
    if pin_way != against(tail.turn.y) or tail_way != against(pin.turn.y) or pin.turn.u != tail.turn.u:
        yield f"{joint.mark}: end {joint.pin_end} of {pin.mark} does not meet end {joint.tail_end} of {tail.mark}"
        return
    why = f"corner {joint.mark}"
    inside_of_tail = _from_end(pin, joint.pin_end, joint.bit_height_nm)
    _flush(puzzles, (pin, inside_of_tail), (tail, _inside_face(tail)), pin_way[0], why)
    inside_of_pin = _from_end(tail, joint.tail_end, joint.tail_baseline_nm)
    _flush(puzzles, (tail, inside_of_pin), (pin, _inside_face(pin)), tail_way[0], why)
    begins = _plane(tail, tail.turn.u, joint.tail_from_nm)
    _flush(puzzles, (tail, begins), (pin, _plane(pin, pin.turn.u, 0)), pin.turn.u[0], why)


def _flush(puzzles: Sequence[Puzzle], one: tuple[Plank, int], other: tuple[Plank, int], axis: int, why: str) -> None:
    """A plane of one board and a plane of another are the same plane."""
    puzzles[axis].exactly(one[0].mark, other[0].mark, one[1] - other[1], f"{why}, {AXIS_NAMES[axis]}")


def _plane(plank: Plank, way: Way, distance: int) -> int:
    """Place of a plane at a distance from the side where a way begins."""
    low, high = plank.blank()[way[0]]
    return low + distance if way[1] > 0 else high - distance


def _from_end(plank: Plank, end: End, distance: int) -> int:
    return _plane(plank, plank.turn.x if end is End.A else against(plank.turn.x), distance)


def _inside_face(plank: Plank) -> int:
    return _plane(plank, plank.turn.y, plank.sizes[2])


def open_corner(bench: Bench, joint: Joint) -> Iterator[str]:
    """Why a corner doesn't close: pins and tails must fill its whole width, each place once, at every depth.

    On the pins' narrow side, on the inside face and half way the places are compared exactly; between these, sides are
    straight.
    """
    width, depth = bench.planks[joint.pin_board].sizes[1], bench.planks[joint.pin_board].sizes[2] - joint.lap_nm
    if (joint.pin_thickness_nm, joint.tail_thickness_nm, joint.width_nm) != (
        bench.planks[joint.pin_board].sizes[2],
        bench.planks[joint.tail_board].sizes[2],
        width,
    ):
        yield f"{joint.mark}: laid out for boards of another size"
    if joint.tail_from_nm < 0 or joint.tail_from_nm + width > bench.planks[joint.tail_board].sizes[1]:
        yield f"{joint.mark}: reaches past an edge of {joint.tail_board}"
    for at in (Fraction(0), Fraction(depth, 2), Fraction(depth)):
        strips = sorted([*pins_at(joint, at, width), *tails_at(joint, at)])
        if any(start >= stop for start, stop in strips):
            yield f"{joint.mark}: a pin or tail comes to nothing {float(at):.0f} nm deep"
        ends = [Fraction(0), *(stop for _, stop in strips)]
        starts = [*(start for start, _ in strips), Fraction(width)]
        if ends != starts:
            yield f"{joint.mark}: pins and tails leave a gap or overlap {float(at):.0f} nm deep"
            return


def pins_at(joint: Joint, depth: Fraction, width: int) -> list[Strip]:
    """Where the pins are at a depth from their narrow side."""
    gain = depth / Fraction(joint.slope)
    return [(max(Fraction(0), start - gain), min(Fraction(width), stop + gain)) for start, stop in joint.pins]


def tails_at(joint: Joint, depth: Fraction) -> list[Strip]:
    """Where the tails are at a depth from their ends, as they are traced and sawn."""
    gain = depth / Fraction(joint.slope)
    return [(start + gain, stop - gain) for start, stop in joint.tails]


@dataclass(frozen=True, slots=True)
class Corners:
    """The corners of assembled rings.

    Attributes:
        places: where each board's turned blank begins.
    """

    bench: Bench
    places: Mapping[str, Place]

    def has_wood(self, shared: Shared, block: Block) -> bool:
        """Whether a block of a corner holds any wood of the pins (or of the tails) of that corner."""
        joint = shared.joint
        pin = self.bench.planks[joint.pin_board]
        u = self._span(pin, pin.turn.u, block)
        y = self._span(pin, pin.turn.y, block)
        width = pin.sizes[1]
        if shared.pins:
            strips = pins_at(joint, Fraction(y[1] - joint.lap_nm), width)
        else:
            strips = tails_at(joint, Fraction(y[0] - joint.lap_nm))
        return any(start < u[1] and u[0] < stop for start, stop in strips)

    def _span(self, plank: Plank, way: Way, block: Block) -> tuple[int, int]:
        """From where to where a block reaches in a board's own frame, along one of its directions."""
        axis, sign = way
        begin = self.places[plank.mark][axis]
        low, high = plank.blank()[axis]
        start, stop = block[axis]
        if sign > 0:
            return start - begin - low, stop - begin - low
        return begin + high - stop, begin + high - start

    def clash(self, one: tuple[Block, Shared | None], other: tuple[Block, Shared | None]) -> Block | None:
        """Where two chunks of wood of different boards are both wood; None when nowhere.

        Pins and tails of one corner are compared in ``open_corner``.
        """
        both = meet(one[0], other[0])
        if both is None:
            return None
        marks = [shared for _, shared in (one, other) if shared is not None]
        if len(marks) == 2 and marks[0].joint is marks[1].joint and marks[0].pins is not marks[1].pins:
            return None
        return both if all(self.has_wood(shared, both) for shared in marks) else None


def in_order(joint: Joint) -> bool:
    """Whether the pins stand in order between the edges, half-pins at both."""
    spans = joint.pins
    return (
        spans[0][0] == 0
        and spans[-1][1] == joint.width_nm
        and all(start < stop for start, stop in spans)
        and all(one[1] < other[0] for one, other in pairwise(spans))
    )
