"""Weights: a box and a drawer by hand, and the samples against the wood that an oracle finds left."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from math import pi

import pytest

from planner.derive.assembly import assembly
from planner.derive.weights import weights
from planner.domain.project import Project
from planner.domain.use import Load, LoadKind, LoadUnit, Use
from planner.domain.weights import Part, Weight, Weights
from planner.domain.words import FeatureKind, JointKind
from planner.lengths import Nm
from planner.pipeline import plan
from tests.golden.hand import sample
from tests.oracle.assembly_space import less_all
from tests.oracle.wood import block_of, volume, wood
from tests.pieces import six_drawers, small_box
from tests.timbers import at_twelve, facts_with, timber

IN = 0.0254
SAMPLES = (
    "bench_cabinet", "blanket_chest", "bookcase_with_drawers", "chest_on_stand", "letter_box", "nest_of_boxes",
    "sideboard", "six_drawer_chest", "tool_chest", "twelve_boxes", "wall_cabinet",
)  # fmt: skip
GRAVITY = 1 / 1.12
"""At 12 % this weighs 1000 kg/m³: kilograms are litres."""

WATER = timber(GRAVITY)


def of(found: Weights, mark: str, part: Part = Part.BOARD) -> Weight:
    weight = found.find(mark, part)
    assert weight is not None
    return weight


# --- by hand -----------------------------------------------------------------------------------------------


def test_a_box_weighs_its_corners_once() -> None:
    """Pins and tails together fill every corner: the ring weighs (outside − inside) · height, less the groove."""
    project = small_box()
    (box,) = project.boxes
    found = facts_with(project, {"ash": WATER, "ply": WATER}).weights
    long, wide, high = (side / 25.4e6 for side in (box.length_nm, box.width_nm, box.height_nm))
    assert (long, wide, high) == (12, 8, 5.5)  # over the inside
    ring = (13 * 9 - 12 * 8) * 5.5
    grooves = 2 * (12 + 8) * 0.25 * 0.25
    shown = sum(of(found, board.mark).kg for board in box.ring.boards)
    # Grooves that run on through the corners are not counted: four at most, 1/4 x 1/4 x 1/2 in.
    assert shown == pytest.approx((ring - grooves) * IN**3 * 1000, abs=4 * 0.25 * 0.25 * 0.5 * IN**3 * 1000)


def test_pins_weigh_what_their_mean_width_fills() -> None:
    """A board with pins at both ends loses the sockets.

    ``small_box``: sides of 1/2 in carry pins at 1:8, half-pin 1/4, so each pin widens by 1/16 on every sloped side.
    """
    project = small_box()
    made = plan(project)
    joint = made.joints[0]
    pins = sum(stop - start for start, stop in joint.pins) / 25.4e6
    sloped = 2 * len(joint.tails)
    mean = pins + sloped * (0.5 / 8) / 2
    board = next(board for board in made.boards if board.mark == joint.pin_board)
    whole = board.place.size(board.lie.along) / 25.4e6
    width = board.width_nm / 25.4e6
    without_groove = replace(project, boxes=(replace(project.boxes[0], bottom=None),))
    found = facts_with(without_groove, {"ash": WATER}).weights
    expected = 0.5 * (width * (whole - 2 * 0.5) + 2 * 0.5 * mean)
    assert of(found, board.mark).kg == pytest.approx(expected * IN**3 * 1000, rel=1e-9)


def test_half_blind_corners_are_filled_once_too() -> None:
    """The ring of a half-blind drawer, without its bottom, is as heavy as what it fills."""
    made = sample("chest_on_stand.toml")
    drawer = next(each for each in made.project.drawers() if any(c.lap_nm for c in each.ring.corners))
    assert {corner.kind for corner in drawer.ring.corners} == {JointKind.HALF_BLIND, JointKind.THROUGH_DOVETAIL}
    places = {board.mark: block_of(board.place) for board in made.boards if board.box == drawer.ring.mark}
    ring = [board.mark for board in drawer.ring.boards]
    boards = {board.mark: board for board in made.boards}
    project = at_twelve(made.project)
    found = weights(project, boards, ((), made.joints), made.openings, dict.fromkeys(_materials(made.project), WATER))
    filled = volume(_union([places[mark] for mark in ring])) * 1e-27 * 1000
    assert sum(of(found, mark).kg for mark in ring) == pytest.approx(filled, rel=1e-9)


def _materials(project: Project) -> list[str]:
    return [material.name for material in project.materials]


def _union(blocks: list) -> list:  # type: ignore[type-arg]
    left: list = []  # type: ignore[type-arg]
    for block in blocks:
        left += less_all([block], left)
    return left


# --- against the wood that an oracle finds left ------------------------------------------------------------


@cache
def weighed(name: str) -> tuple[Project, Weights, dict[str, int]]:
    """A sample all of water, its weights, and the volume of each board by the oracle, round holes round."""
    made = sample(f"{name}.toml")
    project = made.project
    found = facts_with(project, dict.fromkeys(_materials(project), WATER)).weights
    put = assembly(project)
    solids = wood([*put.boards.values(), *put.let_in, *put.shapes])
    sizes = {mark: volume(blocks) for mark, blocks in solids.items()}
    for cut in made.features:
        if cut.kind is FeatureKind.HOLE:
            square = (cut.x[1] - cut.x[0]) * (cut.u[1] - cut.u[0]) * (cut.y[1] - cut.y[0])
            sizes[cut.board] += round(square * (1 - pi / 4))
    return project, found, sizes


def _dovetailed(name: str) -> set[str]:
    return {mark for joint in sample(f"{name}.toml").joints for mark in (joint.pin_board, joint.tail_board)}


@pytest.mark.parametrize("name", SAMPLES)
def test_boards_without_dovetails_weigh_the_wood_that_is_left(name: str) -> None:
    _, found, sizes = weighed(name)
    plain = set(sizes) - _dovetailed(name)
    assert plain
    for mark in plain:
        assert of(found, mark).kg == pytest.approx(sizes[mark] * 1e-24, rel=1e-6), mark


@pytest.mark.parametrize("name", SAMPLES)
def test_dovetailed_rings_weigh_what_they_fill_but_for_cuts_in_their_corners(name: str) -> None:
    """The bound that the module states: the section of each cut times the thickness of the corner that it runs into."""
    project, found, _ = weighed(name)
    put = assembly(project)
    solids = wood([*put.boards.values(), *put.let_in, *put.shapes])
    for ring in project.rings():
        marks = [board.mark for board in ring.boards]
        if not set(marks) <= _dovetailed(name):
            continue
        filled = volume(_union([block for mark in marks for block in solids[mark]])) * 1e-24
        bound = sum(_sections(name, mark) for mark in marks) * 1e-24
        weighs = sum(of(found, mark).kg for mark in marks)
        assert filled - 1e-9 <= weighs <= filled + bound + 1e-9, ring.mark


def _sections(name: str, mark: str) -> int:
    """Cuts of a board that reach a corner of its ring, at both its ends, over the thickest board of the ring."""
    made = sample(f"{name}.toml")
    thick = max(board.thickness_nm for board in made.boards if board.mark in _dovetailed(name))
    return sum(2 * thick * (cut.u[1] - cut.u[0]) * (cut.y[1] - cut.y[0]) for cut in made.features if cut.board == mark)


@pytest.mark.parametrize("name", SAMPLES)
def test_a_piece_weighs_its_parts_and_balances_where_they_do(name: str) -> None:
    project, found, _ = weighed(name)
    for whole in (weight for weight in found.of if weight.part is Part.PIECE):
        boards = [weight for weight in found.of if weight.part is Part.BOARD and weight.piece == whole.mark]
        assert whole.kg == pytest.approx(sum(board.kg for board in boards))
        for axis in range(3):
            moment = sum(board.kg * board.centre[axis] for board in boards)
            assert whole.centre[axis] == pytest.approx(moment / whole.kg, abs=2)
        parts = [
            weight
            for weight in found.of
            if weight.part in {Part.DRAWER, Part.DOOR, Part.REST} and weight.piece == whole.mark
        ]
        assert whole.kg == pytest.approx(sum(part.kg for part in parts))
        drawers = {drawer.ring.mark for drawer in project.drawers()}
        fills = sum(part.filled_kg - part.kg for part in parts if part.mark in drawers)
        assert whole.filled_kg == pytest.approx(whole.kg + fills)


def test_a_symmetric_piece_balances_in_its_middle() -> None:
    found = facts_with(six_drawers(), {"ash": WATER, "ply": WATER}).weights
    (carcase,) = six_drawers().carcases
    assert of(found, "C", Part.PIECE).centre[0] == pytest.approx(carcase.width_nm / 2, abs=1000)


# --- what is filled, and what is not known -----------------------------------------------------------------


def load_of(thousandths: int, unit: LoadUnit) -> Load:
    return Load(kind=LoadKind.OWN, thousandths=thousandths, unit=unit)


@pytest.mark.parametrize(
    ("load", "dimensions", "factor"),
    [
        (load_of(2_000, LoadUnit.KG_M), 1, 2.0),
        (load_of(30_000, LoadUnit.KG_M2), 2, 30.0),
        (load_of(100_000, LoadUnit.KG_M3), 3, 100.0),
        (load_of(8_500, LoadUnit.LB_FT3), 3, 136.157),
        (None, 3, 136.157),
        (Load(kind=LoadKind.CLOTHES), 3, 136.157),
        (Load(kind=LoadKind.BOOKS), 3, 640.74),
        (Load(kind=LoadKind.CABINET_CLASS), 2, 73.236),
    ],
)
def test_a_drawer_is_filled_with_what_the_maker_says(load: Load | None, dimensions: int, factor: float) -> None:
    """8.5 lb/ft³ is 136.157 kg/m³ (own conversion), 40 lb/ft³ 640.74, 15 lb/ft² 73.236 kg/m² (718.2 Pa)."""
    chest = six_drawers()
    (carcase,) = chest.carcases
    used = replace(chest, carcases=(replace(carcase, use=Use(drawers=load)),))
    facts = facts_with(used, {"ash": WATER, "ply": WATER})
    drawer = of(facts.weights, "D1", Part.DRAWER)
    front, right, back, left = (facts.boards[f"D1-{side}"].place for side in ("front", "right", "back", "left"))
    opening = next(each for each in facts.openings if each.drawer == "D1")
    width = (right.right[0] - left.right[1]) * 1e-9
    depth = (back.back[0] - front.back[1]) * 1e-9
    height = (opening.place.up[1] - facts.boards["D1-bottom"].place.up[1]) * 1e-9
    expected = factor
    for size in (width, depth, height)[:dimensions]:
        expected *= size
    assert drawer.filled_kg - drawer.kg == pytest.approx(expected, rel=1e-4)


def test_without_a_timber_nothing_made_of_the_material_has_a_weight() -> None:
    found = facts_with(six_drawers(), {"ash": WATER}).weights
    assert found.unknown == ("ply",)
    assert found.find("D1-front", Part.BOARD) is not None
    assert found.find("D1", Part.DRAWER) is None  # its bottom is plywood
    assert found.find("C", Part.PIECE) is None
    assert plan(six_drawers()).weights.of == ()


def test_wood_weighs_what_it_does_at_the_moisture_of_its_room() -> None:
    """Cherry, 0.50 at 12 %: 560 kg/m³. Midway between 6 and 10 %, which are assumed, it is 549.7.

    G_b = 0.5/(1 + 0.265·0.6·0.5) = 0.46318; G_8 = 0.46318/(1 − 0.265·(22/30)·0.46318) = 0.50899; · 1080 = 549.7.
    """
    timbers = {"ash": timber(0.50), "ply": timber(0.50)}
    project = six_drawers()
    made = plan(project)
    boards = {board.mark: board for board in made.boards}
    found = weights(project, boards, (made.features, made.joints), made.openings, timbers)
    litres = of(facts_with(project, {"ash": WATER, "ply": WATER}).weights, "C", Part.PIECE).kg
    assert of(found, "C", Part.PIECE).kg == pytest.approx(0.5497 * litres, rel=1e-4)
    assert of(facts_with(project, timbers).weights, "C", Part.PIECE).kg == pytest.approx(0.56 * litres)


def test_a_rail_s_weight_by_hand() -> None:
    """A rail of the chest: as long as its place, let in at both ends, nothing cut from it: its place is its volume."""
    facts = facts_with(six_drawers(), {"ash": WATER, "ply": WATER})
    rail = facts.boards["D1-rail"]
    litres = 1.0
    for size in (rail.length_nm, rail.width_nm, rail.thickness_nm):
        litres *= size / 1e8
    weight = of(facts.weights, "D1-rail")
    assert weight.kg == pytest.approx(litres)
    low, high = rail.place.back
    assert weight.centre[1] == Nm((low + high) // 2)
