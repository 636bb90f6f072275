"""What is wrong with parts is mended before colour, operation by operation."""

from dataclasses import replace

from plan_pieces import facts
from refettle.domain.piece import Piece
from refettle.domain.piece_plan import MendJob, PiecePlan
from refettle.domain.workshop import Workshop
from refettle.files.piece_file import read_piece
from refettle.planning.check import check_plan
from refettle.planning.mended import as_mended
from refettle.services.foresee import foresee_own
from refettle.services.plan import plan_piece

CHEST = """piece: Chest
form: chest of drawers
width: 90 cm
depth: 45 cm
height: 80 cm
drawers: 3
wood: oak
era: 1930s
old finish: shellac
look: natural satin
invented: yes
"""


TABLE = """piece: Table
form: table
width: 90 cm
depth: 60 cm
height: 74 cm
wood: oak
era: 1930s
old finish: shellac
look: natural satin
invented: yes
"""


def piece(more: str = "", text: str = CHEST) -> Piece:
    made, findings = read_piece(text + more, "chest.yaml", facts())
    assert made is not None, findings
    return made


def planned(more: str = "", workshop: Workshop | None = None) -> PiecePlan:
    return plan_piece(piece(more), workshop or Workshop(), facts(), brief=True)


def job(plan: PiecePlan, words: str) -> MendJob:
    return next(one for one in plan.mending if words in one.name)


def first_coat(plan: PiecePlan) -> int:
    days = []
    for group in plan.groups:
        steps = group.route.steps if group.route is not None else ()
        coats = {number for number, cost in enumerate(steps, start=1) if cost.step.is_coat}
        days += [
            day.day for day in plan.days for t in day.tasks if t.group == group.name and t.number in coats
        ]
    return min(days)


def last_day(plan: PiecePlan, one: MendJob) -> int:
    return max(day.day for day in plan.days for task in day.tasks if task.group == one.name)


def test_a_joint_is_knocked_apart_cleaned_fitted_dry_glued_and_tried_in_that_order() -> None:
    texts = [step.text for step in job(planned("wrong: {whole: {loose joint: 2}}\n"), "loose joint").steps]
    order = ("Knock", "Find out which glue", "Scrape and wash", "Dry-fit", "Glue, clamp", "Load it")
    assert [next(i for i, text in enumerate(texts) if text.startswith(word)) for word in order] == [
        0,
        1,
        2,
        3,
        4,
        5,
    ]


def test_no_coat_goes_on_before_the_glue_has_had_its_time() -> None:
    plan = planned("wrong: {whole: loose joint}\n")
    one = job(plan, "loose joint")
    assert first_coat(plan) >= last_day(plan, one)


def test_a_chest_with_nothing_wrong_has_nothing_to_mend() -> None:
    assert planned().mending == ()


def test_damage_said_of_the_piece_and_of_its_part_comes_to_the_same_job() -> None:
    by_damage = planned("damage: [loose joint]\n").mending
    by_wrong = planned("wrong: {whole: loose joint}\n").mending
    assert [one.name for one in by_damage] == [one.name for one in by_wrong]
    assert by_damage[0].steps == by_wrong[0].steps


def test_a_repair_that_is_a_job_stands_in_no_route() -> None:
    plan = planned("damage: [loose joint]\n")
    verbs = {cost.step.what for g in plan.groups if g.route is not None for cost in g.route.steps}
    assert "glue-joint" not in verbs


def test_too_few_clamps_make_rounds_and_more_waiting() -> None:
    few = job(planned("wrong: {whole: {loose joint: 4}}\n", Workshop(clamps=2)), "loose joint")
    many = job(planned("wrong: {whole: {loose joint: 4}}\n", Workshop(clamps=12)), "loose joint")
    assert sum(step.wait_h.likely for step in few.steps) > sum(step.wait_h.likely for step in many.steps)
    assert any("in 4 rounds" in step.text for step in few.steps)
    assert all(step.clamps <= 2 for step in few.steps)


def test_holes_of_other_pulls_are_plugged_and_drilled_before_colour() -> None:
    holes = "fittings:\n  - pulls: {count: 3, old spacing: 64 mm, new spacing: 96 mm}\n"
    plan = planned(holes)
    one = job(plan, "old pulls 64 mm, new 96 mm")
    assert one.stage == "before colour"
    assert any("glue in plugs" in step.text for step in one.steps)
    assert any("Holes: old pulls 64 mm, new 96 mm" in line for line in plan.lines)


