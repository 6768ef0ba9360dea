"""Swap one timber for another, in everything or in some boxes, carcases and drawers only."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from planner.intake.edit import Draft
from planner.intake.marked import drawers_in, no_such_mark, standing
from planner.intake.nearest import advice
from planner.intake.place import value_at
from planner.intake.raw import Raw, table_at
from planner.intake.refusal import Path, RefusalError, quote
from planner.intake.sharing import Table, laid_over
from planner.wood.timbers import UnknownTimberError, full_name, shipped

_MATERIALS = "material"
_IN_DRAWERS = frozenset({"drawer", "except"})
"""Keys of a carcase that speak of its drawers."""


def swap_timber(draft: Draft, old: str, new: str, within: Sequence[str]) -> None:
    """Put a new material in place of an old one. One that isn't there yet is made, of the old one's kind and hardness.

    Its species is the timber of its name, if the old one has a species and there is such a timber.

    Args:
        draft: the project.
        old: name of a material.
        new: name of the other.
        within: marks of boxes, carcases and drawers; a carcase's mark means its own boards, not its drawers. Without
            any, everything.
    """
    materials = draft.tables[_MATERIALS]
    with draft.refusing(old):
        if old not in materials:
            raise RefusalError("is not one of the project's materials.", advice(old, list(materials)))
        if new not in materials:
            draft.put((_MATERIALS, new), _made_like(materials[old], new, table_at(draft.tables, "timber")))
        if not within:
            _swap(draft, old, new, [path for path, said in _named(_but_materials(draft.tables), ()) if said == old])
    for mark in within:
        with draft.refusing(mark):
            _swap(draft, old, new, [path for path, said in _named_in(draft.tables, mark) if said == old])


def _made_like(old: Table, new: str, own: Raw) -> Table:
    """A new material of an old one's kind and hardness; if the old one names its species, so does this, if it can.

    Args:
        old: table of the old material.
        new: name of the new one.
        own: the project's own timbers.
    """
    species = old.get("species")
    if species is None:
        return dict(old)
    try:
        return {"species": full_name(new, own)}
    except UnknownTimberError:
        timber = shipped().get(species)
        usual = {"kind": str(timber.kind), "hardness": str(timber.hardness)} if timber else {}
        said = {**usual, **own.get(species, {}), **old}
        return {key: said[key] for key in ("kind", "hardness", "sawn") if key in said}


def _swap(draft: Draft, old: str, new: str, paths: Sequence[Path]) -> None:
    if not paths:
        raise RefusalError(f"nothing here is of {quote(old)}.", "Look at the boards: planner boards")
    for path in paths:
        draft.put(path, new)


def _but_materials(tables: Table) -> Table:
    return {key: said for key, said in tables.items() if key != _MATERIALS}


def _named(said: Any, path: Path) -> Iterator[tuple[Path, str]]:  # noqa: ANN401 - any value of a file
    """Every place below a path where a material is named, and its name."""
    if isinstance(said, list):
        for place, each in enumerate(said):
            yield from _named(each, (*path, place))
    elif isinstance(said, dict):
        for key, each in said.items():
            if isinstance(each, str) and (key == _MATERIALS or key.endswith(f"_{_MATERIALS}")):
                yield (*path, key), each
            else:
                yield from _named(each, (*path, key))


def _named_in(tables: Table, mark: str) -> Iterator[tuple[Path, str]]:
    """The same for the boards of one box, carcase or drawer; a drawer's lie where it differs from the others."""
    whole, drawers = standing(tables), drawers_in(tables)
    if mark in whole:
        path = whole[mark]
        own = {key: said for key, said in value_at(tables, path).items() if key not in _IN_DRAWERS}
    elif mark in drawers:
        path = (*drawers[mark], "except", mark)
        own = laid_over(value_at(tables, (*drawers[mark], "drawer")), value_at(tables, path) or {})
    else:
        raise no_such_mark(tables, mark, drawers=True)
    yield from _named(own, path)
