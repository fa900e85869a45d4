"""Forms of words that are written anew in plainer ones, before a text is taken apart."""

from __future__ import annotations

import re
from collections.abc import Callable

from bot.reading.signs import Index

Rewrite = tuple[tuple[str, ...], re.Pattern[str], str | Callable[[re.Match[str]], str]]
"""Words or signs, the form, and what is written for it. Only a text that has one of the words can
have the form: to look for those is quick, and most texts have none of them."""


class Rewrites:
    """A table of forms that are written anew, one after the other."""

    def __init__(self, *table: Rewrite) -> None:
        self.table = table
        self._index = Index([signs for signs, _, _ in table])

    def of(self, text: str) -> str:
        """The text with each form of the table written anew, in its order."""
        rows = self._index.rows(text)
        while rows:
            done = rows.pop(0)
            _, form, meant = self.table[done]
            if form.search(text) is not None:  # far quicker than `sub`, and most do not stand there
                text = form.sub(meant, text)
                rows = [row for row in self._index.rows(text) if row > done]
        return text

    def of_a_sentence(self) -> Rewrites:
        """Those that stand at the head or the end of a text, and are looked for in a sentence."""
        return Rewrites(*(row for row in self.table if is_anchored(row[1])))


def is_anchored(form: re.Pattern[str]) -> bool:
    """Whether a form stands at the head or the end of a text: any other is found wherever it is."""
    return "^" in form.pattern or "$" in form.pattern
