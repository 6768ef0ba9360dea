"""Projects to be batched at the sled, made of bare joints; and the worked figures of one end."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from hypothesis import strategies as st

from planner.derive.pins import between
from planner.domain.plan import Joint
from planner.domain.project import Project
from planner.domain.sled import MICRO, Sled
from planner.domain.words import End, JointKind
from planner.lengths import Nm, Span
from tests.pieces import SLED, inches, project

Batch = list[tuple[Project, tuple[Joint, ...]]]

ONE_SOCKET: tuple[Span, ...] = ((Nm(0), inches("1/4")), (inches("1 1/4"), inches("1 1/2")))
"""A single socket of 1 in between half-pins of 1/4; with a 1/2 in bit it takes two passes at any slope used here."""


def pin_end(mark: str, board: str, end: End, height: int, sled: Sled = SLED) -> Joint:
    """A joint with that one socket in 1/2 in stuff, cut at this bit height."""
    return Joint(
        mark=mark,
        box="K",
        kind=JointKind.THROUGH_DOVETAIL,
        pin_board=board,
        pin_end=end,
        tail_board=f"{board} mate",
        tail_end=End.A if end is End.B else End.B,
        width_nm=inches("1 1/2"),
        pin_thickness_nm=inches("1/2"),
        tail_thickness_nm=Nm(height),
        slope=sled.slope,
        sled=sled.name,
        bit_height_nm=Nm(height),
        tail_baseline_nm=inches("1/2"),
        pins=ONE_SOCKET,
        tails=between(ONE_SOCKET),
    )


def bare_project(name: str, *, sleds: Sequence[Sled] = (SLED,), tolerance: int = 0) -> Project:
    """A project of which only name, sleds, tolerance and rates matter here."""
    return replace(project(), name=name, sleds=tuple(sleds), height_tolerance_nm=Nm(tolerance))


SLEDS = (
    SLED,
    replace(SLED, name="steep", run_micro=6 * MICRO),
    replace(SLED, name="wide", greatest_width_nm=inches("36")),
)


@st.composite
def batches(draw: st.DrawFn) -> Batch:
    """One to three projects, each with up to six boards that carry pins at one end or both, at a few heights."""
    made: Batch = []
    for name in "PQR"[: draw(st.integers(1, 3))]:
        sleds = draw(st.lists(st.sampled_from(SLEDS), min_size=1, max_size=3, unique=True))
        ends: list[Joint] = []
        for number in range(1, draw(st.integers(1, 6)) + 1):
            sled = draw(st.sampled_from(sleds))
            for end in draw(st.sampled_from([(End.A,), (End.B,), (End.A, End.B)])):
                height = 1_000 * draw(st.integers(1, 4))
                ends.append(pin_end(f"K-J{len(ends) + 1}", f"K-b{number}", end, height, sled))
        tolerance = draw(st.sampled_from([0, 1_000, 2_000]))
        made.append((bare_project(name, sleds=sleds, tolerance=tolerance), tuple(draw(st.permutations(ends)))))
    return made
