"""Kinds of values in a project file, and what all its tables have in common.

This module loads pydantic, as do the tables that are built on it, so it is imported inside functions only.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Any, ClassVar, Literal, TypeAlias, TypeVar

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    AfterValidator,
    BaseModel,
    ConfigDict,
    Discriminator,
    Field,
    GetJsonSchemaHandler,
    PlainValidator,
    Tag,
    ValidationInfo,
    WithJsonSchema,
    field_validator,
)

from planner.domain.marks import BOX_MARK
from planner.intake import values
from planner.intake.known import Known
from planner.intake.only import Only, in_schema
from planner.intake.refusal import RefusalError
from planner.intake.slope import PATTERN as SLOPE_PATTERN
from planner.intake.slope import read_slope
from planner.intake.usual import usual_said
from planner.lengths import Nm, Span, Unit

Said = TypeVar("Said")


class Table(BaseModel):
    """A table of the file: only the keys below, each of exactly its kind.

    A key of which ``only`` tells must stand after the key that decides.
    """

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)
    only: ClassVar[tuple[Only, ...]] = ()

    @field_validator("*")
    @classmethod
    def _counts_here(cls, said: Said, info: ValidationInfo) -> Said:
        for rule in cls.only:
            if info.field_name not in rule.keys or rule.beside not in info.data:
                continue
            decides = info.data[rule.beside]
            if said is None and rule.needed and rule.counts(decides):
                raise RefusalError(rule.missing(decides), f"Add {info.field_name}.")
            if said is not None and not rule.counts(decides):
                raise RefusalError(rule.what, rule.remedy)
        return said

    @classmethod
    def __get_pydantic_json_schema__(cls, core_schema: Any, handler: GetJsonSchemaHandler) -> dict[str, Any]:  # noqa: ANN401 - the library's own
        made = handler(core_schema)
        if cls.only:
            handler.resolve_ref_schema(made)["allOf"] = in_schema(cls.only)
        return made


def usually(key: str) -> str:
    """The usual length of a key, as the last sentence of its description."""
    return f"Usually {usual_said(key)}."


def _known(info: ValidationInfo) -> Known:
    if not isinstance(info.context, Known):
        raise TypeError("a file is validated with what is known of it as context")
    return info.context


def unit_of(info: ValidationInfo) -> Unit:
    """Unit of bare numbers in the file."""
    return _known(info).unit


def own_timbers(info: ValidationInfo) -> tuple[str, ...]:
    """Names of the file's own timbers."""
    return _known(info).timbers


def _length(said: object, info: ValidationInfo) -> Nm:
    return values.length(said, _known(info).unit)


def _length_or_nothing(said: object, info: ValidationInfo) -> Nm:
    return values.length(said, _known(info).unit, zero=True)


def _either_way(said: object, info: ValidationInfo) -> Nm:
    return values.either_way(said, _known(info).unit)


def _board_width(said: object, info: ValidationInfo) -> Nm:
    return values.board_width(said, _known(info).unit)


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
EitherWay: TypeAlias = Annotated[
    Nm, PlainValidator(_either_way), WithJsonSchema(_FORM | {"examples": ["1/2 in", "-3/4 in", 0, -20]})
]
BoardWidth: TypeAlias = Annotated[Nm, PlainValidator(_board_width), WithJsonSchema(_ABOVE_NOTHING)]
Name: TypeAlias = Annotated[str, Field(min_length=1, max_length=40), AfterValidator(values.name)]
ProjectName: TypeAlias = Annotated[str, Field(min_length=1, max_length=80), AfterValidator(values.name)]
Reason: TypeAlias = Annotated[
    str,
    AfterValidator(values.reason),
    WithJsonSchema({"type": "string", "minLength": 1, "maxLength": values.GREATEST_REASON}),
]
Code: TypeAlias = Annotated[
    str, AfterValidator(values.code), Field(json_schema_extra={"pattern": f"^{values.CODE.pattern}$"})
]
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
Share: TypeAlias = Annotated[
    Fraction,
    PlainValidator(values.share),
    WithJsonSchema({"type": "number", "exclusiveMinimum": 0, "maximum": values.GREATEST_SHARE, "examples": [2, 1.5]}),
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
LIST_TAG, WORD_TAG, KEPT_TAG, SLED_TAG = TAGS = "[list]", "[word]", "[kept]", "[sled]"
"""Tell apart the forms that a value may have; they stand in the library's paths, never in ours."""
Heights: TypeAlias = Annotated[
    Annotated[Literal["equal", "graduated"], Tag(WORD_TAG)] | Annotated[list[RestOrLength], Tag(LIST_TAG)],
    Discriminator(lambda said: LIST_TAG if isinstance(said, list) else WORD_TAG),
]
