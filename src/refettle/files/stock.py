"""The shelf in a workshop file: tins with their age and label, and things by the piece."""

from collections.abc import Callable
from collections.abc import Mapping as Table
from dataclasses import replace
from typing import Final

from refettle.domain.piece import Product
from refettle.files.amounts import (
    Unclear,
    film_um,
    grit,
    money,
    number,
    quoted,
    share,
    temp_c,
    time_h,
    volume_l,
)
from refettle.files.fields import Desk, nearest
from refettle.files.yaml_tree import Entry, Listing, Tree, plain
from refettle.knowledge.rows import Property

PRODUCT_KEYS: Final = ("name", "class", "have", "tin", "price", "label", "grit", "age", "opened", "frozen")
_KINDS: Final = ("film", "supply", "remover", "cleaner")
_OF_FILMS: Final = ("label", "age", "opened", "frozen")
_OF_SUPPLIES: Final = ("grit",)
_MONTHS: Final = {
    "day": 12 / 365.25, "days": 12 / 365.25, "week": 84 / 365.25, "weeks": 84 / 365.25, "month": 1.0, "months": 1.0,
    "year": 12.0, "years": 12.0,
}  # fmt: skip
_UNITS: Final[Table[str, tuple[str, Callable[[str], float | Unclear]]]] = {
    "h": ("h", time_h),
    "um": ("um", film_um),
    "C": ("c", temp_c),
    "1": ("", share),
    "m3/m3": ("", share),
}


def read_stock(desk: Desk, tree: Tree) -> tuple[Product, ...]:
    """
    Return what stands on the shelf; names differ.

    Parameters
    ----------
    desk
        Where findings go.
    tree
        The list.

    Returns
    -------
    tuple of Product
        In the order of the file.
    """
    if not isinstance(tree, Listing):
        desk.say(
            "wrong-form",
            tree.line,
            "stock",
            "a list of tins is due here",
            "begin each tin with a dash: - name: white primer",
        )
        return ()
    products: dict[str, Product] = {}
    for item in tree.items:
        product = _read_product(desk, item)
        if product is None:
            continue
        if product.name in products:
            what = f"{quoted(product.name)} stands here a second time"
            desk.say("word-twice", item.line, "stock", what, "give each tin a name of its own")
        products[product.name] = product
    return tuple(products.values())


def age_months(text: str) -> float | Unclear:
    """
    Return an age.

    Parameters
    ----------
    text
        E.g. ``8 months``, ``3 years``.

    Returns
    -------
    float | Unclear
        Age [month], 0 or above.

    Examples
    --------
    >>> age_months("2 years")
    24.0
    """
    amount, _, unit = text.strip().partition(" ")
    value = number(amount)
    per = _MONTHS.get(unit.strip().lower())
    if isinstance(value, Unclear) or per is None:
        return Unclear(what=f"{quoted(text)} is no age", do='write a number and its unit, e.g. "8 months"')
    return value * per


def _read_product(desk: Desk, tree: Tree) -> Product | None:
    """Read one tin, or a few pieces of something."""
    mapping = desk.mapping(tree, "stock", '"name: white primer" and "class: oil primer"')
    if mapping is None:
        return None
    product = Product(name="", cls="", where=desk.where(mapping.line, "stock"))
    for entry in sorted(mapping.entries, key=lambda e: plain(e.key) != "class"):
        product = _with_entry(desk, product, entry)
    keys = {plain(entry.key) for entry in mapping.entries}
    for key, eg in (("name", "name: white primer"), ("class", "class: oil primer")):
        if key not in keys:
            desk.say("missing", mapping.line, f"stock/{key}", f"this tin has no {key}", f'add e.g. "{eg}"')
    return replace(product, where=desk.where(mapping.line, f"stock/{product.name}")) if product.name else None


