"""How something is done: the know-how that was asked for, by what is known of the person; where
an instrument's figures stand in the question, what they come to first."""

from __future__ import annotations

import re

from bot.answers import storage
from bot.answers.answer import Answer
from bot.answers.asked import Asked
from bot.answers.howto import HOWTO
from bot.answers.howto.known import Known
from bot.answers.howto.told import Told
from bot.answers.legal import law_of, verdict
from bot.reading import Choice, Doubt
from bot.reading.danger import danger
from bot.reading.instruments import Batch, Bottling, Light, shown
from bot.reckoning.bottling import fill_advice
from bot.reckoning.grading import grade_class
from bot.reckoning.thickness import water_to_add, water_to_boil_off
from bot.wording import know_how as wording


def answer(asked: Asked) -> Answer:
    """The answer, or a question between the two nearest where the words leave it open."""
    if asked.howto is None or asked.howto not in HOWTO:
        return Answer(wording.NOT_KNOWN)
    computed = _computed(asked)
    if computed is not None:
        general = HOWTO[asked.howto](known_of(asked))
        return Answer(computed, (general.first, *general.more))
    if asked.also is not None and asked.also in HOWTO:
        return Answer("", ask=either(asked.howto, asked.also))
    return told(asked, asked.howto)


def told(asked: Asked, howto: str) -> Answer:
    """A how-to, the part first that speaks of what the question asks."""
    if howto == "storing" and _OF_SYRUP.search(asked.plain):
        # Syrup is kept in its jars, and that is told there.
        howto = "bottling"
    texts = nearest_first(_in_its_words(asked.plain, howto), HOWTO[howto](known_of(asked)))
    return Answer(texts[0], texts[1:])


def _in_its_words(question: str, howto: str) -> str:
    """The question, in the words of the part that answers it where people call it otherwise."""
    for of, called, words in _CALLED:
        if of == howto and called.search(question):
            return words
    return question


def nearest_first(question: str, parts: Told) -> tuple[str, ...]:
    """The texts of a how-to in order, but that one first which has more of the question's own
    words than its opening: "is there lead in old pails" is not answered by the fire."""
    texts = (parts.first, *parts.more)
    stems = [_stems(text) for text in texts]
    asked = _stems(question)
    # A word that every text has tells none of them apart.
    worth = {word: 1 / sum(word in each for each in stems) for word in set().union(*stems)}
    scores = [sum(worth[word] for word in each & asked) for each in stems]
    best = max(range(len(texts)), key=lambda at: (scores[at], -at))
    if scores[best] < scores[0] + _CLEARLY_NEARER:
        best = 0
    return (texts[best], *texts[:best], *texts[best + 1 :])


_BY_THE_FIRE = re.compile(
    r"^(?!.*\blead\b).*\b(?:kids?|child|children|sons?|daughters?|toddlers?|dogs?|pets?|class|scouts|students)\b"
    r".*\b(?:near|by|around|at|stand|close|help|safe)\b"
    r".*\b(?:pan|evaporator|boil\w*|fire|arch|shack|sugarhouse|stove)\b"
)
_MOLD = re.compile(r"\b(?:mou?ld\w*|fuzz\w*|fizz\w*|slim[ey]\w*)\b")
_RAW = re.compile(r"\b(?:drink\w*|drank|taste\w*|tasting|sip\w*|raw sap)\b")
# In this order, the first that is said: which how-to, what people call it, its own words.
_CALLED = (
    ("bottling", _MOLD, "mold fizz"),
    ("safety", _RAW, "raw sap pasteurized drink"),
    ("safety", _BY_THE_FIRE, "children pets well back"),
)
_OF_SYRUP = re.compile(r"\b(?:syrup|jars?|opened|mou?ld\w*|fuzz\w*|pantry|fridge)\b")
# How much more of a question's words a later text must have: one word of its own (our own).
_CLEARLY_NEARER = 1.0
_WORD = re.compile(r"[a-z]{3,}")
_IDLE = frozenset(
    (
        "and are ask but can did does don for from get good had has have how into its just let "
        "like may more most need not now off old one out over should some than that the them then "
        "there they this too under use what when where which who why will with you your sap syrup "
        "maple hot cold deep high low long big small much heat warm temp pan pot fill day night "
        "boil thing stuff work well good know tell way"
    ).split()
)


