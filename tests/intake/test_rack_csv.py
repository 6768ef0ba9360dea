"""Lists of wood: what may stand in them, and the refusal of all that is wrong at once."""

from __future__ import annotations

import csv
from contextlib import suppress
from io import StringIO

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planner.domain.rack import Flaw, Per, Price, Surfaced
from planner.errors import InputError
from planner.intake.rack_csv import COLUMNS, read_rack
from planner.lengths import Nm, Unit, read_length
from tests.app.texts import SAMPLES

HEAD = "mark,material,length,width,thickness,count"


def inches(said: str) -> Nm:
    return read_length(f"{said} in", Unit.INCH)


def refusals(text: str, unit: Unit | None = Unit.INCH) -> list[tuple[str, str]]:
    with pytest.raises(InputError) as refused:
        read_rack(text, "wood.csv", unit)
    assert all(problem.what and problem.remedy for problem in refused.value.problems)
    return [(problem.where, problem.what) for problem in refused.value.problems]


def test_a_board_with_a_defect_and_an_offer_of_random_widths() -> None:
    text = (
        "Mark;material;length;width;thickness;count;surfaced;yard;price;per;currency;least;counted;defects;remark\n"
        'R1;ash;8 ft;6-1/2;4/4;2;;;;;;;;"20 to 24 x 0 to 2; 3 ft to 4 ft × 1/2 to 1";behind the door\n'
        "\n"
        "Y1;pine;6 ft to 12 ft;4 to 9;3/4;;dressed;Hollin yard;7.5;bd ft;USD;20.5;1 in;;\n"
    )
    board, offer = read_rack("\N{ZERO WIDTH NO-BREAK SPACE}" + text, "wood.csv", Unit.INCH)
    assert (board.mark, board.material, board.count, board.yard, board.price) == ("R1", "ash", 2, None, None)
    assert (board.shortest_nm, board.longest_nm) == (inches("96"), inches("96"))
    assert (board.widest_nm, board.thickness_nm, board.surfaced) == (inches("6 1/2"), inches("1"), Surfaced.ROUGH)
    assert board.flaws == (
        Flaw(along=(inches("20"), inches("24")), across=(Nm(0), inches("2"))),
        Flaw(along=(inches("36"), inches("48")), across=(inches("1/2"), inches("1"))),
    )
    assert (offer.shortest_nm, offer.longest_nm) == (inches("72"), inches("144"))
    assert (offer.narrowest_nm, offer.widest_nm) == (inches("4"), inches("9"))
    assert (offer.surfaced, offer.counted_nm, offer.least_hundredths) == (Surfaced.DRESSED, inches("1"), 2050)
    assert offer.price == Price(cents=750, per=Per.BOARD_FOOT, currency="USD")
    assert offer.count is None


def test_quarters_are_quarters_of_an_inch_in_a_metric_list_too() -> None:
    (board,) = read_rack(f"{HEAD}\nR1,oak,2400,150,5/4,1\n", "wood.csv", Unit.MM)
    assert board.thickness_nm == inches("1 1/4")
    assert board.longest_nm == Nm(2_400_000_000)


def test_the_sample_rack_is_sound_and_says_its_units() -> None:
    lots = read_rack((SAMPLES / "hollin_rack.csv").read_text(encoding="utf-8"), "hollin_rack.csv", None)
    assert {lot.on_hand for lot in lots} == {True, False}


def test_everything_that_is_wrong_is_told_at_once_by_line_and_column() -> None:
    text = (
        f"{HEAD},surfaced,yard,price,per\n"
        "r1,ash,8 ft,6,4/4,two,planed,,,\n"
        'R2,,8 zz,6,0,1,,,"3,50",piece\n'
        "R3,ash,8 ft to 9 ft,6,1,,,,,\n"
        "R3,ash,9 ft to 8 ft,6,1,1,,Yard,,\n"
    )
    assert {where for where, _ in refusals(text)} == {
        "wood.csv, line 2, column mark",
        "wood.csv, line 2, column count",
        "wood.csv, line 2, column surfaced",
        "wood.csv, line 3, column material",
        "wood.csv, line 3, column length",
        "wood.csv, line 3, column thickness",
        "wood.csv, line 3, column price",
        "wood.csv, line 4, column length",
        "wood.csv, line 4, column count",
        "wood.csv, line 4, column mark",
        "wood.csv, line 5, column length",
        "wood.csv, line 5, column price",
        "wood.csv, line 5, column mark",
    }


@pytest.mark.parametrize(
    ("text", "where", "what"),
    [
        ("", "wood.csv, line 1", "columns are missing"),
        ("mark,materal\n", "wood.csv, line 1", "'materal' is no column"),
        (f"{HEAD},count\nR1,ash,8 ft,6,1,1,1\n", "wood.csv, line 1", "column count stands there 2 times"),
        (f"{HEAD}\n", "wood.csv", "lists no wood"),
        (f"{HEAD}\nR1,ash,8 ft,6,1,1,more\n", "wood.csv, line 2", "has 7 cells"),
        (f'{HEAD}\nR1,"ash\n', "wood.csv, line 2", "can't be parted into cells"),
        (f"{HEAD}\nR1,ash,8 ft,6,0/4,1\n", "wood.csv, line 2, column thickness", "no length at all"),
        (f"{HEAD}\nR1,ash,8 ft,6,1,-1\n", "wood.csv, line 2, column count", "'-1' is no count"),
        (f"{HEAD}\nR1,a\x1bsh,8 ft,6,1,1\n", "wood.csv, line 2, column material", "characters that can't be seen"),
        (f"{HEAD},defects\nR1,ash,8 ft,6,1,1,20\n", "wood.csv, line 2, column defects", "is no place on a board"),
        (f"{HEAD},defects\nR1,ash,8 ft,6,1,1,4 x 2\n", "wood.csv, line 2, column defects", "'4' has no end"),
        (f"{HEAD},defects\nR1,ash,8 ft,6,1,1,4 to 5 x 2 to 7\n", "wood.csv, line 2, column defects", "lie outside"),
        (f"{HEAD},price\nR1,ash,8 ft,6,1,1,5\n", "wood.csv, line 2, column per", "goes with a price"),
        (f"{HEAD},price,per\nR1,ash,8 ft,6,1,1,5,day\n", "wood.csv, line 2, column per", "nothing to pay for"),
        (f"{HEAD},least\nR1,ash,8 ft,6,1,1,5\n", "wood.csv, line 2, column least", "goes with a yard only"),
    ],
)
def test_a_list_is_refused_for_one_mistake(text: str, where: str, what: str) -> None:
    found = refusals(text)
    assert [each for each in found if each[0] == where and what in each[1]], found


def test_without_a_unit_each_length_must_say_its_own() -> None:
    found = refusals(f"{HEAD}\nR1,ash,8 ft,6,4/4,1\n", None)
    assert [where for where, _ in found] == ["wood.csv, line 2, column width"]


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused(text: str) -> None:
    with suppress(InputError):
        assert read_rack(text, "wood.csv", None)


@given(st.lists(st.lists(st.text(max_size=12), min_size=len(COLUMNS), max_size=len(COLUMNS)), min_size=1, max_size=3))
def test_any_cells_are_read_or_refused(rows: list[list[str]]) -> None:
    out = StringIO()
    csv.writer(out).writerows([list(COLUMNS), *rows])
    with suppress(InputError):
        assert read_rack(out.getvalue(), "wood.csv", Unit.MM)
