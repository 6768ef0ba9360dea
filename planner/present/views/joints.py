"""Both ends of every corner joint, with the place of each pin from the reference edge."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from planner.derive.slot import slot_of
from planner.domain.marks import end_mark
from planner.domain.plan import Joint, Plan
from planner.domain.words import Carries
from planner.lengths import Grid, Nm, Span, show_length
from planner.present.table import Cell, Column, Group, Kind, Table, setting
from planner.present.views.by_box import by_box

BLIND = (
    "Half-blind (lap): nothing shows on the outside face. Lay the pins out on the END, the places at the lap line; "
    "widen them by the lean to the inside face."
)


def joints(plan: Plan) -> Table:
    """Two rows for each joint: the pin end, then its tail end."""
    unit = plan.project.unit
    pin_baselines = {cut.joint: at.bit_height_nm for at in plan.sled.settings for cut in at.cuts}
    return Table(
        title="Joints",
        grid=plan.project.grid,
        columns=(
            Column(heading="Joint"),
            Column(heading="Board end"),
            Column(heading="Carries"),
            Column(heading="Mate"),
            Column(heading="Thickness", kind=Kind.LENGTH),
            Column(heading=f"Gauge, {unit}"),
            Column(heading=f"From – to, from the reference edge, {unit}", kind=Kind.MARKS),
            Column(heading="Lean", kind=Kind.PLACE),
        ),
        groups=tuple(
            Group(
                heading=f"{heading}: boards {width_words(found[0], plan)} wide, slope {slope_words(found[0].slope)}",
                rows=tuple(
                    row
                    for joint in found
                    for row in _both_ends(plan, joint, pin_baselines.get(joint.mark, joint.bit_height_nm))
                ),
            )
            for heading, found in by_box(plan, plan.joints)
        ),
        notes=(
            "Pins, half-pins included: places on the outside face. Lay them out there.",
            "Tails: places where the outside face of their pins comes. Trace them; the places are to check by.",
            "Lean: what each side of a pin gains towards the inside face, and a tail loses towards its baseline.",
            *((BLIND,) if any(joint.lap_nm for joint in plan.joints) else ()),
        ),
    )


def _both_ends(plan: Plan, joint: Joint, pin_baseline: Nm) -> tuple[tuple[Cell, ...], tuple[Cell, ...]]:
    grid = plan.project.grid
    lean = slot_of(plan.project.sled(joint.sled)).lean_nm(joint.socket_depth_nm)
    pin_end, tail_end = end_mark(joint.pin_board, joint.pin_end), end_mark(joint.tail_board, joint.tail_end)
    pins = (
        joint.mark,
        pin_end,
        f"{Carries.PINS}, lap {show_length(joint.lap_nm, grid.fine)}" if joint.lap_nm else str(Carries.PINS),
        tail_end,
        joint.pin_thickness_nm,
        setting(pin_baseline, grid),
        _places(joint.pins, grid),
        lean,
    )
    tails = (
        joint.mark,
        tail_end,
        str(Carries.TAILS),
        pin_end,
        joint.tail_thickness_nm,
        setting(joint.tail_baseline_nm, grid),
        _places(joint.tails, grid),
        lean,
    )
    return pins, tails


def width_words(joint: Joint, plan: Plan) -> str:
    """Width of the boards of a joint, the same all round a box."""
    return show_length(joint.width_nm, plan.project.grid, with_unit=True)


def slope_words(slope: Fraction) -> str:
    """``1:8``, or ``1:8.14`` for a slope that was said in degrees."""
    return f"1:{round(float(slope), 2):g}"


def _places(spans: Iterable[Span], grid: Grid) -> tuple[str, ...]:
    return tuple(f"{show_length(a, grid.fine)} – {show_length(b, grid.fine)}" for a, b in spans)
