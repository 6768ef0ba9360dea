"""The cases of the files ``cases_of_*.toml``, by their ids."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

CASES: dict[str, dict[str, Any]] = {
    case["id"]: case
    for file in sorted(Path(__file__).parent.glob("cases_of_*.toml"))
    for case in tomllib.loads(file.read_text(encoding="utf-8"))["case"]
}
"""Each with its inputs, what is expected and how near, its status and its source."""


def agrees(case: str, **found: float) -> None:
    """Every figure that a case expects is found, as near as it says."""
    expected, tolerance = CASES[case]["expected"], CASES[case]["tol"]
    assert found.keys() == expected.keys()
    for name, value in found.items():
        assert abs(value - expected[name]) <= tolerance[name], (case, name, value, expected[name])
