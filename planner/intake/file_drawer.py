"""The tables of a project file that say how drawers are made, and what differs in one of them.

Which keys go together is told in ``fit_drawers``, since one drawer says only what is different about it.
"""

from __future__ import annotations

from typing import Literal

from pydantic import Field  # noqa: TID253 - like file_model, which alone is imported, inside functions

from planner.intake.file_made import BOTTOM, BOTTOM_THICKNESS, BottomPart
from planner.intake.file_pins import JointsTable, PinsTable
from planner.intake.file_values import Length, LengthOrNothing, MaterialName, SledName, Table, usually
from planner.intake.usual import usual_said


class SlipsTable(Table):
    """Grooved strips along the inside of the sides, where these are too thin for a groove."""

    material: MaterialName | None = Field(None, description="Usually that of the sides.")
    thickness: Length | None = Field(None, description=f"How far a slip stands in from the side. {usually('slip')}")
    height: Length | None = Field(
        None, description=f"Height of a slip, from the drawer's lower edge. {usually('slip_height')}"
    )


_GOES = (
    'How it goes in: shut in a groove "all round", or "slid in" from behind, under a back that is raised to the top of '
    "the groove."
)
_SLIPS = "Slips on the sides, if they hold the bottom; may be empty."


class DrawerBottomPart(BottomPart):
    """What is different about the bottom of one drawer."""

    goes: Literal["all round", "slid in"] = Field("all round", description=_GOES)
    screw_slot: Length | None = Field(
        None,
        description="Slid in: width of the slots in its back edge for the screws that hold it, "
        f"such as {usual_said('screw_slot')}. Left out, there are none.",
    )
    slips: SlipsTable | None = Field(None, description=_SLIPS)


class DrawerBottomTable(DrawerBottomPart):
    """The bottom of a drawer, held in grooves."""

    material: MaterialName = Field(description=BOTTOM)
    thickness: Length = Field(description=BOTTOM_THICKNESS)


_APPLIED = "Material of the applied front."
_APPLIED_THICKNESS = "Thickness of the applied front."


class AppliedFrontPart(Table):
    """What is different about the applied front of one drawer."""

    material: MaterialName | None = Field(None, description=_APPLIED)
    thickness: Length | None = Field(None, description=_APPLIED_THICKNESS)
    stands: Literal["inset", "overlay"] = Field(
        "inset", description='Whether it stands in the opening, flush, or over the edges around it: "overlay".'
    )
    gap: LengthOrNothing | None = Field(None, description=f"Inset: space left all round it. {usually('gap')}")
    overlay: Length | None = Field(
        None, description=f"Overlay: how far it covers the edges on each side. {usually('overlay')}"
    )


class AppliedFrontTable(AppliedFrontPart):
    """A board fixed to the front of a drawer; it hides the through dovetails."""

    material: MaterialName = Field(description=_APPLIED)
    thickness: Length = Field(description=_APPLIED_THICKNESS)


class HandlesTable(Table):
    """Holes for handles on a drawer's front, in one row half way up, even about the middle."""

    count: int = Field(1, ge=1, le=2, description="How many handles side by side.")
    holes: int = Field(1, ge=1, le=2, description="Holes of each handle: 1 for a knob, 2 for a pull.")
    apart: Length | None = Field(None, description=f"Between the two holes of a pull. {usually('apart')}")
    hole: Length | None = Field(None, description=f"Diameter to drill. {usually('hole')}")


class DrawerStopsTable(Table):
    """Blocks that a drawer shuts against, glued to the rail or the board that it stands on."""

    material: MaterialName | None = Field(None, description="Usually that of the drawer's sides.")
    thickness: Length | None = Field(
        None, description=f"How high the blocks are: lower than the drawer's bottom. {usually('stop_height')}"
    )
    length: Length | None = Field(None, description=f"Along the front. {usually('stop_length')}")
    width: Length | None = Field(None, description=f"From front to back. {usually('stop_width')}")


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
    side_clearance: Length | None = Field(
        None,
        description=f"Space at each side. {usually('side_clearance').removesuffix('.')}; with bought slides "
        f"{usual_said('slides_clearance')}, but their maker's sheet has the last word.",
    )
    top_clearance: Length | None = Field(None, description=f"Space above. {usually('top_clearance')}")
    back_clearance: LengthOrNothing | None = Field(None, description=f"Space behind. {usually('back_clearance')}")
    back_lower: LengthOrNothing | None = Field(
        None, description="How much lower than the sides the top edge of the back stands. Usually 0."
    )
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
    bottom: DrawerBottomPart | None = Field(None, description="Its bottom, if it has one.")
    applied_front: AppliedFrontPart | None = Field(None, description="Its applied front, if it has one.")
    handles: HandlesTable | None = Field(None, description="Holes for its handles, if they are wanted; may be empty.")
    stops: DrawerStopsTable | None = Field(
        None,
        description="Blocks behind its front, if they are wanted, where that stands inset on wood; may be empty. The "
        "drawer must pass over them, so its bottom is slid in, or it has none.",
    )


class DrawerTable(DrawerPart):
    """How the drawers of a carcase are made."""

    material: MaterialName = Field(description=_DRAWER)
    front_thickness: Length = Field(description=_FRONT)
    side_thickness: Length = Field(description=_SIDE)
    back_thickness: Length = Field(description=_BACK)
    bottom: DrawerBottomTable | None = Field(None, description="Its bottom, if it has one.")
    applied_front: AppliedFrontTable | None = Field(None, description="Its applied front, if it has one.")
