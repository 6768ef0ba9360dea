"""Ask one question each: worded from the table of wordings, with what is usual taken from the answers so far.

What is usual comes from the kind of piece, where that has a word to say; else from the same question about the
column to the left; else from what the caller worked out.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Generator, Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from fractions import Fraction

from planner.intake.interview.answer import as_length, kept_as, suits, take, written
from planner.intake.interview.question import Choice, Kind, Outcome, Question, Script, Value
from planner.intake.interview.wording import WORDINGS
from planner.intake.interview.words_of import PLACE
from planner.intake.refusal import RefusalError
from planner.lengths import Nm, Unit

Usual = Mapping[str, str | tuple[str, str]]
"""Key → the usual answer as a maker would type it; of a pair, the first where sizes are in inches, else the second."""

GREATEST_NAME = 40
WHOLE = "it"
"""The place of questions about the whole piece."""
_COLUMN = re.compile(r"\bc([0-9]+)\.")


@dataclass(frozen=True, slots=True)
class Asking:
    """Who asks.

    Attributes:
        unit: unit of bare numbers.
        start: what is usual for the kind of piece.
        section: part of the interview.
        heard: all answers so far, by key; every question adds to it.
        within: start of the keys of all questions: ``c1.t2.``.
        place: of what they are asked, in words.
    """

    unit: Unit
    start: Usual
    section: str
    heard: dict[str, Value]
    within: str = ""
    place: str = WHOLE

    def about(self, section: str) -> Asking:
        """The same in another part of the interview."""
        return replace(self, section=section)

    def inside(self, step: str, place: str) -> Asking:
        """The same about a part of what it is about now."""
        return replace(self, within=f"{self.within}{step}.", place=place)

    def length(self, key: str, usual: Nm, kind: Kind = Kind.LENGTH) -> Script[Nm]:
        """Ask for a length."""
        return as_length((yield from self._answer(self._question(key, kind, usual))))

    def lengths(self, key: str, usual: tuple[Nm | None, ...]) -> Script[tuple[Nm | None, ...]]:
        """Ask for as many lengths as are usual; None is the rest."""
        question = replace(self._question(key, Kind.LENGTHS, usual), most=len(usual))
        found = kept_as(tuple, (yield from self._answer(question)))
        return tuple(None if each is None else Nm(each) for each in found)

    def count(self, key: str, usual: int, most: int, least: int = 1) -> Script[int]:
        """Ask how many."""
        question = replace(self._question(key, Kind.COUNT, usual), least=least, most=most)
        return kept_as(int, (yield from self._answer(question)))

    def ratio(self, key: str, usual: Fraction) -> Script[Fraction]:
        """Ask how many times as large one is as the next."""
        return kept_as(Fraction, (yield from self._answer(self._question(key, Kind.RATIO, usual))))

    def slope(self, key: str, usual: int) -> Script[int]:
        """Ask for a slope."""
        return kept_as(int, (yield from self._answer(self._question(key, Kind.SLOPE, usual))))

    def text(self, key: str, usual: str, most: int = GREATEST_NAME, taken: Iterable[str] = ()) -> Script[str]:
        """Ask for a name."""
        question = replace(self._question(key, Kind.TEXT, usual), most=most, taken=tuple(taken))
        return kept_as(str, (yield from self._answer(question)))

    def yes(self, key: str, *, usual: bool, above: tuple[str, ...] = ()) -> Script[bool]:
        """Ask whether something is so."""
        question = replace(self._question(key, Kind.YES_NO, usual), above=above)
        return bool((yield from self._answer(question)))

    def choice(self, key: str, usual: str, among: Iterable[str] = ()) -> Script[str]:
        """Ask for one of several words; without ``among``, of all that the table of wordings has for this question."""
        tells = WORDINGS[key].choices
        return (yield from self.choice_of(key, {word: tells.get(word, "") for word in (tuple(among) or tells)}, usual))

    def choice_of(self, key: str, tells: Mapping[str, str], usual: str, *, fresh: bool = False) -> Script[str]:
        """Ask for one of these words, of which each means what it tells."""
        choices = tuple(Choice(word=word, tells=told) for word, told in tells.items())
        question = replace(self._question(key, Kind.CHOICE, usual), choices=choices, fresh=fresh)
        return kept_as(str, (yield from self._answer(question)))

    def as_listed(self, key: str, body: Callable[[], Script[Outcome]]) -> Script[Outcome]:
        """Show what is usual of several questions at once, and ask them one by one only if that is not right."""
        questions, usual = with_usual(body())
        above = tuple(f"{each.label}: {written(each, each.usual)}" for each in questions)
        if (yield from self.yes(key, usual=True, above=above)):
            return usual
        return (yield from body())

    def _question(self, key: str, kind: Kind, usual: Value) -> Question:
        wording = WORDINGS[key]
        of_the_whole = self.place == WHOLE
        named = of_the_whole or PLACE in wording.text
        return Question(
            key=f"{self.within}{key}",
            label=wording.label if of_the_whole else f"{self.place}, {wording.label}",
            section=self.section,
            text=(wording.text if named else f"{wording.text} ({PLACE})").format(place=self.place),
            tells=wording.tells,
            kind=kind,
            usual=usual,
            unit=self.unit,
        )

    def _answer(self, question: Question) -> Generator[Question, Value, Value]:
        value = yield replace(question, usual=self._usual(question))
        self.heard[question.key] = value
        return value

    def _usual(self, question: Question) -> Value:
        said = self.start.get(question.key)
        if said is not None:
            text = said if isinstance(said, str) else said[self.unit is Unit.MM]
            with suppress(RefusalError):
                return take(question, text)
        told = (self.heard[each] for each in _neighbours(question.key) if each in self.heard)
        return next((value for value in told if suits(question, value)), question.usual)


def _neighbours(key: str) -> Iterator[str]:
    """The same key of the column to the left, that of the outermost column first."""
    for found in _COLUMN.finditer(key):
        if found[1] != "1":
            yield f"{key[: found.start()]}c{int(found[1]) - 1}.{key[found.end() :]}"


def with_usual(script: Script[Outcome]) -> tuple[tuple[Question, ...], Outcome]:
    """All questions of a script when each is answered as is usual, and what it then comes to."""
    asked: list[Question] = []
    try:
        question = next(script)
        while True:
            asked.append(question)
            question = script.send(question.usual)
    except StopIteration as end:
        outcome: Outcome = end.value
        return tuple(asked), outcome
