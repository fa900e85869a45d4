"""Fourth stage: items become clauses, each with what it does, when, and how sure it is.

A sentence ends at . ! ? ; or a new line. A clause ends there, at a comma, a slash, "and" and
the like, before a question that follows an amount, and where the thing that led the clause
(an amount, a tree, a day) comes a second time: "tree 1 2 gal tree 2 3 gal" is two.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date

from bot.reading.frames import FRAME_TAGS, QUANTITIES
from bot.reading.items import Item
from bot.reading.naming import mark_names_and_days

_SHORT_DAYS = frozenset("mon tue tues wed weds thu thur thurs fri sat sun".split())
_STOPS = frozenset(".!?;\n")
_JOINTS = frozenset((",", "/", "&", "+", "and", "then", "also", "plus", "but", "so", "&amp"))
_LEADING = frozenset(("volume", "tree", "lot", "date", "cords", "brix"))
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


@dataclass(slots=True)
class Clause:
    """items: its items. sentence: number of its sentence. tags: what its own words do;
    frame: those, or the tags of the clause that it goes on from. on: the day it speaks of,
    None for the day it was sent; ahead: that day is still to come. question, plan, negated:
    how it is meant. kept: what it tells of went into a store, and not on the ground. joint:
    the sign or word before it. by_mark: it asks by its question mark alone.
    spent: the deeds that it goes on from, where their own amount was told already."""

    items: list[Item]
    sentence: int
    joint: str = ""
    ended_by: str = ""
    tags: frozenset[str] = frozenset()
    frame: frozenset[str] = frozenset()
    on: date | None = None
    ahead: bool = False
    question: bool = False
    by_mark: bool = False
    spent: frozenset[str] = frozenset()
    plan: bool = False
    negated: bool = False
    hypothetical: bool = False
    tree: str | None = None
    lot: str | None = None
    own_tree: bool = False
    kept: bool = False
    bucket_before: bool = False
    sentence_tags: frozenset[str] = frozenset()
    word_texts: list[str] | None = field(default=None, compare=False)
    roles: dict[int, str] = field(default_factory=dict, compare=False)
    text: str = field(default="")

    def has(self, *tags: str) -> bool:
        """Does one of its own words do one of these?"""
        return not self.tags.isdisjoint(tags)

    def about(self, *tags: str) -> bool:
        """The same, or of the clause that it goes on from."""
        return not self.frame.isdisjoint(tags)

    def near(self, *tags: str) -> bool:
        """The same, of any clause of its sentence."""
        return not self.sentence_tags.isdisjoint(tags)

    def gathers(self) -> bool:
        """Does one of its own words surely gather (hauled, collected; not got, ran)?"""
        return any("GATHER" in item.tags and "WEAK" not in item.tags for item in self.items)

    def free(self, *sorts: str) -> list[Item]:
        """Items of these sorts that no reading has taken yet."""
        return [item for item in self.items if item.sort in sorts and not item.used]

    def first(self, tag: str) -> Item | None:
        """The first item whose word does this."""
        return next((item for item in self.items if tag in item.tags), None)

    def following(self, item: Item, count: int = 2) -> list[Item]:
        """The items right after this one."""
        at = self._at(item)
        return self.items[at + 1 : at + 1 + count]

    def preceding(self, item: Item, count: int = 2) -> list[Item]:
        """The items right before this one, nearest first."""
        at = self._at(item)
        return self.items[max(0, at - count) : at][::-1]

    def _at(self, item: Item) -> int:
        # Not by `index`, which compares; a plain loop, since this is asked a hundred times a text.
        for n, each in enumerate(self.items):
            if each is item:
                return n
        raise ValueError(f"{item.text!r} is no item of this clause")

    def spoken(self) -> str:
        """The whole clause as it was said, its trees and lots named as such."""
        return " ".join(
            f"tree {item.text}"
            if item.sort == "tree"
            else f"{item.text} lot"
            if item.sort == "lot" and not item.text.endswith("lot")
            else item.text
            for item in self.items
        )

    def words(self) -> list[str]:
        """The texts of its words."""
        if self.word_texts is None:
            self.word_texts = [item.text for item in self.items if item.sort == "word"]
        return self.word_texts


def clauses(items: Sequence[Item]) -> list[Clause]:
    """The clauses of one text, in order."""
    found = _cut(items)
    for clause in found:
        clause.tags = frozenset().union(*(item.tags for item in clause.items))
        clause.text = " ".join(item.text for item in clause.items)
        clause.tags |= _parted(clause)
        tested = "SUGAR" in clause.tags and not any(i.sort == "volume" for i in clause.items)
        if "POUR" in clause.tags and (
            tested or _LOST_ALONE.search(clause.text) or _only_costs(clause)
        ):
            clause.tags -= {"POUR"}
        clause.kept = _into_store(clause)
    said: dict[int, frozenset[str]] = {}
    for clause in found:
        said[clause.sentence] = said.get(clause.sentence, frozenset()) | clause.tags
    for clause in found:
        clause.sentence_tags = said[clause.sentence]
    _mark_questions(found)
    _mark_sureness(found)
    mark_names_and_days(found)
    _frames_said_last(found)
    for before, clause in itertools.pairwise(found):
        plain = not any(item.sort in QUANTITIES or item.sort == "vessels" for item in before.items)
        clause.bucket_before = (
            clause.sentence == before.sentence
            and "BUCKET" in before.tags
            and plain
            and not before.tags & {"GATHER", "FULL", "SAP", "POUR", "DRY", "BOIL"}
            and not {"new", "using", "use", "hung", "hanging", "my", "our"}.isdisjoint(
                before.words()
            )
        )
    return found


_PARTED = tuple(
    (frozenset(verbs.split()), frozenset(particles.split()), tag)
    for verbs, particles, tag in (
        (
            "threw throw thrown tossed kicked knocked tipped pitched blew chucked tip",
            "out over away off down",
            "POUR",
        ),
        ("took drew ran", "off", "DRAW"),
        ("took pulled backed yanked pried taken popped pull taking pulling", "out down", "PULLV"),
        ("brought hauled carried came lugged hauling brings bring", "in back home up", "GATHER"),
        ("brought hauled carried lugged toted dragged", "down over out", "GATHER"),
        ("shut shutting close closed", "down off", "SHUT"),
        ("put putting", "in", "PUTIN"),
        ("turned switched cut killed", "off", "END"),
        ("ran run put running got", "through", "THROUGH"),
    )
)
"""Deeds in two words with something between: threw 3 gal out, took a quart off, put 12 in."""


_THROWN = frozenset(
    "chuck chucked ditch ditched heave heaved slop slopped slosh sloshed leak pitch pitched "
    "pouring dumping".split()
)
_ALL_OF_IT = frozenset("it all the some about maybe that another".split())


def _throws(clause: Clause) -> bool:
    """`had to chuck 6 gal`, `slopped it all`: words that mean it only with what was thrown."""
    return any(
        item.text in _THROWN
        and any(
            each.sort in ("volume", "vessels") or each.text in _ALL_OF_IT
            for each in clause.following(item, 1)
        )
        and any(each.sort in ("volume", "vessels", "number") for each in clause.following(item, 3))
        for item in clause.items
    )


def _parted(clause: Clause) -> frozenset[str]:
    words = [item.text for item in clause.items if item.sort == "word"]
    found = {"POUR"} if _throws(clause) else set()
    if _PUT_ON.search(clause.text):
        found.add("LIT")
    if _TO_THE_GROUND.search(clause.text):
        found |= {"POUR", "GROUND"}
    for verbs, particles, tag in _PARTED:
        at = next((n for n, word in enumerate(words) if word in verbs), None)
        if at is not None and any(word.split()[0] in particles for word in words[at + 1 :]):
            found.add(tag)
    return frozenset(found)


_PUT_ON = re.compile(
    r"\b(?:put|got|have|set) (?:the |my |our |a |another )*(?:sap )?(?:big )?(?:pans?|pots?|kettle|roaster)"
    r" (?:of sap )?(?:on|over)(?: the (?:fire|stove|burner|flame|coals))?(?= (?:at|around|about|by|just|this|now|today)\b|$)"
)
"""`put the sap pot on at noon`: a boil begins."""
_TO_THE_GROUND = re.compile(
    r"\b(?:ran|went|drained|soaked|ended up|landed|flowed|splashed|seeped)(?: out| down| off| all)*"
    r" (?:in|on|onto|into|over|to) (?:the |my |our )?(?:\w+ )?"
    r"(?:snow|ground|floor|mud|driveway|grass|dirt|road|deck|yard|ditch|leaves)\b"
)
"""Where sap is lost that ran there."""
_LOST_ALONE = re.compile(
    r"\blost (?:about |another |half )?(?:an? )?(?:\d+ )?(?:hours?|hrs?|minutes?|power|count|track|interest"
    r"|contact|sleep|signal|the race|my|our (?:dog|way)|the trail)\b"
)
"""`lost 2 hours`, `lost power`: what is lost there is no sap."""


def _only_costs(clause: Clause) -> bool:
    """`jars cost me 31.20`, where `the spill cost us 5 gal` is of sap."""
    poured = {item.text for item in clause.items if "POUR" in item.tags}
    return bool(poured) and poured <= {"cost me", "cost us"} and not any(i.sort == "volume" for i in clause.items)


_BY = frozenset(
    "gathering collecting bulk 55 gallon the my our a big "
    "blue sap holding storage plastic metal steel stainless collection main".split()
)


def _into_store(clause: Clause) -> bool:
    """`dumped the buckets into the barrel` gathers; `dumped the barrel` pours out."""
    for item in clause.items:
        was_in = item.text == "in" and any(
            each.text in ("was", "is", "were") for each in clause.preceding(item, 1)
        )
        if not was_in and ("INTO" in item.tags or item.text in ("in", "to")):
            for each in clause.following(item, 4):
                if "STORE" in each.tags or (
                    "INTO" in item.tags and each.tags & {"PANN", "BUCKET", "FIRE"}
                ):
                    return True
                if each.text not in _BY:
                    break
    return False


def _cut(items: Sequence[Item]) -> list[Clause]:
    found: list[Clause] = []
    current: list[Item] = []
    sentence = 0
    joint = ""

    def close(ended_by: str) -> None:
        nonlocal current, joint
        if current:
            found.append(Clause(current, sentence, joint, ended_by))
            current = []
            joint = ended_by

    for n, item in enumerate(items):
        if (
            item.text == "."
            and n > 0
            and items[n - 1].text == "no"
            and n + 1 < len(items)
            and items[n + 1].sort == "number"
        ):
            continue
        figure = n + 1 < len(items) and items[n + 1].sort in QUANTITIES
        if item.text == "." and figure and items[n - 1].text in _SHORT_DAYS:
            continue  # "Sat. 24 gal"
        if item.sort == "sign" and item.text in _STOPS:
            close(item.text)
            if found and not found[-1].ended_by:
                found[-1].ended_by = item.text
            if found:
                found[-1].ended_by = item.text if item.text == "?" else found[-1].ended_by
            sentence += 1
            joint = item.text
            continue
        after_boiling = item.text == "after" and n + 1 < len(items) and "BOIL" in items[n + 1].tags
        if after_boiling or (item.text in _JOINTS and item.sort in ("sign", "word")):
            close(item.text)
            joint = item.text
            continue
        if item.sort == "sign" and item.text == "-":
            spaced = (
                n > 0
                and items[n - 1].end < item.start
                and n + 1 < len(items)
                and item.end < items[n + 1].start
            )
            only_name = all(each.sort in ("tree", "lot", "date", "clock") for each in current)
            if spaced and current and not only_name:
                close("-")
            continue
        if item.sort == "sign" and item.text in "()":
            told = any(each.sort in QUANTITIES for each in current)
            if told and (item.text == "(" or joint == "("):
                close(item.text)
            continue
        if _is_for_later(current, item, items[n + 1] if n + 1 < len(items) else None):
            close("to")
        if _new_deed(current, items, n):
            close("")
        if _starts_anew(current, item, items[n + 1] if n + 1 < len(items) else None):
            led: list[Item] = []
            while len(current) > 1 and _leads_on(current[-1]):
                led.insert(0, current.pop())
            close("")
            current = led  # "5 quarts | not 5 gallons", "12 gal today | total so far 90 gal"
        current.append(item)
    close("")
    return found


_SAYS_WHAT_COMES = frozenset(("we'll", "i'll", "will", "gonna", "going to", "continuing"))
_DEEDS_DONE = frozenset(("END", "PAST"))


def _is_for_later(current: Sequence[Item], item: Item, following: Item | None) -> bool:
    """`collected 30 gal | to boil tomorrow`: what was done, and then what is planned."""
    if (
        item.text in _SAYS_WHAT_COMES
        and following is not None
        and following.text in _WILL_GATHER
        and any(each.sort == "volume" for each in current)
    ):
        return True  # "got 4 gal tonight | will get another 10 in the morning"
    later = following is not None and (_speaks_of_later(following) or following.text in _LATER)
    done = any("GATHER" in each.tags and "WEAK" not in each.tags for each in current)
    return later and done and item.text in ("to boil", "for boiling")


_WILL_GATHER = frozenset("get gather collect have bring haul pick".split())


_DEED_WORDS = frozenset("BOIL DRAW BOTTLE SETV PULLV POUR COSTV BURN LIT".split())
_NAMES_AFTER = frozenset("BOIL DRAW BOTTLE COSTV BURN".split())
"""Deeds that are done to no tree, so that a tree named behind their amount is another matter."""


def _deed(item: Item) -> frozenset[str]:
    """What a word surely does: `got` and `ran` alone may do anything."""
    tags = item.tags & _DEED_WORDS
    if "LIT" in tags and item.text.split()[0] in ("on", "over"):
        tags -= {"LIT"}  # "cooked 4.5 gal down on the burner"
    if "BOIL" in tags and "PAST" not in item.tags:
        tags -= {"BOIL"}  # "used 12 pounds propane boiling 10 gal"
    gathers = "GATHER" in item.tags and "WEAK" not in item.tags
    return tags | {"GATHER"} if gathers else tags


def _new_deed(current: Sequence[Item], items: Sequence[Item], n: int) -> bool:
    """`hauled 21 gallons down the hill | got rid of 12 gal`, `bottled 9 half pints | tree 22 made 3
    quarts`: a second deed with its own amount, where no comma parts them."""
    item = items[n]
    if not current:
        return False
    ahead: list[Item] = []
    for each in items[n + 1 :]:
        if each.text in _STOPS or (each.text in _JOINTS and each.sort in ("sign", "word")):
            break
        ahead.append(each)
    at = next((k for k, each in enumerate(current) if _deed(each)), None)
    named = current[0].sort in ("tree", "lot")
    start = 0 if named else at
    if start is None:
        told = any(each.sort in QUANTITIES and not each.article for each in current)
        return told and item.text in _PAYS and any(each.sort == "money" for each in ahead)
    done = any(each.sort in QUANTITIES and not each.article for each in current[start:])
    own = _deed(current[at]) if at is not None else frozenset()
    amount = any(each.sort in QUANTITIES and not each.article for each in ahead)
    if item.sort == "tree":
        return done and amount and bool(own & _NAMES_AFTER) and current[-1].sort in QUANTITIES
    new = _deed(item)
    if not done or not new or new & own or current[-1].text in _NO_END:
        return False
    return amount or "LIT" in new


_PAYS = frozenset("paid spent bought ordered".split())
_NO_END = frozenset(
    "and to of the a an we i it was is were then that for from in on by at about with my our "
    "just".split()
)


def _leads_on(item: Item) -> bool:
    return item.text in _DENIES or bool(item.tags & {"TOTAL", "SOFAR"})


_LATER = frozenset(("later", "tonight", "soon"))
_DENIES = frozenset(("not", "instead of", "rather than"))


def _starts_anew(current: Sequence[Item], item: Item, following: Item | None) -> bool:
    if not current:
        return False
    has_amount = any(each.sort in QUANTITIES for each in current)
    if "ASKHOW" in item.tags and has_amount and current[-1].text not in ("is", "was", "that's"):
        return True
    asked = following is not None and (item.text == "any" or following.text in ("i", "we", "it"))
    if asked and has_amount and item.text in ("can", "should", "will", "is", "any"):
        return True
    asks_of_self = following is not None and following.text in ("i", "we")
    if asks_of_self and item.text in ("do", "should") and _tells(current):
        return True
    if item.text in _SAYS_WHAT_COMES and any(each.tags & _DEEDS_DONE for each in current):
        return True  # "fire is out | we'll continue tomorrow"
    if item.sort == "date" and any("NONE" in each.tags for each in current):
        return any(each.sort == "date" for each in current)
    tested = any(each.sort == "brix" or (each.sort == "number" and "." in each.text) for each in current)
    if tested and item.tags & {"FIRE", "LIT"} and any(each.sort == "volume" for each in current):
        return True  # "28 gal 2.1 | arch lit at 4"
    counted = item.sort == "number" and current[-1].sort == "lot" and len(current) > 1
    if counted and any(each.sort == "number" for each in current):
        return True  # "25 on ridge | 15 on creek"
    if item.sort in _LEADING:
        lead = next((each.sort for each in current if each.sort in _LEADING | {"number"}), None)
        if lead == item.sort and has_amount:
            return True
        if item.sort == "tree" and any(each.sort == "tree" for each in current) and has_amount:
            return current[-1].sort != "tree"
    return False


def _tells(current: Sequence[Item]) -> bool:
    """`ice in the buckets | do i throw it out`: something was said, and no question begun."""
    words = [each for each in current if each.sort != "sign"]
    return (
        len(words) > 1
        and not words[0].tags & {"ASKDO"}
        and not any(each.tags & {"ASKHOW", "ASKME", "IF", "NOT"} for each in words)
    )


def _mark_questions(found: Sequence[Clause]) -> None:
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
    """`40 gal at 2.2 makes | how much`: the amount is part of the question."""
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


_AFTER_WHEN = frozenset("do does should can is will to would are did shall i am".split())


def _led_by_question(clause: Clause) -> bool:
    asking_words = [item.text for item in clause.items if "ASKME" in item.tags]
    if asking_words and not (asking_words == ["give me"] and clause.items[0].sort == "tree"):
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
    if _asks_how_many(leading):
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
    if first == "when" and clause.ended_by != "?" and _was_done(leading):
        return False  # "pan at 219 | when I drew off 1.5 gal"
    if first == "when" and clause.ended_by != "?":
        told = second is not None and second.text == "i" and bool(clause.tags & {"GATHER"})
        return second is not None and second.text in _AFTER_WHEN and not told
    of_several = second is not None and second.text in ("of", "tree", "lot", "one", "day")
    if first == "which" and clause.joint == "," and clause.ended_by != "?" and not of_several:
        return False  # "tested 2.1, which I'll take any day"
    if leading[0].tags & {"ASKHOW"} or first in ("what'll", "whatll", "how'll"):
        return True
    if first == "any" and second is not None and second.sort == "word":
        return True
    goes_on = clause.joint == "," and first in ("is", "are") and clause.ended_by != "?"
    if (
        second is not None
        and second.sort in _AMOUNTS_ASKED_OF
        and first in _ASKS_OF_AMOUNT
        and not goes_on
    ):
        return True
    if second is not None and second.text == "you" and _to_be_logged(leading):
        return False
    if second is None or second.sort not in ("word", "date", "tree", "lot"):
        return False
    if first == "am":
        return second.text == "i"
    if first == "was" and clause.ended_by != "?" and all(
        each.sort == "date" or each.text in ("the", "on", "really", "actually") for each in leading[1:]
    ):
        return False  # "wrong date. was the 18th"
    if first in _AUX_ANY:
        return (
            not (first in ("don't", "isn't") and clause.ended_by != "?")
            or second.text in _ASKING_SUBJECT
        )
    if first == "did" and second.text in ("the", "a", "my", "our", "some"):
        return False
    return first in _AUX_SUBJECT and (second.text in _ASKING_SUBJECT or second.sort != "word")


def _was_done(leading: Sequence[Item]) -> bool:
    """`when I drew off`, `when we shut down`."""
    subject, deed = [each.text for each in leading[1:2]], [each.text for each in leading[2:3]]
    past = bool(deed) and (deed[0].split()[0] in _PAST_DEEDS or deed[0].split()[0].endswith("ed"))
    return subject in (["i"], ["we"], ["he"], ["she"], ["they"]) and past


_PAST_DEEDS = frozenset("drew got shut lit put came quit left went took ran brought hit saw".split())


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


def _to_be_logged(leading: Sequence[Item]) -> bool:
    """`could you put down 11 gal for me` tells, in the form of a question."""
    third = leading[2] if len(leading) > 2 else None
    if third is not None and third.text in ("please", "plz"):
        third = leading[3] if len(leading) > 3 else None
    return (
        third is not None
        and "LOGREQ" in third.tags
        and any(item.sort in ("volume", "hours", "cords", "money") for item in leading)
    )


_TOLD = frozenset(("GATHER", "POUR", "BOTTLE", "DRAW", "SETV", "PULLV", "BURN", "COSTV"))


def _mark_sureness(found: Sequence[Clause]) -> None:
    iffy = {clause.sentence for clause in found if "IF" in clause.tags}
    amounts = {clause.sentence for clause in found if _has_volume(clause)}
    crossed: set[int] = set()
    planned: dict[int, bool] = {}
    frames: dict[int, frozenset[str]] = {}
    kept: dict[int, bool] = {}
    spent: dict[int, frozenset[str]] = {}
    for clause in found:
        own = _own_frame(clause)
        spilled_before = "POUR" in frames.get(clause.sentence, ())
        if "GATHER" in clause.tags and (clause.joint == "but" or spilled_before):
            own |= {"GATHER"}  # "spilled a quart but got 11 gal"
        clause.frame = clause.tags
        if own == {"SYRUP"} and "BOTTLE" in frames.get(clause.sentence, ()) and _jars_on(clause):
            own = frozenset()  # "bottled 2 half gallon jugs and 4 pints of syrup"
        alone = _fragment(clause) or _sums_up(clause)
        if not own and clause.sentence not in frames and alone:
            before = frames.get(clause.sentence - 1, frozenset())
            done = clause.sentence - 1 in amounts and "MORE" not in clause.tags
            if clause.sentence in amounts and done:
                before -= _DONE_WITH  # "boiled off 85 gal. trip 2, 18.5 gal"
            crossed.add(clause.sentence)
            spilled = "POUR" in before and not _spills_sap(found, clause.sentence - 1)
            frames[clause.sentence] = before - ({"GATHER", "POUR"} if spilled else {"GATHER"})
            kept[clause.sentence] = kept.get(clause.sentence - 1, False)
        if not own and clause.sentence in frames:
            clause.frame = clause.tags | frames[clause.sentence]
            if clause.sentence in crossed and _has_volume(clause) and not _is_bare(clause):
                clause.frame -= _DONE_WITH - clause.tags  # "lit the arch. got 7 gal, 2.4"
            if _has_volume(clause) and clause.sentence in spent and "MORE" not in clause.tags:
                clause.spent = spent[clause.sentence]
                if _is_of_sap(clause):
                    clause.frame -= clause.spent - clause.tags
            if clause.joint == "but" and not _SAVED.isdisjoint(clause.words()):
                clause.frame -= {"POUR"}  # "lids blew off 6 trees but we saved 12 gal"
            clause.kept = clause.kept or kept.get(clause.sentence, False)
        elif own and ("NOT" in clause.tags or "PLAN" in clause.tags):
            frames.pop(clause.sentence, None)
        elif own:
            frames[clause.sentence] = own | clause.tags & {
                "INTO",
                "STORE",
                "TAPN",
                "JARN",
                "PROPANE",
            }
            kept[clause.sentence] = clause.kept
        if own & _DONE_WITH and _has_volume(clause):
            spent[clause.sentence] = own & _DONE_WITH
        elif own and clause.sentence in spent:
            del spent[clause.sentence]
        clause.hypothetical = clause.sentence in iffy
        plan = (
            ("PLAN" in clause.tags and not _to_be_logged(clause.items))
            or _perhaps(clause)
            or (any(map(_speaks_of_later, clause.items)) and not _is_told_as_done(clause))
        )
        did = not {"did", "done"}.isdisjoint(clause.words())
        if not plan and planned.get(clause.sentence) and not clause.tags & _TOLD and not did:
            plan = True
        goes_on = clause.sentence not in planned and planned.get(clause.sentence - 1, False)
        if goes_on and _only_counts(clause):
            plan = True  # "getting ready for next season. 10 taps this time"
        planned[clause.sentence] = plan
        clause.plan = plan
        clause.negated = "NOT" in clause.tags


_DONE_WITH = frozenset("BOIL FIRE DRAW SYRUP POUR THROUGH LIT END SHUT".split())
"""Deeds whose amount was told, so that an amount in a sentence of its own is another's."""


