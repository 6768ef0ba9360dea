"""A written project reads back to exactly the same project, and the file is short."""

from __future__ import annotations

import tomllib
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given

from planner.domain.project import Project
from planner.domain.space import Division
from planner.domain.words import RingKind
from planner.errors import InputError
from planner.intake.project_file import read_project
from planner.intake.write_file import write_project
from planner.lengths import Nm
from tests.intake.bad_files import GOOD
from tests.pieces import with_drawer
from tests.strategies import projects

SAMPLES = sorted((Path(__file__).parents[2] / "sample_projects").glob("*.toml"))
each_sample = pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)


def sample(name: str) -> Project:
    (path,) = [path for path in SAMPLES if path.stem == name]
    return read_project(path.read_text(encoding="utf-8"), path.name)


def written(project: Project) -> dict[str, Any]:
    return tomllib.loads(write_project(project))


@given(projects())
def test_what_is_written_reads_back_the_same(project: Project) -> None:
    text = write_project(project)
    assert read_project(text, "again.toml") == project
    assert write_project(read_project(text, "again.toml")) == text


@each_sample
def test_samples_are_written_no_longer_than_a_person_wrote_them(path: Path) -> None:
    """A person's file has comments; without them it may be longer only by the pin boards, which are always named.

    A nest is written box by box, since each of its boxes is one of its own.
    """
    text = path.read_text(encoding="utf-8")
    lines = [line for line in text.splitlines() if line.strip() and not line.startswith("#")]
    ours = write_project(read_project(text, path.name))
    assert read_project(ours, "again") == read_project(text, path.name)
    if "nest =" in text:
        return
    listed = ours.count("    ")  # lists take a line for each entry
    assert len([line for line in ours.splitlines() if line.strip()]) <= len(lines) + 2 + 2 * listed


def test_the_file_of_a_chest_says_only_what_is_not_usual() -> None:
    """Written by hand from the sample, leaving out what FORMAT calls the default."""
    assert written(sample("six_drawer_chest")) == {
        "format": 1,
        "project": {"name": "Landing chest", "units": "in"},
        "material": {
            "ash": {"species": "Ash, white"},
            "poplar": {"species": "Yellow-poplar"},  # which is known to cut softly
            "birch plywood": {"species": "Plywood, birch"},
        },
        "sled": {
            "bench": {
                "slope": "1:8",
                "bit": "1/2 in",
                "greatest_bit_height": "1 1/4 in",
                "greatest_width": "20 in",
                "greatest_upright": "30 in",
            }
        },
        "pins": {"tail": "1 1/8 in"},
        "carcase": [
            {
                "mark": "C",
                "title": "Landing chest",
                "width": "22 in",
                "height": "36 in",
                "depth": "16 in",
                "material": "ash",
                "thickness": "3/4 in",
                "pins_on": "top and bottom",
                "use": {"fixed_to": "wall", "drawers": "clothes"},
                "column": [{"drawers": 6, "heights": "graduated", "step": "1/2 in"}],
                "back": {"material": "birch plywood", "thickness": "1/4 in"},
                "rails": {"thickness": "3/4 in", "width": "2 1/2 in"},
                "runners": {"material": "poplar"},
                "drawer": {
                    "material": "poplar",
                    "front_material": "ash",
                    "front_thickness": "3/4 in",
                    "side_thickness": "1/2 in",
                    "back_thickness": "1/2 in",
                    "pins_on": "front and back",
                    "bottom": {"material": "birch plywood", "thickness": "1/4 in"},
                },
            }
        ],
    }


def test_a_batch_is_written_as_one_box_with_a_count() -> None:
    (box,) = written(sample("twelve_boxes"))["box"]
    assert (box["mark"], box["count"], box["sizes"]) == ("K", 12, "inside")


def test_a_drawer_that_differs_says_only_how() -> None:
    (carcase,) = written(sample("bench_cabinet"))["carcase"]
    assert carcase["except"] == {"D103": {"bottom": {"thickness": "9 mm"}}}
    assert carcase["partitions"] == {}


def test_what_most_drawers_share_is_said_once_whoever_comes_first() -> None:
    text = GOOD.replace("[carcase.except.E3]", "[carcase.except.E1]").replace(
        "[carcase.except.E3.", "[carcase.except.E1."
    )
    (carcase,) = written(read_project(text, "x"))["carcase"]
    assert carcase["drawer"]["side_thickness"] == "1/2 in"
    assert carcase["except"]["E1"] == {"side_thickness": "5/8 in", "bottom": {"thickness": "3/8 in"}}


