"""What the words of a question are, and words that several questions share."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True, kw_only=True)
class Wording:
    """The words of a question.

    Attributes:
        label: in lists of answers.
        text: the question; ``{place}`` is the part of the piece that it is about, which otherwise follows it.
        tells: more about it.
        choices: answers to choose from, where these are always the same, and what each means.
    """

    label: str
    text: str
    tells: str
    choices: Mapping[str, str] = field(default_factory=dict)


PLACE = "{place}"
DOORS = {
    "none": "",
    "left": "one door, hinged on the left",
    "right": "one door, hinged on the right",
    "pair": "two doors, hinged at the outer sides",
}
TIMBER = "One of the timbers and sheet goods that you named at the beginning."
PLANED = "Thickness of the planed board."
