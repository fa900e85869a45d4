"""Deeds in roundabout words, in the plain ones that the stages behind this one read.

`the stove ate half a cord` burned it, `split it into 8 pints` bottled them, and `all 18 taps are
in` set so many.
"""

from __future__ import annotations

import re

from bot.reading.number_words import FIGURE, UNIT
from bot.reading.rewrites import Rewrites

# "boiled the 30 gal we got yesterday": of today.
_BOILED_WHAT = re.compile(
    r"\b(boiled(?: down)?) the (\d[\d.]* ?(?:gal\w*|l|lit\w+)) (?:that )?(?:we |i )?"
    r"(?:collected|gathered|got|left(?: over)?|leftover|hauled)(?: from| on)? "
    r"(?:yesterday|last night|the other day|\w+day)\b"
)
# "bottled yesterday's 3 qts as 6 pints", "filled 6 pints out of the 3 qts": the jars count.
_AS_JARS = re.compile(
    r"\b(bottled|canned|jarred|packed|put up) "
    r"(?:(?:the|all|my|our|yesterday'?s|today'?s|last night'?s) )*"
    r"[\d.]+ ?(?:gal\w*|qts?|quarts?|l|lit\w+)(?: of syrup)? (?:as|into) (?=\d)"
)
_OUT_OF_IT = re.compile(
    r"\b((?:bottled|canned|jarred|filled|got) [\d.]+ (?:half[ -])?"
    r"(?:pints?|pts?|quarts?|qts?|jars|bottles)) (?:out of|from) "
    r"(?:the|that|yesterday'?s|today'?s) [\d.]+ ?(?:gal\w*|qts?|quarts?|l|lit\w+)"
    r"(?=$|[.,;!]| and\b)"
)
# "picked up lids for $14": bought, where sap is picked up too.
_PICKED_UP = re.compile(r"\bpicked up (?=(?:(?!gal)[a-z0-9]+ ){0,5}(?:for )?\$\d)")
# "fire out, 7 hours start to finish".
_START_TO_FINISH = re.compile(
    r"^((?:the )?(?:fire|arch|pan)(?:'s| is)? (?:out|off|done|dead))[.,;] ?"
    r"([\d.]+ ?(?:hrs?|hours)) (?:from )?start to finish"
)
# "2.3 on our sap": tested.
_ON_OUR_SAP = re.compile(
    r"(?<![$\d.])\b(\d\.\d+)(?:%| brix)? on (?:our|the|my) sap(?=$|[.,;!]| today\b| this\b)"
)
# "all 18 taps are in".
_ALL_TAPS_IN = re.compile(
    rf"\ball ({FIGURE}) (?:of (?:the|our|my) )?(taps|spiles|spouts)(?: are| were| is)? in"
    r"(?=$|[.,;!]| (?:by|before|after|today|now|and|as|at|since|so)\b)"
)
# "we have finished emptying the buckets, 13 gal".
_DONE_GATHERING = re.compile(
    r"(?<!almost )(?<!nearly )(?<!about )(?<!not )(?<!half )"
    r"\b(?:(?:have |has |just |got |all )?(?:finished(?: up)?|done)) "
    r"(?=(?:emptying|gathering|collecting|hauling)\b)"
)
# "put it all through the sieve into the canner": strained.
_STRAINED = re.compile(
    r"\b(?:put|poured|ran|strained|passed) (?:it |them |that |everything )?(?:all )?"
    r"(?:through|thru) (?:an?|the|my|our) (?:\w+ )?(?:sieve|strainer|filter|cheesecloth|cloth"
    r"|screen|colander|sock|towel|pillowcase)(?: in(?:to)? (?:an?|the|my|our) \w+)?"
)
# "pot's on with 4 gal in it".
_ON_WITH = re.compile(
    rf"\b(?:pots?|pans?|kettle)(?:'s| is| are) on,? with ({FIGURE} {UNIT})(?: of sap)?"
    r"(?: in (?:it|them))?"
)
# "bought another filter, don't ask what it cost"; "some sap in the pails, not sure how much".
_DO_NOT_ASK = re.compile(
    r",? (?:and |but )?(?:don't|dont|do not) ask (?:me )?(?:what|how much) (?:it|they|that|i) "
    r"(?:cost|costs|paid)\b[^.;\d]*$"
)
# "26 taps in before first bell".
_TAPS_IN_BY = re.compile(
    r"(?:^|(?:(?<=, )|(?<= and ))(?!\d+ \w+ in as of))(\d+) (taps|spiles|spouts) in "
    r"(?=(?:before|by|after|at|since|as of|today|tonight|already|so)\b)"
)
# "stuck a thermometer in the sap barrel and its forty four".
_THERMOMETER_IN = re.compile(
    r"\b(?:stuck|put|dropped|hung|dipped) (?:an?|the|my|our) thermometer in (?:the|my|our) "
    r"((?:sap )?(?:barrel|tank|tote|drum|cooler|vat)),? (?:and )?(?:it's|its|it was|it is|it read"
    rf"|it reads|it says|it said|got) (?={FIGURE})"
)
# "went around twice today first time 5 gal".
_TWICE_ROUND = re.compile(
    r"\b(?:gathered|collected|hauled|emptied) twice(?: today)?[:,]? (?=\d[^,;]* and \d)|"
    r"\b(?:went|came|been) (?:a?round|out) twice(?: today)?,? (?=(?:the )?first\b)"
)
# "used 9 kg of propane on the boil": no boil begins.
_FUEL_ON_THE_BOIL = re.compile(
    r"\b(propane|wood|cords?|lbs?|pounds|kg) on (?:the|this|that|today's|tonight's) boil\b"
)
# "2 gal of buddy sap": it is no buddy's.
_BUDDY_SAP = re.compile(r"\bbuddy (?=(?:sap|stuff|tasting|smell\w*)\b)")
# "sap in the jugs added up to 1 gal 3 qts".
_ADDED_UP = re.compile(
    r"^((?:the |today's )?sap (?:in|from) (?:the|all the|my|our) (?:jugs|buckets|pails|bags"
    r"|trees) )(?:added up|adds up|amounted|totall?ed)(?: up)? to "
)
# "first pot of sap is bubbling away on the stove".
_POT_OF_SAP = re.compile(
    r"\b(?:(?:our|my|the) )?(?:(?:very )?first |second |next |last )?"
    r"(?:pot|pan|kettle|batch)(?:ful)? of sap(?:'s| is) "
    r"(?:bubbling|boiling|steaming|simmering|cooking)(?: away)?"
)
# "drilled 5 trees and tapped them".
_DRILLED_AND_TAPPED = re.compile(
    rf"\bdrilled ({FIGURE} (?:trees|maples)) and tapped (?:them|em|each|all of them)\b"
)
# "finished tapping the pasture, 15 in".
_DONE_TAPPING = re.compile(
    rf"^(?:finished|done|got done) tapping(?: (?:the|our|my) (\w+))?,? ({FIGURE}) (?:in|taps)$"
)
# "between 1 and 3 pm": when it was.
_BETWEEN_HOURS = re.compile(
    r",? between (\d{1,2}(?::\d\d)?(?: ?[ap]m)?) and (\d{1,2}(?::\d\d)? ?[ap]m)\b"
)
# "kindly record 9 gal".
_KINDLY = re.compile(
    r"^(?:kindly|do|would you (?:please|kindly)) (?=(?:record|log|note|enter|write|put)\b)"
)
# "with 1.25 gallons of syrup drawn off".
_WITH_DRAWN = re.compile(
    rf",? with ({FIGURE}(?: and a half)? {UNIT})( of syrup)? (?:drawn off|drawn|taken off)\b"
)
_STARTS = re.compile(r"\bstart(?:ing|ed) to boil(?=$|[.,;!]| now\b| and\b| at (?:\d|noon))")
# "pulled all 120": of taps, since nothing else is pulled by the number.
_PULLED_ALL = re.compile(
    r"(^|, |\band )((?:we |i )?(?:pulled|yanked)) (all|the whole|the last|the rest,?|the final) "
    r"(\d{1,3})(?=$|[.,;]| and\b(?! a half))"
)
# "came within an inch of dumping 5 gal".
_NEARLY = re.compile(
    r"\b(?:came|was|got|were) (?:(?:with)?in an inch of|this close to|so close to"
    r"|inches from|a hair from|within a hair of|one step from) "
    r"(?:dumping|spilling|losing|tipping|scorching|burning|knocking over|pouring out)"
)
# "other 30 gal made the tank": it is in there.
_MADE_THE_TANK = re.compile(
    rf"\b({FIGURE}(?: {UNIT})?(?: of sap)?) made (?:it (?:in)?to |it in )?the "
    r"(?=(?:tank|barrel|tote|drum|vat|sugarhouse|shack)\b)"
)
# "red maple, 14 inch, call it tree 31": that tree.
_CALLED_TREE = re.compile(
    r"^((?:sugar|red|silver|black|norway|hard|soft) maple,? [\d.]+ ?(?:in|inch|inches|cm|\")"
    r"(?: (?:across|around|through))?),? (?:call (?:it|that|her|him)|that's|its|it's|is|make it"
    r"|mark it|log it as) (tree \w+)$"
)
# "better or worse than last spring": asked, with no word that asks.
_BETTER_OR_WORSE = re.compile(
    r"^(?:so )?(?=(?:better or worse|ahead or behind|up or down|ahead of or behind)\b)"
)
# "tree 3 ran 2 gal, 4 was dry, 6 had 1 gal": each of them a tree.
_TREES_IN_A_ROW = re.compile(
    r"(?<=, )(\d{1,3})(?= (?:(?:ran|gave|had|did|got|made) "
    r"|(?:is|was) (?:dry|empty|slow|frozen|nothing|still)\b))"
)
# "tree 31, the double trunk by the gate, filled 9.5 l", "the favorite, tree 6, gave a gallon".
_APPOSED = re.compile(
    r"^(tree \w+), (?:the|our|my|that) (?!\w* ?maple)[^,.\d]{3,40}, (?=(?:filled|gave|had|ran|made"
    r"|got|is|was|did|tested|tests|put out)\b)"
    r"|^(?:the|our|my) [^,.\d]{3,40}, (tree \w+), (?=(?:filled|gave|had|ran|made|got|is|was|did"
    r"|tested|tests|put out)\b)"
)
# "the stove ate half a cord".
_ATE_WOOD = re.compile(
    r"\b((?:stove|arch|evaporator|fire|firebox|burner|rig|it|she)) (?:ate|ate up|swallowed"
    r"|chewed through|drank|guzzled) (?:up |through )?"
    r"(?=(?:about |almost |nearly |over |a good |a whole |a |the )*(?:half |\d[\d./]* ?)?(?:an? )?"
    r"(?:cord|face cord|lb|pound|\d+ ?lb))"
)
# "dumped out the bags and it came to 18 gal": emptied.
_DUMPED_AND_GOT = re.compile(
    r"\bdumped(?: out)? (?=(?:all )?(?:the |our |my )?(?:bags|buckets|pails) and"
    r" (?:it|that|they|we)(?: all)? (?:came to|made|got|had|measured))"
)
# "split it into 8 pints".
_SPLIT_INTO = re.compile(
    r"\b(?:split|divided|portioned|put|poured)(?: it| that| them)?(?: all)?(?: up| out)? in(?:to)? "
    r"(?=\d+ (?:half[ -])?(?:pints?|pts?|quarts?|qts?|jars|bottles)\b)"
)
# "the club card got charged $63.20 for tubing".
_CHARGED = re.compile(
    r"\b(?:got|was|were|been) charged (?=\$)|\bcharged (?:me|us|it|the card) (?=\$)"
)
# "pan has just gone on over the coals".
_GONE_ON = re.compile(
    r"\b(pans?|pots?|kettle) (?:has|have|had)? ?(?:just )?(?:gone|went) on(?: over)?(?= the\b)"
)
# "five gal jugs of sap plus one about half full so seventeen and a half gallons": that is the sum.
_SO_MUCH_IN_ALL = re.compile(
    rf"^(?=[^.]*\b(?:jugs|buckets|pails|bags|barrels|cans|totes)\b).*\b(?:so|so that's|so thats"
    r"|so that makes|which makes|that makes) (?:about |around )?"
    rf"({FIGURE}(?: and (?:a half|a quarter|three quarters))? (?:gal|gals|gallons)"
    r"(?: (?:of sap|total|in all|altogether))?)$"
)
# "bottled at 190, 9 pts": how hot, where jars are counted.
_BOTTLED_HOT = re.compile(
    r"\b(bottled|canned|jarred|packed)(?: hot| it| it hot)? at (?:1[6-9]\d|20\d|21\d)"
    r"(?: ?(?:f|deg|degrees)(?: f)?)?\b,? (?=\d)"
)
# "the rest went in 5 half pints".
_WENT_IN_JARS = re.compile(
    r"\b(?:the )?(?:rest|remainder|last of it|leftover) (?:went|all went|got put|fit) in(?:to)? "
    r"(?=\d+ (?:half[ -])?(?:pints?|pts?|quarts?|qts?|jars|bottles)\b)"
)


