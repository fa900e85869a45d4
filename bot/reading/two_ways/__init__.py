"""Forms of words that may be read in two ways, one of them badly wrong: asked about before any
stage takes them, and nothing is recorded of the text. One entry a form, in the table of what it is
about."""

from __future__ import annotations

from collections.abc import Sequence

from bot.reading.rewrites import is_anchored
from bot.reading.two_ways import boils, corrections, gathered, lost, money, taps
from bot.reading.two_ways.form import Form
from bot.reading.understanding import Doubt

_FORMS = (
    *corrections.FORMS,
    *lost.FORMS,
    *taps.FORMS,
    *money.FORMS,
    *boils.FORMS,
    *gathered.FORMS,
)


_OF_A_SENTENCE = tuple(entry for entry in _FORMS if is_anchored(entry[1]))
"""The forms that stand at the head or the end: the others are found wherever they stand."""


def two_ways(text: str) -> Doubt | None:
    """What has to be asked about a tidy text before it is read. None if nothing."""
    return _first(text, _FORMS)


def two_ways_in(sentence: str) -> Doubt | None:
    """The same of a sentence of such a text, by the forms that may have been hidden in it."""
    return _first(sentence, _OF_A_SENTENCE)


def _first(text: str, forms: Sequence[Form]) -> Doubt | None:
    for words, form, question in forms:
        for word in words:
            if word in text:
                if form.search(text):
                    return Doubt(question)
                break
    return None
