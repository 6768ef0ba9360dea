"""What can go wrong, as data: where, what, and what would be right.

Every refusal of the program is one of the errors below, and each carries *all* the problems that were
found, never only the first. The command line turns the class into an exit code in one place.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One thing that is wrong.

    Attributes:
        where: file and line, field path (``carcase[1].width``), or mark (``D3-front``).
        what: what was found there, with the figures or the text quoted.
        remedy: what would be right.
    """

    where: str
    what: str
    remedy: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what} {self.remedy}".rstrip()


class PlannerError(Exception):
    """Base of all refusals; holds at least one problem."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems: tuple[Problem, ...] = tuple(problems)
        super().__init__("\n".join(map(str, self.problems)))


class InputError(PlannerError):
    """The maker's input (file, option, length) can't be taken as it is."""


class PlanError(PlannerError):
    """The input is sound, but no plan can be built from it."""


class StoreError(PlannerError):
    """The store can't be read or written: locked, newer, damaged, no place."""
