"""What must come before what, and how the work is set, by rules written down apart from the code."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import groupby, pairwise

import pytest

from planner.domain.operation import Chapter, Machine, Operation, Setting
from planner.domain.plan import Plan
from planner.domain.space import Space
from planner.domain.words import DividerKind
from planner.plan import tasks
from planner.plan.bench import Job, in_turn
from tests.pieces import ash, inches, project, six_drawers, tiers
from tests.plan import pieces
from tests.plan.orders import found_for, in_shop_order, planned

CHEST = planned(six_drawers())
AT_ONCE = found_for(CHEST, all_at_once=True)
PLACE = {mark: n for n, mark in enumerate(mark for work in CHEST.order for mark in work.operations)}


@cache
def built(name: str) -> Plan:
    return planned(pieces.ALL[name]())


def operation(piece: Plan, mark: str) -> Operation:
    return next(each for each in piece.operations if each.mark == mark)


def before(earlier: str, later: str) -> bool:
    return PLACE[earlier] < PLACE[later]


# --- the chest of six drawers ------------------------------------------------------------------------------


def test_every_operation_is_in_the_order_once_and_after_what_it_needs() -> None:
    assert sorted(PLACE) == sorted(o.mark for o in CHEST.operations)
    assert sum(len(work.operations) for work in CHEST.order) == len(CHEST.operations)
    assert all(before(needed, o.mark) for o in CHEST.operations for needed in o.after)


def test_operations_of_the_chest_are_as_many_as_counted_by_hand() -> None:
    """40 boards: 4 + 5 rails + 1 back, and 6 drawers of 5; 7 of them sheets (back, bottoms), which are not planed.

    Boards: 33 planed, 40 ripped, cut to length and labelled: 153. Corners: 28, each with 2 gauges, a layout, 2 visits
    to the sled, a tracing, 2 visits to the bandsaw, shoulders, a trial: 280, and 3 practice joints (carcase; drawer
    front; drawer back, which is thinner): 283. The bit leaves wedges in none. Cuts: 4 rabbets, 10 housings, 24 grooves:
    38. Rings: 7, each tried, sanded, glued, flushed: 28. Then 5 rails, a check, 6 openings measured, 6 drawers fitted,
    the back, the finish and all put back: 21.
    """
    assert len(CHEST.operations) == 153 + 283 + 38 + 28 + 21


def test_tails_are_traced_from_finished_pins_of_their_own_joint() -> None:
    for joint in CHEST.joints:
        pin_end = f"{joint.pin_board}-{joint.pin_end}"
        assert before(f"layout {pin_end}", f"pins {pin_end} right fence")
        for fence in ("left", "right"):
            assert before(f"pins {pin_end} {fence} fence", f"trace {joint.mark}")
        for lean in ("left", "right"):
            assert before(f"trace {joint.mark}", f"tails {joint.tail_board}-{joint.tail_end} {lean} lean")


def test_a_joint_waits_for_its_own_ends_and_no_others() -> None:
    trace = operation(CHEST, "trace C-J1")
    ends = {"C-top-B", "C-right-A"}
    assert {operation(CHEST, mark).subject for mark in trace.after} == ends


def test_the_carcase_stands_before_openings_are_measured_and_drawers_cut() -> None:
    for drawer in ("D1", "D2", "D6"):
        assert before("put in D1-rail", f"measure {drawer}")
        assert before("check C", f"measure {drawer}")
        assert before(f"plane {drawer}-front", "glue C")  # all thicknesses are planed at once
        for role in ("front", "right", "back", "left", "bottom"):
            assert before(f"measure {drawer}", f"rip {drawer}-{role}")
        assert before(f"flush {drawer}", f"drawer {drawer}")
        assert before(f"drawer {drawer}", "back C-back")
    assert [work.operations for work in CHEST.order[-2:]] == [("finish C",), ("hang C",)]


def test_everything_may_be_cut_at_once_and_drawers_fitted_when_the_carcase_stands() -> None:
    marks = [each.mark for each in in_shop_order(AT_ONCE)]
    place = {mark: number for number, mark in enumerate(marks)}
    assert not any(mark.startswith("measure") for mark in marks)
    assert place["label D6-left"] < place["gauge C-top-A"]
    assert place["check C"] < place["drawer D1"]
    settings = [(each.machine, each.setting, each.task) for each in AT_ONCE]
    assert len(set(settings)) < len({(work.machine, work.setting, work.task, work.chapter) for work in CHEST.order})


def test_each_setting_is_visited_once_in_each_part_of_the_build() -> None:
    visits = [(work.machine, work.setting, work.task, work.chapter) for work in CHEST.order]
    assert len(set(visits)) == len(visits)
    chapters = [chapter for chapter, _ in groupby(work.chapter for work in CHEST.order)]
    assert chapters == list(Chapter)


def test_dangerous_machines_carry_their_cautions() -> None:
    for work in CHEST.order:
        if work.machine not in (Machine.BENCH, Machine.GAUGE, Machine.CLAMPS):
            assert work.cautions, work
            assert any("manual" in caution for caution in work.cautions)
    at_sled = next(work for work in CHEST.order if work.machine is Machine.ROUTER_TABLE_SLED)
    text = " ".join(at_sled.cautions)
    for needed in (
        "Clamp", "router off", "stand clear", "never trap", "Lock the bit height", "hearing protection", "manual",
        "local rules",
    ):  # fmt: skip
        assert needed in text


def test_gluing_says_to_look_up_the_open_time_and_finishing_what_oily_rags_do() -> None:
    said = {work.task: " ".join(work.cautions) for work in CHEST.order}
    assert "on the bottle: check it" in said[tasks.GLUE.does]
    assert "catch fire" in said[tasks.FINISH.does]


# --- settings ----------------------------------------------------------------------------------------------


def test_the_order_changes_the_bit_height_no_oftener_than_the_sled_sheet() -> None:
    """Practice joints included: each is made when its height is set for the real boards, not before all of them."""
    at_sled = [work for work in CHEST.order if work.machine is Machine.ROUTER_TABLE_SLED]
    heights = [height for height, _ in groupby(dict(work.setting.lengths)["bit height"] for work in at_sled)]
    assert len(heights) == 1 + CHEST.sled.height_changes == 2
    settings = [setting for setting, _ in groupby(work.setting for work in at_sled)]
    assert len(settings) == len(CHEST.sled.settings)


@pytest.mark.parametrize("all_at_once", [False, True])
def test_ends_are_cut_in_the_order_of_the_sled_sheet(*, all_at_once: bool) -> None:
    """The second fence begins with the end that is already down: what the sheet says is what the order says."""
    found = AT_ONCE if all_at_once else CHEST.operations
    told = {setting.number: [f"{cut.board}-{cut.end}" for cut in setting.cuts] for setting in CHEST.sled.settings}
    cut: dict[int, list[str]] = {}
    for each in in_shop_order(found):
        if each.task == tasks.PINS.does:
            cut.setdefault(int(each.setting.words.removeprefix("setting ")[:2]), []).append(each.subject)
    assert cut == told
    assert any(ends[0].endswith("B") for ends in told.values())


@pytest.mark.parametrize("all_at_once", [False, True])
def test_tails_are_sawn_in_the_order_of_the_tails_sheet(*, all_at_once: bool) -> None:
    found = AT_ONCE if all_at_once else CHEST.operations
    told = {at.setting: [f"{end.board}-{end.end}" for end in at.ends] for at in CHEST.tails}
    sawn: dict[Setting, list[str]] = {}
    for each in in_shop_order(found):
        if each.task == tasks.SAW.does:
            sawn.setdefault(each.setting, []).append(each.subject)
    assert sawn == told
    if all_at_once:
        assert list(sawn) == list(told)


def test_boards_are_planed_ripped_and_cut_from_the_largest_down() -> None:
    # Solid stuff of the chest: 1/2 in sides and backs, 3/4 fronts and rails, 7/8 carcase.
    planed = [dict(work.setting.lengths)["thickness"] for work in CHEST.order if work.machine is Machine.PLANER]
    assert planed == [inches("7/8"), inches("3/4"), inches("1/2")]
    for chapter in (Chapter.PLANNED, Chapter.MEASURED):
        cut = [work for work in CHEST.order if work.task == tasks.CROSSCUT.does and work.chapter is chapter]
        lengths = [dict(work.setting.lengths)["length"] for work in cut]
        assert lengths == sorted(lengths, reverse=True)


def test_both_sides_share_the_setting_of_a_housing_counted_from_the_top() -> None:
    """Rail 1 lies 5 1/2 below the top's inside: 1/64 + 7/8 + 5 1/2 = 6 25/64 from the top ends, 1/4 deep, 3/4 wide."""
    left, right = (operation(CHEST, f"housing C-{side} for D1-rail") for side in ("left", "right"))
    assert left.setting == right.setting
    wide, deep, place = inches("3/4"), inches("1/4"), inches("6 25/64")
    assert left.setting.lengths == (("width of cut", wide), ("depth", deep), ("top end to cut", place))


