"""Kinds of values in a project file, and what all its tables have in common.

This module loads pydantic, as do the tables that are built on it, so it is imported inside functions only.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Literal, TypeAlias

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    AfterValidator,
    BaseModel,
    ConfigDict,
    Discriminator,
    Field,
    PlainValidator,
    Tag,
    ValidationInfo,
    WithJsonSchema,
)

from planner.domain.marks import BOX_MARK
from planner.intake import values
from planner.intake.known import Known
from planner.intake.slope import PATTERN as SLOPE_PATTERN
from planner.intake.slope import read_slope
from planner.intake.usual import usual_said
from planner.lengths import Nm, Span


class Table(BaseModel):
    """A table of the file: only the keys below, each of exactly its kind."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


def usually(key: str) -> str:
    """The usual length of a key, as the last sentence of its description."""
    return f"Usually {usual_said(key)}."


def _known(info: ValidationInfo) -> Known:
    if not isinstance(info.context, Known):
        raise TypeError("a file is validated with what is known of it as context")
    return info.context


def _length(said: object, info: ValidationInfo) -> Nm:
    return values.length(said, _known(info).unit)


def _length_or_nothing(said: object, info: ValidationInfo) -> Nm:
    return values.length(said, _known(info).unit, zero=True)


def _length_or_rest(said: object, info: ValidationInfo) -> Nm | None:
    return None if said == "rest" else _length(said, info)


def _place(said: object, info: ValidationInfo) -> Span:
    return values.place(said, _known(info).unit)


def _apart(places: list[Span], info: ValidationInfo) -> list[Span]:
    return values.apart(places, _known(info).unit)


def _material(said: str, info: ValidationInfo) -> str:
    return values.one_of(said, _known(info).materials, "materials")


def _sled(said: str, info: ValidationInfo) -> str:
    return values.one_of(said, _known(info).sleds, "sleds")


_FORM = {"type": ["string", "number"], "minLength": 1}
_ABOVE_NOTHING = _FORM | {"exclusiveMinimum": 0, "examples": ["3/4 in", '23-1/2"', "1' 6 1/2\"", "19 mm", 19]}
_OR_NOTHING = _FORM | {"minimum": 0, "examples": ["1/32 in", "1 mm", 0]}
Length: TypeAlias = Annotated[Nm, PlainValidator(_length), WithJsonSchema(_ABOVE_NOTHING)]
LengthOrNothing: TypeAlias = Annotated[Nm, PlainValidator(_length_or_nothing), WithJsonSchema(_OR_NOTHING)]
Name: TypeAlias = Annotated[str, Field(min_length=1, max_length=40), AfterValidator(values.name)]
ProjectName: TypeAlias = Annotated[str, Field(min_length=1, max_length=80), AfterValidator(values.name)]
Title: TypeAlias = Annotated[str, Field(max_length=80), AfterValidator(values.name)]
Mark: TypeAlias = Annotated[
    str, AfterValidator(values.mark), Field(json_schema_extra={"pattern": f"^{BOX_MARK.pattern}$"})
]
MaterialName: TypeAlias = Annotated[str, AfterValidator(_material)]
SledName: TypeAlias = Annotated[str, AfterValidator(_sled)]
Seconds: TypeAlias = Annotated[int, Field(ge=0, le=values.GREATEST_SECONDS)]
Tails: TypeAlias = Annotated[
    int | Literal["choose"],
    PlainValidator(values.tails),
    WithJsonSchema(
        {"anyOf": [{"const": "choose"}, {"type": "integer", "minimum": 1, "maximum": values.GREATEST_TAILS}]}
    ),
]
Ratio: TypeAlias = Annotated[
    Fraction,
    PlainValidator(values.ratio),
    WithJsonSchema({"type": "number", "exclusiveMinimum": 1, "maximum": values.GREATEST_RATIO, "examples": [1.15]}),
]
Slope: TypeAlias = Annotated[
    int,
    PlainValidator(read_slope),
    WithJsonSchema({"type": "string", "pattern": SLOPE_PATTERN, "examples": ["1:8", "7 deg"]}),
]
Place: TypeAlias = Annotated[
    Span,
    PlainValidator(_place),
    WithJsonSchema(
        {
            "type": "array",
            "items": _ABOVE_NOTHING,
            "minItems": 2,
            "maxItems": 2,
            "examples": [["1 1/2 in", "1 3/4 in"]],
        }
    ),
]
Places: TypeAlias = Annotated[
    list[Place], Field(min_length=1, max_length=values.GREATEST_TAILS - 1), AfterValidator(_apart)
]
RestOrLength: TypeAlias = Annotated[
    Nm | None,
    PlainValidator(_length_or_rest),
    WithJsonSchema(_ABOVE_NOTHING | {"examples": ["4 in", 120, "rest"]}),
]
LIST_TAG, WORD_TAG = "[list]", "[word]"
Heights: TypeAlias = Annotated[
    Annotated[Literal["equal", "graduated"], Tag(WORD_TAG)] | Annotated[list[RestOrLength], Tag(LIST_TAG)],
    Discriminator(lambda said: LIST_TAG if isinstance(said, list) else WORD_TAG),
]
