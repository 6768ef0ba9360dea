"""Spacings, fronts and rates are written where they differ, and nowhere else."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from planner.domain.drawer import AppliedFront
from planner.domain.project import Project
from planner.domain.ring import Stuff, with_half_blind_front
from planner.domain.words import JointKind, Spread
from planner.errors import InputError
from planner.intake.project_file import read_project
from planner.intake.short_lists import with_short_lists
from planner.intake.write_file import write_project
from planner.lengths import Nm
from tests.intake.bad_files import GOOD
from tests.intake.files import chest
from tests.pieces import with_drawer

SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.toml"))


def written(project: Project) -> dict[str, Any]:
    return tomllib.loads(write_project(project))


def carcase(*lines: str) -> dict[str, Any]:
    """The chest with these lines, read and written again."""
    said: dict[str, Any] = written(chest(*lines))["carcase"][0]
    return said


def test_what_most_rings_share_is_said_once_and_the_rest_where_it_differs() -> None:
    said = written(chest("pins.tails = 7", "[pins]", 'spread = "middle"', "ratio = 1.5"))
    assert said["pins"] == {"spread": "middle", "ratio": 1.5}
    assert said["carcase"][0]["pins"] == {"tails": 7}
    assert "pins" not in said["carcase"][0]["drawer"]


def test_a_spread_is_written_with_its_ratio_though_only_one_of_them_differs() -> None:
    said = written(chest('pins = { spread = "middle", ratio = 2 }', "[pins]", 'spread = "middle"', "ratio = 1.5"))
    assert said["carcase"][0]["pins"] == {"spread": "middle", "ratio": 2}


def test_the_spread_of_some_is_not_said_for_all() -> None:
    """Of four rings two are graduated: without a ratio for the others it can't stand under [pins]."""
    said = written(
        chest('drawer.pins = { spread = "edge", ratio = 2 }', 'except.D3.pins.spread = "even"', "pins.pin = 0.125")
    )
    assert "pins" not in said
    (chest_said,) = said["carcase"]
    assert "pins" not in chest_said["drawer"]
    assert [chest_said["except"][mark]["pins"] for mark in ("D1", "D2")] == [{"spread": "edge", "ratio": 2}] * 2


def test_listed_pins_are_written_without_a_count() -> None:
    said = carcase('pins.places = [[1, 2], ["3 in", "3 1/2 in"]]')
    assert said["pins"] == {"places": [["1 in", "2 in"], ["3 in", "3 1/2 in"]]}


def test_a_joint_is_written_only_if_its_spacing_is_its_own_and_then_what_differs() -> None:
    said = carcase("joint.J2.tails = 7", "drawer.joint.J1 = {}", "except.D2.joint.J4.places = [[1, 2]]")
    assert said["joint"] == {"J2": {"tails": 7}}
    assert said["except"]["D2"]["joint"] == {"J1": {}, "J4": {"places": [["1 in", "2 in"]]}}
    assert said["except"]["D1"] == {"joint": {"J1": {}}}


def test_joints_that_all_drawers_share_are_said_once() -> None:
    said = carcase("drawer.joint.J1.tails = 3", 'except.D2.joint.J1.pin = "1/8 in"')
    assert said["drawer"]["joint"] == {"J1": {"tails": 3}}
    assert said["except"] == {"D2": {"joint": {"J1": {"pin": "1/8 in"}}}}


def test_a_joint_that_is_shared_out_in_a_ring_of_listed_pins_says_how() -> None:
    said = carcase("pins.places = [[1, 2]]", "joint.J3.tails = 2")
    assert said["joint"] == {"J3": {"tails": 2, "spread": "even"}}


def test_fronts_are_said_for_all_drawers_or_for_those_that_differ() -> None:
    lines = ['drawer.front_joint = "half-blind"']
    assert carcase(*lines)["drawer"]["front_joint"] == "half-blind"
    assert "lap" not in carcase(*lines)["drawer"]
    mixed = carcase(*lines, 'except.D2.front_joint = "through"', 'except.D3.lap = "3/8 in"')
    assert mixed["except"] == {
        "D1": {"front_joint": "half-blind"},
        "D3": {"front_joint": "half-blind", "lap": "3/8 in"},
    }


