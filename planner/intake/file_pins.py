"""The tables of a project file that say how pins are spaced, for all corners or for one."""

from __future__ import annotations

from fractions import Fraction
from typing import Any, Literal

from pydantic import (  # noqa: TID253 - like file_model, which alone is imported, inside functions
    ConfigDict,
    Field,
    ValidationInfo,
    field_validator,
)

from planner.intake.file_values import Length, Places, Ratio, Table, Tails, usually
from planner.intake.refusal import RefusalError
from planner.lengths import Span

_TOGETHER: dict[str, Any] = {
    "if": {"properties": {"spread": {"enum": ["middle", "edge"]}}, "required": ["spread"]},
    "then": {"required": ["ratio"]},
    "else": {"not": {"required": ["ratio"]}},
    "dependentSchemas": {"places": {"not": {"anyOf": [{"required": [key]} for key in ("tails", "spread")]}}},
}
"""What the validators below ask of keys that stand together."""


class PinsTable(Table):
    """How pins are spaced along a corner."""

    model_config = ConfigDict(json_schema_extra=_TOGETHER)

    half_pin: Length | None = Field(
        None, description=f"Width of the half-pin at each edge, on the outside face. {usually('half_pin')}"
    )
    pin: Length | None = Field(None, description=f"Width of each pin on the outside face. {usually('pin')}")
    tails: Tails | None = Field(None, description='How many tails; "choose" leaves it to the planner, as is usual.')
    tail: Length | None = Field(
        None, description=f"The tail width you like best, when the planner chooses. {usually('tail')}"
    )
    greatest_tail: Length | None = Field(
        None, description=f"Widest tail, when the planner chooses. {usually('greatest_tail')}"
    )
    spread: Literal["even", "middle", "edge"] | None = Field(
        None,
        description='How the tails share the width: "even", as is usual; widest in the "middle"; or growing from the '
        'one "edge" to the other.',
    )
    ratio: Ratio | None = Field(
        None,
        validate_default=True,
        description='With spread = "middle" or "edge": how many times as wide the widest tail is as the narrowest.',
    )
    places: Places | None = Field(
        None,
        description="The whole pins one by one, each from where to where on the outside face; instead of tails and "
        "spread.",
    )
    measured_from: Literal["reference edge", "far edge"] | None = Field(
        None, description="The edge that places count from and tails grow from. Usually the reference edge."
    )
    alike: bool | None = Field(
        None,
        description="Whether the planner chooses the tail width you like best whatever it costs in passes, so that "
        "drawers of different heights look like one family. Usually false.",
    )

    @field_validator("ratio")
    @classmethod
    def _ratio_goes_with_spread(cls, ratio: Fraction | None, info: ValidationInfo) -> Fraction | None:
        spread = info.data.get("spread", "unreadable")
        graduated = spread in {"middle", "edge"}
        if ratio is None and graduated:
            raise RefusalError(
                f"is missing: spread = '{spread}' needs it.", "Add ratio = 1.5, the widest tail over the narrowest."
            )
        if ratio is not None and not graduated and spread != "unreadable":
            raise RefusalError(
                "goes with graduated tails only.", 'Write spread = "middle" or "edge" beside it, or leave this out.'
            )
        return ratio

    @field_validator("places")
    @classmethod
    def _places_say_all(cls, places: list[Span] | None, info: ValidationInfo) -> list[Span] | None:
        other = next((key for key in ("tails", "spread") if info.data.get(key) is not None), None)
        if places is not None and other is not None:
            raise RefusalError(
                f"places and {other} are both given.", "Give one of them: listed pins say where every tail is."
            )
        return places


def _corner(boards: str, in_a_carcase: str) -> str:
    return f"What is different about the pins where {boards} meet; in a carcase, {in_a_carcase}."


class JointsTable(Table):
    """Single joints whose pins are spaced otherwise than those of their ring."""

    J1: PinsTable | None = Field(None, description=_corner("front and right side", "top and right side"))
    J2: PinsTable | None = Field(None, description=_corner("right side and back", "right side and bottom"))
    J3: PinsTable | None = Field(None, description=_corner("back and left side", "bottom and left side"))
    J4: PinsTable | None = Field(None, description=_corner("left side and front", "left side and top"))
