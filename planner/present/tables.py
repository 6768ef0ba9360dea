"""All views of a plan as neutral tables; adding a view is a module in ``views`` and a line here."""

from __future__ import annotations

from collections.abc import Callable

from planner.domain.plan import Plan
from planner.present.table import Table
from planner.present.views.boards import boards
from planner.present.views.cut_list import cut_list
from planner.present.views.cuts import cuts
from planner.present.views.hardware import hardware
from planner.present.views.joints import joints
from planner.present.views.labels import labels
from planner.present.views.notes import checks, notes
from planner.present.views.openings import openings
from planner.present.views.order import order
from planner.present.views.piece import piece
from planner.present.views.practice import practice
from planner.present.views.sawn import sawn
from planner.present.views.sled import sled
from planner.present.views.tails import tails
from planner.present.views.weights import weights

View = Callable[[Plan], Table]

SHEETS: tuple[View, ...] = (
    piece, cut_list, hardware, boards, sawn, openings, labels, joints, practice, sled, tails, cuts, order,
    weights, notes,
)  # fmt: skip
"""The sheets of the workbook, in order; those that may be empty are left out when they are."""

__all__ = [
    "SHEETS", "View", "boards", "checks", "cut_list", "cuts", "hardware", "joints", "labels", "notes", "openings",
    "order", "piece", "practice", "sawn", "sled", "tails", "weights",
]  # fmt: skip
