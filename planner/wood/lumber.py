"""The sizes in which timber is sold, and what is left of them when they are planed.

The values stand in ``lumber_sizes.csv``, each with its source and how it was obtained.
A yard's boards may be up to 1/16 in under their nominal thickness (NHLA rules, second-hand), and yards often plane to
less than the rules reckon: measure the board in hand.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from planner.domain.rack import Per
from planner.domain.stock import SoldAs
from planner.domain.words import MaterialKind
from planner.lengths import Nm, Unit, read_length

THICKNESS, WIDTH = "thickness", "width"


@dataclass(frozen=True, slots=True, kw_only=True)
class SoldSize:
    """A size in which timber is sold.

    Attributes:
        name: what it is called: 4/4, 1 (nominal inches), 27 mm.
        rough_nm: by which it is paid for.
        gives_nm: the most that is left of it when it is planed; of dressed timber, what it is.
        source: where it stands.
        how: how that was obtained.
    """

    name: str
    rough_nm: Nm
    gives_nm: Nm
    source: str
    how: str


@cache
def sold_sizes(sold_as: SoldAs, dimension: str = THICKNESS) -> tuple[SoldSize, ...]:
    """All sizes of a kind, the smallest first."""
    text = files("planner.wood").joinpath("lumber_sizes.csv").read_text(encoding="utf-8")
    rows = csv.DictReader(text.splitlines())
    found = [_size(row) for row in rows if (row["sold_as"], row["dimension"]) == (sold_as.value, dimension)]
    return tuple(sorted(found, key=lambda size: size.rough_nm))


def _size(row: Mapping[str, str]) -> SoldSize:
    rough, gives = (read_length(row[key], Unit.INCH) for key in ("rough", "gives"))
    return SoldSize(name=row["nominal"], rough_nm=rough, gives_nm=gives, source=row["source"], how=row["how"])


def least_sold(finished: Nm, sold_as: SoldAs, allowance: Nm | None = None) -> SoldSize | None:
    """The thinnest timber sold from which boards of this finished thickness can be planed; None if none is so thick.

    Args:
        finished: thickness.
        sold_as: the sizes to choose from.
        allowance: so much must be there to be planed away; None goes by what the sizes give. Dressed timber is planed
            already.
    """
    by_table = allowance is None or sold_as is SoldAs.DRESSED
    return next(
        (
            size
            for size in sold_sizes(sold_as)
            if (size.gives_nm if by_table else size.rough_nm - (allowance or 0)) >= finished
        ),
        None,
    )


def planing(sold_as: SoldAs, finished: Nm) -> Nm:
    """What planing takes off rough timber for boards of this thickness, by the table; nothing off dressed timber."""
    if sold_as is SoldAs.DRESSED:
        sold_as = SoldAs.QUARTERS
    size = least_sold(finished, sold_as) or sold_sizes(sold_as)[-1]
    return Nm(size.rough_nm - size.gives_nm)


@dataclass(frozen=True, slots=True, kw_only=True)
class UsualSize:
    """Length and width of a board or sheet that any yard has.

    Attributes:
        per: how it is sold.
        said: what is assumed, with its source.
    """

    length_nm: Nm
    width_nm: Nm
    per: Per
    said: str


_NO_SOURCE = "(trade practice, no source)"
_USUAL = {
    (Unit.INCH, MaterialKind.SOLID): ("8 ft", "6 in", Per.BOARD_FOOT, "boards 6 in by 8 ft, the least of FAS (NHLA)"),
    (Unit.INCH, MaterialKind.SHEET): ("96 in", "48 in", Per.SQUARE_FOOT, f"sheets of 48 by 96 in {_NO_SOURCE}"),
    (Unit.MM, MaterialKind.SOLID): ("2400 mm", "150 mm", Per.CUBIC_METRE, f"boards of 150 by 2400 mm {_NO_SOURCE}"),
    (Unit.MM, MaterialKind.SHEET): ("2440 mm", "1220 mm", Per.SQUARE_METRE, f"sheets of 1220 by 2440 mm {_NO_SOURCE}"),
}  # fmt: skip


def usual_size(unit: Unit, kind: MaterialKind) -> UsualSize:
    """What is reckoned with where no stock is known."""
    length, width, per, said = _USUAL[unit, kind]
    return UsualSize(length_nm=read_length(length, unit), width_nm=read_length(width, unit), per=per, said=said)
