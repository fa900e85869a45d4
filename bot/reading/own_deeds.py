"""What the words of a clause do that no single word says: deeds in two words with something between
(threw 3 gal out), sap that ran into the snow, what went into a store."""

from __future__ import annotations

import re

from bot.reading.clause import Clause
from bot.reading.signs import Sought


def mark_deeds(clause: Clause) -> None:
    """Fills in its tags, its text and whether what it tells of was kept."""
    clause.tags = clause.said
    clause.text = " ".join(item.text for item in clause.items)
    clause.each_word = frozenset(clause.text.split())
    clause.tags |= _parted(clause)
    if "BUDS" in clause.tags:
        clause.tags -= {"PULLV"}  # "red maple buds are out"
    if "POUR" in clause.tags and _is_not_poured(clause):
        clause.tags -= {"POUR"}
    if _INTO_JARS.search(clause.text):
        clause.tags = (clause.tags - {"POUR"}) | {"BOTTLE"}
    clause.kept = _into_store(clause) and not (
        "POUR" in clause.tags and _TURNED_IN_THERE.search(clause.text)
    )


def _is_not_poured(clause: Clause) -> bool:
    """Whether a word that pours out says something else here."""
    tested = "SUGAR" in clause.tags and not clause.holds("volume")
    if (
        tested
        or _DUMPED_IN.search(clause.text)
        or _LOST_ALONE.search(clause.text)
        or _only_costs(clause)
    ):
        return True
    if any(
        item.sort == "volume" or (item.sort == "vessels" and not item.article)
        for item in clause.items
    ):
        return False
    # "lost one mitten", "a bag was on the ground so we patched it", "a bucket lid blew off"
    covers = not _COVERS.isdisjoint(clause.words())
    return covers or _lost_a_thing(clause) or _LIES_THERE.search(clause.text) is not None


def _lost_a_thing(clause: Clause) -> bool:
    """Whether all that is lost is a thing that we do not know."""
    poured = {item.text for item in clause.items if "POUR" in item.tags}
    if poured != {"lost"} or clause.tags & {"SAP", "BUCKET", "STORE", "ALL", "SYRUP", "TAPN"}:
        return False
    last = clause.items[-1]
    return last.sort == "word" and not last.tags and last.text.isalpha() and len(clause.items) <= 4


_DUMPED_IN = Sought("ed in ", r"\b(?:dumped|tipped) in (?:about |another |the last )?\d")
"""`dumped in 8 more gal`: into the tank or the pan."""
_LIES_THERE = re.compile(
    r"\b(?:bag|bucket|pail|lid|line)s? (?:was|were|is|are|lying|laying|found) (?:\w+ )?"
    r"on the ground\b"
)
_TURNED_IN_THERE = re.compile(
    r"\bin (?:the|my|our) \w+ (?:turned|spoiled|soured|went bad|went sour|froze)\b"
)
"""`sap in the barrel turned on me`: it stood there, and is gone."""
_COVERS = frozenset("lid lids cover covers tarp roof hat".split())
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
_VERBS = frozenset().union(*(verbs for verbs, _, _ in _PARTED))


