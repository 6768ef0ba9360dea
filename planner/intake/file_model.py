"""Form of a project file: every key with its meaning, its limits and its usual value.

The reader and the JSON Schema both come from here. What no single table can know (marks given twice, rails that
are missing) is in ``fit``. This module loads pydantic, so it is imported inside functions only.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Literal, TypeVar

from pydantic import Field, PlainValidator, ValidationInfo, WithJsonSchema, field_validator

from planner.domain.rates import USUAL_RATES
from planner.intake import values
from planner.intake.file_drawer import BottomTable, DrawerPart, DrawerTable
from planner.intake.file_pins import JointsTable, PinsTable
from planner.intake.file_values import (
    Heights,
    Length,
    LengthOrNothing,
    Mark,
    MaterialName,
    Name,
    ProjectName,
    Ratio,
    Seconds,
    SledName,
    Slope,
    Table,
    Title,
    usually,
)
from planner.intake.refusal import RefusalError
from planner.lengths import Nm

Said = TypeVar("Said")


class ProjectTable(Table):
    """What holds for the whole project."""

    name: ProjectName = Field(description="What the project is called.")
    units: Literal["in", "mm"] = Field(description="Unit of bare numbers and of the sizes shown.")
    show: Literal["1/16 in", "1/32 in", "1/64 in", "0.1 mm"] | None = Field(
        None, description="Step to which sizes are shown; in the project's unit. Usually 1/32 in or 0.1 mm."
    )
    proud: LengthOrNothing | None = Field(
        None, description=f"How far joints stand out at each corner, to be planed flush. {usually('proud')}"
    )
    height_tolerance: LengthOrNothing | None = Field(
        None,
        description=f"Bit heights no further apart than this share a setting. {usually('height_tolerance')}",
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
    slot: Length | None = Field(
        None, description="Width of the slot that the bit really cuts, measured square across. Usually the bit's."
    )
    greatest_depth_soft: Length | None = Field(
        None, description="Highest cut to take at once in a soft wood. Left out, there is no limit."
    )
    greatest_depth_hard: Length | None = Field(
        None, description="Highest cut to take at once in a hard wood. Left out, there is no limit."
    )


def _seconds(step: str, usual: int) -> str:
    return f"Whole seconds to {step}. Usually {usual}."


class RatesTable(Table):
    """How long things take at the sled, for the time estimate."""

    sled_change: Seconds = Field(
        USUAL_RATES.sled_change_s, description=_seconds("change the sled", USUAL_RATES.sled_change_s)
    )
    height_change: Seconds = Field(
        USUAL_RATES.height_change_s, description=_seconds("set another bit height", USUAL_RATES.height_change_s)
    )
    fence_swap: Seconds = Field(
        USUAL_RATES.fence_swap_s, description=_seconds("go over to the other fence", USUAL_RATES.fence_swap_s)
    )
    handling: Seconds = Field(
        USUAL_RATES.handling_s,
        description=_seconds(
            "take up a board, set it to its first mark, clamp it and put it down", USUAL_RATES.handling_s
        ),
    )
    turning: Seconds = Field(
        USUAL_RATES.turning_s, description=_seconds("turn a board end for end", USUAL_RATES.turning_s)
    )
    pass_: Seconds = Field(
        USUAL_RATES.pass_s,
        alias="pass",
        description=_seconds("push once through the bit and back, with the shift to the mark", USUAL_RATES.pass_s),
    )


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
    joint: JointsTable | None = Field(None, description="What is different about the pins of single joints.")
    bottom: BottomTable | None = Field(None, description="Its bottom, if it has one.")


class BackTable(Table):
    """A back in a rabbet on all four boards."""

    material: MaterialName = Field(description="Material of the back.")
    thickness: Length = Field(description="Thickness of the back; the rabbet is as deep from behind.")
    rabbet_depth: Length | None = Field(
        None, description="How far the rabbet goes into the boards. Usually half their thickness, rounded down."
    )
    play: LengthOrNothing | None = Field(
        None, description=f"How much smaller the back is than the room for it. {usually('play')}"
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
    joint: JointsTable | None = Field(None, description="What is different about the pins of single joints.")
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
    rates: RatesTable | None = Field(None, description="How long things take at the sled, for the time estimate.")
    box: list[BoxTable] = Field([], description="Plain boxes.")
    carcase: list[CarcaseTable] = Field([], description="Cabinets with drawers.")
