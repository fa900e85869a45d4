"""Which words and signs stand in a text: all those of a table are looked for in one pass.

To look for each by itself takes as long as there are many of them, and most texts have few.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

_Tree = dict[str, "_Tree"]
_END = ""


def either(signs: Iterable[str]) -> str:
    """A part of an expression for any of these, the longest of those that begin alike."""
    tree: _Tree = {}
    for sign in signs:
        branch = tree
        for letter in sign:
            branch = branch.setdefault(letter, {})
        branch[_END] = {}
    return _expression(tree)


def _expression(branch: _Tree) -> str:
    ways = [re.escape(letter) + _expression(rest) for letter, rest in branch.items() if letter]
    either_way = f"(?:{'|'.join(ways)})" if ways else ""
    return either_way + "?" if ways and _END in branch else either_way


class Sought:
    """A form of words that is only looked for where one of its signs (split by |) stands, since
    that is quick to see and most texts have none."""

    __slots__ = ("_form", "_signs")

    def __init__(self, signs: str, form: str) -> None:
        self._signs = tuple(signs.split("|"))
        self._form = re.compile(form)

    def search(self, text: str) -> re.Match[str] | None:
        """The first place in a text where it stands."""
        for sign in self._signs:
            if sign in text:
                return self._form.search(text)
        return None

    def match(self, text: str) -> re.Match[str] | None:
        """It, at the head of a text."""
        for sign in self._signs:
            if sign in text:
                return self._form.match(text)
        return None

    def fullmatch(self, text: str) -> re.Match[str] | None:
        """It, as the whole of a text."""
        for sign in self._signs:
            if sign in text:
                return self._form.fullmatch(text)
        return None

    def sub(self, anew: str, text: str) -> str:
        """A text with another in its place, wherever it stands."""
        return text if self.search(text) is None else self._form.sub(anew, text)


class Index:
    """The rows of a table by their signs: a row is only looked at where one of its signs is."""

    def __init__(self, signs_of_rows: Sequence[Iterable[str]]) -> None:
        rows: dict[str, set[int]] = {}
        for number, signs in enumerate(signs_of_rows):
            for sign in signs:
                rows.setdefault(sign, set()).add(number)
        # Of signs that begin alike the longest is found, and the others stand there too.
        self._rows = {
            sign: frozenset().union(*(rows[sign[:n]] for n in range(1, len(sign) + 1)
                                      if sign[:n] in rows))
            for sign in rows
        }  # fmt: skip
        self._sign = re.compile(f"(?=({either(rows)}))")

    def rows(self, text: str) -> list[int]:
        """The numbers of the rows that have a sign in this text, in order."""
        found = set(self._sign.findall(text))
        return sorted(frozenset().union(*map(self._rows.__getitem__, found)))
