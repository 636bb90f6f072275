"""The plan of a piece as a page: the lines that decide, then each group, then what the whole needs."""

from math import floor
from typing import Final

from refettle.cli.group_text import Told, write_group
from refettle.cli.mending_text import write_mending
from refettle.cli.page import Page
from refettle.cli.words import count_words, litres_words, minutes_words, money_words, pieces_words, rate_words
from refettle.domain.finding import Finding
from refettle.domain.piece import Assumed
from refettle.domain.piece_plan import Caution, Choice, Day, DayTask, GroupPlan, PiecePlan, Purchase
from refettle.domain.plan import Range
from refettle.knowledge.knowledge import Knowledge
from refettle.services.cautions import FOLLOW

FEW: Final = 12
"""Assumed values shown unless all are asked for."""
_AMOUNTS: Final = 24
_DAY: Final = 10
_WORTH_TELLING: Final = 0.1
_COUNTED: Final = 1_000_000
_GAP_TOLD: Final = 0.005
_LITTLE_L: Final = 0.02
_NOTHING: Final = Range(low=0.0, likely=0.0, high=0.0)


def plan_text(plan: PiecePlan, know: Knowledge, page: Page, *, short: bool, everything: bool) -> str:
    """
    Return the page of a plan.

    Parameters
    ----------
    plan
        The plan.
    know
        Names.
    page
        Empty page of the right width.
    short
        Only title and the lines that decide.
    everything
        Every assumed value and every small risk.

    Returns
    -------
    str
        The page.
    """
    page.heading(plan.piece)
    page.write(f"Workshop: {plan.workshop}{'; invented, for demonstration' if plan.invented else ''}")
    page.gap()
    for number, line in enumerate(plan.lines, start=1):
        page.marked(f"{number}", line, indent=1, column=4)
    if short:
        return page.text()
    write_mending(page, plan, ("first", "before colour"))
    told = Told()
    for group in plan.groups:
        if not _stays(group):
            write_group(page, group, know, plan.currency, told, everything=everything)
    _staying(page, plan)
    write_mending(page, plan, ("after coats",))
    _buy(page, plan)
    _gear(page, plan)
    _days(page, plan)
    write_care(page, plan.cautions)
    _amounts(page, plan)
    _assumed(page, plan.assumed, everything=everything)
    write_findings(page, plan.findings)
    return page.text()


def _stays(group: GroupPlan) -> bool:
    """Return whether nothing is to be done to a group and nothing can go wrong with it."""
    route = group.route
    return route is not None and not route.steps and not any(r.chance >= _WORTH_TELLING for r in route.risks)


def _staying(page: Page, plan: PiecePlan) -> None:
    """Write in one paragraph what stays as it is."""
    names = [name for group in plan.groups if _stays(group) for name in group.members]
    if names:
        page.heading("Stays as it is")
        page.write(", ".join(names), indent=2)


def _buy(page: Page, plan: PiecePlan) -> None:
    """Write what to buy, and what the shelf has enough of."""
    wanted = [item for item in plan.buy if item.buy]
    enough = [item for item in plan.buy if not item.buy]
    if not plan.buy:
        return
    page.heading("Buy")
    room = max((len(money_words(item.money, plan.currency)) for item in wanted), default=0)
    for item in wanted:
        tin = f": {item.buy}" if item.buy != item.name else ""
        page.ended(f"{item.name}{tin}", money_words(item.money, plan.currency), indent=2, hang=2, keep=room)
        page.write(need_words(item), indent=4)
    for item in enough:
        page.write(f"{item.name}: the shelf is enough", indent=2, hang=2)
        page.write(need_words(item), indent=4)


def need_words(item: Purchase) -> str:
    """
    Return what is needed of a material, what there is, and what will be left.

    Parameters
    ----------
    item
        The material.

    Returns
    -------
    str
        Empty where it is sold neither by the litre nor by the piece.
    """
    litres = item.need_l.high > 0
    needed = litres_words(item.need_l) if litres else pieces_words(item.need_count)
    if not needed:
        return ""
    have = item.have_l if litres else item.have_count
    there = litres_words(Range(low=have, likely=have, high=have)) if litres else f"{have:g}"
    parts = [f"needs {needed}", *([f"{there} on the shelf"] if have > 0 else [])]
    left = left_words(item) if item.buy else ""
    return "; ".join([*parts, *([f"{left} left over"] if left else [])])


def left_words(item: Purchase) -> str:
    """Return what is left of a material in words; empty where that is next to nothing."""
    if item.need_l.high > 0:
        return litres_words(item.left) if item.left.high >= _LITTLE_L else ""
    left = item.left
    return (
        f"{floor(left.low)}–{floor(left.high)}"
        if floor(left.high) > floor(left.low)
        else f"{floor(left.low) or ''}"
    )