def _stems(text: str) -> frozenset[str]:
    words = (word for word in _WORD.findall(text.casefold()) if word not in _IDLE)
    return frozenset(_stem(word) for word in words)


def _stem(word: str) -> str:
    for ending in ("ing", "ed", "es", "s", "y"):
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return word.removesuffix(ending)
    return word


def either(first: str, second: str) -> Doubt:
    """The question between two how-tos, each answered by its own word."""
    names = wording.NAMES[first], wording.NAMES[second]
    choices = tuple(
        Choice((name.word, *name.also, place), name.asked)
        for name, place in zip(names, ("1", "2"), strict=True)
    )
    return Doubt(wording.which(*names), choices)


def known_of(asked: Asked) -> Known:
    """What a how-to may know of the person who asks."""
    place = None if asked.known.place is None else asked.known.place.detail
    law = asked.known.law
    water = asked.book.records.latest(asked.sugarbush_id, "water_boils", not_after=asked.sent)
    is_today = water is not None and water.on == asked.today
    return Known(
        month=asked.today.month,
        region=None if place is None else law.region,
        units=asked.style.units,
        bit_in=asked.gear.bit_in,
        taps=None if asked.known.taps is None else asked.known.taps.count,
        bucket_gallons=asked.known.bucket_gallons,
        water_boils_f=water.fahrenheit if water is not None and is_today else None,
        elevation_ft=asked.gear.elevation_ft,
        species=_species(asked),
    )


def _species(asked: Asked) -> tuple[str, ...]:
    kinds = (
        entry.detail.get("species")
        for entry in asked.book.records.of_kind(asked.sugarbush_id, "tree")
    )
    return tuple(dict.fromkeys(str(kind) for kind in kinds if kind is not None))


def _computed(asked: Asked) -> str | None:
    """What the figures of the question come to, None where it holds none that are asked about."""
    found = shown(asked.text, asked.profile)
    if isinstance(found, Light):
        grade = grade_class(found.percent)
        return wording.light(found.percent, grade.colour, grade.taste)
    if isinstance(found, Bottling):
        return wording.bottling(found.at_f, fill_advice(found.at_f), asked.style)
    if isinstance(found, Batch):
        return _batch(asked, found)
    said = danger(asked.plain)
    if asked.howto == "safety" and said is not None:
        return {"fire": wording.FIRE, "burn": wording.BURN, "harm": wording.HARM}[said]
    if asked.howto == "storing":
        heat_f = storage.heat_named(asked)
        if heat_f is not None:
            return storage.supposed(asked, heat_f)
    return None


def _batch(asked: Asked, batch: Batch) -> str:
    """Water to add or to boil off, to the least density that the law allows."""
    law = law_of(asked)
    wanted = law.min_brix if batch.wanted_brix is None else batch.wanted_brix
    gallons = 1.0 if batch.gallons is None else batch.gallons
    if abs(batch.brix - wanted) < _AS_GOOD_AS:
        return wording.as_it_should_be(batch.brix, verdict(law, batch.brix))
    if batch.brix > wanted:
        water = water_to_add(gallons, batch.brix, wanted)
        return wording.too_thick(
            gallons, batch.brix, wanted, water.gallons, water.ends_gallons, asked.style
        )
    water = water_to_boil_off(gallons, batch.brix, wanted)
    return wording.too_thin(
        gallons, batch.brix, wanted, water.gallons, water.ends_gallons, asked.style
    )


# Nearer than an instrument shows, Brix.
_AS_GOOD_AS = 0.05
