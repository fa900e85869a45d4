"""Names made comparable: case, accents, hyphens and the usual short forms do not matter."""

from __future__ import annotations

import re
import unicodedata

_SHORT = {
    "st": "saint",
    "ste": "sainte",
    "mt": "mount",
    "ft": "fort",
    "pt": "point",
    "n": "north",
    "no": "north",
    "s": "south",
    "so": "south",
    "e": "east",
    "w": "west",
    "ctr": "center",
    "centre": "center",
    "jct": "junction",
    "twp": "township",
}
_PARTING = re.compile(r"[\s,;/()\u2013\u2014-]+")


def words_of(text: str) -> list[str]:
    """The words of a text in small letters, without accents, dots and apostrophes.

    `St.-Prosper, Qué.` gives `st prosper que`.
    """
    bare = "".join(c for c in unicodedata.normalize("NFKD", text) if not unicodedata.combining(c))
    bare = re.sub(r"[.'\u2018\u2019`\"!?:]", "", bare.casefold())
    return [word for word in _PARTING.split(bare) if word]


def key(words: list[str]) -> str:
    """What two spellings of one name have in common."""
    return " ".join(_SHORT.get(word, word) for word in words)
