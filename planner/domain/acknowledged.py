"""What the maker has taken note of among the findings, and why the work goes on all the same."""

from __future__ import annotations

from dataclasses import dataclass

from planner.domain.words import Level


@dataclass(frozen=True, slots=True, kw_only=True)
class Acknowledged:
    """A finding that the maker has answered for.

    Attributes:
        code: name of the rule that found it.
        marks: the boards, ends or joints it is about.
        level: how grave it was; should it become graver, it is open again.
        why: the maker's reason.
    """

    code: str
    marks: tuple[str, ...]
    level: Level
    why: str
