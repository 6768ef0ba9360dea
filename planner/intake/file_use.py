"""The table of a project file that says what a carcase bears, and how it stands in its room."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    Field,
    PlainValidator,
    WithJsonSchema,
)

from planner.domain.use import Load
from planner.intake import values
from planner.intake.file_values import Table
from planner.intake.load_said import PATTERN, read_load

LoadSaid: TypeAlias = Annotated[
    Load,
    PlainValidator(read_load),
    WithJsonSchema({"type": "string", "pattern": PATTERN, "examples": ["books", "clothes", "25 lb/ft", "70 kg/m2"]}),
]

_LEFT_OUT = "Left out, none is reckoned with."


class UseTable(Table):
    """What a carcase bears, and how it stands in its room."""

    fixed_to: Literal["nothing", "wall"] = Field(
        "nothing", description='Whether it is fixed to the "wall", so that it can\'t tip.'
    )
    floor: Literal["carpet", "hard"] = Field(
        "carpet", description="What it stands on; on carpet it leans forward a little."
    )
    open_at_once: int | None = Field(
        None,
        ge=1,
        le=values.GREATEST_DRAWERS,
        description="How many drawers can be open at once, where a lock keeps the others shut. Left out, all can.",
    )
    shelves: LoadSaid | None = Field(None, description=f"What lies on each shelf. {_LEFT_OUT}")
    drawers: LoadSaid | None = Field(
        None, description="What lies in each drawer. Left out, they tip it as if full of clothes, and bear nothing."
    )
    top: LoadSaid | None = Field(None, description=f"What lies on the top. {_LEFT_OUT}")
    sag: int | None = Field(
        None,
        ge=values.LEAST_SAG,
        le=values.GREATEST_SAG,
        description="How little a board may sag in the long run: 384 is one part in 384 of its span, 1/32 in on a "
        "foot. Usually 192, and no more than 1/4 in.",
    )
