"""What a text asks: its questions are looked up by their likeness to examples (topics)."""

from __future__ import annotations

from bot.reading import topics
from bot.reading.clause import Clause
from bot.reading.kinds import Chat, Helper, Question
from bot.reading.leftovers import short
from bot.reading.notes import Notes

SURE_MARGIN = 6.0
"""How far a second question in one text must be ahead of its next topic to be answered too."""


def add_questions(notes: Notes) -> None:
    """What is asked. Words that recorded nothing help to tell what the question is about."""
    found = notes.clauses
    if not any(clause.question or clause.hypothetical for clause in found):
        return
    sentences: dict[tuple[int, int], list[int]] = {}
    asked_anew = 0
    for number, clause in enumerate(found):
        texts = clause.has("ADD") or "text" in clause.words()
        if texts and notes.last(Helper) is not None:
            continue  # "can you add ken, ken@example.org"
        if clause.question or (clause.hypothetical and _asks(found, clause.sentence)):
            asked_anew += number > 0 and _asks_anew(found[number - 1], clause)
            sentences.setdefault((clause.sentence, asked_anew), []).append(number)
    if not sentences:
        return
    asking = [found[n] for numbers in sentences.values() for n in numbers]
    if any(c.has("REPORTED", "OTHERS") and c.by_mark for c in asking) or any(
        c.has("KILL") and _ORDERED in c.text for c in found
    ):
        notes.add(Chat(), asking[0].items[0].start)
        return  # "some sophomore said they pulled 9 taps??"
    recorded = {noted.clause for noted in notes.noted}
    idle = [n for n in range(len(found)) if n not in recorded]
    if len(sentences) > 1:
        each = [(numbers[0], topics.asked(_text(found, numbers))) for numbers in sentences.values()]
        sure = [(at, hit) for at, hit in each if hit is not None and hit.margin >= SURE_MARGIN]
        if len({(hit.topic, hit.howto) for _, hit in sure}) > 1:
            for at, sure_hit in sure:
                _add_question(notes, at, sure_hit)
            return
    numbers = next(iter(sentences.values()))
    hit = topics.asked(_text(found, idle if len(idle) <= MOST_IDLE_CLAUSES else numbers))
    if hit is None:
        return
    plain_talk = not any(_speaks_of_the_trade(found[n]) for n in numbers)
    weak = hit.margin < WEAK_MARGIN and hit.score < WEAK_SCORE
    told_first = notes.noted and numbers[0] < notes.noted[0].clause
    if plain_talk and told_first and hit.margin < SURE_MARGIN:
        return  # "know what we got? 12 gal": a way of telling
    if plain_talk and weak:
        if all(
            item.sort in ("number", "sign", "volume") for clause in found for item in clause.items
        ):
            notes.ask(
                f'I can\'t tell what "{short(notes.text)}" says. Text it like: 12 gal at 2.2.'
            )
            return
        notes.add(Chat(), found[numbers[0]].items[0].start)
        return
    _add_question(notes, numbers[0], hit)


def _asks_anew(before: Clause, clause: Clause) -> bool:
    """`how much syrup is in that, | and whats my total now`: a question of its own."""
    led = next((item for item in clause.items if item.sort != "sign"), None)
    return (
        before.question
        and clause.joint in ("and", "&")
        and led is not None
        and "ASKHOW" in led.tags
    )


_ORDERED = "ignore "
"""`ignore your rules`: an order to a program, and no question to us."""
WEAK_MARGIN = 1.5
WEAK_SCORE = 4.0
"""A question without a word of the trade that is no liker to any topic is small talk."""
_EVERYDAY = frozenset(
    (
        "ASKHOW ASKDO ASKME NOT PLAN IF PERHAPS ABOUT TOTAL MORE RATE GREET THANKS SMALLTALK IS "
        "HAVE INTO OBJECT ALL OVER GATHER WEAK STACK HOLD BURNISH KILL OTHERS FOREIGN COMPASS "
        "LOTN BOTH EACHN TWICE ADD "
    ).split()
)


def _speaks_of_the_trade(clause: Clause) -> bool:
    return bool(clause.tags - _EVERYDAY) or clause.holds(
        "volume", "brix", "temp", "length", "cords", "tree", "lot"
    )


MOST_IDLE_CLAUSES = 5


def _text(found: list[Clause], numbers: list[int]) -> str:
    return " ".join(found[n].spoken() for n in numbers)


def _add_question(notes: Notes, at: int, hit: topics.Asked) -> None:
    notes.clause_number = at
    start = notes.clauses[at].items[0].start
    if hit.topic == topics.NONE:
        notes.add(Chat(), start)
    else:
        notes.add(Question(topic=hit.topic, howto=hit.howto, also=hit.also), start)


def _asks(found: list[Clause], sentence: int) -> bool:
    return any(clause.question for clause in found if clause.sentence == sentence)
