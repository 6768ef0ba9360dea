"""A sled to be built as plain data: lengths as millimetres, places named as in ``domain.sled_to_build``."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields
from typing import Any

from planner.domain.sled import Sled
from planner.domain.sled_to_build import (
    ExitGuard,
    FenceAngle,
    SledFence,
    SledFloor,
    SledRunner,
    SledToBuild,
    UprightBoard,
)
from planner.lengths import mm
from planner.present.json_out import finding_json

Json = dict[str, Any]


def new_sled_json(built: SledToBuild, boards: Iterable[UprightBoard], project_file: str) -> Json:
    """The sled, the pin ends that it was made for, and its table for a project file."""
    return {
        "sled": _sled(built.sled),
        "boards": [_flat(board) for board in boards],
        "greatest_thickness_mm": mm(built.greatest_thickness_nm),
        "cutting_length_needed_mm": mm(built.cutting_length_needed_nm),
        "table_each_way_needed_mm": mm(built.table_each_way_needed_nm),
        "hands_clear_mm": mm(built.hands_clear_nm),
        "floor": {
            "length_mm": mm(built.floor.length_nm),
            "width_mm": mm(built.floor.width_nm),
            **_flat(built.floor),
        },
        "fences": [{**_flat(fence), "length_mm": mm(fence.length_nm)} for fence in built.fences],
        "angle": _flat(built.angle),
        "guard": _flat(built.guard),
        "runner": _flat(built.runner),
        "how_to_set": list(built.how_to_set),
        "keep_clear": list(built.keep_clear),
        "findings": [finding_json(finding) for finding in built.findings],
        "project_file": project_file,
    }


def _flat(part: UprightBoard | SledFloor | SledFence | FenceAngle | ExitGuard | SledRunner) -> Json:
    """The fields of a part: lengths in millimetres, all others as they are."""
    said = {field.name: getattr(part, field.name) for field in fields(part)}
    return dict(_said(name, value) for name, value in said.items())


def _said(name: str, value: Any) -> tuple[str, Any]:  # noqa: ANN401  (a length, a word or a number)
    stem = name.removesuffix("_nm")
    if stem == name:
        return name, value
    return f"{stem}_mm", None if value is None else mm(value)


def _sled(sled: Sled) -> Json:
    return {
        "name": sled.name,
        "slope": float(sled.slope),
        "bit_mm": mm(sled.bit_nm),
        "greatest_bit_height_mm": mm(sled.greatest_bit_height_nm),
        "greatest_width_mm": mm(sled.greatest_width_nm),
        "greatest_upright_mm": mm(sled.greatest_upright_nm),
    }
