"""Corrects misspelt and voice-typed words against our own word list, and nothing else.

A word is corrected only when it is not a word that we know, is not in the list of plain
English words that look like ours, and is one slip away from exactly one of ours (a letter
missing, doubled, wrong, or two swapped: optimal string alignment, as rapidfuzz reckons it).
"""

from __future__ import annotations

from functools import lru_cache

from rapidfuzz.distance import OSA

from bot.reading import lexicon

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
    best: list[str] = []
    for candidate in _near(len(word)):
        if OSA.distance(word, candidate, score_cutoff=1) <= 1:
            best.append(candidate)
    if not best and len(word) >= 7:
        for candidate in _near(len(word)):
            if candidate[0] == word[0] and OSA.distance(word, candidate, score_cutoff=2) <= 2:
                best.append(candidate)
    if not best:
        return word
    if len(best) > 1:
        # Of several, the one with the same first letter and the same length is meant; words
        # that mean the same to us (pail, pails) count as one.
        best.sort(key=lambda candidate: (candidate[0] != word[0], abs(len(candidate) - len(word))))
        if len({_sense(candidate) for candidate in best}) > 1:
            first, second = best[0], best[1]
            if first[0] != word[0] or second[0] == word[0] == first[0]:
                same = [c for c in best if c[0] == word[0] and sorted(c) == sorted(word)]
                if len(same) != 1:
                    return word
                return same[0]
    return best[0]


def _sense(word: str) -> object:
    return lexicon.UNITS.get(word) or lexicon.TAGS.get(word) or word


@lru_cache(maxsize=32)
def _near(length: int) -> tuple[str, ...]:
    return tuple(
        word
        for word in lexicon.CORRECTABLE
        if abs(len(word) - length) <= 2 and len(word) >= SHORTEST
    )
