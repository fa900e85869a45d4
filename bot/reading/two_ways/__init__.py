"""Forms of words that may be read in two ways, one of them badly wrong: asked about before any
stage takes them, and nothing is recorded of the text. One entry a form, in the table of what it is
about."""

from __future__ import annotations

from collections.abc import Sequence

from bot.reading.rewrites import is_anchored
from bot.reading.signs import Index
from bot.reading.two_ways import boils, corrections, gathered, lost, money, taps
from bot.reading.two_ways.form import Form
from bot.reading.understanding import Doubt

FORMS = (
    *corrections.FORMS,
    *lost.FORMS,
    *taps.FORMS,
    *money.FORMS,
    *boils.FORMS,
    *gathered.FORMS,
)


_IN_A_TEXT = Index([signs for signs, _, _ in FORMS])
_ANCHORED = [form for form in FORMS if is_anchored(form[1])]
"""The forms that stand at the head or the end: the others are found wherever they stand."""
_IN_A_SENTENCE = Index([signs for signs, _, _ in _ANCHORED])


def two_ways(text: str) -> Doubt | None:
    """What has to be asked about a tidy text before it is read. None if nothing."""
    return _first(text, FORMS, _IN_A_TEXT)


def two_ways_in(sentence: str) -> Doubt | None:
    """The same of a sentence of such a text, by the forms that may have been hidden in it."""
    return _first(sentence, _ANCHORED, _IN_A_SENTENCE)


def _first(text: str, forms: Sequence[Form], index: Index) -> Doubt | None:
    for row in index.rows(text):
        _, form, question = forms[row]
        if form.search(text):
            return Doubt(question)
    return None
