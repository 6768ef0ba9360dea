"""The tables of a project file that divide a carcase: columns and tiers within each other, and what stands in them."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, ClassVar, Literal, TypeVar

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    ConfigDict,
    Field,
    ValidationInfo,
    field_validator,
)

from planner.intake import values
from planner.intake.file_made import FRAME, FRAME_KEYS, MadeTable
from planner.intake.file_values import (
    Heights,
    Length,
    LengthOrNothing,
    Mark,
    MaterialName,
    Ratio,
    Share,
    Table,
    usually,
)
from planner.intake.only import Only
from planner.intake.refusal import RefusalError
from planner.intake.usual import PIN_HOLES
from planner.lengths import Nm

Said = TypeVar("Said")


class DoorStopsTable(Table):
    """Strips behind the closing edge of a door, or above and below behind a pair."""

    material: MaterialName | None = Field(None, description="Usually the carcase's material.")
    thickness: Length | None = Field(None, description=f"Thickness, from front to back. {usually('door_stop')}")
    width: Length | None = Field(None, description=f"How far a strip stands into the space. {usually('stop_width')}")


class DoorsTable(MadeTable):
    """A door or a pair of doors before a space."""

    only: ClassVar[tuple[Only, ...]] = (
        Only(keys=("hinged",), beside="leaves", words=(1,), usual=1),
        Only(keys=("overlay",), beside="stands", words=("overlay",), usual="inset"),
        Only(keys=("stops",), beside="stands", words=("inset",), usual="inset"),
        Only(keys=FRAME_KEYS, beside="made", words=(FRAME,), usual=FRAME),
    )
    made: Literal["slab", "frame and panel"] = Field(
        "frame and panel", description="How it is made: one slab, or a frame with panels."
    )
    leaves: int = Field(1, ge=1, le=2, description="One door, or a pair.")
    hinged: Literal["left", "right"] | None = Field(
        None, description='The side on which a single door hangs. Usually "left".'
    )
    stands: Literal["inset", "overlay"] = Field(
        "inset", description='Whether it stands within the space, flush, or over the edges around it: "overlay".'
    )
    gap: LengthOrNothing | None = Field(
        None, description=f"Space around an inset door, and between a pair. {usually('gap')}"
    )
    overlay: Length | None = Field(
        None, description=f"Overlay: how far it covers the edges on each side. {usually('overlay')}"
    )
    stops: DoorStopsTable | None = Field(
        None, description="Inset: strips that it shuts against, if they are wanted; may be empty."
    )


class ShelfPinsTable(Table):
    """Rows of blind holes beside loose shelves, for the pins that these lie on."""

    holes: int = Field(
        PIN_HOLES,
        ge=1,
        le=values.GREATEST_PIN_HOLES,
        description="Holes in a row for each shelf, an odd number: the middle one where the shelf is planned, the "
        "others above and below it, as far as there is room.",
    )
    hole: Length | None = Field(None, description=f"Diameter to drill. {usually('pin_hole')}")
    depth: Length | None = Field(None, description=f"How deep to drill. {usually('pin_depth')}")
    apart: Length | None = Field(None, description=f"From hole to hole, middle to middle. {usually('pins_apart')}")
    front: Length | None = Field(None, description=f"From the shelf's front edge to the holes. {usually('pins_in')}")
    back: Length | None = Field(None, description=f"From the shelf's back edge to the holes. {usually('pins_in')}")

    @field_validator("holes")
    @classmethod
    def _has_a_middle(cls, holes: int) -> int:
        if holes % 2 == 0:
            raise RefusalError(f"{holes} holes have none in the middle.", f"Take {holes - 1} or {holes + 1}.")
        return holes


class LooseShelvesTable(Table):
    """Shelves that lie on pegs, equally far apart."""

    count: int = Field(1, ge=1, le=values.GREATEST_SHELVES, description="How many.")
    material: MaterialName | None = Field(None, description="Usually the carcase's material.")
    thickness: Length | None = Field(None, description="Usually the carcase's thickness.")
    play: LengthOrNothing | None = Field(
        None, description=f"How much shorter a shelf is than the clear width. {usually('shelf_play')}"
    )
    setback: LengthOrNothing | None = Field(
        None, description=f"How far a shelf stands back from the front. {usually('shelf_setback')}"
    )
    pins: ShelfPinsTable | None = Field(
        None, description="Holes for shelf pins in the boards beside them, if they are wanted; may be empty."
    )


_SHARED = "Left out, it shares what is left"


_OWN_WIDTHS = {
    "properties": {"column": {"items": {"not": {"anyOf": [{"required": ["width"]}, {"required": ["share"]}]}}}}
}

GRADUATED_COLUMNS: dict[str, Any] = {
    "column_ratio": {"required": ["column"], "not": {"required": ["column_step"]}, **_OWN_WIDTHS},
    "column_step": {"required": ["column"], **_OWN_WIDTHS},
}
"""What the validators of a divided table ask of keys that stand together."""


class DividedTable(Table):
    """A table that may have columns side by side in it."""

    column_ratio: Ratio | None = Field(
        None, description="Each column is this many times as wide as the one to its left. Or give column_step."
    )
    column_step: Length | None = Field(
        None, description="Each column is wider than the one to its left by this. Or give column_ratio."
    )

    @field_validator("column_step")
    @classmethod
    def _one_rule_for_columns(cls, step: Nm | None, info: ValidationInfo) -> Nm | None:
        if step is not None and info.data.get("column_ratio") is not None:
            raise RefusalError("a step and a ratio of the columns are both given.", "Give one of them.")
        return step

    @field_validator("column", check_fields=False)
    @classmethod
    def _graduated_or_each_its_own_width(cls, columns: Said, info: ValidationInfo) -> Said:
        if info.data.get("column_ratio") is None and info.data.get("column_step") is None:
            return columns
        if not isinstance(columns, list):
            raise RefusalError(
                "is missing: a step or a ratio of columns is given.", "Give the columns, or leave that out."
            )
        if any(column.width is not None or column.share is not None for column in columns):
            raise RefusalError("a graduated column has a width or a share of its own.", "Leave one or the other out.")
        return columns


_ONE_THING: dict[str, Any] = {
    "dependentSchemas": {
        **GRADUATED_COLUMNS,
        "height": {"not": {"required": ["share"]}},
        "column": {"not": {"anyOf": [{"required": [key]} for key in ("holds", "mark", "shelves")]}},
    }
}
"""What the validators below ask of keys that stand together."""


class TierTable(DividedTable):
    """One of the spaces above each other in a column."""

    model_config = ConfigDict(json_schema_extra=_ONE_THING)
    only: ClassVar[tuple[Only, ...]] = (
        Only(keys=("mark",), beside="holds", words=("drawer",), usual="drawer"),
        Only(keys=("shelves",), beside="holds", words=("shelves",), usual="drawer"),
    )
    height: Length | None = Field(None, description=f"Clear height. {_SHARED}.")
    share: Share | None = Field(None, description="How large its share of what is left is, by the side of 1.")
    column: list[ColumnTable] | None = Field(
        None,
        validate_default=True,
        min_length=1,
        description="Columns into which it is divided, from the left, instead of what it holds.",
    )
    holds: Literal["drawer", "shelves", "nothing"] | None = Field(
        None, description='What is in it: a "drawer", as is usual; loose "shelves"; or "nothing".'
    )
    mark: Mark | None = Field(None, description="Mark of its drawer. Usually by its number in the column.")
    shelves: LooseShelvesTable | None = Field(None, description="Its loose shelves, if they are not as is usual.")
    doors: DoorsTable | None = Field(None, description="What hangs before it; may be empty, for one usual door.")

    @field_validator("share")
    @classmethod
    def _size_or_share(cls, share: Fraction | None, info: ValidationInfo) -> Fraction | None:
        if share is not None and info.data.get("height") is not None:
            raise RefusalError("a height and a share are both given.", "Give one of them.")
        return share

    @field_validator("holds", "mark", "shelves")
    @classmethod
    def _nothing_but_columns(cls, said: Said, info: ValidationInfo) -> Said:
        if said is not None and info.data.get("column") is not None:
            raise RefusalError(
                "a tier that is divided into columns holds nothing else.", "Say it of a tier of these columns."
            )
        return said


_ONE_WAY: dict[str, Any] = {
    "oneOf": [{"required": ["drawers"]}, {"required": ["tier"]}],
    "dependentSchemas": {
        "tier": {"not": {"required": ["marks"]}, "properties": {"heights": {"type": "string"}}},
        "width": {"not": {"required": ["share"]}},
    },
}
"""The same of a column."""


class ColumnTable(Table):
    """One of the spaces side by side, with drawers or other tiers above each other in it."""

    model_config = ConfigDict(json_schema_extra=_ONE_WAY)

    width: Length | None = Field(None, description=f"Clear width. {_SHARED}.")
    share: Share | None = Field(None, description="How large its share of what is left is, by the side of 1.")
    tier: list[TierTable] | None = Field(
        None,
        min_length=1,
        max_length=values.GREATEST_TIERS,
        description="What stands above each other in it, from the top; instead of drawers.",
    )
    drawers: int | None = Field(
        None,
        validate_default=True,
        ge=1,
        le=values.GREATEST_DRAWERS,
        description="How many drawers, one above the other, when it holds nothing else.",
    )
    heights: Heights = Field(
        "equal",
        description='How they share the height: "equal", "graduated", or one height for each drawer from the top, '
        'where "rest" takes what is left. Tiers that are not graduated say it themselves.',
    )
    ratio: Ratio | None = Field(
        None, description='With "graduated": each is this many times as tall as the one above. Or give a step.'
    )
    step: Length | None = Field(
        None,
        validate_default=True,
        description='With "graduated": each is taller than the one above by this. Or give a ratio.',
    )
    marks: list[Mark] | None = Field(
        None, description="Marks of the drawers from the top. Usually D1, D2 and so on; with more columns D101, D201."
    )
    divided_by: Literal["rail", "frame", "shelf", "nothing"] | None = Field(
        None,
        description="What lies between one and the next: what the carcase has, rails before frames before shelves.",
    )
    doors: DoorsTable | None = Field(None, description="What hangs before it; may be empty, for one usual door.")

    @field_validator("share")
    @classmethod
    def _size_or_share(cls, share: Fraction | None, info: ValidationInfo) -> Fraction | None:
        if share is not None and info.data.get("width") is not None:
            raise RefusalError("a width and a share are both given.", "Give one of them.")
        return share

    @field_validator("drawers")
    @classmethod
    def _drawers_or_tiers(cls, drawers: int | None, info: ValidationInfo) -> int | None:
        if "tier" not in info.data:
            return drawers
        tiers = info.data["tier"] is not None
        if drawers is not None and tiers:
            raise RefusalError("drawers and tiers are both given.", "Give one of them: a tier may hold a drawer.")
        if drawers is None and not tiers:
            raise RefusalError("is missing: the column is empty.", "Say how many drawers, or give its tiers.")
        return drawers

    @field_validator("heights", "marks")
    @classmethod
    def _one_for_each_drawer(cls, said: Said, info: ValidationInfo) -> Said:
        if isinstance(said, list) and info.data.get("tier") is not None:
            raise RefusalError("a list goes with drawers = ... only.", "Say it of each tier.")
        drawers = info.data.get("drawers")
        if isinstance(said, list) and drawers is not None and len(said) != drawers:
            raise RefusalError(
                f"{len(said)} are listed for {drawers} drawers.", "List one for each drawer, from the top."
            )
        return said

    @field_validator("heights")
    @classmethod
    def _graduated_or_each_its_own(cls, heights: Said, info: ValidationInfo) -> Said:
        tiers: list[TierTable] = info.data.get("tier") or []
        if heights == "graduated" and any(tier.height is not None or tier.share is not None for tier in tiers):
            raise RefusalError(
                "a tier of graduated heights has a height or a share of its own.", "Leave one or the other out."
            )
        return heights

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
