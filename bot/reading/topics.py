"""Which question a text asks: found by its likeness to the example questions in topics/.

Each topic has a file of paraphrases. A text is scored against every topic by naive Bayes over
its word stems and pairs of stems (complement counts, after Rennie et al. 2003, "Tackling the
poor assumptions of naive Bayes text classifiers"); the likeliest topic wins.
"""

from __future__ import annotations

import itertools
import math
import re
from collections import Counter
from dataclasses import dataclass
from functools import lru_cache
from importlib import resources

from bot.reading import lexicon, spelling

NONE = "none"
"""The topic of texts that ask nothing that is answered here."""
SMOOTHING = 0.1
UNSURE_MARGIN = 3.5
"""A how-to less far ahead of the next one is asked about (our own: of the example texts below it
every third was meant for another, above it every twentieth)."""
LEAST_RARITY = 1.0
"""What a word that is in every example still counts, beside the rarest's 1 and this."""
PAIR_WEIGHT = 0.4
"""How much a pair of words counts beside a word alone."""

_WORD = re.compile(r"[a-z0-9/']+|\$")
_IDLE = frozenset(
    (
        "a am an and any are be can could did do does done for get got has have hello hey hi i "
        "i'm if im is it it's its just me my now ok okay or our please r should so some thanks "
        "that the there this u uh um was we were will would you your "
    ).split()
)
_ONE_STEM = {word: stem for stem, words in lexicon.lines_of("stems.txt") for word in words.split()}


@dataclass(frozen=True, slots=True)
class Asked:
    """topic, and howto where the topic is "howto". margin: how far the next topic is behind,
    in natural-log units; second: that next topic; score: its own."""

    topic: str
    howto: str | None
    margin: float
    second: str
    score: float = 0.0

    @property
    def also(self) -> str | None:
        """The how-to that is nearly as likely as this one, None where there is no such doubt."""
        howto = self.second.removeprefix("howto_")
        unsure = self.howto is not None and self.margin < UNSURE_MARGIN
        return howto if unsure and howto != self.second else None


def _stem(word: str) -> str:
    stem = _ONE_STEM.get(word)
    if stem is not None:
        return stem
    if len(word) > 5 and word.endswith("ing"):
        return word[:-3]
    if len(word) > 4 and word.endswith("ed"):
        return word[:-2]
    if len(word) > 3 and word.endswith("s") and not word.endswith("ss"):
        return word[:-1]
    return word


def _marks(text: str, *, corrected: bool) -> Counter[str]:
    """The stems of a text and their pairs; numbers are all one mark."""
    words = []
    for word in _WORD.findall(text.lower()):
        word = spelling.corrected(word) if corrected else lexicon.SLANG.get(word, word)
        words.append("0" if word[0].isdigit() and "/" not in word else _stem(word))
    found: Counter[str] = Counter()
    kept = [word for word in words if word not in _IDLE]
    for word in kept or words:
        found[word] += 1
    for first, second in itertools.pairwise(words):
        found[f"{first} {second}"] += 1
    for first, second in itertools.pairwise(kept):
        found[f"{first}+{second}"] += 1
    return found


def examples() -> dict[str, list[str]]:
    """The example questions of every topic, by the name of its file."""
    folder = resources.files("bot.reading").joinpath("topics")
    out: dict[str, list[str]] = {}
    for entry in sorted(folder.iterdir(), key=lambda each: each.name):
        if entry.name.endswith(".txt"):
            lines = entry.read_text(encoding="utf-8").splitlines()
            out[entry.name.removesuffix(".txt")] = [
                line.strip() for line in lines if line.strip() and not line.startswith("#")
            ]
    return out


class Model:
    """Weights of every mark for every topic, learned from examples. The weights of a mark are
    worked out when a text first holds it, so that teaching stays quick."""

    def __init__(self, taught: dict[str, list[str]]) -> None:
        self.topics = tuple(sorted(taught))
        self._counts: dict[str, list[float]] = {}
        self._seen_in: Counter[str] = Counter()
        self._totals = [0.0] * len(self.topics)
        self._examples = 0
        for column, name in enumerate(self.topics):
            for text in taught[name]:
                self._learn(column, text)
        self._grand = sum(self._totals)
        self._rows: dict[str, list[float]] = {}

    def _learn(self, column: int, text: str) -> None:
        self._examples += 1
        for mark in set(_marks(text, corrected=False)):
            row = self._counts.setdefault(mark, [0.0] * len(self.topics))
            weight = _weight(mark)
            row[column] += weight
            self._totals[column] += weight
            self._seen_in[mark] += 1

    def _row(self, mark: str) -> list[float]:
        """How much the mark speaks for each topic, in natural-log units."""
        row = self._rows.get(mark)
        if row is not None:
            return row
        counts = self._counts[mark]
        overall = sum(counts)
        size = SMOOTHING * len(self._counts)
        rarity = math.log(self._examples / self._seen_in[mark]) / math.log(self._examples)
        row = []
        for inside, total in zip(counts, self._totals, strict=True):
            here = math.log((inside + SMOOTHING) / (total + size))
            rest = math.log((overall - inside + SMOOTHING) / (self._grand - total + size))
            row.append((here - rest) * (LEAST_RARITY + rarity) * _weight(mark))
        self._rows[mark] = row
        return row

    def scores(self, text: str) -> dict[str, float]:
        """The score of every topic; higher is likelier. All zero: no mark is known."""
        rows = [self._row(mark) for mark in _marks(text, corrected=True) if mark in self._counts]
        if not rows:
            return dict.fromkeys(self.topics, 0.0)
        return dict(zip(self.topics, map(sum, zip(*rows, strict=True)), strict=True))


def _weight(mark: str) -> float:
    return PAIR_WEIGHT if " " in mark or "+" in mark else 1.0


@lru_cache(maxsize=1)
def model() -> Model:
    """The model taught by the files; made once."""
    return Model(examples())


@lru_cache(maxsize=1)
def _word_for_word() -> dict[str, str]:
    """The topic of every example that only one topic has."""
    owners: dict[str, set[str]] = {}
    for topic, lines in examples().items():
        for line in lines:
            owners.setdefault(_bare(line), set()).add(topic)
    return {line: topics.pop() for line, topics in owners.items() if len(topics) == 1}


def _bare(text: str) -> str:
    plain = _WHAT_IS.sub(r"\1 is", text.lower()).replace("'", "")
    return " ".join(plain.split()).strip(" .!?")


_WHAT_IS = re.compile(r"\b(what|how|when|where|who)'?s\b")


_WORD_FOR_WORD = 100.0
"""The score and the margin of a text that is one of the examples."""


def asked(text: str) -> Asked | None:
    """What a question asks, or None where no word of it is known."""
    same = _word_for_word().get(_bare(text))
    if same is not None:
        howto = same.removeprefix("howto_") if same.startswith("howto_") else None
        topic = same if howto is None else "howto"
        return Asked(topic, howto, _WORD_FOR_WORD, NONE, _WORD_FOR_WORD)
    scores = model().scores(text)
    first = max(scores, key=scores.__getitem__)
    best = scores.pop(first)
    second = max(scores, key=scores.__getitem__)
    next_best = scores[second]
    if best == 0.0 == min(scores.values()):
        return None
    topic, _, howto = first.partition("howto_")
    if howto:
        topic = "howto"
    return Asked(topic, howto or None, best - next_best, second, best)
