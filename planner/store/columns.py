"""Frozen values to columns and back, by the types of their fields: one way for all tables.

A field and its column have the same name. A length, a number or a text is kept as it is; a word as its text; a yes or
no as 1 or 0; a fraction as ``NAME_top`` and ``NAME_bottom``; stuff as ``NAME_material_id`` and ``NAME_thickness_nm``,
and where the field is called ``stuff``, as ``material_id`` and ``thickness_nm``. A field of any other type has rows of
its own, which the caller writes and reads, as it does the few fields that name another row.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from types import UnionType
from typing import TYPE_CHECKING, Any, NewType, NoReturn, TypeVar, Union, get_args, get_origin, get_type_hints

from planner.domain.ring import Corner, Ring, Stuff
from planner.domain.sled import Sled
from planner.domain.stock import MaterialStock

if TYPE_CHECKING:
    from planner.store.tables import Row

    _Table = TypeVar("_Table", bound=Row)

_Value = TypeVar("_Value")

MaterialOf = Callable[[int], str]
"""From the id of a material to its name."""

IdOf = Callable[[str], int]
"""From the name of a material to its id."""

_REFERENCES = {
    (Ring, "sled"), (Corner, "board_at_b"), (Corner, "board_at_a"), (Sled, "kept"), (MaterialStock, "material"),
}  # fmt: skip
"""Fields that are kept as the id of another row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class InColumns:
    """A field that is kept in columns of its value's row.

    Attributes:
        kind: its type, None and new names left aside.
        columns: where it is kept.
        may_lack: whether it may be None.
    """

    kind: type[Any]
    columns: tuple[str, ...]
    may_lack: bool


def fields_of(kind: type[Any]) -> Mapping[str, InColumns | None]:
    """All fields of a dataclass by name; None for those that have rows of their own, or are ids of other rows."""
    known = _KNOWN.get(kind)
    if known is None:
        known = _KNOWN[kind] = {
            name: None if (kind, name) in _REFERENCES else _in_columns(name, hint)
            for name, hint in get_type_hints(kind).items()
        }
    return known


_KNOWN: dict[type[Any], dict[str, InColumns | None]] = {}
"""What was asked before; the hints of a type are texts until somebody looks them up, which takes its time."""


def _in_columns(name: str, hint: object) -> InColumns | None:
    options = get_args(hint) if get_origin(hint) in {Union, UnionType} else (hint,)
    kinds = [_plain(option) for option in options if option is not type(None)]
    kind = kinds[0]
    if len(kinds) > 1 or not isinstance(kind, type):
        return None
    columns = _columns(name, kind)
    return InColumns(kind=kind, columns=columns, may_lack=len(options) > 1) if columns else None


def _plain(option: object) -> object:
    return option.__supertype__ if isinstance(option, NewType) else option


def _columns(name: str, kind: type[Any]) -> tuple[str, ...]:
    if issubclass(kind, Stuff):
        of = "" if name == "stuff" else f"{name}_"
        return f"{of}material_id", f"{of}thickness_nm"
    if issubclass(kind, Fraction):
        return f"{name}_top", f"{name}_bottom"
    return (name,) if issubclass(kind, StrEnum | str | int | float) else ()


def _none_known(which: object) -> NoReturn:
    raise KeyError(which)


def columns_of(value: object, id_of: IdOf = _none_known) -> dict[str, object]:
    """What the columns of a value hold, fields with rows of their own left aside.

    Args:
        value: a dataclass.
        id_of: ids of the materials in it.
    """
    return {
        column: part
        for name, field in fields_of(type(value)).items()
        if field is not None
        for column, part in zip(field.columns, _parts(getattr(value, name), field, id_of), strict=True)
    }


def row_from(table: type[_Table], value: object, id_of: IdOf = _none_known, /, **said: object) -> _Table:
    """The row of a value.

    Args:
        table: whose row it is.
        value: a dataclass.
        id_of: ids of the materials in it.
        said: columns that are none of the value's own fields, or are to hold something else.
    """
    own = columns_of(value, id_of)
    lost = (own.keys() | said.keys()) - table.model_fields.keys()
    if lost:
        raise TypeError(f"{table.__name__} has no column for {', '.join(sorted(lost))}")
    return table(**(own | said))


def _parts(said: object, field: InColumns, id_of: IdOf) -> tuple[object, ...]:
    match said:
        case None:
            return (None,) * len(field.columns)
        case Stuff():
            return id_of(said.material), said.thickness_nm
        case Fraction():
            return said.numerator, said.denominator
        case StrEnum():
            return (said.value,)
        case bool():
            return (int(said),)
        case _:
            return (said,)


def value_from(kind: type[_Value], row: Row, material_of: MaterialOf = _none_known, /, **parts: object) -> _Value:
    """The value of a row.

    Args:
        kind: a dataclass.
        row: the row that has its columns.
        material_of: names of the materials in it.
        parts: the fields that have rows of their own, or are ids of other rows.

    Raises:
        ValueError: a column holds what its field can't.
    """
    fields = {
        name: _whole(name, field, [getattr(row, column) for column in field.columns], material_of)
        for name, field in fields_of(kind).items()
        if field is not None and name not in parts
    }
    unsaid = fields_of(kind).keys() - fields.keys() - parts.keys()
    if unsaid:
        raise TypeError(f"nobody says {', '.join(sorted(unsaid))} of a {kind.__name__}")
    make: Callable[..., _Value] = kind
    return make(**fields, **parts)


def _whole(name: str, field: InColumns, held: list[Any], material_of: MaterialOf) -> object:
    if None in held:
        if not field.may_lack:
            raise ValueError(f"its {name} is not said")
        return None
    if field.kind is Stuff:
        material_id, thickness = held
        return Stuff(material=material_of(material_id), thickness_nm=thickness)
    return field.kind(*held)
