"""What the program does before a command runs: next to nothing."""

from __future__ import annotations

import subprocess
import sys

import pytest

HEAVY = "sqlmodel sqlalchemy alembic pint openpyxl pydantic rich tomli_w platformdirs"


def loaded_by(code: str) -> set[str]:
    after = f"{code}\nimport sys\nprint(*({HEAVY!r}.split() & sys.modules.keys()), file=sys.stderr)"
    done = subprocess.run([sys.executable, "-c", after], capture_output=True, text=True, check=True)
    return set(done.stderr.split())


@pytest.mark.parametrize(
    "code",
    [
        "import planner.cli.main",
        "import planner.app.plans, planner.app.projects, planner.app.store_place",
        "import sys; sys.argv[1:] = ['--help']\nfrom planner.cli.main import run\ntry: run()\nexcept SystemExit: pass",
    ],
    ids=["command line", "app", "help"],
)
def test_none_of_the_heavy_libraries_is_loaded(code: str) -> None:
    assert loaded_by(code) == set()
