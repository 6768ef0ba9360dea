"""Form of a project file: every key with its meaning, its limits and its usual value.

The reader and the JSON Schema both come from here. What no single table can know (marks given twice, rails that
are missing) is in ``fit``. This module loads pydantic, so it is imported inside functions only.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Literal, TypeAlias, TypeVar

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Discriminator,
    Field,
    PlainValidator,
    Tag,
    ValidationInfo,
    WithJsonSchema,
    field_validator,
)

from planner.domain.marks import BOX_MARK
from planner.intake import values
from planner.intake.known import Known
from planner.intake.refusal import RefusalError
from planner.intake.slope import PATTERN as SLOPE_PATTERN
from planner.intake.slope import read_slope
from planner.intake.usual import usual_said
from planner.lengths import Nm

Said = TypeVar("Said")

# --- values -------------------------------------------------------------------------------------------------


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
    WithJsonSchema({"type": "number", "exclusiveMinimum": 1, "maximum": 4, "examples": [1.15]}),
]
Slope: TypeAlias = Annotated[
    int,
    PlainValidator(read_slope),
    WithJsonSchema({"type": "string", "pattern": SLOPE_PATTERN, "examples": ["1:8", "7 deg"]}),
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


def _usually(key: str) -> str:
    return f"Usually {usual_said(key)}."


# --- tables -------------------------------------------------------------------------------------------------


class Table(BaseModel):
    """A table of the file: only the keys below, each of exactly its kind."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


class ProjectTable(Table):
    """What holds for the whole project."""

    name: ProjectName = Field(description="What the project is called.")
    units: Literal["in", "mm"] = Field(description="Unit of bare numbers and of the sizes shown.")
    show: Literal["1/16 in", "1/32 in", "1/64 in", "0.1 mm"] | None = Field(
        None, description="Step to which sizes are shown; in the project's unit. Usually 1/32 in or 0.1 mm."
    )
    proud: LengthOrNothing | None = Field(
        None, description=f"How far joints stand out at each corner, to be planed flush. {_usually('proud')}"
    )
    height_tolerance: LengthOrNothing | None = Field(
        None,
        description=f"Bit heights no further apart than this share a setting. {_usually('height_tolerance')}",
    )
    sled: SledName | None = Field(
        None, description="The sled for everything that names no other. May be left out when there is only one."
    )


class MaterialTable(Table):
    """A timber or a sheet good."""

    kind: Literal["solid", "sheet"] = Field("solid", description="Solid timber, or sheet goods such as plywood.")
    hardness: Literal["soft", "hard"] = Field("hard", description="How it cuts.")


class SledTable(Table):
    """A dovetail sled for the router table, as measured."""

    slope: Slope = Field(description="Slope of its two fences: 1:n, or degrees off square.")
    bit: Length = Field(description="Diameter of its straight bit, as measured.")
    greatest_bit_height: Length = Field(description="Highest the bit can stand above the sled's floor.")
    greatest_width: Length = Field(description="Widest board that fits beside the slot, at either fence.")
    greatest_upright: Length = Field(description="Longest board that can stand on end.")


class PinsTable(Table):
    """How pins are spaced along a corner."""

    half_pin: Length | None = Field(
        None, description=f"Width of the half-pin at each edge, on the outside face. {_usually('half_pin')}"
    )
    pin: Length | None = Field(None, description=f"Width of each pin on the outside face. {_usually('pin')}")
    tails: Tails | None = Field(None, description='How many tails; "choose" leaves it to the planner, as is usual.')
    tail: Length | None = Field(
        None, description=f"The tail width you like best, when the planner chooses. {_usually('tail')}"
    )
    greatest_tail: Length | None = Field(
        None, description=f"Widest tail, when the planner chooses. {_usually('greatest_tail')}"
    )


_BOTTOM = "Material of the bottom."
_BOTTOM_THICKNESS = "Thickness of the bottom; its groove is as wide."


class BottomPart(Table):
    """What is different about the bottom of one drawer."""

    material: MaterialName | None = Field(None, description=_BOTTOM)
    thickness: Length | None = Field(None, description=_BOTTOM_THICKNESS)
    groove_depth: Length | None = Field(
        None, description="Depth of the groove. Usually half the thinnest board of the box, rounded down."
    )
    up: Length | None = Field(
        None, description="Height of the groove above the lower edge. Usually just clear of the half-pin."
    )
    play: LengthOrNothing | None = Field(
        None, description=f"How much smaller the bottom is than the room for it. {_usually('play')}"
    )


