"""The journal file: work done and faults foreseen, as far as rates and chances are learnt from them."""

from dataclasses import dataclass, field
from datetime import date
from typing import Final

from refettle.domain.finding import Finding
from refettle.domain.logged import FaultLogged, Log, WorkLogged
from refettle.domain.piece import RELIEFS
from refettle.files.amounts import area_m2, count, quoted, share, time_h, volume_l
from refettle.files.fields import Desk
from refettle.files.own_steps import read_sequence
from refettle.files.yaml_tree import Entry, Mapping, Tree, plain, read_tree
from refettle.knowledge.knowledge import Knowledge
from refettle.rules import RULES

JOURNAL_KEYS: Final = ("journal", "since", "forget", "entries", "invented")
ENTRY_KEYS: Final = (
    "piece", "date", "did", "area", "relief", "wood", "on", "took", "used", "dry after", "coats foreseen",
    "fault", "rule", "foreseen", "seen",
)  # fmt: skip
GROUNDS: Final = ("bare wood", "film")
_RULES: Final = {card.id: card for card in RULES}
_EG: Final = "- {piece: Hall table, did: {sand: P180, by: hand block}, area: 1.2 m2, took: 40 min}"


@dataclass(slots=True, kw_only=True)
class _Draft:
    """A journal that is being read."""

    name: str = "journal"
    since: str = ""
    forget: set[str] = field(default_factory=set)
    work: list[WorkLogged] = field(default_factory=list)
    faults: list[FaultLogged] = field(default_factory=list)


def read_log(text: str, file_name: str, knowledge: Knowledge) -> tuple[Log | None, tuple[Finding, ...]]:
    """
    Return what a journal file says of work and faults.

    Parameters
    ----------
    text
        The file.
    file_name
        Its name, for findings.
    knowledge
        What is known.

    Returns
    -------
    tuple[Log | None, tuple[Finding, ...]]
        The journal, None where there is an error; and all findings in the order of the file.
    """
    root, findings = read_tree(text, file_name)
    if root is None:
        return None, findings
    desk = Desk(file=file_name, knowledge=knowledge, findings=list(findings))
    draft = _Draft()
    for entry in root.entries:
        _read_outer(desk, draft, entry)
    said = tuple(sorted(dict.fromkeys(desk.findings), key=lambda finding: finding.where.line))
    if any(finding.level == "error" for finding in said):
        return None, said
    work = tuple(one for one in draft.work if _counts(one.date, draft.since))
    faults = tuple(one for one in draft.faults if _counts(one.date, draft.since))
    left_out = len(draft.work) + len(draft.faults) - len(work) - len(faults)
    log = Log(name=draft.name, work=work, faults=faults, left_out=left_out, forget=frozenset(draft.forget))
    return log, said


def _counts(day: str, since: str) -> bool:
    """Return whether an entry of a day counts; one without a day counts only where all do."""
    return not since or day >= since


def _read_outer(desk: Desk, draft: _Draft, entry: Entry) -> None:
    """Read one outermost entry."""
    key = plain(entry.key)
    match key:
        case "journal":
            draft.name = desk.text(entry.value, key) or draft.name
        case "since":
            draft.since = _day(desk, entry.value, key)
        case "forget":
            said = (desk.text(item, key) for item in desk.items(entry.value))
            draft.forget = {plain(word) for word in said if word}
        case "invented":
            desk.yes(entry.value, key)
        case "entries":
            for number, item in enumerate(desk.items(entry.value), start=1):
                _read_entry(desk, draft, item, f"entries/{number}")
        case _:
            desk.unknown_key(entry, entry.key, JOURNAL_KEYS)


def _day(desk: Desk, tree: Tree, path: str) -> str:
    """Return a day, ISO 8601; empty with a finding where it is none."""
    said = desk.text(tree, path)
    if said is None:
        return ""
    try:
        return date.fromisoformat(said).isoformat()
    except ValueError:
        desk.say(
            "unclear-date",
            tree.line,
            path,
            f"{quoted(said)} is no day",
            "write year-month-day, e.g. 2026-03-14",
        )
        return ""


def _read_entry(desk: Desk, draft: _Draft, item: Tree, path: str) -> None:
    """Read one entry: work done, or a fault."""
    mapping = desk.mapping(item, path, _EG)
    if mapping is None:
        return
    said = {plain(entry.key): entry for entry in mapping.entries}
    for key, entry in said.items():
        if key not in ENTRY_KEYS:
            desk.unknown_key(entry, f"{path}/{entry.key}", ENTRY_KEYS)
    if "did" in said:
        _work(desk, draft, mapping, said, path)
    elif "fault" in said or "rule" in said:
        _fault(desk, draft, mapping, said, path)
    else:
        do = 'write "did:" with a step, or "fault:" with what was foreseen'
        desk.say("no-entry", mapping.line, path, "this entry tells of no work and of no fault", do)


