"""The assembly check must see what is wrong: one thing is changed on the bench, and it has to name it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache, reduce

import pytest

from planner.domain.plan import Feature, Labels
from planner.domain.words import DividerKind, FeatureKind, Surface
from planner.lengths import Nm, Span
from tests.oracle import assembly_pieces as hollin
from tests.oracle.assembly import put_together
from tests.oracle.assembly_bench import Bench, bench_of, read_labels
from tests.oracle.assembly_pieces import box, carcase, columns, drawers, hinged, holding, project, tiers
from tests.oracle.assembly_plan import derived
from tests.oracle.assembly_space import WAYS, turned


@cache
def cabinet() -> Bench:
    """A stopped shelf with columns above it, drawers on rails and runners beside it, a door; plinth and top."""
    left = holding(tiers(DividerKind.RAIL, *drawers(hollin.WITH_HANDLES, 3)), size=300)
    above = holding(columns(holding(), holding()))
    right = holding(tiers(DividerKind.SHELF, above, holding(hollin.LOOSE, doors=hollin.DOOR)))
    whole = replace(carcase(holding(columns(left, right))), shelves=hollin.STOPPED, base=hollin.PLINTH, top=hollin.TOP)
    return bench_of(derived(project(carcases=(whole,))))


@cache
def framed() -> Bench:
    """Drawers on web frames with dust panels and applied fronts, a back of boards, a stand."""
    left = holding(tiers(DividerKind.FRAME, *drawers(hollin.INSET_FRONT, 3)), size=400)
    right = holding(tiers(DividerKind.FRAME, holding(), holding()))
    whole = replace(carcase(holding(columns(left, right)), back=hollin.BOARDS), base=hollin.STAND)
    return bench_of(derived(project(carcases=(whole,))))


@cache
def shelved() -> Bench:
    """A shelf with through tenons in a rabbeted ring."""
    whole = hollin.rabbeted(carcase(holding(tiers(DividerKind.SHELF, holding(), holding()))))
    return bench_of(derived(project(carcases=(replace(whole, shelves=hollin.TENONED),))))


@cache
def chest() -> Bench:
    """A box with a lid and a till."""
    return bench_of(derived(project(boxes=(box(hinged(hollin.PANELLED), hollin.TILL),))))


@cache
def hung() -> Bench:
    """Drawers with half-blind fronts on strips."""
    inside = holding(tiers(DividerKind.NOTHING, *drawers(hollin.HALF_BLIND, 3)))
    return bench_of(derived(project(carcases=(replace(carcase(inside), runners=hollin.HUNG),))))


def named(bench: Bench) -> Iterator[tuple[str, str]]:
    """Every rule broken, with each board named."""
    for finding in put_together(bench)[1]:
        yield from ((finding.code, mark) for mark in finding.marks)


def moved(span: Span, by: int) -> Span:
    return (Nm(span[0] + by), Nm(span[1] + by))


def recut(bench: Bench, board: str, kind: FeatureKind, takes: str, change: Callable[[Feature], Feature]) -> Bench:
    """Change the cuts of one kind that take one board."""
    cuts = bench.planks[board].cuts
    assert any(cut.kind is kind and cut.takes == takes for cut in cuts)
    changed = [change(cut) if cut.kind is kind and cut.takes == takes else cut for cut in cuts]
    return bench.changed(board, cuts=changed)


def without(bench: Bench, board: str, kind: FeatureKind, takes: str) -> Bench:
    cuts = bench.planks[board].cuts
    kept = [cut for cut in cuts if not (cut.kind is kind and cut.takes == takes)]
    assert len(kept) < len(cuts)
    return bench.changed(board, cuts=kept)


def resized(bench: Bench, board: str, *, along: int = 0, across: int = 0, thick: int = 0) -> Bench:
    """Sawn or planed to another size at end B, the far edge or the inside face; cuts that came out there still do."""
    plank = bench.planks[board]
    x, u, y = plank.sizes

    def reach(span: Span, old: int, by: int) -> Span:
        return (span[0], Nm(old + by)) if span[1] == old else span

    cuts = [
        replace(cut, x=reach(cut.x, x, along), u=reach(cut.u, u, across), y=reach(cut.y, y, thick))
        for cut in plank.cuts
    ]
    return bench.changed(board, sizes=(x + along, u + across, y + thick), cuts=cuts)


def along_x(by: int) -> Callable[[Feature], Feature]:
    return lambda cut: replace(cut, x=moved(cut.x, by))


def along_u(by: int) -> Callable[[Feature], Feature]:
    return lambda cut: replace(cut, u=moved(cut.u, by))


def deeper(by: int) -> Callable[[Feature], Feature]:
    """On a cut from the inside face."""
    return lambda cut: replace(cut, y=(Nm(cut.y[0] - by), cut.y[1]))


def at_the_edge(cut: Feature) -> Feature:
    return replace(cut, u=moved(cut.u, -cut.u[0]))


def lost(bench: Bench, board: str) -> Bench:
    return replace(bench, planks={mark: plank for mark, plank in bench.planks.items() if mark != board})


def relabelled(bench: Bench, board: str, out: str, reference_edge: str) -> Bench:
    plank = replace(bench.planks[board], turn=turned(WAYS[out], WAYS[reference_edge]))
    return replace(bench, planks=bench.planks | {board: plank})


def from_the_other_face(board_thick: int) -> Callable[[Feature], Feature]:
    def turn(cut: Feature) -> Feature:
        other = Surface.OUTSIDE if cut.face is Surface.INSIDE else Surface.INSIDE
        return replace(cut, face=other, y=(Nm(board_thick - cut.y[1]), Nm(board_thick - cut.y[0])))

    return turn


def with_joint(bench: Bench, mark: str, **change: object) -> Bench:
    joints = tuple(replace(j, **change) if j.mark == mark else j for j in bench.joints)  # type: ignore[arg-type]
    assert joints != bench.joints
    return replace(bench, joints=joints)


def a_tail_wider(bench: Bench, mark: str) -> Bench:
    joint = next(joint for joint in bench.joints if joint.mark == mark)
    first = (joint.tails[0][0], Nm(joint.tails[0][1] + 1))
    return with_joint(bench, mark, tails=(first, *joint.tails[1:]))


def a_pin_wider(bench: Bench, mark: str) -> Bench:
    joint = next(joint for joint in bench.joints if joint.mark == mark)
    second = (joint.pins[1][0], Nm(joint.pins[1][1] + 1))
    return with_joint(bench, mark, pins=(joint.pins[0], second, *joint.pins[2:]))


def ends_swapped(bench: Bench, mark: str) -> Bench:
    joint = next(joint for joint in bench.joints if joint.mark == mark)
    return with_joint(bench, mark, pin_end=joint.tail_end, tail_end=joint.pin_end)


def cuts_swapped(bench: Bench, one: str, other: str) -> Bench:
    first, second = bench.planks[one], bench.planks[other]
    swapped = {one: replace(first, cuts=second.cuts), other: replace(second, cuts=first.cuts)}
    return replace(bench, planks=bench.planks | swapped)


HOUSING, GROOVE, RABBET, MORTISE = FeatureKind.HOUSING, FeatureKind.GROOVE, FeatureKind.RABBET, FeatureKind.MORTISE
Mutant = tuple[Callable[[], Bench], Callable[[Bench], Bench], str, str]
ONE, MM = 1, hollin.MM
DOOR, LID = "C-2.2-door", "K-lid"
MUTANTS: dict[str, Mutant] = {
    "housing 1 nm up": (
        cabinet, lambda b: recut(b, "C-left", HOUSING, "D101-rail", along_x(ONE)), "disagree", "D101-rail",
    ),
    "housing of a shelf 1 nm up at one end": (
        cabinet, lambda b: recut(b, "C-right", HOUSING, "C-2.1-shelf", along_x(ONE)), "disagree", "C-2.1-shelf",
    ),
    "housings of a rail 1 nm lower at both ends": (
        cabinet,
        lambda b: recut(
            recut(b, "C-left", HOUSING, "D101-rail", along_x(-ONE)), "C-partition1", HOUSING, "D101-rail", along_x(ONE)
        ),
        "space", "C-1.1",
    ),
    "housing 1 nm deeper": (
        cabinet, lambda b: recut(b, "C-left", HOUSING, "D101-rail", deeper(ONE)), "disagree", "D101-rail",
    ),
    "housing on the other face": (
        cabinet,
        lambda b: recut(b, "C-left", HOUSING, "D101-rail", from_the_other_face(20 * MM)),
        "disagree", "D101-rail",
    ),
    "housing with only the name of the other face": (
        cabinet,
        lambda b: recut(b, "C-left", HOUSING, "D101-rail", lambda c: replace(c, face=Surface.OUTSIDE)),
        "face", "C-left",
    ),
    "housing forgotten": (
        cabinet, lambda b: without(b, "C-right", HOUSING, "C-2.1-shelf"), "overlap", "C-2.1-shelf",
    ),
    "housing wider than the rail": (
        cabinet,
        lambda b: recut(b, "C-left", HOUSING, "D101-rail", lambda c: replace(c, x=(c.x[0], Nm(c.x[1] + 1)))),
        "hole", "C-left",
    ),
    "rail 1 nm short": (cabinet, lambda b: resized(b, "D101-rail", along=-ONE), "disagree", "D101-rail"),
    "rail 1 nm long": (cabinet, lambda b: resized(b, "D101-rail", along=ONE), "disagree", "D101-rail"),
    "rail 1 nm thinner": (cabinet, lambda b: resized(b, "D101-rail", thick=-ONE), "play", "D101-rail"),
    "rail 1 nm thicker": (cabinet, lambda b: resized(b, "D101-rail", thick=ONE), "overlap", "D101-rail"),
    "rail 1 nm wider": (cabinet, lambda b: resized(b, "D101-rail", across=ONE), "overlap", "D101-rail"),
    "runner 1 nm short": (cabinet, lambda b: resized(b, "D101-runner1", along=-ONE), "play", "D101-runner1"),
    "shelf not notched": (
        cabinet, lambda b: without(b, "C-2.1-shelf", FeatureKind.NOTCH, ""), "overlap", "C-2.1-shelf",
    ),
    "notch 1 nm too long": (
        cabinet,
        lambda b: recut(
            b, "C-2.1-shelf", FeatureKind.NOTCH, "",
            lambda c: replace(c, x=(c.x[0], Nm(c.x[1] + 1))) if c.x[0] == 0 else c,
        ),
        "hole", "C-2.1-shelf",
    ),
    "side of the carcase 1 nm short": (cabinet, lambda b: resized(b, "C-left", along=-ONE), "disagree", "C-left"),
    "both sides 1 nm short": (
        cabinet, lambda b: resized(resized(b, "C-left", along=-ONE), "C-right", along=-ONE), "disagree", "C-partition1",
    ),
    "side 1 nm thick": (cabinet, lambda b: resized(b, "C-left", thick=ONE), "corner", "C-left"),
    "cuts of two sides swapped": (cabinet, lambda b: cuts_swapped(b, "C-left", "C-right"), "disagree", "C-left"),
    "back 1 nm narrow": (cabinet, lambda b: resized(b, "C-back", along=-ONE), "play", "C-back"),
    "back's rabbet forgotten": (cabinet, lambda b: without(b, "C-left", RABBET, "C-back"), "overlap", "C-back"),
    "corner's ends swapped": (cabinet, lambda b: ends_swapped(b, "C-J1"), "corner", "C-top"),
    "corner joined at other ends": (cabinet, lambda b: ends_swapped(b, "D101-J1"), "ring", "D101-front"),
    "front labelled upside down": (
        cabinet, lambda b: relabelled(b, "D101-front", "front", "up"), "ring", "D101-front",
    ),
    "shelf labelled with its face below": (
        cabinet, lambda b: relabelled(b, "C-2.1-shelf", "down", "front"), "label", "C-2.1-shelf",
    ),
    "tail 1 nm wide": (cabinet, lambda b: a_tail_wider(b, "C-J2"), "corner", "C-bottom"),
    "pin 1 nm wide": (cabinet, lambda b: a_pin_wider(b, "D102-J1"), "corner", "D102-front"),
    "baseline 1 nm high": (
        cabinet, lambda b: with_joint(b, "C-J1", bit_height_nm=Nm(20 * MM + 400_001)), "proud", "C-right",
    ),
    "drawer's front 1 nm short": (cabinet, lambda b: resized(b, "D103-front", along=-ONE), "disagree", "D103-front"),
    "drawer's bottom 1 nm deep": (cabinet, lambda b: resized(b, "D103-bottom", across=ONE), "play", "D103-bottom"),
    "groove at another height in front": (
        cabinet, lambda b: recut(b, "D101-front", GROOVE, "D101-bottom", along_u(-2 * MM)), "disagree", "D101-bottom",
    ),
    "groove run out through a tail": (
        cabinet,
        lambda b: recut(b, "D101-left", GROOVE, "D101-bottom", lambda c: replace(c, x=(Nm(0), c.x[1]))),
        "hole", "D101-left",
    ),
    "rabbet run out through a pin": (
        cabinet,
        lambda b: recut(b, "C-left", RABBET, "C-back", lambda c: replace(c, x=(Nm(0), c.x[1]))),
        "hole", "C-left",
    ),
    "grooves at the very edge": (
        cabinet,
        lambda b: reduce(
            lambda bench, role: recut(bench, f"D102-{role}", GROOVE, "D102-bottom", at_the_edge),
            ("front", "right", "back", "left"), b,
        ),
        "held", "D102-bottom",
    ),
    "runner lost": (cabinet, lambda b: lost(b, "D101-runner1"), "carried", "D101-front"),
    "runner lost, its housing left": (cabinet, lambda b: lost(b, "D101-runner1"), "stranger", "C-left"),
    "a board too many": (
        cabinet,
        lambda b: replace(b, planks=b.planks | {"X-rail": replace(b.planks["D101-rail"], mark="X-rail", box="X")}),
        "left over", "X-rail",
    ),
    "drawer 1 nm narrow": (
        cabinet,
        lambda b: resized(resized(b, "D102-front", along=-ONE), "D102-back", along=-ONE),
        "size", "D102-front",
    ),
    "handle's hole 1 mm off": (
        cabinet, lambda b: recut(b, "D101-front", FeatureKind.HOLE, "", along_x(MM)), "handles", "D101-front",
    ),
    "door 1 nm wide": (cabinet, lambda b: resized(b, f"{DOOR}-crossrail1", along=ONE), "disagree", f"{DOOR}-stile2"),
    "door's panel 1 nm wide": (
        cabinet, lambda b: resized(b, f"{DOOR}-panel1", across=ONE), "disagree", f"{DOOR}-muntin1",
    ),
    "door 1 nm high": (cabinet, lambda b: resized(b, f"{DOOR}-stile2", along=ONE), "disagree", f"{DOOR}-stile2"),
    "loose shelf 1 nm long": (cabinet, lambda b: resized(b, "C-2.2-loose1", along=ONE), "size", "C-2.2-loose1"),
    "top 1 nm deep": (cabinet, lambda b: resized(b, "C-topboard", across=ONE), "size", "C-topboard"),
    "plinth 1 nm low in front": (cabinet, lambda b: resized(b, "CP-front", across=-ONE), "corner", "CP-front"),
    "frame's runner 1 nm short": (framed, lambda b: resized(b, "D101-runner1", along=-ONE), "hole", "D101-backrail"),
    "frame's runner 1 nm narrow": (framed, lambda b: resized(b, "D101-runner1", across=-ONE), "play", "D101-dust"),
    "frame's tenon gone": (framed, lambda b: without(b, "D101-runner1", FeatureKind.TENON, ""), "overlap", "D101-rail"),
    "dust panel 1 nm wide": (framed, lambda b: resized(b, "D101-dust", along=ONE), "play", "D101-dust"),
    "dust panel thick": (framed, lambda b: resized(b, "D101-dust", thick=ONE), "overlap", "D101-dust"),
    "a board of the back 1 nm wide": (framed, lambda b: resized(b, "C-backboard2", across=ONE), "play", "C-backboard2"),
    "a rabbet between boards 1 nm narrow": (
        framed,
        lambda b: b.changed(
            "C-backboard2",
            cuts=[replace(c, u=(Nm(c.u[0] + 1), c.u[1])) if c.u[0] else c for c in b.planks["C-backboard2"].cuts],
        ),
        "gap", "C-backboard2",
    ),
    "apron 1 nm short": (framed, lambda b: resized(b, "C-apron-front", along=-ONE), "hole", "C-apron-front"),
    "mortise 1 nm down": (
        framed, lambda b: recut(b, "C-leg1", MORTISE, "C-apron-front", along_x(ONE)), "disagree", "C-apron-front",
    ),
    "applied front 1 nm wide": (framed, lambda b: resized(b, "D101-face", along=ONE), "size", "D101-face"),
    "through tenon 1 nm short": (shelved, lambda b: resized(b, "C-1-shelf", along=-ONE), "proud", "C-1-shelf"),
    "mortise 1 nm back": (
        shelved, lambda b: recut(b, "C-left", MORTISE, "C-1-shelf", along_u(ONE)), "disagree", "C-1-shelf",
    ),
    "one tenon too few": (
        shelved,
        lambda b: b.changed("C-1-shelf", cuts=[c for c in b.planks["C-1-shelf"].cuts if c.x[0] or c.u[0] < 99 * MM]),
        "disagree", "C-left",
    ),
    "rabbet 1 nm deeper": (
        shelved, lambda b: recut(b, "C-top", RABBET, "C-left", deeper(ONE)), "disagree", "C-left",
    ),
    "till's side 1 nm short": (chest, lambda b: resized(b, "K-tillside", along=-ONE), "disagree", "K-tillside"),
    "till's lid 1 nm long": (chest, lambda b: resized(b, "K-tilllid", along=ONE), "play", "K-tilllid"),
    "lid 1 nm deep": (
        chest,
        lambda b: reduce(lambda bench, n: resized(bench, f"{LID}-crossrail{n}", along=ONE), (1, 2, 3), b),
        "disagree", f"{LID}-stile2",
    ),
    "box's side 1 nm low": (chest, lambda b: resized(b, "K-left", across=-ONE), "corner", "K-left"),
    "strip 1 nm high": (hung, lambda b: resized(b, "D101-runner-left", across=ONE), "hung", "D101-runner-left"),
    "groove for the strip 1 nm up": (
        hung, lambda b: recut(b, "D101-left", GROOVE, "D101-runner-left", along_u(ONE)), "hung", "D101-runner-left",
    ),
    "lap 1 nm thick": (hung, lambda b: with_joint(b, "D101-J1", lap_nm=Nm(6 * MM + 1)), "lap", "D101-front"),
}  # fmt: skip


@pytest.mark.parametrize("sound", [cabinet, framed, shelved, chest, hung])
def test_what_is_changed_was_sound(sound: Callable[[], Bench]) -> None:
    assert put_together(sound())[1] == []


@pytest.mark.parametrize("mutant", MUTANTS.values(), ids=MUTANTS)
def test_every_fault_is_named(mutant: Mutant) -> None:
    sound, change, code, mark = mutant
    assert (code, mark) in set(named(change(sound())))


def test_a_board_labelled_from_its_mirror_image_is_refused() -> None:
    right = derived(project(boxes=(box(),))).labels["K-front"]
    mirrored = Labels(
        outside=right.outside,
        inside=right.inside,
        reference_edge=right.reference_edge,
        far_edge=right.far_edge,
        end_a=right.end_b,
        end_b=right.end_a,
    )
    assert read_labels(right).x == WAYS["right"]
    with pytest.raises(AssertionError, match="mirrored"):
        read_labels(mirrored)


def test_an_overlap_tells_where() -> None:
    found = put_together(without(cabinet(), "C-right", HOUSING, "C-2.1-shelf"))[1]
    block = next(each.block for each in found if each.code == "overlap")
    assert block is not None
    assert block[0][1] - block[0][0] == 7 * MM
