"""How good cutting plans are, and how soon: against published values, and against triplets whose optimum is known.

Run it as ``python tests/benchmarks/cutting.py DIRECTORY [gcut|furniture|triplets ...] [--seconds S] [--wall]``. The
directory holds ``known_values.csv``, ``2d/`` (published sets: ``gcut1d`` to ``gcut12d`` of Cintra, Miyazawa,
Wakabayashi and Xavier 2008) and ``furniture/``. Triplets are made here as by Falkenauer 1996: three lengths that fill a
stock length of 1000 exactly, so n of them need n / 3 and no less. Nothing is asserted: times belong to a
machine. Seconds are of this process's own work unless ``--wall`` is given, so that a busy machine counts for less.
"""

from __future__ import annotations

import argparse
import csv
import json
import os
import random
import sys
import time
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from planner.domain.stock import SawWay
from planner.lengths import Nm
from planner.stock.cutting import cut
from planner.stock.pieces import Answer, Board, Job, Part, Saw, Wish

UNIT = 1_000_000
TRIPLETS, BINS, STOCK = 20, 40, 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A job and what is known of it."""

    name: str
    job: Job
    known: float | None
    proven_bound: float | None
    seconds: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """An answer and when it came."""

    at: float
    answer: Answer


def part(name: str, length: int, width: int, count: int, *, may_turn: bool) -> Part:
    """Equal parts of the benchmark."""
    marks = tuple(f"{name}-{number}" for number in range(1, count + 1))
    return Part(marks=marks, length_nm=Nm(length * UNIT), width_nm=Nm(width * UNIT), may_turn=may_turn)


def rows(path: Path) -> list[dict[str, str]]:
    """Lines of a table by its headings."""
    with path.open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def gcut(where: Path, seconds: float) -> Iterator[Case]:
    """Two stages, strips along the sheet first, several sheets without limit, least area; with and without turning."""
    for known in rows(where / "known_values.csv"):
        if "gcut" in known["instance"]:
            turn = "with rotation" in known["variant"]
            items, bins = (rows(where / f"{known['instance']}_{kind}.csv") for kind in ("items", "bins"))
            parts = tuple(
                part(f"p{each['ID']}", int(each["WIDTH"]), int(each["HEIGHT"]), int(each["COPIES"]), may_turn=turn)
                for each in items
            )
            boards = tuple(
                Board(
                    mark=f"sheet {each['ID']}",
                    length_nm=Nm(int(each["WIDTH"]) * UNIT),
                    width_nm=Nm(int(each["HEIGHT"]) * UNIT),
                    cost=int(each["COST"]),
                )
                for each in bins
            )
            yield Case(
                name=known["instance"].split("__")[1] + (" turned" if turn else ""),
                job=Job(parts=parts, boards=boards, saw=kerf(0), wish=Wish(stages=2, first=SawWay.RIP)),
                known=float(known["best_known"]),
                proven_bound=float(known["lower_bound"]),
                seconds=seconds,
            )


def kerf(size: int) -> Saw:
    """The same kerf both ways."""
    return Saw(rip_nm=Nm(size * UNIT), crosscut_nm=Nm(size * UNIT))


STUDY_30_S = {
    "solid_S1": 13424, "solid_M1": 19824, "solid_L1": 39531, "sheet_S1": 17500, "sheet_M1": 42200, "sheet_L1": 66600,
}  # fmt: skip
"""What the study's two-stage prototype found in 30 seconds."""


def furniture(where: Path, seconds: float) -> Iterator[Case]:
    """Limited boards with prices; two stages as in the study, then three."""
    for stages in (2, 3):
        for path in sorted((where / "furniture").glob("*.json")):
            said = json.loads(path.read_text(encoding="utf-8"))
            parts = tuple(
                part(f"p{number}", length, width, count, may_turn=turn)
                for number, (length, width, count, turn) in enumerate(said["items"])
            )
            boards = tuple(
                Board(mark=f"b{k}", length_nm=Nm(length * UNIT), width_nm=Nm(width * UNIT), cost=cost, count=count)
                for k, (length, width, cost, count) in enumerate(said["boards"])
            )
            yield Case(
                name=f"{path.stem}, {stages} stages",
                job=Job(parts=parts, boards=boards, saw=kerf(said["kerf"]), wish=Wish(stages=stages)),
                known=STUDY_30_S[path.stem],
                proven_bound=None,
                seconds=seconds,
            )


