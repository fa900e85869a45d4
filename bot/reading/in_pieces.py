"""What is told in several short sentences, put together again.

`Tree 14 is a red maple. 13 inches. One tap.` is of one tree, and `Emptied the pond buckets. It came
to 13 gal.` of one gathering: the stages behind this one take a full stop for the end of a matter.
"""

from __future__ import annotations

import re

from bot.reading.dates import WEEKDAY
from bot.reading.rewrites import Rewrites

_STOP = r"[.;!]+ +"
_SIZE = r"(?:half[ -])?(?:pints?|pts?|quarts?|qts?|jars|bottles|gallons?|gal)\b"
# "tree 14 is a red maple. 13 inches. one tap. gave half a gallon".
_A_TREE = re.compile(
    r"^(?:we |i )?(?:measured |taped |checked )?(?:the |our |my )?(?:tree \w+|\w+ (?:tree|maple))\b"
)
_OF_THE_TREE = re.compile(
    rf"{_STOP}(?=(?:\d[\d.]*|one|two|three) ?(?:in\b|inch|cm\b|\"|around|across|taps?\b)"
    r"|(?:gave|had|ran|tests|tested)\b|(?:it's|its|it is|she's|he's) an? )"
)
# "emptied the pond buckets; it came to 13.5 gal".
_CAME_TO = re.compile(
    r"\b((?:empt(?:ied|ying)|gather(?:ed|ing)|collect(?:ed|ing)|haul(?:ed|ing)|buckets|pails"
    r"|bags)\b"
    rf"[^.;!?\d]*){_STOP}"
    r"(?=(?:it|that|they)(?: all)? (?:came to|made|totall?ed|added up to|measured|yielded)\b)"
)
_AMOUNT = (
    r"(?:about |maybe |around )?(?:\d[\d.]*|one|two|three|four|five|six|seven|eight|nine|ten"
    r"|half an?|an?) ?(?:and a half )?"
    r"(?:gal|gals|gallons?|qts?|quarts?|l|lit(?:er|re)s?|pails?|buckets?)\b"
)
# "first sap ever!! 3 quarts"; "tree 5. 2 gal", "sunday. 9 gal": the amount of it.
_FIRST_SAP = re.compile(
    rf"^((?:our |my |the )?(?:very )?first sap(?: ever| of the (?:year|season))?){_STOP}"
    rf"(?={_AMOUNT})"
)
_NAMED_AND_AMOUNT = re.compile(
    rf"(?:^|(?<=[.;!] ))(tree \w{{1,3}}|{WEEKDAY}|yesterday){_STOP}(?={_AMOUNT})"
)
_DAY_AND_FIGURE = re.compile(rf"(?<=[.;!] )({WEEKDAY}|yesterday){_STOP}(?=\d[\d.]*(?:$|[.!]))")
# "sap's cloudy. dumped it. 6 gal".
_DUMPED_IT = re.compile(
    r"\b((?:dumped|tossed|chucked|pitched|threw) (?:it|them)(?: all| out| away)*)"
    rf"{_STOP}(?={_AMOUNT}(?: of it| in all| total)?[.!]*$)"
)
# "good drip today! came to 11 quarts".
_GOOD_RUN = re.compile(
    r"^((?:a )?(?:good|great|big|nice|slow|decent|fine|ok|poor) (?:drip|run|flow|day)"
    r"(?: today| yesterday| this morning)?)[.;!]+ +(?=(?:it )?(?:came to|got|made|gave) )"
)
# "checked the buckets. nothing".
_CHECKED = re.compile(
    r"\b(checked (?:the |all the |my |our )?(?:buckets|pails|bags|taps|trees))[.;!]+ +"
    r"(?=(?:nothing|none|dry|all dry|empty|all empty|not a drop)\b)"
)
# "tapped today. 30 trees. 35 taps".
_TAPPED = re.compile(
    rf"^((?:we |i )?(?:tapped|finished tapping|done tapping)(?: today| yesterday| out)?){_STOP}"
    r"(?=\d+ (?:trees|taps|more|maples))"
)
_TREES_AND_TAPS = re.compile(
    rf"\b(\d+ (?:trees|maples)){_STOP}(?=\d+ (?:taps|spiles)\b(?! left| to go| out))"
)
# "bought lids. $12".
_BOUGHT_AND_PAID = re.compile(
    r"\b((?:bought|got|ordered|picked up|and|more|new) (?:[a-z]+ ){0,3}[a-z]+)"
    rf"{_STOP}(?=\$\d[\d.]*(?:[.;!,]|$))"
)
# "jars done. 3 pints".
_JARS_DONE = re.compile(
    r"\b(?:jars|bottles|bottling|canning|jarring)(?: is| are| all)? (?:done|finished|sealed)"
    rf"[.,;:!]+ +(?=(?:\d+|one|two|three|four|five|six|seven|eight|nine|ten|twelve)"
    rf" {_SIZE}(?! short| left| to go))"
)
# "sold 4 pints at the bake sale. $48".
_SOLD_FOR = re.compile(rf"\b(sold [^.!?]*\d[^.!?]*){_STOP}(?=\$\d[\d.]*[.!]*$)")
# "new candy thermometer. 27 bucks".
_BOUGHT_FOR = re.compile(
    rf"^((?:(?:a |the )?(?:new|used|another|more) )[a-z' ]{{3,30}}){_STOP}"
    r"(?=(?:\$\d[\d.]*|\d[\d.]* (?:bucks|dollars))(?:[.!;,]|$))"
)
# "did the water test like you said. boils at 209.6".
_WATER_TEST = re.compile(rf"(\bwater test\b[^.;!?\d]*){_STOP}(?=(?:it )?(?:boils|boiled|came)\b)")
# "8 gal yesterday, 10 gal today. both 2.0".
_LARGE = r"(?:gal|gals|gallons|l|lit\w+)"
_BOTH = re.compile(
    rf"^(\d[\d.]*) ?({_LARGE})\b([^.;!?\d]*?)[.,;]? (?:and )?(\d[\d.]*)(?: more)?(?: ?{_LARGE}\b)?"
    r"([^.;!?\d]*?)[.,;]+ (?:they )?(?:were |are )?(?:both|all of it|all) "
    r"(?:were |are |was |at |tested |test )*(\d\.\d+)(?:%| brix| percent)?$"
)


