"""One place of a project changed: nothing else is, and what a file would be refused for is refused."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.box import SawnLid
from planner.domain.panelled import Panelled
from planner.domain.project import Project, problems
from planner.domain.space import Division, Space
from planner.domain.words import Hardness, HeightRule
from planner.errors import InputError, Problem
from planner.intake.edit import Draft, places
from planner.intake.place import path_of
from planner.intake.project_file import read_project
from planner.intake.schema import node_at
from planner.intake.write_file import project_tables, write_project
from planner.lengths import Nm, Unit, read_length
from tests.intake.edits import (
    BOXES,
    CABINET,
    CHEST,
    NAMES,
    SAMPLES,
    changed,
    changed_and_said,
    refusals,
    said_in_file,
    sample,
)
from tests.intake.test_bad_files import JARGON
from tests.intake.test_fuzz import SIGNS
from tests.strategies import projects

A_LENGTH = re.compile(r"-?[0-9 /.]+ (?:in|mm)")


def fresh(said: str) -> str:
    """A length a hair longer than the one said, which stands nowhere in the samples, nor is usual."""
    nanometres = read_length(said.removeprefix("-"), Unit.MM) + 300
    sign = "-" if said.startswith("-") else ""
    return f"{sign}{nanometres // 10**6}.{nanometres % 10**6:06d}".rstrip("0") + " mm"


def heights(project: Project, column: int) -> tuple[Nm | None, ...]:
    """What the tiers of a column of the first carcase say of their heights."""
    return tuple(tier.size_nm for tier in division(project, column).spaces)


def division(project: Project, column: int) -> Division:
    """The tiers of a column of the first carcase."""
    tiers = columns(project)[column - 1].holds
    assert isinstance(tiers, Division)
    return tiers


def columns(project: Project) -> tuple[Space, ...]:
    inside = project.carcases[0].inside.holds
    assert isinstance(inside, Division)
    return inside.spaces


def inch(text: str) -> Nm:
    return read_length(text, Unit.INCH)


# --- naming places ------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", NAMES)
def test_every_value_of_a_written_sample_has_a_place_of_the_same_name(name: str) -> None:
    project = sample(name)
    listed = {each.place: each.said for each in places(project, None)}
    assert listed.keys() == said_in_file(project).keys()
    assert all(said is not None for said in listed.values())


def test_places_are_told_with_what_they_mean() -> None:
    by_place = {each.place: each for each in places(sample(CHEST), None)}
    height = by_place["carcase.C.height"]
    assert (height.said, height.meaning) == ("36 in", "Height of the ring, without base and separate top.")
    assert by_place["carcase.C.drawer.bottom.thickness"].said == "1/4 in"
    assert by_place["carcase.C.column.1.drawers"].said == "6"
    assert all(each.meaning for each in by_place.values())


def test_a_table_tells_all_that_may_stand_in_it() -> None:
    by_place = {each.place: each.said for each in places(sample(CABINET), "carcase.B.column.2")}
    assert by_place == {
        "carcase.B.column.2.width": None,
        "carcase.B.column.2.share": None,
        "carcase.B.column.2.tier": None,
        "carcase.B.column.2.drawers": "4",
        "carcase.B.column.2.heights": "90 mm, 120 mm, 180 mm, rest",
        "carcase.B.column.2.ratio": None,
        "carcase.B.column.2.step": None,
        "carcase.B.column.2.marks": None,
        "carcase.B.column.2.divided_by": None,
        "carcase.B.column.2.doors": None,
    }
    assert [each.place for each in places(sample(CABINET), "carcase")] == ["carcase.B"]
    assert [each.said for each in places(sample(CABINET), "carcase.B.height")] == ["760 mm"]
    assert {each.place: each.said for each in places(sample(CABINET), "carcase.B")}["carcase.B.column"] == "2 tables"
    assert next(each.place for each in places(sample(CHEST), "carcase.C.pins")) == "carcase.C.pins.half_pin"


def test_a_table_that_is_not_there_is_refused() -> None:
    with pytest.raises(InputError, match="Did you mean"):
        places(sample(CHEST), "carcase.C.drawr")


@pytest.mark.parametrize(
    "place",
    [
        "carcase.C.height",
        "carcase[1].height",
        "carcase.1.height",
        "'carcase'.C.height",
        '"carcase"."C"."height"',
    ],
)
def test_a_place_may_be_written_in_several_ways(place: str) -> None:
    assert changed(sample(CHEST), place, "38").carcases[0].height_nm == inch("38")


def test_names_with_blanks_need_no_quotes_and_may_have_them() -> None:
    for place in ("material.birch plywood.hardness", "material.'birch plywood'.hardness"):
        project, said = changed_and_said(sample(CHEST), place, "soft")
        assert project.material("birch plywood").hardness is Hardness.SOFT
        assert [each.place for each in said] == ["material.'birch plywood'.hardness"]


# --- setting ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", NAMES)
def test_every_place_of_a_sample_set_to_what_it_says_changes_nothing(name: str) -> None:
    project = sample(name)
    for each in places(project, None):
        assert each.said is not None
        assert changed_and_said(project, each.place, each.said) == (project, ()), each.place


@given(projects())
def test_all_places_of_any_project_set_to_what_they_say_change_nothing(project: Project) -> None:
    pairs = [text for each in places(project, None) for text in (each.place, each.said or "")]
    assert changed_and_said(project, *pairs) == (project, ())


@pytest.mark.parametrize("name", NAMES)
def test_every_length_of_a_sample_can_be_changed_alone_and_changed_back(name: str) -> None:
    project, before = sample(name), said_in_file(sample(name))
    lengths = [each for each in places(project, None) if A_LENGTH.fullmatch(each.said or "")]
    assert len(lengths) >= 10
    for each in lengths:
        other, said = changed_and_said(project, each.place, new := fresh(each.said or ""))
        assert said_in_file(other) == before | {each.place: new}
        assert [(one.place, one.before, one.after) for one in said] == [(each.place, each.said, new)]
        assert changed(other, each.place, each.said or "") == project


def others(project: Project, place: str, said: str) -> Iterator[str]:
    """What else the schema lets stand at a place: the other words, the next counts, the other truth."""
    node = node_at(path_of(project_tables(project), place))
    for form in (node, *node.get("oneOf", ()), *node.get("anyOf", ())):
        yield from (word for word in map(str, form.get("enum", ())) if word != said)
    if said.isdecimal():
        yield from (str(int(said) + more) for more in (1, -1))
    yield from {"true": ("false",), "false": ("true",)}.get(said, ())


@pytest.mark.parametrize("name", NAMES)
def test_what_a_place_is_set_to_can_be_taken_back(name: str) -> None:
    """Whatever is taken: all that was said with it (marks kept, exceptions gone) is told, and undone by its places.

    Unless drawers are alike by now: then the file says once for all of them what it said of one.
    """
    project, taken = sample(name), 0
    before = said_in_file(project)
    for each in places(project, None):
        for other in others(project, each.place, each.said or ""):
            try:
                new, said = changed_and_said(project, each.place, other)
            except InputError:
                continue
            touched = tuple(one.place for one in said)
            if {p for p in before.keys() ^ said_in_file(new).keys() if not p.startswith(touched)}:
                continue
            taken += 1
            draft = Draft(new)
            for one in reversed(said):
                draft.leave_out(one.place) if one.before is None else draft.change(one.place, one.before)
            assert draft.finished() == project, (each.place, other)
    assert taken >= 2


def test_places_within_columns_and_tiers_within_each_other() -> None:
    chest, sideboard, cabinet = sample("chest_on_stand"), sample("sideboard"), sample("wall_cabinet")
    assert tier(changed(chest, "carcase.C.column.1.tier.1.height", "5"), 1).size_nm == inch("5")
    doubled = changed(chest, "carcase.C.column.1.tier.1.column.2.drawers", "2")
    within = tier(doubled, 1).holds
    assert isinstance(within, Division)
    assert [len(list(column.leaves())) for column in within.spaces] == [1, 2]
    doors = tier(changed(sideboard, "carcase.S.column.1.tier.2.doors.stile", "65"), 2).doors
    assert doors is not None
    assert isinstance(doors.made, Panelled)
    assert doors.made.stile_nm == 65_000_000
    hung = tier(changed(cabinet, "carcase.W.column.1.tier.2.column.1.doors", "{}"), 2).holds
    assert isinstance(hung, Division)
    assert [column.doors is not None for column in hung.spaces] == [True, False]
    lower = changed(sample("letter_box"), "box.L.lid.height", "2").boxes[0].lid
    assert isinstance(lower, SawnLid)
    assert lower.height_nm == inch("2")


def tier(project: Project, number: int) -> Space:
    return division(project, 1).spaces[number - 1]


def test_a_tier_and_all_in_it_tell_what_may_stand_there() -> None:
    listed = [each.place for each in places(sample("sideboard"), "carcase.S.column.1.tier.2")]
    assert [place.rpartition(".")[2] for place in listed] == [
        "column_ratio", "column_step", "height", "share", "column", "holds", "mark", "shelves", "doors"
    ]  # fmt: skip
    doors = places(sample("sideboard"), "carcase.S.column.1.tier.1.doors")  # none are there yet
    assert {each.place.rpartition(".")[2] for each in doors} >= {"leaves", "hinged", "stands", "stile", "panel", "wide"}
    assert all(each.meaning and each.said is None for each in doors)
    sled = {each.place.rpartition(".")[2] for each in places(sample(CHEST), "sled.bench")}
    assert sled >= {"slope", "bit", "slot", "greatest_depth_soft", "kept"}


@pytest.mark.parametrize("name", NAMES)
def test_every_table_that_may_stand_in_a_sample_tells_what_may_stand_in_it(name: str) -> None:
    """Every key of the schema is listed with its meaning, below every table that is there or may be."""
    project = sample(name)
    tables, met = {each.place.rpartition(".")[0] for each in places(project, None)} - {""}, 0
    for within in tables:
        for each in places(project, within):
            assert each.place.startswith(within)
            met += 1
            node = node_at(path_of(project_tables(project), each.place))
            if each.said is None and "properties" in node:
                assert [one.place for one in places(project, each.place)] == [
                    f"{each.place}.{key}" for key in node["properties"]
                ]
    assert met > 50


def test_the_first_of_a_list_can_be_given() -> None:
    box = "{ mark = 'T', length = 20, width = 10, height = 6, material = 'ash', thickness = '1/2 in' }"
    (made,) = changed(sample(CHEST), "box.1", box).boxes
    assert made.ring.mark == "T"
    tiers = changed(
        sample(CHEST), "carcase.C.column.1.tier.1", "{}",
        left_out=tuple(f"carcase.C.column.1.{key}" for key in ("drawers", "heights", "step")),
    )  # fmt: skip
    assert len(list(tiers.drawers())) == 1


def test_drawers_keep_their_marks_when_others_come_and_go_in_the_same_column() -> None:
    """D1 and D2 stand side by side over D3 and D4; a third beside them can't be D2 or D3, which are on the wood."""
    chest = sample("chest_on_stand")
    more = changed(chest, "carcase.C.column.1.tier.1.column.1.drawers", "2")
    assert [drawer.ring.mark for drawer in more.drawers()] == ["D1", "D5", "D2", "D3", "D4"]
    beside = changed(chest, "carcase.C.column.1.tier.1.column.3", "{ drawers = 1 }")
    assert [drawer.ring.mark for drawer in beside.drawers()] == ["D1", "D2", "D5", "D3", "D4"]
    empty = changed(chest, "carcase.C.column.1.tier.2.holds", "nothing")
    assert [drawer.ring.mark for drawer in empty.drawers()] == ["D1", "D2", "D4"]
    gone = changed(chest, left_out=("carcase.C.column.1.tier.1",))
    assert [drawer.ring.mark for drawer in gone.drawers()] == ["D3", "D4"]
    named = changed(sample("sideboard"), "carcase.S.column.1.tier.1.mark", "TOP")
    assert [drawer.ring.mark for drawer in named.drawers()] == ["TOP", "D201", "D202", "D203", "D204", "D301"]
    said = refusals(sample("sideboard"), "carcase.S.column.1.tier.1.mark", "D301")
    assert "the mark 'D301' is already taken" in " ".join(map(str, said))