def test_a_back_plate_that_covers_the_old_holes_saves_the_plugs() -> None:
    covered = "fittings:\n  - pulls: {count: 3, old spacing: 64 mm, new spacing: 96 mm, back plate: 90 mm}\n"
    assert not any("plugs" in step.text for step in job(planned(covered), "holes").steps)


def test_pulls_of_the_same_spacing_are_only_taken_off_and_put_back() -> None:
    pulls = "fittings:\n  - pulls: {count: 3, old spacing: 96 mm, new spacing: 96 mm}\n"
    plan = plan_piece(piece(pulls, text=TABLE), Workshop(), facts(), brief=True)
    assert {one.stage for one in plan.mending} == {"before colour", "after coats"}
    assert not any("holes" in one.name for one in plan.mending)


def test_hardware_of_a_piece_with_drawers_comes_off_once_and_before_its_holes_are_drilled() -> None:
    plan = planned("fittings:\n  - pulls: {count: 3, old spacing: 64 mm, new spacing: 96 mm}\n")
    texts = [task.text for day in plan.days for task in day.tasks]
    off = [number for number, text in enumerate(texts) if "hardware" in text]
    assert [texts[number].partition(",")[0] for number in off] == ["Take off hardware", "Refit the hardware"]
    assert off[0] < next(number for number, text in enumerate(texts) if text.startswith("Drill stripped"))


def test_filling_waits_for_bare_wood_and_toning_for_the_last_sanding() -> None:
    pulls = "fittings:\n  - pulls: {count: 3, old spacing: 64 mm, new spacing: 96 mm}\n"
    painted = CHEST.replace("shellac", "alkyd enamel")
    plan = plan_piece(piece(pulls, text=painted), Workshop(), facts(), brief=True)
    group = next(one for one in plan.groups if "drawer.1/front" in one.members)
    assert group.route is not None
    steps = {number: cost.step for number, cost in enumerate(group.route.steps, start=1)}
    first = min(number for number, step in steps.items() if step.is_coat)
    off = [n for n, step in steps.items() if step.verb in {"strip", "rinse"} or "to bare" in step.how]
    assert off
    laid = [(task.group, task.number, task.text) for day in plan.days for task in day.tasks]
    plugs = next(i for i, (_, _, text) in enumerate(laid) if text.startswith("Drill stripped"))
    toned = next(i for i, (_, _, text) in enumerate(laid) if text.startswith("Seal the filling"))
    assert plugs > max(i for i, (name, n, _) in enumerate(laid) if name == group.name and n in off)
    assert toned > max(i for i, (name, n, _) in enumerate(laid) if name == group.name and 0 < n < first)


def test_woodworm_holes_are_hardened_before_it_comes_in_and_filled_when_the_wood_is_bare() -> None:
    plan = planned("wrong: {whole: old woodworm}\n")
    jobs = {one.stage: [step.text.partition(" ")[0] for step in one.steps] for one in plan.mending}
    assert jobs == {"first": ["Tap", "Brush", "Drip"], "before colour": ["Fill", "Seal"]}


def test_the_checker_finds_a_filling_that_the_remover_would_take_off_again() -> None:
    made = piece("wrong: {whole: old woodworm}\nsoundness: flaking\n")
    plan = plan_piece(made, Workshop(), facts(), brief=True)
    assert not [one for one in check_plan(facts(), made, Workshop(), plan) if one.code == "filled-too-soon"]
    first, *rest = plan.days
    filling = [t for day in plan.days for t in day.tasks if t.group.endswith("filling")]
    kept = [replace(day, tasks=tuple(t for t in day.tasks if t not in filling)) for day in rest]
    early = replace(first, tasks=(*filling, *first.tasks))
    wrong = replace(plan, days=(early, *kept))
    assert "filled-too-soon" in {one.code for one in check_plan(facts(), made, Workshop(), wrong)}


def test_a_mirror_is_left_protected_or_taken_off_as_the_person_says() -> None:
    assert planned("fittings: [{mirror: leave}]\n").mending == ()
    assert "Mask" in planned("fittings: [{mirror: protect}]\n").mending[0].steps[0].text
    assert "Lift" in planned("fittings: [mirror]\n").mending[0].steps[0].text


