"""How the steps of a trade case become steps of our own, by the word table alone."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

import case_words as table
from case_reading import Reading, Words, read_text
from refettle.domain.air import Air
from refettle.domain.step import Step

CLEANERS = frozenset(
    {
        "soap-water", "alkaline-degreaser", "ammonia-water", "mineral-spirits", "naphtha", "alcohol-wipe",
        "acetone-wipe", "thinner-wipe", "vinegar-water", "water-rinse", "bleach-water", "mould-wash",
        "vacuum", "tack-cloth", "damp-cloth", "dry-cloth",
    }
)  # fmt: skip
REMOVERS = frozenset(
    {"alcohol", "strong-solvent", "dichloromethane", "mild-remover", "caustic", "heat-gun", "card-scraper"}
)
BLEACHES = frozenset({"oxalic-acid", "peroxide-alkali", "chlorine"})
WET_MARKS = frozenset({"light", "thorough", "hot", "flooding", "soaking", "not rinsed", "wet", "spot"})
ABRASIVE_MARKS = frozenset(
    {"steel wool", "synthetic", "across grain", "wet", "dry", "to bare", "edges", "machine", "light"}
)
DRY_CLEANERS = frozenset({"vacuum", "tack-cloth", "dry-cloth"})
SOLVENT_CLEANERS = frozenset({"mineral-spirits", "naphtha", "alcohol-wipe", "acetone-wipe", "thinner-wipe"})
AIR_TAGS = frozenset(
    {"sun", "hot", "warm", "cool", "cold", "freezing", "humid", "dry", "outdoors", "draught"}
)

Raw = Mapping[str, object]


@dataclass(slots=True)
class Notes:
    """
    What could not be read while a case is turned into a piece.

    Attributes
    ----------
    unread
        Words that no table knows, each with its place.
    unmapped
        Values that are not understood: such a case counts as missed, or as a false alarm.
    polished
        Whether a "cleaning" before the first coat rubs furniture polish on.
    """

    unread: list[str] = field(default_factory=list)
    unmapped: list[str] = field(default_factory=list)
    polished: bool = False

    def text(self, where: str, value: object, *tables: Words) -> Reading:
        """Read a free text and note what is unknown in it."""
        if value is None or value == "":
            return Reading()
        reading = read_text(str(value), *tables)
        self.unread += [f"{where}: {word}" for word in reading.unread]
        if not reading.understood:
            self.unmapped.append(f"{where}: {value}")
        return reading

    def unknown(self, where: str, value: object) -> None:
        """Note a word outside a closed vocabulary."""
        self.unread.append(f"{where}: {value}")
        self.unmapped.append(f"{where}: {value}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """
    Where in the sequence a step stands.

    Attributes
    ----------
    where
        Path of the step in the case.
    film_on
        Whether a film lies on the wood.
    coats_after
        Whether a film coat follows.
    next_op
        The op that follows; empty at the end.
    air
        Air of the workshop.
    """

    where: str
    film_on: bool
    coats_after: bool
    next_op: str
    air: Air


def map_steps(raws: Sequence[Raw], notes: Notes, air: Air, *, film_on: bool) -> tuple[Step, ...]:
    """
    Return the steps of a case in our words.

    Parameters
    ----------
    raws
        Steps as the case writes them.
    notes
        Takes what cannot be read.
    air
        Air of the workshop.
    film_on
        Whether the surface comes in with a film.

    Returns
    -------
    tuple[Step, ...]
        Steps, waits filled in where the case leaves them open.
    """
    done: list[Step] = []
    for number, raw in enumerate(raws, start=1):
        where = f"steps/{number}"
        rest = raws[number:]
        for key in raw:
            if key not in table.STEP_KEYS:
                notes.unknown(where, key)
        place = Place(
            where=where,
            film_on=film_on,
            coats_after=any(step.get("op") == "coat" for step in rest),
            next_op=str(rest[0].get("op")) if rest else "",
            air=air,
        )
        _one_step(raw, place, notes, done)
        film_on = _film_after(done, film_on=film_on)
    return tuple(done)


def _one_step(raw: Raw, place: Place, notes: Notes, done: list[Step]) -> None:
    """Add what one step of the case stands for."""
    match raw.get("op"):
        case "clean" | "rinse" as verb:
            done += _cleaning(raw, place, notes, verb)
        case "strip":
            done += _stripping(raw, place, notes)
        case "bleach":
            done += _bleaching(raw, place, notes)
        case "sand" | "scuff" | "rub" as verb:
            done += _abrading(raw, place, notes, verb)
        case "wait" | "expose" | "use" as verb:
            _event(raw, place, notes, verb, done)
        case "coat":
            done += _coating(raw, place, notes)
        case other:
            notes.unknown(f"{place.where}/op", other)


def _film_after(done: list[Step], *, film_on: bool) -> bool:
    """Return whether a film lies on the wood after the steps so far."""
    if not done:
        return film_on
    last = done[-1]
    if last.verb == "strip" or any("to bare" in step.how and "edges" not in step.how for step in done[-2:]):
        return False
    return film_on or last.is_coat


def _exact_or_likely(tags: Sequence[str], known: frozenset[str], usual: str) -> list[str]:
    """Return what is named exactly; else what is likely; else the usual."""
    exact = [tag for tag in tags if tag in known]
    likely = [tag[1:] for tag in tags if tag.startswith("?")]
    return exact or likely[:1] or [usual]


def _hours(value: object, otherwise: float) -> float:
    """Return stated hours, or the usual ones [h]."""
    return float(otherwise) if value is None else float(str(value))


def _what(raw: Raw) -> str:
    """Return everything a step says in free text."""
    return ", ".join(str(raw[key]) for key in ("what", "note") if raw.get(key))


def _cleaning(raw: Raw, place: Place, notes: Notes, verb: str) -> list[Step]:
    """Return the washes and wipes of one cleaning or rinsing."""
    reading = notes.text(f"{place.where}/what", _what(raw), table.CLEANERS)
    tags = list(reading.tags)
    if "skip" in tags:
        return []
    if "air" in tags and not set(tags) & CLEANERS:
        return [Step(verb="air", wait_after_h=_hours(raw.get("wait_after_h"), reading.lasts_h or 72.0))]
    if "polish-on" in tags:
        tags.append("dry-cloth")
        notes.polished = notes.polished or place.coats_after
    cleaners = _exact_or_likely(tags, CLEANERS, "soap-water" if verb == "clean" else "water-rinse")
    how = frozenset(tags) & WET_MARKS
    steps = [_wash(verb, cleaner, how, neutral="neutral" in tags) for cleaner in cleaners]
    stated = raw.get("wait_after_h")
    if stated is not None or reading.lasts_h is not None:
        steps[-1] = replace(steps[-1], wait_after_h=_hours(stated, reading.lasts_h or 0.0))
    wool = {"steel wool", "synthetic"} & set(tags)
    if wool:
        steps.append(
            Step(verb="scuff", method=table.TOOL_OF_MARK[min(wool)], grit=400, how=frozenset(wool | {"wet"}))
        )
    return steps


def _wash(verb: str, cleaner: str, how: frozenset[str], *, neutral: bool = False) -> Step:
    """Return one wash with the wait it usually gets."""
    if cleaner in DRY_CLEANERS:
        wait_h = 0.2
    elif cleaner in SOLVENT_CLEANERS or cleaner == "damp-cloth":
        wait_h = 1.0 if verb == "clean" else 12.0
    else:
        wait_h = float(table.WAIT_AFTER_WET_WORK_H[verb])
    if verb == "rinse" and (neutral or cleaner == "vinegar-water"):
        verb = "neutralise"
    return Step(verb=verb, what=cleaner, how=how, wait_after_h=wait_h)


def _stripping(raw: Raw, place: Place, notes: Notes) -> list[Step]:
    """Return one stripping, with the rinse its text tells of."""
    text = _what(raw)
    reading = notes.text(f"{place.where}/what", text, table.REMOVERS, table.CLEANERS)
    stripping = re.split(r"\b(?:rins|wash|neutrali|flush|hose)", text.lower())[0]
    tags = [
        tag for tag in read_text(stripping, table.REMOVERS).tags if tag.lstrip("?") in REMOVERS | {"sand"}
    ]
    if "skip" in reading.tags:
        return []
    how = frozenset(reading.tags) & WET_MARKS
    if "light" in how:
        how |= {"one pass"}
    steps: list[Step] = []
    for remover in _exact_or_likely(tags, REMOVERS | {"sand"}, "strong-solvent"):
        if remover == "sand":
            machine = "machine" in reading.tags
            tool = "random-orbit" if machine else "hand-block"
            steps.append(Step(verb="sand", method=tool, grit=100, how=frozenset({"to bare"})))
        else:
            wool = frozenset(reading.tags) & {"steel wool"}
            steps.append(Step(verb="strip", what=remover, how=how | wool, wait_after_h=1.0))
    rinsing = "rinse" in reading.tags and "not rinsed" not in reading.tags
    if rinsing:
        found = _exact_or_likely(
            read_text(text, table.CLEANERS).tags, CLEANERS - {"thinner-wipe"}, "water-rinse"
        )
        steps += [_wash("rinse", cleaner, how) for cleaner in found]
    rest_h = 1.0 if place.next_op == "rinse" or rinsing else 12.0
    steps[-1] = replace(
        steps[-1], wait_after_h=_hours(raw.get("wait_after_h"), steps[-1].wait_after_h or rest_h)
    )
    if not rinsing and raw.get("wait_after_h") is None:
        steps[-1] = replace(steps[-1], wait_after_h=rest_h)
    return steps


def _bleaching(raw: Raw, place: Place, notes: Notes) -> list[Step]:
    """Return one bleaching, with the rinse its text tells of."""
    reading = notes.text(f"{place.where}/what", _what(raw), table.BLEACHES, table.CLEANERS)
    if "skip" in reading.tags:
        return []
    tags = [tag for tag in reading.tags if tag.lstrip("?") in BLEACHES]
    wait_h = _hours(raw.get("wait_after_h"), table.WAIT_AFTER_WET_WORK_H["bleach"])
    how = frozenset(reading.tags) & WET_MARKS
    bleach = _exact_or_likely(tags, BLEACHES, "oxalic-acid")[0]
    steps = [Step(verb="bleach", what=bleach, how=how, wait_after_h=wait_h)]
    if "rinse" in reading.tags and "not rinsed" not in reading.tags:
        steps.append(_wash("rinse", "water-rinse", frozenset()))
    return steps


def _abrading(raw: Raw, place: Place, notes: Notes, verb: str) -> list[Step]:
    """Return sanding, scuffing or rubbing, one step a grit."""
    reading = notes.text(f"{place.where}/what", _what(raw), table.ABRASIVES)
    tags = set(reading.tags)
    if "skip" in tags:
        return []
    if verb == "rub" and "alcohol" in tags:
        return [Step(verb="repair", what="alcohol-rub", wait_after_h=_hours(raw.get("wait_after_h"), 1.0))]
    if verb == "sand":
        verb = "scuff" if "light" in tags and place.film_on and "to bare" not in tags else "sand"
    elif verb == "rub" or "buff" in tags:
        verb = "scuff" if place.coats_after else "rub_out"
    grits = _grits(raw.get("grit"), reading, tags) or (table.GRIT_UNSTATED[verb],)
    tool = next((tool for mark, tool in table.TOOL_OF_MARK.items() if mark in tags), "hand-block")
    how = frozenset(tags & ABRASIVE_MARKS)
    steps = [Step(verb=verb, method=tool, grit=grit, how=how) for grit in grits]
    steps[-1] = replace(steps[-1], wait_after_h=_hours(raw.get("wait_after_h"), 0.0))
    if "wax" in tags and verb == "rub_out":
        steps.append(Step(verb="wax", what="paste-wax", method="wipe", film="thin", wait_after_h=12.0))
    return steps


def _grits(stated: object, reading: Reading, tags: set[str]) -> tuple[int, ...]:
    """Return the grits worked through, FEPA P, coarse to fine as written."""
    figures = [*reading.numbers, *re.findall(r"\d+", "" if stated is None else str(stated))]
    if "steel wool" in tags or any(re.fullmatch("0+", figure) for figure in figures):
        wool = [table.STEEL_WOOL_GRITS[figure] for figure in figures if figure in table.STEEL_WOOL_GRITS]
        tags.add("steel wool" if "synthetic" not in tags else "synthetic")
        return (wool[-1],) if wool else (600,)
    grits = [int(float(figure)) for figure in figures if 36 <= float(figure) <= 3000]
    if not grits:
        grits = [int(tag[1:]) for tag in tags if re.fullmatch(r"p\d+", tag)][:1]
    return tuple(dict.fromkeys(grits))


def air_of(marks: Sequence[str], air: Air) -> Air | None:
    """
    Return the air that marks of use and exposure bring, or None.

    Parameters
    ----------
    marks
        Marks in the words of `case_words.EVENTS`.
    air
        Air of the workshop.

    Returns
    -------
    Air | None
        Air of that event.
    """
    changed = air
    for mark in marks:
        if mark == "draught":
            changed = replace(changed, air_m_s=1.5)
        if mark in table.MARK_AIR:
            temp_c, rh, sun = table.MARK_AIR[mark]
            warmest = temp_c if temp_c is None or temp_c < 20 else max(temp_c, air.temp_c)
            changed = replace(
                changed,
                temp_c=changed.temp_c if warmest is None else warmest,
                rh=changed.rh if rh is None else (min(rh, air.rh) if rh < 0.5 else max(rh, air.rh)),
                sun=changed.sun or sun,
                known=True,
            )
    return None if changed == air else changed


def _event(raw: Raw, place: Place, notes: Notes, verb: str, done: list[Step]) -> None:
    """Add a wait, an exposure or a use; a stated time before it corrects the wait before."""
    reading = notes.text(f"{place.where}/what", _what(raw), table.EVENTS)
    exact = [tag for tag in reading.tags if not tag.startswith("?")]
    tags = exact or [tag[1:] for tag in reading.tags]
    marks = [tag for tag in tags if tag != "draught"]
    stated = raw.get("wait_after_h")
    lasts_h = _hours(stated, reading.lasts_h or (24.0 if verb == "wait" else 0.0))
    if lasts_h >= 8000 and "years" not in marks:
        marks.append("years")
    if reading.waited_h is not None and done and verb != "wait":
        done[-1] = replace(done[-1], wait_after_h=reading.waited_h)
    done.append(
        Step(
            verb=verb,
            what=marks[0] if marks else "",
            how=frozenset(marks),
            wait_after_h=lasts_h,
            air=air_of(tags, place.air),
        )
    )


def _coating(raw: Raw, place: Place, notes: Notes) -> list[Step]:
    """Return the coats of one coating step."""
    cls, verb = table.CLASSES.get(str(raw.get("class")), ("", ""))
    if not cls:
        notes.unknown(f"{place.where}/class", raw.get("class"))
        return []
    method = table.METHODS.get(str(raw.get("method")), "")
    if not method and raw.get("method") is not None:
        notes.unknown(f"{place.where}/method", raw.get("method"))
    film = notes.text(f"{place.where}/film", raw.get("film"), table.COATING)
    note = notes.text(f"{place.where}/note", _what(raw), table.COATING, table.AIR_WORDS, table.EVENTS)
    tags = set(film.tags) | set(note.tags)
    usual_h = table.USUAL_WAIT_H[cls]
    after_h = _hours(raw.get("wait_after_h"), _usual_after(place, usual_h))
    between = raw.get("wait_between_h")
    between = raw.get("wait_after_h") if between is None else between
    step = Step(
        verb="seal" if cls in table.SEALS_BELOW_OTHERS and place.coats_after else verb,
        what=cls,
        method=method or "brush",
        coats=_count(raw.get("coats")),
        wait_between_h=_hours(between, usual_h),
        wait_after_h=after_h,
        film="heavy" if "heavy" in tags else "thin" if "thin" in tags else "normal",
        how=frozenset(tags - {"heavy", "thin", "scuff between"} - AIR_TAGS | (tags & {"warm"})),
        air=_coat_air(note.tags, place.air),
    )
    if "scuff between" not in tags or step.coats == 1:
        return [step]
    one = replace(step, coats=1, wait_after_h=step.wait_between_h)
    key = Step(verb="scuff", method="foam-pad", grit=320)
    return [*[part for _ in range(step.coats - 1) for part in (one, key)], replace(one, wait_after_h=after_h)]


def _usual_after(place: Place, usual_h: float) -> float:
    """Return the wait after the last coat that a careful worker gives when the case says nothing [h]."""
    match place.next_op:
        case "expose":
            return 1.0
        case "use" | "":
            return table.WAIT_BEFORE_USE_H
        case _:
            return usual_h


def _count(value: object) -> int:
    """Return a number of coats; the least of a range; 1 when not said."""
    figures = re.findall(r"\d+", "" if value is None else str(value))
    return max(1, int(figures[0])) if figures else 1


def _coat_air(tags: Sequence[str], air: Air) -> Air | None:
    """Return the air that a coat's note tells of, or None."""
    changed = climate_air(tags, air)
    return None if changed == air else changed


def climate_air(tags: Sequence[str], air: Air) -> Air:
    """
    Return the air with what a note says put in.

    Parameters
    ----------
    tags
        Tags of `case_words.AIR_WORDS`.
    air
        Air so far.

    Returns
    -------
    Air
        Air with the words' temperature, humidity, sun and draught.
    """
    for tag in tags:
        if tag in table.AIR_VALUES:
            temp_c, rh = table.AIR_VALUES[tag]
            air = replace(
                air,
                temp_c=air.temp_c if temp_c is None else temp_c,
                rh=air.rh if rh is None else rh,
                known=True,
            )
        if tag == "sun":
            air = replace(air, sun=True)
        if tag in {"outdoors", "draught"}:
            air = replace(air, air_m_s=1.0)
    return air
