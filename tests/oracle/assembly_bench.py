"""What lies on the bench before glue-up: boards as cut and labelled, their cuts, and the corner joints' marks.

Of a plan only figures are taken that a maker reads off a list or off the wood: mark, box, role, length, width,
thickness, labels; features; joints. Where the derivation thinks that a board is, and how it lies, is not asked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Protocol

from planner.domain.plan import BoardSize, Feature, Joint, Labels
from planner.domain.project import Project
from planner.domain.words import End, FeatureKind, Role
from tests.oracle.assembly_space import WAYS, Block, Place, Span, Turn, against, less_all, turned

Cut = tuple[Span, Span, Span]
"""A block of a board's own frame: from end A, from the reference edge, from the outside face."""


class Planned(Protocol):
    """What is looked at of a plan."""

    @property
    def project(self) -> Project:
        """The maker's word."""

    @property
    def boards(self) -> Sequence[BoardSize]:
        """Only their sizes and names are read."""

    @property
    def labels(self) -> Mapping[str, Labels]:
        """What is written on them."""

    @property
    def joints(self) -> Sequence[Joint]:
        """Corner joints."""

    @property
    def features(self) -> Sequence[Feature]:
        """All other cuts."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plank:
    """A board on the bench: its sizes along x, u and y, the way its labels tell to hold it, and its cuts.

    ``goes_into`` are the boards that its ends go into, as the labels of the ends say.
    """

    mark: str
    box: str
    role: Role
    material: str
    sizes: Place
    turn: Turn
    cuts: tuple[Feature, ...]
    goes_into: Mapping[End, frozenset[str]]

    @property
    def owner(self) -> str:
        """What it is named after: its mark without its role."""
        return self.mark.rsplit("-", 1)[0]

    def spans(self) -> Cut:
        """The whole blank in its own frame."""
        x, u, y = self.sizes
        return ((0, x), (0, u), (0, y))

    def in_piece(self, cut: Cut) -> Block:
        """A block of its own frame, turned the way it stands in the piece."""
        return self.turn.block(*cut, self.sizes)

    def blank(self) -> Block:
        """The whole blank, turned."""
        return self.in_piece(self.spans())

    def from_end(self, end: End, start: int, stop: int) -> Span:
        """A span of x that counts from an end."""
        return (start, stop) if end is End.A else (self.sizes[0] - stop, self.sizes[0] - start)

    def tenons(self, end: End) -> list[Feature]:
        """Tenons at one end."""
        at = 0 if end is End.A else self.sizes[0]
        return [cut for cut in self.cuts if cut.kind is FeatureKind.TENON and at in cut.x]


@dataclass(frozen=True, slots=True)
class Bench:
    """Everything that is to be put together."""

    project: Project
    planks: dict[str, Plank]
    joints: tuple[Joint, ...]

    def changed(self, mark: str, *, sizes: Place | None = None, cuts: Sequence[Feature] | None = None) -> Bench:
        """The same bench with one board sawn or cut otherwise."""
        plank = self.planks[mark]
        other = replace(plank, sizes=sizes or plank.sizes, cuts=plank.cuts if cuts is None else tuple(cuts))
        return replace(self, planks=self.planks | {mark: other})


def bench_of(plan: Planned) -> Bench:
    """Lay a plan's boards on the bench."""
    cuts: dict[str, list[Feature]] = {board.mark: [] for board in plan.boards}
    for feature in plan.features:
        cuts[feature.board].append(feature)
    planks = {
        board.mark: Plank(
            mark=board.mark,
            box=board.box,
            role=board.role,
            material=board.material,
            sizes=(board.length_nm, board.width_nm, board.thickness_nm),
            turn=read_labels(plan.labels[board.mark]),
            cuts=tuple(cuts[board.mark]),
            goes_into={
                End.A: _named_in(plan.labels[board.mark].end_a),
                End.B: _named_in(plan.labels[board.mark].end_b),
            },
        )
        for board in plan.boards
    }
    return Bench(plan.project, planks, tuple(plan.joints))


def _named_in(label: str) -> frozenset[str]:
    """The boards that an end goes into."""
    return frozenset(re.findall(r"\binto ([^\s,;]+)", label))


