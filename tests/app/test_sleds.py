"""Sleds on the wall: taken in, shared, measured anew, dropped."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from planner import pipeline
from planner.app.history import history
from planner.app.measured import Measured
from planner.app.projects import Change, forget, keep, listed, read, stored, write
from planner.app.sleds import KeptSled, drop, keep_sled, kept, measure
from planner.app.store_place import StorePlace
from planner.domain.project import Project
from planner.errors import InputError, PlanError
from planner.intake.project_file import read_project
from planner.lengths import Nm, Unit
from tests.app.folders import contents
from tests.app.texts import BOX, CHEST, IMPOSSIBLE, named

VALUES = BOX.partition("[sled.bench]\n")[2].partition("\n\n")[0]


def taking(name: str) -> str:
    """The box of another name, on the store's sled."""
    return named(name).replace(VALUES, "kept = true")


def read_text(text: str, store: StorePlace, folder: Path) -> Project:
    path = folder / "project.toml"
    path.write_text(text, encoding="utf-8")
    return read(str(path), store).plan.project


@pytest.fixture
def shared(store: StorePlace, shop: Path) -> StorePlace:
    """A store whose sled is shared by two boxes; a third has a sled of its own of the same name."""
    read_text(BOX, store, shop)
    keep_sled("Salt box", None, store)
    read_text(taking("Tea box"), store, shop)
    read_text(named("Pen box"), store, shop)
    return store


def bits(store: StorePlace) -> dict[str, int]:
    return {each.name: stored(each.name, store).sled("bench").bit_nm for each in listed(store)}


def test_where_there_is_no_store_nothing_is_kept_and_no_store_is_made(store: StorePlace) -> None:
    assert kept(store) == ()
    for doing in (
        lambda: measure("bench", Measured(bit="8 mm"), store),
        lambda: drop("bench", store),
        lambda: keep_sled("Salt box", None, store),
    ):
        with pytest.raises(InputError):
            doing()
    assert not store.path.parent.exists()


def test_a_sled_is_taken_in_from_a_project_and_taken_by_another(shared: StorePlace) -> None:
    (only,) = kept(shared)
    assert only.projects == ("Salt box", "Tea box")
    assert only.unit is Unit.MM
    assert only.sled == stored("Salt box", shared).sled("bench") == stored("Tea box", shared).sled("bench")
    assert not stored("Pen box", shared).sled("bench").kept


def test_taking_in_twice_changes_nothing(shared: StorePlace) -> None:
    before = contents(shared.path.parent)
    assert keep_sled("Salt box", "bench", shared)[1] is Change.UNCHANGED
    assert contents(shared.path.parent) == before


def test_taking_in_another_sled_of_the_same_name_is_refused_with_both_figures(store: StorePlace, shop: Path) -> None:
    read_text(BOX, store, shop)
    keep_sled("Salt box", None, store)
    read_text(named("Tea box").replace("bit = 8\n", "bit = 9\n"), store, shop)
    with pytest.raises(InputError, match=r"bit 9 mm here, 8 mm in the store"):
        keep_sled("Tea box", "bench", store)
    assert not stored("Tea box", store).sled("bench").kept


def test_of_several_sleds_one_must_be_named(store: StorePlace, shop: Path) -> None:
    text = BOX.replace("[[box]]", f"[sled.long]\n{VALUES}\n\n[[box]]").replace(
        'units = "mm"', 'units = "mm"\nsled = "long"'
    )
    read_text(text, store, shop)
    for name, said in ((None, "has 2 sleds, and none is named"), ("lang", "has no sled 'lang'")):
        with pytest.raises(InputError, match=said) as caught:
            keep_sled("Salt box", name, store)
        assert "Name one of: 'bench', 'long'." in caught.value.problems[0].remedy
    assert keep_sled("Salt box", "long", store)[0].name == "long"
    assert [each.sled.name for each in kept(store)] == ["long"]


def test_a_file_with_kept_and_all_values_takes_the_sled_in(store: StorePlace, shop: Path) -> None:
    read_text(BOX.replace(VALUES, f"kept = true\n{VALUES}"), store, shop)
    assert [each.projects for each in kept(store)] == [("Salt box",)]