_THROWN = frozenset(
    "chuck chucked ditch ditched heave heaved slop slopped slosh sloshed leak pitch pitched threw "
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
    words = clause.words()
    found = {"POUR"} if not _THROWN.isdisjoint(words) and _throws(clause) else set()
    if not _THINGS_AND_PLACES.isdisjoint(clause.each_word):
        found |= _done_with_them(clause.text)
    if _VERBS.isdisjoint(words):
        return frozenset(found)
    for verbs, particles, tag in _PARTED:
        at = next((n for n, word in enumerate(words) if word in verbs), None)
        if at is not None and any(word.split()[0] in particles for word in words[at + 1 :]):
            found.add(tag)
    return frozenset(found)


_THINGS_AND_PLACES = frozenset(
    "ice pan pans pan's pans' pot pots pot's kettle kettle's roaster taps spiles spouts snow "
    "snowbank ground floor mud driveway grass dirt road deck yard ditch leaves".split()
)
"""What the forms below are about, or where they end."""


def _done_with_them(text: str) -> set[str]:
    found: set[str] = set()
    if _ICE_OUT.search(text):
        found.add("POUR")
    if _PUT_ON.search(text):
        found.add("LIT")
    if _GOT_TAPS_IN.search(text):
        found.add("SETV")
    if _TAPS_OFF.search(text):
        found.add("PULLV")
    if _TO_THE_GROUND.search(text):
        found |= {"POUR", "GROUND"}
    return found


_INTO_JARS = Sought(
    "poured ",
    r"\bpoured .*\bin(?:to)? (?:the |my )?(?:[\w.-]+ ){0,5}?(?:jars|bottles|pints|quarts)\b",
)
_GOT_TAPS_IN = Sought(
    "got ", r"\bgot (?:all )?(?:\w+ ){0,2}(?:taps|spiles|spouts) in(?! (?:my|our|the mail|stock)\b)"
)
"""`got all twelve taps in`."""
_TAPS_OFF = Sought(
    " the trees| the maples",
    r"\b(?:taps|spiles|spouts) (?:are |is |all )*(?:off|out of) the (?:trees|maples)\b",
)
"""`all the taps are off the trees`."""
_ICE_OUT = Sought(
    "ice", r"\b(?:lifted|took|pulled|threw|tossed|fished|picked|skimmed) (?:out )?(?:the )?ice\b"
)
"""Ice that is taken out of the buckets is sap no more."""
_PUT_ON = Sought(
    "pan|pot|kettle|roaster",
    r"\b(?:pans?|pots?|kettle)(?:'s| is| are)? on the (?:fire|stove|burner|flame|coals)\b|"
    r"\b(?:fire|burner|flame)s?(?: is| are)?(?: lit)?(?: on)? under (?:the |my |our )?(?:pans?|pot"
    r"|kettle)\b|"
    r"\b(?:put|got|have|set) (?:the |my |our |a |another )*(?:sap )?(?:big )?"
    r"(?:pans?|pots?|kettle|roaster) (?:of sap )?(?:on|over)"
    r"(?: the (?:fire|stove|burner|flame|coals))?"
    r"(?= (?:at|around|about|by|just|this|now|today)\b|$)",
)
"""`put the sap pot on at noon`: a boil begins."""
_TO_THE_GROUND = Sought(
    " in| on| to| over",
    r"\b(?:ran|went|drained|soaked|ended up|landed|flowed|splashed|seeped)"
    r"(?: out| down| off| all| [\d.]+ (?:gal\w*|l|lit\w+)(?: of sap)?)*"
    r" (?:in|on|onto|into|over|to) (?:the |my |our )?(?:\w+ )?"
    r"(?:snow|snowbank|ground|floor|mud|driveway|grass|dirt|road|deck|yard|ditch|leaves)\b"
    r"(?! (?:trees?|maples?))",
)
"""Where sap is lost that ran there."""
_LOST_ALONE = Sought(
    "lost",
    r"\blost (?:about |another |half )?(?:an? )?(?:\d+ )?"
    r"(?:hours?|hrs?|minutes?|power|count|track|interest|contact|sleep|signal|the race|my"
    r"|our (?:dog|way)|the trail)\b",
)
"""`lost 2 hours`, `lost power`: what is lost there is no sap."""


def _only_costs(clause: Clause) -> bool:
    """`jars cost me 31.20`, where `the spill cost us 5 gal` is of sap."""
    poured = {item.text for item in clause.items if "POUR" in item.tags}
    return bool(poured) and poured <= {"cost me", "cost us"} and not clause.holds("volume")


_BY = frozenset(
    "gathering collecting bulk 55 gallon the my our a big "
    "blue sap holding storage plastic metal steel stainless collection main".split()
)

_IN_OR_TO = frozenset(("in", "to"))


def _into_store(clause: Clause) -> bool:
    """`dumped the buckets into the barrel` gathers; `dumped the barrel` pours out."""
    if "INTO" not in clause.said and _IN_OR_TO.isdisjoint(clause.words()):
        return False
    for item in clause.items:
        was_in = item.text == "in" and any(
            each.text in ("was", "is", "were") for each in clause.preceding(item, 1)
        )
        if not was_in and ("INTO" in item.tags or item.text in _IN_OR_TO):
            for each in clause.following(item, 4):
                if "STORE" in each.tags or (
                    "INTO" in item.tags and each.tags & {"PANN", "BUCKET", "FIRE"}
                ):
                    return True
                if each.text not in _BY:
                    break
    return False
