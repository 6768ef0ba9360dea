"""What changed from one plan to another, as plain data for other programs; see ``json_out``."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields
from typing import Any

from planner.domain.changes import Changes, SettingChange, Shift, StockChange, Wood
from planner.domain.plan import BoardSize, SledTally
from planner.domain.said import SaidOtherwise, SaidPlace
from planner.lengths import Unit, in_unit, mm
from planner.present.json_out import finding_json

Json = dict[str, Any]

_MM_TO_M = 1000


def changes_json(found: Changes) -> Json:
    """Everything that differs; where there is a ``before``, there is an ``after``."""
    return {
        "project": found.project.after.name,
        "anything": found.any,
        "boards": {
            "new": [_board(board) for board in found.boards.new],
            "gone": [_board(board) for board in found.boards.gone],
            "changed": [_board_change(shift) for shift in found.boards.changed],
        },
        "joints_anew": list(found.joints_anew),
        "cuts_anew": list(found.cuts_anew),
        "stock": [_stock(change) for change in found.stock],
        "sled": {"before": _tally(found.tally.before), "after": _tally(found.tally.after)},
        "settings": [_setting(change) for change in found.settings],
        "operations": {"before": found.operations.before, "after": found.operations.after},
        "checks": {
            "new": [finding_json(finding) for finding in found.findings.new],
            "gone": [finding_json(finding) for finding in found.findings.gone],
            "changed": [
                {"before": finding_json(shift.before), "after": finding_json(shift.after)}
                for shift in found.findings.changed
            ],
        },
    }


def said_json(said: Iterable[SaidOtherwise]) -> list[Json]:
    """What the maker says otherwise; null where nothing is said, so that what is usual counts."""
    return [{"place": each.place, "before": each.before, "after": each.after} for each in said]


def places_json(listed: Iterable[SaidPlace]) -> list[Json]:
    """Where a project can be changed."""
    return [{"place": each.place, "said": each.said, "meaning": each.meaning} for each in listed]


def _board(board: BoardSize) -> Json:
    return {
        "mark": board.mark,
        "box": board.box,
        "role": board.role.value,
        "length_mm": mm(board.length_nm),
        "width_mm": mm(board.width_nm),
        "thickness_mm": mm(board.thickness_nm),
        "material": board.material,
    }


def _board_change(shift: Shift[BoardSize]) -> Json:
    """Only the keys that differ, besides the mark."""
    before, after = _board(shift.before), _board(shift.after)
    differ = {key: {"before": before[key], "after": after[key]} for key in after if before[key] != after[key]}
    return {"mark": shift.after.mark, **differ}


def _stock(change: StockChange) -> Json:
    return {
        "material": change.material,
        "kind": change.kind.value,
        "thickness_mm": mm(change.thickness_nm),
        "before": _wood(change.before),
        "after": _wood(change.after),
    }


def _wood(wood: Wood) -> Json:
    metre = in_unit(1, Unit.MM) / _MM_TO_M
    return {
        "boards": wood.boards,
        "length_mm": mm(wood.length_nm),
        "area_m2": float(wood.area_nm2 * metre**2),
        "volume_m3": float(wood.volume_nm3 * metre**3),
    }


def _tally(tally: SledTally) -> Json:
    return {field.name: getattr(tally, field.name) for field in fields(tally)}


def _setting(change: SettingChange) -> Json:
    return {
        "sled": change.sled,
        "slope": float(change.slope),
        "bit_mm": mm(change.bit_nm),
        "bit_height_mm": mm(change.bit_height_nm),
        "fence": change.fence.value,
        "ends": {"before": change.before, "after": change.after},
    }
