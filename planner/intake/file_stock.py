"""The table of a project file that tells how boards are cut out of rough wood."""

from __future__ import annotations

from typing import Annotated, Literal, TypeAlias

from pydantic import Field, PlainValidator, WithJsonSchema  # noqa: TID253 - like file_model, imported inside functions

from planner.domain.stock import USUAL, USUAL_CREDIT_PCT, USUAL_SPARES, USUAL_STAGES, USUAL_WASTE_PCT
from planner.intake import wood_said
from planner.intake.file_values import Length, LengthOrNothing, MaterialName, Table

GREATEST_WASTE, GREATEST_SPARES = 200, 10


def _usually(key: str) -> str:
    return f"Usually {' or '.join(USUAL[key])}."


Waste: TypeAlias = Annotated[
    int,
    PlainValidator(lambda said: wood_said.share(said, GREATEST_WASTE)),
    WithJsonSchema({"type": ["string", "number"], "minimum": 0, "maximum": GREATEST_WASTE, "examples": ["25 %", 25]}),
]


class KeepTable(Table):
    """Offcuts that go back to the rack."""

    length: Length | None = Field(None, description=f"The least length worth keeping. {_usually('keep_length')}")
    width: Length | None = Field(None, description=f"The least width. {_usually('keep_width')}")
    credit: Annotated[int, Field(ge=0, le=100)] = Field(
        USUAL_CREDIT_PCT, description="How much of what that wood cost counts as saved, in whole percent. Usually 0."
    )


_SOLD_AS = "How its rough sizes are told. Usually quarters in an inch project, else metric, as it is hard or soft."


class MaterialStockTable(Table):
    """What is different about one material."""

    sold_as: Literal["quarters", "dressed softwood", "metric hardwood", "metric softwood"] | None = Field(
        None, description=_SOLD_AS
    )
    length: LengthOrNothing | None = Field(None, description="As in [stock]; of a sheet, instead of sheet.")
    width: LengthOrNothing | None = Field(None, description="The same.")
    thickness: LengthOrNothing | None = Field(None, description="As in [stock].")
    end_trim: LengthOrNothing | None = Field(None, description="As in [stock]; of a sheet, usually 0.")
    edge_trim: LengthOrNothing | None = Field(None, description="The same.")
    greatest_stave: Length | None = Field(None, description="As in [stock].")
    waste: Waste | None = Field(None, description="As in [stock].")
    grain: bool | None = Field(
        None,
        description="Sheets: whether their grain must run along the part. Usually so, but not of MDF and the like.",
    )


class StockTable(Table):
    """How boards are cut out of rough wood. All usual values are common practice, without a source."""

    length: LengthOrNothing | None = Field(None, description=f"So much longer is a rough part. {_usually('length')}")
    width: LengthOrNothing | None = Field(None, description=f"So much wider. {_usually('width')}")
    thickness: LengthOrNothing | None = Field(
        None, description="So much thicker at least. Usually what the sizes that are sold lose when they are planed."
    )
    sheet: LengthOrNothing | None = Field(
        None, description=f"So much longer and wider is a part of a sheet. {_usually('sheet')}"
    )
    end_trim: LengthOrNothing | None = Field(
        None, description=f"Cut off each end of a rough board, where it is checked. {_usually('end_trim')}"
    )
    edge_trim: LengthOrNothing | None = Field(
        None, description=f"Taken off each edge of a rough board, to make it straight. {_usually('edge_trim')}"
    )
    rip_kerf: LengthOrNothing | None = Field(
        None, description=f"What a saw cut along the grain takes. {_usually('rip_kerf')}"
    )
    crosscut_kerf: LengthOrNothing | None = Field(
        None, description=f"The same across the grain. {_usually('crosscut_kerf')}"
    )
    joint: LengthOrNothing | None = Field(
        None, description=f"What jointing takes off each edge that is glued. {_usually('joint')}"
    )
    least_stave: Length | None = Field(None, description=f"The narrowest stave, rough. {_usually('least_stave')}")
    greatest_stave: Length | None = Field(
        None,
        description="The widest stave, rough; wider boards are glued up. Left out, only boards are glued up for which "
        "no wood is wide enough.",
    )
    spares: Annotated[int, Field(ge=0, le=GREATEST_SPARES)] = Field(
        USUAL_SPARES, description="Boards of each timber and thickness to set machines with. Usually 1."
    )
    spare_length: Length | None = Field(None, description=f"Length of these. {_usually('spare_length')}")
    spare_width: Length | None = Field(None, description=f"Their width. {_usually('spare_width')}")
    practice: bool = Field(
        default=True, description="Whether the practice joints are cut from stock, rather than from offcuts."
    )
    waste: Waste = Field(
        USUAL_WASTE_PCT * 100,
        validate_default=False,
        description="What is bought over the rough sizes where no stock is known, in percent. Usually 25.",
    )
    stages: Literal[2, 3] = Field(USUAL_STAGES, description="Rounds of saw cuts, each across the one before.")
    first_cut: Literal["rip", "crosscut"] | None = Field(
        None, description="The way of the first round. Left out, the better one for each board."
    )
    keep: KeepTable | None = Field(None, description="Offcuts that go back to the rack.")
    material: dict[MaterialName, MaterialStockTable] = Field(
        {}, description="What is different about a material, by its name."
    )
