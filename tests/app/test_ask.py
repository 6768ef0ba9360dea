"""An interview held with somebody, or with a file: what is asked again, what is written, what is left alone."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import pytest

from planner.app.ask import ask
from planner.app.ending import Finished
from planner.app.projects import Change, listed, read, stored
from planner.app.sleds import keep_sled
from planner.app.store_place import StorePlace
from planner.app.talk import Prompt
from planner.domain.plan import Plan
from planner.errors import InputError, PlanError, PlannerError, Problem, StoreError
from planner.intake.project_file import read_project
from tests.app.texts import BOX, CHEST

NO_FILES = ("no", "no")
"""Neither a project file nor a workbook."""


class OnTo(str):
    """Stands for Enter, again and again, until a question is asked that begins with these words."""

    __slots__ = ()


class Somebody:
    """Types what is on a list; keeps all that is said.

    Attributes:
        asked: every question, with what stands in brackets.
    """

    def __init__(self, *typed: str, is_script: bool = False) -> None:
        self.is_script = is_script
        self.typed = list(typed)
        self.asked: list[tuple[str, str]] = []
        self.told: list[str] = []
        self.refused: list[Problem] = []
        self.plans: list[Plan] = []

    def answer(self, prompt: Prompt) -> str:
        """The next thing on the list."""
        self.asked.append((prompt.text, prompt.usual))
        if self.typed and isinstance(self.typed[0], OnTo):
            if not prompt.text.startswith(self.typed[0]):
                return ""
            self.typed.pop(0)
        if not self.typed:
            raise EOFError
        return self.typed.pop(0)

    def tell(self, lines: Sequence[str]) -> None:
        """Listen."""
        self.told += lines

    def refuse(self, refusal: PlannerError) -> None:
        """Listen."""
        self.refused += refusal.problems

    def show(self, plan: Plan) -> None:
        """Look."""
        self.plans.append(plan)

    def times(self, words: str) -> int:
        """How often a question with these words was asked."""
        return sum(words in text for text, _ in self.asked)


@pytest.fixture
def store(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> StorePlace:
    """A store that is not there yet, in a shop where files can be written."""
    (tmp_path / "shop").mkdir()
    monkeypatch.chdir(tmp_path / "shop")
    return StorePlace(tmp_path / "data" / "planner.db")


def held(talk: Somebody, store: StorePlace) -> Finished:
    done = ask(talk, store)
    assert done is not None
    assert not talk.typed, "all that was typed was asked for"
    return done


# --- from nothing to something ------------------------------------------------------------------------------


def test_enter_all_the_way_stores_the_chest_and_writes_its_workbook(store: StorePlace) -> None:
    talk = Somebody(*[""] * 60)
    done = ask(talk, store)
    assert done is not None
    assert done.change is Change.NEW
    assert done.file is None
    assert [each.name for each in listed(store)] == ["Chest of drawers"]
    assert stored("Chest of drawers", store) == done.plan.project
    assert [path.name for path in Path.cwd().iterdir()] == ["Chest of drawers.xlsx"]
    assert talk.refused == []
    assert [number for number, _ in enumerate(talk.asked)] == list(range(len(talk.asked)))
    assert len({text for text, _ in talk.asked}) == len(talk.asked), "nothing was asked twice"


def test_the_front_is_drawn_as_it_grows_and_the_answers_are_listed_at_the_end(store: StorePlace) -> None:
    talk = Somebody("chest of drawers", *[""] * 13, "3", "usual", "no", *NO_FILES)
    held(talk, store)
    drawn = [line for line in talk.told if "D" in line and "│" in line]
    assert [line.strip(" │") for line in drawn] == [f"D{n}" for n in (1, 2, 3, 4, 5, 1, 2, 3, 1, 2, 3)]
    assert any("drawers: 3" in line for line in talk.told)
    assert len(talk.plans) == 1


def test_the_project_file_says_what_was_answered(store: StorePlace) -> None:
    typed = ["tool chest", "Gouges", "millimetres", "rowan", "soft", "none", "none", "usual", "no", "gouges.toml", "no"]
    done = held(Somebody(*typed), store)
    project = read_project(Path("gouges.toml").read_text(encoding="utf-8"), "gouges.toml")
    assert project == done.plan.project
    assert project.name == "Gouges"
    assert [(m.name, str(m.kind), str(m.hardness)) for m in project.materials] == [("rowan", "solid", "soft")]
    assert project.carcases[0].width_nm == 600_000_000
    assert not store.path.exists()


def test_a_project_of_the_same_name_is_not_replaced_unasked(store: StorePlace, tmp_path: Path) -> None:
    (tmp_path / "box.toml").write_text(BOX, encoding="utf-8")
    before = read(str(tmp_path / "box.toml"), store).plan.project
    talk = Somebody("boxes all alike", before.name, "usual", "", *NO_FILES)
    done = held(talk, store)
    assert done.change is None
    assert stored(before.name, store) == before
    done = held(Somebody("boxes all alike", before.name, "usual", "yes", *NO_FILES), store)
    assert done.change is Change.CHANGED
    assert stored(before.name, store) == done.plan.project


def test_a_sled_that_the_store_keeps_is_usual_where_it_takes_the_piece(store: StorePlace) -> None:
    """The chest's sled takes boards up to 20 in wide and 30 in upright: a tool chest, but no sideboard."""
    read(str(CHEST), store)
    keep_sled("Landing chest", None, store)
    talk = Somebody("tool chest", "usual", "", *NO_FILES)
    done = held(talk, store)
    assert done.plan.project.sleds == stored("Landing chest", store).sleds
    assert done.plan.project.sleds[0].kept
    done = held(Somebody("sideboard", "usual", "", *NO_FILES), store)
    assert not done.plan.project.sleds[0].kept
    assert done.plan.project.sleds[0].name == "bench"