def _with_entry(desk: Desk, product: Product, entry: Entry) -> Product:
    """Return a product with one more entry read; its class is read before all others."""
    key, path = plain(entry.key), f"stock/{entry.key}"
    supply = product.kind == "supply"
    if (
        (key in _OF_FILMS and product.kind != "film")
        or (key in _OF_SUPPLIES and not supply)
        or (key == "tin" and supply)
    ):
        thing = desk.knowledge.name(product.kind, product.cls)
        desk.say("unknown-key", entry.line, path, f"{thing} takes no {quoted(entry.key)}", "take it out")
        return product
    match key:
        case "name":
            return replace(product, name=desk.text(entry.value, path) or "")
        case "class":
            return _with_class(desk, product, entry.value, path)
        case "have" if supply:
            return replace(product, have_count=desk.amount(entry.value, path, number) or 0.0)
        case "have":
            return replace(product, have_l=desk.amount(entry.value, path, volume_l) or 0.0)
        case "tin":
            return replace(product, size_l=desk.amount(entry.value, path, volume_l) or product.size_l)
        case "price":
            return replace(product, price=desk.amount(entry.value, path, money))
        case _:
            return _with_mark(desk, product, entry)


def _with_mark(desk: Desk, product: Product, entry: Entry) -> Product:
    """Return a product with its label, its grit, or how it has fared, read."""
    path = f"stock/{entry.key}"
    match plain(entry.key):
        case "label":
            return replace(product, label=_read_label(desk, entry.value, path))
        case "grit":
            return replace(product, grit=desk.amount(entry.value, path, grit) or 0)
        case "age":
            return replace(product, age_months=desk.amount(entry.value, path, age_months))
        case "opened":
            return replace(product, opened=bool(desk.yes(entry.value, path)))
        case "frozen":
            return replace(product, frozen=bool(desk.yes(entry.value, path)))
        case _:
            desk.unknown_key(entry, path, PRODUCT_KEYS)
            return product


def _with_class(desk: Desk, product: Product, tree: Tree, path: str) -> Product:
    """Return a product with its class: a film or colour, a supply, a remover or a cleaner."""
    said = desk.text(tree, path)
    if said is None:
        return product
    for kind in _KINDS:
        found = desk.knowledge.find(kind, said)
        if found is not None:
            size = product.size_l if kind == "film" else 0.0
            return replace(product, kind=kind, cls=found, size_l=size)
    return replace(product, cls=desk.known("film", said, tree.line, path) or "")


def _read_label(desk: Desk, tree: Tree, path: str) -> tuple[tuple[str, float], ...]:
    """Read figures of a label that override the class."""
    mapping = desk.mapping(tree, path, '"recoat from: 2 h"')
    if mapping is None:
        return ()
    properties = {
        plain(name).removesuffix(f" {_UNITS.get(prop.unit, (prop.unit, None))[0]}"): prop
        for name, prop in desk.knowledge.properties.get("film", {}).items()
        if prop.type in {"number", "flag"}
    }
    label: list[tuple[str, float]] = []
    for entry in mapping.entries:
        below = f"{path}/{entry.key}"
        prop = properties.get(plain(entry.key))
        if prop is None:
            near = nearest(plain(entry.key), list(properties))
            do = (
                f'write "{near}"'
                if near
                else "write e.g. recoat from, recoat until, sand, cured, touch, min, rh max, solids vol"
            )
            desk.say(
                "unknown-key", entry.line, below, f"{quoted(entry.key)} is no figure that a label gives", do
            )
            continue
        value = _read_figure(desk, entry, below, prop)
        if value is not None:
            label.append((prop.name, value))
    return tuple(label)


def _read_figure(desk: Desk, entry: Entry, path: str, prop: Property) -> float | None:
    """Read one figure in the unit of its property."""
    if prop.type == "flag":
        said = desk.yes(entry.value, path)
        return None if said is None else float(said)
    value = desk.amount(entry.value, path, _UNITS.get(prop.unit, ("", number))[1])
    if value is None:
        return None
    low, high = prop.low, prop.high
    if (low is not None and value < low) or (high is not None and value > high):
        what = (
            f"{value:g} {prop.unit} is outside {low:g} to {high:g} {prop.unit}"
            if low is not None and high is not None
            else "out of range"
        )
        desk.say("unclear-amount", entry.line, path, what, "check the figure and its unit")
        return None
    return value
