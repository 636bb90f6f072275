"""
Readers of single fields: a tree in, a value or a finding out.

A `Desk` gathers the findings of one file; its methods read one kind of value each and return None
where the entry cannot be read. Whoever calls then leaves the default in place: the finding is an
error, so no plan is made from it.
"""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import Final, TypeVar

from refettle.domain.finding import Finding, Level, Where
from refettle.files.amounts import Unclear, quoted, share
from refettle.files.yaml_tree import Entry, Listing, Mapping, Text, Tree, plain
from refettle.knowledge.knowledge import Knowledge

_SAID_UNDER_LOOK: Final = frozenset({"colour", "color", "shade", "gloss", "finish wanted"})

Value = TypeVar("Value")

KIND_WORDS = {
    "film": "film or colour",
    "wood": "wood",
    "build": "build",
    "contaminant": "contamination",
    "latent": "old stain",
    "cleaner": "cleaner",
    "remover": "remover",
    "tool": "tool",
    "test": "test",
    "damage": "damage",
    "repair": "repair",
    "fitting": "fitting",
    "supply": "supply",
}
_SHOWN = 12


def known_list(words: Iterable[str]) -> str:
    """
    Return known words for a message, cut where there are many.

    Parameters
    ----------
    words
        The words.

    Returns
    -------
    str
        ``a, b or c``.
    """
    all_words = list(words)
    if len(all_words) > _SHOWN:
        return ", ".join(all_words[:_SHOWN]) + " …"
    if len(all_words) < 2:
        return "".join(all_words)
    return ", ".join(all_words[:-1]) + " or " + all_words[-1]


def nearest(word: str, known: Sequence[str]) -> str:
    """
    Return the known word spelt most nearly like a given one.

    Parameters
    ----------
    word
        The person's word.
    known
        Known words.

    Returns
    -------
    str
        The nearest, or empty where none is near.
    """
    near = get_close_matches(word.lower(), known, n=1, cutoff=0.6)
    return near[0] if near else ""


