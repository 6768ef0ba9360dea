"""Wishes for a sled to be built: two by hand, and any that can be met."""

from __future__ import annotations

from hypothesis import strategies as st

from planner.derive.sled_practice import usual_clamps
from planner.domain.sled import MICRO
from planner.domain.sled_to_build import ClampRoom, MitreSlot, SledWish, StraightBit, UprightBoard
from planner.domain.words import Side
from planner.lengths import Grid, Nm, Unit, read_length
from tests.oracle.sled_floor import MM
from tests.pieces import inches


def millimetres(text: str) -> Nm:
    return read_length(text, Unit.MM)


METRIC = SledWish(
    name="bench",
    run_micro=8 * MICRO,
    bit=StraightBit(diameter_nm=millimetres("12"), cutting_length_nm=millimetres("38"), reach_nm=millimetres("45")),
    mitre=MitreSlot(
        width_nm=millimetres("19.05"), depth_nm=millimetres("9.5"), from_bit_nm=millimetres("140"), side=Side.LEFT
    ),
    table_each_way_nm=millimetres("400"),
    floor_thickness_nm=millimetres("12"),
    fence_thickness_nm=millimetres("18"),
    clamps=usual_clamps(Grid.MM_TENTH),
    grid=Grid.MM_TENTH,
)
INCHES = SledWish(
    name="bench",
    run_micro=7 * MICRO,
    bit=StraightBit(diameter_nm=inches("1/2"), cutting_length_nm=inches("1 1/2"), reach_nm=inches("2")),
    mitre=MitreSlot(width_nm=inches("3/4"), depth_nm=inches("3/8"), from_bit_nm=inches("5 3/8"), side=Side.RIGHT),
    table_each_way_nm=inches("16"),
    floor_thickness_nm=inches("1/2"),
    fence_thickness_nm=inches("3/4"),
    clamps=usual_clamps(Grid.IN_32),
    grid=Grid.IN_32,
)
TOP = UprightBoard(
    mark="K-front",
    width_nm=millimetres("230"),
    thickness_nm=millimetres("20"),
    length_nm=millimetres("600"),
    bit_height_nm=millimetres("20.4"),
)
Case = tuple[SledWish, list[UprightBoard]]

BITS = [6_000_000, 6_350_000, 9_960_000, 12_620_000, 12_700_000]


def grids(low: int, high: int) -> st.SearchStrategy[Nm]:
    """Lengths in millimetres, on both grids and off them."""

    def stepped(step: int) -> st.SearchStrategy[Nm]:
        return st.integers(-(-low * MM // step), high * MM // step).map(lambda steps: Nm(steps * step))

    return st.one_of([stepped(step) for step in (396_875, 100_000, 1)])


@st.composite
def boards(draw: st.DrawFn) -> list[UprightBoard]:
    return [
        UprightBoard(
            mark=f"K{number}",
            width_nm=draw(grids(20, 600)),
            thickness_nm=draw(grids(6, 45)),
            length_nm=draw(grids(60, 1_800)),
            bit_height_nm=draw(grids(6, 46)),
        )
        for number in range(draw(st.integers(1, 4)))
    ]


@st.composite
def cases(draw: st.DrawFn) -> Case:
    """Wishes that can be met: the bit long enough, the mitre slot clear of it, the table long."""
    upright = draw(boards())
    floor, bit, mitre = draw(grids(6, 25)), Nm(draw(st.sampled_from(BITS))), draw(grids(10, 25))
    stands = floor + max(board.bit_height_nm for board in upright)
    wish = SledWish(
        name="any",
        run_micro=draw(st.integers(4 * MICRO, 10 * MICRO) | st.integers(MICRO, 20 * MICRO) | st.just(2_400_000)),
        bit=StraightBit(
            diameter_nm=bit,
            cutting_length_nm=Nm(stands + draw(st.just(0) | grids(0, 20))),
            reach_nm=Nm(stands + draw(st.just(0) | grids(0, 20))),
        ),
        mitre=MitreSlot(
            width_nm=mitre,
            depth_nm=draw(grids(6, 20)),
            from_bit_nm=Nm((mitre + bit) // 2 + 1 + draw(grids(13, 500))),
            side=draw(st.sampled_from(Side)),
        ),
        table_each_way_nm=millimetres("5000"),
        floor_thickness_nm=floor,
        fence_thickness_nm=draw(grids(12, 40)),
        clamps=ClampRoom(
            beside_nm=draw(st.just(Nm(0)) | grids(0, 80)),
            before_nm=draw(grids(10, 120)),
            behind_nm=draw(st.just(Nm(0)) | grids(0, 120)),
        ),
        grid=draw(st.sampled_from(Grid)),
    )
    return wish, upright
