"""The tables of a project file that describe a plain box: its lid, its till, and boxes within boxes."""

from __future__ import annotations

from typing import ClassVar, Literal

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    Field,
    ValidationInfo,
    field_validator,
)

from planner.intake import values
from planner.intake.file_made import FRAME, FRAME_KEYS, BottomTable, MadeTable, TopPanelTable
from planner.intake.file_pins import JointsTable, PinsTable
from planner.intake.file_values import (
    Length,
    LengthOrNothing,
    Mark,
    MaterialName,
    SledName,
    Table,
    Title,
    unit_of,
    usually,
)
from planner.intake.only import Only
from planner.intake.refusal import RefusalError
from planner.intake.usual import usual_length
from planner.lengths import Nm

HINGED_KEYS = ("made", "material", "thickness", "front", "sides", "back")
_HINGED = ("hinged",)


class _LidKind(Table):
    """What decides over all other keys of a lid, and so is read before them."""

    kind: Literal["hinged", "sawn"] = Field(description='"hinged", or "sawn" off the closed box.')


class LidTable(MadeTable, _LidKind):
    """A lid that lies on the box, or one that is sawn off the closed box."""

    only: ClassVar[tuple[Only, ...]] = (
        Only(keys=HINGED_KEYS, beside="kind", words=_HINGED),
        Only(keys=("height", "top"), beside="kind", words=("sawn",), needed=True),
        Only(keys=("kerf",), beside="kind", words=("sawn",)),
        Only(keys=FRAME_KEYS, beside="made", words=(FRAME,), usual="slab"),
    )
    made: Literal["slab", "frame and panel"] | None = Field(
        None, description='Hinged: how it is made, one "slab", as is usual, or "frame and panel".'
    )
    front: LengthOrNothing | None = Field(
        None, description=f"Hinged: how far it stands over the front. {usually('lid_over')}"
    )
    sides: LengthOrNothing | None = Field(
        None, description=f"Hinged: how far it stands over each side. {usually('lid_over')}"
    )
    back: LengthOrNothing | None = Field(None, description="Hinged: how far it stands over the back. Usually 0.")
    height: Length | None = Field(None, validate_default=True, description="Sawn: height of the lid.")
    top: TopPanelTable | None = Field(
        None, validate_default=True, description="Sawn: the panel that closes the box at the top."
    )
    kerf: Length | None = Field(None, description=f"Sawn: what the saw takes, and planing after it. {usually('kerf')}")


class TillLidTable(Table):
    """A flat lid on pivots."""

    material: MaterialName | None = Field(None, description="Usually the till's material.")
    thickness: Length | None = Field(None, description="Usually the till's thickness.")


class TillTable(Table):
    """A small tray at the left end of a chest."""

    width: Length = Field(description="Clear width.")
    depth: Length = Field(description="Clear depth, from the chest's top edge.")
    material: MaterialName | None = Field(None, description="Usually the box's material.")
    thickness: Length | None = Field(None, description=f"Thickness of its boards. {usually('till')}")
    housing_depth: Length | None = Field(
        None,
        description="Depth of the housings in front and back. Usually a third of the box's thickness, rounded down.",
    )
    lid: TillLidTable | None = Field(None, description="Its lid, if it has one; may be empty.")


class NestTable(Table):
    """Boxes within each other, each of which goes into the one before."""

    count: int = Field(ge=2, le=values.GREATEST_NEST, description="How many, the outermost one included.")
    gap: Length = Field(description="Space between one and the next, all round and in height.")


class BoxTable(Table):
    """A plain box, or a batch of boxes that are alike, or a nest of boxes."""

    mark: Mark = Field(description="Mark of the box: a capital letter, then up to 7 capitals or digits.")
    title: Title = Field("", description="What you call it.")
    count: int = Field(
        1, ge=1, le=values.GREATEST_COUNT, description="How many; more than one are marked K1, K2 … when the mark is K."
    )
    sizes: Literal["outside", "inside"] = Field("outside", description="What length and width are measured over.")
    length: Length = Field(description="Size along the front.")
    width: Length = Field(description="Size from front to back.")
    height: Length = Field(description="Height of its four boards; with a sawn lid, of the closed box.")
    material: MaterialName = Field(description="Material of its four boards.")
    thickness: Length = Field(description="Thickness of its four boards.")
    sled: SledName | None = Field(None, description="Sled for its corners. Usually the project's.")
    pins_on: Literal["front and back", "sides"] | None = Field(
        None, description="Boards that carry the pins. Usually the shorter pair, which stands upright on the sled."
    )
    pins: PinsTable | None = Field(None, description="What is different about its pins.")
    joint: JointsTable | None = Field(None, description="What is different about the pins of single joints.")
    bottom: BottomTable | None = Field(None, description="Its bottom, if it has one.")
    lid: LidTable | None = Field(None, description="Its lid, if it has one.")
    till: TillTable | None = Field(None, description="A small tray in it, if it has one.")
    nest: NestTable | None = Field(
        None, description="Smaller boxes in it, marked K1, K2 … from the outermost when the mark is K."
    )

    @field_validator("lid")
    @classmethod
    def _is_lower_than_the_box(cls, lid: LidTable | None, info: ValidationInfo) -> LidTable | None:
        height = info.data.get("height")
        if lid is None or lid.height is None or height is None:
            return lid
        kerf: Nm = usual_length("kerf", unit_of(info)) if lid.kerf is None else lid.kerf
        if lid.height + kerf >= height:
            raise RefusalError(
                "the lid and its saw kerf leave nothing of the box.",
                "The height of the box is that of the closed box; take a lower lid.",
            )
        return lid

    @field_validator("till")
    @classmethod
    def _till_hangs_at_the_top_edge(cls, till: TillTable | None, info: ValidationInfo) -> TillTable | None:
        lid = info.data.get("lid")
        if till is not None and lid is not None and lid.kind == "sawn":
            raise RefusalError(
                "a till doesn't go with a lid that is sawn off.", 'Leave one of them out, or write kind = "hinged".'
            )
        return till

    @field_validator("nest")
    @classmethod
    def _nest_of_bare_boxes(cls, nest: NestTable | None, info: ValidationInfo) -> NestTable | None:
        if nest is None:
            return nest
        if info.data.get("count", 1) != 1:
            raise RefusalError("a nest and a count of boxes are both asked for.", "Leave one of them out.")
        if info.data.get("till") is not None:
            raise RefusalError("a till leaves no room for a nest of boxes.", "Leave one of them out.")
        bottom, lid = info.data.get("bottom"), info.data.get("lid")
        if bottom is not None and bottom.up is None:
            raise RefusalError("the height of the bottom's groove is not known.", "Add up = ... to the box's bottom.")
        if lid is not None and lid.top is not None and lid.top.down is None:
            raise RefusalError("the place of the top panel is not known.", "Add down = ... to the lid's top.")
        return nest