def test_settings_of_a_door_by_hand() -> None:
    """Frame 3/4 thick, panel 1/4: the groove is 1/4 from the outside face. Stiles and rails 2 wide, groove 3/8 deep.

    A rail's tenon is 1 long, 1/4 thick, its cheeks 1/4 in from both faces; its mortise 1 deep in the stile's edge.
    """
    doors = built("of_doors")
    quarter, one = inches("1/4"), inches("1")
    groove = operation(doors, "groove C-2-door-stile1 for C-2-door-panel1")
    assert groove.setting.lengths == (("width of cut", quarter), ("depth", inches("3/8")), ("fence to cut", quarter))
    mortise = operation(doors, "mortise C-2-door-stile1 for C-2-door-crossrail1")
    assert mortise.setting.lengths == (("width of cut", quarter), ("depth", one), ("fence to cut", quarter))
    tenon = operation(doors, "tenon C-2-door-crossrail1-A")
    assert tenon.setting.lengths == (
        ("tenon length", one), ("thickness", quarter), ("outside cheek", quarter), ("inside cheek", quarter)
    )  # fmt: skip
    assert "mortise C-2-door-stile1 for C-2-door-crossrail1" in tenon.after


def test_drills_are_set_to_a_diameter_and_a_depth_where_they_stop() -> None:
    """A till's lid 1/2 thick turns on pins 1/4 thick, 1/4 deep in the chest's front, twice as deep in the lid."""
    chest = built("blanket_chest")
    quarter = inches("1/4")
    assert operation(chest, "drill K-front for K-tilllid").setting.lengths == (("drill", quarter), ("depth", quarter))
    lid = operation(chest, "drill K-tilllid-A").setting.lengths
    assert lid == (("drill", quarter), ("depth", inches("1/2")))
    through = operation(built("of_strips"), "drill D1-face")
    assert through.setting.lengths == (("drill", inches("3/16")),)
    assert set(through.boards) == {"D1-front", "D1-face"}
    assert through.count == 8  # two pulls with two holes each, in both boards


