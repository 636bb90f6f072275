"""
A YAML file as a tree of texts with line numbers.

Every scalar stays the text that was written (`no` stays "no", `1:30` stays "1:30"); the reader of
each field makes the value. The tree is built from the library's event stream without recursion, so
that neither deep nesting nor a file that points into itself can hurt. Keys given twice, references
(`*x`), marks (`&x`), tags (`!x`), merge keys and second documents are refused with their line.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final
from unicodedata import category

from refettle.domain.finding import Finding, Where

if TYPE_CHECKING:
    from ruamel.yaml import YAML

DEEPEST: Final = 12
LARGEST: Final = 500_000


def plain(word: str) -> str:
    """
    Return a word in small letters with single spaces.

    Parameters
    ----------
    word
        Anything a person wrote.

    Returns
    -------
    str
        The word as it is compared.
    """
    return " ".join(word.lower().replace("_", " ").split())


@dataclass(frozen=True, slots=True, kw_only=True)
class Text:
    """
    A scalar as it was written.

    Attributes
    ----------
    line
        Line [1], from 1.
    value
        The text without quotes; empty where nothing was written.
    """

    line: int
    value: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Listing:
    """
    A list.

    Attributes
    ----------
    line
        Line [1], from 1.
    items
        Its items in order.
    """

    line: int
    items: tuple["Tree", ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """
    One key with its value.

    Attributes
    ----------
    line
        Line of the key [1], from 1.
    key
        The key as written, spaces in a row as one.
    value
        What stands behind it.
    """

    line: int
    key: str
    value: "Tree"


@dataclass(frozen=True, slots=True, kw_only=True)
class Mapping:
    """
    A mapping; its keys differ.

    Attributes
    ----------
    line
        Line [1], from 1.
    entries
        Its entries in the order of the file.
    """

    line: int
    entries: tuple[Entry, ...]

    def get(self, key: str) -> Entry | None:
        """Return the entry of a key, or None; capitals do not matter."""
        return next((entry for entry in self.entries if plain(entry.key) == plain(key)), None)


Tree = Text | Listing | Mapping


@dataclass(slots=True)
class _Open:
    """A list or mapping that is still being read; `key` is the key that waits for its value."""

    line: int
    is_mapping: bool
    children: list[Any]
    key: Text | None = None


class _Builder:
    """Builds the tree from events; a stack instead of recursion."""

    def __init__(self, file_name: str) -> None:
        self.file_name = file_name
        self.findings: list[Finding] = []
        self.root: Tree | None = None
        self._stack: list[_Open] = []
        self._documents = 0

    def say(self, code: str, line: int, what: str, do: str) -> None:
        """Add a finding at the entry that is being read."""
        path = "/".join(part.key.value for part in self._stack if part.key is not None)
        where = Where(file=self.file_name, line=line, path=path)
        self.findings.append(Finding(code=code, level="error", where=where, what=what, do=do))

    def take(self, event: Any) -> bool:  # noqa: ANN401 - events of the library carry no types
        """Take one event; return False when reading should stop."""
        kind = type(event).__name__
        line = event.start_mark.line + 1
        if kind == "DocumentStartEvent":
            self._documents += 1
            if self._documents > 1:
                self.say(
                    "second-document", line, "a second document begins here", "keep one document in a file"
                )
                return False
        elif kind == "AliasEvent":
            self.say("reference", line, f'"*{event.anchor}" points to another entry', "write the entry out")
            self._place(Text(line=line, value=""))
        elif kind in {"ScalarEvent", "MappingStartEvent", "SequenceStartEvent"}:
            return self._begin(event, kind, line)
        elif kind in {"MappingEndEvent", "SequenceEndEvent"}:
            self._end()
        return True

    def _begin(self, event: Any, kind: str, line: int) -> bool:  # noqa: ANN401 - as above
        if event.anchor:
            self.say(
                "reference",
                line,
                f'"&{event.anchor}" marks an entry',
                "leave the mark out, or quote the text",
            )
        if event.tag and event.tag != "!":
            self.say(
                "tag",
                line,
                f'"{event.tag}" says what kind of value follows',
                "leave it out: every entry is read as text",
            )
        if kind == "ScalarEvent":
            self._place(Text(line=line, value=event.value.strip()))
            return True
        if len(self._stack) >= DEEPEST:
            self.say(
                "too-deep",
                line,
                f"entries stand more than {DEEPEST} levels deep",
                "a file needs at most six levels",
            )
            return False
        self._stack.append(_Open(line=line, is_mapping=kind == "MappingStartEvent", children=[]))
        return True

    def _end(self) -> None:
        done = self._stack.pop()
        if done.is_mapping:
            self._place(Mapping(line=done.line, entries=tuple(done.children)))
        else:
            self._place(Listing(line=done.line, items=tuple(done.children)))

    def _place(self, tree: Tree) -> None:
        """Put a finished value where it belongs: at the root, in a list, as a key or behind its key."""
        if not self._stack:
            self.root = tree
            return
        place = self._stack[-1]
        if not place.is_mapping:
            place.children.append(tree)
        elif place.key is None:
            place.key = self._key(tree)
        else:
            key, place.key = place.key, None
            if isinstance(tree, Text) and not tree.value:
                tree = Text(line=key.line, value="")  # the library puts an empty value on the next line
            self._add_entry(place, Entry(line=key.line, key=key.value, value=tree))

    def _key(self, tree: Tree) -> Text:
        if not isinstance(tree, Text):
            self.say(
                "odd-key",
                tree.line,
                "a list or mapping stands where a key is due",
                "write a word and a colon",
            )
            return Text(line=tree.line, value="")
        return Text(line=tree.line, value=" ".join(tree.value.split()))

    def _add_entry(self, place: _Open, entry: Entry) -> None:
        before = next((old for old in place.children if plain(old.key) == plain(entry.key)), None)
        if entry.key == "<<":
            self.say(
                "reference", entry.line, '"<<" merges another entry into this one', "write the entries out"
            )
        elif before is not None:
            self.say(
                "key-twice",
                entry.line,
                f'"{entry.key}" stands here a second time; the first is in line {before.line}',
                "keep one of the two",
            )
        else:
            place.children.append(entry)


def _yaml(kind: str) -> "YAML":
    """Return the library's reader; imported here because it is slow to load."""
    from ruamel.yaml import YAML  # noqa: PLC0415 - keeps start-up light

    return YAML(typ=kind, pure=True)


