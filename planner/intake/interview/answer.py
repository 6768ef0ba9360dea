"""Between an answer as a maker types it and the value it stands for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from decimal import Decimal, InvalidOperation
from fractions import Fraction
from types import MappingProxyType
from typing import TypeVar

from planner.intake import values
from planner.intake.interview.question import Kind, Question, Value
from planner.intake.nearest import advice
from planner.intake.refusal import RefusalError, quote
from planner.intake.slope import read_slope, write_slope
from planner.lengths import Nm, write_length

REST = "rest"
"""In a list of lengths: what the others leave."""

_YES, _NO = frozenset({"y", "yes"}), frozenset({"n", "no"})
_LONGEST_COUNT = 6


def take(question: Question, text: str) -> Value:
    """The value of an answer.

    Raises:
        RefusalError: what was wrong with it, and what would be right.
    """
    return _READ[question.kind](question, text.strip())


def written(question: Question, value: Value) -> str:
    """A value as it could be typed; taking it gives the same value."""
    return _WRITTEN[question.kind](question, value)


def suits(question: Question, value: Value) -> bool:
    """Whether an answer that was given earlier still answers the question."""
    try:
        return take(question, written(question, value)) == value
    except (RefusalError, TypeError, AttributeError):
        return False


# --- reading ------------------------------------------------------------------------------------------------


def _length(question: Question, text: str) -> Value:
    return values.length(text, question.unit)


def _length_or_nothing(question: Question, text: str) -> Value:
    return values.length(text, question.unit, zero=True)


def _either_way(question: Question, text: str) -> Value:
    return values.either_way(text, question.unit)


def _lengths(question: Question, text: str) -> Value:
    listed = [each.strip() for each in text.split(",")]
    if len(listed) != question.most:
        few = len(listed) < question.most
        raise RefusalError(
            f"{len(listed)} {'is' if len(listed) == 1 else 'are'} listed, and there are {question.most}.",
            f"{'List one for each' if few else 'List no more'}, with commas between; {REST} takes what the others "
            "leave.",
        )
    return tuple(None if each.casefold() == REST else values.length(each, question.unit) for each in listed)


def _count(question: Question, text: str) -> Value:
    count = int(text) if text.isascii() and text.isdigit() and len(text) <= _LONGEST_COUNT else -1
    if not question.least <= count <= question.most:
        remedy = f"Write a whole number from {question.least} to {question.most}."
        raise RefusalError(f"{quote(text)} is no count that can be taken here.", remedy)
    return count


def _ratio(_: Question, text: str) -> Value:
    try:
        said: object = Decimal(text)
    except InvalidOperation:
        said = text
    return values.ratio(said)


def _slope(_: Question, text: str) -> Value:
    return read_slope(text)


def _choice(question: Question, text: str) -> Value:
    words = [each.word for each in question.choices]
    said = text.casefold()
    if said.isascii() and said.isdigit() and len(said) <= _LONGEST_COUNT and 1 <= int(said) <= len(words):
        return words[int(said) - 1]
    exact = [word for word in words if word.casefold() == said]
    begun = exact or [word for word in words if said and word.casefold().startswith(said)]
    if len(begun) == 1:
        return begun[0]
    if begun:
        raise RefusalError(f"{quote(text)} may mean {' or '.join(begun)}.", "Type more of it, or its number.")
    raise RefusalError(f"{quote(text)} is not one of these.", f"Type a number or a word. {advice(text, words)}")


def _text(question: Question, text: str) -> Value:
    said = values.name(text)
    if not said or len(said) > question.most:
        raise RefusalError(f"{quote(text)} is {len(said)} characters long.", f"Use 1 to {question.most}.")
    if said in question.taken:
        raise RefusalError(f"{quote(text)} is the name of something else already.", "Give it a name of its own.")
    return said


def _yes_no(_: Question, text: str) -> Value:
    said = text.casefold()
    if said not in _YES | _NO:
        raise RefusalError(f"{quote(text)} is neither yes nor no.", "Answer yes or no.")
    return said in _YES


_READ: Mapping[Kind, Callable[[Question, str], Value]] = MappingProxyType(
    {
        Kind.LENGTH: _length,
        Kind.LENGTH_OR_NOTHING: _length_or_nothing,
        Kind.EITHER_WAY: _either_way,
        Kind.LENGTHS: _lengths,
        Kind.COUNT: _count,
        Kind.RATIO: _ratio,
        Kind.SLOPE: _slope,
        Kind.CHOICE: _choice,
        Kind.TEXT: _text,
        Kind.YES_NO: _yes_no,
    }
)

# --- writing ------------------------------------------------------------------------------------------------

Sort = TypeVar("Sort", int, str, Fraction, tuple[int | None, ...])


def kept_as(sort: type[Sort], value: Value) -> Sort:
    """The value as what its question's kind makes of every answer.

    Raises:
        TypeError: it is something else.
    """
    if not isinstance(value, sort):
        raise TypeError(f"{value!r} is no {sort.__name__}")
    return value


def _written_length(question: Question, value: Value) -> str:
    length = kept_as(int, value)
    sign = "-" if length < 0 else ""
    return sign + write_length(abs(length), question.unit)


def _written_lengths(question: Question, value: Value) -> str:
    lengths = kept_as(tuple, value)
    return ", ".join(REST if each is None else _written_length(question, each) for each in lengths)


def _written_ratio(_: Question, value: Value) -> str:
    ratio = kept_as(Fraction, value)
    return str(Decimal(ratio.numerator) / ratio.denominator)


_WRITTEN: Mapping[Kind, Callable[[Question, Value], str]] = MappingProxyType(
    {
        Kind.LENGTH: _written_length,
        Kind.LENGTH_OR_NOTHING: _written_length,
        Kind.EITHER_WAY: _written_length,
        Kind.LENGTHS: _written_lengths,
        Kind.COUNT: lambda _, value: str(kept_as(int, value)),
        Kind.RATIO: _written_ratio,
        Kind.SLOPE: lambda _, value: write_slope(kept_as(int, value)),
        Kind.CHOICE: lambda _, value: kept_as(str, value),
        Kind.TEXT: lambda _, value: kept_as(str, value),
        Kind.YES_NO: lambda _, value: "yes" if value else "no",
    }
)


def as_length(value: Value) -> Nm:
    """The answer to a question for a length."""
    return Nm(kept_as(int, value))