def _is_of_sap(clause: Clause) -> bool:
    """An amount that says itself that it is sap: `14 gal at 2.0`, `2 gal from tree 10`; but sap is
    poured out of lots and trees too."""
    named = () if "POUR" in clause.spent else ("tree", "lot")
    tested = any(
        item.sort in ("brix", *named) or (item.sort == "number" and item.text[1:2] == ".")
        for item in clause.items
    )
    return (tested or bool(clause.tags & {"SAP", "TAPN"})) and "SYRUP" not in clause.tags


def _is_bare(clause: Clause) -> bool:
    """Nothing but an amount: `40 gal.`, `about 40 gal in 6 hours.`"""
    return all(
        item.sort in _BARE_SORTS or "ABOUT" in item.tags or item.text in _BARE_WORDS
        for item in clause.items
    )


_BARE_SORTS = frozenset(("volume", "hours", "clock", "cords", "mass", "sign"))
_BARE_WORDS = frozenset(
    "in of to boil done total so far all through altogether yes ok tonight today more "
    "went".split()
) | {"to boil", "in all", "all told", "so far", "went through", "in total"}


def _has_volume(clause: Clause) -> bool:
    return any(item.sort == "volume" for item in clause.items)


def _jars_on(clause: Clause) -> bool:
    """`and 4 pints of syrup`: no deed of its own, and sizes of jars."""
    sizes = [item.unit in _JARRED for item in clause.items if item.sort == "volume"]
    joined = clause.joint in ("and", "&", "plus", ",")
    return joined and bool(sizes) and all(sizes) and not clause.tags & {"MADE", "HOLD", "DRAW"}


