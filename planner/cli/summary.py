"""What was done, in a few lines to be read at arm's length."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from planner.app.plans import Prepared
from planner.app.projects import Change, Kept, Listed
from planner.cli.console import safe
from planner.domain.plan import Plan
from planner.domain.words import Level

STORED = {
    Change.NEW: "new in the store",
    Change.CHANGED: "changed in the store",
    Change.UNCHANGED: "in the store already, unchanged",
}


def of_kept(kept: Kept) -> str:
    """What was stored."""
    return f"{safe(kept.plan.project.name)}: {STORED[kept.change]}.\n{_counts(kept.plan)}"


def of_plan(plan: Plan) -> str:
    """What a plan comes to, and what to know before cutting."""
    return "\n".join((_counts(plan), *_sled(plan), *_findings(plan)))


def of_prepared(prepared: Prepared) -> str:
    """What was stored and written, and what to know before cutting."""
    plan = prepared.kept.plan
    return "\n".join(
        (
            of_kept(prepared.kept),
            *_sled(plan),
            *_findings(plan),
            f"Workbook: {safe(str(prepared.workbook))}",
            f"Plan: {safe(str(prepared.plan_file))}",
        )
    )


def of_list(found: Iterable[Listed]) -> str:
    """Stored projects, one a line."""
    lines = [f"{safe(each.name)}: {_parts(each)}" for each in found]
    return "\n".join(lines) or "No project is stored yet. Read one: planner read FILE"


def _parts(listed: Listed) -> str:
    counted = ((listed.carcases, "carcase"), (listed.drawers, "drawer"), (listed.boxes, "box"))
    return ", ".join(_count(number, what) for number, what in counted if number)


def _counts(plan: Plan) -> str:
    counted = ((len(plan.boards), "board"), (len(plan.joints), "corner"), (2 * len(plan.joints), "joined end"))
    return f"{', '.join(_count(number, what) for number, what in counted)}."


def _sled(plan: Plan) -> Iterator[str]:
    """What the grouping of sled cuts saves."""
    from planner.present.views.sled_savings import JOINT_BY_JOINT, in_words

    yield f"Sled: {in_words(plan.sled.tally)}."
    yield f"{JOINT_BY_JOINT}: {in_words(plan.sled.joint_by_joint)}."


def _findings(plan: Plan) -> Iterator[str]:
    """How many findings there are of each level; what forbids cutting is said in full."""
    still = [found for found in plan.findings if not found.acknowledged]
    by_level = {level: [found for found in still if found.level is level] for level in Level}
    answered = len(plan.findings) - len(still)
    counts = [_count(len(found), level.value) for level, found in by_level.items()]
    yield f"Checks: {', '.join([*counts, *([f'{answered} acknowledged'] if answered else [])])}."
    for stop in by_level[Level.STOP]:
        yield f"STOP, don't cut yet: {safe(stop.text)} {safe(stop.remedy)}"


def _count(number: int, what: str) -> str:
    plural = "es" if what.endswith("x") else "s"
    return f"{number} {what}{'' if number == 1 else plural}"
