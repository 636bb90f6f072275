"""Mending before colour: what is wrong with parts becomes jobs, operation by operation."""

from collections.abc import Iterator
from dataclasses import replace
from math import ceil

from refettle.domain.finding import Finding, Where
from refettle.domain.piece import Piece
from refettle.domain.piece_plan import MendJob, MendStep, Purchase
from refettle.domain.plan import Range
from refettle.domain.workshop import Workshop
from refettle.domain.wrong import Fitting, Wrong
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.mended import all_wrong
from refettle.services.around import has_moving_parts

STAGES = ("first", "before colour", "after coats")
_SPACING_MM = 1.0
_MOVES = ("drawer", "door", "lid", "leaf")
_ONCE = frozenset({
    "number-parts", "take-out", "tell-glue", "load-test", "quarantine", "paper-test", "licensed-pest", "licensed-bugs",
    "air-out", "sniff-test", "vacuum-out", "wash-inside", "wash-mouse", "bag-hardware", "refit-hardware",
})  # fmt: skip
"""Operations done once for a job, however many joints or holes it has."""


def jobs_of(know: Knowledge, piece: Piece, workshop: Workshop) -> tuple[MendJob, ...]:
    """
    Return the mending of a piece in working order.

    Parameters
    ----------
    know
        Facts on damages, repairs, operations, fittings.
    piece
        What is wrong, structural damage said of surfaces included, and its fittings.
    workshop
        For its clamps.

    Returns
    -------
    tuple of MendJob
        What comes first of all, then what comes before colour, then what comes when the coats are hard; within
        one stage in the order of the file.

    """
    jobs = [job for wrong in all_wrong(know, piece) for job in _in_stages(_job(know, piece, workshop, wrong))]
    jobs.extend(job for fitting in piece.fittings for job in _of_fitting(know, piece, workshop, fitting))
    jobs.extend(_afterwards(know, piece, jobs))
    return tuple(sorted(_together(jobs), key=lambda job: STAGES.index(job.stage)))


def _surfaces(piece: Piece, part: str) -> tuple[str, ...]:
    """Return the surfaces whose coats wait for a part; all of them for the whole piece."""
    return tuple(s.name for s in piece.surfaces if not part or s.part == part)


def _job(know: Knowledge, piece: Piece, workshop: Workshop, wrong: Wrong) -> MendJob:
    """Return the job that mends one thing."""
    facts = know.damage(wrong.damage)
    operations = know.repair(facts.mend).operations
    steps = tuple(
        _step(know, workshop, operation, 1 if operation in _ONCE else wrong.count) for operation in operations
    )
    many = f" × {wrong.count}" if wrong.count > 1 else ""
    return MendJob(
        name=f"{wrong.part or 'whole piece'}: {facts.name}{many}",
        part=wrong.part,
        what=f"{facts.name}{many}",
        stage=facts.stage,
        steps=steps,
        surfaces=_surfaces(piece, wrong.part),
        money=_money(know, operations, wrong.count),
        reason=_REASONS[facts.stage],
        repair=facts.mend,
    )


_HARDWARE = frozenset({"bag-hardware", "refit-hardware"})
_REASONS = {
    "first": "before it comes in, and before anything is shut in under a film",
    "before colour": "glue, filler and fresh wood must be under the colour, not on it",
    "after coats": "coats take up room",
}


def _in_stages(job: MendJob) -> Iterator[MendJob]:
    """Yield a job as it is; what comes before all else leaves its filling and toning to the time before colour."""
    later = tuple(step for step in job.steps if step.waits_for)
    if job.stage != "first" or not later:
        yield job
        return
    yield replace(job, steps=tuple(step for step in job.steps if not step.waits_for))
    nothing = Range(low=0.0, likely=0.0, high=0.0)
    yield replace(
        job,
        name=f"{job.name}: filling",
        stage="before colour",
        steps=later,
        money=nothing,
        reason=_REASONS["before colour"],
    )


def _step(know: Knowledge, workshop: Workshop, operation: str, count: int) -> MendStep:
    """Return one operation done some times, in rounds where there are not clamps enough."""
    facts = know.operation(operation)
    subject = f"operation:{operation}"
    low, likely, high = know.range_of(subject, "h_each")
    clamps = round(facts.clamps) * count
    rounds = max(1, ceil(clamps / max(1, workshop.clamps))) if clamps else 1
    wait_low, wait, wait_high = know.range_of(subject, "wait_h")
    text = (
        facts.name if rounds == 1 else f"{facts.name}; in {rounds} rounds, there are {workshop.clamps} clamps"
    )
    return MendStep(
        text=text,
        minutes=Range(low=60.0 * low * count, likely=60.0 * likely * count, high=60.0 * high * count),
        wait_h=Range(low=wait_low * rounds, likely=wait * rounds, high=wait_high * rounds),
        clamps=min(clamps, max(1, workshop.clamps)),
        waits_for=facts.waits_for,
        because=know.because(subject, "h_each"),
    )