def test_what_is_said_lands_in_the_field_that_is_meant() -> None:
    chest = sample(CHEST)
    (carcase,) = chest.carcases
    assert changed(chest, "carcase.C.height", "38").carcases == (replace(carcase, height_nm=inch("38")),)
    assert changed(chest, "project.proud", "0").proud_nm == 0
    assert changed(chest, "material.poplar.hardness", "hard").material("poplar").hardness is Hardness.HARD
    assert changed(chest, "sled.bench.slope", "7 deg").sleds[0].run_micro == 8_144_346  # cot 7° = 8.144 346 4
    assert changed(chest, "rates.pass", "9").rates == replace(chest.rates, pass_s=9)
    assert changed(chest, "pins.alike", "true").carcases[0].ring.spacing.alike is True
    (box, *_) = changed(sample(BOXES), "box.K.count", "2").boxes
    assert (box.ring.mark, box.batch) == ("K1", "K")


def test_tables_on_the_way_are_made() -> None:
    chest = sample(CHEST)
    drawers = {drawer.ring.mark: drawer for drawer in chest.drawers()}
    wanted = replace(drawers["D6"].bottom, stuff=replace(drawers["D6"].bottom.stuff, thickness_nm=inch("3/8")))  # type: ignore[type-var, union-attr]
    got = changed(chest, "carcase.C.except.D6.bottom.thickness", "3/8")
    assert {drawer.ring.mark: drawer for drawer in got.drawers()} == drawers | {
        "D6": replace(drawers["D6"], bottom=wanted)
    }


