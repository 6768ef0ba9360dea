"""How long the whole program takes, as a ratio to a bare Python that only imports the same libraries.

Run it as ``python tests/benchmarks/ratios.py [runs]``. Nothing is asserted: times belong to a machine, ratios to a
reader. The commands to compare take turns, so that a busy machine slows all of them alike.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from time import perf_counter

ROOT = Path(__file__).resolve().parents[2]
CHEST = ROOT / "sample_projects" / "six_drawer_chest.toml"
LIBRARIES = "typer rich pint openpyxl sqlmodel sqlalchemy alembic pydantic platformdirs tomli_w"
RUNS = 15
ORDERING_MAY_TAKE_S = 0.5
HELP_MAY_TAKE, PREPARE_MAY_TAKE = 3.0, 2.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Timed:
    """A command to time.

    Attributes:
        before: what to do before each run, not timed.
    """

    name: str
    command: Sequence[str]
    before: Callable[[], object] = lambda: None


def bare(libraries: str) -> Timed:
    """A Python that only imports these."""
    return Timed(
        name=f"import {', '.join(libraries.split())}",
        command=(sys.executable, "-c", f"import {', '.join(libraries.split())}"),
    )


def medians(timed: Sequence[Timed], runs: int) -> dict[str, float]:
    """Median seconds of each command, by name, after one run that isn't counted."""
    seconds: dict[str, list[float]] = {each.name: [] for each in timed}
    for run in range(runs + 1):
        for each in timed:
            each.before()
            start = perf_counter()
            subprocess.run(each.command, check=True, stdout=subprocess.DEVNULL, env=os.environ | {"NO_COLOR": "1"})
            if run:
                seconds[each.name].append(perf_counter() - start)
    return {name: median(found) for name, found in seconds.items()}


def libraries_used_by(command: Sequence[str]) -> str:
    """Which of our libraries a command of the planner does load."""
    code = (
        f"import sys\nsys.argv[1:] = {list(command)!r}\nfrom planner.cli.main import run\n"
        f"try: run()\nexcept SystemExit: pass\nprint(*(n for n in {LIBRARIES!r}.split() if n in sys.modules))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return done.stdout.splitlines()[-1]


def told(figures: Mapping[str, float], measured: str, base: str, allowed: float) -> str:
    """One ratio in words."""
    ratio = figures[measured] / figures[base]
    return (
        f"{measured}: {figures[measured] * 1000:.0f} ms\n"
        f"  {base}: {figures[base] * 1000:.0f} ms\n"
        f"  ratio {ratio:.2f} (at most {allowed} wanted)\n"
    )


ORDERING = """
from time import perf_counter
from planner.pipeline import plan
from planner.plan.sled import sled_plan
from tests.pieces import six_drawers
from tests.present.pieces import chest, thick_box
batch = [(each.project, each.joints) for each in map(plan, (chest(24), six_drawers(), thick_box()))]
start = perf_counter()
sled = sled_plan(batch)
print(perf_counter() - start, len(sled.settings), sum(len(joints) for _, joints in batch))
"""
"""A chest of 24 drawers and two more projects ordered at the sled, in a process of its own, planning not counted."""


def ordering_told(runs: int) -> str:
    """How long the ordering takes: the median of several processes."""
    command = [sys.executable, "-c", ORDERING]
    said = [
        subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout.split()
        for _ in range(runs)
    ]
    seconds = median(float(each[0]) for each in said)
    _, settings, joints = said[0]
    return (
        f"{joints} joints of three projects, 24 drawers in one, put into {settings} sled settings: "
        f"{seconds * 1000:.0f} ms (at most {ORDERING_MAY_TAKE_S * 1000:.0f} wanted)\n"
    )


def main(runs: int) -> None:
    """Measure everything and print the ratios."""
    planner = str(Path(sys.executable).with_name("planner"))
    with tempfile.TemporaryDirectory() as scratch:
        store = Path(scratch) / "planner.db"
        prepare = ("prepare", str(CHEST), "--into", f"{scratch}/out", "--force", "--store", str(store))
        fresh_libraries = bare(libraries_used_by(prepare))
        warm_libraries = bare(libraries_used_by(prepare))
        figures = medians(
            (
                bare("typer"),
                Timed(name="planner --help", command=(planner, "--help")),
                warm_libraries,
                Timed(name="planner prepare, store there", command=(planner, *prepare)),
                fresh_libraries,
                Timed(name="planner prepare, new store", command=(planner, *prepare), before=store.unlink),
            ),
            runs,
        )
    sys.stdout.write(told(figures, "planner --help", "import typer", HELP_MAY_TAKE))
    sys.stdout.write(told(figures, "planner prepare, store there", warm_libraries.name, PREPARE_MAY_TAKE))
    sys.stdout.write(told(figures, "planner prepare, new store", fresh_libraries.name, PREPARE_MAY_TAKE))
    sys.stdout.write(ordering_told(runs))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else RUNS)
