"""The store's sleds in a project file: it takes one as it stands in the store, or says all that it must be."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from typing import TYPE_CHECKING, Any, TypeAlias

from planner.domain.sled import Sled
from planner.intake.build import sled_of
from planner.intake.raw import table_at
from planner.intake.refusal import Fault, quote
from planner.intake.slope import write_slope
from planner.lengths import Nm, Unit, write_length

if TYPE_CHECKING:
    from planner.intake.known import Known

KeptSleds: TypeAlias = Callable[[], Iterable[Sled]]
"""Looks up the store's sleds; called only for a file that names one of them as kept."""

_LISTED = 12
"""So many names are given in a refusal."""


def none_kept() -> tuple[Sled, ...]:
    """What is kept where there is no store to look into."""
    return ()


def figures(sled: Sled, unit: Unit) -> dict[str, str]:
    """All that was measured on a sled, by the keys of its table in a project file; what is not said is left out."""
    said: dict[str, Nm | None] = {
        "bit": sled.bit_nm,
        "greatest_bit_height": sled.greatest_bit_height_nm,
        "greatest_width": sled.greatest_width_nm,
        "greatest_upright": sled.greatest_upright_nm,
        "slot": sled.slot_nm,
        "greatest_depth_soft": sled.greatest_depth_soft_nm,
        "greatest_depth_hard": sled.greatest_depth_hard_nm,
    }
    lengths = {key: write_length(length, unit) for key, length in said.items() if length is not None}
    return {"slope": write_slope(sled.run_micro), **lengths}


def differences(one: Sled, other: Sled, unit: Unit) -> dict[str, tuple[str, str]]:
    """Where two sleds differ: by key what the one says and what the other; "not said" where it says nothing."""
    ours, theirs = figures(one, unit), figures(other, unit)
    pairs = {key: (ours.get(key, "not said"), theirs.get(key, "not said")) for key in {**ours, **theirs}}
    return {key: pair for key, pair in pairs.items() if pair[0] != pair[1]}


def refusal_of_other_figures(here: Sled, kept: Sled, unit: Unit) -> tuple[str, str]:
    """What is wrong with a sled that is not like the store's of its name, and what would be right."""
    pairs = differences(here, kept, unit)
    found = "; ".join(f"{key} {ours} here, {theirs} in the store" for key, (ours, theirs) in pairs.items())
    remedy = (
        "Leave out all values but kept = true, to take the store's; or give this one another name; "
        "or measure the store's anew: planner measure-sled."
    )
    return f"is not like the sled {quote(here.name)} that the store keeps: {found}.", remedy


def look_up(raw: Mapping[str, Any], known: Known, kept_sleds: KeptSleds) -> tuple[dict[str, Sled], list[Fault]]:
    """The store's sleds that a file names, and what is wrong with how it does."""
    tables = {name: table for name, table in table_at(raw, "sled").items() if _is_kept(table)}
    kept = {sled.name: sled for sled in kept_sleds()} if tables else {}
    return kept, [fault for each in tables.items() for fault in _faults(*each, kept, known)]


def _is_kept(table: object) -> bool:
    return isinstance(table, dict) and table.get("kept") is True


def _faults(name: str, table: Mapping[str, Any], kept: Mapping[str, Sled], known: Known) -> Iterator[Fault]:
    from pydantic import ValidationError

    from planner.intake.file_model import SledTable

    if len(table) == 1 and name not in kept:
        yield Fault(path=("sled", name), what=f"the store keeps no sled {quote(name)}.", remedy=_how_to_take_in(kept))
    if len(table) == 1 or name not in kept:
        return
    try:
        here = sled_of(name, SledTable.model_validate(table, context=known))
    except ValidationError:
        return  # what is wrong with the values is told by itself
    if here != kept[name]:
        what, remedy = refusal_of_other_figures(here, kept[name], known.unit)
        yield Fault(path=("sled", name), what=what, remedy=remedy)


def _how_to_take_in(kept: Mapping[str, Sled]) -> str:
    names = ", ".join(map(quote, list(kept)[:_LISTED]))
    listed = f" It keeps: {names}{' …' if len(kept) > _LISTED else ''}." if kept else ""
    return f"Give all its values beside kept = true; reading the file then takes it in.{listed}"
