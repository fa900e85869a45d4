"""Forms of words that are written anew in plainer ones, before a text is taken apart."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable

Rewrite = tuple[tuple[str, ...], re.Pattern[str], str | Callable[[re.Match[str]], str]]
"""Words or signs, the form, and what is written for it. Only a text that has one of the words can
have the form: to look for those is quick, and most texts have none of them."""


def rewritten(text: str, table: Iterable[Rewrite]) -> str:
    """The text with each form of the table written anew, in its order."""
    for signs, form, meant in table:
        for sign in signs:
            if sign in text:
                text = form.sub(meant, text)
                break
    return text


def is_anchored(form: re.Pattern[str]) -> bool:
    """Whether a form stands at the head or the end of a text: any other is found wherever it is."""
    return "^" in form.pattern or "$" in form.pattern