def _sums_up(clause: Clause) -> bool:
    """`Bottled it all. That came to 3 quarts`: of what was done in the sentence before."""
    said = [item.text for item in clause.items[:2]]
    return len(said) > 1 and said[0] in ("that", "it", "which") and said[1] in _COMES_TO


_COMES_TO = frozenset(("came to", "comes to", "made", "makes"))
_SAVED = frozenset("saved kept still".split())


def _spills_sap(found: Sequence[Clause], sentence: int) -> bool:
    """`dumped the barrel. 5 gal.`; but `lost a mitten. 14 gal.`"""
    return any(
        "POUR" in clause.tags
        and (
            clause.tags & {"SAP", "BUCKET", "STORE"}
            or not {"it", "all", "rest", "some", "everything"}.isdisjoint(clause.words())
        )
        for clause in found
        if clause.sentence == sentence
    )


def _only_counts(clause: Clause) -> bool:
    """A count of things without a deed and a day."""
    deeds = clause.tags & (FRAME_TAGS | {"HAVE"})
    return (
        not deeds
        and any(item.sort == "number" for item in clause.items)
        and not any(item.sort in ("date", "volume", "brix") for item in clause.items)
    )


def _is_told_as_done(clause: Clause) -> bool:
    """`gathered 15 gal tomorrow`: done, and still to come; one of the two is a slip."""
    said = [item for item in clause.items if item.sort != "sign"]
    while said and said[0].text in ("i", "we", "just"):
        said = said[1:]
    if len(said) < 2 or said[1].sort not in QUANTITIES:
        return False
    return said[0].text in _DONE or said[0].text.split()[0] in _DONE_TOGETHER


