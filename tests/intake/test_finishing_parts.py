"""Stops, pins, rails and slots of a file: what is usual, in both units, and what is said instead."""

from __future__ import annotations

import pytest

from planner.domain.carcase import Carcase, HangingRail
from planner.domain.drawer import Drawer, DrawerStops
from planner.domain.ring import Stuff
from planner.domain.space import Division, DoorStops, LooseShelves, ShelfPins
from planner.intake.project_file import read_project
from planner.lengths import Nm, Unit, read_length

FILE = """
format = 1

[project]
name = "Hollin Shed"
units = "{unit}"

[material.ash]
[material.elm]

[sled.bench]
slope = "1:8"
bit = "{bit}"
greatest_bit_height = "2 in"
greatest_width = "40 in"
greatest_upright = "60 in"

[[carcase]]
mark = "C"
width = "40 in"
height = "30 in"
depth = "15 in"
material = "ash"
thickness = "3/4 in"

[carcase.shelves]
[carcase.hanging_rail]
{rail}

[[carcase.column]]

[[carcase.column.tier]]
holds = "shelves"
doors = {{ leaves = 2, stops = {{ {doors} }} }}
shelves = {{ pins = {{ {pins} }} }}

[[carcase.column.tier]]

[carcase.drawer]
material = "elm"
front_thickness = "3/4 in"
side_thickness = "1/2 in"
back_thickness = "1/2 in"

[carcase.drawer.stops]
{stops}

[carcase.drawer.bottom]
material = "ash"
thickness = "1/4 in"
goes = "slid in"
{slot}
"""
NOTHING = dict.fromkeys(("rail", "doors", "pins", "stops", "slot"), "")


def read(unit: Unit, **said: str) -> Carcase:
    text = FILE.format(unit=unit.value, bit="1/2 in", **(NOTHING | said))
    (carcase,) = read_project(text, "x").carcases
    return carcase


def parts(carcase: Carcase) -> tuple[LooseShelves, DoorStops | None, Drawer]:
    assert isinstance(carcase.inside.holds, Division)
    (column,) = carcase.inside.holds.spaces
    assert isinstance(column.holds, Division)
    shelved, drawer = column.holds.spaces
    assert isinstance(shelved.holds, LooseShelves)
    assert isinstance(drawer.holds, Drawer)
    assert shelved.doors is not None
    return shelved.holds, shelved.doors.stops, drawer.holds


def test_they_are_usual_in_inches() -> None:
    carcase = read(Unit.INCH)
    shelves, doors, drawer = parts(carcase)
    assert carcase.hanging_rail == HangingRail(stuff=stuff("ash", "3/4"), width_nm=inches("3"))
    assert doors == DoorStops(stuff=stuff("ash", "1/2"), width_nm=inches("3/4"))
    assert drawer.stops == DrawerStops(stuff=stuff("elm", "1/4"), length_nm=inches("1 1/2"), width_nm=inches("3/4"))
    assert drawer.bottom is not None
    assert drawer.bottom.screw_slot_nm is None
    assert shelves.pins == ShelfPins(
        holes=3,
        hole_nm=inches("1/4"),
        depth_nm=inches("5/16"),
        apart_nm=inches("1 1/4"),
        front_nm=inches("1 1/2"),
        back_nm=inches("1 1/2"),
    )


def test_they_are_usual_in_millimetres() -> None:
    carcase = read(Unit.MM)
    shelves, doors, drawer = parts(carcase)
    assert carcase.hanging_rail is not None
    assert carcase.hanging_rail.width_nm == mm(75)
    assert doors is not None
    assert (doors.stuff.thickness_nm, doors.width_nm) == (mm(12), mm(20))
    assert drawer.stops is not None
    assert (drawer.stops.stuff.thickness_nm, drawer.stops.length_nm, drawer.stops.width_nm) == (mm(6), mm(40), mm(20))
    assert shelves.pins == ShelfPins(
        holes=3, hole_nm=mm(5), depth_nm=mm(8), apart_nm=mm(32), front_nm=mm(37), back_nm=mm(37)
    )


@pytest.mark.parametrize("unit", Unit)
def test_what_is_said_counts(unit: Unit) -> None:
    carcase = read(
        unit,
        rail='material = "elm"\nthickness = "1 in"\nwidth = "4 in"',
        doors='material = "elm", thickness = "3/8 in", width = "1 in"',
        pins='holes = 5, hole = "1/5 in", depth = "3/8 in", apart = "1 in", front = "2 in", back = "3 in"',
        stops='material = "ash"\nthickness = "1/8 in"\nlength = "2 in"\nwidth = "1 in"',
        slot='screw_slot = "3/16 in"',
    )
    shelves, doors, drawer = parts(carcase)
    assert carcase.hanging_rail == HangingRail(stuff=stuff("elm", "1"), width_nm=inches("4"))
    assert doors == DoorStops(stuff=stuff("elm", "3/8"), width_nm=inches("1"))
    assert drawer.stops == DrawerStops(stuff=stuff("ash", "1/8"), length_nm=inches("2"), width_nm=inches("1"))
    assert drawer.bottom is not None
    assert drawer.bottom.screw_slot_nm == inches("3/16")
    assert shelves.pins == ShelfPins(
        holes=5,
        hole_nm=inches("1/5"),
        depth_nm=inches("3/8"),
        apart_nm=inches("1"),
        front_nm=inches("2"),
        back_nm=inches("3"),
    )


def inches(text: str) -> Nm:
    return read_length(text, Unit.INCH)


def mm(number: int) -> Nm:
    return Nm(number * 1_000_000)


def stuff(material: str, thickness: str) -> Stuff:
    return Stuff(material=material, thickness_nm=inches(thickness))
