"""What to buy, from a list of wood to a cutting plan: every plan goes through the checker of ``planner.stock``."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction
from pathlib import Path

import pytest

from planner.app.buying import Bought, Effort, Progress, buy
from planner.app.projects import read
from planner.app.rack import on_the_rack, rack_in, rack_out
from planner.app.store_place import StorePlace
from planner.errors import InputError
from planner.lengths import Unit, read_length
from planner.plan.matched import boards_of
from planner.plan.purchase import Cutting, Need
from planner.plan.rough import Use, rough_parts
from planner.plan.saw_cuts import saw_settings
from planner.plan.stock_jobs import Aim
from planner.present.buying_json import buying_json, rough_json
from planner.present.views.buying import buying
from planner.present.views.rough import rough
from planner.present.views.saw_cuts import saw_cuts
from planner.stock.pieces import Kind
from planner.stock.proof import faults
from tests.app.texts import CHEST, SAMPLES

QUICK = Effort(rounds=0)
HEAD = "mark,material,length,width,thickness,count,yard,price,per,currency,least"
BOX = """
format = 1
[project]
name = "Box"
units = "in"
[material.ash]
[sled.bench]
slope = "1:8"
bit = "1/4 in"
greatest_bit_height = "1 in"
greatest_width = "12 in"
greatest_upright = "24 in"
[[box]]
mark = "K"
length = "12 in"
width = "8 in"
height = "4 in"
material = "ash"
thickness = "3/4 in"
[stock]
spares = 0
practice = false
"""
"""Front and back 12 1/32 rough 13 1/16, sides 8 1/32 rough 9 1/16, all 4 rough 4 1/4 in wide."""


def silent(_: Progress) -> None:
    """Nobody listens."""


def listed(folder: Path, *lines: str) -> str:
    path = folder / "wood.csv"
    path.write_text("\n".join((HEAD, *lines)), encoding="utf-8")
    return str(path)


@pytest.fixture
def box(tmp_path: Path) -> StorePlace:
    """A store with a box of four boards of ash."""
    path, store = tmp_path / "box.toml", StorePlace(tmp_path / "store" / "planner.db")
    path.write_text(BOX, encoding="utf-8")
    read(str(path), store)
    return store


@pytest.fixture(scope="module")
def chest(tmp_path_factory: pytest.TempPathFactory) -> Bought:
    """What to buy for the six-drawer chest, with the wood of the sample list."""
    store = StorePlace(tmp_path_factory.mktemp("chest") / "planner.db")
    read(str(CHEST), store)
    rack_in(str(SAMPLES / "hollin_rack.csv"), None, store)
    return buy(None, Aim.CHEAPEST, QUICK, store, silent)


def cuttings(bought: Bought) -> list[Cutting]:
    return [need.cutting for need in bought.purchase.needs if need.cutting]


def only(needs: Iterable[Need]) -> Need:
    (need,) = needs
    return need


# --- the chest, from list to saw ----------------------------------------------------------------------------


def test_the_chest_s_plans_are_sound_and_cut_every_part_once(chest: Bought) -> None:
    cut: Counter[str] = Counter()
    for each in cuttings(chest):
        assert not faults(each.found.job, each.answer.plan)
        assert each.answer.bound <= each.answer.plan.cost
        cut.update(piece.mark for at in each.answer.plan.layouts for piece in at.whole.within() if piece.mark)
    boards = {mark.partition("/")[0] for mark in cut}
    assert boards == {part.mark for part in rough_parts(chest.plan)}
    assert set(cut.values()) == {1}
    assert all(need.to_find is None for need in chest.purchase.needs)


def test_the_chest_s_bill_is_the_sum_of_its_boards(chest: Bought) -> None:
    """Prices of the sample list: 6.90 and 4.20 a board foot of inch stock, 38.00 a sheet; the rack is paid for."""
    prices = {"ASH-Y": Fraction(690, 144), "POP-Y": Fraction(420, 144)}
    total = 0
    for taken in (taken for each in cuttings(chest) for taken in each.taken):
        lot, inch = taken.choice.lot, read_length("1 in", Unit.INCH)
        if lot.mark in prices:
            area = Fraction(taken.choice.length_nm, inch) * Fraction(taken.choice.width_nm, inch)
            total += taken.count * int(prices[lot.mark] * area + Fraction(1, 2))
        elif lot.mark == "PLY-Y":
            total += 3800 * taken.count
        else:
            assert lot.on_hand
    assert chest.purchase.cents == total > 0
    assert chest.purchase.currency == "USD"


def test_thin_parts_share_the_boards_of_thick_ones_where_no_other_wood_serves(chest: Bought) -> None:
    """All poplar of the list is 4/4, so the 1/2 in sides are sawn together with the 3/4 in runners."""
    poplar = only(need for need in chest.purchase.needs if need.stuff.material == "poplar")
    assert poplar.cutting is not None
    thick = {part.finished[2] for part in poplar.cutting.found.parts}
    assert thick == {read_length("3/4 in", Unit.INCH), read_length("1/2 in", Unit.INCH)}
    assert [(each.lot.mark, each.why) for each in chest.purchase.left_out] == [
        ("PLY-Z", "No part is of this thickness.")
    ]


def test_panels_come_from_few_boards_and_their_staves_are_wide_enough(chest: Bought) -> None:
    ash = only(need for need in chest.purchase.needs if need.stuff.material == "ash").cutting
    assert ash is not None
    staves = {part.mark: part.board for part in ash.found.parts if part.use is Use.STAVE}
    assert set(staves.values()) == {"C-top", "C-right", "C-bottom", "C-left"}
    rough_widths = {part.mark: part.width_nm for part in rough_parts(chest.plan)}
    joint = read_length("1/16 in", Unit.INCH)
    for panel in set(staves.values()):
        widths = [part.width_nm for part in ash.found.parts if part.board == panel]
        assert sum(widths) - 2 * (len(widths) - 1) * joint >= rough_widths[panel]
    assert all(
        count <= sum(board == panel for board in staves.values())
        for panel, count in boards_of(ash.answer.plan, staves).items()
    )


def test_saw_cuts_give_every_part_and_no_piece_is_cut_before_it_is_there(chest: Bought) -> None:
    for each in cuttings(chest):
        there = {choice for at in each.answer.plan.layouts for choice in (at.board, f"{at.board}.{at.number}")}
        given: list[str] = []
        for setting in saw_settings(each.answer.plan):
            for cut in setting.cuts:
                assert cut.of in there
                if cut.kind is Kind.PART:
                    given.append(cut.gives)
                there.add(cut.gives)
        pieces = [p for at in each.answer.plan.layouts for p in at.whole.within() if p.kind is Kind.PART]
        assert sorted(given) == sorted(piece.mark for piece in pieces)


def test_the_lists_say_what_the_plan_says(chest: Bought) -> None:
    table = buying(chest.plan, chest.purchase)
    assert table.sums()[-1] == Fraction(chest.purchase.cents, 100)
    assert any("PLY-Z" in note for note in table.notes)
    sawn = saw_cuts(chest.plan, chest.purchase)
    assert sawn.cautions
    assert {"D1-front", "D6-bottom"} <= {row[3] for row in sawn.rows}
    marks = [mark for row in rough(chest.plan).rows for mark in row[-1] or ()]  # type: ignore[union-attr]
    assert sorted(marks) == sorted(part.mark for part in rough_parts(chest.plan))
    data = buying_json(chest.purchase)
    assert data["to_pay_cents"] == chest.purchase.cents
    assert len(rough_json(chest.plan)) == 4


# --- a box, by hand -----------------------------------------------------------------------------------------


def test_the_same_wood_gives_the_same_plan(box: StorePlace, tmp_path: Path) -> None:
    rack_in(listed(tmp_path, "R1,ash,8 ft,6 in,4/4,3,,,,,"), None, box)
    first, second = (buy("Box", Aim.CHEAPEST, QUICK, box, silent) for _ in range(2))
    assert buying_json(first.purchase) == buying_json(second.purchase)


def test_one_board_that_is_long_enough_is_all_it_takes(box: StorePlace, tmp_path: Path) -> None:
    """2 × 13 1/16 + 2 × 9 1/16 + 3 kerfs = 44 5/8 in, and 2 in off both ends: 48 5/8 in will do, 48 1/2 won't."""
    rack_in(listed(tmp_path, "R1,ash,48 5/8 in,5 in,4/4,1,,,,,"), None, box)
    (cutting,) = cuttings(buy("Box", Aim.CHEAPEST, QUICK, box, silent))
    assert not cutting.answer.plan.missing
    rack_in(listed(tmp_path, "R1,ash,48 1/2 in,5 in,4/4,1,,,,,"), None, box)
    need = only(buy("Box", Aim.CHEAPEST, QUICK, box, silent).purchase.needs)
    assert need.cutting is not None
    assert len(need.cutting.answer.plan.missing) == 1
    assert need.to_find is not None
    assert [part.mark for part in need.to_find.parts] == list(need.cutting.answer.plan.missing)


