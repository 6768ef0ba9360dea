"""Answers as a maker types them; expected lengths from 1 in = 25.4 mm (NIST SP 811), worked out by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.intake.interview.answer import suits, take, written
from planner.intake.interview.question import Choice, Kind, Question, Value
from planner.intake.refusal import RefusalError
from planner.lengths import Unit

CHOICES = tuple(Choice(word=word) for word in ("plinth", "bracket feet", "stand", "nothing", "nest"))


def question(kind: Kind, unit: Unit = Unit.INCH, *, most: int = 40, taken: tuple[str, ...] = ()) -> Question:
    return Question(
        key="q", label="q", section="s", text="Q?", tells="T.", kind=kind, usual=1, unit=unit,
        choices=CHOICES if kind is Kind.CHOICE else (), least=2, most=most, taken=taken,
    )  # fmt: skip


@pytest.mark.parametrize(
    ("asked", "typed", "value"),
    [
        (question(Kind.LENGTH), "3/4", 19_050_000),
        (question(Kind.LENGTH), " 19 mm ", 19_000_000),
        (question(Kind.LENGTH, Unit.MM), "19", 19_000_000),
        (question(Kind.LENGTH_OR_NOTHING), "0", 0),
        (question(Kind.EITHER_WAY), "-1/4", -6_350_000),
        (question(Kind.EITHER_WAY, Unit.MM), "6", 6_000_000),
        (question(Kind.LENGTHS, most=3), "4, Rest,6 1/2 in", (101_600_000, None, 165_100_000)),
        (question(Kind.COUNT), "7", 7),
        (question(Kind.RATIO), "1.15", Fraction(23, 20)),
        (question(Kind.SLOPE), "1:8", 8_000_000),
        (question(Kind.CHOICE), "stand", "stand"),
        (question(Kind.CHOICE), "2", "bracket feet"),
        (question(Kind.CHOICE), "BRACK", "bracket feet"),
        (question(Kind.TEXT), "  Anna's chest ", "Anna's chest"),
        (question(Kind.YES_NO), "Y", True),
        (question(Kind.YES_NO), "no", False),
    ],
)
def test_what_is_typed_and_what_it_stands_for(asked: Question, typed: str, value: Value) -> None:
    assert take(asked, typed) == value
    assert take(asked, written(asked, value)) == value
    assert suits(asked, value)


@pytest.mark.parametrize(
    ("asked", "typed", "told"),
    [
        (question(Kind.LENGTH), "wide", ["'wide'", "23 1/2"]),
        (question(Kind.LENGTH), "", ["not a length"]),
        (question(Kind.LENGTH), "0", ["more than 0"]),
        (question(Kind.LENGTH), "-4", ["negative"]),
        (question(Kind.LENGTH, Unit.MM), "19 inches wide", ["19 mm"]),
        (question(Kind.LENGTHS, most=3), "4, rest", ["2 are listed", "there are 3", "rest takes"]),
        (question(Kind.LENGTHS, most=3), "4", ["1 is listed", "there are 3"]),
        (question(Kind.LENGTHS, most=2), "4, 5, 6", ["3 are listed", "there are 2", "no more"]),
        (question(Kind.LENGTHS, most=2), "4, tall", ["'tall'"]),
        (question(Kind.COUNT), "seven", ["'seven'", "from 2 to 40"]),
        (question(Kind.COUNT), "41", ["from 2 to 40"]),
        (question(Kind.COUNT), "1", ["from 2 to 40"]),
        (question(Kind.COUNT), "-3", ["from 2 to 40"]),
        (question(Kind.COUNT), "9" * 5000, ["from 2 to 40"]),
        (question(Kind.COUNT), "²", ["from 2 to 40"]),
        (question(Kind.RATIO), "taller", ["'taller'", "over 1"]),
        (question(Kind.RATIO), "NaN", ["over 1"]),
        (question(Kind.RATIO), "0.9", ["over 1"]),
        (question(Kind.SLOPE), "steep", ["1:8"]),
        (question(Kind.CHOICE), "n", ["may mean nothing or nest", "its number"]),
        (question(Kind.CHOICE), "6", ["a number or a word"]),
        (question(Kind.CHOICE), "0", ["a number or a word"]),
        (question(Kind.CHOICE), "plint feet", ["plinth"]),
        (question(Kind.TEXT), "\x1b[31mred", ["can't be seen"]),
        (question(Kind.TEXT, most=3), "chest", ["5 characters", "1 to 3"]),
        (question(Kind.TEXT, taken=("ash",)), "ash", ["'ash'", "a name of its own"]),
        (question(Kind.YES_NO), "perhaps", ["neither yes nor no"]),
    ],
)
def test_a_refusal_says_what_was_wrong_and_what_would_be_right(asked: Question, typed: str, told: list[str]) -> None:
    with pytest.raises(RefusalError) as refused:
        take(asked, typed)
    said = f"{refused.value.what} {refused.value.remedy}"
    for words in told:
        assert words in said


@given(kind=st.sampled_from(Kind), unit=st.sampled_from(Unit), typed=st.text())
def test_whatever_is_typed_is_taken_or_refused_and_taken_again_as_it_is_written(
    kind: Kind, unit: Unit, typed: str
) -> None:
    asked = question(kind, unit)
    value, refused = taken_or_refused(asked, typed)
    if refused:
        assert refused.what
        assert refused.remedy
    else:
        assert value is not None
        assert take(asked, written(asked, value)) == value


def taken_or_refused(asked: Question, typed: str) -> tuple[Value | None, RefusalError | None]:
    try:
        return take(asked, typed), None
    except RefusalError as refused:
        return None, refused


@pytest.mark.parametrize(
    ("kind", "value"),
    [(Kind.LENGTH, "3/4"), (Kind.COUNT, 41), (Kind.CHOICE, "legs"), (Kind.TEXT, 4), (Kind.LENGTHS, (1, 2, 3))],
)
def test_an_answer_of_another_kind_suits_no_question(kind: Kind, value: Value) -> None:
    """So what was said before an earlier answer changed is asked for again."""
    assert not suits(question(kind), value)
