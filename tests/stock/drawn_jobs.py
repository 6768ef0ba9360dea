"""Random jobs for the cutting tests: tiny ones for brute force, and small ones with everything in them."""

from __future__ import annotations

from random import Random

from hypothesis import strategies as st

from planner.domain.stock import Keep, SawWay
from planner.lengths import Nm
from planner.stock.pieces import Board, Job, Part, Saw, Wish, Zone

WAYS = st.sampled_from([None, *SawWay])


def nm(least: int, most: int) -> st.SearchStrategy[Nm]:
    return st.integers(least, most).map(Nm)


@st.composite
def parts(draw: st.DrawFn, *, most: int, longest: int, widest: int) -> tuple[Part, ...]:
    """Up to so many kinds of parts, one to three of each."""
    kinds = draw(st.integers(1, most))
    turning = draw(st.booleans())
    return tuple(
        Part(
            marks=tuple(f"p{kind}-{number}" for number in range(draw(st.integers(1, 3)))),
            length_nm=draw(nm(3, longest)),
            width_nm=draw(nm(2, widest)),
            may_turn=turning and draw(st.booleans()),
        )
        for kind in range(kinds)
    )


def tiny_job(chance: Random) -> Job:
    """At most five parts, boards without defects, no credit: what brute force can do."""
    counts = chance.choice([(1,), (3,), (5,), (1, 2), (2, 3), (1, 1, 1), (1, 1, 3), (2, 2, 1), (1, 2, 2)])
    turning = chance.random() < 0.5
    wanted = tuple(
        Part(
            marks=tuple(f"p{kind}-{number}" for number in range(count)),
            length_nm=Nm(chance.randint(3, 12)),
            width_nm=Nm(chance.randint(2, 6)),
            may_turn=turning and chance.random() < 0.5,
        )
        for kind, count in enumerate(counts)
    )
    boards = tuple(
        Board(
            mark=f"B{number}",
            length_nm=Nm(chance.randint(8, 20)),
            width_nm=Nm(chance.randint(4, 10)),
            cost=chance.randint(0, 9),
            count=chance.choice([1, 2, None]),
        )
        for number in range(chance.randint(1, 2))
    )
    saw = Saw(rip_nm=Nm(chance.randint(0, 2)), crosscut_nm=Nm(chance.randint(0, 2)))
    wish = Wish(stages=chance.choice([2, 3]), first=chance.choice([None, *SawWay]))
    return Job(parts=wanted, boards=boards, saw=saw, wish=wish)


@st.composite
def boards_with_everything(draw: st.DrawFn, mark: str) -> Board:
    """A board that may have trim and defects."""
    length, width = draw(nm(30, 90)), draw(nm(10, 40))
    defects = []
    for _ in range(draw(st.integers(0, 2))):
        along, across = draw(st.integers(0, length - 2)), draw(st.integers(0, width - 2))
        ends = (draw(st.integers(along + 1, min(along + 12, length))), draw(st.integers(across + 1, width)))
        defects.append(Zone(along=(Nm(along), Nm(ends[0])), across=(Nm(across), Nm(ends[1]))))
    return Board(
        mark=mark,
        length_nm=length,
        width_nm=width,
        cost=draw(st.integers(0, 500)),
        count=draw(st.sampled_from([0, 1, 2, 5, None])),
        defects=tuple(defects),
        end_trim_nm=draw(nm(0, 5)),
        edge_trim_nm=draw(nm(0, 3)),
    )


@st.composite
def small_jobs(draw: st.DrawFn) -> Job:
    """Everything that can be asked, small enough to be solved hundreds of times."""
    count = draw(st.integers(1, 4))
    keep = draw(st.none() | st.builds(Keep, length_nm=nm(5, 30), width_nm=nm(3, 10), credit_pct=st.integers(0, 100)))
    return Job(
        parts=draw(parts(most=6, longest=40, widest=15)),
        boards=tuple(draw(boards_with_everything(f"B{number}")) for number in range(count)),
        saw=Saw(rip_nm=draw(nm(0, 3)), crosscut_nm=draw(nm(0, 3))),
        wish=Wish(stages=draw(st.sampled_from([2, 3])), first=draw(WAYS), keep=keep),
    )