def test_lists_may_be_typed_with_commas_or_as_in_a_file() -> None:
    cabinet = sample(CABINET)
    for text in ("90, 100, rest, 200", '["90 mm", 100, "rest", "200"]', "90 mm,100 mm,rest,200 mm"):
        assert heights(changed(cabinet, "carcase.B.column.2.heights", text), 2) == (
            90_000_000, 100_000_000, None, 200_000_000
        )  # fmt: skip
    listed = changed(sample(CHEST), "pins.places", '[["1 in", "1 1/4 in"], [3, "3.5"]]').carcases[0].ring.spacing
    assert listed.places == ((inch("1"), inch("1 1/4")), (inch("3"), inch("3 1/2")))


def test_one_entry_of_a_list_can_be_changed_or_left_out() -> None:
    cabinet = sample(CABINET)
    other = changed(cabinet, "carcase.B.column.2.heights.3", "150")
    assert heights(other, 2) == (90_000_000, 120_000_000, 150_000_000, None)
    fewer = changed(cabinet, "carcase.B.column.2.drawers", "3", left_out=("carcase.B.column.2.heights.2",))
    assert heights(fewer, 2) == (90_000_000, 180_000_000, None)


def test_what_goes_together_is_changed_together() -> None:
    chest = sample(CHEST)
    place = "carcase.C.column.1"
    assert len(refusals(chest, f"{place}.heights", "equal")) == 1  # the step is left over
    tiers = division(changed(chest, f"{place}.heights", "equal", left_out=(f"{place}.step",)), 1)
    assert (tiers.rule, tiers.step_nm) == (HeightRule.EQUAL, None)