# --- hands, clamps, time -----------------------------------------------------------------------------------


def test_clamps_are_one_for_each_six_inches_of_what_is_pressed_home() -> None:
    """150 mm is 5.9 in: a carcase 20 in deep takes 4 on each of its two pin boards, drawer 6, 7 7/8 high, 2 on each."""
    assert operation(CHEST, "glue C").clamps == 8
    assert operation(CHEST, "glue D6").clamps == 4
    assert operation(CHEST, "glue D1").clamps == 2  # 5 3/8 high
    assert operation(CHEST, "put in D1-rail").clamps == 1
    stand = built("of_frames")
    assert operation(stand, "ends C-apron-left").clamps == 1  # an apron 4 in wide
    assert operation(stand, "glue C-stand").clamps == 2


def test_what_is_heavy_takes_two_people() -> None:
    """The chest's ring: 2·(36·20 + 46·20)·7/8 in³ = 2870 in³, 0.047 m³, 33 kg at 700 kg/m³; a drawer some 5 kg."""
    assert operation(CHEST, "glue C").hands == 2
    assert operation(CHEST, "sand C").hands == 1  # board by board
    assert operation(CHEST, "glue D6").hands == 1
    assert operation(CHEST, "rip C-left").hands == 1


def test_what_is_long_takes_two_people() -> None:
    """Boards over 2.4 m (94 1/2 in) at the saw, glue-ups over 1.2 m (47 1/4 in), however light."""
    made = project(boxes=(replace(pieces.box("K"), length_nm=inches("96"), height_nm=inches("3")),))
    (sled,) = made.sleds
    piece = planned(replace(made, sleds=(replace(sled, greatest_upright_nm=inches("120")),)))
    assert operation(piece, "rip K-front").hands == 2
    assert operation(piece, "rip K-left").hands == 1
    assert operation(piece, "glue K").hands == 2