_ANOTHER_DEED = re.compile(
    r"\b(?:spill|spilt|dump|toss|pour|los[te]|leak|boil|hung|hang|set|sold|hold|ran over|bought"
    r"|drew|bottl|threw|burn|gave|broke)\w*\b"
)


def _in_all(said: re.Match[str]) -> str:
    """`three jugs and one about half full so 17 gal`: the sum; beside another deed as it came."""
    return said[0] if _ANOTHER_DEED.search(said[0]) else said[1]


def _with_drawn(said: re.Match[str]) -> str:
    """`boiled 54 gal, with 1.25 gal drawn off`: of syrup, where that is said or sap was boiled."""
    syrup = said[2] or "boil" in said.string[: said.start()]
    return f", drew off {said[1]} of syrup" if syrup else said[0]


def _of_trees(said: re.Match[str]) -> str:
    """`tree 3 ran 2 gal, 4 was dry`: tree 4."""
    return f"tree {said[1]}" if said.string.startswith("tree ") else said[1]


def _between_hours(said: re.Match[str]) -> str:
    """`boiled between 1 and 3 pm`: from one to the other; of all else it only says when."""
    if _JUST_BOILED.search(said.string[: said.start()]) is None:
        return ""
    first, last = said[1], said[2]
    if not first.endswith("m"):
        half, other = last[-2:], "am" if last.endswith("pm") else "pm"
        earlier = int(first.split(":")[0]) % 12 < int(re.split(r"[: ap]", last)[0]) % 12
        first = f"{first} {half if earlier else other}"
    return f" from {first} to {last}"


