"""The JSON Schema says what the reader does."""

from __future__ import annotations

import copy
import json
import tomllib
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from jsonschema import Draft202012Validator

from planner.domain.project import Project
from planner.errors import InputError
from planner.intake import places
from planner.intake.project_file import read_project
from planner.intake.schema import node_at, schema
from planner.intake.write_file import write_project
from tests.intake.bad_files import BAD_FILES, GOOD
from tests.intake.furniture import BAD_FURNITURE, FURNITURE
from tests.strategies import projects

SAMPLES = {
    path.stem: path.read_text(encoding="utf-8")
    for path in (Path(__file__).parents[2] / "sample_projects").glob("*.toml")
}
SOUND = {"good": GOOD, "furniture": FURNITURE, **SAMPLES}
each_sound_file = pytest.mark.parametrize("name", sorted(SOUND))

PINS = "half_pin pin tails tail greatest_tail spread ratio places measured_from alike"
FRAME = "stile rail groove_depth tenon wide high panel"
DIVIDERS = "material thickness joint housing_depth stop tenons"
DOORS = f"leaves hinged stands gap overlay stops made material thickness {FRAME}"
COLUMN = "width share tier drawers heights ratio step marks divided_by doors"
TIER = "height share column column_step column_ratio holds mark shelves doors"
DRAWER = (
    "material front_material front_thickness side_thickness back_thickness side_clearance top_clearance back_clearance "
    "back_lower sled pins_on front_joint lap pins joint bottom applied_front handles stops"
)
STOPS = "material thickness length width"
BOTTOM = "material thickness groove_depth up play"
KEYS = {
    "": "format project material timber room shop stock sled pins rates box carcase acknowledged",
    "acknowledged.0": "code marks level why",
    "project": "name units show proud height_tolerance drawers sled",
    "material.x": "kind hardness species sawn",
    "timber.x": "kind hardness tangential radial shrinkage_tangential shrinkage_radial specific_gravity stiffness "
    "strength source",
    "room": "dry damp",
    "room.dry": "moisture humidity temperature",
    "shop": "moisture humidity temperature",
    "stock": "length width thickness sheet end_trim edge_trim rip_kerf crosscut_kerf joint least_stave greatest_stave "
    "spares spare_length spare_width practice waste stages first_cut keep material",
    "stock.keep": "length width credit",
    "stock.material.x": "sold_as length width thickness end_trim edge_trim greatest_stave waste grain",
    "sled.x": "slope bit greatest_bit_height greatest_width greatest_upright slot greatest_depth_soft "
    "greatest_depth_hard kept",
    "pins": PINS,
    "rates": "sled_change height_change fence_swap handling turning pass",
    "box.0": "mark title count sizes length width height material thickness sled pins_on pins joint bottom lid till "
    "nest",
    "box.0.joint": "J1 J2 J3 J4",
    "box.0.joint.J3": PINS,
    "box.0.bottom": BOTTOM,
    "box.0.lid": f"kind made material thickness front sides back height top kerf {FRAME}",
    "box.0.lid.panel": "material thickness play",
    "box.0.lid.top": "material thickness groove_depth down play",
    "box.0.till": "width depth material thickness housing_depth lid",
    "box.0.till.lid": "material thickness",
    "box.0.nest": "count gap",
    "carcase.0": "mark title sizes width height depth material thickness corners lap rabbets_on sled pins_on pins "
    "joint back rails partitions shelves frames runners base top hanging_rail use doors column column_step "
    "column_ratio drawer except",
    "carcase.0.joint.J1": PINS,
    "carcase.0.use": "fixed_to floor open_at_once shelves drawers top sag",
    "carcase.0.back": f"made material thickness rabbet_depth play board lap gap {FRAME}",
    "carcase.0.back.panel": "material thickness play",
    "carcase.0.rails": "material thickness width housing_depth",
    "carcase.0.partitions": DIVIDERS,
    "carcase.0.shelves": DIVIDERS,
    "carcase.0.frames": "material thickness rail runner housing_depth groove_depth tenon play dust_panel",
    "carcase.0.frames.dust_panel": "material thickness",
    "carcase.0.runners": "kind material thickness width kickers",
    "carcase.0.base": "kind height front sides back material thickness mark sled pins_on pins joint foot rise leg "
    "leg_material apron tenon setback",
    "carcase.0.base.joint.J2": PINS,
    "carcase.0.top": "material thickness front sides back",
    "carcase.0.hanging_rail": "material thickness width",
    "carcase.0.doors": DOORS,
    "carcase.0.doors.stops": "material thickness width",
    "carcase.0.column.0": COLUMN,
    "carcase.0.column.0.doors": DOORS,
    "carcase.0.column.0.tier.0": TIER,
    "carcase.0.column.0.tier.0.shelves": "count material thickness play setback pins",
    "carcase.0.column.0.tier.0.shelves.pins": "holes hole depth apart front back",
    "carcase.0.column.0.tier.0.doors.panel": "material thickness play",
    "carcase.0.column.0.tier.0.column.0.tier.0.column.0": COLUMN,
    "carcase.0.column.0.tier.0.column.0.tier.0": TIER,
    "carcase.0.drawer": DRAWER,
    "carcase.0.drawer.joint.J4": PINS,
    "carcase.0.drawer.applied_front": "material thickness stands gap overlay",
    "carcase.0.drawer.bottom": f"{BOTTOM} goes screw_slot slips",
    "carcase.0.drawer.bottom.slips": "material thickness height",
    "carcase.0.drawer.handles": "count holes apart hole",
    "carcase.0.drawer.stops": STOPS,
    "carcase.0.except.D3.stops": STOPS,
    "carcase.0.except.D3": DRAWER,
    "carcase.0.except.D3.applied_front": "material thickness stands gap overlay",
    "carcase.0.except.D3.bottom": f"{BOTTOM} goes screw_slot slips",
}
"""Every table of the format and its keys, written down apart from the code."""


