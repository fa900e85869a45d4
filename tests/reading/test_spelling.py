"""What is corrected, and what never is."""

from __future__ import annotations

import pytest
from spellchecker import SpellChecker

from bot.reading import lexicon, spelling

# How often a word stands in the frequency list of pyspellchecker, from which on people use it.
IN_USE = 100


def test_no_english_word_is_corrected_into_one_of_ours() -> None:
    """A new word of ours may lie a slip away from a word that means something else (a heave from
    a leave): such words belong in lookalikes.txt. The list of words is pyspellchecker's."""
    counted = SpellChecker().word_frequency
    english = [word for word in counted if word.isalpha() and counted[word] >= IN_USE]
    assert len(english) > 30_000
    bent = sorted(
        word for word in english if word not in lexicon.SLANG and spelling.corrected(word) != word
    )
    assert not bent, f"to be added to lookalikes.txt: {' '.join(bent)}"


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("gatherd", "gathered"),
        ("gallns", "gallons"),
        ("bolied", "boiled"),
        ("buckest", "buckets"),
        ("syurp", "syrup"),
        ("collcted", "collected"),
    ],
)
def test_a_slip_is_put_right(typed: str, meant: str) -> None:
    assert spelling.corrected(typed) == meant