@dataclass(slots=True, kw_only=True)
class Desk:
    """
    Where the findings of one file are gathered.

    Attributes
    ----------
    file
        Name of the file.
    knowledge
        What is known.
    findings
        Findings so far.
    """

    file: str
    knowledge: Knowledge
    findings: list[Finding] = field(default_factory=list)

    def where(self, line: int, path: str) -> Where:
        """Return a place in this file."""
        return Where(file=self.file, line=line, path=path)

    def say(self, code: str, line: int, path: str, what: str, do: str, level: Level = "error") -> None:
        """Add a finding."""
        where = self.where(line, path)
        self.findings.append(Finding(code=code, level=level, where=where, what=what, do=do))

    def text(self, tree: Tree, path: str) -> str | None:
        """Return the text of a scalar on one line; a finding where it is empty, a list or a mapping."""
        lines = self.lines(tree, path)
        return None if lines is None else " ".join(" ".join(lines).split())

    def lines(self, tree: Tree, path: str) -> tuple[str, ...] | None:
        """Return the lines of a scalar; a finding as in `text`."""
        if not isinstance(tree, Text):
            kind = "a list" if isinstance(tree, Listing) else "a mapping"
            self.say(
                "wrong-form", tree.line, path, f"{kind} stands where one value is due", "write one value"
            )
            return None
        if not tree.value:
            self.say(
                "no-value",
                tree.line,
                path,
                "nothing stands behind the colon",
                "write a value or take the line out",
            )
            return None
        return tuple(tree.value.splitlines())

    def amount(self, tree: Tree, path: str, read: Callable[[str], Value | Unclear]) -> Value | None:
        """Return an amount read by one of the readers of amounts."""
        said = self.text(tree, path)
        if said is None:
            return None
        value = read(said)
        if isinstance(value, Unclear):
            self.say("unclear-amount", tree.line, path, value.what, value.do)
            return None
        return value

    def choice(self, tree: Tree, path: str, known: Sequence[str], noun: str) -> str | None:
        """Return one of a few words."""
        said = self.text(tree, path)
        if said is None:
            return None
        word = plain(said)
        if word in known:
            return word
        near = nearest(word, known)
        do = f'write "{near}"' if near else f"write {known_list(known)}"
        self.say("unknown-word", tree.line, path, f"{quoted(said)} is not a known {noun}", do)
        return None

    def yes(self, tree: Tree, path: str) -> bool | None:
        """Return whether it says yes."""
        said = self.text(tree, path)
        if said is None:
            return None
        if plain(said) in {"yes", "no"}:
            return plain(said) == "yes"
        self.say("unknown-word", tree.line, path, f"{quoted(said)} is neither yes nor no", "write yes or no")
        return None

    def known(self, kind: str, said: str, line: int, path: str) -> str | None:
        """Return the id that a word means; a finding with near spellings otherwise."""
        found = self.knowledge.find(kind, said)
        if found is not None:
            return found
        near = self.knowledge.near(kind, said)
        names = [f'"{word}"' for word in near] or [
            self.knowledge.name(kind, id_) for id_ in self.knowledge.ids(kind)
        ]
        what = f"{quoted(said)} is not a known {KIND_WORDS[kind]}"
        self.say(f"unknown-{kind}", line, path, what, f"write {known_list(names)}")
        return None

    def word(self, tree: Tree, path: str, kind: str) -> str | None:
        """Return the id that a scalar means."""
        said = self.text(tree, path)
        return None if said is None else self.known(kind, said, tree.line, path)

    def items(self, tree: Tree) -> tuple[Tree, ...]:
        """Return the items of a list, or the value alone."""
        return tree.items if isinstance(tree, Listing) else (tree,)

    def weighted(self, tree: Tree, path: str, kind: str, unsaid: float) -> tuple[tuple[str, float], ...]:
        """Return ids with shares: `unsaid` where only the word stands, the share where `word: share` does."""
        pairs: dict[str, float] = {}
        for said, line, value in self._words_with_shares(tree, path):
            id_ = self.known(kind, said, line, path)
            amount = unsaid if value is None else self.amount(value, f"{path}/{said}", share)
            if id_ is None or amount is None:
                continue
            if id_ in pairs:
                self.say(
                    "word-twice",
                    line,
                    path,
                    f"{quoted(said)} stands here a second time",
                    "keep one of the two",
                )
            pairs.setdefault(id_, amount)
        return tuple(pairs.items())

    def _words_with_shares(self, tree: Tree, path: str) -> list[tuple[str, int, Tree | None]]:
        words: list[tuple[str, int, Tree | None]] = []
        for item in self.items(tree):
            if isinstance(item, Mapping):
                words.extend((entry.key, entry.line, entry.value) for entry in item.entries)
            else:
                said = self.text(item, path)
                if said is not None:
                    words.append((said, item.line, None))
        return words

    def mapping(self, tree: Tree, path: str, eg: str) -> Mapping | None:
        """Return a mapping; a finding where something else stands."""
        if isinstance(tree, Mapping):
            return tree
        self.say("wrong-form", tree.line, path, "entries are due here", f"write entries below it, e.g. {eg}")
        return None

    def unknown_key(self, entry: Entry, path: str, known: Sequence[str]) -> None:
        """Say that a key is not known."""
        near = nearest(plain(entry.key), known)
        if plain(entry.key) in _SAID_UNDER_LOOK and "look" in known:
            self.say(
                "unknown-key",
                entry.line,
                path,
                f"{quoted(entry.key)} is said under look",
                'write it there, e.g. "look: opaque white satin"',
            )
            return
        do = f'write "{near}"' if near else f"known here: {', '.join(known)}"
        self.say(
            "unknown-key", entry.line, path, f"{quoted(entry.key)} is not an entry that is known here", do
        )