def test_a_key_that_one_drawer_leaves_out_is_not_said_for_all() -> None:
    """A bottom's height can't be unsaid for one drawer, so the other six each say it."""
    text = GOOD.replace("[carcase.drawer.bottom]\n", '[carcase.drawer.bottom]\nup = "1/2 in"\n')
    project = read_project(text, "x")
    drawer = next(project.drawers())
    assert drawer.bottom is not None
    changed = with_drawer(project, replace(drawer, bottom=replace(drawer.bottom, up_nm=None)))
    (said,) = written(changed)["carcase"]
    assert "up" not in said["drawer"]["bottom"]
    assert sorted(mark for mark, changes in said["except"].items() if changes["bottom"].get("up") == "1/2 in") == [
        "D201", "D202", "D203", "D204", "E2", "E3",
    ]  # fmt: skip


def test_a_drawer_without_bottom_among_others_is_kept_without() -> None:
    project = read_project(GOOD, "x")
    changed = with_drawer(project, replace(next(project.drawers()), bottom=None))
    assert read_project(write_project(changed), "again") == changed


def test_names_are_quoted_so_that_nothing_in_them_counts_as_toml() -> None:
    name = '=a.b "c" [d] \\ #e\'f'
    project = sample("twelve_boxes")
    named = replace(project, name=name)
    assert written(named)["project"]["name"] == name


# --- what no file can describe --------------------------------------------------------------------------------


def refused(project: Project) -> str:
    with pytest.raises(InputError) as error:
        write_project(project)
    return str(error.value)


def test_boxes_of_a_batch_that_are_not_alike_are_refused() -> None:
    project = sample("twelve_boxes")
    *others, last = project.boxes
    wider = replace(last, width_nm=Nm(last.width_nm + 1))
    message = refused(replace(project, boxes=(*others, wider)))
    assert message.startswith("K12: ")
    assert "must be alike" in message


@pytest.mark.parametrize("kept", [slice(1, None), slice(None, None, -1)], ids=["first missing", "backwards"])
def test_batches_not_numbered_from_one_are_refused(kept: slice) -> None:
    project = sample("twelve_boxes")
    assert "numbered from 1" in refused(replace(project, boxes=project.boxes[kept]))


def test_a_box_alone_in_a_batch_of_another_name_is_refused() -> None:
    project = sample("twelve_boxes")
    assert refused(replace(project, boxes=project.boxes[:1])).startswith("K1: ")


def test_unusual_corners_are_refused() -> None:
    project = sample("twelve_boxes")
    box = project.boxes[0]
    first, *others = box.ring.corners
    ring = replace(box.ring, corners=(replace(first, mark="K1-J9"), *others))  # type: ignore[arg-type]
    assert refused(replace(project, boxes=(replace(box, ring=ring), *project.boxes[1:]))).startswith("K1: ")


def with_first_column(project: Project, **changes: Any) -> Project:
    """The project with something else in the tiers of its first column."""
    (carcase,) = project.carcases
    root = carcase.inside.holds
    assert isinstance(root, Division)
    first, *others = root.spaces
    assert isinstance(first.holds, Division)
    changed = replace(first, holds=replace(first.holds, **changes))
    inside = replace(carcase.inside, holds=replace(root, spaces=(changed, *others)))
    return replace(project, carcases=(replace(carcase, inside=inside),))


def test_a_ratio_that_has_no_end_is_refused() -> None:
    project = sample("bench_cabinet")
    assert "column[1].ratio" in refused(with_first_column(project, ratio=Fraction(4, 3)))


@pytest.mark.parametrize("name", ["", " x", "a\x1bb", "x" * 81])
def test_a_name_that_no_file_may_have_is_refused(name: str) -> None:
    assert "project.name" in refused(replace(sample("twelve_boxes"), name=name))


def test_a_project_that_does_not_fit_together_is_refused() -> None:
    project = sample("six_drawer_chest")
    assert "ash" in refused(replace(project, materials=project.materials[1:]))
    assert "nothing to make" in refused(replace(project, carcases=()))


def test_every_ring_kind_can_be_written() -> None:
    kinds = {ring.kind for name in ("six_drawer_chest", "twelve_boxes") for ring in sample(name).rings()}
    assert kinds == set(RingKind)
