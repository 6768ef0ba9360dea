"""The JSON Schema of the project file."""

from __future__ import annotations

from typing import Any


def schema() -> dict[str, Any]:
    """Schema (2020-12), to be had by editors that check a project file while it is written."""
    from planner.intake.schema import schema as of_file

    return of_file()