def _gear(page: Page, plan: PiecePlan) -> None:
    """Write in one paragraph what the work is done with, and what of it is not there."""
    if not plan.gear:
        return
    page.heading("To work with")
    wanted = [item.name if item.buy == "1" else f"{item.name} ({item.buy})" for item in plan.gear if item.buy]
    money = sum((item.money for item in plan.gear), start=_NOTHING)
    if wanted:
        page.write(f"Not on the shelf: {'; '.join(wanted)}.", indent=2, hang=2)
        page.ended("Serves other pieces too, so counted apart", money_words(money, plan.currency), indent=2)
    there = [item.name for item in plan.gear if not item.buy]
    if there:
        page.write(f"There: {', '.join(there)}.", indent=2, hang=2)


def _days(page: Page, plan: PiecePlan) -> None:
    """Write the evenings, each with what is done on which group."""
    if not plan.days:
        return
    page.heading("Days")
    for day in plan.days:
        _day(page, day)


def _day(page: Page, day: Day) -> None:
    """Write one evening; alike tasks on several groups share a line."""
    page.ended(f"Day {day.day}", minutes_words(_about(day.minutes)), indent=2)
    for text, tasks in _alike(day.tasks).items():
        groups = ", ".join(dict.fromkeys(task.group for task in tasks))
        page.write(f"{text} – {groups}", indent=4, hang=2)


def _alike(tasks: tuple[DayTask, ...]) -> dict[str, list[DayTask]]:
    """Return the tasks of a day by their words, in the order of the first of each."""
    found: dict[str, list[DayTask]] = {}
    for task in tasks:
        found.setdefault(task.text, []).append(task)
    return found


def _about(minutes: float) -> Range:
    """Return the usual width of hands-on time around its likely value [min]."""
    return Range(low=0.7 * minutes, likely=minutes, high=1.5 * minutes)


def write_care(page: Page, cautions: tuple[Caution, ...]) -> None:
    """Write each line of care once, with the steps it belongs to."""
    if not cautions:
        return
    page.heading("Take care")
    page.write(FOLLOW, indent=2, hang=2)
    for caution in cautions:
        page.write(f"{caution.text[:1].upper()}{caution.text[1:]}", indent=2, hang=2)
        page.write(_places(caution.steps), indent=4, hang=2)


def _places(steps: tuple[str, ...]) -> str:
    """Return the steps that a caution belongs to, by group."""
    found: dict[str, list[str]] = {}
    for step in steps:
        group, _, number = step.rpartition("/")
        found.setdefault(group, []).append(number)
    said = [f"{'step' if len(n) == 1 else 'steps'} {_and(n)} of {group}" for group, n in found.items()]
    text = "; ".join(said)
    return f"{text[:1].upper()}{text[1:]}"


def _and(words: list[str]) -> str:
    """Return words in a row: ``1, 2 and 4``."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _amounts(page: Page, plan: PiecePlan) -> None:
    """Write money, hours, days and whether it pays."""
    worth = plan.worth
    evenings = count_words(len(plan.days), "evening")
    rows = [
        ("Material to buy", money_words(plan.money, plan.currency)),
        *_chosen(plan.choice),
        ("Hands-on", f"{minutes_words(plan.minutes)}, set-up included, over {evenings}"),
    ]
    if plan.days:
        rows.append(("Safe to wrap", f"day {plan.wrap_day}"))
        rows.append(("Cured", f"day {plan.cured_day}"))
    if worth.sells_low is not None and worth.sells_high is not None:
        sells = Range(low=worth.sells_low, likely=worth.sells_low, high=worth.sells_high)
        rows.append(("Sells at", money_words(sells, plan.currency)))
    if worth.paid is not None:
        rows.append(("Paid", f"{worth.paid:g} {plan.currency}"))
    if worth.per_hour is not None:
        rows.append(("Brings", rate_words(worth.per_hour, plan.currency)))
    page.heading("Money and hours")
    for name, value in rows:
        page.marked(name, value, indent=2, column=_AMOUNTS)


def _chosen(choice: Choice | None) -> list[tuple[str, str]]:
    """Return the line on how the routes were chosen together; none where there was nothing to choose."""
    if choice is None or choice.ways < 2:
        return []
    count = f"{choice.ways:,}".replace(",", " ") if choice.ways < _COUNTED else "over a million"
    best = "none of them costs less" if choice.proved else "the best that was found in time"
    best += ", days to the date weighed in" if choice.hurried else ""
    gap = f"; nothing offered can be over {choice.gap:.0%} cheaper" if choice.gap >= _GAP_TOLD else ""
    return [("Chosen together from", f"{count} combinations: {best}{gap}")]


def _assumed(page: Page, assumed: tuple[Assumed, ...], *, everything: bool) -> None:
    """Write what was taken because nobody said it."""
    if not assumed:
        return
    page.heading("Assumed, since nobody said")
    shown = assumed if everything else assumed[:FEW]
    for entry in shown:
        page.write(f"{entry.path}: {entry.value} – {entry.why}", indent=2, hang=2)
    if len(shown) < len(assumed):
        page.write(f"and {len(assumed) - len(shown)} more; --all shows every one", indent=2)


def write_findings(page: Page, findings: tuple[Finding, ...]) -> None:
    """
    Write the problems in what the person wrote.

    Parameters
    ----------
    page
        The page.
    findings
        Problems; nothing is written where there are none.
    """
    if not findings:
        return
    page.heading("Found in your files")
    for finding in findings:
        page.write(finding.text(), indent=2, hang=2)