_BEHIND_AN_AMOUNT = re.compile(r"\d[^.;!]*[.;!] $")


def _named(said: re.Match[str]) -> str:
    """`sunday. 9 gal. monday. 12 gal`: each of its day; behind a plan as it came."""
    begins = said.start() == 0 or _BEHIND_AN_AMOUNT.search(said.string[: said.start()])
    return f"{said[1]}: " if begins else said[0]


_SHARED = re.compile(r"\b(?:both|all)\b")


_BOTH_OF_THEM = re.compile(
    r"[.,;]+ (?:they )?(?:were |are )?both (?:were |are |at |tested |test )*(\d\.\d+)"
    r"(?:%| brix| percent)?$"
)
_VOLUME = re.compile(rf"\b\d[\d.]* ?{_LARGE}\b")


def _of_both(text: str) -> str:
    """`fencerow 17 gal, hill 23 gal. both 2.0`: the sugar of each."""
    said = _BOTH_OF_THEM.search(text)
    if said is None or len(_VOLUME.findall(text)) != 2:
        return text
    return _VOLUME.sub(lambda amount: f"{amount[0]} at {said[1]}", text[: said.start()])


def _of_the_tree(text: str) -> str:
    return _OF_THE_TREE.sub(", ", text) if _A_TREE.match(text) else text


# In this order (see `rewrites`).
_REWRITES = Rewrites(
    ((". ", "; ", "! "), _CAME_TO, r"\1, "),
    (("tree ", "day", "sun", "mon", "tue", "wed", "thu", "fri", "sat"), _NAMED_AND_AMOUNT, _named),
    (("day", "sun", "mon", "tue", "wed", "thu", "fri", "sat"), _DAY_AND_FIGURE, r"\1: "),
    (("dumped", "tossed", "chucked", "pitched", "threw"), _DUMPED_IT, r"\1, "),
    (("first sap",), _FIRST_SAP, "first sap: "),
    (("drip", "run", "flow", "day"), _GOOD_RUN, r"\1: sap "),
    (("checked",), _CHECKED, r"\1, "),
    (("tapp",), _TAPPED, r"\1 "),
    (("trees", "maples"), _TREES_AND_TAPS, r"\1, "),
    (("$",), _BOUGHT_AND_PAID, r"\1, "),
    ((" done", " finished", " sealed"), _JARS_DONE, "bottled "),
    (("sold ",), _SOLD_FOR, r"\1 for "),
    (("new ", "used ", "more ", "another "), _BOUGHT_FOR, r"\1, "),
    (("water test",), _WATER_TEST, r"\1, "),
    ((" both", " all "), _BOTH, r"\1 \2 at \6\3, \4 \2 at \6\5"),
)


def put_together(text: str) -> str:
    """A tidy text, the sentences of one matter made one."""
    several = ". " in text or "; " in text or "! " in text
    shared = "both" in text or "all" in text
    if not several and not (shared and _SHARED.search(text)):
        return text
    return _REWRITES.of(_of_both(_of_the_tree(text)))
