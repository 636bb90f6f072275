"""Stand-ins for tests: small, plain, and independent of the numbers in the package's tables."""

from functools import cache

from refettle.files.tables import read_tables
from refettle.knowledge.knowledge import Knowledge
from refettle.knowledge.rows import FactRow

_FILMS = {
    "shellac-waxed": ("topcoat;seal", "3", "2"),
    "shellac-dewaxed": ("seal;topcoat", "2", "2"),
    "nitro-lacquer": ("topcoat", "3", "1"),
    "acrylic-paint": ("paint", "2", "4"),
    "oil-stain": ("stain", "1", "24"),
    "factory-coating": ("old", "2", "0"),
    "alkyd-enamel": ("paint", "2", "16"),
}


def _row(number: int, subject: str, prop: str, value: str) -> FactRow:
    return FactRow(
        id=f"fake-{number}", subject=subject, prop=prop, value=value, source="fake", grade="judgement"
    )


@cache
def small_knowledge() -> Knowledge:
    """Return every name of the package with a handful of invented facts."""
    cells = [
        (f"film:{film}", prop, value)
        for film, (role, coats, recoat_h) in _FILMS.items()
        for prop, value in (("role", role), ("coats", coats), ("recoat_from_h", recoat_h))
    ]
    cells += [(f"film:{film}", "opaque", "1") for film in ("acrylic-paint", "alkyd-enamel")]
    cells += [("build:veneer", "veneer_um", "700"), ("cleaner:soap-water", "dry_h", "3")]
    tables = read_tables()
    return Knowledge.build(
        rows=[_row(number, *cell) for number, cell in enumerate(cells)],
        properties=tables.properties,
        identities=tables.identities,
        sources=tables.sources,
        version="fake",
    )
