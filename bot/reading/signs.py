"""Which words and signs stand in a text: all those of a table are looked for in one pass.

To look for each by itself takes as long as there are many of them, and most texts have few.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from functools import lru_cache

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

    __slots__ = ("form", "signs")

    def __init__(self, signs: str, form: str) -> None:
        self.signs = tuple(signs.split("|"))
        self.form = re.compile(form)

    def search(self, text: str) -> re.Match[str] | None:
        """The first place in a text where it stands."""
        return self.form.search(text) if self._may_stand_in(text) else None

    def match(self, text: str) -> re.Match[str] | None:
        """It, at the head of a text."""
        return self.form.match(text) if self._may_stand_in(text) else None

    def fullmatch(self, text: str) -> re.Match[str] | None:
        """It, as the whole of a text."""
        return self.form.fullmatch(text) if self._may_stand_in(text) else None

    def _may_stand_in(self, text: str) -> bool:
        return any(map(text.__contains__, self.signs))

    def sub(self, anew: str | Callable[[re.Match[str]], str], text: str) -> str:
        """A text with another in its place, wherever it stands."""
        return self.form.sub(anew, text) if self._may_stand_in(text) else text


class Index:
    """The rows of a table by their signs: a row is only looked at where one of its signs is.

    The signs of all tables are looked for together, since the stages ask about the same text one
    after the other.
    """

    def __init__(self, signs_of_rows: Sequence[Iterable[str]]) -> None:
        self._rows: dict[str, list[int]] = {}
        for number, signs in enumerate(signs_of_rows):
            for sign in dict.fromkeys(signs):
                self._rows.setdefault(sign, []).append(number)
        self._signs = frozenset(self._rows)
        _OF_ALL_TABLES.update(self._signs)

    def rows(self, text: str) -> list[int]:
        """The numbers of the rows that have a sign in this text, in order."""
        found = self._signs & standing_in(text)
        return sorted({row for sign in found for row in self._rows[sign]})


_OF_ALL_TABLES: set[str] = set()


@lru_cache(maxsize=64)
def standing_in(text: str) -> frozenset[str]:
    """The signs of all tables that stand in a text."""
    expression, begun_with = _expression_of(len(_OF_ALL_TABLES))
    found = set(expression.findall(text))
    return frozenset(found.union(*(begun_with[sign] for sign in found & begun_with.keys())))


@lru_cache(maxsize=1)
def _expression_of(count: int) -> tuple[re.Pattern[str], dict[str, frozenset[str]]]:
    """What finds the signs, of which there are so many; and the signs that some begin with: of
    those that begin alike the longest is found, and the others stand there too."""
    begun_with = {
        sign: frozenset(sign[:n] for n in range(1, len(sign))) & _OF_ALL_TABLES
        for sign in _OF_ALL_TABLES
    }
    return re.compile(f"(?=({either(_OF_ALL_TABLES)}))"), {
        sign: shorter for sign, shorter in begun_with.items() if shorter
    }