def _events(text: str) -> Iterator[Any]:
    yield from _yaml("safe").parse(text)


def _is_text(sign: str) -> bool:
    """Return whether a character may stand in a file: letters, signs, any kind of blank."""
    return sign.isprintable() or sign in "\t\r\ufeff" or category(sign) == "Zs"


def _unreadable(text: str, file_name: str) -> Finding | None:
    """Return a finding for text that should not even be parsed."""
    if len(text) > LARGEST:
        what, do = f"the file is longer than {LARGEST} characters", "check that it is the right file"
        return Finding(code="too-long", level="error", where=Where(file=file_name), what=what, do=do)
    for number, line in enumerate(text.split("\n"), start=1):
        where = Where(file=file_name, line=number)
        odd = next((sign for sign in line if not _is_text(sign)), None)
        if odd is not None:
            what = f"character U+{ord(odd):04X} is no text"
            return Finding(
                code="not-text",
                level="error",
                where=where,
                what=what,
                do="save the file as plain text (UTF-8)",
            )
        if "\t" in line[: len(line) - len(line.lstrip())]:
            what, do = "a tab stands at the beginning of the line", "use spaces"
            return Finding(code="tab", level="error", where=where, what=what, do=do)
    return None


def read_tree(text: str, file_name: str) -> tuple[Mapping | None, tuple[Finding, ...]]:
    """
    Return a YAML text as a tree of texts.

    Parameters
    ----------
    text
        The file.
    file_name
        Its name, for findings.

    Returns
    -------
    tuple[Mapping | None, tuple[Finding, ...]]
        The outermost mapping, None if there is none; and everything wrong with the form of the file. After
        an error of syntax the tree is None, since what follows would be read wrongly.
    """
    finding = _unreadable(text, file_name)
    if finding is not None:
        return None, (finding,)
    builder = _Builder(file_name)
    try:
        for event in _events(text):
            if not builder.take(event):
                return None, tuple(builder.findings)
    except Exception as problem:  # noqa: BLE001 - the library trips over mangled text in many ways; all mean "no YAML"
        return None, (*builder.findings, _syntax(problem, file_name))
    root = builder.root
    if not isinstance(root, Mapping):
        empty = root is None or (isinstance(root, Text) and not root.value)
        what = "the file is empty" if empty else "the file is no list of entries"
        where = Where(file=file_name, line=0 if root is None or empty else root.line)
        do = 'begin with an entry such as "piece: Hall table"'
        code = "empty-file" if empty else "no-entries"
        return None, (*builder.findings, Finding(code=code, level="error", where=where, what=what, do=do))
    return root, tuple(builder.findings)


def _syntax(problem: Exception, file_name: str) -> Finding:
    """Return the library's complaint in our own form."""
    mark = getattr(problem, "problem_mark", None)
    said = str(getattr(problem, "problem", None) or "it breaks off or is mangled").partition("\n")[0]
    line = 0 if mark is None else mark.line + 1
    return Finding(
        code="syntax",
        level="error",
        where=Where(file=file_name, line=line),
        what=f"this is no YAML: {said}",
        do='check colons, dashes and indentation here and one line up; put text with ": " or " #" in quotes',
    )
