"""What to heed because of the very boards, cuts and bits of a run of work: small, thin or tall boards, breakout, bits.

Lengths here are common practice, no source, unless one is named. Each machine's manual and local rules come first.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from operator import attrgetter

from planner.domain.operation import Machine, Operation
from planner.domain.plan import BoardSize, Feature
from planner.domain.words import FeatureKind, Surface
from planner.lengths import Grid, Nm, Unit, read_length, show_length
from planner.plan import tasks
from planner.plan.build import Facts
from planner.wood.cutters import printed_speed
from planner.wood.hearing import TABLE_G16

Limit = tuple[str, str]
"""A length in an inch project and in a metric one."""

SHORT: Limit = ("12 in", "300 mm")
"""Shorter boards tip, jam or are thrown back at planer and rip fence."""

SHORT_TO_HOLD: Limit = ("6 in", "150 mm")
"""Hands stay so far from a blade."""

NARROW: Limit = ("2 in", "50 mm")
"""Narrower strips leave no room for a hand between fence and guard."""

THIN: Limit = ("1/4 in", "6 mm")
"""Thinner boards flutter and break in a planer."""

TALL: Limit = ("24 in", "600 mm")
"""So tall, a board upright on the sled is top-heavy, and one at the bandsaw hangs over."""

BIG_BIT: Limit = ("1 in", "25 mm")
"""From here on charts print lower speeds for a router bit."""

_NAMED = 4
"""So many boards are named; of more, one less, and the rest is counted."""

_SIXTEENTH = 4 * Grid.IN_64.step_nm


@dataclass(frozen=True, slots=True)
class Run:
    """Operations done with one machine and one setting, and what they are done to."""

    operations: Sequence[Operation]
    facts: Facts

    @property
    def boards(self) -> tuple[BoardSize, ...]:
        """The boards that are cut."""
        marks = dict.fromkeys(mark for operation in self.operations for mark in operation.boards)
        return tuple(self.facts.boards[mark] for mark in marks)

    @property
    def cuts(self) -> tuple[tuple[Feature, BoardSize], ...]:
        """The cuts that are made, each with its board."""
        numbers = [number for operation in self.operations for number in operation.cuts]
        found = [self.facts.features[number] for number in numbers]
        return tuple((cut, self.facts.boards[cut.board]) for cut in found)

    def show(self, length: int) -> str:
        """A length as the project shows settings."""
        return show_length(length, self.facts.project.grid.fine, with_unit=True)

    def limit(self, limit: Limit) -> Nm:
        """A limit as a length."""
        return read_length(self.said(limit), self.facts.project.unit)

    def said(self, limit: Limit) -> str:
        """A limit in the project's unit."""
        return limit[self.facts.project.unit is Unit.MM]

    def setting(self, name: str) -> Nm | None:
        """A length that the machine is set to."""
        return dict(self.operations[0].setting.lengths).get(name)


def for_these_boards(run: Run) -> Iterator[str]:
    """What to heed in a run of work beside what holds at its machine."""
    task = tasks.BY_NAME[run.operations[0].task]
    for rule in _AT_MACHINES.get(task.machine, ()):
        yield from rule(run)


def named(boards: Sequence[BoardSize]) -> str:
    """Boards by their marks, when they are few."""
    marks = [board.mark for board in boards]
    if len(marks) <= _NAMED:
        return ", ".join(marks)
    return f"{', '.join(marks[: _NAMED - 1])} and {len(marks) - _NAMED + 1} more"


# --- small boards ------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Small:
    """Boards smaller than a machine takes safely."""

    size: Callable[[BoardSize], Nm]
    word: str
    limit: Limit
    advice: str

    def __call__(self, run: Run) -> Iterator[str]:
        """What to do with them."""
        small = [board for board in run.boards if self.size(board) < run.limit(self.limit)]
        if small:
            yield f"{self.word} than {run.said(self.limit)}: {named(small)}. {self.advice}"


_LENGTH, _WIDTH, _THICKNESS = attrgetter("length_nm"), attrgetter("width_nm"), attrgetter("thickness_nm")

_AT_THE_PLANER = (
    _Small(
        _LENGTH,
        "Shorter",
        SHORT,
        "Plane them in one longer board and cut them up after; never feed a piece shorter than the manual allows.",
    ),
    _Small(_THICKNESS, "Thinner", THIN, "Plane them on a flat carrier board, in light cuts."),
)
_AT_THE_RIP_FENCE = (
    _Small(_LENGTH, "Shorter", SHORT, "Rip them in one longer board and cut them up after."),
    _Small(
        _WIDTH,
        "Narrower",
        NARROW,
        "Rip such strips from a wide board, the strip on the side away from the fence, and push with a block that you "
        "may saw into.",
    ),
)
_AT_THE_CROSSCUT = (
    _Small(
        _LENGTH,
        "Shorter",
        SHORT_TO_HOLD,
        "Hold them with a clamp or a hold-down on the crosscut sled, never by hand.",
    ),
)

# --- upright boards and bits at the sled -------------------------------------------------------------------


def _tall_at_the_sled(run: Run) -> Iterator[str]:
    tall = [board for board in run.boards if board.length_nm > run.limit(TALL)]
    if tall:
        highest = max(board.length_nm for board in tall)
        yield (
            f"Top-heavy on end, up to {run.show(highest)} tall: {named(tall)}. Clamp them high up too, and have "
            "someone steady them."
        )


def _backed_by_the_fence(_: Run) -> Iterator[str]:
    yield (
        "The bit breaks out fibres at the inside face, where it leaves the board: that face tight against the "
        "fence. Where the fence's slot has worn wide, clamp a fresh backing board between."
    )


