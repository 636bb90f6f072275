"""All that is laid into days as queues: mending, groups, work on the whole piece; and their tasks in words."""

from refettle.domain.piece_plan import DayTask, GroupPlan, MendJob
from refettle.domain.workshop import Workshop
from refettle.knowledge.knowledge import Knowledge
from refettle.services.around import Around
from refettle.services.day_queues import Queue, Scale, Task, around_queues, job_queue, queue_of, scaled
from refettle.services.step_words import step_words


def all_queues(
    know: Knowledge, workshop: Workshop, plans: tuple[GroupPlan, ...], work: Around,
    mending: tuple[MendJob, ...], pieces: tuple[str, ...], scale: Scale | None = None,
) -> tuple[list[Queue], tuple[DayTask, ...]]:  # fmt: skip
    """
    Return what is laid into days.

    Parameters
    ----------
    know, workshop
        Facts; the air that waits are planned for.
    plans, work, mending
        Groups, work on the whole piece, jobs.
    pieces
        Names of several pieces, if groups, jobs and work begin with one.
    scale
        How a case differs from the likely one; None = not at all.

    Returns
    -------
    tuple
        Queues; and the tasks with which the first evening begins.
    """
    queues = [*(job_queue(job) for job in mending if job.stage != "after coats")]
    queues.extend(queue_of(know, workshop, p) for p in plans if p.route is not None)
    for queue in queues:
        if scale is not None:
            scaled(queue, scale)
        queue.piece = next((name for name in pieces if queue.name.startswith(f"{name}: ")), "")
    if any(q.stage == "first" for q in queues) and work.before:
        return [*around_queues(work.before, pieces), *queues], work.tests
    return queues, (*work.tests, *work.before)


def said(know: Knowledge, queue: Queue, task: Task) -> str:
    """Return a queue's next task in words, with the faces it is for where its parts are turned over."""
    text = task.text or step_words(know, task.step)
    if task.first_faces:
        return f"{text}: first faces"
    turned = queue.next > 0 and queue.tasks[queue.next - 1].first_faces
    return f"{text}: turn over, the other faces" if turned else text
