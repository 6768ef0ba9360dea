"""What a maker says, place by place, in the words in which it is typed."""

from __future__ import annotations

from dataclasses import dataclass

NOT_SAID = "not said"
"""What is shown where nothing stands; what is usual counts there, or a part isn't made."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidPlace:
    """A place of a project where something can be said.

    Attributes:
        place: as a maker names it: ``carcase.C.height``.
        said: what stands there; None where nothing does.
        meaning: what it means.
    """

    place: str
    said: str | None
    meaning: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidOtherwise:
    """What is said at a place before and after a change; None where nothing is."""

    place: str
    before: str | None
    after: str | None

    def __str__(self) -> str:
        before, after = (NOT_SAID if text is None else text for text in (self.before, self.after))
        return f"{self.place}: {before} → {after}"
