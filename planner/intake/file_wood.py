"""The tables of a project file that tell of timbers and of the air that they live in."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    AfterValidator,
    ConfigDict,
    Field,
    PlainValidator,
    ValidationInfo,
    WithJsonSchema,
    model_validator,
)

from planner.intake import values, wood_said
from planner.intake.file_values import Table, own_timbers, unit_of
from planner.intake.refusal import RefusalError


def _species(said: str, info: ValidationInfo) -> str:
    return wood_said.species(said, own_timbers(info))


def _temperature(said: object, info: ValidationInfo) -> int:
    return wood_said.temperature(said, unit_of(info))


def _share(most: int, *examples: object) -> WithJsonSchema:
    return WithJsonSchema(
        {"type": ["string", "number"], "minLength": 1, "minimum": 0, "maximum": most, "examples": list(examples)}
    )


def _over_nothing(most: float, *examples: object) -> WithJsonSchema:
    return WithJsonSchema({"type": "number", "exclusiveMinimum": 0, "maximum": most, "examples": list(examples)})


def _text(*examples: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "minLength": 1, "examples": list(examples)})


Species: TypeAlias = Annotated[
    str, AfterValidator(_species), Field(json_schema_extra={"examples": ["black cherry", "Oak, white", "MDF"]})
]
Temperature: TypeAlias = Annotated[
    int,
    PlainValidator(_temperature),
    WithJsonSchema({"type": ["string", "number"], "minLength": 1, "examples": ["70 °F", "21 °C", 70]}),
]
Humidity: TypeAlias = Annotated[
    int, PlainValidator(wood_said.humidity), _share(wood_said.GREATEST_HUMIDITY, "45 %", 45)
]
Moisture: TypeAlias = Annotated[
    int, PlainValidator(wood_said.moisture), _share(wood_said.GREATEST_MOISTURE, "8.5 %", 8.5)
]
Coefficient: TypeAlias = Annotated[
    float, PlainValidator(wood_said.coefficient), _over_nothing(wood_said.GREATEST_COEFFICIENT, 0.00248)
]
Shrinkage: TypeAlias = Annotated[
    float, PlainValidator(wood_said.shrinkage), _over_nothing(wood_said.GREATEST_SHRINKAGE, 7.1)
]
Gravity: TypeAlias = Annotated[
    float, PlainValidator(wood_said.gravity), _over_nothing(float(wood_said.GREATEST_GRAVITY), 0.5)
]
Stiffness: TypeAlias = Annotated[float, PlainValidator(wood_said.stiffness), _text("10.3 GPa", "1.49e6 psi")]
Strength: TypeAlias = Annotated[float, PlainValidator(wood_said.strength), _text("85 MPa", "12300 psi")]


class MaterialTable(Table):
    """A timber or a sheet good."""

    kind: Literal["solid", "sheet"] | None = Field(
        None, description="Solid timber, or sheet goods such as plywood. Usually that of its species, else solid."
    )
    hardness: Literal["soft", "hard"] | None = Field(
        None, description="How it cuts. Usually that of its species, else hard."
    )
    species: Species | None = Field(
        None,
        description="The timber that it is, so that movement, weight and strength can be told: one that is known here, "
        "or one of the file's own. Left out, nothing of that is told.",
    )
    sawn: Literal["flat", "quarter", "rift"] | None = Field(
        None,
        description="How its boards were sawn from the log. Left out, they count as moving the most they may.",
    )


class TimberTable(Table):
    """A timber of your own, or other figures for a known one: averages at 12 % moisture content."""

    kind: Literal["solid", "sheet"] = Field("solid", description="Solid timber, or sheet goods.")
    hardness: Literal["soft", "hard"] = Field("hard", description="How it cuts.")
    tangential: Coefficient = Field(
        description="Change of size along the growth rings for each percent of moisture, as a part of the size."
    )
    radial: Coefficient = Field(description="The same across the growth rings.")
    shrinkage_tangential: Shrinkage | None = Field(
        None, description="Shrinkage along the growth rings from green to oven-dry, in percent."
    )
    shrinkage_radial: Shrinkage | None = Field(None, description="The same across the growth rings.")
    specific_gravity: Gravity = Field(description="Weight oven-dry over volume at 12 % moisture content.")
    stiffness: Stiffness = Field(description="Modulus of elasticity.")
    strength: Strength = Field(description="Modulus of rupture.")
    source: Annotated[str, Field(min_length=1, max_length=200), AfterValidator(values.name)] = Field(
        wood_said.OWN_FIGURES, description="Where the figures come from."
    )


class ClimateTable(Table):
    """Air, or the moisture content that a meter shows in wood; the meter wins."""

    model_config = ConfigDict(
        json_schema_extra={
            "anyOf": [{"required": ["moisture"]}, {"required": ["humidity", "temperature"]}],
            "dependentRequired": {"humidity": ["temperature"], "temperature": ["humidity"]},
        }
    )

    moisture: Moisture | None = Field(None, description="Moisture content of the wood, in percent.")
    humidity: Humidity | None = Field(None, description="Relative humidity of the air, in percent.")
    temperature: Temperature | None = Field(
        None, description="Temperature of the air; a bare number is in °F in a project in inches, else in °C."
    )

    @model_validator(mode="before")
    @classmethod
    def _air_is_whole(cls, said: object) -> object:
        if isinstance(said, dict):
            air = [key for key in ("humidity", "temperature") if key in said]
            if len(air) == 1 or not (air or "moisture" in said):
                raise RefusalError(
                    "says too little of the air or of the wood.",
                    "Give humidity and temperature, or the moisture content of the wood, or all three.",
                )
        return said


class RoomTable(Table):
    """The room in which the piece will stand, over the year."""

    dry: ClimateTable = Field(description="The driest season, when the heating is on.")
    damp: ClimateTable = Field(description="The dampest season.")