@pytest.fixture(autouse=True)
def _no_lines(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whether a file is read is all that counts here; to find the line of each fault takes most of the time."""
    monkeypatch.setattr(places, "_MOST_READINGS", 0)


@cache
def validator() -> Draft202012Validator:
    return Draft202012Validator(schema())


def accepts(said: dict[str, Any]) -> bool:
    """Whether the schema takes it. Numbers are floats, as an editor would see them."""
    return validator().is_valid(json.loads(json.dumps(said, default=str)))


def reads(said: dict[str, Any]) -> bool:
    import tomli_w

    try:
        read_project(tomli_w.dumps(said), "x")
    except InputError:
        return False
    return True


def tables(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """Paths of all tables of a file."""
    if isinstance(value, dict):
        yield path
        for key, child in value.items():
            yield from tables(child, (*path, key))
    if isinstance(value, list):
        for place, child in enumerate(value):
            yield from tables(child, (*path, place))


def at(value: Any, path: tuple[str | int, ...]) -> Any:
    for step in path:
        value = value[step]
    return value


def test_it_is_a_schema_of_draft_2020_12() -> None:
    made = schema()
    Draft202012Validator.check_schema(made)
    assert made["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert json.loads(json.dumps(made)) == made


def test_each_call_gives_a_schema_of_its_own() -> None:
    schema().clear()
    assert schema()


@pytest.mark.parametrize("table", KEYS)
def test_every_key_of_the_format_is_there_and_described(table: str) -> None:
    path = tuple(int(step) if step.isdigit() else step for step in table.split(".") if step)
    node = node_at(path)
    assert set(node["properties"]) == set(KEYS[table].split())
    assert node["additionalProperties"] is False
    assert node["description"]
    for key in node["properties"]:
        assert node_at((*path, key)).get("description", "").endswith("."), f"{table}.{key} has no description"


def test_nothing_of_the_library_shows_in_it() -> None:
    text = json.dumps(schema())
    assert '"null"' not in text
    assert "ydantic" not in text


@each_sound_file
def test_sound_files_are_accepted(name: str) -> None:
    assert list(validator().iter_errors(tomllib.loads(SOUND[name]))) == []


@given(projects())
def test_whatever_is_written_is_accepted(project: Project) -> None:
    assert accepts(tomllib.loads(write_project(project)))


@each_sound_file
def test_an_unknown_key_in_any_table_is_refused_by_both(name: str) -> None:
    said = tomllib.loads(SOUND[name])
    for path in tables(said):
        if path in {("material",), ("sled",)} or path[-1:] == ("except",):
            continue  # the keys of these are the maker's own names
        changed = copy.deepcopy(said)
        at(changed, path)["colour"] = 1
        assert not accepts(changed), path
        assert not reads(changed), path


@each_sound_file
def test_a_missing_key_in_any_table_is_missed_by_both_or_by_none(name: str) -> None:
    """What depends on other tables (rails, drawers, marks, sleds) or on lengths is the reader's alone."""
    said = tomllib.loads(SOUND[name])
    across = {
        "rails", "partitions", "shelves", "frames", "sled", "bottom", "drawer", "drawers", "column", "marks", "heights",
        "step", "ratio", "carcase", "box", "up", "down", "tenon", "stile", "groove_depth", "tier", "holes",
        "front_joint", "divided_by", "goes",
    }  # fmt: skip
    for path in tables(said):
        for key in at(said, path):
            changed = copy.deepcopy(said)
            del at(changed, path)[key]
            if key in across or "except" in path or path in {("material",), ("sled",)}:
                assert accepts(changed) or not reads(changed), (*path, key)
            else:
                assert accepts(changed) == reads(changed), (*path, key)


def test_a_kept_sled_needs_no_values_or_all() -> None:
    said = tomllib.loads(SOUND["good"])
    small = said["sled"]["small"]
    said["sled"]["small"] = {"kept": True}
    assert accepts(said)
    said["sled"]["small"] = {"kept": True, **small}
    assert accepts(said)
    said["sled"]["small"] = {"kept": False}
    assert not accepts(said)


def test_a_file_with_neither_box_nor_carcase_is_refused_by_both() -> None:
    said = tomllib.loads(SOUND["good"])
    del said["box"], said["carcase"]
    assert not accepts(said)
    assert not reads(said)


@pytest.mark.parametrize(
    "name",
    ["no slope", "unknown unit", "unknown key", "far too many tails", "too many", "small letter for a mark",
     "slope the wrong way round", "ratio of one", "bit of no size", "length as list", "no drawers", "newer format",
     "one box without double brackets", "unknown rule", "long name", "empty name", "graduated without ratio",
     "ratio of even tails", "ratio alone", "places and tails", "places and spread", "places and ratio", "no pin listed",
     "too many places", "place without an end", "fifth joint", "half a second", "rate over a day", "alike in words",
     "unknown front joint", "unknown edge", "lid of no kind", "hinged lid with a kerf", "sawn lid of a thickness",
     "sawn lid of no height", "frame keys of a slab", "nest of one", "boards of a panel", "tenons and housings",
     "tenons in a housing", "stop of a through joint", "slides of wood", "kickers of side-hung drawers",
     "base of no kind", "feet of a plinth", "legs of a plinth", "pins of a stand", "lap of dovetails",
     "pins of rabbets", "overlay of inset doors", "a pair hinged on one side", "width and share", "height and share",
     "share of nothing", "drawers both ways", "column of nothing", "heights listed beside tiers", "marks beside tiers",
     "mark of no drawer", "shelves beside a drawer", "columns and a drawer", "top that stands back",
     "unknown key deep within"],
)  # fmt: skip
def test_mistakes_of_form_are_refused_by_the_schema_too(name: str) -> None:
    (bad,) = [bad for bad in (*BAD_FILES, *BAD_FURNITURE) if bad.name == name]
    assert not accepts(tomllib.loads(bad.text))