class BottomTable(BottomPart):
    """A bottom held in a groove in all four boards."""

    material: MaterialName = Field(description=_BOTTOM)
    thickness: Length = Field(description=_BOTTOM_THICKNESS)


class BoxTable(Table):
    """A plain box, or a batch of boxes that are alike."""

    mark: Mark = Field(description="Mark of the box: a capital letter, then up to 7 capitals or digits.")
    title: Title = Field("", description="What you call it.")
    count: int = Field(
        1, ge=1, le=values.GREATEST_COUNT, description="How many; more than one are marked K1, K2 … when the mark is K."
    )
    sizes: Literal["outside", "inside"] = Field("outside", description="What length and width are measured over.")
    length: Length = Field(description="Size along the front.")
    width: Length = Field(description="Size from front to back.")
    height: Length = Field(description="Height of its four boards.")
    material: MaterialName = Field(description="Material of its four boards.")
    thickness: Length = Field(description="Thickness of its four boards.")
    sled: SledName | None = Field(None, description="Sled for its corners. Usually the project's.")
    pins_on: Literal["front and back", "sides"] | None = Field(
        None, description="Boards that carry the pins. Usually the shorter pair, which stands upright on the sled."
    )
    pins: PinsTable | None = Field(None, description="What is different about its pins.")
    bottom: BottomTable | None = Field(None, description="Its bottom, if it has one.")


class BackTable(Table):
    """A back in a rabbet on all four boards."""

    material: MaterialName = Field(description="Material of the back.")
    thickness: Length = Field(description="Thickness of the back; the rabbet is as deep from behind.")
    rabbet_depth: Length | None = Field(
        None, description="How far the rabbet goes into the boards. Usually half their thickness, rounded down."
    )
    play: LengthOrNothing | None = Field(
        None, description=f"How much smaller the back is than the room for it. {_usually('play')}"
    )


class RailsTable(Table):
    """Rails between drawers, flat at the front, in housings in the sides."""

    material: MaterialName | None = Field(None, description="Usually the carcase's material.")
    thickness: Length = Field(description="Thickness of a rail: the height between two openings.")
    width: Length = Field(description="Width of a rail, from front to back.")
    housing_depth: Length | None = Field(
        None, description="Depth of the housings. Usually a third of the carcase's thickness, rounded down."
    )


class PartitionsTable(Table):
    """Upright boards between columns, in housings in top and bottom."""

    material: MaterialName | None = Field(None, description="Usually the carcase's material.")
    thickness: Length | None = Field(None, description="Usually the carcase's thickness.")
    housing_depth: Length | None = Field(
        None, description="Depth of the housings. Usually a third of the carcase's thickness, rounded down."
    )


class ColumnTable(Table):
    """A column of drawers."""

    width: Length | None = Field(None, description="Clear width. Left out, the column shares what is left.")
    drawers: int = Field(ge=1, le=values.GREATEST_DRAWERS, description="How many drawers, one above the other.")
    heights: Heights = Field(
        "equal",
        description='How the openings share the height: "equal", "graduated", or one height for each drawer from the '
        'top, where "rest" takes what is left.',
    )
    ratio: Ratio | None = Field(
        None, description='With "graduated": each opening is this many times as tall as the one above. Or give a step.'
    )
    step: Length | None = Field(
        None,
        validate_default=True,
        description='With "graduated": each opening is taller than the one above by this. Or give a ratio.',
    )
    marks: list[Mark] | None = Field(
        None, description="Marks of the drawers from the top. Usually D1, D2 and so on; with more columns D101, D201."
    )

    @field_validator("heights", "marks")
    @classmethod
    def _one_for_each_drawer(cls, said: Said, info: ValidationInfo) -> Said:
        drawers = info.data.get("drawers")
        if isinstance(said, list) and drawers is not None and len(said) != drawers:
            raise RefusalError(
                f"{len(said)} are listed for {drawers} drawers.", "List one for each drawer, from the top."
            )
        return said

    @field_validator("ratio")
    @classmethod
    def _ratio_is_wanted(cls, ratio: Fraction | None, info: ValidationInfo) -> Fraction | None:
        return cls._only_when_graduated(ratio, info)

    @field_validator("step")
    @classmethod
    def _step_or_ratio(cls, step: Nm | None, info: ValidationInfo) -> Nm | None:
        ratio_given = info.data.get("ratio", "unreadable") is not None
        if step is not None and ratio_given:
            raise RefusalError("a step and a ratio are both given.", "Give one of them.")
        if step is None and not ratio_given and info.data.get("heights") == "graduated":
            raise RefusalError("graduated heights need a step or a ratio.", 'Add step = "1/2 in" or ratio = 1.15.')
        return cls._only_when_graduated(step, info)

    @staticmethod
    def _only_when_graduated(said: Said, info: ValidationInfo) -> Said:
        if said is not None and info.data.get("heights", "graduated") != "graduated":
            raise RefusalError("is for graduated heights only.", 'Write heights = "graduated", or leave this out.')
        return said


