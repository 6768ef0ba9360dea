"""Loads by name, as the published figures come to in kilograms and metres."""

from __future__ import annotations

import pytest

from planner.domain.use import Load, LoadKind, LoadUnit
from planner.wood.loads import CLASS_MOST, class_limit, spread


@pytest.mark.parametrize(
    ("kind", "in_a_drawer", "kg", "dimensions"),
    [
        (LoadKind.BOOKS, False, 37.204, 1),  # 25 lb/ft: 25 · 0.45359237 / 0.3048
        (LoadKind.BOOKS, True, 640.739, 3),  # 40 lb/ft³: 40 · 0.45359237 / 0.028316847
        (LoadKind.CLOTHES, True, 136.157, 3),  # own conversion: 8.5 lb/ft³ = 136.157 kg/m³
        (LoadKind.CLOTHES, False, 136.157, 3),
        (LoadKind.TOOLS, False, 244.121, 2),  # 50 lb/ft²: 50 · 4.882428
        (LoadKind.CABINET_CLASS, False, 73.236, 2),  # 718 Pa, as printed: 718.2 / 9.80665
    ],
)
def test_named_loads(kind: LoadKind, *, in_a_drawer: bool, kg: float, dimensions: int) -> None:
    found = spread(Load(kind=kind), in_a_drawer=in_a_drawer)
    assert found.kg == pytest.approx(kg, abs=0.001)
    assert found.dimensions == dimensions
    assert "read" in found.source or "memory" in found.source


@pytest.mark.parametrize(
    ("unit", "kg"),
    [
        (LoadUnit.KG_M, 2 * 0.5),
        (LoadUnit.KG_M2, 2 * 0.5 * 0.3),
        (LoadUnit.KG_M3, 2 * 0.5 * 0.3 * 0.2),
        (LoadUnit.LB_FT, 2 * 1.488164 * 0.5),
        (LoadUnit.LB_FT2, 2 * 4.882428 * 0.5 * 0.3),
        (LoadUnit.LB_FT3, 2 * 16.018463 * 0.5 * 0.3 * 0.2),
    ],
)
def test_own_figures_count_by_length_area_or_volume(unit: LoadUnit, kg: float) -> None:
    load = Load(kind=LoadKind.OWN, thousandths=2_000, unit=unit)
    assert spread(load).on(0.5, 0.3, 0.2) == pytest.approx(kg, rel=1e-6)


def test_the_limit_of_the_class_is_a_sixteenth_on_a_foot_and_a_quarter_at_most() -> None:
    # 36 in: 3/16 in (read: timberpart.com prints 1.6 mm per 305 mm); over 4 ft it stays at 1/4 in.
    assert class_limit(36 * 0.0254) == pytest.approx(0.1875 * 0.0254)
    assert class_limit(48 * 0.0254) == pytest.approx(0.25 * 0.0254)
    assert class_limit(60 * 0.0254) == CLASS_MOST