# --- words that are no answers ------------------------------------------------------------------------------


def test_a_question_mark_tells_more_and_asks_again(store: StorePlace) -> None:
    talk = Somebody("?", "bookcase", "usual", "no", *NO_FILES)
    held(talk, store)
    assert talk.times("want to make") == 2
    assert "Take what comes nearest. It only sets what is usual; everything can be answered otherwise." in talk.told
    assert any("back" in line and "list" in line for line in talk.told)


def test_back_asks_again_and_enter_keeps_what_was_said(store: StorePlace) -> None:
    talk = Somebody("bookcase", "Books", "back", "", "usual", "no", *NO_FILES)
    assert held(talk, store).plan.project.name == "Books"
    assert [usual for text, usual in talk.asked if text == "What do you call it?"] == ["Bookcase", "Books"]


def test_list_tells_the_answers_and_change_asks_one_again(store: StorePlace) -> None:
    talk = Somebody("bookcase", "Books", "list", "change 2", "Paper", "usual", "change 2", "", "no", *NO_FILES)
    assert held(talk, store).plan.project.name == "Paper"
    assert "  1  piece: bookcase" in talk.told
    assert "  2  name: Books" in talk.told


def test_a_number_that_no_answer_has_is_no_change(store: StorePlace) -> None:
    talk = Somebody("bookcase", "Books", "change 9", "inches", "usual", "no", *NO_FILES)
    held(talk, store)
    assert "'change 9'" in talk.refused[0].what


def test_stop_leaves_everything_as_it_was(store: StorePlace) -> None:
    assert ask(Somebody("bookcase", "stop"), store) is None
    assert ask(Somebody("bookcase", *[""] * 8, "stop", ""), store) is None
    assert ask(Somebody("bookcase", *[""] * 8, "stop", "stop"), store) is None
    assert ask(Somebody("bookcase", *[""] * 8, "stop"), store) is None
    assert ask(Somebody("bookcase", *[""] * 8), store) is None, "and so does the end of what somebody types"
    assert not store.path.exists()
    assert list(Path.cwd().iterdir()) == []