def _common(desk: Desk, said: dict[str, Entry], path: str) -> tuple[str, str]:
    """Return piece and day of an entry."""
    piece = desk.text(said["piece"].value, f"{path}/piece") if "piece" in said else ""
    return piece or "", _day(desk, said["date"].value, f"{path}/date") if "date" in said else ""


def _work(desk: Desk, draft: _Draft, mapping: Mapping, said: dict[str, Entry], path: str) -> None:
    """Read an entry of work."""

    def tree(key: str) -> Tree | None:
        return said[key].value if key in said else None

    read = read_sequence(desk, said["did"].value, f"{path}/did")
    piece, day = _common(desk, said, path)
    area = desk.amount(said["area"].value, f"{path}/area", area_m2) if "area" in said else None
    hours = desk.amount(said["took"].value, f"{path}/took", time_h) if "took" in said else None
    litres = desk.amount(said["used"].value, f"{path}/used", volume_l) if "used" in said else None
    dry = desk.amount(said["dry after"].value, f"{path}/dry after", time_h) if "dry after" in said else None
    coats = (
        desk.amount(said["coats foreseen"].value, f"{path}/coats foreseen", count)
        if "coats foreseen" in said
        else None
    )
    relief, wood, ground = tree("relief"), tree("wood"), tree("on")
    if area is None and (hours is not None or litres is not None):
        desk.say("no-area", mapping.line, path, "time or material without an area", 'write "area: 1.2 m2"')
        return
    for amount, key in ((hours, "took"), (litres, "used"), (dry, "dry after")):
        if amount is not None and amount <= 0:
            desk.say(
                "unclear-amount",
                said[key].line,
                f"{path}/{key}",
                "nothing is no amount",
                "write more, or take the line out",
            )
            return
    if not read.steps:
        return
    draft.work.append(
        WorkLogged(
            piece=piece, date=day, step=read.steps[-1], area_m2=area or 0.0,
            relief=(desk.choice(relief, f"{path}/relief", RELIEFS, "relief") if relief else None) or "flat",
            wood=(desk.word(wood, f"{path}/wood", "wood") if wood else None) or "",
            bare=(desk.choice(ground, f"{path}/on", GROUNDS, "ground") if ground else None) == GROUNDS[0],
            minutes=None if hours is None else 60.0 * hours, litres=litres, dry_h=dry, coats_foreseen=coats,
            where=desk.where(mapping.line, path),
        )
    )  # fmt: skip


def _fault(desk: Desk, draft: _Draft, mapping: Mapping, said: dict[str, Entry], path: str) -> None:
    """Read an entry of a fault."""
    piece, day = _common(desk, said, path)
    missing = [key for key in ("rule", "foreseen", "seen") if key not in said]
    if missing:
        do = "copy rules and chance from foresee --json or plan --json, and write seen: yes or no"
        desk.say("half-entry", mapping.line, path, f"the fault lacks {', '.join(missing)}", do)
        return
    rules = _rules(desk, said, path)
    chance = desk.amount(said["foreseen"].value, f"{path}/foreseen", share)
    seen = desk.yes(said["seen"].value, f"{path}/seen")
    if chance is not None and not 0 < chance < 1:
        desk.say(
            "unclear-amount",
            said["foreseen"].line,
            f"{path}/foreseen",
            "a chance lies between 0 and 100 %",
            "write e.g. 30 %",
        )
        return
    if rules and chance is not None and seen is not None:
        draft.faults.append(
            FaultLogged(
                piece=piece, date=day, rules=tuple(dict.fromkeys(rules)), foreseen=chance, seen=seen,
                where=desk.where(mapping.line, path),
            )
        )  # fmt: skip


def _rules(desk: Desk, said: dict[str, Entry], path: str) -> list[str]:
    """Return the rules that foresaw a fault; a finding for each that is none, or is one of another fault."""
    rules = []
    for item in desk.items(said["rule"].value):
        word = desk.text(item, f"{path}/rule")
        if word is not None and plain(word) not in _RULES:
            desk.say(
                "unknown-rule", item.line, f"{path}/rule", f"{quoted(word)} is no rule",
                "copy the rule's id from foresee --json",
            )  # fmt: skip
        elif word is not None:
            rules.append(plain(word))
    if "fault" in said:
        fault = desk.word(said["fault"].value, f"{path}/fault", "fault")
        strange = [rule for rule in rules if fault is not None and _RULES[rule].fault != fault]
        if strange:
            do = f"it speaks of {desk.knowledge.name('fault', _RULES[strange[0]].fault)}"
            desk.say(
                "rule-of-another-fault",
                said["rule"].line,
                f"{path}/rule",
                f"{strange[0]} is no rule of that fault",
                do,
            )
    return rules
