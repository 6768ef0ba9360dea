"""``python -m planner``."""

from __future__ import annotations

from planner.cli.main import run

if __name__ == "__main__":
    run()