def triplets(_: Path, seconds: float) -> Iterator[Case]:
    """One length of stock, each three pieces fill one exactly."""
    for seed in range(TRIPLETS):
        chance = random.Random(seed)  # noqa: S311 - no secret
        lengths = [length for _ in range(BINS) for length in triplet(chance)]
        yield Case(
            name=f"triplets {seed}",
            job=Job(
                parts=tuple(part(f"p{k}", length, 50, 1, may_turn=False) for k, length in enumerate(lengths)),
                boards=(Board(mark="stock", length_nm=Nm(STOCK * UNIT), width_nm=Nm(50 * UNIT), cost=1),),
                saw=kerf(0),
                wish=Wish(stages=2),
            ),
            known=BINS,
            proven_bound=BINS,
            seconds=seconds,
        )


def triplet(chance: random.Random) -> tuple[int, int, int]:
    """Falkenauer 1996: the first from 380 to 490, the second from 250 to half the rest, the third fills up."""
    first = chance.randint(380, 490)
    second = chance.randint(250, (STOCK - first) // 2)
    return first, second, STOCK - first - second


SETS: dict[str, tuple[Callable[[Path, float], Iterable[Case]], float]] = {
    "gcut": (gcut, 5.0),
    "furniture": (furniture, 30.0),
    "triplets": (triplets, 5.0),
}


def solved(case: Case, clock: Callable[[], float]) -> list[Told]:
    """All answers within the time."""
    start = clock()
    answers = cut(case.job, keep_going=lambda: clock() - start < case.seconds)
    told = [Told(at=clock() - start, answer=answer) for answer in answers]
    return [*told, replace(told[-1], at=clock() - start)]


def by(told: list[Told], seconds: float) -> str:
    """Cost of the best plan that was there by a time."""
    costs = [each.answer.plan.cost for each in told if each.at <= seconds and not each.answer.plan.missing]
    return str(min(costs)) if costs else "-"


def line(case: Case, told: list[Told]) -> str:
    """One case as a line of the table."""
    last = told[-1].answer
    cost = last.plan.cost
    deviation = f"{100 * (cost / case.known - 1):+.2f} %" if case.known else ""
    below = " BELOW A PROVEN BOUND" if case.proven_bound and cost < case.proven_bound else ""
    wrong = " BOUND ABOVE WHAT IS KNOWN" if case.known and case.proven_bound and last.bound > case.known else ""
    gap = "missing" if last.gap is None else f"{100 * float(last.gap):.2f} %"
    proven = f"{'proven' if last.proven else ''} {told[-1].at:.1f} s"
    figures = (f"{told[0].at:.2f}", by(told, 1), by(told, 5), str(cost), str(last.bound), gap, deviation, proven)
    return " | ".join((case.name, *figures)) + below + wrong


def main() -> None:
    """Print the table."""
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("directory", type=Path)
    options.add_argument("sets", nargs="*", default=list(SETS))
    options.add_argument("--seconds", type=float)
    options.add_argument("--only", default="", help="cases with this in their name")
    options.add_argument("--wall", action="store_true")
    asked = options.parse_args()
    clock = time.perf_counter if asked.wall else time.process_time
    sys.stdout.write(f"{os.cpu_count()} cores; load {os.getloadavg()[0]:.1f}\n")
    sys.stdout.write("case | first at s | 1 s | 5 s | end | bound | gap | to known | time\n")
    for name in asked.sets:
        make, seconds = SETS[name]
        for case in make(asked.directory, asked.seconds or seconds):
            if asked.only in case.name:
                sys.stdout.write(line(case, solved(case, clock)) + "\n")
                sys.stdout.flush()


if __name__ == "__main__":
    main()
