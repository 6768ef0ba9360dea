"""The way back: what was answered is undone exactly, and what comes later is asked as if nothing had been."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from planner.intake.interview.answer import take
from planner.intake.interview.beginning import Shop
from planner.intake.interview.question import Question
from planner.intake.interview.state import Settled
from planner.intake.refusal import RefusalError
from planner.lengths import Unit
from tests.interview.makers import Interviewed, answered, begun, texts

FEW = settings(max_examples=25)


def stands(interview: Interviewed) -> tuple[tuple[Settled, ...], Question | None]:
    walk = interview.walk()
    return walk.settled, walk.next


def step(interview: Interviewed, data: st.DataObject) -> Interviewed:
    """One more question answered sensibly."""
    question = interview.walk().next
    assert question is not None
    text = data.draw(texts(question), label=question.text)
    try:
        return interview.answered(question, take(question, text) if text else None)
    except RefusalError:
        return interview.answered(question, None)


def some_way(data: st.DataObject) -> Interviewed:
    """An interview some way on."""
    interview = begun(data.draw(st.sampled_from(Unit)))
    for _ in range(data.draw(st.integers(1, 22))):
        if interview.walk().next is None:
            break
        interview = step(interview, data)
    return interview


@FEW
@given(data=st.data())
def test_back_undoes_exactly(data: st.DataObject) -> None:
    before = some_way(data)
    if before.walk().next is None:
        return
    after = step(before, data)
    back = after.back()
    assert back.walk().settled == before.walk().settled
    asked, said = back.walk().next, after.walk().settled[-1]
    assert asked is not None
    assert asked.key == said.question.key
    assert asked.usual == said.value, "Enter keeps what was said"
    assert stands(back.answered(asked, None)) == stands(after)


@FEW
@given(data=st.data())
def test_another_answer_after_going_back_counts_as_if_it_had_been_the_first(data: st.DataObject) -> None:
    before = some_way(data)
    question = before.walk().next
    if question is None:
        return
    after = step(before, data).back()
    asked = after.walk().next
    assert asked is not None
    other = data.draw(texts(question), label="the other")
    if not other:
        return  # Enter keeps what was said: that is no other answer
    try:
        value = take(question, other)
    except RefusalError:
        return
    assert stands(after.answered(asked, value)) == stands(before.answered(question, value))


@FEW
@given(data=st.data(), steps=st.integers(1, 9))
def test_going_back_some_steps_and_on_with_enter_changes_nothing(data: st.DataObject, steps: int) -> None:
    interview = some_way(data)
    back = interview
    for _ in range(steps):
        back = back.back()
    while (asked := back.walk().next) and len(back.walk().settled) < len(interview.walk().settled):
        settled = len(back.walk().settled)
        back = back.answered(asked, None)
        assert len(back.walk().settled) == settled + 1, "each is asked again"
    assert stands(back) == stands(interview)
    assert back.walk().outcome.tables == interview.walk().outcome.tables


def test_back_at_the_beginning_stays_there() -> None:
    interview = begun()
    assert interview.back() == interview


def test_another_kind_starts_over_but_the_same_kind_does_not() -> None:
    interview = answered(begun(), {"kind": "bookcase", "timber": "elm", "width": "40 in"})
    asked = interview.reopened("kind").walk().next
    assert asked is not None
    assert asked.usual == "bookcase"
    again = interview.reopened("kind")
    assert stands(again.answered(asked, "bookcase")) == stands(interview)
    other = again.answered(asked, "sideboard").walk()
    assert [each.question.key for each in other.settled] == ["kind"]
    assert other.next is not None
    assert other.next.usual == "Sideboard"


def test_what_is_usual_follows_an_earlier_answer_that_is_changed() -> None:
    """Sides of drawers are two thirds as thick as the case: 3/4 in gives 1/2 in, 9/8 in gives 3/4 in."""
    opened = {"drawers_as_listed": "no"}
    thin = answered(begun(), opened)
    assert side_of(thin) == 12_700_000
    asked = thin.reopened("thickness").walk().next
    assert asked is not None
    thick = thin.reopened("thickness").answered(asked, take(asked, "1 1/8"))
    assert side_of(thick) == 19_050_000
    assert thick.walk().next is None, "and nothing is asked again"


def side_of(interview: Interviewed) -> object:
    return next(each.value for each in interview.walk().settled if each.question.key == "side")


def test_an_answer_that_no_longer_fits_is_asked_for_again() -> None:
    """Three widths are listed; with four columns there is one too few."""
    columns = {"columns": "3", "equal_widths": "no", "widths": "6, 7, rest"}
    three = answered(begun(), columns)
    asked = three.reopened("columns").walk().next
    assert asked is not None
    four = three.reopened("columns").answered(asked, 4).walk()
    assert four.next is not None
    assert four.next.key == "widths"


def test_a_column_is_usually_like_the_one_to_its_left() -> None:
    said = {"columns": "2", "c1.holds": "several", "c1.tiers": "3", "c1.t2.tier_holds": "nothing"}
    settled = {each.question.key: each.value for each in answered(begun(), said).walk().settled}
    assert settled["c2.holds"] == "several"
    assert settled["c2.tiers"] == 3
    assert settled["c2.t2.tier_holds"] == "nothing"


def test_a_name_that_the_store_has_is_not_usual() -> None:
    taken = frozenset({"Chest of drawers", "Chest of drawers 2"})
    settled = answered(begun(shop=Shop(projects=taken)), {}).walk().settled
    assert settled[1].value == "Chest of drawers 3"
