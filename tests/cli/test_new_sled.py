"""The command that works out a sled to be built, typed from a slip of paper."""

from __future__ import annotations

import json
import re
import shlex
from dataclasses import fields
from typing import Any, NoReturn

import pytest

from planner.app.sled_slip import MEASURES, SledSlip, typed
from planner.derive.sled_practice import usual_clamps
from planner.errors import PlanError, Problem
from planner.intake.project_file import read_project
from planner.intake.usual import usual_said
from planner.lengths import Grid, Unit, read_length
from planner.pipeline import plan
from tests.app.test_new_sled import MUST_BE_GIVEN, with_sled
from tests.app.texts import CHEST
from tests.cli.maker import Maker, Said

INCHES = shlex.split(
    "--bit 1/2 --cutting 1-1/2 --reach 2 --mitre-width 3/4 --mitre-depth 3/8 --mitre-from-bit 5-3/8 --mitre-side right "
    "--table 16 --floor 1/2 --fence 3/4"
)
MM = shlex.split(
    "--bit 12 --cutting 38 --reach 45 --mitre-width 19.05 --mitre-depth 9.5 --mitre-from-bit 140 --mitre-side left "
    "--table 400 --floor 12 --fence 18"
)
BOARDS = ("new-sled", *MM, "--slope", "1:8", "--units", "mm", "--board", "230 x 20 x 600, mate 20")
CHEST_SLED = ("new-sled", "Landing chest", *INCHES)
HEADING = "For the project file:\n\n"


def refused(said: Said, code: int) -> str:
    assert (said.code, said.out) == (code, "")
    assert "Traceback" not in said.err
    return said.err


def test_the_sled_worked_out_on_paper_comes_out_of_the_command(maker: Maker) -> None:
    """Figures of the docstring of ``derive.sled_to_build``; the store isn't asked for boards."""
    said = maker(*BOARDS, "--json")
    assert (said.code, said.err) == (0, "")
    sled, floor, fence, guard = (said.json[part] for part in ("sled", "floor", "fences", "guard"))
    assert (sled["greatest_bit_height_mm"], sled["greatest_width_mm"], sled["greatest_upright_mm"]) == (20.4, 230, 600)
    assert (floor["length_mm"], floor["width_mm"], floor["middle_to_stop_mm"]) == (372.2, 575.4, 108.2)
    assert [(each["reach_mm"], each["height_mm"], each["face_from_middle_mm"]) for each in fence] == 2 * [
        (280, 200, 73.9)
    ]
    assert (guard["length_mm"], guard["width_mm"], guard["height_mm"]) == (42.2, 52, 40.4)
    assert (said.json["cutting_length_needed_mm"], said.json["table_each_way_needed_mm"]) == (32.4, 158.2)
    assert not maker.store.parent.exists()


def test_json_has_its_keys(chest_maker: Maker) -> None:
    assert chest_maker(*CHEST_SLED, "--json").json.keys() == {
        "sled", "boards", "greatest_thickness_mm", "cutting_length_needed_mm", "table_each_way_needed_mm",
        "hands_clear_mm", "floor", "fences", "angle", "guard", "runner", "how_to_set", "keep_clear", "findings",
        "project_file",
    }  # fmt: skip


def test_the_sheet_reads_from_parts_to_steps_to_cautions_to_the_table(maker: Maker) -> None:
    out = maker(*BOARDS).out
    order = ["New sled: bench", "Floor", "Slot", "Fences, two", "Angle of the fences", "Runner", "Guards",
             "What it takes once built", "Building and setting it", "Using it: keep clear", HEADING]  # fmt: skip
    at = [out.index(heading) for heading in order]
    assert at == sorted(at)
    for figure in (
        "372.2 mm long, 575.4 mm wide",
        "7.13°, slope 1:8",
        "37.5 mm over 300.0 mm",
        "~19.0 (19.05) mm wide",
    ):
        assert figure in out


def test_the_table_at_the_end_goes_into_the_project_file_as_it_stands(chest_maker: Maker) -> None:
    said = chest_maker(*CHEST_SLED)
    assert (said.code, said.err) == (0, "")
    table = said.out.split(HEADING)[1]
    assert table == chest_maker(*CHEST_SLED, "--json").json["project_file"]
    text = CHEST.read_text(encoding="utf-8")
    before, after = plan(read_project(text, "before")), plan(read_project(with_sled(text, table), "after"))
    assert after.project.sleds != before.project.sleds
    assert (after.joints, after.findings) == (before.joints, before.findings)
    assert chest_maker("read", "-", stdin=with_sled(text, table)).code == 0
    assert chest_maker("sled").code == 0


def test_the_only_project_need_not_be_named(chest_maker: Maker) -> None:
    assert chest_maker("new-sled", *INCHES) == chest_maker(*CHEST_SLED)


def test_doubts_are_told_at_both_ends_of_the_sheet(maker: Maker) -> None:
    out = maker(*BOARDS, "--floor", "9").out
    assert "! To think over before you build it: 1." in out
    assert "The floor is 9.0 mm thick" in re.sub(r"\s+", " ", out)
    assert "To think over first" not in maker(*BOARDS).out