def test_a_least_order_is_paid_for_or_another_yard_is_taken(box: StorePlace, tmp_path: Path) -> None:
    """54 × 5 in of inch stock is 1.875 board feet: 9.38 at 5.00, but 50.00 when ten must be taken; 20.00 a piece."""
    dear = "Y1,ash,54 in,5 in,4/4,,Yard,5.00,board foot,,10"
    rack_in(listed(tmp_path, dear), None, box)
    alone = buy("Box", Aim.CHEAPEST, QUICK, box, silent).purchase
    assert alone.cents == 5000
    assert cuttings(Bought(plan=buy("Box", Aim.CHEAPEST, QUICK, box, silent).plan, purchase=alone))[0].extra == {
        "Y1": 5000 - 938
    }
    rack_in(listed(tmp_path, dear, "Y2,ash,54 in,5 in,4/4,,Other yard,20.00,piece,,"), None, box)
    both = buy("Box", Aim.CHEAPEST, QUICK, box, silent)
    assert both.purchase.cents == 2000
    assert cuttings(both)[0].answer.bound <= 938


def test_aims_differ(box: StorePlace, tmp_path: Path) -> None:
    """Short boards at 3.00 each, of which it takes two, or a long one at 9.00; the rack has a short one for nothing."""
    short, long = "S1,ash,30 in,5 in,4/4,,Yard,3.00,piece,,", "L1,ash,54 in,5 in,4/4,,Yard,9.00,piece,,"
    rack_in(listed(tmp_path, short, long, "R1,ash,30 in,5 in,4/4,1,,,,,"), None, box)
    cheapest = buy("Box", Aim.CHEAPEST, QUICK, box, silent)
    assert cheapest.purchase.cents == 300
    (few,) = cuttings(buy("Box", Aim.FEWEST, QUICK, box, silent))
    assert [(each.choice.lot.mark, each.count) for each in few.taken] == [("L1", 1)]
    hand = only(buy("Box", Aim.ON_HAND, QUICK, box, silent).purchase.needs)
    assert hand.cutting is not None
    assert {each.choice.lot.mark for each in hand.cutting.taken} == {"R1"}
    assert hand.to_find is not None


