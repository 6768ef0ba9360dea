"""The house rules that imports alone don't show; the layers themselves are in pyproject (import-linter)."""

from __future__ import annotations

import ast
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "planner"
MODULES = sorted(PACKAGE.rglob("*.py"))
CORE = (
    "errors.py",
    "lengths.py",
    "quantities.py",
    "pipeline.py",
    "domain",
    "wood",
    "stock",
    "derive",
    "plan",
    "checks",
)
HEAVY = {"sqlmodel", "sqlalchemy", "alembic", "pint", "openpyxl", "tomli_w"}


def name(path: Path) -> str:
    return path.relative_to(ROOT).as_posix()


@pytest.mark.parametrize("path", MODULES, ids=name)
def test_files_and_functions_keep_to_their_budgets(path: Path) -> None:
    source = path.read_text(encoding="utf-8")
    lines = len(source.splitlines())
    assert lines <= (200 if path.parent.name == "cli" else 400)
    assert path.name != "pipeline.py" or lines <= 70
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.FunctionDef):
            assert (node.end_lineno or 0) - node.lineno < 60, f"{node.name} is too long"


@pytest.mark.parametrize("path", [p for p in MODULES if p.relative_to(PACKAGE).parts[0] in CORE], ids=name)
def test_the_core_neither_opens_nor_prints(path: Path) -> None:
    calls = [node for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if isinstance(node, ast.Call)]
    assert not {call.func.id for call in calls if isinstance(call.func, ast.Name)} & {"open", "print", "input"}


@pytest.mark.parametrize("path", MODULES, ids=name)
def test_unit_factors_stand_in_lengths_only(path: Path) -> None:
    if path.name != "lengths.py":
        assert not re.search(r"25\.4|304\.8|25_?400_?000|396_?875", path.read_text(encoding="utf-8"))


def test_the_top_level_holds_what_was_agreed() -> None:
    kept = {"README.md", "DEVELOPERS.md", "pyproject.toml", "planner", "tests", "migrations", "sample_projects"}
    listed = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=False).stdout
    top = {line.split("/")[0] for line in listed.splitlines()}
    assert {entry for entry in top if not entry.startswith((".", "LICENSE"))} <= kept


def test_the_command_line_starts_without_the_heavy_libraries() -> None:
    code = f"import sys, planner.cli.main; print({HEAVY!r} & set(sys.modules))"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "set()"


def test_importing_every_module_says_nothing_and_leaves_nothing(tmp_path: Path) -> None:
    names = [".".join(p.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__") for p in MODULES]
    code = "import importlib\nfor n in %r: importlib.import_module(n)" % [n for n in names if "__main__" not in n]
    done = subprocess.run([sys.executable, "-c", code], cwd=tmp_path, capture_output=True, text=True, check=True)
    assert done.stdout == done.stderr == ""
    assert list(tmp_path.iterdir()) == []
