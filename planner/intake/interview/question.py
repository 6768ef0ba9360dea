"""A question, as data: what is asked, what kind of answer it takes, and what is usual."""

from __future__ import annotations

from collections.abc import Generator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import TypeAlias, TypeVar

from planner.lengths import Unit

Value: TypeAlias = bool | int | str | Fraction | tuple[int | None, ...]
"""An answer: a length in nanometres, a count, a word, a text, yes or no, or a list of lengths; None is the rest."""

Outcome = TypeVar("Outcome")
Script: TypeAlias = Generator["Question", Value, Outcome]
"""Asks one question after the other, each worded by the answers so far, and ends in what they come to."""


class Kind(StrEnum):
    """What kind of answer a question takes."""

    LENGTH = "length"
    LENGTH_OR_NOTHING = "length or nothing"
    EITHER_WAY = "length either way"
    LENGTHS = "list of lengths"
    COUNT = "count"
    RATIO = "ratio"
    SLOPE = "slope"
    CHOICE = "choice"
    TEXT = "text"
    YES_NO = "yes or no"


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One of the answers that a question of choice takes, and what it means where the word alone doesn't say it."""

    word: str
    tells: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question.

    Attributes:
        key: names it; no other question of the same interview has it.
        label: what is asked, in a word or two, for lists of answers.
        section: part of the interview to which it belongs.
        text: the question itself.
        tells: more about it, for those who ask.
        usual: the answer that counts when nothing is said.
        unit: unit of bare numbers.
        choices: of a choice, in the order to be shown.
        least: the smallest count.
        most: the largest count; of a list, how many lengths it has; of a text, how many characters.
        taken: texts that can't be given once more.
        above: lines to be read before it is answered.
        fresh: whether another answer makes all that was said after it pointless.
    """

    key: str
    label: str
    section: str
    text: str
    tells: str
    kind: Kind
    usual: Value
    unit: Unit
    choices: tuple[Choice, ...] = ()
    least: int = 1
    most: int = 0
    taken: tuple[str, ...] = ()
    above: tuple[str, ...] = ()
    fresh: bool = False
