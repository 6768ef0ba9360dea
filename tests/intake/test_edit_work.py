"""Drawers added and taken out, timber swapped, sizes changed."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.carcase import Carcase, Stand
from planner.domain.drawer import Drawer
from planner.domain.material import Material
from planner.domain.project import Project
from planner.domain.space import Division, LooseShelves, Space
from planner.domain.words import Hardness, MaterialKind
from planner.errors import InputError
from planner.intake.edit import Draft
from planner.intake.edit_drawers import NewDrawer, add_drawer, remove_drawer
from planner.intake.edit_sizes import resize
from planner.intake.edit_timber import swap_timber
from planner.intake.project_file import read_project
from planner.lengths import Nm, Unit, read_length
from tests.intake.edits import BOXES, CABINET, CHEST, NAMES, changed, of_other_material, refused_work, sample, with_work
from tests.intake.files import chest
from tests.intake.furniture import FURNITURE
from tests.strategies import projects


def drawers(project: Project) -> dict[str, Drawer]:
    return {drawer.ring.mark: drawer for drawer in project.drawers()}


def marks(project: Project) -> list[list[str]]:
    """Marks of the drawers, column by column."""
    return [
        [leaf.holds.ring.mark for leaf in column.leaves() if isinstance(leaf.holds, Drawer)]
        for carcase in project.carcases
        for column in columns(carcase)
    ]


def columns(carcase: Carcase) -> tuple[Space, ...]:
    assert isinstance(carcase.inside.holds, Division)
    return carcase.inside.holds.spaces


def sizes(column: Space) -> list[Nm | None]:
    """What the tiers of a column say of their heights."""
    assert isinstance(column.holds, Division)
    return [tier.size_nm for tier in column.holds.spaces]


# --- drawers ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("beside", "above", "wanted"),
    [
        ("D6", False, ["D1", "D2", "D3", "D4", "D5", "D6", "D7"]),
        ("D1", True, ["D7", "D1", "D2", "D3", "D4", "D5", "D6"]),
        ("D3", False, ["D1", "D2", "D3", "D7", "D4", "D5", "D6"]),
        ("D4", True, ["D1", "D2", "D3", "D7", "D4", "D5", "D6"]),
    ],
)
def test_a_new_drawer_goes_where_it_is_wanted_and_renames_none(beside: str, above: bool, wanted: list[str]) -> None:  # noqa: FBT001
    before = sample(CHEST)
    after = with_work(before, lambda draft: add_drawer(draft, NewDrawer(beside=beside, above=above)))
    assert marks(after) == [wanted]
    new = drawers(after)
    assert {mark: new[mark] for mark in drawers(before)} == drawers(before)
    like = new["D1"]
    assert new["D7"].ring.boards[0].stuff == like.ring.boards[0].stuff
    assert (new["D7"].bottom, new["D7"].side_clearance_nm) == (like.bottom, like.side_clearance_nm)


@pytest.mark.parametrize("name", [CHEST, CABINET])
def test_a_drawer_added_and_taken_out_again_leaves_the_project_as_it_was(name: str) -> None:
    before = sample(name)
    for beside in drawers(before):
        for above in (False, True):
            new = NewDrawer(beside=beside, above=above, mark="N1")
            after = with_work(before, lambda draft, new=new: add_drawer(draft, new))  # type: ignore[misc]
            assert with_work(after, lambda draft: remove_drawer(draft, "N1")) == before


def test_a_drawer_taken_out_and_put_back_under_its_mark_is_there_again() -> None:
    chest = sample(CHEST)
    for mark, below in (("D1", None), ("D4", "D3"), ("D6", "D5")):
        fewer = with_work(chest, lambda draft, mark=mark: remove_drawer(draft, mark))  # type: ignore[misc]
        assert marks(fewer) == [[each for each in drawers(chest) if each != mark]]
        new = NewDrawer(beside=below or "D2", above=below is None, mark=mark)
        assert with_work(fewer, lambda draft, new=new: add_drawer(draft, new)) == chest  # type: ignore[misc]


def test_the_next_free_mark_is_taken() -> None:
    """Of D1 to D6 without D3, the next usual mark for a sixth drawer would be D6, which is on the wood."""
    fewer = with_work(sample(CHEST), lambda draft: remove_drawer(draft, "D3"))
    again = with_work(fewer, lambda draft: add_drawer(draft, NewDrawer(beside="D2")))
    assert marks(again) == [["D1", "D2", "D7", "D4", "D5", "D6"]]
    cabinet = with_work(sample(CABINET), lambda draft: add_drawer(draft, NewDrawer(beside="D103")))
    assert marks(cabinet) == [["D101", "D102", "D103", "D104"], ["D201", "D202", "D203", "D204"]]


def test_where_heights_are_listed_a_new_drawer_is_as_high_as_said_or_as_its_neighbour() -> None:
    def heights(new: NewDrawer) -> list[Nm | None]:
        return sizes(columns(with_work(sample(CABINET), lambda draft: add_drawer(draft, new)).carcases[0])[1])

    one, two, three = (Nm(mm * 1_000_000) for mm in (90, 120, 180))
    assert heights(NewDrawer(beside="D202")) == [one, two, two, three, None]
    assert heights(NewDrawer(beside="D202", above=True, height="75")) == [one, Nm(75_000_000), two, three, None]
    assert heights(NewDrawer(beside="D204")) == [one, two, three, None, None]
    fewer = with_work(sample(CABINET), lambda draft: remove_drawer(draft, "D202")).carcases[0]
    assert sizes(columns(fewer)[1]) == [one, three, None]


def test_what_cannot_be_done_with_drawers_is_refused() -> None:
    def refused(name: str, new: NewDrawer) -> str:
        return refused_work(sample(name), lambda draft: add_drawer(draft, new))

    graduated = refused(CHEST, NewDrawer(beside="D2", height="4"))
    assert "those of its column are graduated" in graduated
    assert 'carcase.C.column.1.heights "4, 5, rest"' in graduated
    assert "no drawer is marked 'D9'. Known here: D1, D2" in refused(CHEST, NewDrawer(beside="D9"))
    assert "the mark 'D4' is already taken" in refused(CHEST, NewDrawer(beside="D2", mark="D4"))
    assert "'nine' is not a length" in refused(CABINET, NewDrawer(beside="D203", height="nine"))
    assert "no drawer is marked 'X'" in refused_work(sample(CHEST), lambda draft: remove_drawer(draft, "X"))
    assert "no drawer is marked 'K1'" in refused_work(sample(BOXES), lambda draft: remove_drawer(draft, "K1"))


def test_the_last_drawer_of_a_column_stays() -> None:
    one = changed(sample(CABINET), "carcase.B.column.1.drawers", "1")
    said = refused_work(one, lambda draft: remove_drawer(draft, "D101"))
    assert "is the only drawer of carcase.B.column.1. Leave out the whole column" in said


STAND, SIDEBOARD, BOOKCASE = "chest_on_stand", "sideboard", "bookcase_with_drawers"


@pytest.mark.parametrize(
    ("name", "beside", "above", "wanted"),
    [
        (STAND, "D1", False, [["D1", "D5", "D2", "D3", "D4"]]),
        (STAND, "D2", True, [["D1", "D5", "D2", "D3", "D4"]]),
        (STAND, "D3", True, [["D1", "D2", "D5", "D3", "D4"]]),
        (STAND, "D4", False, [["D1", "D2", "D3", "D4", "D5"]]),
        (SIDEBOARD, "D101", False, [["D101", "D102"], ["D201", "D202", "D203", "D204"], ["D301"]]),
        (SIDEBOARD, "D301", True, [["D101"], ["D201", "D202", "D203", "D204"], ["D302", "D301"]]),
        (SIDEBOARD, "D202", False, [["D101"], ["D201", "D202", "D205", "D203", "D204"], ["D301"]]),
        (BOOKCASE, "D1", False, [["D1", "D3", "D2"]]),
    ],
)
def test_a_new_drawer_in_columns_of_tiers_renames_none(
    name: str,
    beside: str,
    above: bool,  # noqa: FBT001
    wanted: list[list[str]],
) -> None:
    before = sample(name)
    after = with_work(before, lambda draft: add_drawer(draft, NewDrawer(beside=beside, above=above)))
    assert marks(after) == wanted
    assert {mark: drawers(after)[mark] for mark in drawers(before)} == drawers(before)


@pytest.mark.parametrize("name", NAMES)
def test_a_drawer_added_anywhere_and_taken_out_again_leaves_every_sample_as_it_was(name: str) -> None:
    before = sample(name)
    for beside in drawers(before):
        for above in (False, True):
            new = NewDrawer(beside=beside, above=above, mark="N1")
            try:
                after = with_work(before, lambda draft, new=new: add_drawer(draft, new))  # type: ignore[misc]
            except InputError as refused:  # two of them ask for a rail that isn't there
                assert "need a rail between them" in str(refused)  # noqa: PT017
                continue
            assert drawers(before).keys() | {"N1"} == drawers(after).keys()
            assert with_work(after, lambda draft: remove_drawer(draft, "N1")) == before


def tier_heights(project: Project) -> list[Nm | None]:
    return sizes(columns(project.carcases[0])[0])


def test_a_new_tier_is_as_high_as_said_or_as_its_neighbour() -> None:
    def added(name: str, **new: Any) -> list[Nm | None]:
        return tier_heights(with_work(sample(name), lambda draft: add_drawer(draft, NewDrawer(**new))))

    short, long, said = (read_length(text, Unit.INCH) for text in ("4 1/2", "6 1/4", "3"))
    assert tier_heights(sample(STAND)) == [short, long, None]
    assert added(STAND, beside="D3") == [short, long, long, None]
    assert added(STAND, beside="D3", height="3") == [short, long, said, None]
    assert added(STAND, beside="D4", above=True) == [short, long, None, None]
    assert added(SIDEBOARD, beside="D101", above=True, height="100") == [Nm(100_000_000), Nm(152_000_000), None]


def test_graduated_tiers_take_no_height_of_a_drawer() -> None:
    rows = "{ divided_by = 'rail', heights = 'graduated', step = 1, tier = [{}, {}, { holds = 'nothing' }] }"
    graduated = changed(sample(CHEST), "carcase.C.column.1", rows)
    told = refused_work(graduated, lambda draft: add_drawer(draft, NewDrawer(beside="D1", height="3")))
    assert "those of its column are graduated" in told
    assert "--leave-out carcase.C.column.1.heights --leave-out carcase.C.column.1.step" in told
    more = with_work(graduated, lambda draft: add_drawer(draft, NewDrawer(beside="D1")))
    assert marks(more) == [["D1", "D3", "D2"]]


def test_a_drawer_of_a_tier_goes_with_its_tier() -> None:
    fewer = with_work(sample(STAND), lambda draft: remove_drawer(draft, "D3"))
    assert marks(fewer) == [["D1", "D2", "D4"]]
    assert tier_heights(fewer) == [read_length("4 1/2", Unit.INCH), None]
    assert drawers(fewer)["D4"] == drawers(sample(STAND))["D4"]


ONE_EACH = "{ tier = [{ column = [{ drawers = 1 }, { tier = [{ mark = 'N', doors = {} }] }] }, { holds = 'shelves' }] }"
"""Two columns over shelves: one counts its drawer, one has a tier for it, with a door."""


def test_the_last_drawer_of_a_column_within_another_stays() -> None:
    """What is told to be right is taken."""
    shelves = "carcase.C.shelves"
    chest = changed(sample(CHEST), "carcase.C.column.1", ONE_EACH, "carcase.C.partitions", "{}", shelves, "{}")
    place = "carcase.C.column.1.tier.1.column"
    said = refused_work(chest, lambda draft: remove_drawer(draft, "D1"))
    assert f"is the only drawer of {place}.1. Leave out the whole column: --leave-out {place}.1" in said
    assert marks(changed(chest, left_out=(f"{place}.1",))) == [["N"]]
    said = refused_work(chest, lambda draft: remove_drawer(draft, "N"))
    assert f"Leave out the whole column: --leave-out {place}.2; or leave its space empty: " in said
    assert said.endswith(f"planner change PROJECT {place}.2.tier.N.holds nothing --leave-out {place}.2.tier.N.mark")
    empty = changed(chest, f"{place}.2.tier.N.holds", "nothing", left_out=(f"{place}.2.tier.N.mark",))
    assert marks(empty) == [["D1"]]


def test_the_only_drawer_of_all_stays_too() -> None:
    one = changed(chest(), "carcase.C.column.1.drawers", "1")
    said = refused_work(one, lambda draft: remove_drawer(draft, "D1"))
    assert "Leave its space empty: planner change PROJECT carcase.C.column.1 '{ tier = [{ holds = " in said
    assert marks(changed(one, "carcase.C.column.1", said.rpartition(" '")[2].removesuffix("'"))) == [[]]


def test_a_second_drawer_asks_for_the_rails_it_needs() -> None:
    one = changed(sample(CHEST), "carcase.C.column.1.drawers", "1", left_out=("carcase.C.rails",))
    assert "carcase.C.rails: is missing" in refused_work(one, lambda draft: add_drawer(draft, NewDrawer(beside="D1")))


def test_a_full_column_takes_no_more() -> None:
    assert len(drawers(chest())) == 3
    fifty = changed(chest(), "carcase.C.column.1.drawers", "50")
    assert "no usual mark is left" in refused_work(fifty, lambda draft: add_drawer(draft, NewDrawer(beside="D1")))
    said = refused_work(fifty, lambda draft: add_drawer(draft, NewDrawer(beside="D1", mark="N")))
    assert "51 can't be taken. Write a whole number from 1 to 50." in said


# --- timber -------------------------------------------------------------------------------------------------


def swapped(project: Project, old: str, new: str, *within: str) -> Project:
    return with_work(project, lambda draft: swap_timber(draft, old, new, within))


@given(projects(), st.data())
def test_a_timber_swapped_everywhere_is_swapped_in_every_stuff(project: Project, data: st.DataObject) -> None:
    old = data.draw(st.sampled_from([material.name for material in project.materials]))
    other = data.draw(st.sampled_from(["Another timber", *(material.name for material in project.materials)]))
    expected = of_other_material(project, old, other)
    if expected == project and old != other:
        with pytest.raises(InputError, match="nothing here is of"):
            swapped(project, old, other)
        return
    made = (
        []
        if any(m.name == other for m in project.materials)
        else [replace(project.material(old), name=other, species=None)]
    )
    if old == other and all(stuff != old for stuff in materials_of(project)):
        return
    assert swapped(project, old, other) == replace(expected, materials=(*project.materials, *made))


def materials_of(project: Project) -> set[str]:
    """Names of the materials that anything is made of."""
    return {name for name in (m.name for m in project.materials) if of_other_material(project, name, "\0") != project}


@pytest.mark.parametrize("name", NAMES)
def test_every_timber_of_a_sample_is_swapped_in_every_stuff(name: str) -> None:
    project = sample(name)
    for material in project.materials:
        got = swapped(project, material.name, "Another")
        assert got != project
        assert replace(got, materials=()) == of_other_material(replace(project, materials=()), material.name, "Another")


def test_only_what_is_named_is_swapped() -> None:
    cabinet = sample(CABINET)
    (carcase,) = cabinet.carcases
    own = swapped(cabinet, "beech", "sycamore", "B").carcases[0]
    expected = of_other_material(carcase, "beech", "sycamore")
    assert own == replace(expected, inside=carcase.inside)
    drawer = drawers(swapped(cabinet, "birch plywood", "beech", "D103"))
    assert drawer == drawers(cabinet) | {"D103": of_other_material(drawers(cabinet)["D103"], "birch plywood", "beech")}
    two = drawers(swapped(cabinet, "sycamore", "beech", "D101", "D204"))
    assert two == drawers(cabinet) | {
        mark: of_other_material(drawers(cabinet)[mark], "sycamore", "beech") for mark in ("D101", "D204")
    }
    boxes = sample(BOXES)
    assert swapped(boxes, "walnut", "lime plywood", "K").boxes == of_other_material(
        boxes.boxes, "walnut", "lime plywood"
    )


FURNITURE_PROJECT = read_project(FURNITURE, "furniture")
"""A file that says something of everything that a piece can have."""


def test_every_timber_is_swapped_wherever_one_can_be_named() -> None:
    for material in FURNITURE_PROJECT.materials:
        got = swapped(FURNITURE_PROJECT, material.name, "Another")
        wanted = of_other_material(replace(FURNITURE_PROJECT, materials=()), material.name, "Another")
        assert replace(got, materials=()) == wanted


def test_the_timber_of_one_piece_alone_is_swapped_in_its_base_doors_and_shelves() -> None:
    """Its drawers stay: those of another timber are named by their own marks."""
    (cabinet, stand) = FURNITURE_PROJECT.carcases
    got = swapped(FURNITURE_PROJECT, "elm", "pine", "S").carcases
    assert got == (cabinet, replace(of_other_material(stand, "elm", "pine"), inside=stand.inside))
    assert isinstance(got[1].base, Stand)
    assert got[1].base.leg.material == "pine"
    ply = swapped(FURNITURE_PROJECT, "ply", "elm", "C").carcases[0]
    assert ply.frames == of_other_material(cabinet.frames, "ply", "elm") != cabinet.frames
    pine = swapped(FURNITURE_PROJECT, "pine", "elm", "C").carcases[0]
    assert loose(pine) == {"elm"} != loose(cabinet)
    assert list(pine.drawers()) == list(cabinet.drawers())
    lid = swapped(FURNITURE_PROJECT, "pine", "elm", "L").boxes[0]
    assert lid == of_other_material(FURNITURE_PROJECT.boxes[0], "pine", "elm")


def loose(carcase: Carcase) -> set[str]:
    """Timbers of the loose shelves."""
    return {leaf.holds.stuff.material for leaf in carcase.inside.leaves() if isinstance(leaf.holds, LooseShelves)}


def test_drawers_stay_when_the_timber_of_their_carcase_is_swapped() -> None:
    said = refused_work(sample(CABINET), lambda draft: swap_timber(draft, "sycamore", "beech", ["B"]))
    assert "B: nothing here is of 'sycamore'." in said


def test_a_new_timber_is_of_the_kind_and_hardness_of_the_old() -> None:
    chest = sample(CHEST)
    assert swapped(chest, "poplar", "basswood").material("basswood").hardness is Hardness.SOFT
    sheet = swapped(chest, "birch plywood", "oak plywood").material("oak plywood")
    assert sheet == Material(name="oak plywood", kind=MaterialKind.SHEET, hardness=Hardness.HARD)
    assert swapped(swapped(chest, "ash", "oak"), "oak", "ash") == replace(
        chest, materials=(*chest.materials, Material(name="oak"))
    )


@pytest.mark.parametrize(
    ("old", "new", "within", "told"),
    [
        ("ahs", "oak", [], "Landing chest: ahs: is not one of the project's materials. Did you mean ash?"),
        ("ash", "oak", ["D9"], "no box, carcase or drawer is marked 'D9'. Known here: C, D1, D2"),
        ("ash", " oak", [], "has blanks at an end"),
    ],
)
def test_what_cannot_be_swapped_is_refused(old: str, new: str, within: list[str], told: str) -> None:
    assert told in refused_work(sample(CHEST), lambda draft: swap_timber(draft, old, new, within))


def test_one_box_of_a_batch_cannot_be_of_other_timber() -> None:
    said = refused_work(sample(BOXES), lambda draft: swap_timber(draft, "walnut", "cherry", ["K3"]))
    assert "K3: is one of the batch K, whose boxes are all alike. Name them all: K." in said


# --- sizes --------------------------------------------------------------------------------------------------


def test_sizes_are_changed_by_mark() -> None:
    def resized(name: str, mark: str, **sizes: str) -> Project:
        return with_work(sample(name), lambda draft: resize(draft, mark, sizes))

    (carcase,) = sample(CHEST).carcases
    wider = resized(CHEST, "C", width="24", depth="400 mm").carcases
    assert wider == (replace(carcase, width_nm=read_length("24", Unit.INCH), depth_nm=Nm(400_000_000)),)
    on_stand = sample(STAND).carcases
    assert resized(STAND, "C", height="24").carcases == (replace(on_stand[0], height_nm=read_length("24", Unit.INCH)),)
    outer, *inner = sample("nest_of_boxes").boxes
    longer = resized("nest_of_boxes", "N1", length="430").boxes  # each of a nest is a box of its own by now
    assert longer == (replace(outer, length_nm=Nm(430_000_000)), *inner)
    higher = resized(BOXES, "K", height="80").boxes
    assert higher == tuple(replace(box, height_nm=Nm(80_000_000)) for box in sample(BOXES).boxes)


@pytest.mark.parametrize(
    ("name", "mark", "sizes", "told"),
    [
        (CHEST, "D3", {"height": "4"}, "is a drawer, whose sizes follow from its opening."),
        (CHEST, "X", {"height": "4"}, "no box or carcase is marked 'X'. Known here: C."),
        (CHEST, "C", {}, "no size is given."),
        (CHEST, "C", {"length": "4"}, "carcase.C.length: in carcase.C, 'length' is not known."),
        (CHEST, "C", {"height": "tall"}, "carcase.C.height: 'tall' is not a length."),
        (BOXES, "K2", {"height": "4"}, "is one of the batch K"),
        (BOXES, "K", {"depth": "4"}, "box.K.depth: in box.K, 'depth' is not known."),
    ],
)
def test_sizes_that_cannot_be_given_are_refused(name: str, mark: str, sizes: dict[str, str], told: str) -> None:
    assert told in refused_work(sample(name), lambda draft: resize(draft, mark, sizes))


def test_work_that_is_refused_says_so_whatever_else_was_done() -> None:
    draft = Draft(sample(CHEST))
    draft.change("carcase.C.height", "38")
    remove_drawer(draft, "D9")
    with pytest.raises(InputError, match="no drawer is marked"):
        draft.finished()
