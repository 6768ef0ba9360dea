"""A shop that does all operations in order, with blocks of wood: an oracle for the order of operations.

It knows nothing of how the planner finds what must come before what. It takes the finished order, does one operation
after the other, and says whatever could not be done at a bench: a cut in a board that is already glued to others, a
part put in where no straight way is left, a board forgotten. Of the plan it uses boards, cuts and the order alone. Wood
is kept in cells that the cuts' own edges part, a plain and slow way that shares nothing with the planner's.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from functools import cached_property
from itertools import pairwise, product

from planner.domain.operation import Operation
from planner.domain.plan import BoardSize, Feature, Plan
from planner.domain.words import FeatureKind, Surface

Block = tuple[tuple[int, int], tuple[int, int], tuple[int, int]]
"""From and to, rightwards, backwards and upwards."""

WAYS = [(axis, sign) for axis in (1, 2, 0) for sign in (1, -1)]

WORDS = {
    FeatureKind.GROOVE: "groove",
    FeatureKind.RABBET: "rabbet",
    FeatureKind.HOUSING: "housing",
    FeatureKind.MORTISE: "mortise",
    FeatureKind.TENON: "tenon",
    FeatureKind.NOTCH: "notch",
    FeatureKind.HOLE: "drill",
    FeatureKind.SAW_LINE: "open",
}
CUTS = set(WORDS.values())
MAKING = {"plane", "rip", "length", "label", "gauge", "lap", "layout", "pins", "chisel", "chop", "trace", "tails"}
MAKING |= {"shoulders", "fit"}
GLUE_UPS = {"glue", "ends"}
STAYS = {"put in", "slips", "strips", "base", "top", "face", "back"}
"""Fixed for good where it is put."""
COMES_OUT = {"drawer", "hinge", "shelf"}
"""Tried in its place, and taken out again."""


def word(operation: Operation) -> str:
    """The word that begins an operation's mark."""
    return operation.mark.removesuffix(f" {operation.subject}").split(f" {operation.subject} ")[0]


def faults(plan: Plan, operations: Iterable[Operation]) -> list[str]:
    """All that goes wrong when the operations are done in this order."""
    shop = _Shop(plan)
    return [*(fault for each in operations for fault in shop.do(each)), *shop.forgotten()]


class _Shop:
    def __init__(self, plan: Plan) -> None:
        self.boards = {board.mark: _Plank(board, plan.features) for board in plan.boards}
        self.features = plan.features
        self.group = {mark: frozenset([mark]) for mark in self.boards}
        self.rings = {ring.mark: [board.mark for board in ring.boards] for ring in plan.project.rings()}
        self.ready: Counter[tuple[str, str]] = Counter()
        self.cut: Counter[int] = Counter()
        self.in_place: set[str] = set()
        self.done: set[str] = set()

    def do(self, operation: Operation) -> Iterator[str]:
        """Do one operation, and say what is wrong with it."""
        yield from (f"{operation.mark} before {each}" for each in operation.after if each not in self.done)
        what = word(operation)
        if what in MAKING:
            for mark in operation.boards:
                self.ready[mark, what] += 1
                if len(self.group[mark]) > 1:
                    yield f"{operation.mark}: {mark} is already put together with others"
        elif what in CUTS:
            yield from self._cut(operation)
        elif what in GLUE_UPS | STAYS | COMES_OUT:
            yield from self._join(operation, what)
        self.done.add(operation.mark)

    def forgotten(self) -> Iterator[str]:
        """What should have been done and was not, or twice."""
        for mark in self.boards:
            for what in ("rip", "length", "label"):
                if self.ready[mark, what] != 1:
                    yield f"{what} {mark}: {self.ready[mark, what]} times"
            if mark not in self.in_place:
                yield f"{mark} is nowhere"
        for number, feature in enumerate(self.features):
            if self.cut[number] != 1:
                yield f"{feature.kind} in {feature.board} for {feature.takes or 'itself'}: {self.cut[number]} times"

    # --- cuts ----------------------------------------------------------------------------------------------

    def _cut(self, operation: Operation) -> Iterator[str]:
        if not operation.cuts:
            yield f"{operation.mark}: cuts nothing"
        for number in operation.cuts:
            self.cut[number] += 1
            yield from self._made(operation, self.features[number])
        if {self.features[number].board for number in operation.cuts} != set(operation.boards):
            yield f"{operation.mark}: is not in {operation.boards}"
        if len(operation.boards) == 1 and len(self.group[operation.boards[0]]) > 1:
            yield f"{operation.mark}: {operation.boards[0]} is already put together with others"
        if len({self.group[mark] for mark in operation.boards}) > 1:
            yield f"{operation.mark}: {operation.boards} are not together yet"

    def _made(self, operation: Operation, feature: Feature) -> Iterator[str]:
        if word(operation) != WORDS[feature.kind] and len(operation.boards) == 1:
            yield f"{operation.mark}: makes a {feature.kind}"
        for other in sorted(self.group[feature.board] - set(operation.boards)):
            if self._covers(other, feature):
                yield f"{operation.mark}: {other} covers the cut in {feature.board}"

    def _covers(self, other: str, feature: Feature) -> bool:
        """Whether a board stands before the cut, so that no tool gets there; a hole may be drilled from either side."""
        axis, sign = self.boards[feature.board].towards(feature.face)
        place = self.boards[feature.board].block(feature)
        sides = (sign, -sign) if feature.kind is FeatureKind.HOLE else (sign,)
        return all(any(_hits(place, cell, axis, side) for cell in self.boards[other].cells) for side in sides)

    # --- putting together ----------------------------------------------------------------------------------

    def _join(self, operation: Operation, what: str) -> Iterator[str]:
        moving = frozenset().union(*(self.group[mark] for mark in operation.boards))
        self.in_place |= moving
        if what in GLUE_UPS:
            self._together(moving)
            return
        ring = self.boards[operation.boards[0]].board.piece if what in {"base", "drawer"} else operation.box
        body = self.group[self.rings[ring][0]]
        if moving <= body:
            return
        if not any(self._free(moving, body - moving, *way) for way in WAYS):
            yield f"{operation.mark}: no way is left to put it in"
        if any(each.kind is FeatureKind.HOLE and each.takes in moving and each.board in body for each in self.features):
            yield f"{operation.mark}: its pins no longer go into their holes"
        if what in STAYS:
            self._together(moving | body)

    def _together(self, marks: frozenset[str]) -> None:
        self.group.update(dict.fromkeys(marks, marks))

    def _free(self, moving: frozenset[str], standing: frozenset[str], axis: int, sign: int) -> bool:
        """Whether some boards can be drawn out between others in a straight line."""
        return not any(
            _hits(cell, other, axis, sign)
            for mark in moving
            for stands in standing
            if _hits(self.boards[mark].whole, self.boards[stands].whole, axis, sign)
            for cell in self.boards[mark].cells
            for other in self.boards[stands].cells
        )


