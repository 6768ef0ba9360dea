"""What a project file means, and the refusal of what is no project file at all."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction
from pathlib import Path

import pytest

from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.project import Project, problems
from planner.domain.space import Division, Space
from planner.domain.words import Hardness, HeightRule, MaterialKind, PinPair, Role, SizesOver
from planner.errors import InputError, Problem
from planner.intake import form, project_file
from planner.intake.project_file import GREATEST_LINE, GREATEST_RINGS, GREATEST_SIZE, read_project
from planner.lengths import Grid, Unit
from tests.intake.bad_files import GOOD

SAMPLES = Path(__file__).parents[2] / "sample_projects"
IN = 25_400_000
MM = 1_000_000

LEAST = """\
format = 1
[project]
name = "Box"
units = "UNIT"
[material.oak]
[sled.bench]
slope = "1:8"
bit = "1/2 in"
greatest_bit_height = "1 in"
greatest_width = "12 in"
greatest_upright = "24 in"
[[box]]
mark = "K"
length = "12 in"
width = "8 in"
height = "4 in"
material = "oak"
thickness = "THICK"
"""
BOTTOM = '[box.bottom]\nmaterial = "oak"\nthickness = "1/4 in"\n'
CARCASE = """\
[[carcase]]
mark = "C"
width = "30 in"
height = "20 in"
depth = "15 in"
material = "oak"
thickness = "7/8 in"
back = { material = "oak", thickness = "1/4 in" }
rails = { thickness = "3/4 in", width = "2 in" }
partitions = {}
drawer = { material = "oak", front_thickness = "3/4 in", side_thickness = "1/2 in", back_thickness = "5/8 in" }
[[carcase.column]]
drawers = 2
[[carcase.column]]
drawers = 2
"""


def least(unit: Unit = Unit.INCH, thick: str = "1/2 in", more: str = "") -> Project:
    return read_project(LEAST.replace("UNIT", unit).replace("THICK", thick) + more, "least.toml")


def division_of(space: Space) -> Division:
    assert isinstance(space.holds, Division)
    return space.holds


def columns_of(carcase: Carcase) -> tuple[Space, ...]:
    return division_of(carcase.inside).spaces


def marks_by_column(carcase: Carcase) -> list[list[str]]:
    leaves = [[leaf.holds for leaf in column.leaves()] for column in columns_of(carcase)]
    return [[held.ring.mark for held in column if isinstance(held, Drawer)] for column in leaves]


def refused(text: str) -> list[str]:
    with pytest.raises(InputError) as error:
        read_project(text, "bad.toml")
    return [str(problem) for problem in error.value.problems]


# --- usual values (FORMAT of the project file; worked out by hand) ------------------------------------------


def test_what_is_left_out_in_an_inch_project_is_usual() -> None:
    project = least()
    spacing = project.boxes[0].ring.spacing
    assert project.grid is Grid.IN_32
    assert project.proud_nm == 396_875  # 1/64 in
    assert project.height_tolerance_nm == 101_600  # 0.004 in
    assert (spacing.half_pin_nm, spacing.pin_nm) == (IN // 4, IN // 4)
    assert (spacing.tails, spacing.tail_nm, spacing.greatest_tail_nm) == (None, IN, IN * 7 // 4)
    assert project.materials[0].kind is MaterialKind.SOLID
    assert project.materials[0].hardness is Hardness.HARD


def test_what_is_left_out_in_a_metric_project_is_usual() -> None:
    project = least(Unit.MM)
    spacing = project.boxes[0].ring.spacing
    assert project.grid is Grid.MM_TENTH
    assert project.proud_nm == 400_000
    assert project.height_tolerance_nm == 100_000
    assert (spacing.half_pin_nm, spacing.pin_nm) == (6 * MM, 6 * MM)
    assert (spacing.tails, spacing.tail_nm, spacing.greatest_tail_nm) == (None, 25 * MM, 45 * MM)


@pytest.mark.parametrize(
    ("unit", "thick", "depth"),
    [
        (Unit.INCH, "1/2 in", IN // 4),
        (Unit.INCH, "3/8 in", IN * 3 // 16),
        (Unit.INCH, "13/32 in", IN * 13 // 64),
        (Unit.INCH, "25/64 in", IN * 12 // 64),  # half is 12.5/64: rounded down
        (Unit.MM, "12 mm", 6 * MM),
        (Unit.MM, "12.5 mm", 62 * MM // 10),  # half is 6.25 mm
        (Unit.MM, "0.15 mm", 75_000),  # no whole tenth in half of it
    ],
)
def test_a_groove_is_usually_half_the_thickness_deep_rounded_down(unit: Unit, thick: str, depth: int) -> None:
    bottom = least(unit, thick, BOTTOM).boxes[0].bottom
    assert bottom is not None
    assert bottom.groove_depth_nm == depth
    assert bottom.up_nm is None
    assert bottom.play_nm == (IN // 32 if unit is Unit.INCH else MM)


def test_a_carcase_has_usual_depths_clearances_and_marks() -> None:
    (carcase,) = least(more=CARCASE).carcases
    assert carcase.back is not None
    assert carcase.back.rabbet_depth_nm == IN * 28 // 64  # half of 7/8
    assert carcase.rails is not None
    assert carcase.rails.stuff.material == "oak"
    assert carcase.rails.housing_depth_nm == IN * 18 // 64  # a third of 56/64 is 18 2/3
    assert carcase.partitions is not None
    assert carcase.partitions.stuff == carcase.ring.boards[0].stuff
    assert marks_by_column(carcase) == [["D101", "D102"], ["D201", "D202"]]
    drawer = next(carcase.drawers())
    clearances = drawer.side_clearance_nm, drawer.top_clearance_nm, drawer.back_clearance_nm
    assert clearances == (IN // 16, IN // 8, IN // 2)
    assert drawer.ring.pin_pair is PinPair.FIRST_AND_THIRD
    assert drawer.bottom is None


def test_drawers_of_the_only_column_are_numbered_from_one() -> None:
    (carcase,) = least(more=CARCASE.removesuffix("[[carcase.column]]\ndrawers = 2\n")).carcases
    assert marks_by_column(carcase) == [["D1", "D2"]]


def test_columns_are_counted_over_all_carcases() -> None:
    second = CARCASE.replace('"C"', '"E"')
    marks = [drawer.ring.mark for drawer in least(more=CARCASE + second).drawers()]
    assert marks == ["D101", "D102", "D201", "D202", "D301", "D302", "D401", "D402"]


def test_pins_are_usually_on_the_shorter_pair_of_boards() -> None:
    """The box is 12 × 8, so its sides are shorter; the carcase 30 × 20, so its sides are."""
    project = least(more=CARCASE)
    assert project.boxes[0].ring.pin_pair is PinPair.SECOND_AND_FOURTH
    assert project.carcases[0].ring.pin_pair is PinPair.SECOND_AND_FOURTH
    tall = least(more=CARCASE.replace("20 in", "40 in"))
    assert tall.carcases[0].ring.pin_pair is PinPair.FIRST_AND_THIRD


def test_the_bare_numbers_of_a_file_count_in_its_unit() -> None:
    assert least(Unit.MM, more=BOTTOM + "up = 8\n").boxes[0].bottom.up_nm == 8 * MM  # type: ignore[union-attr]
    assert least(Unit.INCH, more=BOTTOM + "up = 0.5\n").boxes[0].bottom.up_nm == IN // 2  # type: ignore[union-attr]


# --- what is said --------------------------------------------------------------------------------------------


def test_a_batch_makes_boxes_that_are_alike_but_for_their_marks() -> None:
    boxes = read_project(GOOD, "good.toml").boxes
    assert [box.ring.mark for box in boxes] == ["T1", "T2", "T3"]
    assert {box.batch for box in boxes} == {"T"}
    assert len({(box.title, box.length_nm, box.width_nm, box.height_nm, box.bottom) for box in boxes}) == 1


def test_pins_are_said_over_key_by_key() -> None:
    """[pins] sets the half-pin, [box.pins] the pin and the count; the rest is usual."""
    box, *_ = read_project(GOOD, "good.toml").boxes
    spacing = box.ring.spacing
    assert (spacing.half_pin_nm, spacing.pin_nm, spacing.tails, spacing.tail_nm) == (IN // 4, IN // 8, 4, IN)


def test_pins_of_a_carcase_are_not_those_of_its_drawers() -> None:
    (carcase,) = least(more=CARCASE.replace("partitions", "pins = { tails = 9 }\npartitions")).carcases
    assert carcase.ring.spacing.tails == 9
    assert next(carcase.drawers()).ring.spacing.tails is None


def test_one_ring_may_leave_the_count_of_tails_to_the_planner_again() -> None:
    text = LEAST.replace("UNIT", "in").replace("THICK", "1/2 in").replace("[[box]]", "[pins]\ntails = 4\n[[box]]")
    assert read_project(text, "x").boxes[0].ring.spacing.tails == 4
    assert read_project(text + '[box.pins]\ntails = "choose"\n', "x").boxes[0].ring.spacing.tails is None


def test_what_is_said_of_one_drawer_is_laid_over_what_is_said_of_all() -> None:
    drawers = {drawer.ring.mark: drawer for drawer in read_project(GOOD, "good.toml").drawers()}
    others, one = drawers["E2"], drawers["E3"]
    assert others.ring.board(Role.LEFT).stuff.thickness_nm == IN // 2
    assert one.ring.board(Role.LEFT).stuff.thickness_nm == IN * 5 // 8
    assert one.ring.board(Role.FRONT).stuff == others.ring.board(Role.FRONT).stuff
    assert others.bottom is not None
    assert one.bottom is not None
    assert one.bottom.stuff.thickness_nm == IN * 3 // 8
    assert one.bottom.stuff.material == others.bottom.stuff.material == "fir plywood"


def test_the_groove_of_one_drawer_follows_its_own_boards() -> None:
    thin = CARCASE + "[carcase.except.D102]\nback_thickness = 0.25\nbottom = { material = 'oak', thickness = 0.25 }\n"
    drawers = {drawer.ring.mark: drawer for drawer in least(more=thin).drawers()}
    assert drawers["D101"].bottom is None
    assert drawers["D102"].bottom is not None
    assert drawers["D102"].bottom.groove_depth_nm == IN // 8


def test_heights_are_read_as_they_are_said() -> None:
    left, right = columns_of(read_project(GOOD, "good.toml").carcases[0])
    heights, graduated = division_of(left), division_of(right)
    assert heights.rule is HeightRule.LISTED
    assert [space.size_nm for space in heights.spaces] == [5 * IN, 6 * IN, None]
    assert (graduated.rule, graduated.step_nm, graduated.ratio) == (HeightRule.STEP, IN * 3 // 4, None)
    assert (left.size_nm, right.size_nm) == (18 * IN, None)


def test_a_ratio_is_exact() -> None:
    text = GOOD.replace('step = "3/4 in"', "ratio = 1.15")
    tiers = division_of(columns_of(read_project(text, "x").carcases[0])[1])
    assert (tiers.rule, tiers.ratio, tiers.step_nm) == (HeightRule.RATIO, Fraction(23, 20), None)


def test_each_ring_has_the_sled_it_names_or_the_projects() -> None:
    project = read_project(GOOD, "good.toml")
    assert {ring.mark: ring.sled for ring in project.rings()} == {
        **dict.fromkeys(["T1", "T2", "T3"], "small"),
        **dict.fromkeys(["C", "E1", "E2", "E3", "D201", "D202", "D203", "D204"], "bench"),
    }


def test_inside_sizes_are_kept_as_inside_sizes() -> None:
    text = GOOD.replace('sizes = "outside"', 'sizes = "inside"')
    assert read_project(text, "x").boxes[0].sizes_over is SizesOver.INSIDE


# --- samples -------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "boxes", "carcases", "drawers"),
    [("six_drawer_chest", 0, 1, 6), ("bench_cabinet", 0, 1, 7), ("twelve_boxes", 12, 0, 0)],
)
def test_samples_are_sound(name: str, boxes: int, carcases: int, drawers: int) -> None:
    project = read_project((SAMPLES / f"{name}.toml").read_text(encoding="utf-8"), name)
    assert problems(project) == []
    assert (len(project.boxes), len(project.carcases), len(list(project.drawers()))) == (boxes, carcases, drawers)


# --- the text itself -----------------------------------------------------------------------------------------


def test_windows_line_ends_and_a_byte_order_mark_do_no_harm() -> None:
    text = "\N{ZERO WIDTH NO-BREAK SPACE}" + GOOD.replace("\n", "\r\n")
    assert read_project(text, "x") == read_project(GOOD, "x")
    assert refused(text.replace("count = 3", "count = 0"))[0].startswith("bad.toml, line 47: box[1].count")


def test_comments_and_the_order_of_tables_do_not_matter() -> None:
    head, pins, rest = GOOD.partition('[pins]\nhalf_pin = "1/4 in"\ntails = "choose"\nalike = true\n')
    assert read_project(f"{head}# pins stand at the end\n{rest}{pins}", "x") == read_project(GOOD, "x")


def test_all_problems_of_a_file_are_told_together_in_its_order() -> None:
    edits = {
        'name = "Tool store"\nunits': 'name = " "\nunits',
        'kind = "solid"': 'kind = "soild"',
        'slope = "7 deg"': 'slope = "7"',
        "count = 3": "count = -3",
        "width = 9": 'width = "wide"',
        'mark = "C"': 'mark = "D201"',
        '[carcase.partitions]\nthickness = "5/8 in"\n': "",
        "[carcase.except.E3]": "[carcase.except.X9]",
    }
    text = GOOD
    for old, new in edits.items():
        assert text.count(old) == 1
        text = text.replace(old, new)
    found = [message.split(": ")[1] for message in refused(text)]
    assert found == [
        "project.name",
        "material.cherry.kind",
        "sled.small.slope",
        "box[1].count",
        "box[1].width",
        "carcase[1].partitions",
        "carcase[1].column[2].drawers",
        "carcase[1].except.X9",
    ]


def test_an_empty_file_lacks_everything() -> None:
    found = refused("")
    for needed in ("format", "project", "material", "sled", "nothing to make"):
        assert any(needed in message for message in found)


def test_a_project_that_makes_nothing_is_refused() -> None:
    (message,) = refused(LEAST.partition("[[box]]")[0].replace("UNIT", "in"))
    assert message == "bad.toml: there is nothing to make. Add a [[box]] or a [[carcase]]."


def test_with_several_sleds_one_must_be_named() -> None:
    found = refused(GOOD.replace('sled = "bench"\n', ""))
    assert [message.split(": ")[1] for message in found] == ["carcase[1].sled", "carcase[1].drawer.sled"]
    assert "as sled under [project]" in found[0]


def test_another_version_is_refused_before_anything_else() -> None:
    (message,) = refused("format = 3\nnonsense = true\n")
    assert "newer" in message


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("# " + "x\n#" * (GREATEST_SIZE // 3), "million"),
        ("# " + "x" * GREATEST_LINE, "very long"),
        ("x = " + "[" * 1_500, "too deep"),
        ("x = " + "[\n" * 100_000, "too deep"),
        ("x = " + "{a=" * 600, "too deep"),
        ("x = " + "9" * 5_000, "very long"),
        ("x = 0x" + "f" * 1_900, "missing"),
        ("a" + ".a" * 900 + " = 1", "missing"),
        ("x = \0", "not in order"),
        ("\ud800 = 1", "not in order"),
        ("x = 1\r", "not in order"),
        ("a = 1\n" * 2, "not in order"),
        ("<html>", "not in order"),
        ("PK\x03\x04", "not in order"),
    ],
    ids=lambda value: value[:9].encode("unicode_escape").decode(),
)
def test_hostile_text_is_refused(text: str, what: str) -> None:
    found = refused(text)
    assert any(what in message for message in found)
    assert all(message.isprintable() for message in found)


def test_a_number_that_python_refuses_is_refused_here_too(monkeypatch: pytest.MonkeyPatch) -> None:
    """CPython reads no decimal number of over 4300 digits; the limit on lines keeps most of that away."""
    monkeypatch.setattr(project_file, "GREATEST_LINE", 10_000)
    (message,) = refused("x = " + "9" * 5_000)
    assert "a number or a date can't be read" in message


def test_a_piece_of_far_too_many_boxes_is_refused_before_it_is_built() -> None:
    box = LEAST.partition("[[box]]")[2].replace("THICK", "1/2 in")
    boxes = "".join("[[box]]" + box.replace('"K"', f'"K{letter}"\ncount = 500') for letter in "AB")
    just = read_project(LEAST.partition("[[box]]")[0].replace("UNIT", "in") + boxes, "x")
    assert len(just.boxes) == GREATEST_RINGS
    (message,) = refused(LEAST.replace("UNIT", "in").replace("THICK", "1/2 in") + boxes)
    assert "1001 boxes, carcases, plinths and drawers" in message


def test_thousands_of_mistakes_are_counted_not_all_told() -> None:
    found = refused("format = 1\n" + "".join(f"k{number} = 1\n" for number in range(5_000)))
    assert len(found) < 1_100
    assert "more values are wrong" in found[-2]


@pytest.mark.parametrize(
    ("edit", "path", "words"),
    [
        (("[material.oak]", 'material = "oak"'), "project.material", "not known here"),
        (("format = 1\n", "format = 1\nsled = 3\n"), "line 7", "keep one"),
        (('"Box"', '"B\ud800x"'), "project.name", "can't be seen"),
    ],
    ids=["material under the wrong heading", "sled given twice", "half a character"],
)
def test_odd_mistakes_have_plain_words_too(edit: tuple[str, str], path: str, words: str) -> None:
    found = refused(LEAST.replace("UNIT", "in").replace("THICK", "1/2 in").replace(*edit))
    assert any(path in message and words in message for message in found)


def test_names_without_tables_are_refused() -> None:
    found = refused("format = 1\nmaterial = 3\nsled = []\n")
    assert "bad.toml, line 2: material: 3 stands where tables are wanted. Write [material.NAME] for each." in found
    assert "bad.toml, line 3: sled: a list stands where tables are wanted. Write [sled.NAME] for each." in found


def test_an_error_that_has_no_words_of_ours_still_has_a_place_and_a_meaning() -> None:
    error = {"type": "new_in_a_later_library", "loc": ("box", 0, "count"), "msg": "Input should be", "input": [3]}
    fault = form._fault(error)  # type: ignore[arg-type]
    assert (fault.path, fault.what) == (("box", 0, "count"), "a list can't stand here.")
    assert fault.remedy.startswith("How many")


def test_what_the_parts_of_a_project_say_of_each_other_has_the_last_word(monkeypatch: pytest.MonkeyPatch) -> None:
    wrong = Problem(where="K-front", what="does not fit.", remedy="Make it fit.")
    monkeypatch.setattr(project_file, "problems", lambda _: [wrong])
    assert refused(GOOD) == ["bad.toml: K-front: does not fit. Make it fit."]


def test_a_file_is_never_read_without_its_unit() -> None:
    from planner.intake.file_model import File

    with pytest.raises(TypeError, match="what is known of it"):
        File.model_validate({"project": {"proud": 1}})


def test_importing_the_intake_loads_no_library() -> None:
    code = (
        "import sys, planner.intake.project_file, planner.intake.write_file, planner.intake.schema;"
        "print(sorted({'pydantic', 'pydantic_core', 'tomli_w', 'pint'} & sys.modules.keys()))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
