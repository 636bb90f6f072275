"""
Writing the person's file: a new one, or one value changed while comments and order stay.

Every scalar is loaded and written as text, so that nothing is turned into a number, a date or a
truth value on the way. After a change the result is read again: if anything but the wanted entry
reads differently, the change is refused.
"""

import re
from collections.abc import Sequence
from io import StringIO
from typing import TYPE_CHECKING, Any, Final

from refettle.domain.finding import Finding, Where
from refettle.files.yaml_tree import Listing, Mapping, Text, Tree, read_tree

if TYPE_CHECKING:
    from ruamel.yaml import YAML

Written = str | Sequence["Written"] | dict[str, "Written"]
_WIDTH: Final = 4096
_INNER: Final = ("tests", "look")


def _round_trip(text: str) -> "YAML":
    """Return the library's round trip with every scalar as text, indented as the file is."""
    from ruamel.yaml import YAML  # noqa: PLC0415 - keeps start-up light
    from ruamel.yaml.nodes import ScalarNode  # noqa: PLC0415 - as above
    from ruamel.yaml.resolver import VersionedResolver  # noqa: PLC0415 - as above

    class TextResolver(VersionedResolver):
        """Takes every scalar for text."""

        def resolve(self, kind: Any, value: Any, implicit: Any) -> Any:  # noqa: ANN401 - the library's signature
            if kind is ScalarNode:
                return self.DEFAULT_SCALAR_TAG
            return super().resolve(kind, value, implicit)

    yaml = YAML(typ="rt", pure=True)
    yaml.Resolver = TextResolver
    yaml.preserve_quotes = True
    yaml.width = _WIDTH
    yaml.allow_unicode = True
    dash = re.search(r"^( *)[^\s#-][^\n]*:[ \t]*(?:#[^\n]*)?\n(?:[ \t]*#[^\n]*\n)*( *)- ", text, re.MULTILINE)
    offset = max(0, len(dash.group(2)) - len(dash.group(1))) if dash else 2
    step = re.search(
        r"^[^\s#-][^\n]*:[ \t]*(?:#[^\n]*)?\n(?:[ \t]*#[^\n]*\n)*( +)[^\s#-]", text, re.MULTILINE
    )
    yaml.indent(mapping=len(step.group(1)) if step else 2, sequence=offset + 2, offset=offset)
    return yaml


def _steps_of(data: Any, path: str) -> tuple[str, ...]:  # noqa: ANN401 - the library's mapping
    """Return a path as keys: keys that stand there first, since names of surfaces have slashes in them."""
    keys: list[str] = []
    rest, place = path, data
    while rest and isinstance(place, dict):
        fits = [key for key in place if isinstance(key, str) and (rest == key or rest.startswith(f"{key}/"))]
        if not fits:
            break
        key = max(fits, key=len)
        keys.append(key)
        rest, place = rest[len(key) + 1 :], place[key]
    if not rest:
        return tuple(keys)
    if not keys:
        first, _, rest = rest.partition("/")
        keys.append(first)
    if keys == ["surfaces"] and "/" in rest:
        inner = next((word for word in _INNER if f"/{word}/" in rest), None)
        head, _, last = rest.rpartition(f"/{inner}/" if inner else "/")
        return (*keys, head, inner, last) if inner else (*keys, head, last)
    inner = next((word for word in _INNER if rest.startswith(f"{word}/")), None)
    if inner:
        return (*keys, inner, rest[len(inner) + 1 :])
    return (*keys, rest) if rest else tuple(keys)


def _put(data: Any, keys: tuple[str, ...], value: Written | None) -> bool:  # noqa: ANN401 - the library's mapping
    """Put a value behind keys; return False where a value stands in the way."""
    place = data
    for key in keys[:-1]:
        if place.get(key) in (None, ""):
            place[key] = {}
        place = place[key]
        if not isinstance(place, dict):
            return False
    if value is None:
        place.pop(keys[-1], None)
    else:
        place[keys[-1]] = _clean(value)
    return True


def _clean(value: Written) -> Any:  # noqa: ANN401 - plain lists and dicts for the library
    if isinstance(value, str):
        return value
    if isinstance(value, dict):
        return {key: _clean(inner) for key, inner in value.items()}
    return [_clean(inner) for inner in value]


def _values(tree: Tree | None) -> Any:  # noqa: ANN401 - plain nested values, for comparison
    """Return a tree without its line numbers."""
    if isinstance(tree, Text):
        return tree.value
    if isinstance(tree, Listing):
        return [_values(item) for item in tree.items]
    return {entry.key: _values(entry.value) for entry in tree.entries} if isinstance(tree, Mapping) else None


def _refused(path: str, what: str, do: str) -> Finding:
    return Finding(code="not-amended", level="error", where=Where(file="", path=path), what=what, do=do)


def _dump(yaml: "YAML", data: Any) -> str:  # noqa: ANN401 - the library's mapping
    out = StringIO()
    yaml.dump(data, out)
    return out.getvalue()


def amend_piece(text: str, path: str, value: Written | None) -> str | Finding:
    """
    Return the file with one value changed; comments and order stay.

    Parameters
    ----------
    text
        A piece or workshop file.
    path
        Path of the entry as findings and assumptions name it, e.g. ``surfaces/top/wood``.
    value
        New value as the person would write it, a list or a mapping of such; None takes the entry out.

    Returns
    -------
    str | Finding
        The new text; a finding where the file is broken or the entry cannot be changed alone.
    """
    before, findings = read_tree(text, "")
    if before is None or findings:
        first = findings[0] if findings else _refused(path, "the file is empty", "write it anew")
        return _refused(path, f"the file cannot be changed while {first.what}", first.do)
    yaml = _round_trip(text)
    data = yaml.load(text)
    keys = _steps_of(data, path)
    if not all(keys) or not keys or not _put(data, keys, value):
        return _refused(path, f'nothing can be put at "{path}"', "change the file by hand")
    after = _dump(yaml, data)
    wanted = _values(before)
    _put(wanted, keys, value)
    read_back, problems = read_tree(after, "")
    if problems or _trimmed(_values(read_back)) != _trimmed(wanted):
        return _refused(
            path, f'"{path}" cannot be changed without touching other entries', "change the file by hand"
        )
    return after


def _trimmed(value: Any) -> Any:  # noqa: ANN401 - plain nested values
    """Return values with the spaces of their texts as a reader sees them."""
    if isinstance(value, str):
        return value.strip()
    if isinstance(value, list | tuple):
        return [_trimmed(inner) for inner in value]
    if isinstance(value, dict):
        return {" ".join(key.split()): _trimmed(inner) for key, inner in value.items()}
    return value


def write_piece(entries: dict[str, Written]) -> str:
    """
    Return a new piece file.

    Parameters
    ----------
    entries
        Keys with values as a person would write them, in the order of the file.

    Returns
    -------
    str
        The file.
    """
    yaml = _round_trip("")
    return _dump(yaml, _clean(entries))
