"""What is told in several short sentences, put together again.

`Tree 14 is a red maple. 13 inches. One tap.` is of one tree, and `Emptied the pond buckets. It came
to 13 gal.` of one gathering: the stages behind this one take a full stop for the end of a matter.
"""

from __future__ import annotations

import re

from bot.reading.rewrites import Rewrite, rewritten

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
    r"\b((?:empt(?:ied|ying)|gather(?:ed|ing)|collect(?:ed|ing)|haul(?:ed|ing)|buckets|pails|bags)\b"
    rf"[^.;!?\d]*){_STOP}"
    r"(?=(?:it|that|they)(?: all)? (?:came to|made|totall?ed|added up to|measured|yielded|was)\b)"
)
# "jars done. 3 pints".
_JARS_DONE = re.compile(
    r"\b(?:jars|bottles|bottling|canning|jarring)(?: is| are| all)? (?:done|finished|sealed)"
    rf"[.,;:!]+ +(?=(?:\d+|one|two|three|four|five|six|seven|eight|nine|ten|twelve) {_SIZE})"
)
# "sold 4 pints at the bake sale. $48".
_SOLD_FOR = re.compile(rf"\b(sold [^.!?]*\d[^.!?]*){_STOP}(?=\$\d)")
# "new candy thermometer. 27 bucks".
_BOUGHT_FOR = re.compile(
    rf"^((?:(?:a |the )?(?:new|used|another|more) )[a-z' ]{{3,30}}){_STOP}"
    r"(?=(?:\$\d[\d.]*|\d[\d.]* (?:bucks|dollars))(?:[.!;,]|$))"
)
# "did the water test like you said. boils at 209.6".
_WATER_TEST = re.compile(rf"(\bwater test\b[^.;!?\d]*){_STOP}(?=(?:it )?(?:boils|boiled|came)\b)")
# "8 gal yesterday, 10 gal today. both 2.0".
_BOTH = re.compile(
    r"^(\d[\d.]* ?(?:gal|gals|gallons|l|lit\w+))\b([^.;!?\d]*?)[.,;]? (?:and )?"
    r"(\d[\d.]* ?(?:gal|gals|gallons|l|lit\w+))\b([^.;!?\d]*?)[.,;]+ (?:they )?"
    r"(?:were |are )?both (?:were |are |at |tested |test )*(\d\.\d+)(?:%| brix| percent)?$"
)


def _of_the_tree(text: str) -> str:
    return _OF_THE_TREE.sub(", ", text) if _A_TREE.match(text) else text


# In this order (see `rewrites`).
_REWRITES: tuple[Rewrite, ...] = (
    ((". ", "; ", "! "), _CAME_TO, r"\1, "),
    ((" done", " finished", " sealed"), _JARS_DONE, "bottled "),
    (("sold ",), _SOLD_FOR, r"\1 for "),
    (("new ", "used ", "more ", "another "), _BOUGHT_FOR, r"\1, "),
    (("water test",), _WATER_TEST, r"\1, "),
    (("both",), _BOTH, r"\1 at \5\2, \3 at \5\4"),
)


def put_together(text: str) -> str:
    """A tidy text, the sentences of one matter made one."""
    if ". " not in text and "; " not in text and "! " not in text and "both" not in text:
        return text
    return rewritten(_of_the_tree(text), _REWRITES)
