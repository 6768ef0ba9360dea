"""The whole interview about one piece: its parts in their order, and the project file that the answers come to."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from planner.intake.interview.around import Around, Outside, around, doors
from planner.intake.interview.asking import Asking
from planner.intake.interview.beginning import SIZES, WOOD, Shop, Stock, name_and_unit, what_to_make, wood
from planner.intake.interview.boards_inside import boards_inside
from planner.intake.interview.boxes import box_parts, box_sizes
from planner.intake.interview.drawers import drawers
from planner.intake.interview.inside import Inside, Room, inside
from planner.intake.interview.inside_tables import InsideTables
from planner.intake.interview.kinds import Start
from planner.intake.interview.pins_and_sled import SHORTER, Needs, Pins, pins, pins_tables, sled, with_proud
from planner.intake.interview.question import Script
from planner.intake.interview.sums import either, up
from planner.intake.sharing import Table
from planner.intake.usual import usual_length
from planner.intake.values import FORMAT
from planner.lengths import Nm, Unit, write_length


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """What an interview comes to.

    Attributes:
        name: of the project.
        unit: unit of the project.
        tables: the project file, as tables.
    """

    name: str
    unit: Unit
    tables: Table


def piece(shop: Shop) -> Script[Piece]:
    """Ask all that must be known of a piece."""
    start = yield from what_to_make()
    name, unit = yield from name_and_unit(start, shop)
    asking = Asking(unit=unit, start=start.usual, section=WOOD, heard={})
    stock = yield from wood(asking)
    made = (yield from _case(asking, stock, start)) if start.is_case else (yield from _box(asking, stock, start))
    needs = with_proud(made.needs, usual_length("proud", unit))
    sleds = yield from sled(asking.about("The sled"), stock, shop.sleds, needs)
    tables = {
        "format": FORMAT,
        "project": {"name": name, "units": str(unit)},
        "material": stock.tables(),
        "sled": sleds,
        "pins": pins_tables(made.pins, asking),
        **made.tables,
    }
    return Piece(name=name, unit=unit, tables=tables)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Made:
    """What was said of the case or box."""

    tables: Table
    pins: Pins
    needs: Needs


# --- a box --------------------------------------------------------------------------------------------------


def _box(asking: Asking, stock: Stock, start: Start) -> Script[_Made]:
    sizes = yield from box_sizes(asking.about(SIZES), stock)
    parts = yield from box_parts(asking.about("The box"), stock, sizes)
    said = yield from pins(asking.about("Pins"), stock, ("front and back", "sides"))
    table = {
        "mark": start.mark,
        "title": start.title,
        **sizes.tables,
        "material": stock.timber,
        "thickness": write_length(stock.thickness, asking.unit),
        **_pins_on(said),
        **parts.tables,
    }
    if parts.is_nest:
        _place_grooves(table, said, stock, asking.unit)
    pair = {"sides": sizes.width, "front and back": sizes.length}
    upright = pair.get(said.pins_on, min(sizes.width, sizes.length))
    needs = Needs(wide=sizes.height, upright=upright, thick=stock.thickness, narrow=sizes.height)
    return _Made(tables={"box": [table]}, pins=said, needs=needs)


def _place_grooves(table: Table, said: Pins, stock: Stock, unit: Unit) -> None:
    """Say where the grooves are, just clear of the half-pins inside, since the boxes of a nest have them alike."""
    steepest = Fraction(6)
    place = write_length(up(said.half_pin + stock.thickness / steepest, unit), unit)
    if "bottom" in table:
        table["bottom"]["up"] = place
    if "lid" in table and "top" in table["lid"]:
        table["lid"]["top"]["down"] = place


def _pins_on(said: Pins) -> Table:
    return {} if said.pins_on == SHORTER else {"pins_on": said.pins_on}


# --- a case -------------------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True, kw_only=True)
class _CaseSizes:
    """Sizes of a case over the outside, its clear width and height, and what the file says of them."""

    outside: Outside
    clear: tuple[Nm, Nm]
    tables: Table


def _case(asking: Asking, stock: Stock, start: Start) -> Script[_Made]:
    sizes = yield from _case_sizes(asking.about(SIZES), stock)
    room = Room(wide=sizes.clear[0], high=sizes.clear[1], divider=stock.thickness)
    within = yield from inside(asking.about("Inside"), room)
    boards = yield from boards_inside(asking.about("Inside"), stock, within)
    drawer: Table = {}
    if within.has_drawers:
        widest = max(wide for wide, _ in within.drawers())
        drawer = {"drawer": (yield from drawers(asking.about("Drawers"), stock, boards, widest))}
    leaves = [min(leaf) for leaf in within.leaves(sizes.clear)]
    made = (yield from doors(asking.about("Doors"), stock, min(leaves))) if leaves else {}
    closed = yield from around(asking.about("Back, base and top"), stock, sizes.outside)
    said = yield from pins(asking.about("Pins"), stock, ("top and bottom", "sides"))
    table = {
        "mark": start.mark,
        "title": start.title,
        **sizes.tables,
        "material": stock.timber,
        "thickness": write_length(stock.thickness, asking.unit),
        **_pins_on(said),
        **boards.tables,
        **closed.tables,
        **InsideTables(asking.unit, boards.between, made, boards.shelf).case(within),
        **drawer,
    }
    return _Made(tables={"carcase": [table]}, pins=said, needs=_needs(sizes.outside, within, closed, said, stock))


def _case_sizes(asking: Asking, stock: Stock) -> Script[_CaseSizes]:
    unit, boards = asking.unit, 2 * stock.thickness
    over = yield from asking.choice("over", "outside")
    width = yield from asking.length("width", either(unit, "32 in", "800 mm"))
    height = yield from asking.length("height", either(unit, "34 in", "850 mm"))
    depth = yield from asking.length("depth", either(unit, "18 in", "450 mm"))
    outer = boards if over == "inside" else 0
    return _CaseSizes(
        outside=Outside(width=Nm(width + outer), height=Nm(height + outer), depth=Nm(depth + outer // 2)),
        clear=(Nm(max(1, width + outer - boards)), Nm(max(1, height + outer - boards))),
        tables={
            "sizes": over,
            "width": write_length(width, unit),
            "height": write_length(height, unit),
            "depth": write_length(depth, unit),
        },
    )


def _needs(outside: Outside, within: Inside, closed: Around, said: Pins, stock: Stock) -> Needs:
    """What the sled must take: case, drawers and plinth."""
    pair = {"sides": outside.height, "top and bottom": outside.width}
    upright = [pair.get(said.pins_on, min(outside.width, outside.height)), *(wide for wide, _ in within.drawers())]
    if closed.is_dovetailed:
        upright.append(min(outside.width, outside.depth))
    tall = [tall for _, tall in within.drawers()]
    wide = [outside.depth, closed.base_height, *tall]
    return Needs(wide=max(wide), upright=max(upright), thick=stock.thickness, narrow=min([outside.depth, *tall]))
