"""Second stage: tidy text becomes tokens, one pass of one expression.

A token is a word, a number, a clock time, a sign, or something with a shape of its own
(money, a phone number, an e-mail address, a postal code, a date in figures).
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

_SHAPES = re.compile(
    r"""
    (?=[\d+($.]) (?:
        (?P<phone>\+\d[\d().\- ]{7,16}\d
            | (?:1[ .\-]?)?\(?\d{3}\)?[ .\-]?\d{3}[ .\-]?\d{4}(?!\d))
      | (?P<isodate>\d{4}-\d{1,2}-\d{1,2})
      | (?P<money>\$\s?(?:\d+(?:\.\d+)?|\.\d+))
      | (?P<clock>\d{1,2}(?::\d{2})?\ ?[ap](?:m\b|\.m\b(?:\.(?!\ ?[a-z0-9])
            |\.(?=\ ?(?:to|til|till|until|and|with|on|today|this|yesterday)\b))?)
            |\d{1,2}:\d{2})
      | (?P<garbled>\d+(?:\.+\d+){2,}|\d+\.\.+\d+)
      | (?P<mixed>(?<!\#)(?<!\#\ )(?<!tree\ )(?<![\d.])
            \d+(?:\s+|\s*-\s*|\s+and\s+)\d/\d{1,2}(?!\d|/))
      | (?P<slash>\d{1,2}/\d{1,4}(?:/\d{2,4})?)
      | (?P<ordinal>\d{1,2}(?:st|nd|rd|th)\b)
      | (?P<number>\d+(?:\.\d+)?|\.\d+)
    )
  | (?P<postal>\b[a-z]\d[a-z]\s?\d[a-z]\d\b)
  | (?P<label>\b[a-z]\d{1,3}\b)
  | (?P<word>[^\W\d_]+(?:'[^\W\d_]+)*)
  | (?P<newline>\n+)
  | (?P<sign>[.,;:!?/+&@\#%"()\-=x*~])
    """,
    re.VERBOSE,
)
_MAIL = r"(?P<email>[a-z0-9.+-]+@[a-z0-9-]+(?:\.[a-z0-9-]+)*\.[a-z]{2,})"
_SHAPES_AND_MAIL = re.compile(f"{_MAIL} | {_SHAPES.pattern}", re.VERBOSE)
"""The same with an e-mail address, which is only looked for where an @ is: it would be tried at
every word."""


@dataclass(slots=True)
class Token:
    """shape: the name of its shape. text: as tidied. start, end: where in the tidy text."""

    shape: str
    text: str
    start: int
    end: int


_SPOKEN_PAUSES = frozenset("um umm uh uhh uhm er erm hmm hm".split())


def tokens(tidied: str) -> list[Token]:
    """All tokens of a tidy text, in order; what has no shape is passed over, and so are the
    pauses that a telephone writes down with what is spoken."""
    shapes = _SHAPES_AND_MAIL if "@" in tidied else _SHAPES
    return [
        Token(hit.lastgroup or "sign", said, *hit.span())
        for hit in shapes.finditer(tidied)
        if (said := hit[0]) not in _SPOKEN_PAUSES
    ]


def word_at(run: Sequence[Token], j: int) -> str:
    """The text of token j of a run, nothing behind its end."""
    return run[j].text if j < len(run) else ""
