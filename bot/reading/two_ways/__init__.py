"""Forms of words that may be read in two ways, one of them badly wrong: asked about before any
stage takes them, and nothing is recorded of the text. One entry a form, in the table of what it is
about."""

from __future__ import annotations

from bot.reading.two_ways import boils, corrections, gathered, lost, money, taps
from bot.reading.understanding import Doubt

_FORMS = (
    *corrections.FORMS,
    *lost.FORMS,
    *taps.FORMS,
    *money.FORMS,
    *boils.FORMS,
    *gathered.FORMS,
)


def two_ways(text: str) -> Doubt | None:
    """What has to be asked about a tidy text before it is read. None if nothing."""
    for words, form, question in _FORMS:
        for word in words:
            if word in text:
                if form.search(text):
                    return Doubt(question)
                break
    return None
