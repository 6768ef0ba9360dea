"""Makers who answer an interview: with Enter only, with what they are told, or with anything sensible."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction

from hypothesis import strategies as st

from planner.app.trial import Trial, tried
from planner.domain.sled import MICRO
from planner.intake.interview.answer import take, written
from planner.intake.interview.beginning import Shop
from planner.intake.interview.piece import Piece, piece
from planner.intake.interview.question import Kind, Question
from planner.intake.interview.state import Interview
from planner.lengths import Unit

Interviewed = Interview[Piece]


def begun(unit: Unit = Unit.INCH, shop: Shop | None = None) -> Interviewed:
    """An interview of which nothing is answered yet, in a shop that measures in this unit."""
    found = Shop(unit=unit) if shop is None else shop
    return Interview(script=lambda: piece(found))


def answered(interview: Interviewed, answers: Mapping[str, str]) -> Interviewed:
    """All questions answered: those named as told, all others with Enter. What is never asked is a mistake."""
    left = dict(answers)
    while question := interview.walk().next:
        text = left.pop(question.key, None)
        interview = interview.answered(question, None if text is None else take(question, text))
    assert not left, f"never asked: {left}"
    return interview


def made(answers: Mapping[str, str], unit: Unit = Unit.INCH) -> Trial:
    """What comes of it."""
    return tried(answered(begun(unit), answers).walk().outcome, ())


def questions(interview: Interviewed) -> Iterator[Question]:
    """All questions, each asked once and answered with Enter."""
    while question := interview.walk().next:
        yield question
        interview = interview.answered(question, None)


# --- anything sensible --------------------------------------------------------------------------------------

TIMBERS = ("pine", "elm", "bubinga", "none")


def texts(question: Question) -> st.SearchStrategy[str]:
    """Answers that a sensible maker may type: most often Enter, else something near to what is usual."""
    other = _OTHER[question.kind](question)
    return st.one_of(st.just(""), st.just(""), st.just(""), other)


def _near(question: Question) -> st.SearchStrategy[str]:
    """A length by some tenths smaller or greater than the usual one, in whole millimetres or sixteenths."""
    inches = question.unit is Unit.INCH
    step = 1_587_500 if inches else 1_000_000
    assert isinstance(question.usual, int)
    usual = max(1, round(Fraction(question.usual, step)))
    steps = st.integers(max(1, usual * 7 // 10), max(2, usual * 13 // 10))
    return steps.map(lambda many: f"{many}/16 in" if inches else f"{many} mm")


def _listed(question: Question) -> st.SearchStrategy[str]:
    usual = written(question, question.usual)
    first, _, others = usual.partition(", ")
    return st.sampled_from([usual, f"rest, {others}", f"{first}, {', '.join(['rest'] * (question.most - 1))}"])


def _counted(question: Question) -> st.SearchStrategy[str]:
    assert isinstance(question.usual, int)
    least, most = max(question.least, question.usual - 2), min(question.most, question.usual + 2)
    return st.integers(least, most).map(str)


_OTHER: Mapping[Kind, Callable[[Question], st.SearchStrategy[str]]] = {
    Kind.LENGTH: _near,
    Kind.LENGTH_OR_NOTHING: _near,
    Kind.EITHER_WAY: lambda _: st.sampled_from(["0", "-1/8 in", "3 mm"]),
    Kind.LENGTHS: _listed,
    Kind.COUNT: _counted,
    Kind.RATIO: lambda _: st.integers(105, 140).map(lambda hundredths: f"{hundredths / 100}"),
    Kind.SLOPE: lambda _: st.sampled_from([6 * MICRO, 8 * MICRO]).map(lambda micro: f"1:{micro // MICRO}"),
    Kind.CHOICE: lambda question: st.sampled_from([each.word for each in question.choices]),
    Kind.TEXT: lambda question: st.sampled_from(TIMBERS if question.key in {"timber", "second", "sheet"} else ["X"]),
    Kind.YES_NO: lambda _: st.sampled_from(["yes", "no"]),
}


# --- anything at all ----------------------------------------------------------------------------------------

_ABSURD_LENGTHS = (
    "0.0001 in", "1/64 in", "0.01 mm", "1 mm", "1", "30", "100 in", "9999 mm", "16 ft", "1e99", "-1", "-1/8 in", "0",
    "nan", "",
)  # fmt: skip
ABSURD_TEXTS = (
    "a.b", 'say "oak"', "Anna's", "é\N{COMBINING DIAERESIS}", "=1+1", "木", "[x]", "none", "None", "no", "\\", "x" * 40,
    "x" * 10_000, "\x1b[31m", " ", "0", "drawer", "{place}", "%s",
)  # fmt: skip
_FEW = 9
"""More drawers than that in a column say nothing new, and take their time."""


def absurd(question: Question) -> st.SearchStrategy[str]:
    """Answers that can be typed, sensible or not; most of them Enter, so that a plan may come of the rest."""
    lengths = st.sampled_from(_ABSURD_LENGTHS)
    listed = st.lists(st.one_of(lengths, st.just("rest")), min_size=1, max_size=question.most or 1).map(", ".join)
    anything: Mapping[Kind, st.SearchStrategy[str]] = {
        Kind.LENGTHS: listed,
        Kind.COUNT: st.integers(0, _FEW).map(str),
        Kind.RATIO: st.sampled_from(["1", "1.000001", "1.5", "4", "5", "-1", "1e9", "1/3"]),
        Kind.SLOPE: st.sampled_from(["1:1", "1:3", "1:6", "1:20", "1:100", "0", "1:0", "45 deg", "7 deg", "-1:8"]),
        Kind.CHOICE: st.sampled_from([each.word for each in question.choices] or [""]),
        Kind.TEXT: st.one_of(st.sampled_from(ABSURD_TEXTS), st.text(max_size=12)),
        Kind.YES_NO: st.sampled_from(["yes", "no"]),
    }
    enter = st.just("")
    return st.one_of(*[enter] * 9, anything.get(question.kind, lengths))
