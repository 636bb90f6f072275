"""Everything known, as one value: resolved facts by id, and the rows behind each of them."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any, Self

from refettle.knowledge import facts, resolve
from refettle.knowledge.own import OwnWork
from refettle.knowledge.rows import FactRow, Identity, Property, SourceRow, Value, value_of

Words = dict[str, tuple[str, str]]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Knowledge:
    """
    Facts of every subject, resolved once.

    Attributes
    ----------
    version
        Checksum of the tables it was read from.
    films, woods, builds, contaminants, latents, cleaners, removers, tools, tests, damages, repairs, faults, labours,
    operations, fittings, supplies
        Facts by id, one mapping a kind.
    identities
        Kind → id → identity.
    properties
        Kind → name → property.
    sources
        Key → source.
    rows_by_subject
        Subject → property → rows, winner first.
    priors
        Band and kind → old finish classes with shares [1].
    words
        Kind → bare spelling → id and spelling as written.
    offsets, litre_factors
        From own work: rule id → what is added to its log-odds [1]; film class → factor on what is laid [1].
    """

    version: str
    films: Mapping[str, facts.FilmFacts]
    woods: Mapping[str, facts.WoodFacts]
    builds: Mapping[str, facts.BuildFacts]
    contaminants: Mapping[str, facts.ContaminantFacts]
    latents: Mapping[str, facts.LatentFacts]
    cleaners: Mapping[str, facts.CleanerFacts]
    removers: Mapping[str, facts.RemoverFacts]
    tools: Mapping[str, facts.ToolFacts]
    tests: Mapping[str, facts.TestFacts]
    damages: Mapping[str, facts.DamageFacts]
    repairs: Mapping[str, facts.RepairFacts]
    faults: Mapping[str, facts.FaultFacts]
    labours: Mapping[str, facts.LabourFacts]
    operations: Mapping[str, facts.OperationFacts]
    fittings: Mapping[str, facts.FittingFacts]
    supplies: Mapping[str, facts.SupplyFacts]
    identities: Mapping[str, Mapping[str, Identity]]
    properties: Mapping[str, Mapping[str, Property]]
    sources: Mapping[str, SourceRow]
    rows_by_subject: resolve.RowsBySubject
    priors: resolve.Priors
    words: Mapping[str, Words]
    offsets: Mapping[str, float] = field(default_factory=dict)
    litre_factors: Mapping[str, float] = field(default_factory=dict)

    @classmethod
    def build(
        cls,
        *,
        rows: Iterable[FactRow],
        properties: Iterable[Property],
        identities: Iterable[Identity],
        sources: Iterable[SourceRow],
        version: str = "",
    ) -> Self:
        """
        Return the bundle made from rows; what is missing takes its default and is left to `check_rows`.

        Parameters
        ----------
        rows, properties, identities, sources
            Rows of the tables.
        version
            Checksum of the tables.

        Returns
        -------
        Knowledge
            All facts resolved.
        """
        by_kind: dict[str, dict[str, Identity]] = {}
        for identity in identities:
            by_kind.setdefault(identity.kind, {})[identity.id] = identity
        props: dict[str, dict[str, Property]] = {}
        for prop in properties:
            props.setdefault(prop.kind, {})[prop.name] = prop
        keyed = {source.key: source for source in sources}
        heaps = resolve.sort_rows(rows, keyed)
        tables = (by_kind, props, heaps)
        return cls(
            version=version,
            films=resolve.resolve_kind("film", facts.FilmFacts, *tables),
            woods=resolve.resolve_kind("wood", facts.WoodFacts, *tables),
            builds=resolve.resolve_kind("build", facts.BuildFacts, *tables),
            contaminants=resolve.resolve_kind("contaminant", facts.ContaminantFacts, *tables),
            latents=resolve.resolve_kind("latent", facts.LatentFacts, *tables),
            cleaners=resolve.resolve_kind("cleaner", facts.CleanerFacts, *tables),
            removers=resolve.resolve_kind("remover", facts.RemoverFacts, *tables),
            tools=resolve.resolve_kind("tool", facts.ToolFacts, *tables),
            tests=resolve.resolve_kind("test", facts.TestFacts, *tables),
            damages=resolve.resolve_kind("damage", facts.DamageFacts, *tables),
            repairs=resolve.resolve_kind("repair", facts.RepairFacts, *tables),
            faults=resolve.resolve_kind("fault", facts.FaultFacts, *tables),
            labours=resolve.resolve_kind("labour", facts.LabourFacts, *tables),
            operations=resolve.resolve_kind("operation", facts.OperationFacts, *tables),
            fittings=resolve.resolve_kind("fitting", facts.FittingFacts, *tables),
            supplies=resolve.resolve_kind("supply", facts.SupplyFacts, *tables),
            identities=by_kind,
            properties=props,
            sources=keyed,
            rows_by_subject=heaps,
            priors=resolve.era_priors(heaps),
            words={kind: _words(known.values()) for kind, known in by_kind.items()},
        )

    def film(self, id_: str) -> facts.FilmFacts:
        """Return the facts of a film class; KeyError for an unknown id, as in all its sisters."""
        return self.films[id_]

    def wood(self, id_: str) -> facts.WoodFacts:
        """Return the facts of a wood or board."""
        return self.woods[id_]

    def build_of(self, id_: str) -> facts.BuildFacts:
        """Return the facts of a build (solid, veneer, plywood ...)."""
        return self.builds[id_]

    def contaminant(self, id_: str) -> facts.ContaminantFacts:
        """Return the facts of a contaminant."""
        return self.contaminants[id_]

    def latent(self, id_: str) -> facts.LatentFacts:
        """Return the facts of a cause in the wood."""
        return self.latents[id_]

    def cleaner(self, id_: str) -> facts.CleanerFacts:
        """Return the facts of a cleaner."""
        return self.cleaners[id_]

    def remover(self, id_: str) -> facts.RemoverFacts:
        """Return the facts of a remover."""
        return self.removers[id_]

    def tool(self, id_: str) -> facts.ToolFacts:
        """Return the facts of a tool."""
        return self.tools[id_]

    def test(self, id_: str) -> facts.TestFacts:
        """Return the facts of a spot test."""
        return self.tests[id_]

    def damage(self, id_: str) -> facts.DamageFacts:
        """Return the facts of a kind of damage."""
        return self.damages[id_]

    def repair(self, id_: str) -> facts.RepairFacts:
        """Return the facts of a repair."""
        return self.repairs[id_]

    def fault(self, id_: str) -> facts.FaultFacts:
        """Return the facts of a fault."""
        return self.faults[id_]

    def labour(self, id_: str) -> facts.LabourFacts:
        """Return the rates of an operation."""
        return self.labours[id_]

    def operation(self, id_: str) -> facts.OperationFacts:
        """Return what an operation at the bench takes."""
        return self.operations[id_]

    def fitting(self, id_: str) -> facts.FittingFacts:
        """Return what is done with a fitting."""
        return self.fittings[id_]

    def supply(self, id_: str) -> facts.SupplyFacts:
        """Return the facts of something bought by the piece."""
        return self.supplies[id_]

    def has(self, kind: str, id_: str) -> bool:
        """Return whether there is such an id of that kind."""
        return id_ in self.identities.get(kind, {})

    def ids(self, kind: str) -> tuple[str, ...]:
        """Return all ids of a kind in the order of the table."""
        return tuple(self.identities.get(kind, {}))

    def name(self, kind: str, id_: str) -> str:
        """Return the name in plain words; the id itself where nothing of that name is known."""
        identity = self.identities.get(kind, {}).get(id_)
        return identity.name if identity else id_

    def find(self, kind: str, word: str) -> str | None:
        """
        Return the id that a person's word means.

        Parameters
        ----------
        kind
            Kind of subject.
        word
            Id, name or alias; case, hyphens, brackets and spaces do not matter.

        Returns
        -------
        str or None
            The id, or None.
        """
        hit = self.words.get(kind, {}).get(resolve.plain_spelling(word))
        return hit[0] if hit else None

    def near(self, kind: str, word: str) -> tuple[str, ...]:
        """
        Return up to three known words spelt nearly like a given one, nearest first.

        Parameters
        ----------
        kind
            Kind of subject.
        word
            Word that `find` did not know.

        Returns
        -------
        tuple of str
            Spellings that `find` knows, each of another thing.
        """
        from difflib import get_close_matches  # noqa: PLC0415 - only after a misspelling; keeps start-up light

        words = self.words.get(kind, {})
        hits = get_close_matches(resolve.plain_spelling(word), list(words), n=9, cutoff=0.6)
        spellings: dict[str, str] = {}
        for hit in hits:
            id_, spelling = words[hit]
            spellings.setdefault(id_, spelling)
        return tuple(spellings.values())[:3]

    def because(self, subject: str, prop: str) -> tuple[str, ...]:
        """
        Return the ids of the fact rows that decide a property.

        Parameters
        ----------
        subject, prop
            ``kind:id`` and name of the property.

        Returns
        -------
        tuple of str
            The winning row's id; empty where the default of the registry stands.
        """
        row = resolve.winning_row(self.rows_by_subject, self._chain(subject), prop)
        return (row.id,) if row else ()

    def rows(self, subject: str, prop: str | None = None) -> tuple[FactRow, ...]:
        """
        Return the rows on a subject, winners before losers, its parents' rows after its own.

        Parameters
        ----------
        subject
            ``kind:id``.
        prop
            Name of a property; None = all, in the order of the registry.

        Returns
        -------
        tuple of FactRow
            Rows; for every property the first one decides unless it was superseded.
        """
        chain = self._chain(subject)
        kind = subject.partition(":")[0]
        props = self.properties.get(kind, {}) if prop is None else (prop,)
        return tuple(
            row
            for name in props
            for near in chain
            for row in self.rows_by_subject.get(near, {}).get(name, ())
        )

    def source(self, key: str) -> SourceRow:
        """Return a source by its key; KeyError for an unknown one."""
        return self.sources[key]

    def era_prior(self, band: str, kind: str) -> tuple[tuple[str, float], ...]:
        """
        Return what an old finish of a piece of that time is likely to be, before any test.

        Parameters
        ----------
        band
            One of `ERA_BANDS`.
        kind
            ``clear`` or ``paint``.

        Returns
        -------
        tuple of (str, float)
            Film classes with shares [1] that add up to 1, likeliest first; empty for an unknown band.
        """
        return self.priors.get((band, kind), ())

    def range_of(self, subject: str, prop: str) -> tuple[float, float, float]:
        """
        Return the 10 %, likely and 90 % value of a number.

        Parameters
        ----------
        subject, prop
            ``kind:id`` and name of a property whose type is number.

        Returns
        -------
        tuple of float
            Low, likely, high in the property's unit; all alike where the winning row gives no width.
        """
        row = resolve.winning_row(self.rows_by_subject, self._chain(subject), prop)
        if row is None:
            prop_row = self.properties[subject.partition(":")[0]][prop]
            likely = float(prop_row.default or 0.0)
            return likely, likely, likely
        likely = float(row.value)
        low = likely if row.low is None else row.low
        high = likely if row.high is None else row.high
        return low, likely, high

    def with_label(self, cls: str, label: tuple[tuple[str, float], ...], product_name: str) -> "Knowledge":
        """
        Return knowledge with one class more: a product whose label departs from its class.

        Parameters
        ----------
        cls
            Class id the product belongs to.
        label
            Properties with the figures on the label, in the registry's units.
        product_name
            The person's name for the product; the new id is `label_class(cls, product_name)`.

        Returns
        -------
        Knowledge
            A new bundle; this one stays as it is.

        Raises
        ------
        KeyError
            If the class or a property is unknown.
        """
        base = self.films[cls]
        id_ = label_class(cls, product_name)
        subject = f"film:{id_}"
        props = self.properties["film"]
        rows: dict[str, tuple[FactRow, ...]] = {
            name: (_label_row(subject, props[name], value, product_name),) for name, value in label
        }
        values: dict[str, Any] = {name: value_of(props[name], rows[name][0].value) for name in rows}
        identity = Identity(kind="film", id=id_, name=product_name, parent=cls)
        words = dict(self.words["film"])
        for spelling in (id_, product_name):
            words.setdefault(resolve.plain_spelling(spelling), (id_, spelling))
        return replace(
            self,
            films={**self.films, id_: replace(base, id=id_, name=product_name, **values)},
            identities={**self.identities, "film": {**self.identities["film"], id_: identity}},
            rows_by_subject={**self.rows_by_subject, subject: rows},
            words={**self.words, "film": words},
        )

    def with_own(self, own: OwnWork) -> "Knowledge":
        """
        Return knowledge with the person's own factors and offsets worked in.

        Parameters
        ----------
        own
            What their work says.

        Returns
        -------
        Knowledge
            A new bundle; this one stays as it is. Rows and sources are those of the tables still.
        """
        hours = own.hours_of
        return replace(
            self,
            films={id_: _own_film(film, own) for id_, film in self.films.items()},
            labours={
                id_: replace(
                    labour,
                    flat_m2_h=labour.flat_m2_h / hours(f"{id_}/flat"),
                    frame_m2_h=labour.frame_m2_h / hours(f"{id_}/frame"),
                    carved_m2_h=labour.carved_m2_h / hours(f"{id_}/carved"),
                )
                for id_, labour in self.labours.items()
                if id_ != "strip"
            }
            | {id_: labour for id_, labour in self.labours.items() if id_ == "strip"},
            removers={
                id_: replace(remover, h_m2=remover.h_m2 * hours(f"strip:{id_}"))
                for id_, remover in self.removers.items()
            },
            repairs={
                id_: replace(
                    repair,
                    h_each=repair.h_each * hours(f"repair:{id_}"),
                    h_m2=repair.h_m2 * hours(f"repair:{id_}"),
                )
                for id_, repair in self.repairs.items()
            },
            offsets=dict(own.offsets),
            litre_factors={id_: own.litres_of(id_) for id_ in self.films},
        )

    def _chain(self, subject: str) -> tuple[str, ...]:
        """Return the subject and its parents, nearest first."""
        return resolve.chain_of(subject, self.identities)


_DRIES = ("touch_h", "recoat_from_h", "recoat_until_h", "sand_h", "wrap_h", "cured_h")


def _own_film(film: facts.FilmFacts, own: OwnWork) -> facts.FilmFacts:
    """Return a class with the person's own drying and coats."""
    slow = own.drying.get(film.id, own.drying_else)
    hours = {name: getattr(film, name) * slow for name in _DRIES}
    more = own.coats.get(film.id, own.coats_else)
    hide = 1.0 - (1.0 - min(1.0, film.hide)) ** (1.0 / more)
    return replace(film, coats=film.coats * more, hide=hide, **hours)


