"""Every way of building, put together from its boards: nothing overlaps, all joints close, sizes are as asked."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from planner.domain.carcase import Carcase, Dividers
from planner.domain.drawer import Drawer
from planner.domain.panelled import Slab
from planner.domain.project import Project
from planner.domain.space import Division, Doors, Space
from planner.domain.words import DividerKind, HeightRule, PinPair, Side, SizesOver
from planner.intake.project_file import read_project
from planner.pipeline import plan
from tests.oracle import assembly_pieces as hollin
from tests.oracle.assembly import put_together
from tests.oracle.assembly_bench import bench_of
from tests.oracle.assembly_pieces import beech, box, carcase, columns, drawer, drawers, hinged, holding, project, tiers
from tests.oracle.assembly_plan import Derived, false_claims, faults_of

RAIL, SHELF, FRAME, NOTHING = DividerKind.RAIL, DividerKind.SHELF, DividerKind.FRAME, DividerKind.NOTHING


def of(piece: Carcase) -> Project:
    return project(carcases=(piece,))


def three(pattern: Drawer) -> Space:
    return holding(tiers(RAIL, *drawers(pattern, 3)))


def four(divider: DividerKind, rule: HeightRule = HeightRule.EQUAL) -> Space:
    return holding(tiers(divider, *drawers(drawer("X"), 4), rule=rule))


def uneven(divider: DividerKind) -> Space:
    """Three columns over two, on one divider."""
    above = columns(holding(size=250), holding(), holding())
    return holding(tiers(divider, holding(above), holding(columns(holding(), holding()))))


def nearly_in_line() -> Space:
    """Partitions above and below a frame, nearer to each other than its runners are wide."""
    above, below = columns(holding(size=430), holding()), columns(holding(size=460), holding())
    return holding(tiers(FRAME, holding(above), holding(below)))


def between_frames() -> Space:
    """A drawer, two side by side, and another, parted by frames."""
    pair = holding(columns(*drawers(drawer("X"), 2, column=2)))
    return holding(tiers(FRAME, *drawers(drawer("X"), 1), pair, *drawers(drawer("X"), 1, column=3)))


def three_columns(middle: Division | None) -> Space:
    """Drawers on rails and runners, shelves, and drawers on frames."""
    left = holding(tiers(RAIL, *drawers(drawer("X"), 3)), size=300)
    return holding(columns(left, holding(middle), holding(tiers(FRAME, *drawers(drawer("X"), 3, column=3)))))


def stopped(doors: Doors, hinged: Side = Side.LEFT) -> Doors:
    return replace(doors, hinged=hinged, stops=hollin.DOOR_STOPS)


def drawer_before_the_rail() -> Drawer:
    return replace(drawer("D101"), back_clearance_nm=hollin.mm(20))


STOPPED = {
    "on rails": of(carcase(three(hollin.STOPPED_DRAWER))),
    "on slips": of(carcase(three(hollin.STOPPED_ON_SLIPS))),
    "with inset fronts": of(carcase(three(hollin.STOPPED_BEHIND_FRONT))),
    "on frames": of(carcase(holding(tiers(FRAME, *drawers(hollin.STOPPED_DRAWER, 3))))),
    "on shelves, narrow": of(
        carcase(holding(columns(holding(tiers(SHELF, *drawers(hollin.STOPPED_DRAWER, 2)), size=160), holding())))
    ),
    "that hang": of(replace(carcase(holding(tiers(RAIL, *drawers(hollin.STOPPED_DRAWER, 2)))), runners=hollin.HUNG)),
    "with overlay fronts": of(carcase(three(replace(hollin.OVERLAY_FRONT, stops=hollin.STOPS)))),
    "behind a door": of(carcase(holding(tiers(SHELF, *drawers(hollin.STOPPED_DRAWER, 2)), doors=hollin.DOOR))),
}
DRAWERS = {
    "slotted bottom": hollin.SLOTTED,
    "half-blind": hollin.HALF_BLIND,
    "inset front": hollin.INSET_FRONT,
    "overlay front": hollin.OVERLAY_FRONT,
    "slid-in bottom": hollin.SLID_IN,
    "slips": hollin.ON_SLIPS,
    "slips, slid in": hollin.SLID_IN_ON_SLIPS,
    "handles": hollin.WITH_HANDLES,
    "handles through two boards": replace(hollin.INSET_FRONT, handles=hollin.WITH_HANDLES.handles),
    "rabbeted": hollin.RABBETED,
    "rabbeted, back lowered": replace(hollin.RABBETED, back_lower_nm=hollin.mm(8)),
}
DIVIDERS: dict[str, Dividers] = {"plain": hollin.PLAIN, "stopped": hollin.STOPPED, "tenoned": hollin.TENONED}
RULES = {rule: of(carcase(four(RAIL, rule))) for rule in (HeightRule.EQUAL, HeightRule.STEP, HeightRule.RATIO)}
HUNG = replace(carcase(four(NOTHING)), runners=hollin.HUNG)
KINDS: dict[str, Project] = {
    **{f"rails, {rule}": piece for rule, piece in RULES.items()},
    "pins on top and bottom": of(carcase(four(RAIL), pins=PinPair.FIRST_AND_THIRD)),
    "inside sizes": of(carcase(four(RAIL), over=SizesOver.INSIDE, thick=(18, 20, 22, 24))),
    "rabbeted carcase": of(hollin.rabbeted(carcase(four(RAIL)))),
    "frames with dust panels": of(carcase(four(FRAME))),
    "open frames": of(replace(carcase(four(FRAME)), frames=hollin.OPEN_FRAMES)),
    "side-hung": of(HUNG),
    "side-hung over rails": of(replace(carcase(four(RAIL)), runners=hollin.HUNG)),
    "side-hung over frames": of(replace(carcase(four(FRAME)), runners=hollin.HUNG)),
    "slides": of(
        replace(carcase(holding(tiers(NOTHING, *drawers(drawer("X", wide=True), 3)))), runners=hollin.SLIDES),
    ),
    **{f"drawers, {name}": of(carcase(three(pattern))) for name, pattern in DRAWERS.items()},
    **{
        f"shelves, {name}": of(replace(carcase(holding(tiers(SHELF, holding(), holding(hollin.LOOSE)))), shelves=how))
        for name, how in DIVIDERS.items()
    },
    **{
        f"columns on a shelf, {name}": of(replace(carcase(uneven(SHELF)), shelves=how, partitions=how))
        for name, how in DIVIDERS.items()
    },
    **{
        f"columns on a frame, {name}": of(replace(carcase(uneven(FRAME)), partitions=how))
        for name, how in DIVIDERS.items()
    },
    "partitions nearly in line on a frame": of(carcase(nearly_in_line())),
    **{
        f"columns between frames, {name}": of(replace(carcase(between_frames()), partitions=how))
        for name, how in DIVIDERS.items()
    },
    **{
        f"three columns, {name}": of(
            replace(carcase(three_columns(tiers(SHELF, holding(), holding()))), partitions=how)
        )
        for name, how in DIVIDERS.items()
    },
    "back of boards": of(carcase(holding(), back=hollin.BOARDS)),
    "back of frame and panels": of(carcase(holding(), back=hollin.FRAMED_BACK)),
    "no back": of(carcase(holding(), back=None)),
    "door": of(carcase(holding(tiers(SHELF, *drawers(drawer("X"), 2)), doors=hollin.DOOR))),
    "door with stub tenons": of(carcase(holding(doors=replace(hollin.DOOR, made=hollin.STUB)))),
    "pair of doors before shelves": of(carcase(holding(hollin.LOOSE, doors=hollin.PAIR))),
    "pair of doors over the edges": of(carcase(holding(columns(holding(doors=hollin.OVERLAY), three(drawer("X")))))),
    "plinth and top": of(replace(carcase(holding()), base=hollin.PLINTH, top=hollin.TOP)),
    "stand and top": of(replace(carcase(holding()), base=hollin.STAND, top=hollin.TOP)),
    **{f"stops, drawers {name}": piece for name, piece in STOPPED.items()},
    "stops of a door hung left": of(carcase(holding(hollin.LOOSE, doors=stopped(hollin.DOOR)))),
    "stops of a door hung right": of(
        carcase(holding(columns(holding(doors=stopped(hollin.DOOR, Side.RIGHT)), holding()))),
    ),
    "stops of a pair of doors": of(
        carcase(holding(tiers(SHELF, holding(hollin.LOOSE, doors=stopped(hollin.PAIR)), holding())))
    ),
    "shelf pins": of(carcase(holding(hollin.ON_PINS))),
    "shelf pins on both sides of a partition": of(
        replace(carcase(holding(columns(holding(hollin.ON_PINS), holding(hollin.ON_PINS)))), partitions=hollin.PLAIN)
    ),
    "shelf pins, many": of(carcase(holding(replace(hollin.ON_PINS, count=7)))),
    "shelf pins beside housings": of(
        carcase(holding(columns(holding(hollin.ON_PINS), holding(tiers(SHELF, holding(), holding())))))
    ),
    "hanging rail": of(replace(carcase(holding(hollin.LOOSE)), hanging_rail=hollin.HANGING)),
    "hanging rail over columns": of(
        replace(
            carcase(holding(columns(holding(hollin.LOOSE), holding(drawer_before_the_rail()), holding()))),
            hanging_rail=hollin.HANGING,
        )
    ),
    "hanging rail, no back": of(replace(carcase(holding(), back=None), hanging_rail=hollin.HANGING)),
    "box": project(boxes=(box(),)),
    "box, inside sizes": project(boxes=(box(over=SizesOver.INSIDE),)),
    "lid of one board": project(boxes=(box(hinged(Slab(stuff=beech(20)))),)),
    "lid of frame and panels": project(boxes=(box(hinged(hollin.PANELLED)),)),
    "lid with stub tenons": project(boxes=(box(hinged(hollin.STUB)),)),
    "lid sawn off": project(boxes=(box(hollin.SAWN),)),
    "till": project(boxes=(box(hinged(Slab(stuff=beech(20))), hollin.TILL),)),
}
SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.toml"))


@pytest.mark.parametrize("piece", KINDS.values(), ids=KINDS)
def test_every_way_of_building_closes(piece: Project) -> None:
    assert faults_of(piece) == []


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_sample_closes(path: Path) -> None:
    whole = plan(read_project(path.read_text(encoding="utf-8"), path.name))
    pieces, findings = put_together(bench_of(whole))
    assert findings == []
    claimed = Derived(whole.project, whole.boards, whole.labels, whole.joints, whole.features, whole.openings)
    assert list(false_claims(claimed, pieces)) == []


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_every_board_of_a_sample_is_in_its_piece(path: Path) -> None:
    whole = plan(read_project(path.read_text(encoding="utf-8"), path.name))
    pieces, _ = put_together(bench_of(whole))
    assert sorted(mark for piece in pieces for mark in piece.wood) == sorted(board.mark for board in whole.boards)


def test_both_halves_of_a_sawn_box_add_up_to_the_closed_box() -> None:
    whole = plan(KINDS["lid sawn off"])
    boards = {board.mark: board for board in whole.boards}
    for role in ("front", "right", "back", "left"):
        halves = [part for part in whole.sawn if part.board == f"K-{role}"]
        assert [part.of_lid for part in halves] == [False, True]
        assert [part.width_nm for part in halves] == [247 * hollin.MM, 100 * hollin.MM]
        assert boards[f"K-{role}"].width_nm == 350 * hollin.MM  # 3 mm of kerf between them
        length = 800 if role in {"front", "back"} else 400
        assert {part.length_nm for part in halves} == {length * hollin.MM}
