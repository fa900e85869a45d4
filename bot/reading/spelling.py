"""Corrects misspelt and voice-typed words against our own word list, and nothing else.

A word is corrected only when it is not a word that we know, is not in the list of plain
English words that look like ours, and is one slip away from exactly one of ours (a letter
missing, doubled, wrong, or two swapped: optimal string alignment, as rapidfuzz reckons it).
"""

from __future__ import annotations

from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from bot.reading import lexicon

LONG = 7
"""Letters from which two slips are forgiven, where the first letter stands."""
SHORTEST = 4
"""Letters of the shortest word that is corrected: shorter ones are too near to each other."""


@lru_cache(maxsize=4096)
def corrected(word: str) -> str:
    """The word of ours that was meant, or the word itself."""
    slang = lexicon.SLANG.get(word)
    if slang is not None:
        return slang
    if word in lexicon.KNOWN or word in lexicon.LOOKALIKES or len(word) < SHORTEST:
        return word
    best = _within(word, 1)
    if not best and len(word) >= LONG:
        best = [candidate for candidate in _within(word, 2) if candidate[0] == word[0]]
    if len({_sense(candidate) for candidate in best}) > 1:
        # Of several meanings, that of an anagram is meant, else of the only one that begins alike.
        alike = [candidate for candidate in best if candidate[0] == word[0]]
        anagrams = [candidate for candidate in alike if sorted(candidate) == sorted(word)]
        best = anagrams if len(anagrams) == 1 else alike
        if len({_sense(candidate) for candidate in best}) != 1:
            return word
    if not best:
        return word
    return min(
        best, key=lambda candidate: (candidate[0] != word[0], abs(len(candidate) - len(word)))
    )


def _within(word: str, slips: int) -> list[str]:
    """Our words that are so many slips away from this one."""
    found = process.extract(
        word, lexicon.CORRECTABLE, scorer=OSA.distance, score_cutoff=slips, limit=None
    )
    return [str(candidate) for candidate, _, _ in found]


def _sense(word: str) -> object:
    return lexicon.UNITS.get(word) or lexicon.TAGS.get(word) or word