_JUST_BOILED = re.compile(r"\bboiled(?: [\d.]+ ?(?:gal\w*|l|lit\w+))?(?: of sap)?$")


def _done_tapping(said: re.Match[str]) -> str:
    """`finished tapping the pasture, 15 in`: so many taps, there."""
    return f"set {said[2]} taps on the {said[1]}" if said[1] else f"set {said[2]} taps"


def _pulled_all(said: re.Match[str]) -> str:
    """`pulled all 120`: all of them; `pulled the last 14`: so many."""
    every = "all " if said[3] in ("all", "the whole") else ""
    return f"{said[1]}{said[2]} {every}{said[4]} taps"


# "fire lite at 8 am": lit.
_FIRE_LITE = re.compile(r"\b(fire|arch|evaporator)(?:'s| is)? lite\b")


# "bucket capacity, measured: 2.1 gal".
_CAPACITY = re.compile(
    r"^(?:our |my |the )?(bucket|pail|bag)s?'?s? (?:capacity|size|volume)\b[^\d]{0,20}[:=] ?(?=\d)"
)
# "t2, circumference 88 in, holds two taps".
_HOLDS_TAPS = re.compile(r"\bholds (?=(?:\d|one|two|three|four) (?:taps?|spiles?)\b)")
# "the graders helped us install 17 taps".
_HELPED = {
    "install": "installed", "set": "set", "put in": "put in", "hang": "hung", "tap": "tapped",
    "pull": "pulled", "gather": "gathered", "collect": "collected", "boil": "boiled",
    "bottle": "bottled", "haul": "hauled", "drill": "drilled",
}  # fmt: skip
_HELPED_US = re.compile(rf"\bhelped (?:us|me) (?:to )?({'|'.join(_HELPED)})\b")