def test_stop_with_a_whole_piece_offers_to_write_it(store: StorePlace) -> None:
    talk = Somebody("bookcase", *[""] * 7, "40 in", "stop", "so_far.toml")
    done = held(talk, store)
    project = read_project(Path("so_far.toml").read_text(encoding="utf-8"), "so_far.toml")
    assert project.carcases[0].width_nm == 1_016_000_000
    assert done.change is None
    assert not store.path.exists()


def test_what_there_is_can_be_written_under_another_name_when_the_first_is_taken(store: StorePlace) -> None:
    Path("taken.toml").write_text("mine", encoding="utf-8")
    talk = Somebody("bookcase", *[""] * 7, "40 in", "stop", "taken.toml", "free.toml")
    held(talk, store)
    assert [problem.where for problem in talk.refused] == ["taken.toml"]
    assert Path("taken.toml").read_text(encoding="utf-8") == "mine"
    assert Path("free.toml").exists()


# --- what can't be taken ------------------------------------------------------------------------------------


def test_an_answer_that_can_t_be_read_is_asked_for_again(store: StorePlace) -> None:
    talk = Somebody("bookcase", *[""] * 7, "wide", "900 mm", "usual", "no", *NO_FILES)
    assert held(talk, store).plan.project.carcases[0].width_nm == 900_000_000
    assert talk.times("How wide is it?") == 2
    assert talk.refused[0].where == "width"
    assert "'wide' is not a length" in talk.refused[0].what


def test_an_answer_of_which_nothing_can_be_built_is_asked_for_again_with_the_reasons(store: StorePlace) -> None:
    """Forty drawers in 32 1/2 in with 39 rails of 3/4 in: nothing is left for them."""
    talk = Somebody(OnTo("How many drawers"), "40", "", "usual", "no", *NO_FILES)
    done = held(talk, store)
    assert talk.times("How many drawers") == 2
    assert "left to share" in talk.refused[0].what + talk.refused[0].remedy or "smallest" in talk.refused[0].what
    assert len(list(done.plan.project.drawers())) == 5


def test_somebody_who_insists_goes_on_and_mends_it_later(store: StorePlace) -> None:
    """A bottom of 5 in in sides of 1/2 in: told once; the next question comes after one Enter, and the end asks."""
    thick = "How thick are the bottoms of the drawers?"
    opened = [OnTo("Are the drawers right"), "no", OnTo(thick), "5 in", "5 in", "", "", "usual"]
    talk = Somebody(*opened, "1/4 in", "no", *NO_FILES)
    done = held(talk, store)
    assert [usual for text, usual in talk.asked if text == thick] == ["1/4 in"] * 3
    assert talk.times("bottoms of the drawers go in") == 1
    what = [problem.what for problem in talk.refused]
    assert what.count(what[0]) == 2, "when it is said, and at the end"
    assert talk.refused[-1].where == thick
    bottoms = {drawer.bottom.stuff.thickness_nm for drawer in done.plan.project.drawers() if drawer.bottom}
    assert bottoms == {6_350_000}


LONGEST = "How long a board can stand on end at it?"
TOO_SHORT = (OnTo("How wide is it"), "60", OnTo("Is this your sled"), "no", OnTo(LONGEST), "40")
"""A case 60 in wide, on a sled that takes 40 in upright; the drawers' fronts are about 58 in long."""


def test_the_reasons_come_with_other_answers_that_would_mend_it(store: StorePlace) -> None:
    """A smaller case mends it as well as a taller sled."""
    talk = Somebody(*TOO_SHORT, "change 9", "30", "", "no", *NO_FILES)
    done = held(talk, store)
    assert "upright" in talk.refused[0].what
    assert any(line.startswith("Or another answer to question 9: change 9 (width: 60 in)") for line in talk.told)
    assert done.plan.project.carcases[0].width_nm == 762_000_000


