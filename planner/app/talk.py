"""What an interview needs of whoever answers: questions go one way, answers the other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from planner.domain.plan import Plan
from planner.errors import PlannerError


@dataclass(frozen=True, slots=True, kw_only=True)
class Prompt:
    """A question as somebody at a terminal sees it.

    Attributes:
        section: part of the interview.
        text: the question.
        tells: more about it, for those who ask.
        choices: words to choose from, each with what it means.
        above: lines to be read first.
        usual: the answer that counts when nothing is said.
        number: place among all questions.
        of: about how many there are.
    """

    section: str
    text: str
    tells: str
    choices: tuple[tuple[str, str], ...]
    above: tuple[str, ...]
    usual: str
    number: int
    of: int


class Talk(Protocol):
    """Somebody who answers, or a file of answers."""

    @property
    def is_script(self) -> bool:
        """Whether the answers come from a file."""

    def answer(self, prompt: Prompt) -> str:
        """The answer to a question.

        Raises:
            EOFError: there are no more answers.
        """

    def tell(self, lines: Sequence[str]) -> None:
        """Say something."""

    def refuse(self, refusal: PlannerError) -> None:
        """Say why something can't be taken."""

    def show(self, plan: Plan) -> None:
        """Show what a plan comes to."""