_DONE = frozenset(
    "gathered collected hauled emptied boiled drew bottled canned dumped spent burned".split()
)


_DONE_TOGETHER = frozenset("brought carried lugged took pulled put drew poured".split())
"""First words of deeds in two words, `brought in`, that are surely done."""


def _speaks_of_later(item: Item) -> bool:
    """`tomorrow`, `next week`: said as later, where a date in figures may be a slip."""
    return (
        item.sort == "date"
        and item.ahead
        and (item.on is None or not any(c.isdigit() for c in item.text))
    )


def _own_frame(clause: Clause) -> frozenset[str]:
    """What the clause's own words make it about. Weak words (got, ran) alone do not say."""
    own: set[str] = set(clause.tags & FRAME_TAGS)
    if not clause.tags & {"WOOD", "PROPANE"} and not any(
        item.sort in ("cords", "mass") for item in clause.items
    ):
        own.discard("BURN")  # "2 quarts gone", "it took 4 hrs"
    else:
        own -= {"BOIL", "FIRE", "THROUGH"}  # "that boil ate up 3/4 cord"
    if "WATERN" in clause.tags:
        own -= {"BOIL", "FIRE"}
    if (
        "GATHER" in own
        and all("WEAK" in item.tags for item in clause.items if "GATHER" in item.tags)
        and not clause.tags & {"SAP", "BUCKET"}
    ):
        own.discard("GATHER")
    return frozenset(own)