def test_what_is_new_is_given_whole() -> None:
    cabinet = sample(CABINET)
    got = changed(cabinet, "carcase.B.column.3", "{ drawers = 1, width = 200 }")
    assert [column.size_nm for column in columns(got)] == [400_000_000, None, 200_000_000]
    assert [drawer.ring.mark for drawer in got.drawers()][-1] == "D301"
    oak = changed(cabinet, "material.oak", "{}", "carcase.B.material", "oak")
    assert oak.carcases[0].ring.boards[0].stuff.material == "oak"
    box = "{ mark = 'T', length = 200, width = 100, height = 60, material = 'beech', thickness = 12 }"
    assert [each.ring.mark for each in changed(sample(BOXES), "box.2", box.replace("beech", "walnut")).boxes][-1] == "T"


@pytest.mark.parametrize(
    ("name", "place", "usual"),
    [
        (BOXES, "project.proud", "0.4 mm"),
        (BOXES, "pins.half_pin", "6 mm"),
        (BOXES, "pins.greatest_tail", "45 mm"),
        (CHEST, "pins.tail", "1 in"),
    ],
)
def test_where_nothing_is_said_any_more_the_usual_of_the_handbook_counts(name: str, place: str, usual: str) -> None:
    """The usual values as the README lists them."""
    project = sample(name)
    said = {each.place: each.said for each in places(project, None)}[place]
    got = changed(project, left_out=(place,))
    assert got != project
    assert got == changed(project, place, usual)
    assert changed(got, place, said or "") == project