# "stinks so I dumped the lot": all of it.
_DUMPED_THE_LOT = re.compile(
    r"\b(dumped|tossed|threw out|threw|poured out|tipped out|chucked|pitched) the (?:whole )?lot"
    r"(?: out)?(?=$|[,.;!])"
)
# "7 buckets, all of em full".
_ALL_OF_THEM = re.compile(r",? (?:all|each|every one) of (?:them|'?em)(?: are| were)?(?= full\b)")
# "first batch, a pint and a half": of syrup.
_BATCH_OF = re.compile(
    rf"\b(?:first|second|third|last|this|final) batch[,:] (?=(?:{FIGURE}|an?) (?:and a half )?"
    r"(?:pints?|quarts?|qts?|pts?|cups?|oz)\b)"
)
# "syrup off at 66.8 brix, 0.75 gal".
_SYRUP_OFF_AT = re.compile(
    rf"^syrup(?: came)?(?: off)?(?: at)? (6\d(?:\.\d+)?)(?: ?brix|%)?, ({FIGURE} {UNIT})$"
)
# "final number was 37 gallons".
_NUMBER_WAS = re.compile(
    rf"\b(?:(?:the|our|my|today's) )?(?:(?:final|day's|magic) )?(?:number|count|figure) (?:was|is"
    rf"|came to) (?=(?:about )?{FIGURE} {UNIT}\b)"
)
# "got a new pan on sale": no fire.
_PAN_ON_SALE = re.compile(
    r"\b(pan|burner|evaporator|arch) on (?=(?:sale|order|the way|craigslist|facebook|ebay|hold"
    r"|the list)\b)"
)
# "got 12 gal at 2.2 boiled 30 gal": two deeds.
_GOT_AND_BOILED = re.compile(
    rf"\b((?:got|had) \d[\d.]* ?{UNIT}(?: at [\d.]+)?) (?=(?:boiled|drew off|bottled|canned) \d)"
)
# "filtered 3 quarts and bottled 6 pints": the jars count.
_FILTERED_AND_BOTTLED = re.compile(
    rf"\b(?:filtered|heated|reheated|strained|warmed) {FIGURE} {UNIT}(?: of syrup)?"
    r"(?: and|,|, and|, then| then) (?=(?:bottled|canned|jarred|filled)\b)"
)
# "tapped 20 trees 26 taps": so many taps.
_TREES_TAPS = re.compile(
    r"\b(\d+ (?:trees|maples))(?:,? (?:with|for|and))? (?=\d+ (?:taps|spiles)\b)"
)


