"""Timbers and air in a project file: what is read, what goes without saying, and what a change of timber does."""

from __future__ import annotations

import pytest

from planner.domain.climate import Climate, Room
from planner.domain.material import Material
from planner.domain.words import Hardness, MaterialKind, Sawn
from planner.intake.edit import Draft
from planner.intake.edit_timber import swap_timber
from planner.intake.project_file import read_project
from planner.intake.write_file import write_project
from planner.pipeline import plan
from planner.wood.timbers import timbers_of
from tests.intake.bad_files import GOOD

CHERRY = '[material.cherry]\nkind = "solid"\nhardness = "hard"\n'
BOG_OAK = """
[timber."bog oak"]
hardness = "soft"
tangential = 0.0037
radial = 0.0018
shrinkage_tangential = 10.4
specific_gravity = 0.71
stiffness = "1.49e6 psi"
strength = "85 MPa"
source = "a trial of our own"
"""


def with_cherry(*lines: str, also: str = "") -> str:
    assert CHERRY in GOOD
    return GOOD.replace(CHERRY, "\n".join(("[material.cherry]", *lines, also, "")))


def cherry(text: str) -> Material:
    return read_project(text, "x").material("cherry")


def test_a_species_tells_what_kind_a_material_is_and_how_it_cuts() -> None:
    assert cherry(with_cherry('species = "yellow poplar"', 'sawn = "rift"')) == Material(
        name="cherry", hardness=Hardness.SOFT, species="Yellow-poplar", sawn=Sawn.RIFT
    )
    mdf = cherry(with_cherry('species = "mdf"', 'hardness = "soft"'))
    assert (mdf.kind, mdf.hardness, mdf.species) == (MaterialKind.SHEET, Hardness.SOFT, "MDF")
    assert cherry(GOOD) == Material(name="cherry")


def test_a_timber_of_the_maker_s_own_wins_over_a_shipped_one() -> None:
    """1.49e6 psi = 10.27 GPa (6.894757 GPa in a million psi)."""
    text = with_cherry('species = "BOG oak"', also=BOG_OAK)
    made = read_project(text, "x")
    own = timbers_of(made)["cherry"]
    assert (own.name, own.tangential, own.shrinkage_radial_pct) == ("bog oak", 0.0037, None)
    assert own.stiffness_gpa == pytest.approx(1.49 * 6.894757, abs=0.0005)
    hidden = read_project(with_cherry('species = "teak"', also=BOG_OAK.replace("bog oak", "Teak")), "x")
    assert timbers_of(hidden)["cherry"].tangential == 0.0037  # 0.00186 is the shipped one


def test_the_air_is_read_in_the_unit_of_the_project() -> None:
    """70 °F is 21.111 °C; the file is in inches."""
    room = '[room]\ndry = { humidity = "30 %", temperature = 70 }\ndamp = { moisture = 11.5 }\n'
    made = read_project(with_cherry(also=room + '[shop]\nmoisture = "8.25%"'), "x")
    assert made.room == Room(
        dry=Climate(humidity_hundredths=3000, temperature_milli_c=21_111), damp=Climate(moisture_hundredths=1150)
    )
    assert made.shop == Climate(moisture_hundredths=825)
    assert 'temperature = "70 °F"' in write_project(made)


def test_a_file_without_species_gives_no_timber() -> None:
    made = read_project(GOOD, "x")
    assert timbers_of(made) == {}
    assert "species" not in write_project(made)
    assert not [finding for finding in plan(made).findings if finding.code == "unnamed-timber"]


@pytest.mark.parametrize(
    ("new", "table"),
    [
        ("black walnut", {"species": "Walnut, black"}),
        ("stuff from the shed", {"kind": "solid", "hardness": "soft", "sawn": "flat"}),
    ],
)
def test_a_swapped_timber_does_not_keep_the_old_one_s_species(new: str, table: dict[str, str]) -> None:
    made = read_project(with_cherry('species = "yellow-poplar"', 'sawn = "flat"'), "x")
    draft = Draft(made)
    swap_timber(draft, "cherry", new, ())
    assert draft.tables["material"][new] == table
