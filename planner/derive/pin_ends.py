"""The end that a corner's pins are laid out on, and how they are spaced there."""

from __future__ import annotations

from dataclasses import replace

from planner.derive.limits import layout_problem
from planner.derive.pins import PinEnd, lay_out
from planner.derive.sawn_pins import SawnEnd, saw_kerf
from planner.derive.slot import slot_of
from planner.domain.project import Project
from planner.domain.ring import Corner, Ring
from planner.domain.spacing import Spacing
from planner.domain.words import JointKind
from planner.errors import Problem
from planner.lengths import Grid, Nm, Span

Pins = tuple[Span, ...]
"""Outside-face places of the pins of an end, half-pins included, from the reference edge."""

NARROWEST_CHISEL_NM = Nm(8 * Grid.IN_64.step_nm)
"""1/8 in: a socket cut by hand must let in a chisel. Common practice, no source."""


def _pin_end(project: Project, ring: Ring, corner: Corner, width: Nm, thickness: Nm) -> PinEnd:
    """The end to lay out: for the sled's bit, or for a chisel as deep as the lap allows."""
    slot = slot_of(project.sled(ring.sled))
    if corner.kind is JointKind.HALF_BLIND:
        slot = replace(slot, bit_nm=NARROWEST_CHISEL_NM)
    return PinEnd(width_nm=width, thickness_nm=Nm(thickness - (corner.lap_nm or 0)), slot=slot)


def _spacing_at(ring: Ring, corner: Corner) -> Spacing:
    """The corner's own spacing or the ring's; by hand there are no passes to save, so the wished width decides."""
    spacing = corner.spacing or ring.spacing
    return replace(spacing, alike=True) if corner.kind is JointKind.HALF_BLIND else spacing


def corner_pins(project: Project, ring: Ring, corner: Corner, width: Nm, thickness: Nm) -> Pins | None:
    """The pins of a corner on a pin board of this width and thickness; None when they can't be cut.

    A ring whose lid will be sawn off is laid out as two joints, below and above the saw line.
    """
    end, spacing = _pin_end(project, ring, corner, width, thickness), _spacing_at(ring, corner)
    kerf = saw_kerf(project, ring)
    return lay_out(end, spacing) if kerf is None else SawnEnd(end, spacing, kerf).lay_out()


def corner_problems(project: Project, ring: Ring, corner: Corner, width: Nm, thickness: Nm) -> list[Problem]:
    """Why a corner's pins can't be cut."""
    end, spacing = _pin_end(project, ring, corner, width, thickness), _spacing_at(ring, corner)
    kerf = saw_kerf(project, ring)
    if kerf is None:
        return [layout_problem(end, spacing, project.grid, where=corner.mark)]
    return list(SawnEnd(end, spacing, kerf).problems(project.grid, where=corner.mark))


def half_pin_inside(project: Project, ring: Ring, corner: Corner) -> Nm:
    """How far the half-pins of a corner reach from the edges on the inside face, where they are widest.

    All spacings give both edges the half-pin that is wished for. A corner without pins has none.
    """
    if corner.kind is JointKind.RABBET:
        return Nm(0)
    board = next(each for each in ring.boards if each.mark == corner.pin_board)
    deep = Nm(board.stuff.thickness_nm - (corner.lap_nm or 0))
    lean = slot_of(project.sled(ring.sled)).lean_nm(deep)
    return Nm(_spacing_at(ring, corner).half_pin_nm + lean)