def test_a_part_that_is_left_out_is_not_made() -> None:
    cabinet = sample(CABINET)
    assert changed(cabinet, left_out=("carcase.B.back",)).carcases == (replace(cabinet.carcases[0], back=None),)
    assert all(d.bottom is None for d in changed(cabinet, left_out=(
        "carcase.B.drawer.bottom", "carcase.B.except.D103")).drawers())  # fmt: skip


def test_drawers_keep_their_marks_when_columns_come_and_go() -> None:
    """A cabinet of one column has drawers D1, D2 …; of two, D101, D201 …: but what stands on the wood stays."""
    cabinet, chest = sample(CABINET), sample(CHEST)
    right = changed(cabinet, left_out=("carcase.B.column.1",))
    assert [drawer.ring.mark for drawer in right.drawers()] == ["D201", "D202", "D203", "D204"]
    assert columns(right) == columns(cabinet)[1:]
    more, said = changed_and_said(chest, "carcase.C.column.2", "{ drawers = 2 }", "carcase.C.partitions", "{}")
    assert [drawer.ring.mark for drawer in more.drawers()] == ["D1", "D2", "D3", "D4", "D5", "D6", "D201", "D202"]
    assert "carcase.C.column.1.marks" in [each.place for each in said]
    fewer = changed(more, "carcase.C.column.1.drawers", "5", "carcase.C.column.1.marks", "D1, D2, D3, D4, D5")
    assert [drawer.ring.mark for drawer in fewer.drawers()] == ["D1", "D2", "D3", "D4", "D5", "D201", "D202"]


def test_what_was_different_about_a_drawer_goes_with_it_but_not_with_its_mark() -> None:
    cabinet = sample(CABINET)
    fewer, said = changed_and_said(cabinet, "carcase.B.column.1.drawers", "2")
    assert [drawer.ring.mark for drawer in fewer.drawers()][:3] == ["D101", "D102", "D201"]
    assert "carcase.B.except.D103" in [each.place for each in said]
    renamed = refusals(cabinet, "carcase.B.column.1.marks", "D101, D102, P1")
    assert "no drawer of this carcase is marked 'D103'" in " ".join(map(str, renamed))