_JARRED = frozenset(
    ("pint", "half_pint", "quart", "half_gallon", "fluid_ounce", "milliliter", "cup")
)


def _frames_said_last(found: Sequence[Clause]) -> None:
    """`a pint, a quart and three half pints bottled`: the deed holds for what came before."""
    for n in range(len(found) - 1, 0, -1):
        clause, before = found[n], found[n - 1]
        if clause.sentence != before.sentence or "BOTTLE" not in clause.frame:
            continue
        sizes = [item for item in before.items if item.sort == "volume"]
        in_jugs = "JARN" in before.tags or not {"jug", "jugs"}.isdisjoint(before.words())
        jarred = bool(sizes) and all(item.unit in _JARRED or in_jugs for item in sizes)
        made = "MADE" in before.tags
        own = made and any(item.sort in QUANTITIES for item in clause.items)
        free = made or not before.tags & FRAME_TAGS
        drawn = not {"off", "out"}.isdisjoint(before.words())
        if jarred and not drawn and _fragment(before) and free and not own and not clause.tags & {"DRAW"}:
            before.frame |= {"BOTTLE"}


def _fragment(clause: Clause) -> bool:
    """Nothing but an amount, or hardly more: "21 gallons."."""
    words = [item for item in clause.items if item.sort == "word"]
    return len(words) <= 1 and not any(item.sort == "brix" for item in clause.items)


def _perhaps(clause: Clause) -> bool:
    """`maybe next week` is a plan; `maybe 12 gal` is about 12 gal."""
    for item in clause.items:
        if "PERHAPS" in item.tags:
            near = clause.following(item, 2) + [
                each for each in clause.items if each.start < item.start
            ]
            return not any(each.sort in QUANTITIES for each in near)
    return False