def test_applied_fronts_are_said_for_all_drawers_and_what_differs_in_one() -> None:
    said = carcase(
        'drawer.applied_front = { material = "oak", thickness = "5/8 in" }', "except.D1.applied_front.gap = 0"
    )
    assert said["drawer"]["applied_front"] == {"material": "oak", "thickness": "5/8 in"}
    assert said["except"] == {"D1": {"applied_front": {"gap": "0 in"}}}


def test_only_unusual_rates_are_written() -> None:
    assert "rates" not in written(chest())
    assert written(chest("[rates]", "pass = 8", "turning = 10"))["rates"] == {"pass": 8}


# --- lists on one line -----------------------------------------------------------------------------------------


def test_lists_are_written_on_one_line_as_long_as_they_fit() -> None:
    lines = write_project(read_project(GOOD, "x")).splitlines()
    assert 'places = [["7/8 in", "1 1/8 in"], ["2 in", "2 1/2 in"]]' in lines
    assert 'heights = ["5 in", "6 in", "rest"]' in lines
    many = ", ".join(f"[{place}, {place}.25]" for place in range(1, 20))
    text = write_project(chest(f"pins.places = [{many}]"))
    assert '\n    ["19 in", "19 1/4 in"],\n]' in text
    assert max(map(len, text.splitlines())) < 100


@pytest.mark.parametrize("text", [GOOD, *(path.read_text(encoding="utf-8") for path in SAMPLES)])
def test_making_lists_short_changes_nothing_that_is_said(text: str) -> None:
    import tomli_w

    said = tomllib.loads(text)
    assert tomllib.loads(with_short_lists(tomli_w.dumps(said))) == said


def test_a_text_that_looks_like_a_list_stays_a_text() -> None:
    import tomli_w

    said = {"a": "[", "b": ["x = [", "]", "a, [", "\n[\n"], "c [\n": {"d": ["[", "["]}}
    assert tomllib.loads(with_short_lists(tomli_w.dumps(said))) == said


# --- what no file can describe ---------------------------------------------------------------------------------


def refused(project: Project) -> str:
    with pytest.raises(InputError) as error:
        write_project(project)
    return str(error.value)


def with_first_drawer(project: Project, **changes: Any) -> Project:
    return with_drawer(project, replace(next(project.drawers()), **changes))


def test_a_front_that_is_half_blind_at_one_end_only_is_refused() -> None:
    project = chest()
    ring = next(project.drawers()).ring
    first, *others = ring.corners
    one = replace(ring, corners=(replace(first, kind=JointKind.HALF_BLIND, lap_nm=Nm(6_000_000)), *others))  # type: ignore[arg-type]
    assert "half-blind, at both ends" in refused(with_first_drawer(project, ring=one))


def test_a_half_blind_carcase_is_refused() -> None:
    project = chest()
    (cabinet,) = project.carcases
    blind = replace(cabinet, ring=with_half_blind_front(cabinet.ring, Nm(6_000_000)))
    assert "only the front of a drawer" in refused(replace(project, carcases=(blind,)))


def test_a_half_blind_front_behind_an_applied_one_is_refused() -> None:
    project = chest('drawer.front_joint = "half-blind"')
    front = AppliedFront(stuff=Stuff(material="oak", thickness_nm=Nm(10_000_000)), gap_nm=Nm(0))
    assert "both asked for" in refused(with_first_drawer(project, applied_front=front))


def test_a_lap_without_a_half_blind_joint_is_refused() -> None:
    project = chest()
    ring = next(project.drawers()).ring
    first, *others = ring.corners
    lapped = replace(ring, corners=(replace(first, lap_nm=Nm(6_000_000)), *others))  # type: ignore[arg-type]
    assert "a lap belongs to a half-blind joint" in refused(with_first_drawer(project, ring=lapped))


def test_listed_pins_with_a_count_beside_them_are_refused() -> None:
    project = chest("pins.places = [[1, 2]]")
    (cabinet,) = project.carcases
    assert cabinet.ring.spacing.spread is Spread.LISTED
    counted = replace(cabinet.ring, spacing=replace(cabinet.ring.spacing, tails=5))
    assert refused(replace(project, carcases=(replace(cabinet, ring=counted),))).startswith("C: ")
