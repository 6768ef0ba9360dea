"""The tables of a project file that say how a door, a lid or a back is made, and how a bottom is."""

from __future__ import annotations

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    Field,
    ValidationInfo,
    field_validator,
)

from planner.intake import values
from planner.intake.file_values import (
    Length,
    LengthOrNothing,
    MaterialName,
    Table,
    unit_of,
    usually,
)
from planner.intake.refusal import RefusalError
from planner.intake.usual import usual_length
from planner.lengths import Nm, write_length

FRAME_KEYS = ("stile", "rail", "groove_depth", "tenon", "wide", "high", "panel")
FRAME = "frame and panel"


class PanelTable(Table):
    """The panels of a frame."""

    material: MaterialName | None = Field(None, description="Material of the panels. Usually the frame's.")
    thickness: Length | None = Field(
        None, description=f"Thickness of the panels, and width of the groove that takes them. {usually('panel')}"
    )
    play: LengthOrNothing | None = Field(
        None, description=f"How much smaller a panel is than the room for it. {usually('play')}"
    )


class MadeTable(Table):
    """What the tables of doors, lids and backs have in common."""

    made: str | None = Field(None, description="How it is made.")
    material: MaterialName | None = Field(None, description="Material of the slab or the frame.")
    thickness: Length | None = Field(None, description="Thickness of the slab or the frame.")
    groove_depth: Length | None = Field(
        None, description=f"Depth of the groove for the panels. {usually('panel_groove')}"
    )
    stile: Length | None = Field(
        None, validate_default=True, description=f"Width of the frame's uprights. {usually('stile')}"
    )
    rail: Length | None = Field(None, description=f"Width of the frame's rails and muntins. {usually('stile')}")
    tenon: Length | None = Field(
        None,
        description="Length of the tenons on the rails, at least the groove's depth. Usually half the stile's width, "
        "rounded down.",
    )
    wide: int | None = Field(
        None, ge=1, le=values.GREATEST_PANELS, description="How many panels side by side. Usually 1."
    )
    high: int | None = Field(
        None, ge=1, le=values.GREATEST_PANELS, description="How many panels above each other. Usually 1."
    )
    panel: PanelTable | None = Field(None, description="Its panels, if they are not as is usual.")

    @field_validator("stile")
    @classmethod
    def _keeps_wood_behind_the_groove(cls, said: Nm | None, info: ValidationInfo) -> Nm | None:
        unit = unit_of(info)
        stile = usual_length("stile", unit) if said is None else said
        groove = info.data.get("groove_depth") or usual_length("panel_groove", unit)
        if groove >= stile:
            raise RefusalError(
                f"{'is missing: ' if said is None else ''}a groove of {write_length(groove, unit)} leaves no wood in a "
                f"stile of {write_length(stile, unit)}.",
                "Take a shallower groove or wider stiles.",
            )
        return said

    @field_validator("tenon")
    @classmethod
    def _fills_the_groove(cls, tenon: Nm | None, info: ValidationInfo) -> Nm | None:
        unit = unit_of(info)
        groove = info.data.get("groove_depth") or usual_length("panel_groove", unit)
        stile = info.data.get("stile") or usual_length("stile", unit)
        if tenon is not None and not groove <= tenon < stile:
            raise RefusalError(
                f"a tenon of {write_length(tenon, unit)} doesn't fit a groove of {write_length(groove, unit)} "
                f"in a stile of {write_length(stile, unit)}.",
                "It is at least as long as the groove is deep, and shorter than the stile is wide.",
            )
        return tenon


# --- bottoms ------------------------------------------------------------------------------------------------

BOTTOM = "Material of the bottom."
BOTTOM_THICKNESS = "Thickness of the bottom; its groove is as wide."


class BottomPart(Table):
    """What is different about the bottom of one drawer."""

    material: MaterialName | None = Field(None, description=BOTTOM)
    thickness: Length | None = Field(None, description=BOTTOM_THICKNESS)
    groove_depth: Length | None = Field(
        None, description="Depth of the groove. Usually half the thinnest board that has it, rounded down."
    )
    up: Length | None = Field(
        None, description="Height of the groove above the lower edge. Usually just clear of the half-pin."
    )
    play: LengthOrNothing | None = Field(
        None, description=f"How much smaller the bottom is than the room for it. {usually('play')}"
    )


class BottomTable(BottomPart):
    """A bottom held in a groove in all four boards."""

    material: MaterialName = Field(description=BOTTOM)
    thickness: Length = Field(description=BOTTOM_THICKNESS)


class TopPanelTable(Table):
    """The panel that closes a box at the top, held in a groove in all four boards."""

    material: MaterialName = Field(description="Material of the panel.")
    thickness: Length = Field(description="Thickness of the panel; its groove is as wide.")
    groove_depth: Length | None = Field(
        None, description="Depth of the groove. Usually half the box's thickness, rounded down."
    )
    down: Length | None = Field(
        None, description="How far the groove is below the upper edge. Usually just clear of the half-pin."
    )
    play: LengthOrNothing | None = Field(
        None, description=f"How much smaller the panel is than the room for it. {usually('play')}"
    )