def test_a_run_takes_its_setting_and_each_of_its_operations() -> None:
    planed = CHEST.order[0]
    assert len(planed.operations) == 4  # 7/8: the carcase
    assert planed.estimate_s == tasks.PLANE.setup_s + 4 * tasks.PLANE.each_s
    at_sled = [work for work in CHEST.order if work.task == tasks.PINS.does]
    rates, passes = CHEST.project.rates, CHEST.sled.tally.passes
    ends = sum(len(setting.cuts) for setting in CHEST.sled.settings)
    changes = rates.sled_change_s + rates.height_change_s + 2 * rates.fence_swap_s
    assert sum(work.estimate_s for work in at_sled) == changes + ends * rates.handling_s + passes * rates.pass_s


# --- made up, caught, put in later -------------------------------------------------------------------------


def test_a_web_frame_is_made_up_first_housed_across_and_slid_in_from_behind() -> None:
    frames = built("of_frames")
    place = {mark: n for n, mark in enumerate(mark for work in frames.order for mark in work.operations)}
    across = operation(frames, "housing C-1-rail for C-1-partition1")
    assert across.boards == ("C-1-rail", "C-1-runner3", "C-1-backrail")
    steps = ["glue C-1-frame", across.mark, "put in C-1-frame", "put in C-1-partition1", "back C-back"]
    assert [place[step] for step in steps] == sorted(place[step] for step in steps)
    assert place["glue C"] < place["put in C-1-frame"]
    assert operation(frames, "put in C-1-frame").setting == Setting("from behind")
    assert operation(frames, "put in C-1-frame").clamps == 1  # glued in front only


def test_a_stand_is_glued_up_in_two_stages_its_short_ends_first() -> None:
    stand = built("of_frames")
    assert operation(stand, "ends C-apron-left").boards == ("C-leg1", "C-leg4", "C-apron-left")
    assert set(operation(stand, "glue C-stand").after) == {"ends C-apron-left", "ends C-apron-right"}


def test_bottoms_slide_in_once_slips_are_on_and_strips_grooves_are_cut_in_the_glued_up_drawer() -> None:
    rails, strips = built("of_rails"), built("of_strips")
    assert {"slips D101-slip-left", "slips D101-slip-right"} <= set(operation(rails, "put in D101-bottom").after)
    groove = operation(strips, "groove D1-left for D1-runner-left")
    assert groove.after == ("flush D1",)
    assert set(groove.boards) == {"D1-left", "D1-back"}
    assert "flush D101" in operation(rails, "slips D101-slip-left").after


def test_rails_come_from_the_front_and_runners_from_behind() -> None:
    rails = built("of_rails")
    assert operation(rails, "put in D101-rail").setting == Setting("from the front")
    assert operation(rails, "put in D101-runner1").setting == Setting("from behind")
    assert operation(rails, "put in C-partition1").setting == Setting("from behind")


def test_a_rabbet_shallower_than_the_housings_leaves_only_the_way_from_the_front() -> None:
    """Behind the housing, 1/4 deep, the side is whole again but for a rabbet 1/8 deep: nothing passes there."""
    shallow = cupboard(shelves=pieces.PARTITIONS, back=replace(pieces.BACK, rabbet_depth_nm=inches("1/8")))
    assert operation(shallow, "put in C-1-shelf").setting == Setting("from the front")
    deep = cupboard(shelves=pieces.PARTITIONS, back=pieces.BACK)
    assert operation(deep, "put in C-1-shelf").setting == Setting("from behind")


