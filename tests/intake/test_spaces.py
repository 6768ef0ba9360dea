"""Columns and tiers within each other: what a file means by them, and how many a file may ask for."""

from __future__ import annotations

import tomllib
from fractions import Fraction
from typing import Any

import pytest

from planner.derive.sharing import sizes
from planner.domain.carcase import Carcase
from planner.domain.drawer import Drawer
from planner.domain.space import Division, LooseShelves, Space
from planner.domain.words import DividerKind, HeightRule, Side, Stands, Way
from planner.errors import InputError
from planner.intake.project_file import GREATEST_SPACES, read_project
from planner.intake.values import GREATEST_DEPTH
from planner.intake.write_file import write_project
from planner.lengths import Grid
from tests.intake.files import CHEST
from tests.intake.furniture import FURNITURE

IN, MM = 25_400_000, 1_000_000
RAILS = 'rails = { thickness = "3/4 in", width = "2 in" }\n'
PARTS = "partitions = {}\nshelves = {}\nframes = {}"


def carcase(column: str, *lines: str, but: str = "") -> Carcase:
    """The small chest with these columns instead of its own."""
    (made,) = read_project(text(column, *lines, but=but), "chest.toml").carcases
    return made


def text(column: str, *lines: str, but: str = "") -> str:
    whole = CHEST.replace("column = [{ drawers = 3 }]", f"column = [{column}]")
    return "\n".join([whole.replace(but, "") if but else whole, *lines])


def refused(column: str, *lines: str, but: str = "") -> list[str]:
    with pytest.raises(InputError) as error:
        carcase(column, *lines, but=but)
    return [str(problem) for problem in error.value.problems]


def divided(space: Space) -> Division:
    assert isinstance(space.holds, Division)
    return space.holds


def marks(made: Carcase) -> list[str]:
    return [drawer.ring.mark for drawer in made.drawers()]


# --- the tree ---------------------------------------------------------------------------------------------------


def test_a_carcase_is_columns_even_with_one_and_a_column_is_tiers_even_with_one() -> None:
    made = carcase("{ drawers = 1 }")
    root = divided(made.inside)
    assert (root.way, root.divider, root.rule, len(root.spaces)) == (
        Way.COLUMNS,
        DividerKind.PARTITION,
        HeightRule.EQUAL,
        1,
    )
    column = divided(root.spaces[0])
    assert (column.way, len(column.spaces)) == (Way.TIERS, 1)
    assert isinstance(column.spaces[0].holds, Drawer)


def test_the_short_form_says_the_same_as_tiers_that_each_hold_a_drawer() -> None:
    assert carcase("{ drawers = 3 }") == carcase("{ tier = [{}, { holds = 'drawer' }, {}] }")
    listed = carcase("{ drawers = 3, heights = [5, 'rest', 7], marks = ['A', 'B', 'E'] }")
    assert listed == carcase("{ tier = [{ height = 5, mark = 'A' }, { mark = 'B' }, { height = 7, mark = 'E' }] }")
    step = "heights = 'graduated', step = 0.5"
    assert carcase(f"{{ drawers = 2, {step} }}") == carcase(f"{{ tier = [{{}}, {{}}], {step} }}")


def test_heights_that_are_all_left_open_are_equal_heights() -> None:
    assert carcase("{ drawers = 2, heights = ['rest', 'rest'] }") == carcase("{ drawers = 2 }")


THREE = "{ drawers = 1 }, { drawers = 1 }, { drawers = 1 }"


def widths(made: Carcase) -> list[int]:
    clear = made.width_nm - 4 * made.ring.boards[0].stuff.thickness_nm  # sides, and two partitions as thick
    return list(sizes(divided(made.inside), clear, Grid.IN_32, where="here"))