def test_woodworm_that_may_live_is_kept_out_before_anything_is_done() -> None:
    plan = planned("wrong: {whole: active woodworm}\n")
    first = plan.days[0].tasks[0]
    assert job(plan, "woodworm").stage == "first"
    assert "Wrap it in plastic" in first.text
    later = [day.day for day in plan.days for task in day.tasks if task.number]
    assert min(later) > last_day(plan, job(plan, "woodworm"))
    assert any(finding.code == "when-to-give-up" for finding in plan.findings)


def test_a_smell_is_washed_aired_and_smelled_again_before_it_is_sealed() -> None:
    texts = [step.text for step in job(planned("wrong: {whole: musty smell}\n"), "musty").steps]
    assert texts[-1].startswith("Close it in a warm room for two days")


def test_a_smell_leaves_less_inside_than_it_was() -> None:
    smelly = piece("wrong: {whole: musty smell}\n")
    inside = [s for s in as_mended(facts(), smelly).surfaces if s.orientation == "inside"]
    assert all(0 < dict(s.old_stain)["musty"] < 60 for s in inside)


def test_ones_own_steps_are_foreseen_on_what_is_not_mended() -> None:
    bare = CHEST.replace("old finish: shellac", "old finish: bare")
    more = "build: veneer\nintend:\n  - coat: waterborne acrylic clear\n    film: heavy\n"
    loose = foresee_own(piece(f"damage: [lifted veneer]\n{more}", bare), Workshop(), facts())
    sound = foresee_own(piece(more, bare), Workshop(), facts())
    lifts = [sum(r.chance for r in of["top"] if r.fault == "veneer-lifts") for of in (loose, sound)]
    assert lifts[0] > lifts[1]


def test_the_hours_and_the_glue_are_counted() -> None:
    sound, loose = planned(), planned("wrong: {whole: {loose joint: 4}}\n")
    one = job(loose, "loose joint")
    hands_on = sum(step.minutes.likely for step in one.steps)
    assert loose.minutes.likely > sound.minutes.likely + 0.9 * hands_on
    assert any(item.cls == one.name and item.money.likely > 0 for item in loose.buy)


def test_a_sound_plan_with_mending_passes_the_checker() -> None:
    made = piece("wrong: {drawers: worn runner, whole: loose joint}\nfittings: [pulls]\n")
    plan = plan_piece(made, Workshop(), facts())
    assert check_plan(facts(), made, Workshop(), plan) == ()


def damaged(plan: PiecePlan, made: Piece) -> set[str]:
    return {finding.code for finding in check_plan(facts(), made, Workshop(), plan)}


def test_the_checker_misses_a_job_that_is_left_out() -> None:
    made = piece("wrong: {whole: loose joint}\n")
    plan = plan_piece(made, Workshop(), facts(), brief=True)
    assert "not-mended" in damaged(replace(plan, mending=()), made)


def test_the_checker_finds_an_operation_without_an_evening() -> None:
    made = piece("wrong: {whole: loose joint}\n")
    plan = plan_piece(made, Workshop(), facts(), brief=True)
    name = plan.mending[0].name
    days = tuple(
        replace(day, tasks=tuple(t for t in day.tasks if not (t.group == name and t.text.startswith("Glue"))))
        for day in plan.days
    )
    assert "job-differs" in damaged(replace(plan, days=days), made)


def test_the_checker_finds_a_coat_laid_before_the_mending_is_over() -> None:
    made = piece("wrong: {whole: loose joint}\n")
    plan = plan_piece(made, Workshop(), facts(), brief=True)
    late = plan.days[-1].day + 30
    name = plan.mending[0].name
    moved = tuple(t for day in plan.days for t in day.tasks if t.group == name)
    days = tuple(replace(day, tasks=tuple(t for t in day.tasks if t.group != name)) for day in plan.days)
    whole = (*days, replace(plan.days[-1], day=late, tasks=moved))
    assert "coat-before-mending" in damaged(replace(plan, days=whole), made)


def test_a_part_that_the_form_has_not_is_told_with_those_it_has() -> None:
    made, findings = read_piece(CHEST + "wrong: {drawer.9: worn runner}\n", "chest.yaml", facts())
    assert made is None
    assert findings[0].code == "unknown-part"
    assert findings[0].do.startswith('write "drawer.')


def test_damage_that_nobody_knows_is_told_with_the_nearest_word() -> None:
    made, findings = read_piece(CHEST + "wrong: {drawer.1: worn runnner}\n", "chest.yaml", facts())
    assert made is None
    assert "worn" in findings[0].do
