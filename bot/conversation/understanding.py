"""What a text means in this conversation: on its own, or as the answer to what was asked."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import date, timedelta

from bot.clock import season_of
from bot.conversation.following_up import followed_up
from bot.conversation.pending import ANSWERABLE_FOR, Rest, WhereAsked, WhichRecord
from bot.conversation.turn import Open, Turn, open_question
from bot.conversation.words import lets_it_be, same_words, wants_more, without_correction
from bot.reading import Doubt, Understanding
from bot.reading.kinds import Amend, Chat, Gear, Place, Question, Reading, Sap, Undo

# The same words from one person within this time are asked about, not counted twice.
SAME_WORDS_WITHIN = timedelta(minutes=10)

# A place is named in few words.
_MOST_WORDS_OF_A_PLACE = 5


@dataclass(frozen=True, slots=True)
class Meant:
    """What a text means.

    settled: it completed an open question, and `words` is the completed text.
    left: the answer was to record nothing. repeat: it answered nothing and said nothing, so
    the open question is asked again. chosen: the answer to "which record?", with its id.
    drops: an undo that is about the open question. wants_more: it asks for the rest of the last
    answer, which is `rest` (empty: nothing is left of it).
    """

    understanding: Understanding
    words: str
    settled: bool = False
    left: bool = False
    repeat: Doubt | None = None
    chosen: tuple[WhichRecord, int] | None = None
    drops: bool = False
    wants_more: bool = False
    rest: tuple[str, ...] = ()


def meant(turn: Turn) -> Meant:
    """What the text of this turn means.

    1. An answer to the open question counts as the text that it completes.
    2. A text that stands on its own is that, and the open question is dropped.
    3. While the place is unknown, anything else that names one is the place.
    """
    words = turn.words
    direct = turn.understand(words)
    opened = open_question(turn, ANSWERABLE_FOR)
    if opened is not None and isinstance(opened.question, Rest):
        if wants_more(words) and opened.question.texts:
            return Meant(Understanding(), words, wants_more=True, rest=opened.question.texts)
        follows = followed_up(words, opened.question.about, turn.known.lots)
        asked = None if follows is None else turn.understand(follows)
        if follows is not None and asked is not None and _is_only(asked, Question):
            return Meant(asked, follows)
        # It goes on waiting, whatever is texted in between.
        turn.rest, turn.about = opened.question.texts, opened.question.about
        opened = None
    if opened is not None:
        answered = _answered(turn, opened, direct)
        if answered is not None:
            return answered
    if wants_more(words):
        return Meant(Understanding(), words, wants_more=True)
    restated = _restated(turn, direct)
    if restated is not None:
        return restated
    regeared = _gear_again(turn, direct)
    if regeared is not None:
        return regeared
    if not _stands_alone(direct):
        place = _place(turn, opened, direct)
        if place is not None:
            return Meant(Understanding((place,)), words)
    return Meant(direct, words)


# "it was 28 gal", and nothing else.
_IT_WAS = re.compile(
    r"(?:it|that|today's|tonight's|this morning's) was"
    r" (?:(?:about|only|really|actually|just) )?(\S+(?: [^\s,;]+){0,5}?)[ .!]*"
)


def _restated(turn: Turn, direct: Understanding) -> Meant | None:
    """`it was 28 gal`: the record before this text, told anew; there is none, and it is sap."""
    said = _IT_WAS.fullmatch(" ".join(turn.words.casefold().split()))
    if said is None or not _is_only(direct, Sap):
        return None
    if not turn.book.records.last_texts(turn.who.sugarbush_id, turn.who.person_id, 1):
        return None
    corrected = turn.understand(f"no, {said[1]}")
    return Meant(corrected, turn.words) if _is_only(corrected, Amend) else None


# How the gear that a last text told is told with another size.
_GEAR_AGAIN = {
    "pan": "my pan is {}",
    "elevation": "elevation {}",
    "bit": "my bit is {}",
    "stem": "my stem says {}",
    "barometer": "barometer {}",
    "price": "price is ${} a gallon",
}
_MOST_WORDS_OF_GEAR = 6


def _gear_again(turn: Turn, direct: Understanding) -> Meant | None:
    """`no, 2x4` right after "my pan is 2x3": the same gear told anew, which then counts."""
    afresh = without_correction(turn.words)
    corrects = afresh != turn.words or _is_only(direct, Amend)
    if not corrects or len(afresh.split()) > _MOST_WORDS_OF_GEAR:
        return None
    texts = turn.book.records.last_texts(turn.who.sugarbush_id, turn.who.person_id, 1)
    kinds = {kept.entry.kind for kept in texts[0]} if texts else set()
    fill = _GEAR_AGAIN.get(next(iter(kinds))) if len(kinds) == 1 else None
    if fill is None:
        return None
    words = fill.format(afresh.replace("{", "").replace("}", ""))
    understanding = turn.understand(words)
    if any(isinstance(one, Gear) for one in understanding.readings):
        return Meant(understanding, words, settled=True)
    return None


_THANKS = frozenset(("thx", "thanks", "thank you", "ty", "tks", "ok thanks", "lol", "haha"))
# What is longer, and has no figure, does not try to answer (our own).
_MOST_WORDS_OF_A_TRY = 3


def _answered(turn: Turn, opened: Open, direct: Understanding) -> Meant | None:
    """What the text means as an answer, None if it is none."""
    question, words = opened.question, turn.words
    if isinstance(question, WhereAsked | Rest):
        return None
    wrote_nothing = not turn.book.records.of_text(turn.who.sugarbush_id, opened.text_id)
    if _is_only(direct, Undo):
        return Meant(direct, words, drops=wrote_nothing)
    if lets_it_be(words):
        return Meant(Understanding(), words, left=True)
    if isinstance(question, WhichRecord):
        record_id = question.chosen(words)
        if record_id is not None:
            return Meant(Understanding(), words, chosen=(question, record_id))
        other = question.other
        if other is not None and same_words(words) in other.words:
            return Meant(turn.understand(other.text), other.text, settled=True)
        return None
    if not question.number_only and any(isinstance(one, Question) for one in direct.readings):
        return None  # "what size is your pan?" takes any words, but a question asks anew
    offered = any(same_words(words) in choice.words for choice in question.choices)
    if not question.number_only and _stands_alone(direct) and not offered:
        return None  # so does a record
    completed = turn.senses.settle(question, words)
    if completed is None:
        completed = _yes_or_no(question, words)
    if completed is None and _is_only(direct, Amend) and wrote_nothing:
        if _asks_of_a_record(turn, question):
            return None
        # A correction of what was only asked about, not of an older record.
        return _corrected(turn, question, direct.readings[0])
    if completed == "":
        return Meant(Understanding(), "", settled=True, left=True)
    if completed is not None:
        understanding = turn.understand(completed)
        if understanding.doubt is None or not _stands_alone(direct):
            return Meant(understanding, completed, settled=True)
    tries = len(words.split()) <= _MOST_WORDS_OF_A_TRY or any(char.isdigit() for char in words)
    tries = tries and same_words(words) not in _THANKS
    if tries and _is_only(direct, Chat) and (question.choices or question.fill):
        return Meant(direct, words, repeat=question)
    return None


_YES = frozenset(("yes", "y", "yes please", "sure", "correct", "right", "yes it is", "yeah", "ok"))
_NO = frozenset(("no", "n", "nope", "nah", "no it isn't", "not", "no thanks"))


def _yes_or_no(question: Doubt, words: str) -> str | None:
    """What "yes" and "no" make of a question that can be agreed to; "" records nothing. Nobody is
    asked for a YES, which is a word of the carriers, but people text it."""
    agreed = next((one for one in question.choices if "ok" in one.words), None)
    said = same_words(words)
    if agreed is None:
        return None
    if said in _YES:
        return agreed.text
    return "" if said in _NO else None


def _asks_of_a_record(turn: Turn, question: Doubt) -> bool:
    """`3.5 gal again?`, `instead of $12 for lids?`: a correction is one of what stands already."""
    return question.fill is None and any(
        not one.text or _is_only(turn.understand(one.text), Amend) for one in question.choices
    )


def _corrected(turn: Turn, question: Doubt, amend: Reading) -> Meant:
    """`no, 2.4` after "22 Brix?": the figure fills the question; else it is told afresh.

    Never a correction of an older record: what is corrected was not written down. What cannot
    be told afresh has the question asked again.
    """
    assert isinstance(amend, Amend)
    told = {name: value for name, value in amend.as_dict().items() if name in _SPELT}
    if len(told) == 1:
        figure = f"{next(iter(told.values())):g}"
        # A volume is read in gallons, whatever the question was put in.
        said = f"{figure} gal" if "gallons" in told else figure
        completed = turn.senses.settle(question, said)
        if completed:
            return Meant(turn.understand(completed), completed, settled=True)
    spelt = " ".join(_SPELT[name].format(told[name]) for name in _SPELT if name in told)
    for afresh in (without_correction(turn.words), spelt):
        understanding = turn.understand(afresh)
        if afresh and not any(isinstance(one, Amend) for one in understanding.readings):
            return Meant(understanding, afresh, settled=True)
    return Meant(Understanding(), turn.words, repeat=question)


# The amounts of a correction as they would be texted by themselves, in this order.
_SPELT = {"value": "{:g}", "gallons": "{:g} gal", "brix": "at {:g} brix"}


def _place(turn: Turn, opened: Open | None, direct: Understanding) -> Place | None:
    """The text as a place, if that is what it can be while the place is unknown."""
    if turn.known.place is not None and not (opened is not None and opened.is_where):
        return None
    words = turn.words.strip()
    if not words or len(words.split()) > _MOST_WORDS_OF_A_PLACE:
        return None
    if turn.senses.find_place(words) is not None:
        return Place(text=words)
    was_asked = opened is not None and opened.is_where
    is_name = all(part.strip(".,'-").isalpha() for part in words.replace(",", " ").split())
    if was_asked and is_name and direct.doubt is not None:
        return Place(text=words)
    return None


def said_already(turn: Turn) -> bool:
    """True when the same words of this sender were recorded a few minutes ago and still count."""
    # A door's clock may be a little behind: both directions count.
    since, until = turn.now_utc - SAME_WORDS_WITHIN, turn.now_utc + SAME_WORDS_WITHIN
    words = same_words(turn.text.incoming.text)
    earlier = turn.book.inbox.earlier_from(turn.who.address, turn.text.id, since, until, words)
    return any(
        same_words(text.text) == words and turn.book.records.of_text(turn.who.sugarbush_id, text.id)
        for text in earlier
    )


def logged_too(turn: Turn, understanding: Understanding) -> tuple[str, float] | None:
    """Who else logged as much sap for the same day, by their address, and the gallons: most likely
    the same sap. None where nobody did, or nobody else keeps this tally."""
    told: dict[date, float] = {}
    for reading in understanding.readings:
        if isinstance(reading, Sap) and reading.gallons > 0:
            told[reading.on] = told.get(reading.on, 0.0) + reading.gallons
    if not told or not turn.who.is_shared:
        return None
    bush = turn.who.sugarbush_id
    for on, gallons in told.items():
        for one in turn.book.members.logged_on(bush, season_of(on), on):
            theirs = one.sap_gallons or 0.0
            same = abs(theirs - gallons) <= SAME_SAP_WITHIN * gallons
            if same and one.person_id != turn.who.person_id:
                mates = {mate.person_id: mate.address for mate in turn.book.members.of(bush)}
                return mates.get(one.person_id, ""), gallons
    return None


# Two measures of the same sap are this near, by ratio (our own).
SAME_SAP_WITHIN = 0.005


def _stands_alone(understanding: Understanding) -> bool:
    return understanding.doubt is None and not _is_only(understanding, Chat)


def _is_only(understanding: Understanding, kind: type[Reading]) -> bool:
    readings = understanding.readings
    return len(readings) == 1 and isinstance(readings[0], kind) and understanding.doubt is None
