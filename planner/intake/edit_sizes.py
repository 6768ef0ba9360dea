"""Change the sizes of a box or a carcase, by its mark."""

from __future__ import annotations

from collections.abc import Mapping

from planner.intake.edit import Draft
from planner.intake.marked import drawers_in, no_such_mark, standing
from planner.intake.place import path_text_of
from planner.intake.refusal import RefusalError


def resize(draft: Draft, mark: str, sizes: Mapping[str, str]) -> None:
    """Give a box or a carcase other sizes, by their keys."""
    with draft.refusing(mark):
        place = _place_of(draft, mark)
        if not sizes:
            raise RefusalError("no size is given.", "Say which, such as --height.")
        for key, text in sizes.items():
            draft.change(f"{place}.{key}", text)


def _place_of(draft: Draft, mark: str) -> str:
    found = standing(draft.tables)
    if mark in found:
        return path_text_of(draft.tables, found[mark])
    if mark in drawers_in(draft.tables):
        raise RefusalError(
            "is a drawer, whose sizes follow from its opening.", "Change its carcase, or the heights of its column."
        )
    raise no_such_mark(draft.tables, mark, drawers=False)
