"""The tables of a project file that say how drawers are made, bottoms included, and what differs in one of them."""

from __future__ import annotations

from typing import Literal

from pydantic import Field  # noqa: TID253 - like file_model, which alone is imported, inside functions

from planner.intake.file_pins import JointsTable, PinsTable
from planner.intake.file_values import Length, LengthOrNothing, MaterialName, SledName, Table, usually

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
        None, description=f"How much smaller the bottom is than the room for it. {usually('play')}"
    )


class BottomTable(BottomPart):
    """A bottom held in a groove in all four boards."""

    material: MaterialName = Field(description=_BOTTOM)
    thickness: Length = Field(description=_BOTTOM_THICKNESS)


_APPLIED = "Material of the applied front."
_APPLIED_THICKNESS = "Thickness of the applied front."


class AppliedFrontPart(Table):
    """What is different about the applied front of one drawer."""

    material: MaterialName | None = Field(None, description=_APPLIED)
    thickness: Length | None = Field(None, description=_APPLIED_THICKNESS)
    gap: LengthOrNothing | None = Field(None, description=f"Space left all round it. {usually('gap')}")


class AppliedFrontTable(AppliedFrontPart):
    """A board fixed to the front of a drawer, flush with the carcase; it hides the through dovetails."""

    material: MaterialName = Field(description=_APPLIED)
    thickness: Length = Field(description=_APPLIED_THICKNESS)


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
    side_clearance: Length | None = Field(None, description=f"Space at each side. {usually('side_clearance')}")
    top_clearance: Length | None = Field(None, description=f"Space above. {usually('top_clearance')}")
    back_clearance: LengthOrNothing | None = Field(None, description=f"Space behind. {usually('back_clearance')}")
    sled: SledName | None = Field(None, description="Sled for its corners. Usually the project's.")
    pins_on: Literal["front and back", "sides"] = Field(
        "front and back", description="Boards that carry the pins; on front and back, the tails lock against the pull."
    )
    front_joint: Literal["through", "half-blind"] = Field(
        "through",
        description="How the front is joined to the sides; half-blind joints are cut by hand, with the pins on the "
        "front.",
    )
    lap: Length | None = Field(
        None,
        description=f"With half-blind joints: the wood of the front that covers the ends of the tails. "
        f"{usually('lap')}",
    )
    pins: PinsTable | None = Field(None, description="What is different about its pins.")
    joint: JointsTable | None = Field(None, description="What is different about the pins of single joints.")
    bottom: BottomPart | None = Field(None, description="Its bottom, if it has one.")
    applied_front: AppliedFrontPart | None = Field(None, description="Its applied front, if it has one.")


class DrawerTable(DrawerPart):
    """How the drawers of a carcase are made."""

    material: MaterialName = Field(description=_DRAWER)
    front_thickness: Length = Field(description=_FRONT)
    side_thickness: Length = Field(description=_SIDE)
    back_thickness: Length = Field(description=_BACK)
    bottom: BottomTable | None = Field(None, description="Its bottom, if it has one.")
    applied_front: AppliedFrontTable | None = Field(None, description="Its applied front, if it has one.")
