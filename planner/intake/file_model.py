"""Form of a project file: every key with its meaning, its limits and its usual value.

The reader and the JSON Schema both come from here. What no single table can know (marks given twice, rails that
are missing) is in ``fit``. This module loads pydantic, so it is imported inside functions only.
"""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Discriminator, Field, PlainValidator, Tag, WithJsonSchema, model_validator

from planner.domain.rates import USUAL_RATES
from planner.intake import values
from planner.intake.file_box import BoxTable
from planner.intake.file_carcase import CarcaseTable
from planner.intake.file_pins import PinsTable
from planner.intake.file_stock import StockTable
from planner.intake.file_values import (
    KEPT_TAG,
    SLED_TAG,
    Code,
    Length,
    LengthOrNothing,
    Name,
    ProjectName,
    Reason,
    Seconds,
    SledName,
    Slope,
    Table,
    usually,
)
from planner.intake.file_wood import ClimateTable, MaterialTable, RoomTable, TimberTable
from planner.intake.refusal import RefusalError


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
    drawers: Literal["at once", "to measure"] = Field(
        "at once",
        description="When drawers and doors are cut: at once with everything else, so that each setting is made once, "
        "or to measure, once the carcase stands and their openings can be measured.",
    )
    sled: SledName | None = Field(
        None, description="The sled for everything that names no other. May be left out when there is only one."
    )


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
    kept: bool = Field(
        default=False, description="Whether it is the store's sled of this name. With true, all values may be left out."
    )


class KeptSledTable(Table):
    """The store's sled of this name, as it was measured last."""

    kept: Literal[True] = Field(description="Takes the store's sled of this name.")

    @model_validator(mode="before")
    @classmethod
    def _all_or_none(cls, said: object) -> object:
        given = [key for key in SledTable.model_fields if isinstance(said, dict) and key in said and key != "kept"]
        if given:
            missing = [key for key, field in SledTable.model_fields.items() if field.is_required() and key not in given]
            raise RefusalError(
                f"gives {', '.join(given)} of the store's sled, but not {', '.join(missing)}.",
                "Beside kept = true give all values, or none to take the store's.",
            )
        return said


def _sled_tag(said: object) -> str:
    """Which of the two tables is meant; one that gives some values only is refused by the shorter."""
    if not isinstance(said, dict) or said.get("kept") is not True:
        return SLED_TAG
    whole = all(key in said for key, field in SledTable.model_fields.items() if field.is_required())
    return SLED_TAG if whole else KEPT_TAG


AnySledTable: TypeAlias = Annotated[
    Annotated[KeptSledTable, Tag(KEPT_TAG)] | Annotated[SledTable, Tag(SLED_TAG)], Discriminator(_sled_tag)
]


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


class AcknowledgedTable(Table):
    """A finding that you have taken note of; it is listed apart from the open ones."""

    code: Code = Field(description="Name of the rule that found it, as planner checks --json gives it.")
    marks: list[ProjectName] = Field([], description="Boards, ends or joints it is about, in the same order.")
    level: Literal["stop", "caution", "note"] = Field(
        "caution", description="How grave it was. Should it become graver, it is open again."
    )
    why: Reason = Field(description="Why you go on all the same.")


class File(Table):
    """A piece, or a batch of pieces, of dovetailed casework."""

    format: Annotated[int, PlainValidator(values.version), WithJsonSchema({"const": values.FORMAT})] = Field(
        description=f"Version of this format: {values.FORMAT}."
    )
    project: ProjectTable = Field(description="What holds for the whole project.")
    material: dict[Name, MaterialTable] = Field(min_length=1, description="Timbers and sheet goods, by your names.")
    timber: dict[Name, TimberTable] = Field({}, description="Figures of your own for timbers, by name.")
    room: RoomTable | None = Field(None, description="The air over the year where the piece will stand.")
    shop: ClimateTable | None = Field(None, description="The air or the wood in the shop on the day of cutting.")
    sled: dict[Name, AnySledTable] = Field(min_length=1, description="Dovetail sleds, by your names.")
    stock: StockTable | None = Field(None, description="How boards are cut out of rough wood.")
    pins: PinsTable | None = Field(None, description="How pins are spaced wherever nothing else is said.")
    rates: RatesTable | None = Field(None, description="How long things take at the sled, for the time estimate.")
    box: list[BoxTable] = Field([], description="Plain boxes.")
    carcase: list[CarcaseTable] = Field([], description="Cabinets.")
    acknowledged: list[AcknowledgedTable] = Field([], description="Findings that you have answered for.")