@pytest.mark.parametrize("columns", ["20", "40", "80", "250"])
def test_the_sheet_fits_the_terminal(maker: Maker, columns: str) -> None:
    sheet = maker(*BOARDS, COLUMNS=columns).out.split(HEADING)[0]
    assert max(map(len, sheet.splitlines())) <= int(columns)


def test_piped_text_holds_no_escape_codes_and_colour_can_be_forced(maker: Maker) -> None:
    assert "\x1b" not in maker(*BOARDS).out
    assert "\x1b[" in maker(*BOARDS, FORCE_COLOR="1").out


def test_every_option_comes_to_its_own_place(maker: Maker, monkeypatch: pytest.MonkeyPatch) -> None:
    heard: list[tuple[str | None, SledSlip]] = []

    def hear(project: str | None, slip: SledSlip, store: object) -> NoReturn:
        del store
        heard.append((project, slip))
        raise PlanError([Problem(where="here", what="that is enough.", remedy="")])

    monkeypatch.setattr("planner.app.new_sled.new_sled", hear)
    told: dict[str, Any] = {
        field.name: f"what is said of {field.name}" for field in fields(SledSlip) if field.name != "boards"
    }
    options = [word for name, said in told.items() for word in (typed(name), said)]
    refused(maker("new-sled", "Tea box", *options, "--board", "one", "--board", "two"), 1)
    refused(maker("new-sled"), 1)
    assert heard == [("Tea box", SledSlip(boards=("one", "two"), **told)), (None, SledSlip())]


# --- refusals -----------------------------------------------------------------------------------------------


def test_all_measures_that_are_missing_are_named_at_once(chest_maker: Maker) -> None:
    err = refused(chest_maker("new-sled"), 2)
    for name in MUST_BE_GIVEN:
        assert f"{typed(name)}\n  is missing.\n  {MEASURES[name]}" in err
    told = json.loads(refused(chest_maker("new-sled", "--json"), 2))["problems"]
    assert [problem["where"] for problem in told] == [typed(name) for name in MUST_BE_GIVEN]


def test_what_cannot_be_read_names_its_option_and_quotes_it(maker: Maker) -> None:
    err = refused(maker(*BOARDS, "--bit", "1/2 ell", "--mitre-side", "up", "--board", "230 x 20"), 2)
    for told in ("--bit\n  '1/2 ell'", "--mitre-side\n  'up'", "--board, board 2\n  '230 x 20'"):
        assert told in err
    assert "--floor" not in err


def test_a_sled_that_cannot_be_built_has_the_code_of_a_plan(chest_maker: Maker) -> None:
    err = refused(chest_maker(*CHEST_SLED, "--cutting", "1", "--table", "2"), 1)
    assert "The bit cuts along 1 in" in err
    assert "The table reaches 2 in" in err


def test_pins_that_cannot_be_laid_out_for_the_bit_have_the_code_of_a_plan(chest_maker: Maker) -> None:
    assert "narrower than the slot of the bit" in refused(chest_maker(*CHEST_SLED, "--bit", "5"), 1)


def test_a_project_that_is_not_stored_is_refused(chest_maker: Maker) -> None:
    assert "'Landing chst'" in refused(chest_maker("new-sled", "Landing chst", *INCHES), 2)
    assert "'Landing chest'" in refused(chest_maker(*BOARDS, "Landing chest"), 2)


def test_an_option_without_its_value_is_misuse(maker: Maker) -> None:
    assert "--bit" in refused(maker("new-sled", "--bit"), 2)


@pytest.mark.parametrize("option", ["--bit", "--board", "--name", "--like", "--slope", "--units", "--mitre-side"])
def test_what_was_typed_cannot_steer_the_terminal(chest_maker: Maker, option: str) -> None:
    for args in (BOARDS, CHEST_SLED):
        err = refused(chest_maker(*args, option, "\x1b[2J\u202e"), 2)
        assert all(char.isprintable() or char == "\n" for char in err)


# --- help ---------------------------------------------------------------------------------------------------


def test_help_says_how_to_take_each_measure_and_what_is_usual(maker: Maker) -> None:
    said = re.sub(r"\s+", " ", maker("new-sled", "--help").out)
    for name, how in MEASURES.items():
        assert f"{typed(name)} " in said
        assert how in said
    assert f"Usually {usual_said('proud')}." in said


def test_help_has_the_usual_room_for_clamps(maker: Maker) -> None:
    said = re.sub(r"\s+", " ", maker("new-sled", "--help").out)
    for name in ("beside", "before", "behind"):
        told = re.search(re.escape(MEASURES[name]) + r" Usually (.*?) or (.*?)\.", said)
        assert told is not None
        for text, grid in zip(told.groups(), (Grid.IN_32, Grid.MM_TENTH), strict=True):
            assert read_length(text, Unit.MM) == getattr(usual_clamps(grid), f"{name}_nm")