def _money(know: Knowledge, operations: tuple[str, ...], count: int) -> Range:
    """Return the material of some operations [money]."""
    total = [0.0, 0.0, 0.0]
    for operation in operations:
        times = 1 if operation in _ONCE else count
        for i, amount in enumerate(know.range_of(f"operation:{operation}", "price")):
            total[i] += times * amount
    return Range(low=total[0], likely=total[1], high=total[2])


def _of_fitting(know: Knowledge, piece: Piece, workshop: Workshop, fitting: Fitting) -> Iterator[MendJob]:
    """Yield what is done with a fitting: off or covered before colour, back after, new holes in between."""
    facts = know.fitting(fitting.kind)
    before = ("mask-part",) if fitting.way == "protect" else facts.before
    after = () if fitting.way == "protect" else facts.after
    if fitting.way == "leave":
        before = after = ()
    if has_moving_parts(s.name for s in piece.surfaces):  # its hardware comes off and goes back as a whole
        before, after = (tuple(o for o in some if o not in _HARDWARE) for some in (before, after))
    for stage, operations in (("before colour", before), ("after coats", after)):
        if operations:
            yield MendJob(
                name=f"{facts.name}: {'off or covered' if stage == 'before colour' else 'back on'}",
                part="",
                what=facts.name,
                stage=stage,
                steps=tuple(_step(know, workshop, operation, 1) for operation in operations),
                surfaces=_surfaces(piece, ""),
                money=_money(know, operations, 1),
                reason="it takes no finish" if stage == "before colour" else _REASONS[stage],
            )
    old, new = fitting.old_spacing_mm, fitting.new_spacing_mm
    if old is not None and new is not None and abs(old - new) > _SPACING_MM:
        covered = fitting.plate_mm is not None and fitting.plate_mm >= old
        yield _holes(know, piece, workshop, fitting, covered=covered)


def _holes(know: Knowledge, piece: Piece, workshop: Workshop, fitting: Fitting, *, covered: bool) -> MendJob:
    """Return the job of old and new holes of pulls, which is done while the wood is bare."""
    operations = ("drill-new",) if covered else know.repair(know.damage("misplaced-holes").mend).operations
    old, new = f"{fitting.old_spacing_mm:.0f}", f"{fitting.new_spacing_mm:.0f}"
    what = f"old pulls {old} mm, new {new} mm" + (", the back plate covers the old holes" if covered else "")
    holes = 2 * fitting.count
    return MendJob(
        name=f"holes: {what}",
        part="",
        what=what,
        stage="before colour",
        steps=tuple(_step(know, workshop, operation, holes) for operation in operations),
        surfaces=_surfaces(piece, ""),
        money=_money(know, operations, holes),
        reason="holes filled and drilled after colour show for good",
        repair="plug-and-drill",
    )


def _afterwards(know: Knowledge, piece: Piece, jobs: list[MendJob]) -> Iterator[MendJob]:
    """Yield easing and waxing of what runs and closes, where a drawer or door is mended."""
    moving = [job for job in jobs if any(word in job.part for word in _MOVES)]
    if not moving:
        return
    operations = ("wax-runners", "ease-after")
    plain = Workshop()
    yield MendJob(
        name="drawers and doors: run and close",
        part="",
        what="runners waxed, everything tried",
        stage="after coats",
        steps=tuple(_step(know, plain, operation, 1) for operation in operations),
        surfaces=_surfaces(piece, ""),
        money=_money(know, operations, 1),
        reason=_REASONS["after coats"],
    )


def _together(jobs: list[MendJob]) -> list[MendJob]:
    """Return jobs of equal name once."""
    return list({job.name: job for job in jobs}.values())


def bought_for(jobs: tuple[MendJob, ...]) -> tuple[Purchase, ...]:
    """Return what the jobs need to be bought, one entry a job."""
    none = Range(low=0.0, likely=0.0, high=0.0)
    return tuple(
        Purchase(
            cls=job.name,
            kind="repair",
            name=f"for: {job.name}",
            need_l=none,
            have_l=0.0,
            buy=f"for: {job.name}",
            money=job.money,
            because=tuple(dict.fromkeys(row for step in job.steps for row in step.because)),
        )
        for job in jobs
        if job.money.likely > 0
    )


def minutes_of(jobs: tuple[MendJob, ...]) -> Range:
    """Return the hands-on time of jobs [min]."""
    return sum(
        (step.minutes for job in jobs for step in job.steps), start=Range(low=0.0, likely=0.0, high=0.0)
    )


def give_up_signs(know: Knowledge, piece: Piece) -> tuple[Finding, ...]:
    """Return, for what is wrong, the sign that it is not worth it."""
    told = {}
    for wrong in all_wrong(know, piece):
        facts = know.damage(wrong.damage)
        if facts.give_up and wrong.damage not in told:
            where = wrong.where if wrong.where.file else Where(file=piece.name)
            told[wrong.damage] = Finding(
                code="when-to-give-up",
                level="note",
                where=where,
                what=f"{facts.name}: {facts.give_up}",
                do="look before you begin, or buy",
            )
    return tuple(told.values())