def label_class(cls: str, product_name: str) -> str:
    """
    Return the id of the class that a product with its own label figures gets.

    Parameters
    ----------
    cls
        Class id the product belongs to.
    product_name
        The person's name for it.

    Returns
    -------
    str
        Class id, a dot, and the name in small letters with hyphens.

    Examples
    --------
    >>> label_class("nitro-lacquer", "Old tin, 2021")
    'nitro-lacquer.old-tin-2021'
    """
    letters = "".join(sign if sign.isalnum() else " " for sign in product_name.lower())
    return f"{cls}.{'-'.join(letters.split())}"


def _label_row(subject: str, prop: Property, value: Value, product_name: str) -> FactRow:
    """Return the fact row that a label figure is."""
    cell = ";".join(value) if isinstance(value, tuple) else str(value)
    if isinstance(value, float | bool):
        cell = f"{float(value):g}"
    return FactRow(
        id=f"label:{subject}:{prop.name}",
        subject=subject,
        prop=prop.name,
        value=cell,
        unit=prop.unit,
        source="label",
        place=product_name,
        grade="label",
        read_as="whole",
        note="figure on the person's own container",
    )


def _words(identities: Iterable[Identity]) -> Words:
    """Return every spelling of a kind; ids win over names, names over aliases, earlier rows over later."""
    known = tuple(identities)
    words: Words = {}
    for identity in known:
        words.setdefault(resolve.plain_spelling(identity.id), (identity.id, identity.id))
    for identity in known:
        words.setdefault(resolve.plain_spelling(identity.name), (identity.id, identity.name))
    for identity in known:
        for alias in identity.aliases:
            words.setdefault(resolve.plain_spelling(alias), (identity.id, alias))
    return words