def test_a_written_project_can_be_read_into_another_store(shared: StorePlace, shop: Path, tmp_path: Path) -> None:
    other = StorePlace(tmp_path / "elsewhere" / "planner.db")
    read_text(write("Tea box", shared), other, shop)
    assert kept(other) == (KeptSled(sled=kept(shared)[0].sled, unit=Unit.MM, projects=("Tea box",)),)


def test_a_file_with_the_old_figures_is_refused_once_the_sled_is_measured_anew(shared: StorePlace, shop: Path) -> None:
    text = write("Tea box", shared)
    measure("bench", Measured(bit="7.9 mm"), shared)
    before = contents(shared.path.parent)
    with pytest.raises(InputError, match=r"bit 8 mm here, 7\.9 mm in the store"):
        read_text(text, shared, shop)
    assert contents(shared.path.parent) == before


def test_a_project_on_a_worn_copy_is_refused_when_it_is_stored(shared: StorePlace) -> None:
    """As when the sled was measured anew while somebody was at work on the project."""
    project = stored("Tea box", shared)
    measure("bench", Measured(bit="7.9 mm"), shared)
    with pytest.raises(InputError, match=r"sled 'bench': is not like .* bit 8 mm here, 7\.9 mm in the store"):
        keep(project, shared, why="a test")


# --- measured anew ------------------------------------------------------------------------------------------


def test_what_is_measured_holds_for_all_projects_that_share_the_sled_at_once(shared: StorePlace) -> None:
    done = measure("bench", Measured(bit="7.62 mm", greatest_width='15 3/4"'), shared)
    assert done.before.bit_nm == 8_000_000
    assert (done.after.sled.bit_nm, done.after.sled.greatest_width_nm) == (7_620_000, 400_050_000)
    assert done.after.sled == kept(shared)[0].sled
    assert bits(shared) == {"Pen box": 8_000_000, "Salt box": 7_620_000, "Tea box": 7_620_000}
    assert [each.project for each in done.effects] == ["Salt box", "Tea box"]


def test_the_effect_is_that_of_planning_anew(shared: StorePlace) -> None:
    """A bit of half the width needs more passes; what the effect says is counted from the plans themselves."""
    before = {name: pipeline.plan(stored(name, shared)) for name in ("Salt box", "Tea box")}
    done = measure("bench", Measured(bit="4 mm"), shared)
    for effect in done.effects:
        was, now = before[effect.project], pipeline.plan(stored(effect.project, shared))
        passes = [sum(len(cut.passes) for at in plan.sled.settings for cut in at.cuts) for plan in (was, now)]
        assert effect.before is not None
        assert effect.after is not None
        assert [effect.before.passes, effect.after.passes] == passes
        assert passes[1] > passes[0]
        moved = [new.mark for old, new in zip(was.joints, now.joints, strict=True) if old.pins != new.pins]
        assert effect.new_pins == len(moved)
        assert effect.new_marks == 4  # two pin boards with two ends each; every socket needs more passes


def test_every_measure_can_be_given(shared: StorePlace) -> None:
    said = Measured(
        slope="1:7.5", bit="8.02 mm", slot="8.05 mm", greatest_bit_height="31 mm", greatest_width="401 mm",
        greatest_upright="601 mm", greatest_depth_soft="20 mm", greatest_depth_hard="18 mm",
    )  # fmt: skip
    sled = measure("bench", said, shared).after.sled
    assert sled.slope == Fraction(15, 2)
    assert (sled.bit_nm, sled.slot_nm) == (8_020_000, 8_050_000)
    limits = (sled.greatest_bit_height_nm, sled.greatest_width_nm, sled.greatest_upright_nm)
    assert limits == (31_000_000, 401_000_000, 601_000_000)
    assert (sled.greatest_depth_soft_nm, sled.greatest_depth_hard_nm) == (20_000_000, 18_000_000)
    unsaid = measure("bench", Measured(slot="none", greatest_depth_soft="none", greatest_depth_hard="none"), shared)
    assert unsaid.after.sled == replace(sled, slot_nm=None, greatest_depth_soft_nm=None, greatest_depth_hard_nm=None)