def test_columns_grow_to_the_right_by_a_step_or_a_ratio() -> None:
    """By hand: 20 in less four boards of 7/8 in is 16 1/2 in. With a step of 2 in: 3 1/2, 5 1/2, 7 1/2 in.

    With a ratio of 2 they are 1/7, 2/7, 4/7 of it: 2.357 and 4.714 in, to the nearest 1/32 in 75/32 and 151/32; the
    rest is 302/32.
    """
    assert widths(carcase(THREE, "partitions = {}", "column_step = 2")) == [IN * 7 // 2, IN * 11 // 2, IN * 15 // 2]
    ratio = widths(carcase(THREE, "partitions = {}", "column_ratio = 2"))
    assert ratio == [IN * 75 // 32, IN * 151 // 32, IN * 302 // 32]


def test_columns_within_a_tier_grow_too() -> None:
    made = carcase(f"{{ tier = [{{ column = [{THREE}], column_ratio = 1.5 }}] }}", "partitions = {}")
    within = divided(divided(divided(made.inside).spaces[0]).spaces[0])
    assert (within.rule, within.ratio) == (HeightRule.RATIO, Fraction(3, 2))


@pytest.mark.parametrize(
    ("column", "line", "place", "what"),
    [
        (THREE, "column_step = 2\ncolumn_ratio = 2", "column_step", "both given"),
        ("{ drawers = 1, width = 9 }, { drawers = 1 }", "column_step = 2", "column", "width or a share of its own"),
        ("{ drawers = 1, share = 2 }, { drawers = 1 }", "column_ratio = 2", "column", "width or a share of its own"),
        ("{ tier = [{ column_step = 2 }] }", "", "tier[1].column", "a step or a ratio of columns is given"),
    ],
)
def test_columns_that_are_graduated_say_nothing_else(column: str, line: str, place: str, what: str) -> None:
    (problem,) = refused(column, "partitions = {}", *line.split("\n"))
    assert place in problem
    assert what in problem


def test_a_tree_is_read_as_deep_as_it_is_written() -> None:
    """Of the cabinet of the sound file: above two drawers beside one, below nothing; with a shelf between."""
    cabinet, _ = read_project(FURNITURE, "x").carcases
    left, right = divided(cabinet.inside).spaces
    assert (left.size_nm, right.size_nm) == (400 * MM, None)
    assert (left.share, right.share) == (Fraction(1), Fraction(2))
    assert divided(left).divider is DividerKind.FRAME
    assert [space.share for space in divided(left).spaces] == [1, Fraction(5, 2), 1]
    assert [space.size_nm for space in divided(left).spaces] == [120 * MM, None, None]
    assert divided(left).rule is HeightRule.LISTED
    tiers = divided(right)
    assert (tiers.divider, tiers.rule, tiers.ratio) == (DividerKind.SHELF, HeightRule.RATIO, Fraction(6, 5))
    above, below = tiers.spaces
    assert below.holds is None
    pair, single = divided(above).spaces
    assert divided(above).way is Way.COLUMNS
    assert [len(divided(each).spaces) for each in (pair, single)] == [2, 1]


def test_loose_shelves_and_doors_are_read_where_they_stand() -> None:
    cabinet, _ = read_project(FURNITURE, "x").carcases
    shelves = divided(divided(cabinet.inside).spaces[0]).spaces[2]
    assert isinstance(shelves.holds, LooseShelves)
    assert (shelves.holds.count, shelves.holds.stuff.material, shelves.holds.play_nm) == (3, "pine", 2 * MM)
    assert shelves.doors is not None
    assert (shelves.doors.leaves, shelves.doors.hinged, shelves.doors.stands) == (1, Side.RIGHT, Stands.INSET)
    assert shelves.doors.overlay_nm == 0
    assert cabinet.inside.doors is not None
    assert (cabinet.inside.doors.leaves, cabinet.inside.doors.overlay_nm) == (2, 14 * MM)


# --- marks ------------------------------------------------------------------------------------------------------

_PAIR = "{ column = [{ drawers = 1 }, { drawers = 2 }] }"


def test_drawers_of_the_only_column_are_numbered_as_they_are_met() -> None:
    """Tiers from the top; in a tier, columns from the left."""
    assert marks(carcase(f"{{ tier = [{_PAIR}, {{}}, {{ holds = 'nothing' }}, {{}}] }}", PARTS)) == [
        "D1", "D2", "D3", "D4", "D5",
    ]  # fmt: skip


def test_with_more_columns_the_number_is_that_of_the_outermost_column() -> None:
    assert marks(carcase(f"{{ drawers = 1 }}, {{ tier = [{_PAIR}, {{}}] }}", PARTS)) == [
        "D101", "D201", "D202", "D203", "D204",
    ]  # fmt: skip


def test_a_column_without_drawers_is_counted_all_the_same() -> None:
    assert marks(carcase("{ tier = [{ holds = 'shelves' }] }, { drawers = 1 }", PARTS)) == ["D201"]


def test_a_drawer_with_a_mark_of_its_own_renames_no_other() -> None:
    assert marks(carcase("{ tier = [{}, { mark = 'X' }, {}] }")) == ["D1", "X", "D3"]
    within = "{ tier = [{ column = [{ drawers = 2, marks = ['X', 'Y'] }] }, {}] }"
    assert marks(carcase(within)) == ["X", "Y", "D3"]


def test_exceptions_find_drawers_wherever_they_are() -> None:
    made = carcase(f"{{ tier = [{_PAIR}, {{}}] }}", PARTS, "except.D3.side_clearance = 0.25")
    assert [drawer.side_clearance_nm for drawer in made.drawers()] == [IN // 16, IN // 16, IN // 4, IN // 16]
    (message,) = refused(f"{{ tier = [{_PAIR}, {{}}] }}", PARTS, "except.D5.side_clearance = 0.25")
    assert "no drawer of this carcase is marked 'D5'" in message


def test_a_mark_given_twice_is_told_where_it_stands_the_second_time() -> None:
    (message,) = refused("{ tier = [{}, { mark = 'D1' }] }")
    assert message.partition(": ")[2].startswith(
        "carcase[1].column[1].tier[2].mark: the mark 'D1' is already taken, by carcase[1].column[1].tier[1]."
    )
    (message,) = refused("{ tier = [{ column = [{ drawers = 2 }, { drawers = 1, marks = ['D2'] }] }] }", PARTS)
    assert "tier[1].column[2].marks[1]: the mark 'D2' is already taken" in message


# --- what divides -----------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("lines", "but", "kind"),
    [
        ([PARTS], "", DividerKind.RAIL),
        ([PARTS], RAILS, DividerKind.FRAME),
        (["shelves = {}", "partitions = {}"], RAILS, DividerKind.SHELF),
    ],
)
def test_tiers_are_divided_by_what_the_carcase_has(lines: list[str], but: str, kind: DividerKind) -> None:
    made = carcase("{ drawers = 2 }, { drawers = 2, divided_by = 'nothing' }", *lines, but=but)
    assert [divided(column).divider for column in divided(made.inside).spaces] == [kind, DividerKind.NOTHING]


def test_a_single_tier_needs_nothing_to_divide_it() -> None:
    assert marks(carcase("{ drawers = 1 }", but=RAILS)) == ["D1"]
    assert marks(carcase("{ tier = [{}] }", but=RAILS)) == ["D1"]


def test_tiers_without_anything_between_them_are_told_once() -> None:
    (message,) = refused("{ drawers = 2 }, { tier = [{}, {}] }", "partitions = {}", but=RAILS)
    assert "carcase[1].rails: is missing: drawers or other tiers above each other need a rail between them." in message
    assert 'divided_by = "nothing"' in message


def test_columns_within_need_partitions_too() -> None:
    (message,) = refused("{ tier = [{ column = [{ drawers = 1 }, { drawers = 1 }, { drawers = 1 }] }] }")
    assert "carcase[1].partitions: is missing: 3 columns need a partition" in message


def test_drawers_must_be_told_of_and_nothing_else_need_be() -> None:
    drawer = "".join(f"{line}\n" for line in CHEST.splitlines() if line.startswith("drawer."))
    (message,) = refused("{ tier = [{}, { holds = 'nothing' }] }", but=drawer)
    assert "carcase[1].drawer: is missing: there is a drawer to make." in message
    assert marks(carcase("{ tier = [{ holds = 'shelves' }, { holds = 'nothing' }] }", but=drawer)) == []
    (message,) = refused("{ tier = [{ holds = 'nothing' }] }", "except.D1.side_clearance = 1", but=drawer)
    assert "no drawer of this carcase is marked 'D1'" in message


# --- how much ---------------------------------------------------------------------------------------------------


def nested(depth: int) -> str:
    """Columns in each other so many times."""
    return "{ drawers = 1 }" if depth == 1 else f"{{ tier = [{{ column = [{nested(depth - 1)}] }}] }}"


def test_columns_may_stand_in_each_other_up_to_a_depth() -> None:
    assert GREATEST_DEPTH == 6
    assert marks(carcase(nested(GREATEST_DEPTH))) == ["D1"]
    (message,) = refused(nested(GREATEST_DEPTH + 1))
    assert "more than 6 columns stand in each other" in message
    assert "up to 6 deep" in message


def test_a_bottomless_file_is_refused_like_any_other_that_is_too_deep() -> None:
    headings = [
        f"[[carcase{'.column.tier' * depth}.column]]\n[[carcase{'.column.tier' * (depth + 1)}]]" for depth in range(150)
    ]
    for lines in ([f"column = [{nested(60)}]"], headings):
        whole = CHEST.replace("column = [{ drawers = 3 }]", "\n".join(lines))
        with pytest.raises(InputError, match="stand in each other"):
            read_project(whole, "x")


def test_a_piece_of_far_too_many_spaces_is_refused_before_it_is_built() -> None:
    tiers = ", ".join(["{ holds = 'nothing' }"] * 50)
    column = f"{{ tier = [{tiers}], divided_by = 'nothing' }}"
    columns = ",\n".join([column] * 10)
    within = f"{{ tier = [{{ column = [\n{columns}\n] }}] }}"
    assert GREATEST_SPACES == 1_000
    many = carcase(f"{within},\n{within}", PARTS)
    assert len(list(many.inside.leaves())) == 1_000
    (message,) = refused(f"{within},\n{within},\n{{ drawers = 1 }}", PARTS)
    assert "1001 spaces" in message


def test_tiers_of_a_column_are_limited_like_its_drawers() -> None:
    tiers = ", ".join(["{}"] * 51)
    found = refused(f"{{ tier = [{tiers}] }}")
    assert any("51 are listed. List at most 50." in message for message in found)


# --- writing ----------------------------------------------------------------------------------------------------


def written(column: str, *lines: str) -> list[dict[str, Any]]:
    said: list[dict[str, Any]] = tomllib.loads(write_project(read_project(text(column, *lines), "x")))["carcase"][0][
        "column"
    ]
    return said


def test_drawers_and_nothing_else_are_written_in_the_short_form() -> None:
    assert written("{ tier = [{ height = 5 }, { mark = 'X' }] }") == [
        {"drawers": 2, "heights": ["5 in", "rest"], "marks": ["D1", "X"]}
    ]
    assert written("{ tier = [{}, {}], divided_by = 'nothing', share = 2 }") == [
        {"share": 2, "drawers": 2, "divided_by": "nothing"}
    ]


def test_what_the_short_form_can_not_say_is_written_as_tiers() -> None:
    assert written("{ tier = [{ share = 1.5 }, {}] }") == [{"tier": [{"share": 1.5}, {}]}]
    assert written("{ drawers = 2, doors = {} }") == [{"drawers": 2, "doors": {}}]
    assert written("{ tier = [{ doors = {} }, {}] }") == [{"tier": [{"doors": {}}, {}]}]
    assert written(f"{{ tier = [{_PAIR}, {{ holds = 'shelves' }}] }}", PARTS) == [
        {"tier": [{"column": [{"drawers": 1}, {"drawers": 2}]}, {"holds": "shelves"}]}
    ]