def test_a_stopped_housing_behind_a_shallow_rabbet_catches_its_shelf_at_the_glue_up() -> None:
    caught = cupboard(shelves=pieces.STOPPED, back=replace(pieces.BACK, rabbet_depth_nm=inches("1/8")))
    assert "C-1-shelf" in operation(caught, "glue C").boards
    assert not any(each.mark == "put in C-1-shelf" for each in caught.operations)
    free = cupboard(shelves=pieces.STOPPED, back=pieces.BACK)
    assert "C-1-shelf" not in operation(free, "glue C").boards


def test_through_tenons_go_in_at_the_glue_up() -> None:
    glue = operation(built("tenoned"), "glue C")
    assert {"C-1.1-shelf", "C-partition1"} < set(glue.boards)


def cupboard(**others: object) -> Plan:
    inside = tiers(Space(), Space(), by=DividerKind.SHELF)
    return planned(project(carcases=(pieces.carcase("C", inside, **others),)))


def test_a_till_and_its_lid_are_in_before_the_chest_is_closed() -> None:
    chest = built("blanket_chest")
    inside = {"K-bottom", "K-tillside", "K-tillbottom", "K-tilllid"}
    assert inside < set(operation(chest, "glue K").boards)


def test_a_closed_box_is_sawn_open_only_when_it_is_glued_up_and_then_planed_and_hinged() -> None:
    box = built("sawn_box")
    assert {"K-bottom", "K-toppanel"} < set(operation(box, "glue K").boards)
    chain = ["glue K", "flush K", "open K", "edges K", "hinge K", "finish K", "hang K"]
    for earlier, later in pairwise(chain):
        assert operation(box, later).after == (earlier,)


def test_a_base_and_a_top_are_fixed_before_openings_are_measured_and_fronts_before_their_holes() -> None:
    frames, strips = built("of_frames"), built("of_strips")
    assert operation(frames, "top C-topboard").after[0] == "base C-stand"
    assert operation(frames, "measure D1").after == ("top C-topboard",)
    assert operation(strips, "drill D1-face").after == ("face D1-face",)
    assert operation(strips, "face D1-face").after[0] == "drawer D1"


# --- the one rule ------------------------------------------------------------------------------------------


def job(task: tasks.Task, subject: str, *boards: str, **others: object) -> Job:
    return Job(task=task, subject=subject, box="K", boards=boards, **others)  # type: ignore[arg-type]


def test_whatever_order_jobs_are_told_in_a_groove_comes_before_the_glue_up() -> None:
    glue, groove = job(tasks.GLUE, "K", "K-front", "K-left"), job(tasks.GROOVE, "K-front", "K-front")
    for told in ([glue, groove], [groove, glue]):
        found = {each.mark: each.after for each in in_turn(told)}
        assert found == {"groove K-front": (), "glue K": ("groove K-front",)}


def test_jobs_on_different_boards_and_ends_do_not_wait_for_each_other() -> None:
    one = job(tasks.GAUGE, "K-front-A", "K-front", touches=("K-front-A",), whole=False)
    other = job(tasks.LAY_OUT, "K-front-B", "K-front", touches=("K-front-B",), whole=False)
    assert {each.mark: each.after for each in in_turn([one, other])} == {"gauge K-front-A": (), "layout K-front-B": ()}


def test_two_jobs_of_one_name_are_a_fault_and_so_is_one_that_waits_for_what_comes_later() -> None:
    groove = job(tasks.GROOVE, "K-front", "K-front")
    with pytest.raises(ValueError, match="there twice"):
        list(in_turn([groove, groove]))
    too_early = job(tasks.LABEL, "K-front", "K-front", after=("groove K-front",))
    with pytest.raises(ValueError, match="before"):
        list(in_turn([groove, too_early]))


def test_every_task_has_one_level_and_a_word_for_its_marks() -> None:
    everything = [task for level in tasks.LEVELS for task in level]
    assert len(set(everything)) == len(everything) == len({task.does for task in everything})
    named = {value for name, value in vars(tasks).items() if isinstance(value, tasks.Task)}
    assert named == set(everything)


def test_solid_boards_are_planed_and_sheets_are_not() -> None:
    planed = {each.subject for each in CHEST.operations if each.task == tasks.PLANE.does}
    assert planed == {board.mark for board in CHEST.boards if board.material == ash("1").material}