def _bit_at_the_sled(run: Run) -> Iterator[str]:
    at = run.operations[0].setting.words
    bits = {
        setting.bit_nm for setting in run.facts.sled.settings if f"sled {setting.sled}, {setting.fence} fence" in at
    }
    if len(bits) == 1:
        yield from _speed(run, bits.pop(), "A bit of")


def _wide_bit(run: Run) -> Iterator[str]:
    width = run.setting("width of cut")
    if width is not None and width > run.limit(BIG_BIT):
        yield from _speed(run, width, "A single bit as wide as the cut,")
        yield "Better take several passes with a smaller bit."


def _speed(run: Run, diameter: Nm, what: str) -> Iterator[str]:
    line = printed_speed(-(-diameter // _SIXTEENTH))
    if line is None:
        yield f"{what} {run.show(diameter)}, is too large for any router; charts print no speed for it."
    else:
        yield (
            f"{what} {run.show(diameter)}: charts print {_rpm(line.least_rpm)} to {_rpm(line.most_rpm)} rpm as the "
            "greatest speed (trade guidance, no standard). The limit marked on the cutter rules."
        )


def _rpm(speed: int) -> str:
    return f"{speed:,}".replace(",", " ")


# --- breakout ----------------------------------------------------------------------------------------------


def _tails_break_out_below(run: Run) -> Iterator[str]:
    if tasks.BY_NAME[run.operations[0].task] is tasks.SAW:
        yield "The teeth leave through the outside face, which lies on the table: a thin board below keeps it clean."


def _long_at_the_bandsaw(run: Run) -> Iterator[str]:
    long = [board for board in run.boards if board.length_nm > run.limit(TALL)]
    if long:
        yield f"Longer than {run.said(TALL)}: {named(long)}. Support the far end."


def _housing_breaks_out(run: Run) -> Iterator[str]:
    out = [board for cut, board in run.cuts if cut.kind is FeatureKind.HOUSING and cut.u[1] == board.width_nm]
    if out:
        yield (
            f"The bit breaks out fibres where it leaves the board: enter at the reference edge, and clamp a backing "
            f"strip flush to the far edge of {named(list(dict.fromkeys(out)))}."
        )


def _across_the_end(run: Run) -> Iterator[str]:
    cut_across = [
        board
        for cut, board in run.cuts
        if cut.kind is FeatureKind.RABBET and cut.x[1] - cut.x[0] < cut.u[1] - cut.u[0] == board.width_nm
    ]
    if cut_across:
        yield (
            "Across an end the bit breaks out fibres at the edge that leaves it last: push with a square backing block "
            f"behind {named(list(dict.fromkeys(cut_across)))}, and cut the ends before the edges."
        )


_OPPOSITE = {
    Surface.OUTSIDE: Surface.INSIDE,
    Surface.INSIDE: Surface.OUTSIDE,
    Surface.REFERENCE_EDGE: Surface.FAR_EDGE,
    Surface.FAR_EDGE: Surface.REFERENCE_EDGE,
    Surface.END_A: Surface.END_B,
    Surface.END_B: Surface.END_A,
}


def _goes_right_through(run: Run) -> Iterator[str]:
    """Mortises and holes that come out at the other side, which needs a backing board."""
    out: dict[Surface, list[BoardSize]] = {}
    for cut, board in run.cuts:
        if cut.depth_nm >= board.place.size(board.lie.normal(cut.face)):
            out.setdefault(_OPPOSITE[cut.face], []).append(board)
    for surface, boards in out.items():
        yield (
            f"It comes out at the {surface.words}: clamp a backing board there on "
            f"{named(list(dict.fromkeys(boards)))}, or it breaks out."
        )


_AT_MACHINES: dict[Machine, tuple[Callable[[Run], Iterator[str]], ...]] = {
    Machine.PLANER: _AT_THE_PLANER,
    Machine.TABLE_SAW_RIP: _AT_THE_RIP_FENCE,
    Machine.TABLE_SAW_CROSSCUT: _AT_THE_CROSSCUT,
    Machine.ROUTER_TABLE_SLED: (_tall_at_the_sled, _backed_by_the_fence, _bit_at_the_sled),
    Machine.BANDSAW: (_tails_break_out_below, _long_at_the_bandsaw),
    Machine.ROUTER_TABLE_FENCE: (_across_the_end, _wide_bit),
    Machine.ROUTER_GUIDE: (_housing_breaks_out, _wide_bit),
    Machine.MORTISER: (_goes_right_through,),
    Machine.DRILL: (_goes_right_through,),
}

# --- noise -------------------------------------------------------------------------------------------------

LOUD = frozenset({
    Machine.PLANER, Machine.TABLE_SAW_RIP, Machine.TABLE_SAW_CROSSCUT, Machine.ROUTER_TABLE_SLED, Machine.BANDSAW,
    Machine.ROUTER_TABLE_FENCE, Machine.ROUTER_GUIDE,
})  # fmt: skip
"""Machines for which ears need protection."""

_SAID_LEVELS = frozenset({90, 95, 100, 105})


def noise() -> str:
    """How long noise may be borne, to be said once in a build."""
    said = [f"{hours:g} h at {level}" for hours, level in TABLE_G16 if level in _SAID_LEVELS]
    return (
        f"Noise: table G-16 of 29 CFR 1910.95 allows {', '.join(said)} dBA in a day; saws, planers and routers are "
        "often over 95 (common practice, no source). Wear eye and hearing protection at every machine."
    )
