"""Write a project as a file that reads back to exactly the same project.

The file is as short as it can be: what is usual is left out, what most rings share is said once for all of them, and
what differs is said where it differs. A key can be said over, but not unsaid; so a key that some drawers leave out is
never said for all drawers of a carcase.
"""

from __future__ import annotations

from dataclasses import fields
from itertools import accumulate, groupby

from planner.domain.acknowledged import Acknowledged
from planner.domain.project import Project, problems
from planner.domain.rates import USUAL_RATES, Rates
from planner.domain.sled import Sled
from planner.domain.words import DrawersCut, Level
from planner.errors import InputError, Problem
from planner.intake.kept_sleds import figures
from planner.intake.project_file import read_project, read_tables
from planner.intake.said import Said, columns_in, said_of
from planner.intake.sharing import Table, differences, if_any
from planner.intake.short_lists import with_short_lists
from planner.intake.spacing import spelled_out, usual_pins
from planner.intake.usual import GRIDS
from planner.intake.values import FORMAT
from planner.intake.write_box import batch_table
from planner.intake.write_carcase import carcase_table
from planner.intake.write_stock import stock_table
from planner.intake.write_wood import climate_table, material_table, room_table, timber_table
from planner.lengths import Nm


def write_project(project: Project) -> str:
    """The project as the text of a project file.

    Raises:
        InputError: no file describes just this project, as when the boxes of a batch are not alike.
    """
    import tomli_w

    text = with_short_lists(tomli_w.dumps(_tables(project)))
    _must_be_the_same(project, read_project(text, project.name))
    return text


def project_tables(project: Project) -> Table:
    """The tables of that file, as the reader of TOML would give them; nobody else holds them, so they may be changed.

    Raises:
        InputError: no file describes just this project.
    """
    tables = _tables(project)
    _must_be_the_same(project, read_tables(tables, project.name))
    return tables


def _tables(project: Project) -> Table:
    wrong = problems(project)
    if wrong:
        raise InputError(wrong)
    tables: Table = spelled_out(_file(project))
    return tables


def _must_be_the_same(wanted: Project, got: Project) -> None:
    if got != wanted:
        raise InputError([_unwritable(wanted, got)])


def _unwritable(wanted: Project, got: Project) -> Problem:
    pairs = zip(wanted.boxes + wanted.carcases, got.boxes + got.carcases, strict=False)
    return Problem(
        where=next((part.ring.mark for part, other in pairs if part != other), wanted.name),
        what="can't be described by a project file.",
        remedy="Boxes of a batch must be alike and numbered from 1; boards and corners must be marked as is usual; "
        "only the front of a drawer can be half-blind, at both ends and without an applied front; a carcase is divided "
        "into columns by partitions, these into tiers, and so on; what doesn't count must be 0.",
    )


# --- tables of the file -------------------------------------------------------------------------------------


def _file(project: Project) -> Table:
    said = said_of(project)
    columns_before = accumulate(columns_in(project), initial=0)
    batches = [list(boxes) for _, boxes in groupby(project.boxes, key=lambda box: box.batch)]
    carcases = [carcase_table(*each, said) for each in zip(project.carcases, columns_before, strict=False)]
    return {
        "format": FORMAT,
        "project": _project(project, said),
        "material": {material.name: material_table(material, project.timbers) for material in project.materials},
        **if_any("timber", {timber.name: timber_table(timber) for timber in project.timbers}),
        **if_any("room", room_table(project.room, said.unit)),
        **if_any("shop", climate_table(project.shop, said.unit)),
        **if_any("stock", stock_table(project.stock, said.unit)),
        "sled": {sled.name: _sled(sled, said) for sled in project.sleds},
        **if_any("pins", differences(said.pins, usual_pins(said.unit))),
        **if_any("rates", differences(_rates(project.rates), _rates(USUAL_RATES))),
        **if_any("box", [batch_table(boxes, said) for boxes in batches]),
        **if_any("carcase", carcases),
        **if_any("acknowledged", [_acknowledged(each) for each in project.acknowledged]),
    }


def _project(project: Project, said: Said) -> Table:
    return {
        "name": project.name,
        "units": str(project.unit),
        **({} if project.grid is GRIDS[project.unit] else {"show": str(project.grid)}),
        **said.unusual("proud", project.proud_nm),
        **({"drawers": str(project.drawers_cut)} if project.drawers_cut is not DrawersCut.AT_ONCE else {}),
        **said.unusual("height_tolerance", project.height_tolerance_nm),
        **({"sled": said.sled} if len(project.sleds) > 1 else {}),
    }


def _acknowledged(answer: Acknowledged) -> Table:
    return {
        "code": answer.code,
        **({"marks": list(answer.marks)} if answer.marks else {}),
        **({} if answer.level is Level.CAUTION else {"level": str(answer.level)}),
        "why": answer.why,
    }


def _sled(sled: Sled, said: Said) -> Table:
    return {**({"kept": True} if sled.kept else {}), **figures(sled, said.unit)}


def _if_said(key: str, length: Nm | None, said: Said) -> Table:
    return {} if length is None else {key: said.length(length)}


def _rates(rates: Rates) -> Table:
    return {field.name.removesuffix("_s"): getattr(rates, field.name) for field in fields(rates)}
