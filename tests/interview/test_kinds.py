"""Every kind of piece, made by pressing Enter all the way: sensible furniture that can be built."""

from __future__ import annotations

import pytest

from planner.domain.box import HingedLid, SawnLid
from planner.domain.carcase import Plinth, Stand
from planner.domain.plan import Plan
from planner.domain.words import Level, Role
from planner.intake.interview.answer import suits, take, written
from planner.intake.interview.kinds import KINDS
from planner.intake.interview.question import Kind
from planner.intake.interview.wording import WORDINGS
from planner.intake.write_file import write_project
from planner.lengths import Unit, read_length
from tests.interview.makers import begun, made, questions
from tests.oracle.assembly_plan import faults_of

WORDS = {
    "chest of drawers": (5, 0, 0, 0, 0),
    "chest on a stand": (4, 0, 0, 0, 0),
    "bench cabinet": (7, 0, 0, 0, 0),
    "cabinet with doors": (0, 2, 0, 2, 0),
    "wall cabinet": (2, 2, 1, 2, 0),
    "bookcase": (0, 0, 3, 0, 0),
    "sideboard": (6, 2, 0, 2, 0),
    "tool chest": (7, 0, 0, 0, 0),
    "cabinet of small drawers": (24, 0, 0, 0, 0),
    "blanket chest": (0, 0, 0, 0, 1),
    "box with a lid": (0, 0, 0, 0, 1),
    "boxes all alike": (0, 0, 0, 0, 6),
    "nest of boxes": (0, 0, 0, 0, 4),
}
"""Kind → drawers, leaves of doors, fixed shelves, loose shelves, boxes: as the words that tell of the kind have it."""


def planned(kind: str, unit: Unit) -> Plan:
    found = made({"kind": kind}, unit)
    assert found.plan is not None, found.problems
    return found.plan


def leaves_of_doors(plan: Plan) -> int:
    """A leaf is a slab, or a frame, which has exactly one stile that is its first; backs and lids have one too."""
    first_stiles = [b.mark for b in plan.boards if b.role is Role.STILE and b.mark.endswith("stile1")]
    return sum(b.role is Role.DOOR for b in plan.boards) + sum("door" in mark for mark in first_stiles)


def test_the_table_below_names_every_kind() -> None:
    assert list(WORDS) == list(KINDS)


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize(("kind", "counted"), WORDS.items())
def test_enter_alone_makes_what_the_kind_says(kind: str, counted: tuple[int, ...], unit: Unit) -> None:
    plan = planned(kind, unit)
    roles = [board.role for board in plan.boards]
    assert counted == (
        len(list(plan.project.drawers())),
        leaves_of_doors(plan),
        roles.count(Role.SHELF),
        roles.count(Role.LOOSE_SHELF),
        len(plan.project.boxes),
    )
    assert plan.project.unit is unit
    assert not [found for found in plan.findings if found.level is Level.STOP]


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("kind", KINDS)
def test_the_boards_of_every_kind_go_together(kind: str, unit: Unit) -> None:
    """Put together from the list of boards by the assembly check, which knows nothing of the interview."""
    assert faults_of(planned(kind, unit).project) == []


def test_the_parts_that_a_kind_is_named_for_are_there() -> None:
    def carcase(kind: str) -> object:
        return planned(kind, Unit.MM).project.carcases[0].base

    assert isinstance(carcase("chest on a stand"), Stand)
    feet = carcase("chest of drawers")
    assert isinstance(feet, Plinth)
    assert feet.foot_nm is not None
    plinth = carcase("bookcase")
    assert isinstance(plinth, Plinth)
    assert plinth.foot_nm is None
    assert isinstance(planned("box with a lid", Unit.MM).project.boxes[0].lid, SawnLid)
    chest = planned("blanket chest", Unit.MM).project.boxes[0]
    assert isinstance(chest.lid, HingedLid)
    assert chest.till is not None


def test_drawers_of_the_sideboard_have_applied_fronts_and_its_ends_mirror_each_other() -> None:
    plan = planned("sideboard", Unit.MM)
    assert all(drawer.applied_front for drawer in plan.project.drawers())
    columns = [column.split() for column in write_project(plan.project).split("[[carcase.column]]")[1:]]
    assert columns[0][:3] == ["width", "=", '"420']
    assert columns[2][:3] == ["width", "=", '"420']
    assert '"left"' not in " ".join(columns[0])  # left is usual
    assert 'hinged = "right"' in " ".join(columns[2])


@pytest.mark.parametrize("kind", KINDS)
def test_the_usual_second_unit_is_of_about_the_same_size(kind: str) -> None:
    """An inch is 25.4 mm (NIST SP 811): the two usual sizes of a kind are the same piece within an eighth."""
    for key, said in KINDS[kind].usual.items():
        if isinstance(said, tuple) and "," not in said[0] and not said[0].startswith("-"):
            inches, millimetres = read_length(said[0], Unit.INCH), read_length(said[1], Unit.MM)
            assert abs(inches - millimetres) <= inches / 8, (kind, key)


@pytest.mark.parametrize("unit", Unit)
@pytest.mark.parametrize("kind", KINDS)
def test_every_usual_answer_is_accepted_by_its_own_question(kind: str, unit: Unit) -> None:
    interview = begun(unit)
    first = interview.walk().next
    assert first is not None
    for question in questions(interview.answered(first, kind)):
        assert take(question, written(question, question.usual)) == question.usual
        assert suits(question, question.usual)


@pytest.mark.parametrize("kind", KINDS)
def test_the_questions_can_be_read_at_a_glance(kind: str) -> None:
    """Short, in words only, and each told apart from all others by its key, its text and its label in a list."""
    interview = begun()
    while question := interview.walk().next:
        opened = False if question.key.endswith("_as_listed") else None
        interview = interview.answered(question, kind if question.key == "kind" else opened)
    asked = [each.question for each in interview.walk().settled]
    for words in ([each.key for each in asked], [each.text for each in asked], [each.label for each in asked]):
        assert len(set(words)) == len(words)
    for each in asked:
        assert each.text.endswith(("?", ")")), each.text
        assert len(each.text) <= 80
        assert "_" not in each.text + each.label
        assert each.tells.endswith(".")
        assert (each.kind is Kind.CHOICE) is bool(each.choices)


@pytest.mark.parametrize("kind", KINDS)
def test_enter_alone_asks_few_questions(kind: str) -> None:
    """Fifty at most: more would not be answered before the tea is cold. No source."""
    first = begun().walk().next
    assert first is not None
    assert len(list(questions(begun().answered(first, kind)))) <= 50


def test_no_wording_is_left_over_or_lacks_a_word() -> None:
    for key, wording in WORDINGS.items():
        assert wording.label, key
        assert wording.tells.endswith("."), key


@pytest.mark.parametrize("kind", KINDS)
def test_a_kind_says_nothing_that_is_never_asked(kind: str) -> None:
    """A slip in the table of kinds would go unnoticed, since what isn't asked counts for nothing."""
    start = begun().walk().next
    assert start is not None
    interview = begun().answered(start, kind)
    while question := interview.walk().next:
        interview = interview.answered(question, False if question.key.endswith("_as_listed") else None)
    settled = {each.question.key: each for each in interview.walk().settled}
    for key, said in KINDS[kind].usual.items():
        question, value = settled[key].question, settled[key].value
        assert value == take(question, said if isinstance(said, str) else said[0]), key
