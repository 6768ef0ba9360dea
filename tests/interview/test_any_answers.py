"""Whatever is answered, an interview ends in a project of which a plan can be built, or in a plain refusal."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from tempfile import gettempdir

from hypothesis import event, given, settings
from hypothesis import strategies as st

from planner.app.ask import ask
from planner.app.ending import Finished
from planner.app.store_place import StorePlace
from planner.app.talk import Prompt
from planner.app.trial import tried
from planner.domain.plan import Plan
from planner.errors import InputError, PlanError, PlannerError
from planner.intake.interview.answer import take
from planner.intake.interview.piece import Piece
from planner.intake.interview.question import Question
from planner.intake.project_file import read_project
from planner.intake.refusal import RefusalError
from planner.intake.write_file import write_project
from planner.lengths import Unit
from tests.interview.makers import ABSURD_TEXTS, Interviewed, absurd, begun, texts

NOWHERE = StorePlace(Path(gettempdir()) / "no store here" / "planner.db")


def step(interview: Interviewed, question: Question, text: str) -> Interviewed:
    """One answer more; one that is refused is Enter."""
    try:
        value = take(question, text) if text else None
    except RefusalError:
        value = None
    return interview.answered(question, value)


@settings(max_examples=25)
@given(data=st.data(), unit=st.sampled_from(Unit), typed=st.sampled_from([texts, absurd]))
def test_any_answers_come_to_a_project_or_to_reasons_why_not(
    data: st.DataObject, unit: Unit, typed: Callable[[Question], st.SearchStrategy[str]]
) -> None:
    """Nothing else is ever raised; a project is the same when it has been written and read again."""
    interview = begun(unit)
    while question := interview.walk().next:
        interview = step(interview, question, data.draw(typed(question), label=question.text))
    made = interview.walk().outcome
    found = tried(made, ())
    event(f"{typed.__name__}: {'a plan' if found.plan else 'reasons'}")
    if found.plan is None:
        assert found.problems
        assert all(problem.where and problem.what and problem.remedy for problem in found.problems)
    else:
        project = found.plan.project
        assert (project.name, project.unit) == (made.name, made.unit)
        assert read_project(write_project(project), "written") == project


class Sensible:
    """A file of sensible answers, each drawn for its question; nothing is stored or written at the end."""

    is_script = True

    def __init__(self, data: st.DataObject) -> None:
        self.data = data
        self.interview = begun(Unit.INCH)
        self.asked: list[str] = []

    def answer(self, prompt: Prompt) -> str:
        """An answer that can be taken."""
        self.asked.append(prompt.text)
        question = self.interview.walk().next
        if question is None:
            return "no"
        assert question.text == prompt.text
        text = self.data.draw(texts(question), label=question.text)
        try:
            take(question, text or prompt.usual)
        except RefusalError:
            text = ""
        self.interview = step(self.interview, question, text)
        return text

    def tell(self, lines: Sequence[str]) -> None:
        """Not heard."""

    def refuse(self, refusal: PlannerError) -> None:
        """No file is told anything; it is refused."""
        raise refusal

    def show(self, plan: Plan) -> None:
        """Not seen."""


def outcome(data: st.DataObject) -> tuple[Sensible, Finished | PlannerError, Piece]:
    talk = Sensible(data)
    try:
        done = ask(talk, NOWHERE)
    except (InputError, PlanError) as refusal:
        return talk, refusal, talk.interview.walk().outcome
    assert done is not None
    return talk, done, talk.interview.walk().outcome


@settings(max_examples=8)
@given(data=st.data())
def test_a_file_of_sensible_answers_ends_in_a_project_or_in_a_refusal_that_names_a_question(
    data: st.DataObject,
) -> None:
    talk, found, made = outcome(data)
    if isinstance(found, PlannerError):
        assert found.problems[-1].where in talk.asked
        assert "usual is" in found.problems[-1].remedy
    else:
        assert found.plan.project.name == made.name
    assert not NOWHERE.path.exists()


# --- somebody who doesn't listen ----------------------------------------------------------------------------

COMMANDS = ("?", "back", "back", "list", "change 1", "change 7", "change 99", "usual", "stop")
QUICK = ("bookcase", "blanket chest", "box with a lid", "boxes all alike", "nest of boxes")
"""Kinds of which a plan is soon built."""


class Unruly:
    """Somebody who types absurd things and commands at any question, so many lines, and leaves."""

    is_script = False

    def __init__(self, data: st.DataObject, lines: int) -> None:
        self.data = data
        self.left = lines
        self.told: list[str] = []

    def answer(self, prompt: Prompt) -> str:
        """Anything."""
        self.left -= 1
        if self.left < 0 or prompt.text.startswith(("Name of", "Write what")):
            raise EOFError
        if prompt.text.startswith("What do you want"):
            return self.data.draw(st.sampled_from([*QUICK, *COMMANDS]))
        words = st.sampled_from([word for word, _ in prompt.choices] or ["12", "3/4", "none"])
        typed = st.one_of(
            st.just(""), words, st.sampled_from(COMMANDS), st.sampled_from(ABSURD_TEXTS), st.text(max_size=9)
        )
        return self.data.draw(typed, label=prompt.text)

    def tell(self, lines: Sequence[str]) -> None:
        """Listen after all."""
        self.told += lines

    def refuse(self, refusal: PlannerError) -> None:
        """Every reason says what would be right."""
        assert all(problem.where and problem.what and problem.remedy for problem in refusal.problems)

    def show(self, plan: Plan) -> None:
        """Not seen."""


@settings(max_examples=12)
@given(data=st.data(), lines=st.integers(1, 25))
def test_whatever_somebody_types_the_interview_goes_on_until_they_leave(data: st.DataObject, lines: int) -> None:
    """Nobody gets as far as a name for a file, so nothing is written and nothing stored."""
    assert ask(Unruly(data, lines), NOWHERE) is None
    assert not NOWHERE.path.exists()