def test_a_draft_leaves_the_project_as_it_was() -> None:
    project = sample(CABINET)
    text = write_project(project)
    changed(project, "carcase.B.height", "800", "pins.tail", "30", left_out=("carcase.B.column.1",))
    assert write_project(project) == text


# --- refusals -----------------------------------------------------------------------------------------------

REFUSED = [
    (
        "carcase.C.heigth",
        "38",
        "in carcase.C, 'heigth' is not known. Did you mean carcase.C.height? Height of the ring",
    ),
    ("carcase.K.height", "38", "carcase has no 'K'. Known here: C."),
    ("material.pplar.hardness", "soft", "in material, 'pplar' is not known. Did you mean material.poplar?"),
    ("material.oak.kind", "solid", "Known here: ash, poplar, birch plywood. A new one must be given whole."),
    ("carcase.C.column.2.drawers", "3", "carcase.C.column has no number 2. It has 1, counted from 1."),
    ("carcase.C.column.0.drawers", "3", "carcase.C.column has no number 0."),
    ("carcase.C.column.99999.drawers", "3", "carcase.C.column has no '99999'. Write a number from 1 to 1."),
    ("carcase.C.height.inner", "3", "in carcase.C.height, 'inner' is not known. Nothing stands below it"),
    ("carcase.C.back", "oak", "has keys of its own, so 'oak' can't stand there. Name one of them."),
    ("carcase.C", "3", "height (Height of the ring, without base and separate top)"),
    ("carcase.C.column", "3", "has keys of its own"),
    ("lid", "3", "in a project, 'lid' is not known. Here may stand: format"),
    ("", "3", "'' is no place."),
    ("carcase..height", "3", "is no place. Write keys with stops between them: carcase.C.height."),
    ("carcase.C.height.", "3", "is no place."),
    ("carcase.'C.height", "3", "is no place."),
    ("project.name", "Other", "can't be changed here, since projects are told apart by it."),
    ("format", "2", "format 2 is newer than this program reads."),
    ("carcase.C.material", "pine", "'pine' is not one of the file's materials."),
    ("carcase.C.height", "", "'' is not a length."),
    ("carcase.C.pins.spread", "middle", "is missing: spread = 'middle' needs it."),
    ("carcase.C.except.D7.lap", "1/4", "no drawer of this carcase is marked 'D7'."),
    ("box.1.height", "3", "box has no number 1. It has 0, counted from 1."),
    ("box.K.height", "3", "box has no 'K'. Write a number from 1 to 1."),
    ("carcase.C.column.1.tier.1.height", "3", "carcase.C.column.1.tier has no number 1. It has 0, counted from 1."),
    ("carcase.C.column.1.tier.1", "{}", "drawers and tiers are both given."),
    ("carcase.C.runners.kickers.yes", "1", "Nothing stands below it"),
    ("carcase.C.base.leg_matrial", "1", "Did you mean carcase.C.base.leg_material? Stand: material of the legs."),
]


@pytest.mark.parametrize(("place", "text", "told"), REFUSED)
def test_what_cannot_be_is_refused_with_what_would_be_right(place: str, text: str, told: str) -> None:
    found = refusals(sample(CHEST), place, text)
    assert any(told in str(problem) for problem in found), found
    for problem in found:
        assert problem.where.startswith("Landing chest")
        assert problem.remedy
        assert "line" not in problem.where


def test_places_are_told_with_marks_where_the_reader_refuses() -> None:
    (problem,) = refusals(sample(CABINET), "carcase.B.column.2.heights.2", "nine")
    assert problem.where == "Sharpening bench cabinet: carcase.B.column.2.heights.2"


def test_everything_that_is_wrong_is_told_at_once() -> None:
    assert len(refusals(sample(CHEST), "lid", "3", "carcase.C.heigth", "4", left_out=("carcase.C.lap",))) == 3
    assert len(refusals(sample(CHEST), "carcase.C.height", "x", "carcase.C.width", "y")) == 2


