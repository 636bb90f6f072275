"""Steps in the words one would say at the bench."""

from refettle.domain.step import Step
from refettle.knowledge.knowledge import Knowledge

_COAT = {"brush": "brush", "wipe": "wipe on", "pad": "pad", "roller": "roll", "spray": "spray", "aerosol": "spray"}


def wait_words(hours: float) -> str:
    """Return a wait in words: ``2 h``, ``overnight``, ``3 days``."""
    if hours <= 0:
        return ""
    if hours < 1:
        return f"{round(hours * 60)} min"
    if hours < 8:
        return f"{hours:g} h"
    if hours <= 16:
        return "overnight"
    days = hours / 24.0
    if days < 1.6:
        return "a day"
    if days < 14:
        return f"{days:.0f} days"
    return f"{days / 7.0:.0f} weeks"


def step_words(know: Knowledge, step: Step) -> str:
    """Return a step as an imperative phrase."""
    if step.is_coat:
        name = know.film(step.what).name
        coats = f"{step.coats} coats of " if step.coats > 1 else ""
        thin = "thin " if step.film == "thin" and step.coats == 1 else ""
        between = f", {wait_words(step.wait_between_h)} between" if step.coats > 1 and step.wait_between_h else ""
        wipe = ", wipe off the excess" if "wiped" in step.how and step.verb != "wax" else ""
        on = "wax: rub on and buff" if step.verb == "wax" else _COAT.get(step.method, "lay")
        text = f"{on} {coats}{'a thin coat of ' if thin else ''}{name}{between}{wipe}"
        return text[0].upper() + text[1:]
    return _work_words(know, step)


def _work_words(know: Knowledge, step: Step) -> str:
    """Return a step without coats as a phrase."""
    what = step.what
    wet = ", wet" if "wet" in step.how else ""
    tool = f" with {_with(know, step.method)}" if step.method else ""
    match step.verb:
        case "clean" | "rinse" | "neutralise":
            verb = {"clean": "Wash with", "rinse": "Rinse with", "neutralise": "Neutralise with"}[step.verb]
            return f"{verb} {know.name('cleaner', what) if know.has('cleaner', what) else what}"
        case "strip":
            passes = f", {step.coats} passes" if step.coats > 1 else ""
            name = know.name("remover", what) if know.has("remover", what) else what
            return f"Strip with {name}{passes}"
        case "scrape":
            if "hollows" in step.how:
                return "Pick the rest out of the hollows with scraper points"
            return "Scrape off what is loose" if "loose" in step.how else f"Scrape{tool}"
        case "sand":
            if "to bare" in step.how:
                return f"Sand to bare wood from P{step.grit}{tool}"
            raise_ = ", damp it, let it dry and cut the raised grain" if "raise" in step.how else ""
            through = f"Sand through the grits to P{step.grit}" if "sequence" in step.how else f"Sand P{step.grit}"
            return f"{through}{tool}{wet}{raise_}, take up the dust"
        case "scuff":
            return f"Scuff P{step.grit}{tool}{wet}, take up the dust"
        case "repair":
            return (know.name("repair", what) if know.has("repair", what) else f"mend {what}").capitalize()
        case "bleach":
            return f"Bleach with {what.replace('-', ' ')}"
        case "wait":
            return {"safe to wrap": "Leave until safe to wrap", "dry out": "Let it dry out"}.get(what, "Wait")
        case "revive":
            return "Soften and level the old film with a pad of alcohol"
        case "sample":
            return "Make a sample on a hidden place and look at it by day and by lamp"
        case "test":
            return f"Test: {know.name('test', what)}"
        case "take_off":
            return "Take off hardware, bag and number it; drawers and doors out"
        case "refit":
            return "Refit hardware"
        case _:
            return step.verb.replace("_", " ").capitalize()


def _with(know: Knowledge, method: str) -> str:
    """Return a tool with its article."""
    name = know.name("tool", method) if know.has("tool", method) else method
    return name if name.endswith("s") else f"a {name}"