# "3 pints came off the stove as finished syrup".
_CAME_OFF = re.compile(
    rf"^({FIGURE}(?: and a half)? {UNIT}) came off (?:the|my|our) "
    r"(?:stove|pan|fire|arch|evaporator)(?: as (?:finished )?syrup)?\b"
)


_BOIL_OF_ITS_NUMBER = re.compile(
    r"\b(boil|batch) (?:# ?|no\.? ?|number )?\d{1,2} "
    r"(?:is |was )?(done|over|finished|complete)\b"
)
"""`boil #5 is done`: which it was does not matter."""
_THIS_TIME_LAST = re.compile(
    r"\bthis time last (?:january|february|march|april|may|season|spring|winter)\b"
)
"""`this time last march I had put 400 gal through`: of another year."""
# In this order (see `rewrites`).
_REWRITES = Rewrites(
    (("capacity", "size", "volume"), _CAPACITY, r"\1s hold "),
    (("holds ",), _HOLDS_TAPS, "has "),
    (("helped ",), _HELPED_US, lambda said: _HELPED[said[1]]),
    ((" on ",), _PAN_ON_SALE, r"\1 for "),
    (("got ", "had "), _GOT_AND_BOILED, r"\1, "),
    (("filtered", "heated", "strained", "warmed"), _FILTERED_AND_BOTTLED, ""),
    (("trees", "maples"), _TREES_TAPS, r"\1, "),
    (("came off",), _CAME_OFF, r"drew off \1 of syrup"),
    ((" lite",), _FIRE_LITE, r"\1 lit"),
    (("inch", "close to", "hair", "one step"), _NEARLY, "nearly dumped"),
    (("boiled",), _BOILED_WHAT, r"\1 \2"),
    (("so ", "makes "), _SO_MUCH_IN_ALL, _in_all),
    (("tree ",), _APPOSED, lambda said: f"{said[1] or said[2]} "),
    (("cord", "lb", "pound"), _ATE_WOOD, r"\1 burned "),
    (("this time last",), _THIS_TIME_LAST, "last year"),
    (("boil", "batch"), _BOIL_OF_ITS_NUMBER, r"\1 is \2"),
    (("syrup ",), _SYRUP_OFF_AT, r"drew off \2 of syrup at \1 brix"),
    (("number ", "count ", "figure "), _NUMBER_WAS, "got "),
    ((" of them", " of em", " of 'em"), _ALL_OF_THEM, " all"),
    (("batch",), _BATCH_OF, "syrup: "),
    (("the lot", "whole lot"), _DUMPED_THE_LOT, r"\1 it all"),
    (("dumped",), _DUMPED_AND_GOT, "emptied "),
    ((" in ", " into "), _SPLIT_INTO, "bottled "),
    (("charged",), _CHARGED, "paid "),
    ((" on the", " on over"), _GONE_ON, r"\1 is on"),
    (("better", "ahead", "up or"), _BETTER_OR_WORSE, "are we "),
    ((", ",), _TREES_IN_A_ROW, _of_trees),
    ((" maple",), _CALLED_TREE, r"\2: \1"),
    (("made ",), _MADE_THE_TANK, r"\1 went into the "),
    ((" at 1", " at 2"), _BOTTLED_HOT, r"\1 "),
    ((" in ", " into "), _WENT_IN_JARS, "bottled "),
    ((" as ", " into "), _AS_JARS, r"\1 "),
    ((" out of ", " from "), _OUT_OF_IT, r"\1"),
    (("picked up",), _PICKED_UP, "bought "),
    (("start to finish",), _START_TO_FINISH, r"\1, boiled \2"),
    ((" sap",), _ON_OUR_SAP, r"sap tested \1"),
    ((" in",), _ALL_TAPS_IN, r"\1 \2 in all"),
    (("emptying", "gathering", "collecting", "hauling"), _DONE_GATHERING, ""),
    (("through", "thru"), _STRAINED, "strained it"),
    ((" on with ", " on, with "), _ON_WITH, r"boiling \1"),
    ((" ask ",), _DO_NOT_ASK, ", it cost plenty"),
    ((" in ",), _TAPS_IN_BY, r"set \1 \2 "),
    (("thermometer",), _THERMOMETER_IN, r"\1 temp "),
    (("twice",), _TWICE_ROUND, "gathered "),
    ((" up to", " to "), _ADDED_UP, r"\1came to "),
    (("of sap",), _POT_OF_SAP, "the sap is boiling now"),
    (("drilled ",), _DRILLED_AND_TAPPED, r"tapped \1"),
    (("tapping",), _DONE_TAPPING, _done_tapping),
    (("boil",), _FUEL_ON_THE_BOIL, r"\1"),
    (("buddy ",), _BUDDY_SAP, "bad "),
    (("between ",), _BETWEEN_HOURS, _between_hours),
    (("kindly", "do ", "would you"), _KINDLY, "please "),
    (("with ",), _WITH_DRAWN, _with_drawn),
    ((" to boil",), _STARTS, "started boiling"),
    (("pulled", "yanked"), _PULLED_ALL, _pulled_all),
)


def in_plain_words(text: str) -> str:
    """A tidy text, its roundabout deeds in plain words."""
    return _REWRITES.of(text)


_OF_A_SENTENCE = _REWRITES.of_a_sentence()


def sentence_in_plain_words(sentence: str) -> str:
    """One sentence of such a text, its roundabout deed at its head or end in plain words."""
    return _OF_A_SENTENCE.of(sentence)
