"""What is laid into days: each group's and job's tasks in their order, with hands-on time and waits."""

from dataclasses import dataclass, field, replace
from math import inf

from refettle.domain.piece_plan import DayTask, GroupPlan, MendJob
from refettle.domain.step import Step
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.planning.effects import drying_rate
from refettle.services.turning import loose_share, turned_share

DUSTY = frozenset({"sand", "scuff", "scrape", "strip"})
_REMOVING = frozenset({"strip", "rinse", "neutralise"})
KEYED = "Scuff P320 first, the window to recoat has closed"
"""What is put in where a coat would find no key; its minutes are a share of the coat's."""
KEY_SHARE = 0.6
BEGINS_H = 18.0
"""Hour at which an evening begins where nothing else is said [h]."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """
    How a case differs from the likely one.

    Attributes
    ----------
    minutes, waits
        Factors [1] on hands-on time and on waits.
    """

    minutes: float = 1.0
    waits: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """
    One coat or other work.

    Its step, the step's number, hands-on [min], the wait after it [h], its own words, when a coat is dry to touch [h];
    what must be ground before it; how many tasks of its queue are left with it [1], the same whatever was done before.
    """

    step: Step
    number: int
    minutes: float
    wait_h: float
    text: str = ""
    tacky_h: float = 0.0
    first_faces: bool = False
    waits_for: str = ""
    left: int = 0

    @property
    def dusty(self) -> bool:
        """Return whether it makes dust that a wet film would catch."""
        return self.step.verb in DUSTY and "wet" not in self.step.how


@dataclass(slots=True)
class Queue:
    """
    Tasks of one group or job.

    The next, the hour from which it may start, what is left of it [min]; when the last coat is dry to touch, and when
    its window to recoat closes [h]; the piece, where there are several; area of its loose parts [m²]; tasks passed by.
    """

    name: str
    tasks: tuple[Task, ...]
    free_h: float
    next: int = 0
    left: float = 0.0
    stage: str = ""
    surfaces: frozenset[str] = frozenset()
    tacky_h: float = 0.0
    until_h: float = inf
    piece: str = ""
    loose_m2: float = 0.0
    passed: list[Task] = field(default_factory=list)

    def ground_h(self, wanted: str) -> float:
        """Return when a face is ``bare`` or ``smooth`` [h]; infinite while that is still to be done."""
        last = -1
        for number, task in enumerate(self.tasks):
            if task.step.is_coat:
                break
            if wanted == "smooth" or removes_film(task.step):
                last = number
        return self.free_h if self.next > last else inf

    @property
    def done(self) -> bool:
        """Return whether all is done."""
        return self.next >= len(self.tasks)

    @property
    def over_h(self) -> float:
        """Return when all is done and its last wait over [h]; infinite while something is left."""
        return self.free_h if self.done else inf


def counted(tasks: list[Task]) -> tuple[Task, ...]:
    """Return tasks that know how many are left with each."""
    return tuple(replace(task, left=len(tasks) - place) for place, task in enumerate(tasks))


def queue_of(know: Knowledge, workshop: Workshop, plan: GroupPlan) -> Queue:
    """Return the tasks of a plan, coat by coat; a step that only waits lengthens the wait before it."""
    tasks: list[Task] = []
    free_h = 0.0
    for number, cost in enumerate(plan.route.steps if plan.route is not None else (), start=1):
        step, minutes = cost.step, cost.minutes.likely
        if step.verb == "wait":
            if tasks:
                tasks[-1] = replace(tasks[-1], wait_h=tasks[-1].wait_h + step.wait_after_h)
            else:
                free_h = BEGINS_H + step.wait_after_h
            continue
        coats = max(1, step.coats) if step.is_coat else 1
        for coat in range(1, coats + 1):
            wait = step.wait_after_h if coat == coats else step.wait_between_h
            one = _one(step, coats, wait)
            tacky = _tacky_h(know, workshop, step)
            whole = Task(step=one, number=number, minutes=minutes / coats, wait_h=wait, tacky_h=tacky)
            tasks.extend(_by_faces(whole, turned_share(plan.members)) if step.is_coat else (whole,))
    return Queue(
        plan.name,
        counted(tasks),
        free_h,
        left=tasks[0].minutes if tasks else 0.0,
        surfaces=frozenset(plan.members),
        loose_m2=plan.area_m2 * loose_share(plan.members),
    )


def scaled(queue: Queue, scale: Scale) -> None:
    """Make a queue's tasks take and wait otherwise."""
    queue.tasks = tuple(
        replace(
            task,
            minutes=scale.minutes * task.minutes,
            wait_h=scale.waits * task.wait_h,
            tacky_h=scale.waits * task.tacky_h,
        )
        for task in queue.tasks
    )
    queue.left *= scale.minutes