_DRAWER = "Material of sides and back."
_FRONT, _SIDE, _BACK = "Thickness of the front.", "Thickness of each side.", "Thickness of the back."


class DrawerPart(Table):
    """What is different about one drawer."""

    material: MaterialName | None = Field(None, description=_DRAWER)
    front_material: MaterialName | None = Field(
        None, description="Material of the front. Usually the same as sides and back."
    )
    front_thickness: Length | None = Field(None, description=_FRONT)
    side_thickness: Length | None = Field(None, description=_SIDE)
    back_thickness: Length | None = Field(None, description=_BACK)
    side_clearance: Length | None = Field(None, description=f"Space at each side. {_usually('side_clearance')}")
    top_clearance: Length | None = Field(None, description=f"Space above. {_usually('top_clearance')}")
    back_clearance: LengthOrNothing | None = Field(None, description=f"Space behind. {_usually('back_clearance')}")
    sled: SledName | None = Field(None, description="Sled for its corners. Usually the project's.")
    pins_on: Literal["front and back", "sides"] = Field(
        "front and back", description="Boards that carry the pins; on front and back, the tails lock against the pull."
    )
    pins: PinsTable | None = Field(None, description="What is different about its pins.")
    bottom: BottomPart | None = Field(None, description="Its bottom, if it has one.")


class DrawerTable(DrawerPart):
    """How the drawers of a carcase are made."""

    material: MaterialName = Field(description=_DRAWER)
    front_thickness: Length = Field(description=_FRONT)
    side_thickness: Length = Field(description=_SIDE)
    back_thickness: Length = Field(description=_BACK)
    bottom: BottomTable | None = Field(None, description="Its bottom, if it has one.")


class CarcaseTable(Table):
    """A cabinet: its outer ring, and what stands in it."""

    mark: Mark = Field(description="Mark of the carcase: a capital letter, then up to 7 capitals or digits.")
    title: Title = Field("", description="What you call it.")
    width: Length = Field(description="Outside width.")
    height: Length = Field(description="Outside height.")
    depth: Length = Field(description="Outside depth, from front edge to back edge.")
    material: MaterialName = Field(description="Material of top, bottom and sides.")
    thickness: Length = Field(description="Thickness of top, bottom and sides.")
    sled: SledName | None = Field(None, description="Sled for its corners. Usually the project's.")
    pins_on: Literal["top and bottom", "sides"] | None = Field(
        None, description="Boards that carry the pins. Usually the shorter pair, which stands upright on the sled."
    )
    pins: PinsTable | None = Field(None, description="What is different about its pins.")
    back: BackTable | None = Field(None, description="Its back, if it has one.")
    rails: RailsTable | None = Field(None, description="Needed where drawers stand above each other.")
    partitions: PartitionsTable | None = Field(None, description="Needed with two columns or more.")
    column: list[ColumnTable] = Field(min_length=1, description="Its columns of drawers, from left to right.")
    drawer: DrawerTable = Field(description="How its drawers are made.")
    except_: dict[str, DrawerPart] = Field(
        {}, alias="except", description="What is different about one drawer, by its mark."
    )


class File(Table):
    """A piece, or a batch of pieces, of dovetailed casework."""

    format: Annotated[int, PlainValidator(values.version), WithJsonSchema({"const": values.FORMAT})] = Field(
        description=f"Version of this format: {values.FORMAT}."
    )
    project: ProjectTable = Field(description="What holds for the whole project.")
    material: dict[Name, MaterialTable] = Field(min_length=1, description="Timbers and sheet goods, by your names.")
    sled: dict[Name, SledTable] = Field(min_length=1, description="Dovetail sleds, by your names.")
    pins: PinsTable | None = Field(None, description="How pins are spaced wherever nothing else is said.")
    box: list[BoxTable] = Field([], description="Plain boxes.")
    carcase: list[CarcaseTable] = Field([], description="Cabinets with drawers.")