def test_without_wood_it_goes_by_usual_sizes_and_says_so(box: StorePlace) -> None:
    """4 1/4 in × (2 × 13 1/16 + 2 × 9 1/16) of inch stock is 188 1/16 in², 1.306 board feet; with 25 % 1.6325."""
    need = only(buy("Box", Aim.CHEAPEST, QUICK, box, silent).purchase.needs)
    assert need.cutting is None
    assert need.to_find is not None
    assert need.to_find.net == Fraction(17, 4) * Fraction(177, 4) / 144
    assert need.to_find.gross == need.to_find.net * Fraction(5, 4)
    assert need.to_find.boards == 1
    assert not need.to_find.too_large


def test_prices_in_two_kinds_of_money_are_refused(box: StorePlace, tmp_path: Path) -> None:
    offers = ("Y1,ash,54 in,5 in,4/4,,Yard,5,piece,USD,", "Y2,ash,54 in,5 in,4/4,,Yard,5,piece,EUR,")
    rack_in(listed(tmp_path, *offers), None, box)
    with pytest.raises(InputError, match="several kinds of money"):
        buy("Box", Aim.CHEAPEST, QUICK, box, silent)


def test_a_cancel_keeps_the_first_plan(box: StorePlace, tmp_path: Path) -> None:
    rack_in(listed(tmp_path, "R1,ash,8 ft,6 in,4/4,3,,,,,"), None, box)

    def cancel(_: Progress) -> None:
        raise KeyboardInterrupt

    (cutting,) = cuttings(buy("Box", Aim.CHEAPEST, Effort(rounds=50), box, cancel))
    assert not cutting.answer.plan.missing
    assert not faults(cutting.found.job, cutting.answer.plan)


# --- the rack -----------------------------------------------------------------------------------------------


def test_a_list_is_taken_in_whole_or_not_at_all(box: StorePlace, tmp_path: Path) -> None:
    good = "R1,ash,8 ft,6 in,4/4,3,,,,,"
    done = rack_in(listed(tmp_path, good), None, box)
    assert (done.new, done.changed, done.same) == (("R1",), (), ())
    with pytest.raises(InputError, match="line 3"):
        rack_in(listed(tmp_path, "R2,ash,8 ft,6 in,4/4,1,,,,,", "R3,ash,8 ft,6,4/4,1,,,,,"), None, box)
    assert [lot.mark for lot in on_the_rack(box)] == ["R1"]
    again = rack_in(listed(tmp_path, good, "R2,ash,8 ft,6 in,4/4,1,,,,,"), None, box)
    assert (again.new, again.changed, again.same) == (("R2",), (), ("R1",))
    with pytest.raises(InputError, match="R9"):
        rack_out(["R1", "R9"], box)
    rack_out(["R1"], box)
    assert [lot.mark for lot in on_the_rack(box)] == ["R2"]
