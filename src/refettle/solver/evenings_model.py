"""The free tasks of a plan put to CP-SAT beside all that stays; set-ups stand on the clock."""

from collections import defaultdict
from collections.abc import Mapping

from ortools.sat.python import cp_model

from refettle.solver.evenings import LATE_DAY, SESSION, Link, Plan
from refettle.solver.evenings_axis import Slots
from refettle.solver.evenings_bench import Bench, plan_of
from refettle.solver.evenings_reach import Reach, ends_at
from refettle.solver.evenings_waits import Steps, Var


class Model(Steps):
    """
    A model of the free tasks.

    Attributes
    ----------
    possible
        Whether every free task has a start left.
    """

    def __init__(
        self,
        bench: Bench,
        free: set[int],
        hint: Plan | None,
        spans: Mapping[int, tuple[int, int]] | None = None,
    ) -> None:
        super().__init__()
        self.bench, self.axis, self.problem, self.free = bench, bench.axis, bench.problem, sorted(free)
        self.reach = Reach(bench, free, spans or {})
        self.start: dict[int, Var] = {}
        self.there: dict[int, Var] = {}
        self.home: dict[int, dict[int, Var]] = {}
        self.kits: dict[tuple[int, int], tuple[cp_model.IntVar, cp_model.IntVar]] = {}
        tasks = self.problem.tasks
        short = [n for n in self.free if not len(self.reach.starts[n])]
        self.possible = all(tasks[n].optional for n in short)
        self.free = [n for n in self.free if n not in short]
        if self.possible:
            self._starts(hint)
            self._kits(hint)
            self._links()
            self._shared()
            self._sessions()

    def _starts(self, hint: Plan | None) -> None:
        """Make starts, presences and one literal a session."""
        model = self.model
        for n in self.free:
            starts = self.reach.starts[n]
            at = None if hint is None or hint.starts[n] is None else self.axis.up(hint.starts[n] or 0)
            optional = self.problem.tasks[n].optional
            domain = cp_model.Domain.from_values(starts.tolist())
            self.start[n] = model.new_int_var_from_domain(domain, "") if len(starts) > 1 else int(starts[0])
            self.there[n] = model.new_bool_var("") if optional else 1
            fits = at is not None and at in set(starts.tolist())
            if hint is not None:
                self.hint(self.there[n], at is not None)
                self.hint(self.start[n], at if at is not None and fits else int(starts[0]))
            self._homes(n, starts, at if fits else None, known=hint is not None)

    def _homes(self, n: int, starts: Slots, at: int | None, *, known: bool) -> None:
        """Make the literals of the sessions a task may lie in."""
        model, start, homes = self.model, self.start[n], self.axis.session_of
        where = sorted({homes[one] for one in starts.tolist()})
        literals: dict[int, Var] = {}
        for session in where:
            if len(where) == 1:
                literals[session] = self.there[n]
                continue
            literal = model.new_bool_var("")
            begin, end = self.axis.spans[session]
            model.add_linear_constraint(start, begin, end - 1).only_enforce_if(literal)
            if known:
                self.hint(literal, at is not None and homes[at] == session)
            literals[session] = literal
        if len(where) > 1:
            model.add(sum(literals.values()) == self.there[n])
        self.home[n] = literals

    def _kits(self, hint: Plan | None) -> None:
        """Let a kit be set up in its session before it is used, where it is not already."""
        model, up = self.model, self.axis.up
        known = {} if hint is None else {(kit, home): up(at) for kit, home, at in hint.kits_at}
        for n in self.free:
            kit = self.problem.tasks[n].kit
            if kit < 0:
                continue
            for session, literal in self.home[n].items():
                if (kit, session) in self.bench.kits:
                    continue
                length, (begin, end) = self.axis.kit_slots[kit], self.axis.spans[session]
                if (kit, session) not in self.kits:
                    used = model.new_bool_var("")
                    at = model.new_int_var(
                        max(begin, self.bench.now), max(begin, self.bench.now, end - length), ""
                    )
                    if hint is not None:
                        self.hint(used, (kit, session) in known)
                        self.hint(at, known.get((kit, session), max(begin, self.bench.now)))
                    self.kits[kit, session] = used, at
                used, at = self.kits[kit, session]
                on = [] if isinstance(literal, int) else [literal]
                model.add(used == 1).only_enforce_if(*on)
                model.add(self.start[n] >= at + length).only_enforce_if(*on)

    def where(self, n: int) -> Var | None:
        """Return the start of a free or laid task; None where it is neither."""
        return self.start[n] if n in self.start else self.bench.at[n]

    def _links(self) -> None:
        """Hold waits, windows and what belongs together."""
        for link in self.problem.links:
            touched = {link.first, link.then, link.scuff} & self.start.keys()
            first, then = self.where(link.first), self.where(link.then)
            if not touched or first is None or then is None:
                continue
            starts = self.reach.range(link.first)
            last = ends_at(self.axis, link.first, starts)
            ready = self.axis.ready_after(link.wait)[last]
            if link.first in self.start or link.then in self.start:
                on = [
                    one
                    for one in (self.there.get(link.first, 1), self.there.get(link.then, 1))
                    if not isinstance(one, int)
                ]
                self.at_least(then, first, starts, ready, on)
            if link.most is not None:
                self._window(link, first, then)
            if link.together:
                self._together(link)

    def _window(self, link: Link, first: Var, then: Var) -> None:
        """Hold a greatest wait, or let a scuff stand between."""
        assert link.most is not None  # noqa: S101
        starts = self.reach.range(link.first)
        last = ends_at(self.axis, link.first, starts)
        until, ready = self.axis.open_until(link.most)[last], self.axis.ready_after(link.wait)[last]
        scuff = self.where(link.scuff) if link.scuff >= 0 else None
        if scuff is None:
            self.at_most(then, first, starts, until)
            return
        there = self.there.get(link.scuff, 1)
        on = []
        if not isinstance(there, int):
            on.append(there)
            self.at_most(then, first, starts, until, [there.Not()])
        self.at_least(scuff, first, starts, ready, on)
        length = self.problem.tasks[link.scuff].length
        self.model.add(then >= scuff + length).only_enforce_if(*on)

    def _together(self, link: Link) -> None:
        """Let two tasks lie in one session."""
        a, b = self._home_of(link.first), self._home_of(link.then)
        for session in a.keys() | b.keys():
            self.model.add(a.get(session, 0) == b.get(session, 0))

    def _home_of(self, n: int) -> dict[int, Var]:
        """Return the session literals of a free or laid task."""
        at = self.bench.at[n]
        return self.home[n] if n in self.home or at is None else {self.axis.session_of[at]: 1}

    def _shared(self) -> None:
        """Hold hands, things, dust, drying places and faces."""
        model, tasks, axis = self.model, self.problem.tasks, self.axis
        spans: list[cp_model.IntervalVar] = []
        wets: list[cp_model.IntervalVar] = []
        tacky: list[cp_model.IntervalVar] = []
        takes, areas = [], []
        dusty: dict[int, list[cp_model.IntervalVar]] = defaultdict(list)
        things: dict[int, list[cp_model.IntervalVar]] = defaultdict(list)
        faces: dict[int, list[cp_model.IntervalVar]] = defaultdict(list)
        for n in self.free:
            task, start = tasks[n], self.start[n]
            span = model.new_optional_fixed_size_interval_var(start, task.length, self.there[n], "")
            spans.append(span)
            takes.append(task.hands)
            if task.dusty:
                dusty[task.means[0] if task.means else -1 - n].append(span)
            for thing in task.means:
                things[thing].append(span)
            if task.wet is None:
                continue
            starts = self.reach.starts[n]
            last = ends_at(axis, n, starts)
            wet = self.span(start, self.end_of(start, starts, axis.ready_after(task.wet.dry)[last]))
            wets.append(wet)
            areas.append(task.wet.area)
            until = task.wet.face_until
            if task.wet.face >= 0:
                if until is not None:
                    wet = self.span(start, self.end_of(start, starts, axis.ready_after(until)[last]))
                faces[task.wet.face].append(wet)
            if task.wet.tacky is not None:
                end = self.end_of(start, starts, axis.ready_after(task.wet.tacky)[last])
                tacky.append(self.span(start, end))
        for group in (*things.values(), *faces.values()):
            model.add_no_overlap(group)
        self._dust(dusty, tacky)
        self._hands(spans, takes)
        self._level(wets, areas, self.bench.load, [self.problem.places] * axis.size)

    def _dust(self, dusty: dict[int, list[cp_model.IntervalVar]], tacky: list[cp_model.IntervalVar]) -> None:
        """Let no dust be raised while a coat is tacky; each group of dusty tasks shares a thing."""
        count = len(tacky)
        for group in dusty.values():
            if count:
                takes = [count] * len(group) + [1] * count
                self.model.add_cumulative([*group, *tacky], takes, count)

    def _hands(self, spans: list[cp_model.IntervalVar], takes: list[int]) -> None:
        """Let no more hands be busy than are there, set-ups among them."""
        spans, takes = list(spans), list(takes)
        for (kit, _), (used, at) in self.kits.items():
            length = self.axis.kit_slots[kit]
            spans.append(self.model.new_optional_fixed_size_interval_var(at, length, used, ""))
            takes.append(1)
        self._level(spans, takes, self.bench.used, self.axis.cap)

    def _level(
        self, spans: list[cp_model.IntervalVar], takes: list[int], taken: list[int], there: list[int]
    ) -> None:
        """Let no more be taken than is there, what is laid among it."""
        if not spans:
            return
        top = max(there)
        low = min(int(self.reach.starts[n][0]) for n in self.free)
        low = min([low, *(self.axis.spans[session][0] for _, session in self.kits)])
        spans, takes = list(spans), list(takes)
        at = low
        while at < self.axis.size:
            gone, end = top - there[at] + taken[at], at + 1
            while end < self.axis.size and top - there[end] + taken[end] == gone:
                end += 1
            if gone:
                spans.append(self.model.new_fixed_size_interval_var(at, end - at, ""))
                takes.append(gone)
            at = end
        self.model.add_cumulative(spans, takes, top)

    def _sessions(self) -> None:
        """Count sessions, set-ups, scuffs and ready days; hold the room of each session."""
        cost: list[cp_model.LinearExprT] = []
        tasks = self.problem.tasks
        laid = {self.axis.session_of[at] for at in self.bench.at if at is not None}
        by_session: dict[int, list[tuple[int, Var]]] = defaultdict(list)
        for n in self.free:
            for session, literal in self.home[n].items():
                by_session[session].append((tasks[n].length * tasks[n].hands, literal))
            if tasks[n].optional:
                cost.append(tasks[n].minutes * self.there[n])
        for (kit, session), (used, _) in self.kits.items():
            by_session[session].append((self.axis.kit_slots[kit], used))
            cost.append(self.problem.kits[kit] * used)
        for session, parts in by_session.items():
            opened: Var = 1
            if session not in laid:
                opened = self.model.new_bool_var("")
                self.hint(opened, any(self.hinted(literal) for _, literal in parts))
                for _, literal in parts:
                    self.model.add(opened >= literal)
            self.model.add(
                sum(size * literal for size, literal in parts) <= self.bench.room[session] * opened
            )
            cost.append(SESSION * opened if session not in laid else 0)
        for piece in self.problem.pieces:
            for session, literal in self.home.get(piece.last, {}).items():
                day = self.problem.sessions[session].day
                late = 0 if piece.due_day is None else max(0, day - piece.due_day)
                cost.append((LATE_DAY * late + day) * literal)
        self.cost = cost
        self.model.minimize(sum(cost))

    def stay(self, old: Mapping[int, int], price: int) -> None:
        """Charge a price for each task that leaves the session it had."""
        for n, session in old.items():
            if n in self.home:
                self.cost.append(price * (1 - self.home[n].get(session, 0)))
        self.model.minimize(sum(self.cost))

    def plan(self, solver: cp_model.CpSolver) -> Plan:
        """Return the plan a solver has found, with all that stayed."""

        def get(var: Var) -> int:
            return var if isinstance(var, int) else solver.value(var)

        at = list(self.bench.at)
        for n in self.free:
            at[n] = get(self.start[n]) if get(self.there[n]) else None
        kits = dict(self.bench.kits)
        kits.update({key: get(start) for key, (used, start) in self.kits.items() if get(used)})
        return plan_of(self.axis, at, kits)
