"""The tables of a project file that describe a carcase, all but what its inside is divided into."""

from __future__ import annotations

from typing import ClassVar, Literal

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    ConfigDict,
    Field,
    ValidationInfo,
    field_validator,
)

from planner.intake import values
from planner.intake.file_base import BaseTable
from planner.intake.file_drawer import DrawerPart, DrawerTable
from planner.intake.file_made import FRAME, FRAME_KEYS, MadeTable
from planner.intake.file_pins import JointsTable, PinsTable
from planner.intake.file_space import GRADUATED_COLUMNS, ColumnTable, DividedTable, DoorsTable
from planner.intake.file_use import UseTable
from planner.intake.file_values import (
    BoardWidth,
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
from planner.intake.usual import TENONS, usual_length, usual_said
from planner.lengths import Nm, write_length

BOARD_KEYS = ("board", "lap", "gap")


class BackTable(MadeTable):
    """A back in a rabbet on all four boards."""

    only: ClassVar[tuple[Only, ...]] = (
        Only(keys=BOARD_KEYS, beside="made", words=("boards",), usual="panel"),
        Only(keys=FRAME_KEYS, beside="made", words=(FRAME,), usual="panel"),
    )
    made: Literal["panel", "boards", "frame and panel"] = Field(
        "panel", description='How it is made: one "panel", upright "boards" that overlap, or a "frame and panel".'
    )
    material: MaterialName = Field(description="Material of the back, or of its frame.")
    thickness: Length = Field(description="Thickness of the back, or of its frame; the rabbet is as deep from behind.")
    rabbet_depth: Length | None = Field(
        None, description="How far the rabbet goes into the boards. Usually half their thickness, rounded down."
    )
    play: LengthOrNothing | None = Field(
        None, description=f"How much smaller the back is than the room for it. {usually('play')}"
    )
    lap: Length | None = Field(None, description=f"Boards: how far one overlaps the next. {usually('board_lap')}")
    board: BoardWidth | None = Field(
        None,
        validate_default=True,
        description=f"Boards: greatest width of a board; there are as few as may be. {usually('board')}",
    )
    gap: LengthOrNothing | None = Field(
        None, description=f"Boards: space between them, to swell into. {usually('gap')}"
    )

    @field_validator("board")
    @classmethod
    def _is_wider_than_its_laps(cls, said: Nm | None, info: ValidationInfo) -> Nm | None:
        unit = unit_of(info)
        board = usual_length("board", unit) if said is None else said
        lap = info.data.get("lap") or usual_length("board_lap", unit)
        if info.data.get("made") == "boards" and board <= 2 * lap:
            raise RefusalError(
                f"a board of {write_length(board, unit)} has no face between two laps of {write_length(lap, unit)}.",
                "Take wider boards or smaller laps.",
            )
        return said


_CARCASE_MATERIAL = "Usually the carcase's material."
_CARCASE_THICKNESS = "Usually the carcase's thickness."
_HOUSING_DEPTH = "Depth of the housings. Usually a third of the carcase's thickness, rounded down."


class RailsTable(Table):
    """Rails between tiers, flat at the front, in housings in the uprights."""

    material: MaterialName | None = Field(None, description=_CARCASE_MATERIAL)
    thickness: Length = Field(description="Thickness of a rail: the height between two openings.")
    width: Length = Field(description="Width of a rail, from front to back.")
    housing_depth: Length | None = Field(None, description=_HOUSING_DEPTH)


class DividersTable(Table):
    """Full-depth boards: partitions between columns, or fixed shelves between tiers."""

    only: ClassVar[tuple[Only, ...]] = (
        Only(keys=("housing_depth",), beside="joint", words=("housing", "stopped housing"), usual="housing"),
        Only(keys=("stop",), beside="joint", words=("stopped housing",), usual="housing"),
        Only(keys=("tenons",), beside="joint", words=("through tenons",), usual="housing"),
    )
    material: MaterialName | None = Field(None, description=_CARCASE_MATERIAL)
    thickness: Length | None = Field(None, description=_CARCASE_THICKNESS)
    joint: Literal["housing", "stopped housing", "through tenons"] = Field(
        "housing", description="How their ends are held."
    )
    housing_depth: Length | None = Field(None, description=_HOUSING_DEPTH)
    stop: Length | None = Field(
        None, description=f"Stopped housing: how far from the front edge it stops. {usually('stop')}"
    )
    tenons: int | None = Field(
        None,
        ge=1,
        le=values.GREATEST_TENONS,
        description=f"Through tenons: how many at each end. Usually {TENONS}.",
    )


class DustPanelTable(Table):
    """A thin panel in each web frame."""

    material: MaterialName = Field(description="Material of the dust panels.")
    thickness: Length = Field(description="Thickness of the dust panels; the groove is as wide.")


class FramesTable(Table):
    """Web frames between tiers: a rail in front and one behind, with runners between them."""

    material: MaterialName | None = Field(None, description=_CARCASE_MATERIAL)
    thickness: Length | None = Field(None, description=_CARCASE_THICKNESS)
    rail: Length | None = Field(None, description=f"Width of both rails. {usually('web_rail')}")
    runner: Length | None = Field(None, description=f"Width of the runners. {usually('web_rail')}")
    housing_depth: Length | None = Field(None, description=_HOUSING_DEPTH)
    groove_depth: Length | None = Field(
        None,
        description=f"Depth of the groove in the rails, and length of the runners' tenons. {usually('web_groove')}",
    )
    tenon: Length | None = Field(
        None, description=f"Thickness of the tenons where there is no dust panel. {usually('web_tenon')}"
    )
    play: LengthOrNothing | None = Field(
        None, description=f"How much smaller a dust panel is than the room for it. {usually('play')}"
    )
    dust_panel: DustPanelTable | None = Field(None, description="Dust panels, if there are any.")


class RunnersTable(Table):
    """What drawers run on where no board is below them."""

    only: ClassVar[tuple[Only, ...]] = (
        Only(
            keys=("material", "thickness", "width"),
            beside="kind",
            words=("wood on wood", "side-hung"),
            usual="wood on wood",
        ),
        Only(keys=("kickers",), beside="kind", words=("wood on wood",), usual="wood on wood"),
    )
    kind: Literal["wood on wood", "side-hung", "slides"] = Field(
        "wood on wood",
        description='Strips level with the rails: "wood on wood"; strips in grooves of the drawers\' sides: '
        '"side-hung"; or bought "slides".',
    )
    material: MaterialName | None = Field(None, description=_CARCASE_MATERIAL)
    thickness: Length | None = Field(
        None,
        description="Thickness of the strips. Usually that of the rails, or of the carcase without rails; side-hung "
        f"{usual_said('side_runner')}.",
    )
    width: Length | None = Field(
        None,
        description=f"How far a strip stands in from the upright. {usually('runner_width')} Side-hung: how high it is, "
        f"usually {usual_said('side_runner_height')}.",
    )
    kickers: bool | None = Field(
        None, description="Whether there are strips above drawers that nothing keeps from tipping. Usually true."
    )


class SeparateTopTable(Table):
    """A board laid on the carcase, and fixed from below by screws in slots."""

    material: MaterialName | None = Field(None, description=_CARCASE_MATERIAL)
    thickness: Length | None = Field(None, description=_CARCASE_THICKNESS)
    front: LengthOrNothing | None = Field(None, description=f"How far it stands over the front. {usually('top_over')}")
    sides: LengthOrNothing | None = Field(None, description=f"How far it stands over each side. {usually('top_over')}")
    back: LengthOrNothing | None = Field(None, description="How far it stands over the back. Usually 0.")


class HangingRailTable(Table):
    """Boards below the top, in front of the back, through which a cabinet is screwed to the wall."""

    material: MaterialName | None = Field(None, description=_CARCASE_MATERIAL)
    thickness: Length | None = Field(None, description=_CARCASE_THICKNESS)
    width: Length | None = Field(None, description=f"How far they come down from the top. {usually('hanging_rail')}")


class CarcaseTable(DividedTable):
    """A cabinet: its outer ring, and what stands in, behind, below, above and before it."""

    model_config = ConfigDict(json_schema_extra={"dependentSchemas": GRADUATED_COLUMNS})
    only: ClassVar[tuple[Only, ...]] = (
        Only(keys=("sled", "pins_on", "pins", "joint"), beside="corners", words=("dovetail",), usual="dovetail"),
        Only(keys=("lap", "rabbets_on"), beside="corners", words=("rabbet",), usual="dovetail"),
    )
    mark: Mark = Field(description="Mark of the carcase: a capital letter, then up to 7 capitals or digits.")
    title: Title = Field("", description="What you call it.")
    sizes: Literal["outside", "inside"] = Field(
        "outside", description="What width, height and depth are measured over; inside, the depth is to the back."
    )
    width: Length = Field(description="Width.")
    height: Length = Field(description="Height of the ring, without base and separate top.")
    depth: Length = Field(description="Depth, from front edge to back edge.")
    material: MaterialName = Field(description="Material of top, bottom and sides.")
    thickness: Length = Field(description="Thickness of top, bottom and sides.")
    corners: Literal["dovetail", "rabbet"] = Field("dovetail", description="How its corners are joined.")
    lap: Length | None = Field(
        None,
        description="Rabbet: the wood that is left of the rabbeted board, over the mate's end. Usually a third of the "
        "thickness, rounded down.",
    )
    rabbets_on: Literal["sides", "top and bottom"] | None = Field(
        None, description='Rabbet: the boards that are rabbeted at their ends. Usually "sides".'
    )
    sled: SledName | None = Field(None, description="Sled for its corners. Usually the project's.")
    pins_on: Literal["top and bottom", "sides"] | None = Field(
        None, description="Boards that carry the pins. Usually the shorter pair, which stands upright on the sled."
    )
    pins: PinsTable | None = Field(None, description="What is different about its pins.")
    joint: JointsTable | None = Field(None, description="What is different about the pins of single joints.")
    back: BackTable | None = Field(None, description="Its back, if it has one.")
    rails: RailsTable | None = Field(None, description="Needed where rails divide tiers.")
    partitions: DividersTable | None = Field(None, description="Needed where columns stand side by side; may be empty.")
    shelves: DividersTable | None = Field(None, description="Needed where fixed shelves divide tiers; may be empty.")
    frames: FramesTable | None = Field(None, description="Needed where web frames divide tiers; may be empty.")
    runners: RunnersTable | None = Field(
        None, description="What drawers run on where no board is below them; may be empty."
    )
    base: BaseTable | None = Field(None, description="What it stands on, if it has a base.")
    top: SeparateTopTable | None = Field(None, description="A separate top, if it has one; may be empty.")
    hanging_rail: HangingRailTable | None = Field(
        None, description="A rail to screw it to the wall, if it hangs there; may be empty."
    )
    use: UseTable | None = Field(None, description="What it bears, and how it stands in its room; may be empty.")
    doors: DoorsTable | None = Field(None, description="What hangs before the whole of it; may be empty.")
    column: list[ColumnTable] = Field(min_length=1, description="Its columns, from left to right.")
    drawer: DrawerTable | None = Field(None, description="How its drawers are made. Needed when it has any.")
    except_: dict[str, DrawerPart] = Field(
        {}, alias="except", description="What is different about one drawer, by its mark."
    )

    @field_validator("lap")
    @classmethod
    def _leaves_room_for_the_mate(cls, lap: Nm | None, info: ValidationInfo) -> Nm | None:
        thickness = info.data.get("thickness")
        if lap is not None and thickness is not None and lap >= thickness:
            raise RefusalError("is as thick as the board, so no room is left for the mate.", "Take a thinner lap.")
        return lap