def read_labels(labels: Labels) -> Turn:
    """Hold a board so that its six labels are right; the ends tell whether it was labelled from a mirror.

    Two labels tell how to hold it; the other four must then be right too.
    """
    texts = {
        "outside": labels.outside,
        "inside": labels.inside,
        "reference": labels.reference_edge,
        "far": labels.far_edge,
        "A": labels.end_a,
        "B": labels.end_b,
    }
    looks = {}
    for surface, text in texts.items():
        found = re.search(r"\blooks (right|left|back|front|up|down)\b", text)
        assert found, f"no way to look on the label {text!r}"
        looks[surface] = WAYS[found.group(1)]
    turn = turned(looks["outside"], looks["reference"])
    want = {"inside": turn.y, "far": turn.u, "A": against(turn.x), "B": turn.x}
    assert {surface: looks[surface] for surface in want} == want, f"labels of a mirrored board: {texts}"
    return turn


@dataclass(frozen=True, slots=True)
class Shared:
    """Wood of a corner that only exact dovetails tell apart.

    Attributes:
        joint: the corner.
        pins: whether the pins are this board's wood, or the tails.
    """

    joint: Joint
    pins: bool


Chunk = tuple[Block, Shared | None]
"""A block that is all wood; or one of which the pins, or the tails, are wood."""


@dataclass(frozen=True, slots=True)
class DovetailEnd:
    """One dovetailed end, from the very end inwards.

    Attributes:
        planed: what is planed off when the glue is dry.
        reach: how far pins or tails reach in.
        u: from where to where the joint goes along the edge.
        y: how deep into the board.
    """

    shared: Shared
    planed: int
    reach: int
    u: Span
    y: Span


def dovetail_ends(bench: Bench) -> Iterator[tuple[str, End, DovetailEnd]]:
    """All dovetailed ends, by board and end; half-blind sockets leave the lap, and their tails end before it."""
    for joint in bench.joints:
        pin, tail = bench.planks[joint.pin_board], bench.planks[joint.tail_board]
        thick = pin.sizes[2]
        pins = DovetailEnd(
            Shared(joint, pins=True),
            joint.bit_height_nm - tail.sizes[2],
            joint.bit_height_nm,
            (0, pin.sizes[1]),
            (joint.lap_nm, thick),
        )
        yield pin.mark, joint.pin_end, pins
        at = joint.tail_from_nm
        stands_out = joint.tail_baseline_nm + joint.lap_nm - thick
        tails = DovetailEnd(
            Shared(joint, pins=False), stands_out, joint.tail_baseline_nm, (at, at + joint.width_nm), (0, tail.sizes[2])
        )
        yield tail.mark, joint.tail_end, tails


def wood(plank: Plank, ends: Mapping[End, DovetailEnd]) -> list[Chunk]:
    """What a board is made of once all is cut and planed: blocks of its turned blank."""
    whole = plank.sizes[0]
    shared: list[tuple[Cut, Shared]] = []
    low, high = 0, whole
    for end, cut in ends.items():
        shared.append(((plank.from_end(end, cut.planed, cut.reach), cut.u, cut.y), cut.shared))
        low, high = (cut.planed, high) if end is End.A else (low, whole - cut.planed)
    solid = less_all([((low, high), *plank.spans()[1:])], [cut for cut, _ in shared])
    solid = _with_tenons(plank, solid)
    gone: list[Cut] = [(cut.x, cut.u, cut.y) for cut in plank.cuts if cut.kind is not FeatureKind.TENON]
    chunks: list[Chunk] = [(plank.in_piece(block), None) for block in less_all(solid, gone)]
    for cut_block, mark in shared:
        chunks += [(plank.in_piece(block), mark) for block in less_all([cut_block], gone)]
    return chunks


def _with_tenons(plank: Plank, solid: list[Block]) -> list[Block]:
    """At an end with tenons, these are all that stays."""
    for end in End:
        tenons = [(cut.x, cut.u, cut.y) for cut in plank.tenons(end)]
        if not tenons:
            continue
        x = (min(t[0][0] for t in tenons), max(t[0][1] for t in tenons))
        solid = less_all(solid, less_all([(x, *plank.spans()[1:])], tenons))
    return solid


def slope(joint: Joint) -> Fraction:
    """Run over rise of a dovetail's side: what it gains for each unit of depth."""
    return 1 / Fraction(joint.slope)