def test_a_file_that_is_there_already_is_left_alone_and_another_name_asked_for(store: StorePlace) -> None:
    Path("taken.toml").write_text("mine", encoding="utf-8")
    talk = Somebody("bookcase", "usual", "no", "taken.toml", "no", "free.toml")
    held(talk, store)
    assert Path("taken.toml").read_text(encoding="utf-8") == "mine"
    assert Path("free.toml").exists()
    assert talk.refused[0].where == "taken.toml"
    assert "--force" not in talk.refused[0].remedy


def test_a_workbook_of_another_name_is_refused_before_anything_is_stored(store: StorePlace) -> None:
    talk = Somebody("bookcase", "usual", "yes", "books.toml", "books.pdf", "books.xlsx")
    held(talk, store)
    assert talk.refused[0].where == "books.pdf"
    assert sorted(path.name for path in Path.cwd().iterdir()) == ["books.toml", "books.xlsx"]


# --- a store that can't be used -----------------------------------------------------------------------------


def test_without_a_store_that_can_be_read_files_can_still_be_written(store: StorePlace) -> None:
    store.path.parent.mkdir()
    store.path.write_text("not a store", encoding="utf-8")
    talk = Somebody("bookcase", "usual", "", "")
    done = held(talk, store)
    assert talk.refused, "and the reason was told"
    assert talk.times("go into the store") == 0
    assert (done.change, done.file, done.workbook) == (None, Path("Bookcase.toml"), Path("Bookcase.xlsx"))
    assert store.path.read_text(encoding="utf-8") == "not a store"


def test_a_store_that_fails_at_the_end_loses_no_answers(store: StorePlace, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object, **__: object) -> Change:
        raise StoreError([Problem(where="store", what="is full.", remedy="Make room.")])

    monkeypatch.setattr("planner.app.ending.keep", full)
    talk = Somebody("bookcase", "usual", "yes", "books.toml", "no", "no")
    held(talk, store)
    assert talk.refused[0].what == "is full."
    assert Path("books.toml").exists()


# --- answers from a file ------------------------------------------------------------------------------------


def test_answers_from_a_file_end_in_the_same_project(store: StorePlace) -> None:
    typed = ("bench cabinet", "", "millimetres", "usual", "no", "a.toml", "no")
    held(Somebody(*typed), store)
    held(Somebody(*typed[:5], "b.toml", "no", is_script=True), store)
    assert Path("a.toml").read_text(encoding="utf-8") == Path("b.toml").read_text(encoding="utf-8")


def test_a_file_that_ends_too_early_is_told_what_is_missing(store: StorePlace) -> None:
    with pytest.raises(InputError) as refused:
        ask(Somebody("bookcase", "Books", is_script=True), store)
    (problem,) = refused.value.problems
    assert problem.where == "standard input"
    assert "Do you measure in inches or in millimetres?" in problem.what
    assert "usual" in problem.remedy


def test_an_answer_from_a_file_is_never_taken_for_that_to_another_question(store: StorePlace) -> None:
    with pytest.raises(InputError) as refused:
        ask(Somebody("bookcase", "", "furlongs", "oak", is_script=True), store)
    (problem,) = refused.value.problems
    assert problem.where == "answer 3, 'Do you measure in inches or in millimetres?'"
    assert "'furlongs'" in problem.what


def test_a_file_of_which_no_plan_can_be_built_is_told_which_answer_mends_it(store: StorePlace) -> None:
    """60 in wide alone is no trouble, since the usual sled takes it; the sled's 40 in are."""
    typed = [*TOO_SHORT, "usual"]
    with pytest.raises(PlanError) as refused:
        ask(Somebody(*typed, is_script=True), store)
    assert refused.value.problems[-1].where == LONGEST
    assert "40 in" in refused.value.problems[-1].what
    assert not store.path.exists()