@pytest.mark.parametrize(
    ("place", "text", "old", "new"),
    [
        ("carcase.C.height", "36 furlongs", 'height = "36 in"', 'height = "36 furlongs"'),
        (
            "carcase.C.material",
            "ahs",
            'material = "ash"\nthickness = "3/4 in"\np',
            'material = "ahs"\nthickness = 1\np',
        ),
        ("carcase.C.column.1.drawers", "0", "drawers = 6", "drawers = 0"),
        ("sled.bench.slope", "1:80", 'slope = "1:8"', 'slope = "1:80"'),
        ("project.show", "0.1 mm", 'show = "1/32 in"', 'show = "0.1 mm"'),
    ],
)
def test_the_words_are_those_of_the_file_reader(place: str, text: str, old: str, new: str) -> None:
    file = (SAMPLES / f"{CHEST}.toml").read_text(encoding="utf-8")
    assert file.count(old) == 1
    with pytest.raises(InputError) as refused:
        read_project(file.replace(old, new), "chest.toml")
    ours = refusals(sample(CHEST), place, text)
    assert [(p.what, p.remedy) for p in ours] == [(p.what, p.remedy) for p in refused.value.problems]


@pytest.mark.parametrize(
    ("place", "told"),
    [
        ("carcase.C.title", "Landing chest"),
        ("carcase.C.height", "is missing. Add it. Height of the ring, without base and separate top."),
        ("carcase.C.pins", "is not said, so it can't be left out."),
        ("material.ash", "'ash' is not one of the file's materials."),
        ("sled", "is missing."),
        ("carcase.C", "there is nothing to make."),
        ("carcase.C.column.1", "is empty. Give at least one."),
    ],
)
def test_what_must_be_said_cannot_be_left_out(place: str, told: str) -> None:
    if place == "carcase.C.title":
        assert changed(sample(CHEST), left_out=(place,)).carcases[0].title == ""
    else:
        assert told in " ".join(map(str, refusals(sample(CHEST), left_out=(place,))))


def test_a_project_that_no_file_describes_is_refused_before_any_change() -> None:
    boxes = sample(BOXES)
    unlike = replace(boxes, boxes=(replace(boxes.boxes[0], title="Another"), *boxes.boxes[1:]))
    with pytest.raises(InputError, match="can't be described by a project file"):
        Draft(unlike)


ANY_TEXT = st.text(SIGNS | st.characters(), max_size=12)
SOME_PLACES = st.sampled_from(
    [each.place for name in NAMES for each in places(sample(name), None)]
    + [each.place for name in NAMES for part in ("", "carcase", "box") for each in places(sample(name), part or None)]
)


SOME_VALUES = st.sampled_from(["{}", "[]", "1", "[1, [2]]", "true", "1\nb = 2", "a, b", "{ a = [{}] }"])


@given(
    st.sampled_from(NAMES),
    st.lists(st.tuples(SOME_PLACES | ANY_TEXT, ANY_TEXT | SOME_VALUES), max_size=3),
    st.lists(SOME_PLACES | ANY_TEXT, max_size=1),
)
def test_whatever_is_typed_is_taken_or_refused(name: str, pairs: list[tuple[str, str]], left_out: list[str]) -> None:
    result = result_of(name, pairs, left_out)
    if isinstance(result, Project):
        assert problems(result) == []
        assert read_project(write_project(result), "again") == result
        return
    assert result
    for problem in result:
        assert problem.what
        assert problem.remedy
        assert not JARGON.search(problem.what + problem.remedy)
        assert "can't stand here" not in problem.what, "an error of the library has no words of ours"


def result_of(name: str, pairs: list[tuple[str, str]], left_out: list[str]) -> Project | tuple[Problem, ...]:
    try:
        return changed(sample(name), *sum(pairs, ()), left_out=tuple(left_out))
    except InputError as error:
        return error.problems