class _Plank:
    """A board in its place, in cells of wood."""

    def __init__(self, board: BoardSize, features: Iterable[Feature]) -> None:
        self.board = board
        self.features = [each for each in features if each.board == board.mark]
        self.whole: Block = (board.place.right, board.place.back, board.place.up)
        inwards = tuple(-number for number in board.lie.out)
        self.axes = [next((axis, way[axis]) for axis in range(3) if way[axis]) for way in (
            board.lie.along, board.lie.across, inwards,
        )]  # fmt: skip

    def towards(self, face: Surface) -> tuple[int, int]:
        """The way that a surface looks."""
        number, sign = {
            Surface.END_A: (0, -1), Surface.END_B: (0, 1), Surface.REFERENCE_EDGE: (1, -1),
            Surface.FAR_EDGE: (1, 1), Surface.OUTSIDE: (2, -1), Surface.INSIDE: (2, 1),
        }[face]  # fmt: skip
        axis, forward = self.axes[number]
        return axis, sign * forward

    def block(self, feature: Feature) -> Block:
        """Where a cut is in the piece, counted from the corner of end A, reference edge and outside face."""
        spans: list[tuple[int, int]] = [(0, 0)] * 3
        proud = (self.board.proud_a_nm, 0, 0)
        for (axis, forward), span, before in zip(self.axes, (feature.x, feature.u, feature.y), proud, strict=True):
            low, high = self.whole[axis]
            start, stop = span[0] - before, span[1] - before
            here = (low + start, low + stop) if forward > 0 else (high - stop, high - start)
            spans[axis] = (max(low, here[0]), min(high, here[1]))
        return spans[0], spans[1], spans[2]

    @cached_property
    def cells(self) -> list[Block]:
        """The wood that all cuts leave, in blocks."""
        gone = [self.block(f) for f in self.features if f.kind not in {FeatureKind.TENON, FeatureKind.SAW_LINE}]
        tenons = [(self.block(f), self.towards(f.face)) for f in self.features if f.kind is FeatureKind.TENON]
        edges = [
            sorted({*self.whole[axis], *(edge for block in gone for edge in block[axis]),
                    *(edge for block, _ in tenons for edge in block[axis])})
            for axis in range(3)
        ]  # fmt: skip
        rightwards, backwards, upwards = (list(pairwise(each)) for each in edges)
        cells = product(rightwards, backwards, upwards)
        return [cell for cell in cells if not any(_inside(cell, block) for block in gone) and _stays(cell, tenons)]


def _stays(cell: Block, tenons: list[tuple[Block, tuple[int, int]]]) -> bool:
    """Whether a cell is in a tenon, if it is as near to the end as one."""
    beside = [
        (cell, block)
        for block, (axis, _) in tenons
        if block[axis][0] <= cell[axis][0] and cell[axis][1] <= block[axis][1]
    ]
    return not beside or any(_inside(cell, block) for _, block in beside)


def _inside(cell: Block, block: Block) -> bool:
    return all(low <= a and b <= high for (a, b), (low, high) in zip(cell, block, strict=True))


def _hits(moving: Block, standing: Block, axis: int, sign: int) -> bool:
    """Whether a block that goes off this way comes to where another is."""
    beside = all(
        moving[other][0] < standing[other][1] and standing[other][0] < moving[other][1]
        for other in range(3)
        if other != axis
    )
    ahead = standing[axis][1] > moving[axis][0] if sign > 0 else standing[axis][0] < moving[axis][1]
    return beside and ahead