def test_a_slot_cut_by_the_old_bit_is_not_believed_of_the_new_one(shared: StorePlace) -> None:
    measure("bench", Measured(slot="8.1 mm"), shared)
    before = contents(shared.path.parent)
    with pytest.raises(InputError, match="--slot: is missing"):
        measure("bench", Measured(bit="7.9 mm"), shared)
    assert contents(shared.path.parent) == before
    assert measure("bench", Measured(bit="7.9 mm", slot="8 mm"), shared).after.sled.slot_nm == 8_000_000
    assert measure("bench", Measured(bit="8 mm", slot="none"), shared).after.sled.slot_nm is None


@pytest.mark.parametrize(
    ("said", "told"),
    [
        (Measured(), ["nothing was measured"]),
        (Measured(bit="12.62"), ["--bit: '12.62' doesn't say its unit"]),
        (Measured(slot="1/2"), ["--slot: '1/2' doesn't say its unit"]),
        (Measured(bit="none"), ["--bit: 'none' is not a length"]),
        (Measured(bit="0 mm"), ["--bit: '0 mm' is no length at all"]),
        (Measured(slope="8"), ["--slope: '8' is not a slope"]),
        (Measured(bit="7", greatest_width="wide"), ["--bit: '7' doesn't", "--greatest-width: 'wide' is not"]),
    ],
)
def test_what_cannot_be_read_is_told_all_at_once(shared: StorePlace, said: Measured, told: list[str]) -> None:
    before = contents(shared.path.parent)
    with pytest.raises(InputError) as caught:
        measure("bench", said, shared)
    assert len(caught.value.problems) == len(told)
    assert all(text in str(caught.value) for text in told)
    assert contents(shared.path.parent) == before


def test_the_same_measure_again_changes_nothing(shared: StorePlace) -> None:
    before = contents(shared.path.parent)
    done = measure("bench", Measured(bit="0.8 cm"), shared)
    assert (done.before, done.effects) == (done.after.sled, ())
    assert contents(shared.path.parent) == before


def test_when_a_project_cannot_be_built_any_more_nothing_is_changed_and_each_is_named(
    shared: StorePlace, shop: Path
) -> None:
    """Boards of 90 mm don't stand beside a slot that takes 80; the chest is on another sled and none of it matters."""
    read(str(CHEST), shared)
    read_text(named("Low box").replace(VALUES, "kept = true").replace("height = 90", "height = 70"), shared, shop)
    before = contents(shared.path.parent)
    with pytest.raises(PlanError) as caught:
        measure("bench", Measured(greatest_width="80 mm"), shared)
    assert {problem.where.partition(",")[0] for problem in caught.value.problems} == {"Salt box", "Tea box"}
    assert all("80" in problem.what for problem in caught.value.problems)
    assert contents(shared.path.parent) == before


def test_a_project_that_could_not_be_built_before_hinders_nobody(shared: StorePlace) -> None:
    odd = read_project(IMPOSSIBLE.replace("Salt box", "Odd box").replace(VALUES, f"kept = true\n{VALUES}"), "x")
    keep(odd, shared, why="as if an older program had stored it")
    done = measure("bench", Measured(bit="7.9 mm"), shared)
    assert [(each.project, each.before is None, each.after is None) for each in done.effects] == [
        ("Odd box", True, True),
        ("Salt box", False, False),
        ("Tea box", False, False),
    ]


def test_a_measure_is_in_the_history_of_each_project_that_shares_the_sled(shared: StorePlace) -> None:
    measure("bench", Measured(bit="7.9 mm", slot="8 mm"), shared)
    why = "sled bench measured anew: bit from 8 mm to 7.9 mm; slot from not said to 8 mm"
    whys = {name: [state.why for state in history(name, shared).states] for name in ("Salt box", "Tea box", "Pen box")}
    assert whys == {
        "Salt box": ["read from project.toml", "sled bench kept for all projects", why],
        "Tea box": ["read from project.toml", why],
        "Pen box": ["read from project.toml"],
    }


# --- dropped ------------------------------------------------------------------------------------------------


def test_a_sled_is_dropped_once_nobody_has_it(shared: StorePlace, shop: Path) -> None:
    with pytest.raises(InputError, match="is in use by 'Salt box', 'Tea box'"):
        drop("bench", shared)
    forget("Salt box", shared)
    read_text(named("Tea box"), shared, shop)
    assert drop("bench", shared).sled.bit_nm == Nm(8_000_000)
    assert kept(shared) == ()
    assert bits(shared) == {"Pen box": 8_000_000, "Tea box": 8_000_000}
