"""The table of a project file that says what a carcase stands on."""

from __future__ import annotations

from typing import ClassVar, Literal

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    Field,
    ValidationInfo,
    field_validator,
)

from planner.intake.file_pins import JointsTable, PinsTable
from planner.intake.file_values import EitherWay, Length, Mark, MaterialName, SledName, Table, unit_of, usually
from planner.intake.only import Only
from planner.intake.refusal import RefusalError
from planner.intake.usual import usual_length
from planner.lengths import Nm, write_length

RING_KEYS = ("mark", "sled", "pins_on", "pins", "joint")
FEET_KEYS = ("foot", "rise")
STAND_KEYS = ("leg", "leg_material", "apron", "tenon", "setback")
_STANDS_BACK = "stands back from the carcase's {}; less than 0 stands out. Usually 0."


class BaseTable(Table):
    """What a carcase stands on: a dovetailed plinth, the same cut away to bracket feet, or a stand of four legs."""

    only: ClassVar[tuple[Only, ...]] = (
        Only(keys=RING_KEYS, beside="kind", words=("plinth", "bracket feet")),
        Only(keys=FEET_KEYS, beside="kind", words=("bracket feet",)),
        Only(keys=STAND_KEYS, beside="kind", words=("stand",)),
    )
    kind: Literal["plinth", "bracket feet", "stand"] = Field(
        description='A "plinth", "bracket feet", or a "stand" of four legs with aprons.'
    )
    height: Length = Field(description="Height from the floor to the carcase.")
    front: EitherWay | None = Field(None, description=f"How far it {_STANDS_BACK.format('front')}")
    sides: EitherWay | None = Field(None, description=f"How far each side {_STANDS_BACK.format('side')}")
    back: EitherWay | None = Field(None, description=f"How far it {_STANDS_BACK.format('back')}")
    material: MaterialName | None = Field(
        None, description="Material of its boards, or of the aprons. Usually the carcase's material."
    )
    thickness: Length | None = Field(
        None, description="Thickness of its boards, or of the aprons. Usually the carcase's thickness."
    )
    mark: Mark | None = Field(None, description="Mark of the plinth. Usually the carcase's mark and a P.")
    sled: SledName | None = Field(None, description="Sled for its corners. Usually the project's.")
    pins_on: Literal["front and back", "sides"] | None = Field(
        None, description="Boards that carry the pins. Usually the shorter pair, which stands upright on the sled."
    )
    pins: PinsTable | None = Field(None, description="What is different about its pins.")
    joint: JointsTable | None = Field(None, description="What is different about the pins of single joints.")
    foot: Length | None = Field(
        None, description=f"Bracket feet: length of the feet at each end of the boards. {usually('foot')}"
    )
    rise: Length | None = Field(
        None,
        description="Bracket feet: how high the boards are cut away between them. Usually half the height, rounded "
        "down.",
    )
    leg: Length | None = Field(None, description=f"Stand: thickness of the legs, both ways. {usually('leg')}")
    leg_material: MaterialName | None = Field(
        None, description="Stand: material of the legs. Usually that of the aprons."
    )
    apron: Length | None = Field(
        None, validate_default=True, description=f"Stand: width of the aprons. {usually('apron')}"
    )
    tenon: Length | None = Field(
        None, description="Stand: length of the aprons' tenons. Usually half a leg's thickness, rounded down."
    )
    setback: Length | None = Field(
        None,
        description=f"Stand: how far the aprons stand back from the legs' outside faces. {usually('apron_setback')}",
    )

    @field_validator("rise")
    @classmethod
    def _leaves_wood_above(cls, rise: Nm | None, info: ValidationInfo) -> Nm | None:
        height = info.data.get("height")
        if rise is not None and height is not None and rise >= height:
            raise RefusalError("leaves no wood above the feet.", "It must be less than the height.")
        return rise

    @field_validator("apron")
    @classmethod
    def _is_lower_than_the_legs(cls, said: Nm | None, info: ValidationInfo) -> Nm | None:
        apron = usual_length("apron", unit_of(info)) if said is None else said
        height = info.data.get("height")
        if info.data.get("kind") == "stand" and height is not None and apron > height:
            raise RefusalError(
                f"aprons of {write_length(apron, unit_of(info))} are wider than the legs are long.",
                "Take narrower aprons, or longer legs.",
            )
        return said

    @field_validator("tenon")
    @classmethod
    def _stays_in_the_leg(cls, tenon: Nm | None, info: ValidationInfo) -> Nm | None:
        leg = info.data.get("leg") or usual_length("leg", unit_of(info))
        if tenon is not None and tenon >= leg:
            raise RefusalError(
                f"is as long as a leg of {write_length(leg, unit_of(info))} is thick.", "Take shorter tenons."
            )
        return tenon
