"""Which clauses ask, by their mark, by the word that leads them, or by the clause before."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from bot.reading.clause import Clause
from bot.reading.frames import FRAME_TAGS, QUANTITIES
from bot.reading.items import Item

_ASKING_SUBJECT = frozenset(
    "i we you it that this the my our there they sap syrup any a an these those he she maple "
    "maples trees tree tomorrow tonight today anyone "
    "everything birch me us what what's whats".split()
)
_AUX_ANY = frozenset("is are does do isn't aren't doesn't don't".split())
_AUX_SUBJECT = frozenset(
    "can could should did was were will would has have shall won't shouldn't couldn't can't may "
    "might".split()
)
_LEAD_IN = frozenset(
    "and so ok okay hey hi hello also but well um oh please just then sorry quick question "
    "quick, now say btw anyway thanks morning :".split()
) | {
    "good morning",
    "by the way",
    "wonder",
    "i wonder",
    "curious",
    "not sure",
    "no idea",
    "wondering",
}
_DEEDS = frozenset(
    "GATHER POUR BOTTLE DRAW BOIL FIRE SETV PUTIN PULLV COSTV BURN DRY THROUGH SHUT END LIT".split()
)


def mark_questions(found: Sequence[Clause]) -> None:
    asking_sentence: dict[int, bool] = {}
    marks = {clause.sentence for clause in found if clause.ended_by == "?"}
    iffy = {clause.sentence for clause in found if "IF" in clause.tags}
    for clause in found:
        led = _led_by_question(clause) or (clause.sentence in iffy and "ASKHOW" in clause.tags)
        last = clause.ended_by == "?"
        asked = led or last
        if not asked and clause.sentence in marks and asking_sentence.get(clause.sentence):
            asked = True
        if (
            not asked
            and asking_sentence.get(clause.sentence)
            and not clause.tags & _DEEDS
            and (not clause.tags & FRAME_TAGS or clause.joint == "")
        ):
            asked = True
        clause.question, clause.by_mark = asked, asked and not led
        if led:
            asking_sentence[clause.sentence] = True
    for before, clause in itertools.pairwise(found):
        if (
            clause.question
            and clause.sentence == before.sentence
            and _only_asks_how_much(before, clause)
        ):
            before.question = True


_MAKES = frozenset(
    "makes make gives give is equals gets yields "
    "yield would will should makes? be me you us".split()
)


def _only_asks_how_much(before: Clause, clause: Clause) -> bool:
    """`40 gal at 2.2 makes | how much`, `with 120 l at 2.1 | what do i get`: the amount is part
    of the question."""
    if clause.joint in ("", ",") and before.items[0].text in ("with", "given", "having"):
        return clause.joint == "" or not before.tags & _DEEDS
    if before.items[0].text == "at" and all(
        item.sort in ("brix", "number") or item.text in ("at", "brix", "sugar")
        for item in before.items
    ):
        return True  # "at 1.9 brix, how many gallons of sap"
    return (
        len(clause.items) <= 4
        and bool(before.items)
        and _ends_with_makes(before)
        and not before.has("GATHER")
    )


def _ends_with_makes(clause: Clause) -> bool:
    """`40 gal makes`, `35 gal of sap makes about`."""
    last = clause.items[-1]
    if "ABOUT" in last.tags and len(clause.items) > 1:
        last = clause.items[-2]
    return last.text in _MAKES


_AFTER_WHEN = frozenset("do does should ought can is will to would are did shall i am".split())


def _led_by_question(clause: Clause) -> bool:
    if "ASKME" in clause.said:
        asking_words = [item.text for item in clause.items if "ASKME" in item.tags]
        if asking_words != ["give me"] or clause.items[0].sort != "tree":
            return True
    leading = [item for item in clause.items if item.sort != "sign"]
    while leading and (leading[0].text in _LEAD_IN or leading[0].tags & {"GREET", "THANKS"}):
        leading = leading[1:]
    if not leading:
        return False
    first = leading[0].text
    second = leading[1] if len(leading) > 1 else None
    if first in _NOT_KNOWING or (first == "not" and second is not None and second.text == "sure"):
        return False  # "idk how much it was", "not sure how big the bucket is"
    if "how" in clause.each_word and _asks_how_many(leading):
        return True
    if first == "what" and second is not None and second.text in ("i", "we"):
        done = any(each.text in ("was", "is", "came to", "were") for each in leading[2:])
        figure = any(each.sort in QUANTITIES for each in leading[2:])
        if done and figure and clause.ended_by != "?":
            return False  # "what I did haul was 74 gal"
    if first == "what" and second is not None and second.text in ("it was", "it is", "we had"):
        return clause.ended_by == "?"  # "sap is 1/3 of what it was"
    if first in ("what", "how", "what's") and second is not None:
        if second.text in ("a", "an") and first == "what":
            return False
        return not (
            second.text == "about" and len(leading) > 2 and leading[2].text in ("that", "this")
        )
    if first == "when" and second is not None and second.text == "you":
        return clause.ended_by == "?"  # "help me carry 30 gal when you get here"
    if first == "when" and clause.ended_by != "?" and _was_done(leading):
        return False  # "pan at 219 | when I drew off 1.5 gal"
    if first == "when" and clause.ended_by != "?":
        told = second is not None and second.text == "i" and bool(clause.tags & {"GATHER"})
        return second is not None and second.text in _AFTER_WHEN and not told
    goes_on = clause.joint == "" and clause.items[0].start > 0
    of_several = second is not None and second.text in ("of", "tree", "lot", "one", "day")
    if (
        first == "which"
        and (clause.joint == "," or goes_on)
        and clause.ended_by != "?"
        and not of_several
    ):
        return False  # "tested 2.1, which I'll take any day"
    aside = first == "where" and goes_on and clause.ended_by != "?"
    if aside and second is not None and second.text not in _AFTER_WHEN | _AUX_ANY:
        return False  # "put in 4 more taps along the fence | where the boys can reach"
    if leading[0].tags & {"ASKHOW"} or first in ("what'll", "whatll", "how'll"):
        return True
    if first == "any" and second is not None and second.sort == "word":
        return True
    listed = clause.joint == "," and first in ("is", "are") and clause.ended_by != "?"
    if (
        second is not None
        and second.sort in _AMOUNTS_ASKED_OF
        and first in _ASKS_OF_AMOUNT
        and not listed
    ):
        return True
    if second is not None and second.text == "you" and to_be_logged(leading):
        return False
    if second is not None and second.text == "you" and _to_be_changed(leading):
        return False
    if second is None or second.sort not in ("word", "date", "tree", "lot"):
        return False
    if first == "am":
        return second.text == "i"
    if (
        first == "was"
        and clause.ended_by != "?"
        and all(
            each.sort == "date" or each.text in ("the", "on", "really", "actually")
            for each in leading[1:]
        )
    ):
        return False  # "wrong date. was the 18th"
    if first in ("is", "are") and clause.joint in ("and", "but", "&") and clause.ended_by != "?":
        return second.text in _ASKING_SUBJECT  # "sap smells off | and is cloudy besides"
    if first in _AUX_ANY:
        return (
            not (first in ("don't", "isn't") and clause.ended_by != "?")
            or second.text in _ASKING_SUBJECT
        )
    if first == "did" and second.text in ("the", "a", "my", "our", "some"):
        return False
    subject = second.text.split()[0]
    return first in _AUX_SUBJECT and (subject in _ASKING_SUBJECT or second.sort != "word")


def _was_done(leading: Sequence[Item]) -> bool:
    """`when I drew off`, `when we shut down`."""
    subject, deed = [each.text for each in leading[1:2]], [each.text for each in leading[2:3]]
    past = bool(deed) and (deed[0].split()[0] in _PAST_DEEDS or deed[0].split()[0].endswith("ed"))
    return subject in (["i"], ["we"], ["he"], ["she"], ["they"]) and past


_PAST_DEEDS = frozenset(
    "drew got shut lit put came quit left went took ran brought hit saw".split()
)


def _asks_how_many(leading: Sequence[Item]) -> bool:
    """`at this sugar how many gal for ...`: with no amount told before it."""
    for at, item in enumerate(leading[:-1]):
        if item.sort in QUANTITIES or item.text in _KNOWS:
            return False
        if item.text == "how" and leading[at + 1].text in ("many", "much"):
            return at > 0
    return False


_KNOWS = frozenset("know knows see saw forget forgot guess idk sure dunno".split())
_NOT_KNOWING = frozenset("idk dunno unsure".split())
_ASKS_OF_AMOUNT = frozenset("would will does do is are can could should".split())
_AMOUNTS_ASKED_OF = frozenset(
    "volume number temp length cords vessels hours mass money brix".split()
)


_CHANGES = frozenset("make change fix delete undo scratch correct move remove erase cancel".split())


def _to_be_changed(leading: Sequence[Item]) -> bool:
    """`can you make that 14 gal`, `could you delete that`."""
    behind = [each for each in leading[2:] if each.text not in ("please", "plz", "just")][:2]
    told = bool(behind) and behind[0].text.split()[0] in _CHANGES
    words = behind[0].text.split()[1:] + [each.text for each in behind[1:]] if behind else []
    return told and words[:1] in (["that"], ["it"], ["the"], ["my"], ["last"])


def to_be_logged(leading: Sequence[Item]) -> bool:
    """`could you put down 11 gal for me` tells, in the form of a question."""
    third = leading[2] if len(leading) > 2 else None
    if third is not None and third.text in ("please", "plz"):
        third = leading[3] if len(leading) > 3 else None
    return (
        third is not None
        and "LOGREQ" in third.tags
        and any(item.sort in ("volume", "hours", "cords", "money") for item in leading)
    )
