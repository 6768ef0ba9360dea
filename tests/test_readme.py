"""Every command that the README shows is run, in the order in which it stands there."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
BLOCKS = re.findall(r"^```sh\n(.*?)^```", (ROOT / "README.md").read_text(encoding="utf-8"), re.MULTILINE | re.DOTALL)
SET_UP = [block for block in BLOCKS if ".venv" in block]
IN_USE = [block for block in BLOCKS if ".venv" not in block]
KEPT_OUT = shutil.ignore_patterns(".git", ".venv*", "__pycache__", ".hypothesis", ".*_cache")


def run(block: str, folder: Path, **environment: str) -> str:
    settings = {"PATH": os.environ["PATH"], "HOME": str(folder), "LANG": "C.UTF-8", "COLUMNS": "100", **environment}
    settings |= {name: value for name, value in os.environ.items() if name.startswith(("PIP_", "SSL_", "REQUESTS_"))}
    done = subprocess.run(
        ["bash", "-euo", "pipefail", "-c", block],
        cwd=folder,
        env=settings,
        capture_output=True,
        text=True,
        check=False,
        timeout=540,
    )
    assert done.returncode == 0, f"{block}\n{done.stdout}\n{done.stderr}"
    return done.stdout


def test_the_readme_opens_with_the_job_and_shows_both_set_ups() -> None:
    assert len(SET_UP) == 2
    assert "planner prepare" in SET_UP[0]
    assert "pytest" in SET_UP[1]


def test_the_commands_of_daily_use_run_one_after_the_other(tmp_path: Path) -> None:
    shutil.copytree(ROOT / "sample_projects", tmp_path / "sample_projects")
    here = str(Path(sys.executable).parent)
    for block in IN_USE:
        run(block, tmp_path, PATH=f"{here}:{os.environ['PATH']}", PLANNER_STORE=str(tmp_path / "store.db"))
    assert list(tmp_path.rglob("*.xlsx"))


@pytest.mark.install
def test_the_first_command_sets_up_and_makes_the_workbook_of_the_chest(tmp_path: Path) -> None:
    clone = tmp_path / "a clone"
    shutil.copytree(ROOT, clone, ignore=KEPT_OUT)
    said = run(SET_UP[0], clone, PLANNER_STORE=str(tmp_path / "store.db"))
    assert "Workbook" in said
    assert list(clone.rglob("*.xlsx"))


@pytest.mark.install
def test_the_second_command_sets_up_and_runs_tests(tmp_path: Path) -> None:
    # Just as it stands, but kept to one test file, or it would run itself.
    clone = tmp_path / "clone"
    shutil.copytree(ROOT, clone, ignore=KEPT_OUT)
    said = run(SET_UP[1], clone, PYTEST_ADDOPTS="tests/plan/test_heights.py -p no:cacheprovider")
    assert " passed" in said
