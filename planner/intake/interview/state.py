"""An interview under way: what has been said, what is asked next, and the way back.

Nothing here changes in place, so that going back undoes exactly what was done.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Generic

from planner.intake.interview.answer import suits
from planner.intake.interview.question import Outcome, Question, Script, Value


class AsUsual:
    """Said in place of a value: whatever is usual, even when that changes with an earlier answer."""


AS_USUAL = AsUsual()


@dataclass(frozen=True, slots=True, kw_only=True)
class Settled:
    """A question that is answered, and the value that counts."""

    question: Question
    value: Value


@dataclass(frozen=True, slots=True, kw_only=True)
class Walk(Generic[Outcome]):
    """Where an interview stands.

    Attributes:
        settled: the questions answered so far, in order.
        next: the one to ask now; None when all are answered.
        count: how many questions there are, when those to come are answered as is usual.
        outcome: what the answers come to, with the usual ones for all that is still to be asked.
    """

    settled: tuple[Settled, ...]
    next: Question | None
    count: int
    outcome: Outcome


@dataclass(frozen=True, slots=True, kw_only=True)
class Interview(Generic[Outcome]):
    """An interview.

    Attributes:
        script: asks its questions, from the first.
        said: answers by key; one counts only where its question is asked and takes it.
        again: keys of questions that are to be asked again; what was said before stands as the usual answer.
    """

    script: Callable[[], Script[Outcome]]
    said: Mapping[str, Value | AsUsual] = field(default_factory=dict)
    again: frozenset[str] = frozenset()

    def walk(self) -> Walk[Outcome]:
        """Go through the script with the answers so far."""
        script = self.script()
        settled: list[Settled] = []
        first: Question | None = None
        count = 0
        try:
            question = next(script)
            while True:
                count += 1
                value, is_settled = self._said(question)
                if first is None and is_settled:
                    settled.append(Settled(question=question, value=value))
                else:
                    first = first or replace(question, usual=value)
                question = script.send(value)
        except StopIteration as end:
            return Walk(settled=tuple(settled), next=first, count=count, outcome=end.value)

    def answered(self, question: Question, value: Value | None) -> Interview[Outcome]:
        """With an answer to the question that is next; None takes what stands there as usual."""
        again = self.again - {question.key}
        if value is None:
            kept = question.key in self.said and question.key in self.again
            value_or_usual = self.said[question.key] if kept else AS_USUAL
        else:
            value_or_usual = value
        before = self._up_to(question) if question.fresh and not self._same(question, value) else self.said
        return replace(self, said={**before, question.key: value_or_usual}, again=again)

    def back(self) -> Interview[Outcome]:
        """With the question before the next one to be asked again; the same if there is none."""
        settled = self.walk().settled
        return self.reopened(settled[-1].question.key) if settled else self

    def reopened(self, key: str) -> Interview[Outcome]:
        """With a question to be asked again, and what was said as its usual answer."""
        return replace(self, again=self.again | {key})

    def without(self, key: str) -> Interview[Outcome]:
        """With the answer to a question forgotten."""
        said = {each: value for each, value in self.said.items() if each != key}
        return replace(self, said=said, again=self.again - {key})

    def _said(self, question: Question) -> tuple[Value, bool]:
        """The value that counts for a question, and whether it is settled."""
        said = self.said.get(question.key)
        open_again = question.key in self.again
        if isinstance(said, AsUsual):
            return question.usual, not open_again
        if said is None or not suits(question, said):
            return question.usual, False
        return said, not open_again

    def _same(self, question: Question, value: Value | None) -> bool:
        said = self.said.get(question.key)
        before = question.usual if said is None or isinstance(said, AsUsual) else said
        return (question.usual if value is None else value) == before

    def _up_to(self, question: Question) -> dict[str, Value | AsUsual]:
        keys = {each.question.key for each in self.walk().settled}
        return {key: said for key, said in self.said.items() if key in keys - {question.key}}
