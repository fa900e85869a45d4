"""Whose doing a clause tells of. A neighbour's is no record of ours; where nobody can say who the
doer is (`the wilsons boiled 60 gal`), it is asked."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from bot.reading.puzzling import PLAIN_WORDS
from bot.reading.signs import Sought

if TYPE_CHECKING:
    from bot.reading.clause import Clause
    from bot.reading.items import Item
    from bot.reading.notes import Notes

_OUR_PEOPLE = frozenset(
    "kid kids boy boys girl girls child children scout scouts cub cubs troop patrol den pack class "
    "classes student students pupil pupils grader graders kindergarteners volunteer volunteers "
    "helper helpers crew team gang family wife hubby husband son sons daughter daughters dad mom "
    "mum mama papa pa ma pop father mother grandpa grandma gramps granny nana grandson grandsons "
    "granddaughter granddaughters grandkid grandkids grandkids' nephew nephews niece nieces "
    "partner spouse fiance fiancee boyfriend girlfriend intern interns senior seniors junior "
    "juniors camper campers teen teens youth hand hands farmhand staff group groups party "
    "brother brothers sister sisters twins baby toddler everyone everybody all rest others us "
    "teacher teachers ranger rangers lads lad missus better-half".split()
)
_OUTSIDERS = frozenset(
    "guy fella fellow feller dude chap man woman lady gentleman couple stranger oldtimer farmer "
    "farmers sugarer sugarers sugarmaker sugarmakers producer producers outfit operation "
    "operations operator company co-op coop competitor competition pros commercial monastery "
    "abbey college university museum park county town municipality inspector dealer clerk "
    "customer customers visitor visitors strangers amish mennonites somebody someone "
    "nobody people folks dudes".split()
)
_SPOKEN_TO = frozenset("man dude dudes folks people guy chap fella".split())
_ELSEWHERE = re.compile(
    r"\b(?:across|down|over|up|beyond|past)(?: from)? (?:the |our |my )?(?:road|rd|street|st|lane"
    r"|way|river|creek|valley|hollow|line|border|fence|county|lake|bridge|highway|hwy|mountain"
    r"|ridge|hill)\b|\bnext (?:farm|door|town|county|ridge|hill|place)\b|\bin town\b"
    r"|\bover (?:at|in|by|near|there)\b|\bat the (?:feed|hardware|general|grocery) store\b"
    r"|\bwith the (?:\w+ )?(?:truck|tubing|dog|beard|vacuum|lines|operation|trees|pumps?)\b"
)
_REPORTED = re.compile(
    r"^(?:so |and |but )?(?:(?:i|we) )?(?:just |also )?"
    r"(?:heard|hear|read(?= that| on| online| where)|word is|word has it|rumou?r (?:is|has it)"
    r"|supposedly|saw (?:on|in) (?:\w+ )?(?:\w+ )?where)\b"
    r"(?! (?:the|a|it|them|my|our|some)? ?(?:lids?|seals?|pails?|buckets?|drip\w*|sap|spiles?|taps?"
    r"|ping\w*|plink\w*|trees?|fire|owls?|pan)\b)"
)
_ASKED_US = Sought(
    "ask|want|wonder",
    r"^(?:and |so )?(?:an? |the |one |some |my |our )?\w+(?: \w+){0,2} (?:asked|asks|wanted to know"
    r"|wants to know|wondered|wonders|was asking)(?: me| us)? (?:whether|if|how|why|what|about)\b",
)
_THEY_THERE = re.compile(
    r"^(?:(?:over|up|down|out) (?:at|in|on|near|by) .*|at (?:the|his|her|their) .*"
    r"(?:farm|place|school|church|park|camp|bush)\b.*)\b(?:they|he|she) (?:got|made|drew|boiled"
    r"|hauled|gathered|collected|tapped|pulled|bottled|canned|paid|spent|brought|have|had|set)\b"
)
_HABITS = frozenset(("gathers", "collects"))
_DEEDS = frozenset("BOIL DRAW BOTTLE SETV PULLV COSTV POUR LIT".split())
_ARTICLES = frozenset("the a an some those that one another every most other".split())
_OURS_BY_WORD = frozenset("my our".split())
_LEADS = frozenset(
    "so and ok okay well also then but just finally now oh wow guess what ps btw plus yeah".split()
)
_HELPED = frozenset(("helped", "helping"))
_WE = frozenset("i we us you it he she they that this what which who there".split())
_PASSIVE = frozenset("was were is are been being be get gets getting".split())
_PREPOSITIONS = frozenset(
    "at by in on from off with near before after under over behind past around through across "
    "along beside between beyond below above down up of out who whose that".split()
)
_FIGURES = frozenset("volume number brix vessels money hours cords".split())


def is_theirs(clause: Clause) -> bool:
    """`the guy with the red truck got 30 gal`, `heard the creamery made 40 gal`."""
    if clause.sorts.isdisjoint(_FIGURES):
        return False
    if (
        _ASKED_US.match(clause.text)
        or _REPORTED.match(clause.text)
        or _THEY_THERE.match(clause.text)
    ):
        return True
    doer = _doer(clause)
    dated = clause.holds("date")
    if doer and not dated and not _HABITS.isdisjoint(clause.words()):
        return True  # "our storybook farmer gathers 50 gal in a day"
    if not doer or doer[0].text in _OURS_BY_WORD:
        return False
    named = [item for item in doer if item.text not in _ARTICLES]
    behind = clause.following(doer[0], 1)
    spoken_to = doer[0].text in _SPOKEN_TO and bool(behind) and _is_deed(behind[0])
    if spoken_to or not named or named[-1].tags & {"LOTN", "TREEN"}:
        return False  # "hey folks got 12 gal", "the university lot got 12 gal"
    if any(item.text in _OUTSIDERS for item in named):
        return _HELPED.isdisjoint(clause.words())  # "12 people helped gather 20 gal"
    people = [item for item in named if item.text in _OUR_PEOPLE or _is_strange(item)]
    return bool(people) and people[-1] is named[-1] and _elsewhere(clause, doer[-1])


def of_whom(clause: Clause, notes: Notes) -> bool:
    """Asks about a doer that we do not know. Says whether it had to."""
    doer = _doer(clause)
    if len(doer) < 2 or clause.has("FOREIGN"):
        return False
    away = doer[0].text in _OURS_BY_WORD and _elsewhere(clause, doer[-1])
    if not away and (doer[0].text not in _ARTICLES or not _is_strange(doer[-1])):
        return False
    if not away and any(item.text in _OUR_PEOPLE for item in doer):
        return False
    if clause.sorts.isdisjoint(_FIGURES):
        return False
    for item in clause.items:
        item.used = True
    if not notes.doubts:
        who = notes.text[doer[0].start : doer[-1].end]
        deed = notes.text[doer[-1].end : clause.items[-1].end].strip()
        notes.ask(
            f"{who[0].upper()}{who[1:]}: is that of your own sugarbush?",
            ("ok|yep|yeah|ours|mine|own|our own|it is", deed),
            ("no|nope|theirs|not ours", ""),
        )
    return True


def _doer(clause: Clause) -> list[Item]:
    """The words that lead to the first deed, up to a preposition; none where it is a pronoun, or
    more than words."""
    if clause.said.isdisjoint(_DEEDS_AND_GATHER) and _DEED_WORDS.isdisjoint(clause.words()):
        return []
    at = next((n for n, item in enumerate(clause.items) if _is_deed(item)), None)
    if at is None:
        return []
    before = clause.items[:at]
    while before and (
        before[0].sort in ("date", "clock", "sign")
        or before[0].text in _LEADS
        or before[0].tags & {"GREET", "THANKS", "SMALLTALK"}
    ):
        before = before[1:]
    while before and (before[-1].sort == "date" or before[-1].text in ("just", "already", "has")):
        before = before[:-1]
    if not before or any(item.sort not in ("word", "number") for item in before):
        return []
    texts = {item.text for item in before}
    if before[0].text in _WE or before[-1].text in _PASSIVE | {"i", "we", "they"} or "i" in texts:
        return []
    said: list[Item] = []
    for item in before:
        if item.text in _PREPOSITIONS or (item.text.split()[0] in _PREPOSITIONS and said):
            break
        said.append(item)
    return said


_DEEDS_AND_GATHER = _DEEDS | {"GATHER"}
_DEED_WORDS = frozenset(("got", "made", "report", "reports", "reported"))


def _is_deed(item: Item) -> bool:
    if item.sort != "word" or item.text.startswith("came"):
        return False
    if item.text in _DEED_WORDS:
        return True
    tags = item.tags & _DEEDS
    if "BOIL" in tags and "PAST" not in item.tags:
        tags -= {"BOIL"}
    return bool(tags) or ("GATHER" in item.tags and "WEAK" not in item.tags)


def _is_strange(item: Item) -> bool:
    """No word of ours, and none that everybody uses."""
    text = item.text
    plain = text in PLAIN_WORDS or text.endswith(("ly", "ing", "one", "ones"))
    return item.sort == "word" and not item.tags and text.isalpha() and not plain


def _elsewhere(clause: Clause, last: Item) -> bool:
    """Whether the words behind the doer, and before the deed, say that it is not here."""
    behind = " ".join(
        item.text for item in clause.items if item.start > last.start and not _is_deed(item)
    )
    return _ELSEWHERE.search(behind) is not None