def key_where_closed(queue: Queue, now_h: float) -> None:
    """Put a scuff before a queue's next coat where the window to recoat the one before it has closed."""
    if queue.done or not queue.next or now_h <= queue.until_h:
        return
    task, before = queue.tasks[queue.next], queue.tasks[queue.next - 1]
    if not (task.step.is_coat and before.step.is_coat) or before.first_faces or task.text:
        return
    scuff = Step(verb="scuff", grit=320, method="synthetic-pad", how=frozenset({"clean dust"}))
    whole = sum(one.minutes for one in queue.tasks[queue.next : queue.next + 1 + task.first_faces])
    put = Task(
        step=scuff, number=task.number, minutes=KEY_SHARE * whole, wait_h=0.0, text=KEYED, left=-task.left
    )
    queue.tasks = (*queue.tasks[: queue.next], put, *queue.tasks[queue.next :])
    queue.left = put.minutes
    queue.until_h = inf


def removes_film(step: Step) -> bool:
    """Return whether a step takes an old film off, or washes away what took it off."""
    return step.verb in _REMOVING or "to bare" in step.how


def around_queues(before: tuple[DayTask, ...], pieces: tuple[str, ...]) -> list[Queue]:
    """Return the work before the first step as queues, where something comes before even that."""
    queues = []
    for place, task in enumerate(before):
        one = Task(
            step=Step(verb="take_off"), number=0, minutes=task.minutes, wait_h=0.0, text=task.text, left=len(before) - place
        )  # fmt: skip
        piece = next((name for name in pieces if task.group.startswith(f"{name}: ")), "")
        queues.append(Queue(task.group, (one,), 0.0, left=task.minutes, stage="around", piece=piece))
    return queues


def _tacky_h(know: Knowledge, workshop: Workshop, step: Step) -> float:
    """Return the hours until a coat is dry to touch in the air it has [h]: then its part may be turned over."""
    if not step.is_coat:
        return 0.0
    facts = know.film(step.what)
    return facts.touch_h / drying_rate(facts, step.air or workshop.air_likely)


def _by_faces(task: Task, turned: float) -> tuple[Task, ...]:
    """Return a coat as one task, or as two where parts must be turned over between their faces."""
    if turned <= 0:
        return (task,)
    return (
        replace(task, minutes=(1.0 - turned) * task.minutes, wait_h=task.tacky_h, first_faces=True),
        replace(task, minutes=turned * task.minutes),
    )


def job_queue(job: MendJob) -> Queue:
    """Return the operations of a job."""
    tasks = [
        Task(
            step=Step(verb="repair"),
            number=0,
            minutes=step.minutes.likely,
            wait_h=step.wait_h.likely,
            text=first_clause(step.text),
            waits_for=step.waits_for,
        )
        for step in job.steps
    ]
    return Queue(
        job.name,
        counted(tasks),
        0.0,
        left=tasks[0].minutes if tasks else 0.0,
        stage=job.stage,
        surfaces=frozenset(job.surfaces),
    )


def first_clause(text: str) -> str:
    """Return what an operation is without its particulars, as a list of days has room for."""
    for mark in (":", ";", ". ", ", "):
        text = text.partition(mark)[0]
    return text


def last_jobs(mending: tuple[MendJob, ...]) -> tuple[DayTask, ...]:
    """Return the tasks that come when the coats are hard."""
    return tuple(
        DayTask(group=job.name, number=0, text=first_clause(step.text), minutes=step.minutes.likely, wait_h=0.0)
        for job in mending if job.stage == "after coats" for step in job.steps
    )  # fmt: skip


def _one(step: Step, coats: int, wait: float) -> Step:
    """Return one coat of a step with the wait that follows it."""
    if coats == 1:
        return step
    return Step(
        verb=step.verb, what=step.what, method=step.method, coats=1, wait_after_h=wait, film=step.film,
        grit=step.grit, how=step.how, air=step.air,
    )  # fmt: skip


def cure_h(know: Knowledge, workshop: Workshop, plan: GroupPlan) -> float:
    """Return the hours from wrapping to full cure of the slowest film of a plan, in the air it has [h]."""
    if plan.route is None:
        return 0.0
    slowest = 0.0
    for cost in plan.route.steps:
        if cost.step.is_coat:
            facts = know.film(cost.step.what)
            rate = drying_rate(facts, cost.step.air or workshop.air_likely)
            slowest = max(slowest, (facts.cured_h - facts.wrap_h) / rate)
    return slowest
