"""What is in a folder or a workbook, to see that nothing changed or that all is there."""

from __future__ import annotations

from pathlib import Path


def contents(folder: Path) -> dict[str, bytes | None]:
    """Every file below a folder with its bytes, and every folder; nothing for a folder that isn't there."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else None
        for path in sorted(folder.rglob("*"))
    }


def sheets(workbook: Path) -> list[str]:
    """Names of the sheets of a workbook, as a library that knows nothing of ours reads it."""
    from openpyxl import load_workbook

    names: list[str] = load_workbook(workbook).sheetnames
    return names
